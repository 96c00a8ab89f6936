package page

import (
	"fmt"
	"slices"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/soil"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// siteAndReport sets out what is given.
func (l *lesson) siteAndReport() part {
	a, p := l.area, part{Title: "What is given"}
	facts := table{Caption: "The area", Head: []string{"Fact", "Value"}}
	add := func(name, value string) {
		if value != "" {
			facts.Rows = append(facts.Rows, []string{name, value})
		}
	}
	add("Place", placeWords(l.p))
	add("Size", l.measure.Area(a.Size))
	add("Grass", a.Stand.String())
	if a.Seeded.IsZero() {
		add("Age", "established")
	} else {
		add("Sown", a.Seeded.Words())
	}
	add("Texture", string(a.Texture))
	add("Care", string(a.Care))
	add("Clippings", map[bool]string{true: "returned", false: "removed"}[a.Clippings])
	add("Program", span(l.p.Start, l.p.Through))
	var days []string
	for _, d := range l.site.Crew.Days {
		days = append(days, d.String())
	}
	add("Work days", strings.Join(days, ", "))
	var away []string
	for _, s := range l.site.Crew.Away {
		away = append(away, span(s.From, s.To))
	}
	add("Nobody there", strings.Join(away, "; "))
	p.Tables = append(p.Tables, facts)
	if r, ok := a.Report(); ok {
		p.Tables = append(p.Tables, l.report(r))
	} else {
		p.Say = append(p.Say, "There is no soil report for this area.")
		var left []schedule.Reason
		for _, o := range l.p.LeftOut {
			if o.Area == a.ID {
				left = append(left, schedule.Reason{Text: word.Capital(o.Kind.Noun()) + ": " + o.Reason, Source: o.Source})
			}
		}
		p.Questions = append(p.Questions, l.ask("What can be planned without a report, and what cannot? Say why.", 5, left...))
	}
	return p
}

// report is the laboratory's sheet as given.
func (l *lesson) report(r agronomy.Report) table {
	t := table{Caption: "The soil report", Head: []string{"Reading", "Value"}}
	add := func(name, value string) { t.Rows = append(t.Rows, []string{name, value}) }
	if !l.area.Sampled.IsZero() {
		add("Sampled", l.area.Sampled.Words())
	}
	if r.Depth > 0 {
		add("Depth", l.measure.Depth(r.Depth))
	}
	if r.Method != "" {
		add("Extractant", string(r.Method))
	}
	number := func(name string, v float64, unit string) {
		if v > 0 {
			add(name, strings.TrimSpace(word.Number(v, 2)+" "+unit))
		}
	}
	if r.PH > 0 {
		add("pH", r.PH.Words())
	}
	if r.Buffer.PH > 0 {
		add("Buffer pH ("+string(r.Buffer.Method)+")", r.Buffer.PH.Words())
	}
	number("Exchangeable acidity", float64(r.Acidity), "meq/100 g")
	number("CEC", float64(r.CEC), "meq/100 g")
	number("Organic matter", float64(r.OrganicMatter), "%")
	for _, n := range soil.Nutrients() {
		if reading := r.Reading(n); reading.Given {
			value := reading.AsGiven
			if value == "" {
				value = word.Number(float64(reading.PPM), 1) + " ppm"
			}
			if reading.Wanted.Given {
				value += ", wanted " + reading.Wanted.AsGiven
			}
			add(word.Capital(string(n)), value)
		}
	}
	return t
}

// levels asks what each reading means.
func (l *lesson) levels() part {
	r, _ := l.area.Report()
	p := part{Title: "What the report says"}
	t := table{Caption: "Levels, in ppm of the element", Head: []string{"Reading", "Very low", "Low", "Medium", "High", "Very high"}}
	var sources []string
	perAcre := false
	for _, n := range soil.Nutrients() {
		b, ok := soil.BandsOf(r, n, l.site.Place.State)
		if !ok || !r.Reading(n).Given {
			continue
		}
		perAcre = perAcre || r.Method == agronomy.Mehlich1 && r.Reading(n).PerAcre > 0
		at := func(v agronomy.PPM) string { return word.Number(float64(v), 1) }
		t.Rows = append(t.Rows, []string{word.Capital(string(n)), "under " + at(b.Low), at(b.Low) + " to " + at(b.Medium),
			at(b.Medium) + " to " + at(b.High), at(b.High) + " to " + at(b.VeryHigh), "over " + at(b.VeryHigh)})
		if b.Source != "" && !slices.Contains(sources, b.Source) {
			sources = append(sources, b.Source)
		}
	}
	if len(t.Rows) > 0 {
		t.Note = l.note("An edge between low and medium counts as medium.", strings.Join(sources, ", "))
		p.Tables = append(p.Tables, t)
	}
	if perAcre {
		p.Say = append(p.Say, "Where the sheet counts in lb/acre, halve its figure to read it on this table.")
	}
	var levels, ranks []schedule.Reason
	for i, f := range l.shown.Findings {
		if f.Level != soil.Unknown {
			levels = append(levels, schedule.Reason{Text: fmt.Sprintf("%s %s: %s", readingWords(f.Reading), f.Amount(), f.Level), Source: f.Source})
		}
		if i < 3 {
			ranks = append(ranks, schedule.Reason{Text: fmt.Sprintf("%s: %s", readingWords(f.Reading), f.Text), Source: f.Source})
		}
	}
	p.Questions = append(p.Questions,
		l.ask("Place each reading on its scale.", 5, levels...),
		l.ask("Which three things limit the grass most, and what would a gardener see of each?", 5, ranks...))
	return p
}
