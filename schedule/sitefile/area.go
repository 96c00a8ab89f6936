package sitefile

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"swardbook/agronomy"
	"swardbook/agronomy/nutrient"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

func areaIDs(s *schedule.Site) []string {
	var ids []string
	for _, a := range s.Areas {
		ids = append(ids, a.ID)
	}
	return ids
}

func (r *reader) readAreas(top table) {
	t := top.under("area")
	names := t.names()
	switch {
	case len(names) > maxAreas:
		t.wrong("", fmt.Sprintf("%d areas are more than the %d that are read", len(names), maxAreas), "split the site into several files")
		return
	case len(names) == 0 && !top.given("area"):
		top.wrong("area", "no area is described", `begin one with a line such as [area.east], with size = "2600 sq ft" and grass = "perennial ryegrass" below it`)
	}
	for _, id := range names {
		if _, ok := t.values[id].(map[string]any); !ok {
			continue // reported by check
		}
		message, hint := isID(id)
		_, kind := schedule.KindNamed(id)
		switch {
		case message != "":
			t.wrong(id, message, hint)
		case id == "site", kind:
			t.wrong(id, fmt.Sprintf("the id %q means something else here", id), "choose another: site and the kinds of job are taken")
		}
		for _, other := range r.site.Areas {
			if strings.EqualFold(other.ID, id) {
				t.wrong(id, fmt.Sprintf("differs from %q only in capitals", other.ID), "choose an id that cannot be mistaken for it")
			}
		}
		r.site.Areas = append(r.site.Areas, r.readArea(t.under(id), id, len(names) == 1))
	}
}

// readArea reads one area. An area without a name is called by its id, or by the title of
// the site if it is the only one.
func (r *reader) readArea(t table, id string, alone bool) schedule.Area {
	a := schedule.Area{ID: id, Name: t.text("name")}
	if a.Name == "" {
		a.Name = word.Capital(id)
		if alone {
			a.Name = cmp.Or(r.site.Title, a.Name)
		}
	}
	for _, other := range r.site.Areas {
		if strings.EqualFold(other.Name, a.Name) {
			t.doubt("name", fmt.Sprintf("area %s is called %q too, so their jobs read alike", other.ID, other.Name), "give each area a name of its own")
		}
	}
	t.need("size", `like size = "2600 sq ft" or "320 m2"`)
	a.Size = quantity(t, "size", agronomy.ParseArea)
	comma, point := agronomy.PointThousands(t.text("size"))
	switch {
	case point && !strings.Contains(comma, "ac") && !strings.Contains(comma, "ha"): // an area in acres or hectares may well have three decimals
		t.doubt("size", fmt.Sprintf("%q is %s sq ft", t.text("size"), written(float64(a.Size))), "are thousands meant? a point parts the decimals here: write "+comma)
	case a.Size > 0 && a.Size < 100: // [common] a strip of 10 by 10 ft
		t.doubt("size", fmt.Sprintf("%s sq ft is hardly a lawn", written(float64(a.Size))), "is it square meters, square yards or acres, or are digits missing?")
	case a.Size > 20*agronomy.SquareFeetPerAcre: // [common]
		t.doubt("size", fmt.Sprintf("%s acres is more than one crew treats alike", written(float64(a.Size)/agronomy.SquareFeetPerAcre)), "is it square feet? a point parts the decimals, a comma the thousands")
	}
	t.need("grass", `like grass = "perennial ryegrass"`)
	a.Stand = readStand(t)
	a.Seeded = r.readSeeded(t)
	a.Overseed = r.readOverseed(t, a)
	a.Dormant = t.flag("dormant")
	if a.Dormant && !t.given("seeded") {
		t.wrong("dormant", "is set, but no seeding day is given", "give seeded, the day about which to sow")
	}
	a.Texture = choice(t, "texture", agronomy.Textures()...)
	a.Care = choice(t, "care", nutrient.LowCare, nutrient.MediumCare, nutrient.HighCare)
	a.Sprinkler = quantity(t, "sprinkler", agronomy.ParseWatering)
	a.SolubleOnly, a.Cored = t.flag("soluble_only"), t.flag("cored")
	a.Clippings = choice(t, "clippings", "returned", "removed") != "removed"

	assume := func(format string, args ...any) {
		a.Assumed = append(a.Assumed, agronomy.Reason{Text: fmt.Sprintf(format, args...)})
	}
	if !t.given("care") {
		a.Care = nutrient.MediumCare
		assume("%s: care not given, taken as medium", a.Name)
	}
	if !t.given("clippings") {
		assume("%s: not said whether clippings are returned, taken as returned", a.Name)
	}
	if t.given("soil") {
		r.readReports(t.under("soil"), &a, assume)
	}
	return a
}

// readReports reads the soil reports of an area: one that stands by itself, and those
// that stand beside it under their sampling days.
func (r *reader) readReports(all table, a *schedule.Area, assume func(string, ...any)) {
	read := func(s table, sampled schedule.Date) {
		one := schedule.SoilReport{Sampled: sampled, Received: s.date("received"), Soil: readSoil(s, *a)}
		if !one.Received.IsZero() && one.Received.Before(one.Sampled) {
			s.wrong("received", fmt.Sprintf("the answer came on %s, before the soil was sampled, %s", one.Received, one.Sampled), "check the year of both")
		}
		for _, o := range a.Reports {
			if o.Sampled == sampled && !sampled.IsZero() {
				s.wrong("sampled", fmt.Sprintf("two reports are of %s", sampled), "keep the one that holds, or mend the day")
			}
		}
		if !s.given("depth") {
			assume("%s: depth of the sample not given, taken as 4 in", a.Name)
		}
		a.Reports = append(a.Reports, one)
	}
	var dated []string
	alone := len(all.values) == 0
	for _, name := range all.names() {
		if _, err := schedule.ParseDate(name); err == nil {
			dated = append(dated, name)
		} else {
			alone = true
		}
	}
	if alone {
		read(all, r.readSampled(all))
	}
	for _, name := range dated {
		s := all.under(name)
		day, _ := schedule.ParseDate(name)
		if s.given("sampled") && s.date("sampled") != day {
			s.wrong("sampled", fmt.Sprintf("is not %s, by which the report is named", day), "remove it, or name the report by the day of the sample")
		}
		if through := r.site.Through; !through.IsZero() && day.After(through) {
			s.wrong("", fmt.Sprintf("the soil was sampled on %s, after the program ends, %s", day, through), "check the year of both")
		}
		read(s, day)
	}
	slices.SortStableFunc(a.Reports, func(x, y schedule.SoilReport) int { return x.Sampled.Compare(y.Sampled) })
	a.Soil, a.Sampled, a.Received = a.Reports[0].Soil, a.Reports[0].Sampled, a.Reports[0].Received
	if len(a.Reports) == 1 {
		a.Reports = nil
	}
}

// readStand reads one grass, or a mixture with the share of each.
func readStand(t table) agronomy.Stand {
	if name := t.text("grass"); name != "" {
		g, ok := agronomy.LookupGrass(name)
		if !ok {
			t.wrong("grass", fmt.Sprintf("unknown grass %q", name), suggest(name, agronomy.GrassNames()))
			return nil
		}
		return agronomy.Stand{{Grass: g, Percent: 100}}
	}
	mix := t.under("grass")
	if mix.values == nil {
		return nil
	}
	var stand agronomy.Stand
	sum, good := 0.0, true
	for _, name := range mix.names() {
		before := len(t.problems)
		share := mix.number(name, 0.1, 100)
		g, ok := agronomy.LookupGrass(name)
		if !ok {
			mix.wrong(name, fmt.Sprintf("unknown grass %q", name), suggest(name, agronomy.GrassNames()))
		}
		if slices.ContainsFunc(stand, func(s agronomy.Share) bool { return s.Grass.Name == g.Name }) {
			mix.wrong(name, "stands twice in the mixture", "add the two shares up")
		}
		good = good && share > 0 && len(t.problems) == before
		stand = append(stand, agronomy.Share{Grass: g, Percent: agronomy.Percent(share)})
		sum += share
	}
	if good && (sum < 99 || sum > 101) {
		t.wrong("grass", fmt.Sprintf("the shares of the mixture add up to %.4g %%", sum), "make them add up to 100")
	}
	return stand
}

func (r *reader) readSeeded(t table) schedule.Date {
	d := t.date("seeded")
	if d.IsZero() || r.site.Start.IsZero() {
		return d
	}
	if !r.site.Through.IsZero() && d.After(r.site.Through) {
		t.wrong("seeded", fmt.Sprintf("the seeding day, %s, is after the program ends, %s", d, r.site.Through), "move through, or the seeding day")
	}
	if r.winter(d) && !t.flag("dormant") {
		t.doubt("seeded", fmt.Sprintf("seeded in %s: seed hardly comes up then", d.Month), "are month and day mixed up? for seed that is to lie until spring set dormant = true")
	}
	return d
}

// winter tells whether a day is in the winter months, in which seed hardly comes up. Sites
// in the South are not judged.
func (r *reader) winter(d schedule.Date) bool {
	southern := r.site.Place.Latitude != nil && *r.site.Place.Latitude < 0
	return !southern && (d.Month == time.December || d.Month == time.January || d.Month == time.February)
}

// readOverseed reads the day on which thin turf is sown over.
func (r *reader) readOverseed(t table, a schedule.Area) schedule.Date {
	d := t.date("overseed")
	if d.IsZero() {
		return d
	}
	start, through := r.site.Start, r.site.Through
	sod := len(a.Stand) > 0
	if sod {
		_, _, comesUp := a.Stand.MostUp()
		sod = !comesUp
	}
	switch {
	case sod:
		t.wrong("overseed", a.Stand.String()+" is mostly planted as sod or plugs: there is no seed to sow over it", "remove the line, and plug the thin spots")
	case !through.IsZero() && d.After(through):
		t.wrong("overseed", fmt.Sprintf("the overseeding, %s, is after the program ends, %s", d, through), "move through, or the overseeding")
	case !a.Seeded.IsZero() && !d.After(a.Seeded):
		t.wrong("overseed", fmt.Sprintf("the overseeding, %s, is not after the stand was sown, %s", d, a.Seeded), "is it the seeding day, seeded, that is meant?")
	case !a.Seeded.IsZero() && d.Before(a.Seeded.AddMonths(12)):
		t.doubt("overseed", fmt.Sprintf("the overseeding, %s, is within a year of the sowing, %s", d, a.Seeded), "is the year right? a stand in its first year is fed as one already, so the seed gets no starter of its own")
	case !start.IsZero() && d.AddMonths(12).Before(start):
		t.doubt("overseed", fmt.Sprintf("the overseeding, %s, is more than a year before the start and changes nothing", d), "is the year right?")
	case !start.IsZero() && d.DaysFrom(start) > 5*365: // [common]
		t.doubt("overseed", fmt.Sprintf("the overseeding, %s, is more than five years after the start", d), "is the year right?")
	case r.winter(d):
		t.doubt("overseed", fmt.Sprintf("overseeding in %s: seed hardly comes up then", d.Month), "are month and day mixed up?")
	}
	return d
}

func (r *reader) readSampled(s table) schedule.Date {
	s.need("sampled", "the day the soil was taken, like sampled = 2026-08-11; laws and advice depend on its age")
	d := s.date("sampled")
	switch {
	case d.IsZero():
	case !r.site.Through.IsZero() && d.After(r.site.Through):
		s.wrong("sampled", fmt.Sprintf("the soil was sampled on %s, after the program ends, %s", d, r.site.Through), "check the year of both")
	case !r.site.Start.IsZero() && r.site.Start.DaysFrom(d) > 5*365: // [common] reports are repeated every 2 to 4 years
		s.doubt("sampled", fmt.Sprintf("the report is %d years old at the start", r.site.Start.DaysFrom(d)/365), "is the year right? a report that old says little")
	}
	return d
}
