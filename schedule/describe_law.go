package schedule

import (
	"fmt"
	"slices"

	"swardbook/agronomy/material"
	"swardbook/climate"
	"swardbook/schedule/law"
)

// lawConditions are the rules to keep on the day: distance from water, paving,
// the state of the ground, rain.
func (c *treatment) lawConditions(j *Job, m Measure) []string {
	n := nutrients(j.Dose)
	if n == 0 {
		return c.waterEdge(m)
	}
	var out []string
	q := c.question(j.firstDay())
	q.P2O5Percent = float64(j.Dose.Material.Analysis.P2O5)
	if s := c.law.Setback(n, q); s.Plain > 0 {
		text := fmt.Sprintf("By law keep %s from open water", m.Length(climate.Feet(s.Plain)))
		if s.Gentle > 0 && s.Gentle < s.Plain {
			text += fmt.Sprintf(", %s with a drop spreader or a deflector", m.Length(climate.Feet(s.Gentle)))
		}
		out = append(out, text+": "+s.Findings[0].Rule.Citation+".")
		if c.Water > 0 && float64(c.Water) < s.Plain {
			out = append(out, fmt.Sprintf("Open water is %s away here: leave that strip untreated.", m.Length(c.Water)))
		}
	} else {
		out = append(out, c.waterEdge(m)...)
	}
	return append(out, c.law.ofTheDay(n)...)
}

// siteLaw is the rules that a site stands under, and what they say of the day.
type siteLaw struct {
	law.Rules
	days map[law.Nutrient][]string
}

// ofTheDay gathers what the law says of ground, rain and paving into one
// sentence for each citation, once for the whole site.
func (l *siteLaw) ofTheDay(n law.Nutrient) []string {
	if said, known := l.days[n]; known {
		return said
	}
	var cited []string
	says := map[string][]string{}
	add := func(f law.Finding, text string) {
		key := f.Rule.Citation
		if f.Rule.Scope != "" {
			key += ", in " + f.Rule.Scope
		}
		if _, ok := says[key]; !ok {
			cited = append(cited, key)
		}
		if !slices.Contains(says[key], text) {
			says[key] = append(says[key], text)
		}
	}
	for _, f := range l.Ground(n) {
		add(f, "not on "+f.Rule.Ground.String()+" ground")
	}
	for _, f := range l.Rain(n) {
		add(f, "not in heavy rain or before it")
	}
	for _, f := range l.Impervious(n) {
		add(f, "nothing left on paving")
	}
	var out []string
	for _, key := range cited {
		out = append(out, fmt.Sprintf("By law %s (%s).", list(says[key]), key))
	}
	l.days[n] = out
	return out
}

// waterEdge is the usual distance from water where no law names one.
func (c *treatment) waterEdge(m Measure) []string {
	if c.Water == 0 || c.Water > 50 { // [common] near water
		return nil
	}
	return []string{fmt.Sprintf("Open water is %s away: leave a strip of %s untreated along it.", m.Length(c.Water), m.Length(20))} // [common] 20 to 25 ft with a rotary spreader
}

func (j *Job) firstDay() Date {
	if len(j.Windows) == 0 {
		return j.On
	}
	return j.Windows[0].From
}

// nutrients names what a dose brings, as the law counts.
func nutrients(d material.Dose) law.Nutrient {
	var n law.Nutrient
	if d.Material.Kind == material.LimeMaterial {
		return 0
	}
	if d.N > 0 {
		n |= law.Nitrogen
	}
	if d.P2O5 > 0 {
		n |= law.Phosphorus
	}
	if d.K2O > 0 {
		n |= law.Potassium
	}
	return n
}
