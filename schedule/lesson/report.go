package lesson

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/soil"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// placed is a reading on its scale.
type placed struct {
	nutrient agronomy.Nutrient
	ppm      float64
	bands    soil.Bands
	level    soil.Level
}

// placings are the readings whose level by the printed table is the level that the
// program found: questions ask about no others.
func (m *maker) placings() []placed {
	var out []placed
	for _, n := range soil.Nutrients() {
		b, ok := soil.BandsOf(m.report, n, m.site.Place.State)
		if !ok || !m.report.Reading(n).Given {
			continue
		}
		p := placed{nutrient: n, ppm: printed(float64(m.report.Reading(n).PPM)), bands: b}
		p.level = levelOn(b, p.ppm)
		i := slices.IndexFunc(m.shown.Findings, func(f schedule.FindingShown) bool { return f.Reading == string(n) })
		if i >= 0 && m.shown.Findings[i].Level == p.level {
			out = append(out, p)
		}
	}
	return out
}

// levelOn reads a scale as printed.
func levelOn(b soil.Bands, v float64) soil.Level {
	edge := func(e agronomy.PPM) float64 { return printed(float64(e)) }
	switch {
	case v < edge(b.Low):
		return soil.VeryLow
	case v < edge(b.Medium):
		return soil.Low
	case v <= edge(b.High):
		return soil.Medium
	case v <= edge(b.VeryHigh):
		return soil.High
	}
	return soil.VeryHigh
}

func (m *maker) levels() (task, bool) {
	t := task{topic: reportTopic, urgent: 1}
	all := m.placings()
	if len(all) == 0 {
		return t, false
	}
	table := Given{Title: "Levels, ppm", Head: []string{"Reading", "very low", "low", "medium", "high", "very high"}, Wide: true}
	var names []string
	for _, p := range all {
		at := func(v agronomy.PPM) string { return number(float64(v)) }
		b := p.bands
		name := word.Capital(string(p.nutrient))
		table.Rows = append(table.Rows, []string{name, "under " + at(b.Low), at(b.Low) + " to " + at(b.Medium),
			at(b.Medium) + " to " + at(b.High), at(b.High) + " to " + at(b.VeryHigh), "over " + at(b.VeryHigh)})
		names = append(names, string(p.nutrient))
		t.Answers = append(t.Answers, Answer{name, string(p.level)})
		t.Steps = append(t.Steps, said(fmt.Sprintf("%s %s ppm: %s.", name, number(p.ppm), p.level), b.Source))
	}
	table.Rules = []string{"Both ends of medium are medium."}
	t.given = []Given{table}
	t.Title, t.Text = "The levels", "Place "+word.List(names)+" on their scales."
	return t, true
}

// sign is what a gardener sees of a shortage.
type sign struct{ of, seen, source string }

// signs lists what a gardener sees, by the reading that is short.
var signs = []sign{
	{sourSoil, "thin turf, short roots; feed does little", "mlsn-2014, common"},
	{chalkySoil, "young leaves yellow between green veins", "az-iron"},
	{"phosphorus", "slow, dark or purple leaves, seedlings first", "uga-tissue, psu-fert-copy"},
	{"potassium", "scorched tips and edges; wears badly", "uga-tissue"},
	{"calcium", "little of its own: acid soil shows first", "common"},
	{"magnesium", "older leaves yellow between the veins", "common"},
	{"sulfur", "young and old leaves pale alike", "common"},
	{"iron", "young leaves yellow between green veins", "az-iron"},
}

// The names in signs of a pH below its range and of one above it.
const (
	sourSoil   = "pH too low"
	chalkySoil = "pH too high"
)

func signOf(reading string) sign {
	i := slices.IndexFunc(signs, func(s sign) bool { return s.of == reading })
	if i < 0 {
		return sign{}
	}
	return signs[i]
}

func readingName(reading string) string {
	if reading == "ph" {
		return "pH"
	}
	return reading
}

// The pH bounds that come before all else in the ranking.
const (
	sourLimit   = 5.5                 // [mlsn-2014]
	chalkyLimit = soil.SulfurFreeLime // [common]
)

// limits asks what is short, and in which order.
func (m *maker) limits() (task, bool) {
	t := task{topic: reportTopic, urgent: 2, Question: Question{Title: "What limits most"}}
	all := m.placings()
	if len(all) == 0 || m.report.PH == 0 {
		return t, false
	}
	short := m.shortages(all)
	if !slices.Equal(short, m.found(all)) {
		return t, false
	}
	_, low, high := m.area.Stand.TargetPH()
	order := Given{Title: "What limits most, in this order", Rules: []string{
		fmt.Sprintf("First a pH under %s and under the range that all grasses of the stand share, or over %s;", number(sourLimit), number(float64(chalkyLimit))),
		"then phosphorus, low or very low, under a stand less than a year old;",
		"then any other pH outside that range;",
		"then, low or very low, phosphorus, potassium, calcium, magnesium, sulfur, iron.",
	}}
	seen := Given{Title: "What one sees of a shortage", Head: []string{"Short", "On the grass"}, Tall: true}
	for _, s := range signs {
		name := word.Capital(s.of)
		if s.of == sourSoil || s.of == chalkySoil {
			name = s.of
		} else if !slices.ContainsFunc(all, func(p placed) bool { return string(p.nutrient) == s.of }) {
			continue
		}
		seen.Rows = append(seen.Rows, []string{name, s.seen})
	}
	t.given = []Given{m.suits(), seen, order}
	ph := fmt.Sprintf("pH %s lies inside %s to %s", m.report.PH.Words(), low.Words(), high.Words())
	if m.report.PH < low || m.report.PH > high {
		ph = fmt.Sprintf("pH %s lies outside %s to %s", m.report.PH.Words(), low.Words(), high.Words())
	}
	t.Steps = append(t.Steps, said(ph+", the range of the grass.", m.phSources()))
	if len(short) == 0 {
		t.Text = "Does any reading limit this grass? Of which nutrient is there more than enough, high or very high?"
		rich := "none"
		var names []string
		for _, p := range all {
			if p.level == soil.High || p.level == soil.VeryHigh {
				names = append(names, string(p.nutrient))
			}
		}
		if len(names) > 0 {
			rich = word.List(names)
		}
		t.Steps = append(t.Steps, said("No reading is low: none limits. High or very high: "+rich+"."))
		t.Answers = []Answer{{"Limits", "none"}, {"More than enough", rich}}
		return t, true
	}
	t.Text = "Which reading limits this grass most? What would a gardener see of it?"
	if len(short) > 1 {
		t.Text = "Which two readings limit this grass most, in order? What would a gardener see of each?"
	}
	for i, s := range short[:min(2, len(short))] {
		name := []string{"Limits most", "Then"}[i]
		t.Answers = append(t.Answers, Answer{name, readingName(s)})
		sees := signOf(s)
		if s == "ph" {
			sees = signOf(map[bool]string{true: sourSoil, false: chalkySoil}[m.report.PH < low])
		}
		t.Steps = append(t.Steps, said(fmt.Sprintf("%s: %s. One sees: %s.", name, readingName(s), sees.seen), sees.source))
	}
	return t, true
}

func (m *maker) phSources() string {
	var out []string
	for _, s := range m.area.Stand {
		if g, ok := agronomy.GrassPH(s.Grass.Name); ok && !slices.Contains(out, g.Source) {
			out = append(out, g.Source)
		}
	}
	return strings.Join(out, ", ")
}

// shortages gives the first two shortages, ranked by the rule on the worksheet.
func (m *maker) shortages(all []placed) []string {
	type one struct {
		name  string
		order int
	}
	var out []one
	ph := m.report.PH
	_, low, high := m.area.Stand.TargetPH()
	if ph < low || ph > high {
		order := 3
		if ph < sourLimit || ph > chalkyLimit {
			order = 1
		}
		out = append(out, one{"ph", order})
	}
	for _, p := range all {
		if p.level != soil.Low && p.level != soil.VeryLow {
			continue
		}
		order := 4 + slices.IndexFunc(signs, func(s sign) bool { return s.of == string(p.nutrient) })
		if p.nutrient == agronomy.Phosphorus && m.young() {
			order = 2
		}
		out = append(out, one{string(p.nutrient), order})
	}
	slices.SortStableFunc(out, func(a, b one) int { return cmp.Compare(a.order, b.order) })
	var names []string
	for _, o := range out {
		names = append(names, o.name)
	}
	return names[:min(2, len(names))]
}

// found gives the first two shortages as the program ranked them.
func (m *maker) found(all []placed) []string {
	var names []string
	for _, f := range m.shown.Findings {
		outside := f.Reading == "ph" && f.Level != soil.Medium
		short := (f.Level == soil.Low || f.Level == soil.VeryLow) &&
			slices.ContainsFunc(all, func(p placed) bool { return string(p.nutrient) == f.Reading })
		if (outside || short) && len(names) < 2 {
			names = append(names, f.Reading)
		}
	}
	return names
}
