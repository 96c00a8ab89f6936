package lesson

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/agronomy/soil"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// The topics, in the order of the worksheet.
const (
	reportTopic = "What the report says"
	limeTopic   = "Lime"
	feedTopic   = "Feed"
	workTopic   = "The work"
	daysTopic   = "The days"
)

// maker makes the questions of one area.
type maker struct {
	p        *schedule.Program
	site     *schedule.Site
	area     *schedule.Area
	shown    schedule.AreaShown
	report   agronomy.Report
	reported bool
	metric   bool
	size     float64 // as printed, in the site's unit
	jobs     []schedule.Entry
}

func newMaker(p *schedule.Program, a *schedule.Area) *maker {
	m := &maker{p: p, site: p.Site, area: a, metric: p.Metric}
	for _, s := range p.Areas {
		if s.ID == a.ID {
			m.shown = s
		}
	}
	for _, e := range p.Entries {
		if e.Area == a.ID && e.Kind.Spreads() && e.State == schedule.Planned && e.Dose.Rate > 0 {
			m.jobs = append(m.jobs, e)
		}
	}
	m.area = m.inForce()
	m.report, m.reported = m.area.Report()
	m.size = read(number(m.areaOf(a.Size)))
	return m
}

// inForce is the area with the last report whose results are known on the day of the next
// job, as that report shows what earlier lime and feed have done.
func (m *maker) inForce() *schedule.Area {
	a := *m.area
	for _, r := range a.AllReports() {
		if r.Soil != nil && len(m.jobs) > 0 && !r.Answer().After(m.jobs[0].Date) {
			a.Soil, a.Sampled, a.Received = r.Soil, r.Sampled, r.Received
		}
	}
	return &a
}

// begun tells whether the area has jobs behind it.
func (m *maker) begun() bool {
	return slices.ContainsFunc(m.p.Entries, func(e schedule.Entry) bool {
		return e.Area == m.area.ID && e.Kind.Spreads() && e.State != schedule.Planned
	})
}

// Figures stand on the sheet with three digits, and the key goes on from them.

// number writes a figure of the sheet.
func number(v float64) string { return word.Figures(v, 3) }

// read is a figure as the student reads it.
func read(s string) float64 {
	v, _ := strconv.ParseFloat(strings.ReplaceAll(s, ",", ""), 64)
	return v
}

// printed is a figure as it stands on the sheet.
func printed(v float64) float64 { return read(number(v)) }

// near tells whether a result agrees with the program, which rounds amounts to what a
// person can weigh.
func near(result, program float64) bool {
	const slack = 0.04 // [common] what rounding to a weighable amount may move
	d := result - program
	return d <= slack*program && -d <= slack*program
}

// The site's units. A rate over an area, divided by 1000, is the weight in all: lb
// from lb per 1000 sq ft and sq ft, kg from g per m² and m².

func (m *maker) unit(us, metric string) string {
	if m.metric {
		return metric
	}
	return us
}

func (m *maker) rateUnit() string   { return m.unit("lb", "g") }
func (m *maker) weightUnit() string { return m.unit("lb", "kg") }
func (m *maker) volumeUnit() string { return m.unit("gal", "L") }
func (m *maker) areaUnit() string   { return m.unit("sq ft", "m²") }
func (m *maker) depthUnit() string  { return m.unit("in", "mm") }
func (m *maker) per() string        { return m.unit("1,000 sq ft", "m²") }

func (m *maker) rateOf(r agronomy.PerThousand) float64 {
	if m.metric {
		return r.GramsPerM2()
	}
	return float64(r)
}

func (m *maker) weightOf(p agronomy.Pounds) float64 {
	if m.metric {
		return p.Kilograms()
	}
	return float64(p)
}

func (m *maker) volumeOf(g agronomy.Gallons) float64 {
	if m.metric {
		return g.Liters()
	}
	return float64(g)
}

func (m *maker) areaOf(a agronomy.SquareFeet) float64 {
	if m.metric {
		return a.Meters2()
	}
	return float64(a)
}

func (m *maker) depthOf(d agronomy.Inches) float64 {
	if m.metric {
		return float64(d) * agronomy.MillimetersPerInch
	}
	return float64(d)
}

// rate, weight and the rest write a figure with its unit.
func (m *maker) rate(v float64) string   { return number(v) + " " + m.rateUnit() }
func (m *maker) weight(v float64) string { return number(v) + " " + m.weightUnit() }
func (m *maker) volume(v float64) string { return number(v) + " " + m.volumeUnit() }

// inAll is the working from a rate to the weight on the area.
func (m *maker) inAll(rate float64) (float64, string) {
	all := printed(rate * m.size / 1000)
	return all, fmt.Sprintf("%s × %s %s ÷ 1,000 = %s in all", m.rate(rate), number(m.size), m.areaUnit(), m.weight(all))
}

func said(text string, sources ...string) schedule.Reason {
	return schedule.Reason{Text: text, Source: strings.Join(sources, ", ")}
}

// young tells whether the stand is in its first year when the program begins.
func (m *maker) young() bool {
	return !m.area.Seeded.IsZero() && m.p.Start.Before(m.area.Seeded.AddMonths(12))
}

func (m *maker) need(k schedule.Kind) (schedule.Need, bool) {
	i := slices.IndexFunc(m.shown.Needs, func(n schedule.Need) bool { return n.Kind == k })
	if i < 0 {
		return schedule.Need{}, false
	}
	return m.shown.Needs[i], true
}

// jobsOf lists the dated jobs of the area that are of a kind.
func (m *maker) jobsOf(is func(schedule.Kind) bool) []schedule.Entry {
	return slices.DeleteFunc(slices.Clone(m.jobs), func(e schedule.Entry) bool { return !is(e.Kind) })
}

func (m *maker) firstOf(is func(schedule.Kind) bool) (schedule.Entry, bool) {
	all := m.jobsOf(is)
	if len(all) == 0 {
		return schedule.Entry{}, false
	}
	return all[0], true
}

func isLime(k schedule.Kind) bool { return k == schedule.Lime }

// notGiven stands where the file does not say.
const notGiven = "not given"

// facts sets out the lawn, its report, and what suits the grass.
func (m *maker) facts() []Given {
	a := m.area
	lawn := Given{Title: "The lawn", Head: []string{"Fact", "Value"}}
	add := func(name, value string) {
		if value == "" {
			value = notGiven
		}
		lawn.Rows = append(lawn.Rows, []string{name, value})
	}
	add("Place", m.place())
	add("Size", number(m.size)+" "+m.areaUnit())
	add("Grass", a.Stand.String())
	if a.Seeded.IsZero() {
		add("Age", "established")
	} else {
		add("Sown", a.Seeded.Words())
	}
	add("Soil", string(a.Texture))
	add("Care", string(a.Care))
	add("Clippings", map[bool]string{true: "stay on the lawn", false: "removed"}[a.Clippings])
	if m.report.TargetPH > 0 {
		add("pH aimed at", m.report.TargetPH.Words())
	}
	if !m.begun() {
		add("Plan begins", m.p.Start.Words())
	}
	days := "every day"
	if len(m.site.Crew.Days) > 0 {
		days = strings.TrimPrefix(m.site.Crew.DayWords(), "work days are ")
	}
	add("Work days", days)
	for _, s := range m.site.Crew.Away {
		add("Away", s.From.Short()+" to "+s.To.Short())
	}
	if !m.reported {
		return []Given{lawn}
	}
	return []Given{lawn, m.sheet()}
}

func (m *maker) place() string {
	where := m.p.Place.Where
	if where == "" {
		where = m.p.Place.State
	}
	if h := m.p.Place.Hardiness; h != "" {
		where = strings.TrimPrefix(where+", zone "+h, ", ")
	}
	return where
}

// sheet is the table of readings on the laboratory's sheet, as printed.
func (m *maker) sheet() Given {
	r := m.report
	t := Given{Title: "The soil report", Head: []string{"Reading", "Value"}}
	if !m.area.Sampled.IsZero() {
		t.Title += " of " + m.area.Sampled.Short()
	}
	add := func(name, value string) { t.Rows = append(t.Rows, []string{name, value}) }
	extractant := notGiven
	if r.Method != "" {
		extractant = word.Capital(string(r.Method))
	}
	add("Extractant", extractant)
	if r.PH > 0 {
		add("pH", r.PH.Words())
	}
	if r.Buffer.PH > 0 {
		add("Buffer pH ("+r.Buffer.Method.Name()+")", r.Buffer.PH.Words())
	}
	if r.CEC > 0 {
		add("CEC", agronomy.Short(r.CEC)+" meq/100 g")
	}
	if r.OrganicMatter > 0 {
		add("Organic matter", agronomy.Short(r.OrganicMatter)+" %")
	}
	for _, n := range soil.Nutrients() {
		if reading := r.Reading(n); reading.Given {
			value := number(float64(reading.PPM)) + " ppm"
			if as := reading.AsGiven; as != "" && !strings.HasSuffix(as, "ppm") {
				value += " (on the sheet: " + as + ")"
			}
			add(word.Capital(string(n)), value)
		}
	}
	return t
}

// suits is the pH that each grass of the stand likes.
func (m *maker) suits() Given {
	t := Given{Title: "pH that suits the grass", Head: []string{"Grass", "Does well", "Best"}}
	for _, s := range m.area.Stand {
		if g, ok := agronomy.GrassPH(s.Grass.Name); ok {
			t.Rows = append(t.Rows, []string{word.Capital(g.Grass), g.Low.Words() + " to " + g.High.Words(), g.Default.Words()})
		}
	}
	return t
}

// bag names a material, and what is in it.
func bag(d material.Material) string {
	name := word.MaterialName(d)
	if d.Analysis == (agronomy.Analysis{}) {
		return name
	}
	n := func(v agronomy.Percent) string { return strconv.FormatFloat(float64(v), 'f', -1, 64) }
	analysis := n(d.Analysis.N) + "-" + n(d.Analysis.P2O5) + "-" + n(d.Analysis.K2O)
	if strings.Contains(name, analysis) {
		return name
	}
	return name + " " + analysis
}
