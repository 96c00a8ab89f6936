package lesson

import (
	"fmt"
	"math"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// what names a job of the questions.
func what(e schedule.Entry) string { return "the first " + e.Kind.Noun() }

func (m *maker) water() (task, bool) {
	t := task{topic: workTopic, urgent: 11, Question: Question{Title: "Watering in"}}
	var e schedule.Entry
	for _, e = range m.jobs {
		if e.WaterIn > 0 {
			break
		}
	}
	if e.WaterIn <= 0 {
		return t, false
	}
	deep := printed(m.depthOf(e.WaterIn))
	depth := number(deep) + " " + m.depthUnit()
	rules := []string{fmt.Sprintf("Water in %s after %s.", depth, what(e))}
	water, err := material.WaterVolume(e.WaterIn, m.area.Size)
	if err != nil {
		return t, false
	}
	t.given = []Given{{Title: "Watering in", Rules: rules}}
	if rate := m.area.Sprinkler; rate > 0 {
		per := printed(m.depthOf(agronomy.Inches(rate)))
		minutes, err := material.WaterMinutes(e.WaterIn, rate)
		by := printed(deep / per * 60)
		if err != nil || !near(by, minutes) {
			return t, false
		}
		t.given[0].Rules = append(rules, fmt.Sprintf("The sprinkler brings %s %s an hour.", number(per), m.depthUnit()))
		t.Text = "How many minutes does the sprinkler run?"
		t.Steps = []schedule.Reason{said(fmt.Sprintf("%s ÷ %s %s an hour × 60 = %s minutes.", depth, number(per), m.depthUnit(), number(by)), "common")}
		t.Answers = []Answer{{"Minutes", number(by)}}
		return t, true
	}
	var by float64
	if m.metric {
		by = printed(deep * m.size)
		t.given[0].Rules = append(rules, "1 mm of water on 1 m² is 1 L.")
		t.Steps = []schedule.Reason{said(fmt.Sprintf("%s × %s m² = %s.", depth, number(m.size), m.volume(by)), "definitions")}
	} else {
		const perInch = 623 // gal on 1000 sq ft [definitions]
		by = printed(deep * perInch * m.size / 1000)
		t.given[0].Rules = append(rules, fmt.Sprintf("1 in of water on 1,000 sq ft is %d gal.", perInch))
		t.Steps = []schedule.Reason{said(fmt.Sprintf("%s × %d × %s sq ft ÷ 1,000 = %s.", depth, perInch, number(m.size), m.volume(by)), "definitions")}
	}
	t.Text = "How much water does that take in all?"
	t.Answers = []Answer{{"Water in all", m.volume(by)}}
	return t, near(by, m.volumeOf(water))
}

// granular is the first job that a spreader does.
func (m *maker) granular() (schedule.Entry, bool) {
	for _, e := range m.jobs {
		if !e.Dose.Material.Liquid && e.Dose.Rate > 0 {
			return e, true
		}
	}
	return schedule.Entry{}, false
}

func (m *maker) passes() (task, bool) {
	t := task{topic: workTopic, urgent: 12, Question: Question{Title: "The spreader"}}
	e, ok := m.granular()
	if !ok {
		return t, false
	}
	rate := printed(m.rateOf(e.Dose.Rate))
	half := printed(rate / 2)
	t.given = []Given{{Title: "The spreader", Rules: []string{
		fmt.Sprintf("%s spreads %s of %s. Set the spreader to half the rate; half goes one way, half across.", word.Capital(what(e)), m.rate(rate), bag(e.Dose.Material))}}}
	t.Text = "To which rate is the spreader set?"
	t.Steps = []schedule.Reason{said(fmt.Sprintf("%s ÷ 2 = %s.", m.rate(rate), m.rate(half)), "umn-spreader, ill-1995")}
	t.Answers = []Answer{{"Spreader set to", m.rate(half)}}
	if w := m.site.Spreader.Width; w > 0 {
		wide, unit := float64(w), "ft"
		if m.metric {
			wide, unit = float64(w.Meters()), "m"
		}
		wide = printed(wide)
		walk := printed(m.size / wide)
		t.given[0].Rules = append(t.given[0].Rules, fmt.Sprintf("It covers %s %s in width.", number(wide), unit))
		t.Text = "To which rate is the spreader set, and how far does one walk each way?"
		t.Steps = append(t.Steps, said(fmt.Sprintf("%s %s ÷ %s %s = %s %s each way.", number(m.size), m.areaUnit(), number(wide), unit, number(walk), unit)))
		t.Answers = append(t.Answers, Answer{"Walk each way", number(walk) + " " + unit})
	}
	return t, true
}

func (m *maker) sprayer() (task, bool) {
	t := task{topic: workTopic, urgent: 13, Question: Question{Title: "The sprayer"}}
	tank, covers := m.site.Sprayer.Tank, m.site.Sprayer.Covers
	var e schedule.Entry
	for _, j := range m.jobs {
		if j.Gallons > 0 {
			e = j
			break
		}
	}
	if e.Gallons <= 0 || tank <= 0 || covers <= 0 {
		return t, false
	}
	f, err := e.Dose.Spray(m.area.Size, tank, covers)
	if err != nil {
		return t, false
	}
	volume := printed(m.volumeOf(tank))
	per := printed(m.areaOf(covers) / m.volumeOf(1))
	product := printed(m.volumeOf(e.Gallons))
	one := printed(volume * per)
	fills := math.Ceil(m.size/one - 1e-9)
	full := printed(product * one / m.size)
	unit := strings.TrimSuffix(m.volumeUnit(), "s")
	t.given = []Given{{Title: "The sprayer", Wide: true, Rules: []string{
		fmt.Sprintf("The tank holds %s. %s of spray covers %s %s. %s sprays %s of %s in all.",
			m.volume(volume), "1 "+unit, number(per), m.areaUnit(), word.Capital(what(e)), m.volume(product), bag(e.Dose.Material))}}}
	t.Text = "How many times is the tank filled, and how much of the feed goes into a full tank?"
	t.Steps = []schedule.Reason{
		said(fmt.Sprintf("One tank covers %s × %s = %s %s; %s ÷ %s, rounded up: %s fills.", number(volume), number(per), number(one), m.areaUnit(), number(m.size), number(one), number(fills))),
		said(fmt.Sprintf("%s × %s ÷ %s = %s in a full tank.", m.volume(product), number(one), number(m.size), m.volume(full)), "common"),
	}
	t.Answers = []Answer{{"Fills", number(fills)}, {"In a full tank", m.volume(full)}}
	return t, int(fills) == f.Count && f.Count > 1 && near(full, m.volumeOf(f.Product))
}
