package main

import (
	"math"

	"swardbook/climate"
)

// spread holds the errors that a row has for a place in its half-zone, as standard
// deviations or rms; NaN where no station gives a figure.
type spread struct {
	month             float64 // °F, one month's mean
	fall50, spring50  float64 // days, mean air temperature through 50 °F
	firstFreeze, last float64 // days, freeze medians
}

// shrink is how many stations the average error of the East or the West counts for beside
// those of a cell. [model] section 3
const shrink = 6.0 // [model] section 3

// squares gathers squared errors.
type squares struct{ n, sum float64 }

func (s *squares) add(e float64) { s.n++; s.sum += e * e }

func (s squares) plus(o squares) squares { return squares{s.n + o.n, s.sum + o.sum} }

func (s squares) rms() float64 { return math.Sqrt(s.sum / s.n) }

// shrunk is the rms error when the average error of the region is counted with the cell's
// own errors as if it were `weight` of them.
func (s squares) shrunk(region squares, weight float64) float64 {
	return math.Sqrt((s.sum + weight*region.sum/region.n) / (s.n + weight))
}

// misses are the errors of estimates at stations.
type misses struct{ month, fall50, spring50, firstFreeze, last squares }

func (m misses) plus(o misses) misses {
	return misses{m.month.plus(o.month), m.fall50.plus(o.fall50), m.spring50.plus(o.spring50),
		m.firstFreeze.plus(o.firstFreeze), m.last.plus(o.last)}
}

// cellErrors fills in the errors of the cells: each station is estimated from
// its cell without it, and the errors are pooled with those of the East or
// the West.
func cellErrors(rows []row, stations []station, model additive) {
	cells := make([]misses, len(rows))
	regions := map[bool]misses{}
	for i, r := range rows {
		for _, s := range stations {
			if s.state == r.state && s.zone.String() == r.zone {
				fitted, _ := model.at(s.state, s.zone)
				n := float64(r.stations) + pull
				others := r.ten.times(n).plus(-1, s.ten).plus(-pull, fitted)
				estimate := others.plus(pull, model.without(s)).times(1 / (n - 1))
				cells[i] = cells[i].plus(miss(s, estimate))
			}
		}
		west := climate.West(r.state)
		regions[west] = regions[west].plus(cells[i])
	}
	for i := range rows {
		c, region := cells[i], regions[climate.West(rows[i].state)]
		rows[i].errors = spread{
			month:       c.month.shrunk(region.month, 12*shrink), // a station has twelve months
			fall50:      c.fall50.shrunk(region.fall50, shrink),
			spring50:    c.spring50.shrunk(region.spring50, shrink),
			firstFreeze: c.firstFreeze.shrunk(region.firstFreeze, shrink),
			last:        c.last.shrunk(region.last, shrink),
		}
	}
}

// miss compares an estimate with the station's own figures.
func miss(s station, estimate ten) (m misses) {
	for i := range 12 {
		m.month.add(float64(estimate.mean.Month(i) - s.months[i]))
	}
	y := climate.FromCycles(estimate.mean, estimate.spread, climate.West(s.state), s.lat)
	if w := y.AirFalls(50); s.crosses50 && !w.Never {
		m.fall50.add(w.D - s.fall50)
	}
	if w := y.AirRises(50); s.crosses50 && !w.Never {
		m.spring50.add(w.D - s.spring50)
	}
	if w := y.FirstFreeze(); s.hasFirst && !w.Never {
		m.firstFreeze.add(w.D - s.firstFreeze)
	}
	if w := y.LastFreeze(); s.hasLast && !w.Never {
		m.last.add(w.D - s.last)
	}
	return m
}

// scatter is the spread of stations within a pooled row: of their months about
// its cycle, and of their dates about the mean date.
func scatter(in []station, mean climate.Cycle) spread {
	var month squares
	var fall, spring, first, last []float64
	for _, s := range in {
		for i := range 12 {
			month.add(float64(mean.Month(i) - s.months[i]))
		}
		if s.crosses50 {
			fall, spring = append(fall, s.fall50), append(spring, s.spring50)
		}
		if s.hasFirst {
			first = append(first, s.firstFreeze)
		}
		if s.hasLast {
			last = append(last, s.last)
		}
	}
	return spread{month.rms(), about(fall), about(spring), about(first), about(last)}
}

// about is the standard deviation about the mean.
func about(x []float64) float64 {
	mean := 0.0
	for _, v := range x {
		mean += v / float64(len(x))
	}
	var s squares
	for _, v := range x {
		s.add(v - mean)
	}
	return s.rms()
}
