package main

import (
	"fmt"
	"math"

	"github.com/spf13/pflag"

	"swardbook/agronomy"
	"swardbook/schedule"
)

var waterFigure = figure{
	name:    "water",
	what:    "the water of a depth, in gallons and minutes",
	example: `--depth "0.25 in" --size "2600 sq ft" --sprinkler "0.4 in/h"`,
	help: `        --depth D             of water
        --size A              of the area
        --sprinkler R         its rate, like "0.4 in/h" or "10 mm/h"
        --caught D            or the mean depth that cups caught in 15 minutes
        --flow V              or what it gives in a minute, like "5 gal"
`,
	setup: func(fs *pflag.FlagSet) func(*asked) (answer, error) {
		texts(fs, "depth", "size", "sprinkler", "caught", "flow")
		return water
	},
}

func water(q *asked) (answer, error) {
	q.need("depth")
	depth := quantityOf(q, "depth", agronomy.ParseDepth)
	size := quantityOf(q, "size", agronomy.ParseArea)
	sprinkler := quantityOf(q, "sprinkler", agronomy.ParseWatering)
	caught := quantityOf(q, "caught", agronomy.ParseDepth)
	flow := quantityOf(q, "flow", agronomy.ParseVolume)
	if q.err != nil {
		return answer{}, q.err
	}
	shown := both(func(m schedule.Measure) string { return m.Depth(depth) })
	a := answer{text: shown + " of water.", values: map[string]any{"depth_in": rounded(float64(depth), 3)}}
	var err error
	switch {
	case q.given("caught"):
		sprinkler, err = agronomy.CatchRate(caught)
		a.why = append(a.why, agronomy.Reason{Text: fmt.Sprintf("%.2f in caught in 15 minutes is %.2f in an hour.", float64(caught), float64(sprinkler))})
	case q.given("flow"):
		if q.need("size"); q.err != nil {
			return a, q.err
		}
		sprinkler, err = agronomy.FlowRate(flow, size)
		a.why = append(a.why, agronomy.Reason{Text: fmt.Sprintf("%s gal a minute × 96.25 ÷ %.0f sq ft = %.2f in an hour.", schedule.Figures(float64(flow), 3), float64(size), float64(sprinkler)), Source: "definitions"})
	}
	if err != nil {
		return a, err
	}
	if size > 0 {
		gallons, err := agronomy.WaterVolume(depth, size)
		if err != nil {
			return a, err
		}
		a.text = fmt.Sprintf("%s on %s: %s of water.", shown, bothAreas(size), bothVolumes(gallons))
		a.values["gallons"] = rounded(float64(gallons), 1)
		a.why = append(a.why, agronomy.Reason{Text: fmt.Sprintf("1 in on 1,000 sq ft is 623 gal: %s × %.0f/1000 × 623.4 = %s.", schedule.Figures(float64(depth), 3), float64(size), us.Volume(gallons)), Source: "definitions"})
	}
	if sprinkler > 0 {
		minutes, err := agronomy.WaterMinutes(depth, sprinkler)
		if err != nil {
			return a, err
		}
		a.more = append(a.more, fmt.Sprintf("That takes %.0f minutes at %.2f in (%.0f mm) an hour.", math.Ceil(minutes-1e-6), float64(sprinkler), float64(sprinkler)*agronomy.MillimetersPerInch))
		a.values["minutes"] = rounded(minutes, 1)
		a.why = append(a.why, agronomy.Reason{Text: fmt.Sprintf("%s in ÷ %s in an hour × 60 = %s minutes.", schedule.Figures(float64(depth), 3), schedule.Figures(float64(sprinkler), 3), schedule.Figures(minutes, 3))})
	}
	return a, nil
}

var spreaderFigure = figure{
	name:    "spreader",
	what:    "the passes of a spreader, the fills of a sprayer, a calibration",
	example: `--rate "37 lb/1000 sq ft" --size "2600 sq ft" --width "4 ft"`,
	help: `        --rate R              of the material
        --size A              of the area
        --width L             the spreader's working width
Fills of a sprayer, for --size:
        --tank V              the tank, like "4 gal"
        --covers C            like "1000 sq ft per gal"
What a spreader is set to, from what it dropped:
        --caught W            the weight that fell
        --on A                on this area
`,
	setup: func(fs *pflag.FlagSet) func(*asked) (answer, error) {
		texts(fs, "rate", "size", "width", "tank", "covers", "caught", "on")
		return spreader
	},
}

func spreader(q *asked) (answer, error) {
	switch {
	case q.given("caught") || q.given("on"):
		q.need("caught", "on")
		caught, on := quantityOf(q, "caught", agronomy.ParseWeight), quantityOf(q, "on", agronomy.ParseArea)
		if q.err != nil {
			return answer{}, q.err
		}
		r, err := agronomy.DropCalibration(caught, on)
		return answer{text: "The spreader is set to " + bothRates(r) + ".", values: map[string]any{"rate_lb_per_1000_sqft": rounded(float64(r), 3)},
			why: []agronomy.Reason{{Text: fmt.Sprintf("%s lb × 1000 ÷ %s sq ft = %s lb per 1,000 sq ft.", schedule.Figures(float64(caught), 3), schedule.Figures(float64(on), 4), schedule.Figures(float64(r), 3)), Source: "drop-spreader-cr"}}}, err
	case q.given("tank") || q.given("covers"):
		q.need("tank", "covers", "size")
		tank, covers, size := quantityOf(q, "tank", agronomy.ParseVolume), quantityOf(q, "covers", agronomy.ParseCoverage), quantityOf(q, "size", agronomy.ParseArea)
		if q.err != nil {
			return answer{}, q.err
		}
		f, err := agronomy.TankFills(size, tank, agronomy.SquareFeet(covers))
		if err != nil {
			return answer{}, err
		}
		a := answer{text: fmt.Sprintf("1 fill of %s.", bothVolumes(f.Last)),
			values: map[string]any{"fills": f.Count, "last_gal": rounded(float64(f.Last), 3), "covers_sqft": rounded(float64(f.Covers), 1)}, why: f.Steps}
		if f.Count > 1 {
			a.text = fmt.Sprintf("%d fills; the last holds %s.", f.Count, bothVolumes(f.Last))
		}
		a.why = append(a.why, agronomy.Reason{Text: fmt.Sprintf("%s × %s sq ft = %s to a tank.", us.Volume(tank), schedule.Figures(float64(covers), 4), us.Area(f.Covers))})
		return a, nil
	}
	q.need("rate", "size")
	rate, size, width := q.rate("rate"), quantityOf(q, "size", agronomy.ParseArea), quantityOf(q, "width", agronomy.ParseLength)
	if q.err != nil {
		return answer{}, q.err
	}
	sp, err := agronomy.SpreadOver(rate, size, width)
	if err != nil {
		return answer{}, err
	}
	return answer{text: fmt.Sprintf("Half the rate, %s, in each of two directions: %s each time.", bothRates(sp.HalfRate), bothWeights(sp.HalfWeight)),
		values: map[string]any{"half_rate_lb_per_1000_sqft": rounded(float64(sp.HalfRate), 3), "half_lb": rounded(float64(sp.HalfWeight), 3), "walk_ft": rounded(float64(sp.Walk), 1)},
		why:    sp.Steps()}, nil
}
