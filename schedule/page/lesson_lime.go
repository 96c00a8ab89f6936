package page

import (
	"fmt"
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/lime"
	"swardbook/agronomy/material"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// lime asks for the requirement, the material and the dressings.
func (l *lesson) lime() part {
	p := part{Title: "Lime"}
	p.Tables = append(p.Tables, l.targets())
	c := l.site.LimeCase(l.area)
	if t, ok := l.limeRows(c); ok {
		p.Tables = append(p.Tables, t)
	}
	limes := l.limes()
	p.Tables = append(p.Tables, limes...)
	need, ok := l.need(schedule.Lime)
	if !ok {
		p.Questions = append(p.Questions, l.ask("Is lime due? From which pH, to which pH?", 3, l.doses(nil, schedule.Lime, schedule.Sulfur)...))
		return p
	}
	p.Questions = append(p.Questions, l.ask("Which pH suits this stand, and is lime due?", 3, append(l.area.Stand.WhyPH(), said(word.Capital(need.Text)+"."))...))
	if len(l.entries(schedule.Sulfur)) > 0 {
		p.Questions = append(p.Questions, l.ask("How much sulfur does it take to lower the pH, and in how many dressings?", 5, l.doses(nil, schedule.Sulfur)...))
	}
	if need.Total == 0 {
		return p
	}
	p.Questions = append(p.Questions,
		l.ask("How much fully effective lime does the soil want, and how much of the material is that? Show each step.", 7, need.Why...),
		l.ask("In how many dressings, how much on this area each time, and how many packs?", 5, l.doses(need.Why, schedule.Lime)...))
	return p
}

func (l *lesson) targets() table {
	t := table{Caption: "pH that suits the grass", Head: []string{"Grass", "Part", "Does well between", "Limed to"}}
	var sources string
	for _, s := range l.area.Stand {
		g, ok := agronomy.GrassPH(s.Grass.Name)
		if !ok {
			continue
		}
		part := "all"
		if len(l.area.Stand) > 1 {
			part = word.Number(float64(s.Percent), 1) + " %"
		}
		t.Rows = append(t.Rows, []string{g.Grass, part,
			g.Low.Words() + " and " + g.High.Words(), g.Default.Words()})
		if sources != "" {
			sources += ", "
		}
		sources += g.Source
	}
	t.Note = l.note("Lime when the pH is under the range that all grasses of the stand share.", sources)
	return t
}

// limeRows is the requirement by the method that this report allows, for
// readings around the one given.
func (l *lesson) limeRows(c lime.Case) (table, bool) {
	at := agronomy.PH(float64(c.PH))
	column, set := "pH", func(c *lime.Case, v agronomy.PH) { c.PH = v }
	if c.Buffer.PH > 0 {
		at = c.Buffer.PH
		column, set = "Buffer pH ("+string(c.Buffer.Method)+")", func(c *lime.Case, v agronomy.PH) { c.Buffer.PH = v }
	}
	goals := []agronomy.PH{6.0, 6.5}
	if !slices.Contains(goals, c.Target) && c.Target > 0 {
		goals = append(goals, c.Target)
		slices.Sort(goals)
	}
	t := table{Caption: fmt.Sprintf("Fully effective lime for the sampled depth, %s", l.rateUnit()), Head: []string{column}}
	for _, g := range goals {
		t.Head = append(t.Head, "to pH "+g.Words())
	}
	method := ""
	for step := -4; step <= 4; step++ {
		v := at + agronomy.PH(step)/10
		row := []string{v.Words()}
		any := false
		for _, g := range goals {
			try := c
			set(&try, v)
			try.Target, try.LimeBelow = g, 0
			need, err := lime.Requirement(try)
			if err != nil {
				row = append(row, "not covered")
				continue
			}
			any = true
			if need.Rate > 0 {
				method = need.Method
			}
			row = append(row, l.rate(need.Rate))
		}
		if any {
			t.Rows = append(t.Rows, row)
		}
	}
	if method == "" {
		return table{}, false
	}
	t.Note = cited{Text: "Method: " + method + ". All else as on this report."}
	return t, true
}

func (l *lesson) rateUnit() string {
	if l.measure.Metric {
		return "g/m²"
	}
	return "lb per 1,000 sq ft"
}

func (l *lesson) rate(r agronomy.PerThousand) string {
	if l.measure.Metric {
		return word.Number(r.GramsPerM2(), 0)
	}
	return word.Number(float64(r), 1)
}

// limes lists the limes at hand and how their sieves count.
func (l *lesson) limes() []table {
	hand := table{Caption: "Lime at hand", Head: []string{"Material", "CCE", "Passing each sieve", "On hand"}}
	sieves := false
	for _, m := range l.site.Materials {
		if m.Kind != material.LimeMaterial {
			continue
		}
		pass := ""
		for _, s := range m.Fineness {
			if pass != "" {
				pass += ", "
			}
			pass += fmt.Sprintf("%d mesh %s %%", s.Mesh, word.Number(float64(s.Passing), 0))
		}
		sieves = sieves || pass != ""
		if m.ECCE > 0 {
			pass = "effective value on the bag: " + word.Number(float64(m.ECCE), 1) + " %"
		}
		hand.Rows = append(hand.Rows, []string{m.Name, word.Number(float64(m.CCE), 0) + " %", pass, l.onHand(m)})
	}
	if len(hand.Rows) == 0 {
		return nil
	}
	out := []table{hand}
	if rule, ok := lime.FinenessRuleOf("Ohio"); ok && sieves {
		t := table{Caption: "How much of each part of the stone acts over three years", Head: []string{"Part", "Share that acts"}}
		for i, e := range rule.Efficiency {
			name := fmt.Sprintf("through %d mesh", rule.Mesh[max(0, i-1)])
			switch {
			case i == 0:
				name = fmt.Sprintf("held on %d mesh", rule.Mesh[0])
			case i < len(rule.Mesh):
				name = fmt.Sprintf("through %d, held on %d mesh", rule.Mesh[i-1], rule.Mesh[i])
			}
			t.Rows = append(t.Rows, []string{name, word.Number(100*e, 0) + " %"})
		}
		t.Note = l.note("Multiply the CCE by the share of the stone that acts.", rule.Source)
		out = append(out, t)
	}
	return out
}
