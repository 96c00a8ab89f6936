package schedule

import (
	"fmt"
	"slices"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/lime"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
	"swardbook/agronomy/soil"
	"swardbook/climate"
	"swardbook/schedule/word"
)

// Ground is where something else comes from that is printed of a job: a day, a
// depth of water, a limit of the weather.
type Ground struct {
	Of  string   `json:"of"`
	Why []Reason `json:"why"`
}

// Grounds tells, for what stands beside a job's dose, the working and the source:
// the first and the last day of its window, its last safe day, the watering in, rain
// and wind, the cores of a sample, and the pH that the stone at hand brings.
func (p *Program) Grounds(e *Entry) []Ground {
	c := p.caseFor(e)
	if c == nil {
		return nil
	}
	g := grounds{p: p, e: e, c: c, m: c.Site.Measure()}
	opens, closes, two := strings.Cut(strings.TrimPrefix(e.Window, "opens: "), "; closes: ")
	if !two {
		closes = opens
	}
	if e.State != Finished && !e.Earliest.IsZero() && !e.Kind.Notice() {
		g.add("First day, "+e.Earliest.Short(), g.event(opens, e.Earliest))
		g.add("Last day, "+e.Latest.Short(), g.event(closes, e.Latest))
	}
	if s := e.LastSafe; !s.IsZero() && s != e.Latest && !e.Kind.Notice() {
		g.add("Last safe day, "+s.Short(), g.lastSafe(s))
	}
	if e.Kind == LastSafe {
		g.add("Last safe day, "+e.Date.Short(), g.lastSafe(e.Date))
	}
	g.weather()
	if e.Kind.Samples() {
		how := soil.HowToSample(false)
		g.add(fmt.Sprintf("%d cores", how.Cores), []Reason{{Text: fmt.Sprintf("%d cores: texts ask for 6 to 20 from an area; this is the middle, and most name it", how.Cores), Source: "ar-lime, common"}})
	}
	g.atHand()
	for i := range g.all {
		g.all[i].Why = p.Reasons(g.all[i].Why)
	}
	return g.all
}

type grounds struct {
	p   *Program
	e   *Entry
	c   *Case
	m   word.Measure
	all []Ground
}

func (g *grounds) add(of string, why []Reason) {
	if len(why) > 0 {
		g.all = append(g.all, Ground{of, why})
	}
}

// caseFor gives the case in which an entry was planned; that of the first area for
// what is told of the whole site.
func (p *Program) caseFor(e *Entry) *Case {
	for _, c := range slices.Backward(p.Chapters) {
		if c.Area.ID == e.Area && c.Year == e.Season {
			return c
		}
	}
	if c := p.CaseOf(e.Area); c != nil || len(p.Cases) == 0 {
		return c
	}
	return p.Cases[0]
}

// events are the named days that open and close windows, by what their words hold;
// the first that fits counts.
var events = []struct {
	words string
	why   func(*grounds, string, Date) []Reason
}{
	{"the calendar of", (*grounds).calendar},
	{"a late dose follows", text("the autumn's main doses end so early that the late one keeps its distance", "common")},
	{"start of the program", text("the site file's start: nothing is placed before it", "")},
	{"the season begins", (*grounds).turfYear},
	{"the season ends", (*grounds).turfYear},
	{"the turf year", (*grounds).turfYear},
	{"the last line on record", text("nothing is planned before the last line of the record book", "")},
	{"the answer to the soil sample", text("the report's day of receipt, or two weeks after the sample, as long as a laboratory takes", "common")},
	{"the soil report is three years old", text("a report counts for three years", "psu-report-notes, vt-fall-2008")},
	{"the seedlings stand a first mowing", (*grounds).mown},
	{"mowed three times", text("sprays stay off young grass for six weeks after it is up, about three mowings", "common")},
	{"the seedlings are up", (*grounds).up},
	{"come through the winter", text("a stand sown before the winter takes full doses from about June on, a month after its last small one", "common")},
	{"before the first full dose", text("a stand sown before the winter takes full doses from about June on, a month after its last small one", "common")},
	{"after the starter", text("a quick feeding lasts a month, and the salts of two add up", "common")},
	{"after sowing", text("a starter that was not put down with the seed still serves in the first growing weeks", "common")},
	{"the overseeding", text("seed is sown over then, and nothing else goes down until its seedlings stand a mowing", "common")},
	{"sowing", text("the day of sowing in the site file", "")},
	{"with the seed", text("a starter goes down with the seed", "uc-starter, purdue-p, unl-renovate")},
	{"growth falls to a fifth", (*grounds).slows},
	{"days before the warmest day", text("the spring's feeding ends before the heat", "unl-calc, ill-1995")},
	{"days before", (*grounds).useful},
	{"last safe day before the ground freezes", func(g *grounds, _ string, d Date) []Reason { return g.lastSafe(d) }},
	{"before the ground freezes", (*grounds).useful},
	{"the ground freezes", (*grounds).useful},
	{"the ground is open again", text("soil at 2 in (5 cm) rises through 40 °F (4.4 °C) in spring", "model, common")},
	{"growth begins", (*grounds).growth},
	{"growth ends", (*grounds).growth},
	{"average first freeze", (*grounds).useful},
	{"falls through 50 °F", (*grounds).useful},
	{"falls through 10 °C", (*grounds).useful},
	{"normal highs", text("cool-season grass is not fed while normal highs pass 85 °F; two weeks before it the last feeding is used up", "common, model")},
	{"rises through", text("warm-season grass is fed once the soil at 2 in has warmed to 65 °F", "common, model")},
	{"warmest day", text("counted from the place's warmest day: between them lies the heat", "common, model")},
	{"the year turns", text("the place's coldest day", "model")},
	{"midwinter", text("counted from the place's coldest day", "common, model")},
	{"dressing before", text("half a year between dressings of lime is aimed at, three months are kept", "nc-lee-lime, vt-452-717, common")},
	{"it was missed", text("a missed job is proposed again from the next day on", "common")},
	{"months after the lime", text("a sample 6 to 12 months after lime shows what it did", "psu-report-notes")},
	{"a year after sowing", text("a new lawn is sampled after its first year", "common")},
	{"after the last sample", text("an established lawn is sampled every three years, a new one after its first", "psu-report-notes, vt-fall-2008, common")},
	{"months later", text("a sample is not bound to a day: some months of the same season do", "common")},
	{"any time of the year", text("warm-season grass may be sown all year where the soil stays warm", "common, model")},
	{"the day asked for", text("the sowing day of the site file, a week either way", "")},
	{"after the day", text("the sowing day of the site file, a week either way", "")},
	{"program", text("the last day of the program", "")},
}

func text(t, source string) func(*grounds, string, Date) []Reason {
	return func(_ *grounds, words string, d Date) []Reason {
		return []Reason{{Text: words + ", " + d.Short() + ": " + t, Source: source}}
	}
}

// event tells why a named day falls where it does.
func (g *grounds) event(words string, d Date) []Reason {
	for _, e := range events {
		if strings.Contains(words, e.words) {
			return e.why(g, words, d)
		}
	}
	if g.e.Kind.Sows() { // the climate's own words for a sowing window
		return []Reason{{Text: words + ", " + d.Short() + ": the season in which this grass comes up", Source: "common, model"}}
	}
	return nil
}

func (g *grounds) mown(_ string, d Date) []Reason {
	gap, _ := nutrient.Spacing(nutrient.SeedUp, nutrient.FirstMow)
	up, why := g.emerged(d)
	return append(why, Reason{Text: fmt.Sprintf("up on %s, and %d days to a first mowing: %s", up.Short(), gap.Days, up.AddDays(gap.Days).Short()), Source: gap.Why.Source})
}

func (g *grounds) up(words string, d Date) []Reason {
	up, why := g.emerged(d)
	return append(why, Reason{Text: fmt.Sprintf("up on %s; %s: %s", up.Short(), words, d.Short()), Source: "common"})
}

// emerged gives the day by which most of the seed is up of which a day speaks, and the way
// to it from the sowing: the youngest seed that is up by then.
func (g *grounds) emerged(by Date) (up Date, why []Reason) {
	up, sown, green := g.c.Emerged(), g.c.Seeded, g.c.Sprouts()
	how, of, source := "sown", "stand", ""
	for _, over := range g.c.Oversown {
		if u := g.c.OverUp(over); up.IsZero() || !u.After(by) {
			up, sown, green = u, over, g.c.OverGreen(over)
			how, of, source = "sown over", "seed", "common"
		}
	}
	days, stand, ok := g.c.Area.Stand.MostUp()
	if !ok {
		return up, nil
	}
	text := fmt.Sprintf("%s on %s; most of the %s is up %d days later", how, sown.Short(), of, days)
	if green != sown {
		text = fmt.Sprintf("%s on %s into the cold, it sprouts as growth begins, %s; most of the %s is up %d days later", how, sown.Short(), green.Short(), of, days)
	}
	return up, []Reason{stand, {Text: text, Source: source}}
}

// calendar tells whose days a feeding season keeps to.
func (g *grounds) calendar(words string, d Date) []Reason {
	for _, c := range nutrient.PublishedCalendars() {
		if strings.Contains(words, c.Name) && c.Says != "" {
			return []Reason{{Text: words + ", " + d.Short() + ": " + c.Says, Source: c.Source}}
		}
	}
	return nil
}

func (g *grounds) turfYear(words string, d Date) []Reason {
	from := "warmest"
	if g.c.Season == climate.Warm {
		from = "coldest"
	}
	return []Reason{{Text: fmt.Sprintf("%s, %s: a season of %s grass runs from the %s day of the year to the next", words, d.Short(), g.c.Season, from), Source: "common, model"}}
}

func (g *grounds) growth(words string, d Date) []Reason {
	return []Reason{{Text: fmt.Sprintf("%s, %s: its growth potential, from the day's mean temperature, passes a tenth of its best", words, d.Short()), Source: "gp-pace, model"}}
}

func (g *grounds) slows(words string, d Date) []Reason {
	out := []Reason{{Text: fmt.Sprintf("%s, %s: growth potential, from the day's mean temperature, falls through a fifth", words, d.Short()), Source: "gp-pace, model"}}
	if u, ok := nutrient.LastUsefulFor(nutrient.LastSolubleN, g.c.Season); ok && u.Growth > 0 {
		out = append(out, u.Why)
	}
	return out
}

// useful tells the rule of the last useful day of the job.
func (g *grounds) useful(words string, d Date) []Reason {
	out := []Reason{{Text: words + ": " + d.Short(), Source: "model"}}
	if u, ok := nutrient.LastUsefulFor(g.e.Kind.Of().Last, g.c.Season); ok {
		out = append(out, u.Why)
	}
	return out
}

// lastSafe is the working of the season's last safe day, and of a job's own.
func (g *grounds) lastSafe(d Date) []Reason {
	a := g.c.Almanac
	if a.Ground.Kind == climate.GroundNever {
		return append(g.growth("growth ends", d), Reason{Text: "the ground does not freeze here, so growth closes the season", Source: "model"})
	}
	if a.After(a.Ground.LastSafe, d) != d { // the last day of the job's own window
		out := []Reason{{Text: d.Short() + ": the last day on which this is worth doing, beyond the days that the program plans", Source: "common"}}
		if u, ok := nutrient.LastUsefulFor(g.e.Kind.Of().Last, g.c.Season); ok {
			out = append(out, u.Why)
		}
		return out
	}
	return []Reason{
		{Text: fmt.Sprintf("soil at 2 in (5 cm) falls through 40 °F (4.4 °C) about %s; a week before it: %s", d.AddDays(7).Short(), d.Short()), Source: "model"},
		{Text: fmt.Sprintf("8 years in 10 that day lies within %s of this", word.Plural(a.Ground.LastSafe.Within(), "day")), Source: "model"},
	}
}

// weather tells the watering in, and the limits of rain, wind and heat.
func (g *grounds) weather() {
	e := g.e
	if e.Dose.Rate <= 0 {
		return
	}
	w := e.Dose.WaterIn(material.Use(e.Kind.String()))
	if w.High > 0 {
		g.add(fmt.Sprintf("Water in %s within %s", g.m.Depth(w.Low), word.Plural(w.WithinHours, "hour")), []Reason{
			{Text: fmt.Sprintf("%s: %s to %s of water does it", w.Kind, g.m.Depth(w.Low), g.m.Depth(w.High)), Source: w.Why.Source}, w.Why})
	} else if w.Why.Text != "" {
		g.add("No watering in", []Reason{w.Why})
	}
	if e.IfRain != "" {
		g.add("Rain", []Reason{{Text: fmt.Sprintf("%s or more in a day runs off and takes the material along; light rain, up to %s, waters it in", g.m.Depth(1), g.m.Depth(max(w.High, 0.5))), Source: "common"}})
	}
	for _, r := range material.WeatherCautions(e.Dose.Material) {
		if strings.Contains(r.Text, "wind") {
			g.add("Wind", []Reason{r})
		}
	}
	if _, why, ok := e.Dose.Material.HeatLimit(); ok {
		g.add("Heat", []Reason{why})
	}
}

// atHand tells what the stone in the shed will do to the pH by itself.
func (g *grounds) atHand() {
	m := g.e.Dose.Material
	pack, ok := m.PackWeight()
	if g.e.Kind != Lime || m.ToBuy || !ok || m.OnHand <= 0 || g.c.Area.Soil == nil {
		return
	}
	have := pack * agronomy.Pounds(m.OnHand)
	rate := agronomy.PerThousand(float64(have) * 1000 / float64(g.c.Area.Size))
	worth := g.c.LimeValue(g.c.Area, m)
	value := worth.FirstYear
	acts := rate * agronomy.PerThousand(value) / 100
	out := append([]Reason{{Text: fmt.Sprintf("%s packs × %s lb a pack on %s sq ft = %s lb/1000 sq ft", word.Number(m.OnHand, 2), word.Figures(float64(pack), 3), word.Figures(float64(g.c.Area.Size), 4), word.Figures(float64(rate), 3))}}, worth.Why...)
	out = append(out, Reason{Text: fmt.Sprintf("%s lb/1000 sq ft × %s %% = %s lb/1000 sq ft of lime that acts in the first year", word.Figures(float64(rate), 3), word.Figures(float64(value), 3), word.Figures(float64(acts), 3)), Source: "psu-report-notes"})
	ph, turned, err := lime.ExpectedPH(g.c.Site.LimeCase(g.c.Area), acts)
	if err != nil {
		turned, ph = []Reason{{Text: err.Error()}}, 0
	}
	title := "The lime on hand, if all of it goes here"
	if ph > 0 {
		title += fmt.Sprintf(": about pH %.1f", float64(ph))
	}
	g.add(title, append(out, turned...))
}
