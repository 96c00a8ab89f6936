package figure

import (
	"slices"
	"strings"
	"testing"

	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule/law"
)

// Each number has limits: what lies on them is read, what lies past them is
// refused with the flag's name and both limits.
func TestLimitsOfNumbers(t *testing.T) {
	const lime, little, rate, md, reading = "lime;--ph=5;--texture=loam;", "lime;--ph=6;--acidity=1;--target=6.5;--depth=2 in;--state=NC;", "rate;--analysis=20-0-0;--n=0.5;", "law;--state=MD;--nitrogen=0.5;--phosphate=0.1;--report=low;", "convert;1 %;--nutrient=calcium;"
	for _, c := range []struct {
		before, flag, range_ string
		in, out              []string
	}{
		{lime, "target", "0 to 14", []string{"5.5", "6.5"}, []string{"-0.1", "14.1", "six"}},
		{"lime;--texture=loam;", "ph", "0 to 14", []string{"5", " 6.5 "}, []string{"-0.1", "14.1", "NaN"}},
		{lime + "--buffer=smp;", "buffer-ph", "0 to 14", []string{"6.4"}, []string{"-0.1", "14.1"}},
		{lime, "acidity", "0 to 100", []string{"0", "4"}, []string{"-0.1", "100.1"}},
		{lime, "cec", "0 to 200", []string{"0", "200", "20 %"}, []string{"-0.1", "200.1"}},
		{lime, "organic-matter", "0 to 100", []string{"0", "4%", "100"}, []string{"-0.1", "100.1"}},
		{little, "cce", "1 to 180", []string{"1", "180", "90%"}, []string{"0.9", "180.1"}},
		{little, "ecce", "1 to 180", []string{"1", "180"}, []string{"0.9", "180.1"}},
		{rate, "slow", "0 to 1", []string{"0", "1", "0.5"}, []string{"-0.1", "1.1"}},
		{md, "slow", "0 to 1", []string{"0", "1"}, []string{"-0.1", "1.1"}},
		{md, "p2o5-percent", "0 to 100", []string{"0", "100"}, []string{"-0.1", "100.1"}},
		{md, "report-age", "0 to 1200", []string{"0", "1200"}, []string{"-1", "1201"}},
		{reading, "cec", "0 to 200", []string{"1", "200"}, []string{"-0.1", "200.1"}},
	} {
		for _, v := range c.in {
			if a, err := ask(t, c.before+"--"+c.flag+"="+v); err != nil || a.Text == "" {
				t.Errorf("%s--%s=%s: %v", c.before, c.flag, v, err)
			}
		}
		for _, v := range c.out {
			want := "--" + c.flag + `: "` + v + `" is not a number from ` + c.range_
			if _, err := ask(t, c.before+"--"+c.flag+"="+v); err == nil || err.Error() != want {
				t.Errorf("%s--%s=%s: %v, want %s", c.before, c.flag, v, err, want)
			}
		}
	}
}

func TestLimitsOfSieves(t *testing.T) {
	const lime = "lime;--ph=5;--texture=loam;--cce=90;--sieves="
	for _, list := range []string{"60=75", "2=100,400=2", "8=100, 60 = 75.5"} {
		if _, err := ask(t, lime+list); err != nil {
			t.Errorf("%s: %v", list, err)
		}
	}
	for list, wrong := range map[string]string{"1=100": "1=100", "401=50": "401=50", "60": "60", "60=": "60=", "=75": "=75", "x=75": "x=75", "60=x": "60=x", "60=-1": "60=-1", "8=100,60=100.1": "60=100.1", "60=NaN": "60=NaN", "8=100,": ""} {
		want := `--sieves: "` + wrong + `" is not of the form MESH=PERCENT, like 60=75`
		if _, err := ask(t, lime+list); err == nil || err.Error() != want {
			t.Errorf("%s: %v, want %s", list, err, want)
		}
	}
}

// The first thing that is missing or wrong is said, by itself.
func TestFirstProblem(t *testing.T) {
	for line, want := range map[string]string{
		"lime;--buffer=smp":                                                  "--ph is missing",
		"lime;--ph=5;--buffer=smp":                                           "--buffer and --buffer-ph belong together: the method and the reading",
		"lime;--ph=5;--buffer-ph=6.4":                                        "--buffer and --buffer-ph belong together: the method and the reading",
		"lime;--ph=5;--buffer=smb;--buffer-ph=6.4":                           `--buffer: unknown "smb"; known: smp`,
		"lime;--ph=5;--texture=granite":                                      `--texture: unknown "granite"; known: sand, loamy sand, sandy loam, loam, silt loam, clay loam, clay, muck`,
		"lime;--ph=x;--target=y":                                             `--ph: "x" is not a number from 0 to 14`,
		"lime;--ph=5;--grass=tall fescu":                                     `--grass: unknown grass "tall fescu"; known: tall fescue`,
		"lime;--ph=5;--target=6;--grass=tall fescue":                         "--grass has no part in this answer; leave it out",
		"lime;--ph=5;--texture=loam;--rule=ohio":                             "--rule: a fineness rule needs --cce and --sieves",
		"lime;--ph=5;--texture=loam;--cce=90;--rule=ohio":                    "--rule: a fineness rule needs --cce and --sieves",
		"lime;--ph=5;--texture=loam;--sieves=8=90;--rule=ohio":               "--rule: a fineness rule needs --cce and --sieves",
		"lime;--ph=5;--texture=loam;--cce=90;--sieves=8=90;--rule=Ohio":      "the label names no sieve of 20 mesh or finer, which Ohio's rule needs",
		"lime;--ph=5;--texture=loam;--amount=60 lb":                          `--amount: "60 lb" is a weight: give the --size of the area it goes on`,
		"lime;--ph=5;--texture=loam;--cce=1":                                 "effective value, %, 0.94 is outside 1 to 250",
		"lime;--ph=5;--texture=loam;--ecce=1":                                "amount, lb/1000 sq ft, 5129 is outside 0 to 5000",
		"lime;--ph=5;--texture=loam;--cce=90;--sieves=60=75;--rule=atlantis": `--rule: no fineness rule of "atlantis" is known; known: missouri; new york; `,
		"spreader;--rate=0;--size=1000 sq ft":                                "a rate of 0 lb per 1000 sq ft on 1000 sq ft",
		"rate;--n=1":                                                         "--analysis is missing",
		"rate;--analysis=20-5-10":                                            "nothing is wanted: give --n, --p2o5 or --k2o",
		"rate;--analysis=20-5-10;--n=x":                                      "--n: ",
		"mix":                                                                "nothing is wanted: give --n, --p2o5 or --k2o",
		"water":                                                              "--depth is missing",
		"water;--depth=1 in;--flow=5 gal":                                    "--size is missing",
		"water;--depth=1 in;--caught=0.1 in;--flow=5 gal":                    "--flow has no part", // what the cups caught gives the amount already
		"water;--depth=1 in;--caught=0.1 in;--sprinkler=1 in/h":              "--sprinkler has no part in this answer; leave it out",
		"water;--depth=1 in;--caught=soon":                                   "--caught: ",
		"water;--depth=1 in;--sprinkler=fast":                                "--sprinkler: ",
		"rate;--analysis=20-5-10;--n=1;--pack=25 lb":                         "--pack: packs are counted for an area: give its --size",
		"lime;--ph=5;--texture=loam;--cce=90;--ecce=80;--sieves=8=100,60=75;--rule=ohio": "--ecce: the bag's own effective value and --rule answer the same question: leave one out",
		"spreader":               "--rate is missing",
		"spreader;--rate=5":      "--size is missing",
		"spreader;--on=50 sq ft": "--caught is missing",
		"spreader;--caught=1 lb": "--on is missing",
		"spreader;--tank=4 gal":  "--covers is missing",
		"spreader;--covers=1000 sq ft per gal;--size=1 acre": "--tank is missing",
		"spreader;--tank=4 gal;--covers=1000 sq ft per gal":  "--size is missing",
		"growth":                                                           "--season is missing",
		"growth;--season=cool":                                             "--mean is missing, or --state, --hardiness and --date",
		"growth;--season=mild;--mean=50 F":                                 `--season: unknown "mild"; known: cool, warm`,
		"growth;--season=cool;--state=OH":                                  "--hardiness is missing",
		"growth;--season=cool;--state=OH;--hardiness=6a":                   "--date is missing",
		"growth;--season=cool;--state=OH;--hardiness=6a;--date=soon":       `--date: "soon" is not a date`,
		"growth;--season=cool;--state=OH;--hardiness=99;--date=2026-10-01": "99",
		"growth;--grass=tall fescu;--mean=50 F":                            `--grass: unknown grass "tall fescu"; known: tall fescue`,
		"growth;--grass=tall fescue;--season=cool;--mean=50 F":             "--season has no part in this answer; leave it out",
		"convert":                             `give one AMOUNT in quotes, like "5 g/m2"`,
		"convert;1 lb;2 lb":                   `give one AMOUNT in quotes`,
		"convert;1 lb;--cec=5":                "--depth and --cec are for a soil reading: add --nutrient",
		"convert;1 lb;--depth=4 in":           "--depth and --cec are for a soil reading: add --nutrient",
		"convert;5 elephants":                 `"5 elephants" has no unit that is known here; for a soil reading add --nutrient`,
		"convert;5 ppm;--nutrient=kalium":     `--nutrient: unknown "kalium"; known: `,
		"convert;5 elephants;--nutrient=iron": "elephants",
		"law":                                 "--state is missing",
		"law;--state=MD;--water=far":          "--water: ",
		"law;--state=MD;--date=2026-13-01":    `--date: "2026-13-01" is not a date`,
		"law;--state=MD;--report=medium":      `--report: unknown "medium"; known: low, enough`,
		"law;--state=MD;--ground=frozen,icy":  `--ground: unknown "icy"; known: open, frozen, snow, saturated, dormant`,
		"law;--state=MD;--county=Atlantis":    `--county: MD has no county "Atlantis"`,
		"law;--state=MD;--county=Calvart":     `--county: MD has no county "Calvart"; known: Calvert`,
	} {
		a, err := ask(t, line)
		if err == nil || !strings.HasPrefix(err.Error(), want) && !(len(want) < 12 && strings.Contains(err.Error(), want)) || a.Text != "" {
			t.Errorf("%s: %q, %v; want %s", line, a.Text, err, want)
		}
	}
}

// A flag that the caller reads is no concern of the figure.
func TestFlagsOfTheCaller(t *testing.T) {
	fs := flag.New("figure convert")
	fs.String("format", "text", "")
	work := convertFigure.Define(fs)
	if err := flag.Parse(fs, []string{"1 lb", "--format", "json"}); err != nil {
		t.Fatal(err)
	}
	if a, err := work(); err != nil || a.Values["lb"] != 1.0 {
		t.Errorf("%v, %v", a, err)
	}
}

// The answer on the law holds every finding, in the order of what decides, what
// was looked at and what is to be kept on the day, and then the notes.
func TestLawShowsAll(t *testing.T) {
	a, err := ask(t, "law;--state=MD;--date=2026-11-20;--nitrogen=0.8;--soluble=0.6")
	if err != nil {
		t.Fatal(err)
	}
	found, err := law.Ask(law.Question{State: "MD", Date: law.MonthDay{Month: 11, Day: 20}, N: 0.8, SolubleN: 0.6, SlowShare: law.Unknown, WaterFeet: law.Unknown, ReportAgeMonths: law.Unknown})
	if err != nil || len(found.Deciding) == 0 || len(found.Also) == 0 || len(found.Conditions) == 0 || len(found.Notes) == 0 {
		t.Fatal(found, err)
	}
	more := a.More
	for _, part := range []struct {
		title, key string
		all        []law.Finding
	}{{"Decided by: ", "deciding", found.Deciding}, {"Also looked at: ", "also", found.Also}, {"On the day: ", "conditions", found.Conditions}} {
		shown := a.Values[part.key].([]findingShown)
		if len(shown) != len(part.all) || len(more) < len(part.all) {
			t.Fatalf("%s: %d of %d", part.key, len(shown), len(part.all))
		}
		for i, f := range part.all {
			if more[i] != part.title+f.String() || shown[i].Rule != f.Rule.ID || shown[i].Text != f.Text {
				t.Errorf("%s: %s, %v", part.key, more[i], shown[i])
			}
		}
		more = more[len(part.all):]
	}
	if !slices.Equal(more, found.Notes) || !slices.Equal(a.Values["notes"].([]string), found.Notes) {
		t.Errorf("notes %q and %q, want %q", more, a.Values["notes"], found.Notes)
	}
	// Maryland's closed days: Md. Code, Agric. § 8-803.5.
	first := a.Values["deciding"].([]findingShown)[0]
	if first.Rule != "md-n-blackout-home" || !strings.Contains(first.Text, "16 Nov") || first.Citation != "Md. Code, Agric. § 8-803.5" || first.AsOf != "2021-11" || first.Read != "read" || first.Confidence != "high" {
		t.Errorf("%+v", first)
	}
	none, err := ask(t, "law;--state=ND;--nitrogen=0.8")
	if err != nil || none.Values["deciding"] == nil || len(none.Values["deciding"].([]findingShown)) != 0 || none.Text != "allowed: ask" {
		t.Errorf("%v, %v: an empty list, and to ask", none.Values, err)
	}
}
