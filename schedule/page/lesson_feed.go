package page

import (
	"fmt"
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
	"swardbook/agronomy/soil"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// nitrogen asks for the year's nitrogen and its splits.
func (l *lesson) nitrogen() part {
	p := part{Title: "Nitrogen"}
	season := l.area.Stand.Season()
	year := table{Caption: "A year's nitrogen, clippings removed, " + l.rateUnit(), Head: []string{"Grass", "Low care", "Medium care", "High care"}}
	sources := ""
	for _, s := range l.area.Stand {
		g := s.Grass
		if !g.HasN() {
			continue
		}
		year.Rows = append(year.Rows, []string{g.Name, l.rate(g.N[0]), l.rate(g.N[1]), l.rate(g.N[2])})
		if sources != "" {
			sources += ", "
		}
		sources += g.NSource
	}
	year.Note = l.note("Weight the grasses of a mixture by their parts. Clippings that are returned give back about a quarter.", sources+", uconn-clippings")
	limits := nutrient.LimitsOfNitrogen(season)
	caps := table{Caption: "Limits on nitrogen, " + l.rateUnit(), Head: []string{"Limit", "Most"}, Rows: [][]string{
		{"At once, in all", l.rate(limits.Single)},
		{"At once, half or more of it slow", l.rate(limits.SingleSlow)},
		{"Quick nitrogen at once", l.rate(limits.Soluble)},
		{"Quick nitrogen in 30 days", l.rate(limits.Soluble30Days)},
		{"Days after a quick dose", fmt.Sprint(limits.DaysSoluble)},
		{"Days after a slow dose", fmt.Sprint(limits.DaysSlow)},
	}}
	for _, w := range limits.Why {
		caps.Note.Refs = append(caps.Note.Refs, l.cite.refs(w.Source)...)
	}
	caps.Note.Text = "A law that is stricter comes first."
	caps.Note.Refs = unique(caps.Note.Refs)
	shares := nutrient.SharesOf(season)
	p.Say = append(p.Say, shares.Why.Text)
	p.Tables = append(p.Tables, year, caps, l.feeds())
	need, _ := l.need(schedule.Nitrogen)
	p.Questions = append(p.Questions,
		l.ask("How much nitrogen does this stand want in a year, less what it gets otherwise? Show each step.", 6, append(slices.Clone(need.Why), said(word.Capital(need.Text)+"."))...),
		l.ask("Split it into the fewest doses that keep every limit. Give the material, the rate and the amount on this area.", 7,
			l.doses(need.Why, l.kindsThat(schedule.Kind.Feeds)...)...))
	return p
}

func unique(refs []ref) []ref {
	var out []ref
	for _, r := range refs {
		if !slices.Contains(out, r) {
			out = append(out, r)
		}
	}
	return out
}

// feeds lists the fertilizers at hand.
func (l *lesson) feeds() table {
	t := table{Caption: "Fertilizer at hand", Head: []string{"Material", "N", "P₂O₅", "K₂O", "Slow part of the N", "On hand"}}
	for _, m := range l.site.Materials {
		if m.Kind == material.LimeMaterial || m.Kind == material.SulfurMaterial || m.Kind == material.GypsumMaterial {
			continue
		}
		name := m.Name
		if name == "" {
			name = m.ID
		}
		share := func(v agronomy.Percent) string { return word.Number(float64(v), 1) + " %" }
		t.Rows = append(t.Rows, []string{name, share(m.Analysis.N), share(m.Analysis.P2O5), share(m.Analysis.K2O),
			word.Number(100*m.SlowShare, 0) + " %", l.onHand(m)})
	}
	if len(t.Rows) == 0 {
		t.Rows = append(t.Rows, []string{"none: plain materials are bought", "", "", "", "", ""})
	}
	return t
}

// onHand writes "1.5 packs of 40 lb".
func (l *lesson) onHand(m material.Material) string {
	if w, ok := m.PackWeight(); ok {
		return word.Packs(m.OnHand) + " of " + l.measure.Weight(w)
	}
	return word.Packs(m.OnHand)
}

// straights asks for phosphorus, potassium and magnesium.
func (l *lesson) straights() part {
	p := part{Title: "Phosphorus, potassium and magnesium"}
	r, ok := l.area.Report()
	if !ok {
		p.Say = append(p.Say, "Without a report none of these is planned, except what a starter brings with the seed.")
	} else {
		p.Tables = append(p.Tables, l.byLevel(r)...)
	}
	for _, k := range l.kindsThat(func(k schedule.Kind) bool { return k.Nutrient() != "" }) {
		need, given := l.need(k)
		if !given && len(l.doses(nil, k)) == 0 {
			continue
		}
		answer := slices.Clone(need.Why)
		if given {
			answer = append(answer, said(word.Capital(need.Text)+"."))
		}
		answer = append(answer, l.alongside(k)...)
		p.Questions = append(p.Questions, l.ask(fmt.Sprintf("How much %s does the area want, what brings it, and at what rate?", k.Noun()), 5, append(answer, l.doses(need.Why, k)...)...))
	}
	if len(p.Questions) == 0 {
		p.Questions = append(p.Questions, l.ask("Is anything of these wanted? Say why.", 3, said("The program wants none of them here.")))
	}
	return p
}

// alongside says which feedings bring some phosphorus or potassium.
func (l *lesson) alongside(k schedule.Kind) []schedule.Reason {
	var out []schedule.Reason
	for _, e := range l.entries(l.kindsThat(schedule.Kind.Feeds)...) {
		brings := map[string]agronomy.PerThousand{"P₂O₅": e.P2O5, "K₂O": e.K2O} // what lime brings of magnesium is in the need
		if n := brings[k.Nutrient()]; n >= 0.005 {
			out = append(out, said(fmt.Sprintf("%s, %s, brings %s along.", word.Capital(e.Kind.Noun()), e.Date.Words(), l.measure.NutrientRate(n, k.Nutrient()))))
		}
	}
	return out
}

// byLevel gives the year's amounts for each level, worked out by putting a
// reading in the middle of each band.
func (l *lesson) byLevel(r agronomy.Report) []table {
	isNew := !l.area.Seeded.IsZero() && !l.area.Seeded.Before(l.site.Start)
	t := table{Caption: "A year's amount by level, " + l.rateUnit(), Head: []string{"Nutrient", "Very low", "Low", "Medium", "High"}}
	for _, n := range []struct {
		nutrient agronomy.Nutrient
		name     string
		need     func(agronomy.Report, string, bool) (nutrient.Need, error)
		set      func(*agronomy.Report, agronomy.PPM)
	}{
		{agronomy.Phosphorus, "P₂O₅", nutrient.PhosphorusNeed, func(r *agronomy.Report, v agronomy.PPM) { r.Phosphorus.PPM, r.Phosphorus.PerAcre = v, 0 }},
		{agronomy.Potassium, "K₂O", nutrient.PotassiumNeed, func(r *agronomy.Report, v agronomy.PPM) { r.Potassium.PPM, r.Potassium.PerAcre = v, 0 }},
	} {
		b, ok := soil.BandsOf(r, n.nutrient, l.site.Place.State)
		if reading := r.Reading(n.nutrient); !ok || !reading.Given || reading.Wanted.Given {
			continue
		}
		row := []string{n.name}
		for _, ppm := range []agronomy.PPM{b.Low / 2, (b.Low + b.Medium) / 2, (b.Medium + b.High) / 2, (b.High + b.VeryHigh) / 2} {
			try := r
			n.set(&try, ppm)
			need, err := n.need(try, l.site.Place.State, isNew)
			if err != nil {
				row = append(row, "no figure")
				continue
			}
			row = append(row, l.rate(need.Year))
		}
		t.Rows = append(t.Rows, row)
	}
	if len(t.Rows) == 0 {
		return nil
	}
	t.Note = l.note("A middle way between published amounts.", "common")
	return []table{t}
}
