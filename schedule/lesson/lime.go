package lesson

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/lime"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// aimed is the pH to lime to, and whether lime is due, by the rules of the sheet.
type aimed struct {
	at    float64
	below float64 // lime is due under it
	due   bool
	steps []schedule.Reason
}

func (m *maker) aimed() aimed {
	var a aimed
	if wish := m.report.TargetPH; wish > 0 {
		a.at = float64(wish)
		a.below = printed(a.at - float64(agronomy.Shortfall))
		a.steps = append(a.steps, said(fmt.Sprintf("The aim is set: pH %s. %s − 0.2 = %s.", wish.Words(), wish.Words(), agronomy.PH(a.below).Words()), "tristate-1995"))
	} else {
		var parts []string
		for i, s := range m.area.Stand {
			g, ok := agronomy.GrassPH(s.Grass.Name)
			if !ok {
				return aimed{}
			}
			w := m.area.Stand.Weight(i)
			a.at += w * float64(g.Default)
			a.below = max(a.below, float64(g.Low))
			parts = append(parts, fmt.Sprintf("%s × %s", number(w), g.Default.Words()))
		}
		a.at = printed(a.at)
		text := "The best pH of the grass: " + agronomy.PH(a.at).Words() + "."
		if len(parts) > 1 {
			text = strings.Join(parts, " + ") + " = pH " + agronomy.PH(a.at).Words() + "."
		}
		a.steps = append(a.steps, said(text, m.phSources(), "common"))
	}
	ph := float64(m.report.PH)
	a.due = ph < a.below
	verdict := "is not under %s: no lime is due."
	if a.due {
		verdict = "is under %s: lime is due."
	}
	source := m.phSources()
	if m.report.TargetPH > 0 {
		source = "tristate-1995"
	}
	a.steps = append(a.steps, said(fmt.Sprintf("pH %s "+verdict, m.report.PH.Words(), agronomy.PH(a.below).Words()), source))
	return a
}

// limed is the lime requirement as the program worked it out, to compare with
// [maker.aimed].
func (m *maker) limed() (lime.Case, lime.Need, bool) {
	if !m.reported || m.report.PH == 0 {
		return lime.Case{}, lime.Need{}, false
	}
	c := m.site.LimeCase(m.area)
	n, err := lime.Requirement(c)
	return c, n, err == nil
}

func (m *maker) aim() (task, bool) {
	t := task{topic: limeTopic, urgent: 3, Question: Question{Title: "The aim"}}
	_, n, ok := m.limed()
	a := m.aimed()
	if !ok || a.at == 0 || math.Abs(a.at-float64(n.Target)) > 0.04 || a.due != (n.Rate > 0) {
		return t, false
	}
	rules := Given{Title: "When to lime", Rules: []string{
		"The aim is the best pH of the grass; of a mixture, the best of each, weighted by its part.",
		"Lime when the pH is under the range of the grass; of a mixture, under the range that all its grasses share.",
	}}
	t.Text = "Which pH is the aim for this grass? Is lime due? Say which rule decides."
	if m.report.TargetPH > 0 {
		rules.Rules = []string{"Where an aim is set for the lawn, it counts, and lime is due when the pH is more than 0.2 under it.", "Without one the aim is the best pH of the grass."}
	}
	t.given = []Given{m.suits(), rules}
	t.Steps = a.steps
	t.Answers = []Answer{{"Aim, pH", agronomy.PH(a.at).Words()}, {"Lime due", map[bool]string{true: "yes", false: "no"}[a.due]}}
	return t, true
}

// liming is the job of lime with its working by the figures of the sheet.
type liming struct {
	job   schedule.Entry
	given []Given
	total float64
	steps []schedule.Reason
	share string // how much of the stone acts, %
}

// liming works out the first job of lime; false if the program does not come to the same.
func (m *maker) liming() (s liming, ok bool) {
	c, n, ok := m.limed()
	a := m.aimed()
	need, planned := m.need(schedule.Lime)
	job, dated := m.firstOf(isLime)
	if !ok || !a.due || !planned || !dated || n.Rate <= 0 || math.Abs(a.at-float64(n.Target)) > 0.04 {
		return s, false
	}
	s.job = job
	table, pure, ok := m.limeTable(c, n)
	if !ok {
		return s, false
	}
	s.given = append(s.given, table)
	var why []string
	for _, w := range n.Why {
		if w.Source != "" && !slices.Contains(why, w.Source) {
			why = append(why, w.Source)
		}
	}
	s.steps = append(s.steps, said(fmt.Sprintf("Fully effective lime: %s, by %s.", m.rate(pure), n.Method), strings.Join(why, ", ")))
	value, stone, steps, ok := m.value()
	if !ok {
		return s, false
	}
	s.given = append(s.given, stone)
	s.steps = append(s.steps, steps...)
	s.share = number(value) + " %"
	s.total = printed(pure / value * 100)
	s.steps = append(s.steps, said(fmt.Sprintf("%s ÷ %s = %s of stone.", m.rate(pure), number(printed(value/100)), m.rate(s.total)), "psu-report-notes"))
	return s, near(s.total, m.rateOf(need.Total))
}

// limeTable is the requirement by the method that the report allows, for
// readings around the one given; pure is the figure to find in it.
func (m *maker) limeTable(c lime.Case, n lime.Need) (t Given, pure float64, ok bool) {
	at, head := c.PH, "From pH"
	set := func(c *lime.Case, v agronomy.PH) { c.PH = v }
	if c.Buffer.PH > 0 {
		at, head = c.Buffer.PH, "Buffer pH"
		set = func(c *lime.Case, v agronomy.PH) { c.Buffer.PH = v }
	}
	goals := []agronomy.PH{n.Target}
	for _, g := range []agronomy.PH{6.0, 6.5} {
		if math.Abs(float64(g-n.Target)) > 0.05 && g > c.PH {
			goals = append(goals, g)
		}
	}
	slices.Sort(goals)
	depth := m.depthOf(c.Depth)
	if c.Depth == 0 {
		return t, 0, false
	}
	where := number(depth) + " in"
	if m.metric {
		where = number(printed(depth/10)) + " cm"
	}
	t = Given{Title: fmt.Sprintf("Fully effective lime, for %s of this soil, %s", where, m.rateUnit()), Head: []string{head}}
	for _, g := range goals {
		t.Head = append(t.Head, "to "+g.Words())
	}
	for _, step := range []float64{-0.2, -0.1, 0, 0.1, 0.2} {
		row := []string{(at + agronomy.PH(step)).Words()}
		for _, g := range goals {
			try := c
			set(&try, at+agronomy.PH(step))
			try.Target, try.LimeBelow = g, 0
			need, err := lime.Requirement(try)
			if err != nil {
				break
			}
			row = append(row, number(m.rateOf(need.Rate)))
		}
		if len(row) < len(t.Head) {
			if step == 0 {
				return t, 0, false
			}
			continue
		}
		if step == 0 {
			pure = read(row[1+slices.Index(goals, n.Target)])
		}
		t.Rows = append(t.Rows, row)
	}
	return t, pure, pure > 0 && near(pure, m.rateOf(n.Rate))
}

// value is how much of the stone acts, in percent.
func (m *maker) value() (value float64, t Given, steps []schedule.Reason, ok bool) {
	job, _ := m.firstOf(isLime)
	d := job.Dose.Material
	want := m.site.LimeValue(m.area, d).Full
	t = Given{Title: "The stone: " + word.MaterialName(d) + ", " + m.pack(job)}
	if d.ECCE > 0 {
		t.Head, t.Rows = []string{"On the bag", "Value"}, [][]string{{"Effective value (ECCE)", number(float64(d.ECCE)) + " %"}}
		t.Rules = []string{"The effective value is the share of the stone that acts, fineness and all."}
		value = printed(float64(d.ECCE))
		return value, t, []schedule.Reason{said(fmt.Sprintf("Share that acts: %s %%, as the bag says.", number(value)))}, true
	}
	if d.CCE == 0 {
		return 0, t, nil, false
	}
	cce := printed(float64(d.CCE))
	r := lime.RuleFor(m.site.Place.State)
	fine, err := r.Fineness(d.Fineness)
	if err != nil || d.Hydrated {
		t.Head, t.Rows = []string{"On the bag", "Value"}, [][]string{{"Calcium carbonate equivalent (CCE)", number(cce) + " %"}, {"Fineness", notGiven}}
		t.Rules = []string{"Without sieves the CCE is taken for the share that acts."}
		if _, n, ok := m.limed(); ok && n.Ground && !d.Hydrated {
			value = printed(cce * lime.GroundActs * 100 / float64(lime.StandardCCE))
			t.Rules = []string{fmt.Sprintf("The lime table is of ordinary ground limestone, CCE %s %%, of which %s %% acts; a stone without sieves is taken for such.", number(float64(lime.StandardCCE)), number(100*lime.GroundActs))}
			return value, t, []schedule.Reason{said(fmt.Sprintf("Share that acts: %s × %s/%s = %s %%.", number(cce), number(100*lime.GroundActs), number(float64(lime.StandardCCE)), number(value)), "tristate-1995")}, near(value, float64(want))
		}
		return cce, t, []schedule.Reason{said(fmt.Sprintf("Share that acts: the CCE, %s %%.", number(cce)), "psu-report-notes")}, near(cce, float64(want))
	}
	t.Title += ", CCE " + number(cce) + " %"
	t.Head = []string{"Part", "Of the stone", "Acts in 3 years"}
	var parts []string
	sum := 0.0
	for i, acts := range r.Efficiency {
		alone := r // a rule by which only this part acts, to find its share of the weight
		alone.Efficiency = make([]float64, len(r.Efficiency))
		alone.Efficiency[i] = 1
		part, _ := alone.Fineness(d.Fineness)
		name := fmt.Sprintf("held on %d mesh", r.Mesh[0])
		switch {
		case i == len(r.Mesh):
			name = fmt.Sprintf("through %d mesh", r.Mesh[i-1])
		case i > 0:
			name = fmt.Sprintf("%d to %d mesh", r.Mesh[i-1], r.Mesh[i])
		}
		t.Rows = append(t.Rows, []string{name, number(float64(part)) + " %", number(100*acts) + " %"})
		if part > 0 {
			parts = append(parts, fmt.Sprintf("%s %% × %s", number(float64(part)), number(acts)))
		}
		sum += printed(float64(part)) * acts
	}
	t.Rules = []string{"Share that acts = CCE × the sum of each part × what of it acts. CCE, the calcium carbonate equivalent, is what the stone neutralizes beside pure calcium carbonate."}
	sum = printed(sum)
	value = printed(cce * sum / 100)
	steps = []schedule.Reason{said(fmt.Sprintf("Of the grain acts %s = %s %%. Times CCE %s %%: %s %%.", strings.Join(parts, " + "), number(sum), number(cce), number(value)), r.Source)}
	return value, t, steps, near(value, float64(want)) && near(sum, float64(fine))
}

// pack names the pack of a job's material: "40 lb packs".
func (m *maker) pack(e schedule.Entry) string {
	if v := e.Dose.Material.PackVolume; v > 0 {
		return m.volume(m.volumeOf(v)) + " packs"
	}
	if w, ok := e.Dose.Material.PackWeight(); ok {
		return m.weight(m.weightOf(w)) + " packs"
	}
	return "loose"
}

func (m *maker) stone() (task, bool) {
	t := task{topic: limeTopic, urgent: 4, Question: Question{Title: "The stone"}}
	s, ok := m.liming()
	if !ok {
		return t, false
	}
	t.given = append(s.given, Given{Title: "From lime to stone", Rules: []string{"Stone needed = fully effective lime ÷ share that acts."}})
	t.Text = "How much of this stone does the lawn need for each " + m.per() + "? Show the share that acts, then the stone."
	t.Steps = s.steps
	t.Answers = []Answer{{"Share that acts", s.share}, {"Stone", m.rate(s.total)}}
	return t, true
}

func (m *maker) dressings() (task, bool) {
	t := task{topic: limeTopic, urgent: 5, Question: Question{Title: "The dressings"}}
	s, ok := m.liming()
	if !ok {
		return t, false
	}
	most, why := lime.Cap(s.job.Dose.Material, m.area.Seeded.IsZero() || !m.area.Seeded.After(m.p.Start))
	if m.area.Cored && !s.job.Dose.Material.Hydrated {
		most, why = lime.CapCored, said("", "purdue-ay18, psu-report-notes")
	}
	limit := printed(m.rateOf(most))
	n := math.Ceil(s.total/limit - 1e-9)
	each := printed(s.total / n)
	if !near(each, m.rateOf(s.job.Dose.Rate)) {
		return t, false
	}
	t.given = []Given{{Title: "Dressings", Rules: []string{fmt.Sprintf("At most %s of stone at a time: the fewest equal dressings, half a year apart.", m.rate(limit))}}}
	all, inAll := m.inAll(each)
	t.Text = "In how many dressings? How much in all each time?"
	verdict := "not over"
	if n > 1 {
		verdict = "over"
	}
	t.Steps = []schedule.Reason{
		said(fmt.Sprintf("%s is %s %s at a time: %s of %s.", m.rate(s.total), verdict, m.rate(limit), word.Plural(int(n), "dressing"), m.rate(each)), why.Source),
		said(inAll + "."),
	}
	t.Answers = []Answer{{"Dressings", number(n)}, {"Each, in all", m.weight(all)}}
	if w, ok := s.job.Dose.Material.PackWeight(); ok {
		t.Text = "In how many dressings? How much in all each time, and how many packs?"
		packs := printed(all / printed(m.weightOf(w)))
		t.Steps = append(t.Steps, said(fmt.Sprintf("%s ÷ %s = %s packs each time.", m.weight(all), m.weight(m.weightOf(w)), number(packs))))
		t.Answers = append(t.Answers, Answer{"Packs each time", number(packs)})
	}
	return t, true
}
