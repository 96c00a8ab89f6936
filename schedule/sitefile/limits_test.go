package sitefile

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"swardbook/schedule"
)

// at gives what is said at a key, and whether any of it is more than a warning.
func at(ps []schedule.Problem, key string) (said string, fatal bool) {
	for _, p := range ps {
		if p.Key == key {
			said += p.Message + " (" + p.Hint + ")\n"
			fatal = fatal || !p.Warning
		}
	}
	return said, fatal
}

// set gives a text with keys set to other values, "" to none.
func set(t *testing.T, text string, pairs ...string) string {
	t.Helper()
	for i := 0; i < len(pairs); i += 2 {
		if pairs[i+1] == "" {
			text = string(Without([]byte(text), pairs[i]))
			continue
		}
		changed, _, err := With([]byte(text), pairs[i], pairs[i+1])
		if err != nil {
			t.Fatalf("%s = %s: %v", pairs[i], pairs[i+1], err)
		}
		text = string(changed)
	}
	return text
}

// Each number of the site file has limits: what lies on them is read, what lies
// past them is refused with both.
func TestLimitsOfNumbers(t *testing.T) {
	full := string(mustRead(t, "testdata/full.toml"))
	for _, c := range []struct {
		key, range_ string
		in, out     []string
		also        []string // other keys, changed so that the limit can be reached
	}{
		{"crew.budget", "0.01 to 1,000,000", []string{"0.01", "1000000"}, []string{"0.009", "1000001", "-1"}, nil},
		{"crew.jobs_per_day", "1 to 100", []string{"1", "100"}, []string{"0", "101"}, nil},
		{"place.latitude", "-90 to 90", []string{"40"}, []string{"-90.1", "90.1"}, nil},
		{"place.longitude", "-180 to 180", []string{"-83"}, []string{"-180.1", "180.1"}, nil},
		{"area.east.soil.ph", "2 to 12", []string{"2", "12"}, []string{"1.9", "12.1"}, nil},
		{"area.east.soil.buffer.ph", "3 to 9", []string{"3", "9"}, []string{"2.9", "9.1"}, nil},
		{"area.east.soil.target_ph", "4.5 to 8", []string{"4.5", "8"}, []string{"4.4", "8.1"}, nil},
		{"area.east.soil.cec", "0.1 to 200", []string{"0.1", "200"}, []string{"0", "200.1"}, nil},
		{"area.east.soil.acidity", "0 to 100", []string{"0", "100"}, []string{"-0.1", "100.1"}, nil},
		{"area.east.soil.lime_ecce", "1 to 180", []string{"1", "180"}, []string{"0.9", "180.1"}, nil},
		{"area.east.grass.fine fescue", "0.1 to 100", nil, nil, nil},
		{"material.limestone.cce", "1 to 180", []string{"1", "180"}, []string{"0.9", "180.1"}, []string{"material.limestone.ecce", ""}},
		{"material.limestone.ecce", "1 to 180", []string{"1", "90"}, []string{"0.9", "180.1"}, nil},
		{"material.limestone.fineness.8", "0 to 100", nil, nil, nil},
		{"material.limestone.magnesium", "0 to 61", []string{"0", "61"}, []string{"-1", "61.1"}, nil},
		{"material.limestone.on_hand", "0 to 10,000", []string{"0", "10000"}, []string{"-0.1", "10000.1"}, nil},
		{"material.limestone.price", "0 to 1,000,000", []string{"0", "1000000"}, []string{"-0.1", "1000000.1"}, nil},
		{"material.starter.slow_share", "0 to 1", []string{"0", "1"}, []string{"-0.1", "1.1"}, nil},
		{"material.starter.sulfur", "0 to 100", []string{"0", "46"}, []string{"-0.1", "100.1"}, nil},
		{"material.starter.iron", "0 to 40", []string{"0", "40"}, []string{"-0.1", "40.1"}, nil},
	} {
		for _, v := range c.in {
			_, ps := load(t, set(t, full, append(c.also, c.key, v)...))
			if said, fatal := at(ps, c.key); fatal {
				t.Errorf("%s = %s: %s", c.key, v, said)
			}
		}
		for _, v := range c.out {
			s, ps := load(t, set(t, full, append(c.also, c.key, v)...))
			if said, fatal := at(ps, c.key); s != nil || !fatal || !strings.Contains(said, " is outside "+c.range_+" (") || !strings.Contains(said, "give a value from "+c.range_) {
				t.Errorf("%s = %s: %s", c.key, v, said)
			}
		}
	}
}

// For a number that has lost its decimal point, the hint gives it with the point.
func TestShiftedNumbers(t *testing.T) {
	full := string(mustRead(t, "testdata/full.toml"))
	for _, c := range []struct{ key, value, hint string }{
		{"area.east.soil.ph", "64", "did you mean 6.4?"}, {"area.east.soil.ph", "640", "did you mean 6.4?"}, {"area.east.soil.ph", "120", "did you mean 12?"},
		{"area.east.soil.ph", "6400", ""}, {"area.east.soil.ph", "-5", ""}, {"area.east.soil.ph", "20", "did you mean 2?"}, {"area.east.soil.ph", "121", ""}, {"area.east.soil.ph", "1.5", ""},
		{"material.starter.slow_share", "40", "did you mean 0.4?"}, {"material.starter.slow_share", "10", "did you mean 1?"}, {"area.east.soil.ph", "1e12", ""},
	} {
		_, ps := load(t, set(t, full, c.key, c.value))
		said, _ := at(ps, c.key)
		if !strings.Contains(said, c.hint) || strings.Contains(said, "did you mean") != (c.hint != "") {
			t.Errorf("%s = %s: %s, want %q", c.key, c.value, said, c.hint)
		}
	}
	if _, ps := load(t, set(t, full, "area.east.soil.ph", "1234567890")); !says(ps, "area.east.soil.ph", "1.23457e+09 is outside") {
		t.Errorf("%v", ps)
	}
	if _, ps := load(t, set(t, full, "area.east.soil.ph", "999999999")); !says(ps, "area.east.soil.ph", "999,999,999 is outside") {
		t.Errorf("%v", ps)
	}
}

// Each amount and day has limits: "" nothing is said, "~..." a warning, else a refusal.
func TestLimitsOfValues(t *testing.T) {
	full := string(mustRead(t, "testdata/full.toml"))
	for _, c := range []struct{ key, value, says string }{
		{"area.east.size", "100 sq ft", ""}, {"area.east.size", "99 sq ft", "~99 sq ft is hardly a lawn"}, {"area.east.size", "871200 sq ft", ""}, {"area.east.size", "20 acres", ""},
		{"area.east.size", "871201 sq ft", "~20.000023 acres is more than one crew"}, {"area.east.size", "21 acres", "~21 acres is more"}, {"area.east.size", "5.200 sq ft", `~"5.200 sq ft" is 5.2 sq ft`},
		{"area.east.size", "0.250 acre", ""}, {"area.east.size", "0.250 ha", ""}, {"area.east.size", "1.250 m2", "~are thousands meant?"}, {"area.east.size", "0,250 acre", "0.250 acre"},
		{"area.east.soil.depth", "1 in", ""}, {"area.east.soil.depth", "24 in", ""}, {"area.east.soil.depth", "0.9 in", "samples are taken 1 to 24 in deep"}, {"area.east.soil.depth", "24.1 in", "not believable here"},
		{"spreader.width", "0.5 ft", ""}, {"spreader.width", "60 ft", ""}, {"spreader.width", "0.4 ft", "0.5 to 60 ft wide"}, {"spreader.width", "60.1 ft", "0.5 to 60 ft wide"},
		{"place.water_within", "0 ft", ""}, {"place.water_within", "5280 ft", ""}, {"place.water_within", "5281 ft", "up to a mile"},
		{"sprayer.tank", "0.1 gal", ""}, {"sprayer.tank", "0 gal", "is nothing"},
		{"material.liquid.pack", "0 gal", "is nothing"}, {"material.limestone.pack", "0 lb", "is nothing"}, {"material.limestone.pack", "2 gal", "the material is granular"}, {"material.starter.lasts", "0 weeks", "is nothing"},
		{"local.max_n_per_application", "0.1 lb/1000 sq ft", ""}, {"local.max_n_per_application", "0.099 lb/1000 sq ft", "~is 0.099 lb/1000 sq ft, less than any feeding"},
		{"local.max_n_per_application", "0.7 lb/acre", "~not lb/acre"}, {"local.max_n_per_application", "0 lb/acre", "is nothing"},
		{"area.east.soil.nitrogen", "8 lb/1000 sq ft", ""}, {"area.east.soil.nitrogen", "8.1 lb/1000 sq ft", "~more than laboratories ask for"}, {"area.east.soil.phosphate", "8 lb/1000 sq ft", ""}, {"area.east.soil.phosphate", "8.1 lb/1000 sq ft", "~more than"},
		{"area.east.soil.potash", "8 lb/1000 sq ft", ""}, {"area.east.soil.potash", "8.1 lb/1000 sq ft", "~more than"}, {"area.east.soil.lime", "571 lb/1000 sq ft", ""}, {"area.east.soil.lime", "572 lb/1000 sq ft", "~more than"}, // 400 lb of effective lime at 70 %
		{"area.east.soil.sampled", "2021-09-13", ""}, {"area.east.soil.sampled", "2021-09-12", "~the report is 5 years old"}, {"area.east.soil.sampled", "2027-09-12", "after the program ends"},
		{"area.east.soil.received", "2026-08-11", ""}, {"area.east.soil.received", "2026-08-10", "before the soil was sampled"},
		{"area.east.seeded", "2025-03-01", ""}, {"area.east.seeded", "2025-11-30", ""}, {"area.east.seeded", "2025-12-01", "~seeded in December"}, {"area.east.seeded", "2026-01-31", "~seeded in January"}, {"area.east.seeded", "2026-02-28", "~seeded in February"},
		{"area.east.seeded", "2027-09-12", "after the program ends"}, {"area.west.seeded", "2027-01-08", ""}, // dormant
		{"start", "1990-01-01", ""}, {"start", "1989-12-31", "the year 1989 is not believable"}, {"through", "2101-01-01", "give a day from 1990 to 2100"},
		{"through", "2026-09-12", ""}, {"through", "2026-09-11", "is before the start"}, {"through", "2029-09-11", ""}, {"through", "2029-09-12", "would run for 1097 days"}, // 1096 at most
		{"id", strings.Repeat("x", 40), ""}, {"id", strings.Repeat("x", 41), "has 41 letters"}, {"id", "a_b", "cannot be an id"}, {"id", "a-B-9", ""}, {"id", "ö", "cannot be an id"},
		{"title", strings.Repeat("ö", 200), ""},
		{"calendar.secret", strings.Repeat("s", 16), ""}, {"calendar.secret", strings.Repeat("s", 15), "16 to 64"}, {"calendar.secret", strings.Repeat("s", 64), ""}, {"calendar.secret", strings.Repeat("s", 65), "16 to 64"}, {"calendar.secret", "a secret of many words", "16 to 64"}, {"calendar.secret", "a_secret-of_Words-09", ""},
		{"calendar.link", "http://example.org", ""}, {"calendar.link", "https://example.org/a?b", ""}, {"calendar.link", "ftp://example.org", "is not a web address"}, {"calendar.link", "https://", "is not a web address"}, {"calendar.link", "https://example.org/a b", "is not a web address"}, {"calendar.link", "https://example.org/<a>", "is not a web address"},
		{"calendar.remind", `["168h before"]`, ""}, {"calendar.remind", `["169h before"]`, "is not a reminder"}, {"calendar.remind", `["24h after"]`, ""}, {"calendar.remind", `["25h after"]`, "is not a reminder"}, {"calendar.remind", `["7d before"]`, ""}, {"calendar.remind", `["8d before"]`, "is not a reminder"},
		{"calendar.remind", `["1440m after"]`, ""}, {"calendar.remind", `["1441m after"]`, "is not a reminder"}, {"calendar.remind", `["7h after", "7h after"]`, "is given twice"}, {"calendar.remind", `["1h after", "2h after", "3h after"]`, "3 reminders are too many"},
		{"crew.days", "[]", "no day is left to work on"}, {"crew.days", `["sat", "Saturday"]`, "~Saturday is listed twice"}, {"crew.days", `["mon", "TUE", "Wednesday", "thu", "fri", "sat", "sun"]`, ""}, {"crew.days", `["sund"]`, `unknown day "sund"`},
		{"crew.away", `["2026-03-10/2026-03-16"]`, ""}, {"crew.away", `["2026-03-10/2026-03-15"]`, "~lies outside the program"}, // half a year before 12 Sep
		{"crew.away", `["2027-09-11/2027-10-01"]`, ""}, {"crew.away", `["2027-09-12"]`, "~2027-09-12 to 2027-09-12 lies outside"}, {"crew.away", `["2026-10-04/2026-10-03"]`, "ends before it begins"}, {"crew.away", `["2026-10-04/2026-10-04"]`, ""},
		{"material.starter.slow_share", "0.02", ""}, {"material.starter.slow_share", "0.019", "~0.019 means 1.9 % of the nitrogen"}, {"material.starter.analysis", "0-24-12", ""}, {"material.starter.analysis", "0-0-0", ""}, {"material.liquid.analysis", "0-0-0", "~brings no nutrient"},
		{"material.starter.analysis", "60-20-17", ""}, {"material.starter.analysis", "60-20-17.1", "adds up to 100.1 %"}, // with 3 % sulfur
		{"material.limestone.cce", "110", ""}, {"material.limestone.cce", "110.1", "~110.1 % is more than ground limestone has"}, {"material.limestone.cce", "76", ""}, {"material.limestone.ecce", "90", ""}, {"material.limestone.ecce", "90.1", "have the two changed places?"},
		{"material.limestone.ecce", "40", ""}, {"material.limestone.ecce", "39.9", "~39.9 % is less than any limestone"},
		{"place.first_freeze", "02-29", ""}, {"place.first_freeze", "02-30", "is not a day of the year"}, {"place.last_freeze", "12-32", "is not a day of the year"}, {"place.elevation", "-1501 ft", "not a believable size"}, {"place.elevation", "-5 ft", ""},
		{"place.county", "delaware county", ""}, {"place.county", "Delawere", "Delaware"}, {"units", "US", ""}, {"units", "metrical", `unknown value "metrical"`},
		{"area.east.soil.method", "Mehlich III", ""}, {"area.east.soil.method", "mehlich-4", "unknown value"},
		{"local.no_nitrogen", `["11-15/03-01", "06-01/06-01"]`, ""}, {"local.no_nitrogen", `["11-15/03-32"]`, "is not a run of days of the year"}, {"local.no_nitrogen", `["13-15/03-01"]`, "is not a run of days of the year"},
	} {
		_, ps := load(t, set(t, full, c.key, c.value))
		said, fatal := at(ps, c.key)
		want, warning := strings.CutPrefix(c.says, "~")
		if want == "" && fatal || want != "" && (!strings.Contains(said, want) || fatal == warning) || want == "" && said != "" && !strings.Contains(said, "extractant") {
			t.Errorf("%s = %s: %q, fatal %t; want %q", c.key, c.value, said, fatal, c.says)
		}
	}
}

// Keys that contradict or need each other.
func TestKeysTogether(t *testing.T) {
	full := string(mustRead(t, "testdata/full.toml"))
	for _, c := range []struct {
		at, says string // as in TestLimitsOfValues
		pairs    []string
	}{
		{"place.longitude", "83.1 is in the eastern half of the world (west is negative: did you mean -83.1?)", []string{"place.longitude", "83.1"}},
		{"place.longitude", "~83.1 is east of Greenwich, where OH is not (west is negative: longitude = -83.1)", []string{"place.longitude", "83.1", "place.zip", "", "place.county", "", "place.hardiness", "",
			"place.mean_high_f", "[36, 40, 51, 63, 73, 82, 85, 84, 77, 65, 52, 40]", "place.mean_low_f", "[20, 23, 31, 40, 51, 60, 64, 62, 55, 43, 34, 25]"}},
		{"place.longitude", "", []string{"place.longitude", "173", "place.state", "AK", "place.zip", "", "place.county", "", "place.latitude", "52"}},
		{"area.east.seeded", "", []string{"area.east.seeded", "2026-01-31", "place.latitude", "-40", "place.state", "", "place.zip", "", "place.county", ""}},
		{"area.east.seeded", "", []string{"area.east.seeded", "2026-01-31", "area.east.dormant", "true", "area.east.overseed", ""}},
		{"area.east.dormant", "is set, but no seeding day", []string{"area.east.dormant", "true", "area.east.seeded", ""}},
		{"area.east.dormant", "", []string{"area.east.dormant", "true"}},
		{"area.west.name", "~area east is called", []string{"area.west.name", "EAST LAWN"}},
		{"area.west.name", "", []string{"area.west.name", "West lawn"}},
		{"material.limestone.cce", "", []string{"material.limestone.cce", "136", "material.limestone.hydrated", "true"}},
		{"material.limestone.cce", "", []string{"material.limestone.cce", ""}}, // the effective value is enough
		{"material.limestone.cce", "is missing", []string{"material.limestone.cce", "", "material.limestone.ecce", ""}},
		{"material.limestone.cce", "~39.9 % is less than any limestone", []string{"material.limestone.cce", "39.9", "material.limestone.ecce", ""}},
		{"material.limestone.cce", "", []string{"material.limestone.cce", "40", "material.limestone.ecce", ""}},
		{"material.limestone.kind", "", []string{"material.limestone.kind", ""}},
		{"material.starter.slow_share", "is a share of the nitrogen, and the analysis has none", []string{"material.starter.analysis", "0-24-12"}},
		{"material.starter.lasts", "~is missing: how long", []string{"material.starter.lasts", ""}},
		{"material.starter.lasts", "", []string{"material.starter.lasts", "", "material.starter.slow_share", "0"}},
		{"material.starter.slow_share", "~is missing, so all the nitrogen counts as quick", []string{"material.starter.slow_share", ""}},
		{"material.starter.analysis", "is missing", []string{"material.starter.analysis", "", "material.starter.kind", "fertilizer"}},
		{"material.starter.kind", "known: lime, fertilizer", []string{"material.starter.analysis", ""}},
		{"material.starter.pack", "is missing", []string{"material.starter.pack", ""}},
		{"material.starter.pack", "", []string{"material.starter.pack", "", "material.starter.on_hand", ""}},
		{"material.starter.pack", "is missing", []string{"material.starter.pack", "", "material.starter.on_hand", "", "material.starter.price", "12"}},
		{"material.starter.density", "means nothing for a granular material", []string{"material.starter.density", "9.6 lb/gal"}},
		{"material.liquid.density", "is missing", []string{"material.liquid.density", ""}},
		{"material.limestone.counted", "but not what was counted", []string{"material.limestone.on_hand", ""}},
		{"material.limestone.slow_share", "means nothing for a material of kind lime (it belongs to kind fertilizer;", []string{"material.limestone.slow_share", "0.4"}},
		{"material.limestone.lasts", "means nothing for a material of kind lime", []string{"material.limestone.lasts", "8 weeks"}},
		{"material.starter.cce", "it belongs to kind lime", []string{"material.starter.cce", "90"}},
		{"material.starter.hydrated", "it belongs to kind lime", []string{"material.starter.hydrated", "true"}},
		{"material.starter.ecce", "means nothing", []string{"material.starter.ecce", "90", "material.starter.kind", "wood ash"}},
		{"material.starter.analysis", "", []string{"material.starter.cce", "50", "material.starter.kind", "wood ash", "material.starter.slow_share", "", "material.starter.lasts", ""}},
		{"material.starter.cce", "", []string{"material.starter.cce", "50", "material.starter.kind", "wood ash", "material.starter.slow_share", "", "material.starter.lasts", ""}},
		{"material.starter.sulfur", "is missing (the percentage of sulfur", []string{"material.starter.kind", "sulfur", "material.starter.sulfur", ""}},
		{"material.starter.iron", "is missing (the percentage of iron", []string{"material.starter.kind", "iron", "material.starter.iron", ""}},
		{"material.starter.magnesium", "is missing (the percentage of magnesium", []string{"material.starter.kind", "magnesium"}},
		{"local.note", "~is missing (say where the rule comes from", []string{"local.note", ""}},
		{"local.note", "~is missing", []string{"local.note", "", "local.no_nitrogen", "[]"}},
		{"local.note", "~is missing", []string{"local.note", "", "local.max_n_per_application", "", "local.no_nitrogen", "[]", "local.no_phosphorus", `["11-15/03-01"]`}},
		{"local.note", "", []string{"local.note", "", "local.max_n_per_application", "", "local.no_nitrogen", "[]"}},
		{"area.east.soil.lime_ecce", "no lime is given", []string{"area.east.soil.lime", ""}},
		{"area.west.soil.method", "", nil}, // its readings have the laboratory's own optimum
		{"area.east.soil.method", "~is missing, so phosphorus and potassium have no scale", []string{"area.east.soil.method", ""}},
		{"area.east.soil.method", "~is missing", []string{"area.east.soil.method", "", "area.east.soil.phosphorus", ""}},
		{"area.east.soil.method", "", []string{"area.east.soil.method", "", "area.east.soil.phosphorus", "", "area.east.soil.potassium", ""}},
		{"crew.absent.mara", "", []string{"crew.absent.mara", `["2026-10-20"]`}},
		{"crew.absent.marra", `unknown person "marra" (did you mean mara?)`, []string{"crew.absent.marra", `["2026-10-20"]`}},
		{"crew.who.north", "is neither an area nor a kind of job", []string{"crew.who.north", "mara"}},
		{`crew.who."north/lime"`, `"north" is no area`, []string{`crew.who."north/lime"`, "mara"}},
		{`crew.who."east/liem"`, `"liem" is no kind of job (did you mean lime?)`, []string{`crew.who."east/liem"`, "mara"}},
		{`crew.who."east/lime/x"`, `"x" is no number of a job`, []string{`crew.who."east/lime/x"`, "mara"}},
		{`crew.who."east/lime/2026-1"`, "", []string{`crew.who."east/lime/2026-1"`, "mara"}},
		{`crew.who."east/lime"`, `unknown person "maara"`, []string{`crew.who."east/lime"`, "maara"}},
		{"place.mean_low_f", "is missing (give the highs and the lows", []string{"place.mean_high_f", "[36, 40, 51, 63, 73, 82, 85, 84, 77, 65, 52, 40]"}},
		{"place.mean_high_f", "is missing", []string{"place.mean_low_f", "[20, 23, 31, 40, 51, 60, 64, 62, 55, 43, 34, 25]"}},
		{"place.mean_high_c", "are given in °F and in °C", []string{"place.mean_high_c", "[2, 4, 11, 17, 23, 28, 29, 29, 25, 18, 11, 4]", "place.mean_low_f", "[20, 23, 31, 40, 51, 60, 64, 62, 55, 43, 34, 25]"}},
		{"place.mean_low_c", "are given in °F and in °C", []string{"place.mean_low_c", "[-7, -5, -1, 4, 11, 16, 18, 17, 13, 6, 1, -4]", "place.mean_low_f", "[20, 23, 31, 40, 51, 60, 64, 62, 55, 43, 34, 25]"}},
		{"place.normals", "as a file and as numbers", []string{"place.normals", "station.csv", "place.mean_low_c", "[-7, -5, -1, 4, 11, 16, 18, 17, 13, 6, 1, -4]"}},
		{"place.normals", "as a file and as numbers", []string{"place.normals", "station.csv", "place.mean_high_f", "[36, 40, 51, 63, 73, 82, 85, 84, 77, 65, 52, 40]"}},
		{"place.normals", "leads out of the folder", []string{"place.normals", "../station.csv"}},
		{"place.normals", "leads out of the folder", []string{"place.normals", `C:station.csv`}},
		{"place.normals", "cannot open", []string{"place.normals", "nowhere.csv"}},
	} {
		_, ps := load(t, set(t, full, c.pairs...))
		said, fatal := at(ps, c.at)
		want, warning := strings.CutPrefix(c.says, "~")
		if want == "" && said != "" || want != "" && (!strings.Contains(said, want) || fatal == warning) {
			t.Errorf("%v: %s: %q, fatal %t; want %q", c.pairs, c.at, said, fatal, c.says)
		}
	}
}

// Twelve means, each within what a month may have; in °C as in °F.
func TestLimitsOfMonths(t *testing.T) {
	const head = "id = \"x\"\ntitle = \"X\"\nstart = 2026-09-12\n[area.a]\nsize = \"2000 sq ft\"\ngrass = \"tall fescue\"\n[place]\nlatitude = 40\n"
	months := func(first string, n int) string { return "[" + first + strings.Repeat(", 20", n-1) + "]" }
	for _, c := range []struct {
		unit, first string
		n           int
		says        string
	}{
		{"f", "-80", 12, ""}, {"f", "-80.1", 12, "value 1, -80.1, is no monthly mean (means lie between -80 and 130;"}, {"f", "130", 12, ""}, {"f", "130.1", 12, "value 1, 130.1"}, {"c", "-62", 12, ""}, {"c", "-62.1", 12, "means lie between -62 and 54"},
		{"c", "54", 12, ""}, {"c", "54.1", 12, "value 1, 54.1"}, {"f", "36", 11, "has 11 values where there must be 12"}, {"f", "36", 13, "has 13 values"}, {"f", "36", 100, "has 100 values"}, {"f", "36", 101, "a list of 101 is too long"},
	} {
		_, ps := load(t, head+"mean_high_"+c.unit+" = "+months(c.first, c.n)+"\nmean_low_"+c.unit+" = "+months("20", 12)+"\n")
		said, _ := at(ps, "place.mean_high_"+c.unit)
		if c.says == "" && strings.Contains(said, "value 1") || !strings.Contains(said, c.says) {
			t.Errorf("%s %s ×%d: %s", c.unit, c.first, c.n, said)
		}
	}
	s, ps := load(t, head+"mean_high_c = [2, 4, 11, 17, 23, 28, 29, 29, 25, 18, 11, 4]\nmean_low_c = [-7, -5, -1, 4, 11, 16, 18, 17, 13, 6, 1, -4]\n")
	if s == nil || s.Place.Highs[1] != 39.2 || s.Place.Lows[0] != 19.4 || s.Place.NormalsFrom != "monthly normals typed in" { // 4 °C, -7 °C
		t.Errorf("%v", ps)
	}
	if s, ps = load(t, head+"normals = \"station.csv\"\n"); s == nil || s.Place.NormalsFrom != "station file station.csv" || len(s.Place.Highs) != 12 || len(s.Place.Lows) != 12 {
		t.Errorf("%v", ps)
	}
}

// A list that holds something else names the value, by its place in the list.
func TestListsOfTheWrongKind(t *testing.T) {
	for _, c := range []struct{ key, text, says string }{
		{"crew.away", lawn + "[crew]\naway = [\"2026-10-03/2026-10-11\", 5]\n", "a plain number as value 2 where a list of texts"},
		{"crew.away", lawn + "[crew]\naway = [\"2026-10-03/2026-10-11\", \"2026-10-20\", true]\n", "a wrong type as value 3 where a list of texts"},
		{"area.east.soil.ph", lawn + "depth = \"4 in\"\nph = \"2026-09-12\"\n", "is text where a plain number is wanted"}, // a day in quotes is one only where a day is wanted
		{"crew.away", lawn + "[crew]\naway = [2026-10-03]\n", "a wrong type as value 1 where a list of texts"},
		{"crew.away", lawn + "[crew]\naway = [\"2026-10-03/2026-10-11\", \"\"]\n", "value 2: is empty"},
		{"place.mean_high_f", strings.Replace(lawn, "hardiness", "mean_high_f = [33, 36, nan, 60, 71, 80, 84, 82, 75, 63, 50, 38]\nhardiness", 1), "value 3: "},
		{"place.mean_high_f", strings.Replace(lawn, "hardiness", "mean_high_f = [33, 36, 47, \"60\", 71, 80, 84, 82, 75, 63, 50, 38]\nhardiness", 1), "text as value 4 where a list of twelve numbers"},
	} {
		if _, ps := load(t, c.text); !says(ps, c.key, c.says) {
			t.Errorf("%s: nothing says %q: %v", c.key, c.says, ps)
		}
	}
}

// A latitude or a longitude alone says nothing about the place; together they do, and
// so does either beside a state or a zone.
func TestHalfAPosition(t *testing.T) {
	for place, whole := range map[string]bool{
		"": false, "latitude = 40": false, "longitude = -83": false, "latitude = 40\nlongitude = -83": true,
		"latitude = 40\nhardiness = \"6a\"": true, "longitude = -83\nstate = \"OH\"": true,
	} {
		s, ps := load(t, "id = \"x\"\ntitle = \"X\"\nstart = 2026-09-12\n[area.a]\nsize = \"2000 sq ft\"\ngrass = \"tall fescue\"\n[place]\n"+place+"\n")
		if nothing := says(ps, "place", "nothing is said about the place"); nothing == whole || (s != nil) != whole || len(ps) > 1 {
			t.Errorf("%q: read %v, %v", place, s != nil, ps)
		}
		if whole && strings.Contains(fmt.Sprint(s.Assumed), "no state's law on fertilizer is looked up") == strings.Contains(place, "state") {
			t.Errorf("%q: assumed %v", place, s.Assumed)
		}
	}
}

// Sieves: their numbers, the order of what passes, and a digit that is missing.
func TestLimitsOfSieves(t *testing.T) {
	stone := lawn + "[material.stone]\nkind = \"lime\"\ncce = 90\nfineness = "
	for _, c := range []struct{ list, key, says string }{
		{`{ "2" = 100, "400" = 0 }`, "", ""}, {`{ "1" = 100 }`, "1", "is not the mesh of a sieve"}, {`{ "401" = 10 }`, "401", "is not the mesh of a sieve"}, {`{ "60" = 100.1 }`, "60", "outside 0 to 100"}, {`{ "60" = -1 }`, "60", "outside 0 to 100"},
		{`{ "8" = 50 }`, "", ""}, {`{ "8" = 49.9 }`, "8", "~only 49.9 % passes 8 mesh"}, {`{ "20" = 30 }`, "", ""}, {`{ "20" = 29.9 }`, "20", "~only 29.9 % passes 20 mesh"},
		{`{ "60" = 15 }`, "", ""}, {`{ "60" = 14.9 }`, "60", "~only 14.9 %"}, {`{ "100" = 10 }`, "", ""}, {`{ "100" = 9.9 }`, "100", "~only 9.9 %"}, {`{ "100" = 0 }`, "", ""}, {`{ "40" = 1 }`, "", ""},
		{`{ "60" = 75, "20" = 75 }`, "", ""}, {`{ "60" = 75, "20" = 74 }`, "60", "more passes sieve 60 than the coarser sieve 20"},
	} {
		_, ps := load(t, stone+c.list+"\n")
		said, fatal := at(ps, "material.stone.fineness."+c.key)
		want, warning := strings.CutPrefix(c.says, "~")
		if c.says == "" && len(ps) > 0 || c.says != "" && (!strings.Contains(said, want) || fatal == warning) {
			t.Errorf("%s: %s, %v", c.list, said, ps)
		}
	}
	if _, ps := load(t, stone+"{ }\n"); len(ps) == 0 {
		t.Error("no sieve at all, and nothing is said")
	}
}

// Several reports of one area, each under its day: they stand in the order of
// their days, and what is wrong with one is said at it.
func TestDatedReports(t *testing.T) {
	area := strings.TrimSuffix(lawn, "[area.east.soil]\nsampled = 2026-08-11\n")
	dated := func(day, more string) string { return "[area.east.soil.\"" + day + "\"]\nph = 6\n" + more }
	s, ps := load(t, area+dated("2026-08-11", "received = 2026-08-20\ndepth = \"6 in\"\n")+dated("2024-03-01", "depth = \"4 in\"\n"))
	if s == nil || len(ps) > 0 {
		t.Fatal(ps)
	}
	a := s.Areas[0]
	if len(a.Reports) != 2 || a.Reports[0].Sampled != day(2024, 3, 1) || a.Reports[1].Sampled != day(2026, 8, 11) || a.Reports[1].Received != day(2026, 8, 20) || a.Sampled != day(2024, 3, 1) || a.Soil.Depth != 4 || a.Reports[1].Soil.Depth != 6 {
		t.Errorf("%+v", a)
	}
	if s, ps = load(t, area+dated("2026-08-11", "depth = \"6 in\"\n")); s == nil || s.Areas[0].Reports != nil || s.Areas[0].Sampled != day(2026, 8, 11) || s.Areas[0].Soil.PH != 6 {
		t.Errorf("one report alone: %v", ps)
	}
	for _, c := range []struct{ text, key, says string }{
		{area + dated("2026-08-11", "sampled = 2026-08-12\n"), "area.east.soil.2026-08-11.sampled", "is not 2026-08-11, by which the report is named"},
		{area + dated("2026-08-11", "received = 2026-08-10\n"), "area.east.soil.2026-08-11.received", "before the soil was sampled"},
		{strings.Replace(area, "[place]", "through = 2027-08-01\n[place]", 1) + dated("2027-08-02", ""), "area.east.soil.2027-08-02", "after the program ends, 2027-08-01"},
		{area + dated("2026-02-30", ""), "area.east.soil.2026-02-30", "unknown key"},
		{lawn + "ph = 6\n" + dated("2026-08-11", ""), "area.east.soil.2026-08-11.sampled", "two reports are of 2026-08-11"},
	} {
		if _, ps := load(t, c.text); !says(ps, c.key, c.says) {
			t.Errorf("%s: %v", c.says, ps)
		}
	}
	if s, ps = load(t, strings.Replace(area, "[place]", "through = 2027-08-01\n[place]", 1)+dated("2027-08-01", "sampled = 2027-08-01\n")); s == nil {
		t.Errorf("a report of the last day: %v", ps)
	}
}

// As many areas and materials as are read, and not one more; as many bytes, and as deep.
func TestLimitsOfFiles(t *testing.T) {
	many := func(table, more string, n int) string {
		var b strings.Builder
		for i := range n {
			fmt.Fprintf(&b, "[%s.n%d]\n%s", table, i, more)
		}
		return b.String()
	}
	for _, c := range []struct {
		name, text, says string
	}{
		{"500 areas", many("area", "", 500), ""}, {"501 areas", many("area", "", 501), "501 areas are more than the 500"},
		{"200 materials", many("material", "", 200), ""}, {"201 materials", many("material", "", 201), "201 materials are more than the 200"},
		{"a megabyte", "#" + strings.Repeat(" ", 1<<20-2) + "\n", ""}, {"a megabyte and a byte", "#" + strings.Repeat(" ", 1<<20-1) + "\n", "more than the 1048576 that are read"},
		{"12 deep", strings.TrimSuffix(strings.Repeat("a.", 12), ".") + " = 1\n", ""}, {"13 deep", strings.TrimSuffix(strings.Repeat("a.", 13), ".") + " = 1\n", "nested more than 12 deep"},
		{"tables in braces 12 deep", "a = " + strings.Repeat("{a = ", 11) + "1" + strings.Repeat("}", 11) + "\n", ""}, {"tables in braces 13 deep", "a = " + strings.Repeat("{a = ", 12) + "1" + strings.Repeat("}", 12) + "\n", "nested more than 12 deep"},
		{"lists 12 deep", "a = " + strings.Repeat("[", 12) + strings.Repeat("]", 12) + "\n", ""}, {"lists 13 deep", "a = " + strings.Repeat("[", 13) + strings.Repeat("]", 13) + "\n", "nested more than 12 deep"},
	} {
		_, ps := load(t, c.text)
		found := slices.ContainsFunc(ps, func(p schedule.Problem) bool {
			return strings.Contains(p.Message, "more than") && strings.Contains(p.Message, c.says)
		})
		if found != (c.says != "") {
			t.Errorf("%s: %v", c.name, ps[:min(3, len(ps))])
		}
	}
}
