package figure

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/climate"
	"swardbook/cmd/swardbook/flag"
)

// ask works a figure out from a line in which ; parts the words.
func ask(t *testing.T, line string) (Answer, error) {
	t.Helper()
	words := strings.Split(line, ";")
	f, err := Find(words[0])
	if err != nil {
		t.Fatal(err)
	}
	fs := flag.New("figure " + f.Name)
	work := f.Define(fs)
	if err := flag.Parse(fs, words[1:]); err != nil {
		t.Fatal(err)
	}
	return work()
}

// The same amounts in US and in metric units give the same answer. The amounts
// are turned by the definitions: 1 in is 25.4 mm, 1 lb 453.59237 g, 1 gal
// 3.785411784 L (NIST Handbook 44, appendix C, from memory).
func TestBothUnits(t *testing.T) {
	for _, c := range []struct {
		us, metric, key string
		want            any // by hand; 53.57 lb of effective lime is from the table, tested in agronomy
	}{
		{"lime;--ph=5.1;--buffer=smp;--buffer-ph=6.4;--cce=90;--size=2600 sq ft;--depth=4 in",
			"lime;--ph=5.1;--buffer=smp;--buffer-ph=6.4;--cce=90;--size=241.54790 m2;--depth=10.16 cm", "amount_lb", 154.75},
		{"lime;--ph=5.45;--texture=sandy loam;--amount=20 lb/1000 sq ft;--depth=6 in",
			"lime;--ph=5.45;--texture=sandy loam;--amount=97.64855 g/m2;--depth=152.4 mm", "effective_lb_per_1000_sqft", 20.0},
		{"lime;--ph=5.45;--texture=sandy loam;--amount=52 lb;--size=2600 sq ft;--depth=6 in",
			"lime;--ph=5.45;--texture=sandy loam;--amount=23.586803 kg;--size=241.54790 m2;--depth=15.24 cm", "effective_lb_per_1000_sqft", 20.0},
		{"rate;--analysis=12-0-0;--n=0.5;--density=9.6 lb/gal;--pack=2.5 gal;--size=2600 sq ft",
			"rate;--analysis=12-0-0;--n=2.4412138 g/m2;--density=1.1503335 kg/L;--pack=9.4635295 L;--size=241.54790 m2", "gal_per_1000_sqft", 0.434},
		{"rate;--analysis=18-24-12;--n=0.7;--n-cap=0.5;--soluble-cap=0.3;--size=2600 sq ft;--pack=25 lb",
			"rate;--analysis=18-24-12;--n=3.4176994 g/m2;--n-cap=24.412138 kg/ha;--soluble-cap=1.4647283 g/m2;--size=241.54790 m2;--pack=11.339809 kg", "rate_lb_per_1000_sqft", 1.667},
		{"mix;--n=1;--p2o5=0.5;--k2o=1;--material=18-46-0;--material=46-0-0;--material=0-0-60;--size=3500 sq ft",
			"mix;--n=4.8824276 g/m2;--p2o5=2.4412138 g/m2;--k2o=48.824276 kg/ha;--material=18-46-0;--material=46-0-0;--material=0-0-60;--size=325.16064 m2", "short_n_lb_per_1000_sqft", 0.0},
		{"water;--depth=0.25 in;--size=2600 sq ft;--sprinkler=0.4 in/h", "water;--depth=6.35 mm;--size=241.54790 m2;--sprinkler=10.16 mm/h", "minutes", 37.5},
		{"water;--depth=0.5 in;--caught=0.1 in", "water;--depth=1.27 cm;--caught=2.54 mm", "minutes", 75.0},
		{"water;--depth=0.5 in;--flow=5 gal;--size=2600 sq ft", "water;--depth=12.7 mm;--flow=18.927059 L;--size=241.54790 m2", "minutes", 162.1},
		{"spreader;--rate=37 lb/1000 sq ft;--size=2600 sq ft;--width=4 ft", "spreader;--rate=180.64982 g/m2;--size=241.54790 m2;--width=1.2192 m", "half_lb", 48.1},
		{"spreader;--tank=4 gal;--covers=1000 sq ft per gal;--size=9000 sq ft", "spreader;--tank=15.141647 L;--covers=24.542190 m2 per L;--size=836.12736 m2", "last_gal", 1.0},
		{"spreader;--caught=0.5 lb;--on=50 sq ft", "spreader;--caught=226.79619 g;--on=4.645152 m2", "rate_lb_per_1000_sqft", 10.0},
		{"law;--state=MD;--date=2026-10-02;--nitrogen=0.8;--soluble=0.6;--water=12;--year-n=0.5",
			"law;--state=MD;--date=2026-10-02;--nitrogen=3.9059421 g/m2;--soluble=29.294566 kg/ha;--water=3.6576 m;--year-n=2.4412138 g/m2", "allowed", "no"},
		{"convert;28 lb/acre;--nutrient=phosphorus;--depth=4 in", "convert;31.383838 kg/ha;--nutrient=phosphorus;--depth=10.16 cm", "ppm", 23.33333},
		{"convert;1 lb/1000 sq ft", "convert;4.8824276 g/m2", "lb_per_1000_sqft", 1.0},
		{"convert;1 lb", "convert;453.59237 g", "kg", 0.45359237},
		{"convert;2.5 gal", "convert;9.4635295 L", "l", 9.46352946},
		{"convert;2600 sq ft", "convert;241.54790 m2", "sqft", 2600.0},
		{"convert;0.25 in", "convert;6.35 mm", "in", 0.25},
		{"convert;3 ft", "convert;0.9144 m", "m", 0.9144},
	} {
		a, err := ask(t, c.us)
		if err != nil {
			t.Errorf("%s: %v", c.us, err)
			continue
		}
		b, err := ask(t, c.metric)
		if err != nil {
			t.Errorf("%s: %v", c.metric, err)
			continue
		}
		if !same(a.Values[c.key], c.want) {
			t.Errorf("%s: %s is %v, want %v", c.us, c.key, a.Values[c.key], c.want)
		}
		if len(a.Values) != len(b.Values) {
			t.Errorf("%s: values %v and %v", c.us, a.Values, b.Values)
		}
		for key, v := range a.Values {
			if !same(v, b.Values[key]) {
				t.Errorf("%s: %s is %v, in metric %v", c.us, key, v, b.Values[key])
			}
		}
	}
}

func same(a, b any) bool {
	x, ok := a.(float64)
	y, _ := b.(float64)
	if !ok {
		return fmt.Sprint(a) == fmt.Sprint(b)
	}
	return math.Abs(x-y) <= 1e-5*math.Abs(x)+1e-9
}

// A year of Kings Park, New York, as printed in whole percent for means in °F:
// Menchyk, Nutrient management planning for New York State golf courses, 2019,
// figure 5. The form in °C misses May and October by a percent.
func TestGrowthInFahrenheit(t *testing.T) {
	printed := []float64{0, 0, 2, 20, 71, 100, 83, 88, 98, 45, 9, 1}
	for i, mean := range []float64{30.4, 32.9, 39.6, 50.0, 59.7, 69.0, 74.1, 73.0, 66.1, 55.3, 45.9, 35.8} {
		a, err := ask(t, fmt.Sprintf("growth;--season=cool;--mean=%v F", mean))
		if err != nil {
			t.Fatal(err)
		}
		if got := math.Round(100 * a.Values["growth_potential"].(float64)); got != printed[i] {
			t.Errorf("%v °F: %v %%, printed %v", mean, got, printed[i])
		}
	}
}

// In °C the growth potential is the one by which programs are made.
func TestGrowthInCelsius(t *testing.T) {
	for _, season := range []climate.Season{climate.Cool, climate.Warm} {
		for c := -10.0; c <= 40; c += 2.5 {
			a, err := ask(t, fmt.Sprintf("growth;--season=%s;--mean=%v C", strings.TrimSuffix(season.String(), "-season"), c))
			if err != nil {
				t.Fatal(err)
			}
			want := climate.GrowthPotential(climate.Celsius(c).Fahrenheit(), season)
			if got := a.Values["growth_potential"].(float64); math.Abs(got-want) > 0.00005 {
				t.Errorf("%s at %v °C: %v, want %v", season, c, got, want)
			}
		}
	}
}

// What is wrong is a misuse that names the flag, and there is no answer with it.
func TestWrong(t *testing.T) {
	for line, says := range map[string]string{
		"lime":                       "--ph is missing",
		"lime;--ph=5;--buffer=smp":   "belong together",
		"lime;--ph=15":               `--ph: "15" is not a number from 0 to 14`,
		"lime;--ph=5;--amount=60 lb": "is a weight: give the --size",
		"lime;--ph=5;--texture=loam;--seedbed;--amount=20":          "--seedbed has no part in this answer",
		"rate;--analysis=18-24-12;--n=0.7 lb":                       "--n: ",
		"rate;more;--analysis=18-24-12;--n=0.7":                     `"more" is one argument too many`,
		"mix;--n=1;--material=46":                                   "--material: ",
		"growth;--mean=55;--season=cool":                            "has no unit",
		"growth;--mean=200 F;--season=cool":                         "no mean temperature of this world",
		"growth;--mean=55 F;--season=cool;--date=2026-10-01":        "--date has no part in this answer",
		"convert;5 lb;--depth=4 in":                                 "add --nutrient",
		"law;--state=MD;--ground=muddy":                             "--ground: unknown",
		"spreader;--caught=1 lb;--on=20 sq ft;--size=2600 sq ft":    "--size has no part in this answer",
		"water;--depth=0.5 in;--flow=5 gal;--size=2600 square wits": "--size: ",
	} {
		a, err := ask(t, line)
		if err == nil || !strings.Contains(err.Error(), says) || a.Text != "" {
			t.Errorf("%s: %q, %v; want %q", line, a.Text, err, says)
		}
		if !errors.As(err, new(flag.Misuse)) {
			t.Errorf("%s: %T is no misuse", line, err)
		}
	}
	if _, err := Find("limes"); err == nil || !strings.Contains(err.Error(), "known: lime") {
		t.Error(err)
	}
}

// Every source that a working names is listed.
func TestSourcesOfAnswers(t *testing.T) {
	for _, line := range []string{"growth;--season=warm;--mean=95 F", "growth;--season=cool;--mean=50 F", "growth;--season=cool;--mean=10 C", "convert;1 lb"} {
		a, err := ask(t, line)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range a.Why {
			for key := range strings.SplitSeq(r.Source, ", ") {
				if _, ok := agronomy.Sources()[key]; !ok {
					t.Errorf("%s: source %q is not listed", line, key)
				}
			}
		}
	}
}
