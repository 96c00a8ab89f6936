package figure

import (
	"fmt"
	"math"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule/word"
)

var waterFigure = Figure{
	Name:    "water",
	What:    "the water of a depth, in gallons and minutes",
	Example: `--depth "0.25 in" --size "2600 sq ft" --sprinkler "0.4 in/h"`,
	Help: `        --depth D             of water
        --size A              of the area
        --sprinkler R         its rate, like "0.4 in/h" or "10 mm/h"
        --caught D            or the mean depth that cups caught in 15 minutes
        --flow V              or what it gives in a minute, like "5 gal"
`,
	setup: func(fs *flag.Set) func(*asked) (Answer, error) {
		texts(fs, "depth", "size", "sprinkler", "caught", "flow")
		return water
	},
}

func water(q *asked) (Answer, error) {
	q.need("depth")
	depth := quantityOf(q, "depth", agronomy.ParseDepth)
	size := quantityOf(q, "size", agronomy.ParseArea)
	if q.err != nil {
		return Answer{}, q.err
	}
	shown := both(func(m word.Measure) string { return m.Depth(depth) })
	a := Answer{Text: shown + " of water.", Values: map[string]any{"depth_in": rounded(float64(depth), 3)}}
	var sprinkler agronomy.InchesPerHour
	var err error
	switch {
	case q.given("caught"):
		caught := quantityOf(q, "caught", agronomy.ParseDepth)
		if q.err != nil {
			return a, q.err
		}
		sprinkler, err = material.CatchRate(caught)
		a.Why = append(a.Why, agronomy.Reason{Text: fmt.Sprintf("%.2f in caught in 15 minutes is %.2f in an hour.", float64(caught), float64(sprinkler))})
	case q.given("flow"):
		flow := quantityOf(q, "flow", agronomy.ParseVolume)
		if q.need("size"); q.err != nil {
			return a, q.err
		}
		sprinkler, err = material.FlowRate(flow, size)
		a.Why = append(a.Why, agronomy.Reason{Text: fmt.Sprintf("%s gal a minute × 96.25 ÷ %.0f sq ft = %.2f in an hour.", word.Figures(float64(flow), 3), float64(size), float64(sprinkler)), Source: "definitions"})
	default:
		sprinkler = quantityOf(q, "sprinkler", agronomy.ParseWatering)
	}
	if err != nil {
		return a, err
	}
	if size > 0 {
		gallons, err := material.WaterVolume(depth, size)
		if err != nil {
			return a, err
		}
		a.Text = fmt.Sprintf("%s on %s: %s of water.", shown, bothAreas(size), bothVolumes(gallons))
		a.Values["gallons"] = rounded(float64(gallons), 1)
		a.Why = append(a.Why, agronomy.Reason{Text: fmt.Sprintf("1 in on 1,000 sq ft is 623 gal: %s × %.0f/1000 × 623.4 = %s.", word.Figures(float64(depth), 3), float64(size), us.Volume(gallons)), Source: "definitions"})
	}
	if sprinkler > 0 {
		minutes, err := material.WaterMinutes(depth, sprinkler)
		if err != nil {
			return a, err
		}
		a.More = append(a.More, fmt.Sprintf("That takes %.0f minutes at %.2f in (%.0f mm) an hour.", math.Ceil(minutes-1e-6), float64(sprinkler), float64(sprinkler)*agronomy.MillimetersPerInch))
		a.Values["minutes"] = rounded(minutes, 1)
		a.Why = append(a.Why, agronomy.Reason{Text: fmt.Sprintf("%s in ÷ %s in an hour × 60 = %s minutes.", word.Figures(float64(depth), 3), word.Figures(float64(sprinkler), 3), word.Figures(minutes, 3))})
	}
	return a, nil
}

var spreaderFigure = Figure{
	Name:    "spreader",
	What:    "the passes of a spreader, the fills of a sprayer, a calibration",
	Example: `--rate "37 lb/1000 sq ft" --size "2600 sq ft" --width "4 ft"`,
	Help: `        --rate R              of the material
        --size A              of the area
        --width L             the spreader's working width
Fills of a sprayer, for --size:
        --tank V              the tank, like "4 gal"
        --covers C            like "1000 sq ft per gal"
What a spreader is set to, from what it dropped:
        --caught W            the weight that fell
        --on A                on this area
`,
	setup: func(fs *flag.Set) func(*asked) (Answer, error) {
		texts(fs, "rate", "size", "width", "tank", "covers", "caught", "on")
		return spreader
	},
}

func spreader(q *asked) (Answer, error) {
	switch {
	case q.given("caught") || q.given("on"):
		q.need("caught", "on")
		caught, on := quantityOf(q, "caught", agronomy.ParseWeight), quantityOf(q, "on", agronomy.ParseArea)
		if q.err != nil {
			return Answer{}, q.err
		}
		r, err := material.DropCalibration(caught, on)
		return Answer{Text: "The spreader is set to " + bothRates(r) + ".", Values: map[string]any{"rate_lb_per_1000_sqft": rounded(float64(r), 3)},
			Why: []agronomy.Reason{{Text: fmt.Sprintf("%s lb × 1000 ÷ %s sq ft = %s lb per 1,000 sq ft.", word.Figures(float64(caught), 3), word.Figures(float64(on), 4), word.Figures(float64(r), 3)), Source: "definitions"}}}, err
	case q.given("tank") || q.given("covers"):
		q.need("tank", "covers", "size")
		tank, covers, size := quantityOf(q, "tank", agronomy.ParseVolume), quantityOf(q, "covers", agronomy.ParseCoverage), quantityOf(q, "size", agronomy.ParseArea)
		if q.err != nil {
			return Answer{}, q.err
		}
		f, err := material.TankFills(size, tank, agronomy.SquareFeet(covers))
		if err != nil {
			return Answer{}, err
		}
		a := Answer{Text: fmt.Sprintf("1 fill of %s.", bothVolumes(f.Last)),
			Values: map[string]any{"fills": f.Count, "last_gal": rounded(float64(f.Last), 3), "covers_sqft": rounded(float64(f.Covers), 1)}, Why: f.Steps}
		if f.Count > 1 {
			a.Text = fmt.Sprintf("%d fills; the last holds %s.", f.Count, bothVolumes(f.Last))
		}
		a.Why = append(a.Why, agronomy.Reason{Text: fmt.Sprintf("%s × %s sq ft = %s to a tank.", us.Volume(tank), word.Figures(float64(covers), 4), us.Area(f.Covers))})
		return a, nil
	}
	q.need("rate", "size")
	rate, size, width := q.rate("rate"), quantityOf(q, "size", agronomy.ParseArea), quantityOf(q, "width", agronomy.ParseLength)
	if q.err != nil {
		return Answer{}, q.err
	}
	sp, err := material.SpreadOver(rate, size, width)
	if err != nil {
		return Answer{}, err
	}
	return Answer{Text: fmt.Sprintf("Half the rate, %s, in each of two directions: %s each time.", bothRates(sp.HalfRate), bothWeights(sp.HalfWeight)),
		Values: map[string]any{"half_rate_lb_per_1000_sqft": rounded(float64(sp.HalfRate), 3), "half_lb": rounded(float64(sp.HalfWeight), 3), "walk_ft": rounded(float64(sp.Walk), 1)},
		Why:    sp.Steps()}, nil
}
