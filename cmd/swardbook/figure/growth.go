package figure

import (
	"fmt"
	"strconv"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/nutrient"
	"swardbook/climate"
	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule"
)

var growthFigure = Figure{
	Name:    "growth",
	What:    "how fast grass can grow at a temperature, or at a place on a day",
	Example: `--mean "55 F" --season cool`,
	Help: `        --season NAME         cool or warm, or
        --grass NAME          a grass, which tells its season
        --mean T              mean air temperature, like "55 F" or "13 C", each
                              by the form published in that unit; or
        --state CODE          a place
        --hardiness ZONE      with its half-zone
        --date DATE           and a day
`,
	setup: func(fs *flag.Set) func(*asked) (Answer, error) {
		texts(fs, "mean", "season", "grass", "state", "hardiness", "date")
		return growth
	},
}

func growth(q *asked) (Answer, error) {
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
	var a Answer
	var mean temperature
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
		mean.f = y.Mean(d.DayOfYear())
		a.Why = append(a.Why, agronomy.Reason{Text: fmt.Sprintf("The usual mean of %s there is %s, from %s.", d.Short(), mean.f, y.From), Source: "model"})
	}
	if q.err != nil {
		return a, q.err
	}
	p, why := potential(mean, season)
	a.Text = fmt.Sprintf("Growth potential %.2f: %s grass at a mean of %s %s.", p, season, mean.f, pace(p))
	a.Values = map[string]any{"growth_potential": rounded(p, 4), "mean_f": rounded(float64(mean.f), 2)}
	a.Why = append(a.Why, why)
	return a, nil
}

// temperature is a mean, and whether it was given in °F. The growth potential
// is published in both units, and the two forms differ by up to 0.05.
type temperature struct {
	f            climate.Fahrenheit
	inFahrenheit bool
}

// potential works out the growth potential by the form of the unit that the
// mean was given in, and says how. A place's own mean takes the form in °C, by
// which programs are made.
func potential(mean temperature, season climate.Season) (float64, agronomy.Reason) {
	form, t := nutrient.GrowthPotentialC, float64(mean.f.Celsius())
	best, width, unit, source := 20.0, 5.5, "°C", "gp-code" // [gp-code]
	if season == climate.Warm {
		best, width = 31, 7 // [gp-code]
	}
	if mean.inFahrenheit {
		form, t = nutrient.GrowthPotentialF, float64(mean.f)
		best, width, unit, source = 68, 10, "°F", "ny-nmp-2019" // [ny-nmp-2019] [gp-grounds]
		if season == climate.Warm {
			best, width = 88, 12 // [ny-nmp-2019]
		}
	}
	p := form(t, season)
	if season == climate.Warm && t > best+1e-9 { // [gp-pace] 31 °C stays 31 on its way through °F
		return p, agronomy.Reason{Text: fmt.Sprintf("Above %.0f %s, its best temperature, warm-season grass keeps a growth potential of 1.", best, unit), Source: "gp-pace"}
	}
	return p, agronomy.Reason{Text: fmt.Sprintf("Growth potential = exp(−½ × ((%.1f − %g) ÷ %g)²) = %.3f, in %s", t, best, width, p, unit), Source: source}
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
func parseTemperature(text string) (temperature, error) {
	s := strings.ReplaceAll(strings.ToUpper(strings.TrimSpace(text)), "°", "")
	number := strings.TrimSpace(strings.TrimRight(s, "CF"))
	v, err := strconv.ParseFloat(number, 64)
	t := temperature{f: climate.Fahrenheit(v), inFahrenheit: true}
	switch strings.TrimSpace(strings.TrimPrefix(s, number)) {
	case "C":
		t = temperature{f: climate.Celsius(v).Fahrenheit()}
	case "F":
	default:
		return t, fmt.Errorf("%q has no unit; write it as 55 F or 13 C", text)
	}
	if err != nil || !(t.f >= -80 && t.f <= 140) {
		return t, fmt.Errorf("%q is no mean temperature of this world; -62 to 60 °C", text)
	}
	return t, nil
}
