package main

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"swardbook/agronomy"
	"swardbook/climate"
	"swardbook/schedule"
)

var growthFigure = figure{
	name:    "growth",
	what:    "how fast grass can grow at a temperature, or at a place on a day",
	example: `--mean "55 F" --season cool`,
	help: `        --season NAME         cool or warm, or
        --grass NAME          a grass, which tells its season
        --mean T              mean air temperature, like "55 F" or "13 C"; or
        --state CODE          a place
        --hardiness ZONE      with its half-zone
        --date DATE           and a day
`,
	setup: func(fs *pflag.FlagSet) func(*asked) (answer, error) {
		texts(fs, "mean", "season", "grass", "state", "hardiness", "date")
		return growth
	},
}

func growth(q *asked) (answer, error) {
	season := climate.Cool
	switch g, ok := agronomy.LookupGrass(strings.ToLower(q.text("grass"))); {
	case q.given("grass") && !ok:
		q.wrong("grass", fmt.Errorf("unknown grass %q; known: %s", q.text("grass"), agronomy.NearestName(q.text("grass"), agronomy.GrassNames())))
	case q.given("grass"):
		season = g.Season
	default:
		if q.need("season"); oneOf(q, "season", "cool", "warm") == "warm" {
			season = climate.Warm
		}
	}
	var a answer
	var mean climate.Fahrenheit
	if q.given("mean") {
		mean = quantityOf(q, "mean", parseTemperature)
	} else {
		if !q.given("state") && q.err == nil {
			q.err = fmt.Errorf("--mean is missing, or --state, --hardiness and --date")
		}
		if q.need("hardiness", "date"); q.err != nil {
			return a, q.err
		}
		d, err := schedule.ParseDate(q.text("date"))
		if err != nil {
			q.wrong("date", err)
			return a, q.err
		}
		y, err := climate.Place{State: strings.ToUpper(q.text("state")), Hardiness: strings.ToLower(q.text("hardiness"))}.Year()
		if err != nil {
			return a, err
		}
		mean = y.Mean(d.DayOfYear())
		a.why = append(a.why, agronomy.Reason{Text: fmt.Sprintf("The usual mean of %s there is %s, from %s.", d.Short(), mean, y.From), Source: "model"})
	}
	if q.err != nil {
		return a, q.err
	}
	p := climate.GrowthPotential(mean, season)
	best, width := "20", "5.5" // [gp-code]
	if season == climate.Warm {
		best, width = "31", "7" // [gp-code]
	}
	a.text = fmt.Sprintf("Growth potential %.2f: %s grass at a mean of %s %s.", p, season, mean, pace(p))
	a.values = map[string]any{"growth_potential": rounded(p, 4), "mean_f": rounded(float64(mean), 2)}
	a.why = append(a.why, agronomy.Reason{Text: fmt.Sprintf("Growth potential = exp(−½ × ((%.1f − %s) ÷ %s)²) = %.3f, in °C", float64(mean.Celsius()), best, width, p), Source: "gp-code, gp-pace"})
	if season == climate.Warm && mean.Celsius() > 31 { // [gp-pace]
		a.why = append(a.why, agronomy.Reason{Text: "Above its best temperature warm-season grass keeps 1.", Source: "gp-pace"})
	}
	return a, nil
}

func pace(p float64) string {
	switch {
	case p >= 0.5:
		return "grows well"
	case p >= 0.1:
		return "grows slowly"
	}
	return "hardly grows"
}

// parseTemperature reads "55 F" or "13 C", with or without the degree sign.
func parseTemperature(t string) (climate.Fahrenheit, error) {
	s := strings.ReplaceAll(strings.ToUpper(strings.TrimSpace(t)), "°", "")
	number := strings.TrimSpace(strings.TrimRight(s, "CF"))
	v, err := strconv.ParseFloat(number, 64)
	f := climate.Fahrenheit(v)
	switch strings.TrimSpace(strings.TrimPrefix(s, number)) {
	case "C":
		f = climate.Celsius(v).Fahrenheit()
	case "F":
	default:
		return 0, fmt.Errorf("%q has no unit; write it as 55 F or 13 C", t)
	}
	if err != nil || !(f >= -80 && f <= 140) {
		return 0, fmt.Errorf("%q is no mean temperature of this world; -62 to 60 °C", t)
	}
	return f, nil
}
