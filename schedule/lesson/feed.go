package lesson

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/nutrient"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

func feeds(k schedule.Kind) bool { return k.Feeds() }

// n writes an amount of a nutrient: "0.5 lb N".
func (m *maker) n(v float64, of string) string { return m.rate(v) + " " + of }

// yearly is a year's nitrogen by the rules of the sheet.
func (m *maker) yearly() (total float64, given []Given, steps []schedule.Reason, ok bool) {
	need, planned := m.need(schedule.Nitrogen)
	if !planned || need.Total == 0 {
		return 0, nil, nil, false
	}
	column := slices.Index([]nutrient.Care{nutrient.LowCare, nutrient.MediumCare, nutrient.HighCare}, m.area.Care)
	if column < 0 {
		return 0, nil, nil, false
	}
	t := Given{Title: "A year's nitrogen, clippings removed, " + m.rateUnit(), Head: []string{"Grass", "low care", "medium", "high"}}
	var parts, sources []string
	for i, s := range m.area.Stand {
		g := s.Grass
		if !g.HasN() {
			return 0, nil, nil, false
		}
		row := []string{word.Capital(g.Name)}
		for _, n := range g.N {
			row = append(row, number(m.rateOf(n)))
		}
		t.Rows = append(t.Rows, row)
		w := m.area.Stand.Weight(i)
		total += w * read(row[1+column])
		parts = append(parts, number(w)+" × "+row[1+column])
		if !slices.Contains(sources, g.NSource) {
			sources = append(sources, g.NSource)
		}
	}
	total = printed(total)
	text := fmt.Sprintf("%s, %s care: %s.", word.Capital(m.area.Stand[0].Grass.Name), m.area.Care, m.n(total, "N"))
	if len(parts) > 1 {
		text = strings.Join(parts, " + ") + " = " + m.n(total, "N") + "."
		sources = append(sources, "common")
	}
	steps = append(steps, said(text, sources...))
	rules := Given{Title: "Rules for the year", Rules: []string{"Weight the grasses of a mixture by their parts. Where clippings stay, take off a quarter."}}
	if m.area.Clippings {
		after := printed(total * 0.75)
		steps = append(steps, said(fmt.Sprintf("Clippings stay: %s × 0.75 = %s.", number(total), m.n(after, "N")), "uconn-clippings", "common"))
		total = after
	}
	if m.young() {
		r := nutrient.SeedlingsOf(m.area.Stand).FirstYear
		low, high := printed(m.rateOf(r[0])), printed(m.rateOf(r[1]))
		rules.Rules = append(rules.Rules, fmt.Sprintf("After that: in its first year a stand gets %s at the least and %s at the most.", m.rate(low), m.rate(high)))
		held := min(max(total, low), high)
		text := fmt.Sprintf("First year: %s lies between %s and %s.", m.n(total, "N"), number(low), number(high))
		if held != total {
			text = fmt.Sprintf("First year: %s is held to %s.", m.n(total, "N"), m.n(held, "N"))
		}
		steps = append(steps, said(text, "common"))
		total = held
	} else if most := nutrient.LimitsOfNitrogen(m.area.Stand.Season()).Year; most > 0 {
		limit := printed(m.rateOf(most))
		rules.Rules = append(rules.Rules, fmt.Sprintf("Cool-season grass gets no more than %s a year.", m.rate(limit)))
		total = min(total, limit)
	}
	return total, []Given{t, rules}, steps, near(total, m.rateOf(need.Total))
}

func (m *maker) year() (task, bool) {
	t := task{topic: feedTopic, urgent: 6, Question: Question{Title: "The year's nitrogen"}}
	total, given, steps, ok := m.yearly()
	if !ok {
		return t, false
	}
	t.Text = "How much nitrogen does this grass get in a year?"
	if m.young() {
		t.Text = "How much nitrogen does this grass get in its first year?"
	}
	t.given, t.Steps = given, steps
	t.Answers = []Answer{{"Nitrogen a year", m.n(total, "N")}}
	return t, true
}

// doses asks into how many feedings the nitrogen of the first feeding season is split,
// where the caps alone decide it.
func (m *maker) doses() (task, bool) {
	t := task{topic: feedTopic, urgent: 9, Question: Question{Title: "The feedings"}}
	total, given, _, ok := m.yearly()
	all := m.jobsOf(func(k schedule.Kind) bool { return k == schedule.Nitrogen })
	if !ok || m.young() || len(all) == 0 {
		return t, false
	}
	grass := m.area.Stand.Season()
	shares, caps := nutrient.SharesOf(grass), nutrient.LimitsOfNitrogen(grass)
	season, share := "autumn", shares.Fall
	if grass == agronomy.Warm {
		season, share = "summer", shares.Summer
	}
	d := all[0].Dose.Material
	quick := printed(1 - d.SlowShare)
	whole, soluble := printed(m.rateOf(caps.Single)), printed(m.rateOf(caps.Soluble))
	part := printed(total * share)
	limit, by := whole, m.rate(whole)+" in all"
	if quick > 0 && soluble/quick < limit {
		limit = printed(soluble / quick)
		by = fmt.Sprintf("%s quick N ÷ %s quick = %s", m.rate(soluble), number(quick), m.rate(limit))
	}
	n := math.Ceil(part/limit - 1e-9)
	each := printed(part / n)
	if d.SlowShare >= 0.5 || int(n) > len(all) {
		return t, false
	}
	for i, e := range all[:int(n)] {
		if !near(each, m.rateOf(e.N)) || e.Season != all[0].Season || i > 0 && e.Date.DaysFrom(all[i-1].Date) > 90 {
			return t, false
		}
	}
	t.given = append(given, Given{Title: "Feedings", Wide: true, Rules: []string{
		fmt.Sprintf("Of a year's nitrogen %s gets %s parts of 1.", season, number(share)),
		fmt.Sprintf("At once no more than %s N in all, and no more than %s of quick N. The fewest equal feedings.", m.rate(whole), m.rate(soluble)),
		fmt.Sprintf("The feed is %s; %s %% of its nitrogen is slow.", bag(d), number(100*d.SlowShare)),
	}})
	t.Text = "How much of it belongs to the " + season + ", in how many feedings?"
	t.Steps = []schedule.Reason{
		said(fmt.Sprintf("%s × %s = %s.", number(total), number(share), m.n(part, "N")), shares.Why.Source),
		said(fmt.Sprintf("Most at once: %s.", by), "ill-1995, md-ag-6-224"),
		said(fmt.Sprintf("%s ÷ %s, rounded up: %s of %s.", number(part), number(limit), word.Plural(int(n), "feeding"), m.n(each, "N"))),
	}
	t.Answers = []Answer{{"Part of the " + season, m.n(part, "N")}, {"Feedings", number(n)}, {"Each feeding", m.n(each, "N")}}
	return t, true
}

// product asks for the weight or volume of the first feeding.
func (m *maker) product() (task, bool) {
	t := task{topic: feedTopic, urgent: 7, Question: Question{Title: "The first feeding"}}
	e, ok := m.firstOf(feeds)
	if !ok || e.N < schedule.LeastDose {
		return t, false
	}
	d := e.Dose.Material
	wanted := printed(m.rateOf(e.N))
	if d.Analysis.N <= 0 {
		return t, false
	}
	rate := printed(wanted / float64(d.Analysis.N) * 100)
	all, inAll := m.inAll(rate)
	name := bag(d)
	rule := fmt.Sprintf("The first feeding brings %s. The feed is %s: %s %% N", m.n(wanted, "N"), name, number(float64(d.Analysis.N)))
	if p := d.Analysis.P2O5; p > 0 {
		rule += fmt.Sprintf(", %s %% P₂O₅", number(float64(p)))
	}
	if k := d.Analysis.K2O; k > 0 {
		rule += fmt.Sprintf(", %s %% K₂O", number(float64(k)))
	}
	t.given = []Given{{Title: "The first feeding", Rules: []string{rule + ".", "Feed needed = nutrient ÷ its part of the feed."}}}
	t.Steps = []schedule.Reason{
		said(fmt.Sprintf("%s ÷ %s = %s of the feed.", m.n(wanted, "N"), number(float64(d.Analysis.N)/100), m.rate(rate)), "unl-calc"),
		said(inAll + "."),
	}
	t.Text = "How much " + name + " does the first feeding take in all?"
	if e.Gallons > 0 {
		density, unit := float64(d.Density), "lb a gallon"
		if m.metric {
			density, unit = density*agronomy.Pounds(1).Kilograms()/agronomy.Gallons(1).Liters(), "kg a litre"
		}
		density = printed(density)
		t.given[0].Rules = append(t.given[0].Rules, fmt.Sprintf("It weighs %s %s.", number(density), unit))
		volume := printed(all / density)
		t.Steps = append(t.Steps, said(fmt.Sprintf("%s ÷ %s = %s.", m.weight(all), number(density), m.volume(volume))))
		t.Text = "How much " + name + " does the first feeding take in all, by weight and by volume?"
		t.Answers = []Answer{{"Feed in all", m.weight(all)}, {"Volume in all", m.volume(volume)}}
		return t, near(volume, m.volumeOf(e.Gallons))
	}
	t.Answers = []Answer{{"Feed in all", m.weight(all)}}
	for _, other := range []struct {
		of   string
		part agronomy.Percent
		kind schedule.Kind
	}{{"P₂O₅", d.Analysis.P2O5, schedule.Phosphorus}, {"K₂O", d.Analysis.K2O, schedule.Potassium}} {
		if other.part <= 0 {
			continue
		}
		brings := printed(rate * float64(other.part) / 100)
		t.Steps = append(t.Steps, said(fmt.Sprintf("It brings %s × %s = %s.", m.rate(rate), number(float64(other.part)/100), m.n(brings, other.of)), "unl-calc"))
		t.Answers = append(t.Answers, Answer{"Brings " + other.of, m.n(brings, other.of)})
		if !strings.Contains(t.Text, "bring") {
			t.Text += " What else does it bring for each " + m.per() + "?"
		}
	}
	return t, near(all, m.weightOf(e.Pounds))
}

// tooMuch asks how much of the year's nitrogen is left after the first feeding went down
// twice.
func (m *maker) tooMuch() (task, bool) {
	t := task{topic: feedTopic, urgent: 14, Question: Question{Title: "Twice by mistake"}}
	total, given, _, ok := m.yearly()
	e, fed := m.firstOf(feeds)
	if !ok || !fed || e.N < schedule.LeastDose {
		return t, false
	}
	dose := printed(m.rateOf(e.N))
	left := printed(total - 2*dose)
	if left <= 0 {
		return t, false
	}
	t.given = append(given, Given{Title: "What is down counts", Rules: []string{
		fmt.Sprintf("What is down counts against the year, and nothing is put down to make up for it. The first feeding is %s.", m.n(dose, "N"))}})
	t.Text = "Somebody gave the first feeding twice. How much nitrogen is left for the rest of the year?"
	t.Steps = []schedule.Reason{said(fmt.Sprintf("%s − 2 × %s = %s.", number(total), number(dose), m.n(left, "N")), "common")}
	t.Answers = []Answer{{"Left of the year", m.n(left, "N")}}
	return t, true
}

// straight asks about a job of potassium or phosphorus alone: from the level in the
// report to the weight of the material.
func (m *maker) straight() (task, bool) {
	t := task{topic: feedTopic, urgent: 10}
	for _, s := range []struct {
		kind     schedule.Kind
		nutrient agronomy.Nutrient
		need     func(agronomy.Report, string, bool) (nutrient.Need, error)
		set      func(*agronomy.Report, agronomy.PPM)
		of       func(*schedule.Entry) (agronomy.PerThousand, agronomy.Percent)
		source   string
	}{
		{schedule.Potassium, agronomy.Potassium, nutrient.PotassiumNeed,
			func(r *agronomy.Report, v agronomy.PPM) { r.Potassium.PPM, r.Potassium.PerAcre = v, 0 },
			func(e *schedule.Entry) (agronomy.PerThousand, agronomy.Percent) {
				return e.K2O, e.Dose.Material.Analysis.K2O
			},
			"umn-lawn-report, common"},
		{schedule.Phosphorus, agronomy.Phosphorus, nutrient.PhosphorusNeed,
			func(r *agronomy.Report, v agronomy.PPM) { r.Phosphorus.PPM, r.Phosphorus.PerAcre = v, 0 },
			func(e *schedule.Entry) (agronomy.PerThousand, agronomy.Percent) {
				return e.P2O5, e.Dose.Material.Analysis.P2O5
			},
			"common"},
	} {
		jobs := m.jobsOf(func(k schedule.Kind) bool { return k == s.kind })
		need, ok := m.need(s.kind)
		scales := m.placings()
		i := slices.IndexFunc(scales, func(p placed) bool { return p.nutrient == s.nutrient })
		if !ok || need.Total == 0 || len(jobs) != 1 || i < 0 || scales[i].bands.Optimum {
			continue
		}
		e, b := jobs[0], scales[i].bands
		oxide := s.kind.Nutrient()
		head := []string{"Nutrient", "very low", "low", "medium", "high"}
		row := []string{oxide}
		for _, ppm := range []agronomy.PPM{b.Low / 2, (b.Low + b.Medium) / 2, (b.Medium + b.High) / 2, (b.High + b.VeryHigh) / 2} {
			try := m.report
			s.set(&try, ppm)
			n, err := s.need(try, m.site.Place.State, m.area.Seeded.After(m.p.Start))
			if err != nil {
				break
			}
			row = append(row, number(m.rateOf(n.Year)))
		}
		column := slices.Index(head, string(scales[i].level))
		if column < 0 || len(row) != len(head) || !near(read(row[column]), m.rateOf(need.Total)) {
			continue
		}
		brings, part := s.of(&e)
		year := read(row[column])
		left := printed(m.rateOf(brings))
		others := printed(year - left)
		if part <= 0 || others < -0.01*year {
			continue
		}
		rules := []string{fmt.Sprintf("The bag is %s: %s %% %s.", bag(e.Dose.Material), number(float64(part)), oxide)}
		t.Steps = []schedule.Reason{said(fmt.Sprintf("%s is %s: %s a year.", word.Capital(string(s.nutrient)), scales[i].level, m.n(year, oxide)), b.Source, s.source)}
		if others > 0.01*year {
			rules = append(rules, fmt.Sprintf("The year's feedings, with their doses rounded as planned, bring %s along.", m.n(others, oxide)))
			left = printed(year - others)
			t.Steps = append(t.Steps, said(fmt.Sprintf("%s − %s = %s left.", number(year), number(others), m.n(left, oxide))))
		}
		rate := printed(left / float64(part) * 100)
		all, inAll := m.inAll(rate)
		if !near(all, m.weightOf(e.Pounds)) {
			continue
		}
		t.Steps = append(t.Steps, said(fmt.Sprintf("%s ÷ %s = %s of the bag.", m.n(left, oxide), number(float64(part)/100), m.rate(rate)), "unl-calc"), said(inAll+"."))
		t.given = []Given{{Title: fmt.Sprintf("%s a year by level, %s", oxide, m.rateUnit()), Head: head, Rows: [][]string{row}}, {Title: "The bag", Rules: rules}}
		t.Title = word.Capital(string(s.nutrient))
		t.Text = fmt.Sprintf("How much %s a year does the level of %s call for? How much of the bag in all brings what the feedings leave?", oxide, s.nutrient)
		t.Answers = []Answer{{oxide + " a year", m.n(year, oxide)}, {word.Capital(string(s.nutrient)) + " in all", m.weight(all)}}
		return t, true
	}
	return t, false
}
