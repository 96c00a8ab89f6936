package main

import (
	"cmp"
	"errors"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"swardbook/climate"
)

// ten are the ten numbers of a place: the cycle of its daily mean and of its
// daily range.
type ten struct{ mean, spread climate.Cycle }

func (a ten) plus(k float64, b ten) ten {
	return ten{a.mean.Plus(k, b.mean), a.spread.Plus(k, b.spread)}
}

func (a ten) times(k float64) ten { return ten{}.plus(k, a) }

// row is one row of the table.
type row struct {
	state, zone         string // "*" in a row that pools all states or all zones
	stations, zips      int
	lat, lon, elevation float64 // NaN where not known
	ten                 ten
	observed            [2]float64 // mean published first and last freeze of the stations
	freezeStations      int
	errors              spread
}

// rebuild is the recipe: the additive model over all stations, each cell's
// stations shrunk toward it, the errors of each cell by leaving out one
// station at a time, and rows that pool a state or a zone. [model] section 3
func rebuild(stations []station, places []place) ([]row, error) {
	model, err := fitAdditive(stations)
	if err != nil {
		return nil, err
	}
	slices.SortFunc(places, func(a, b place) int {
		return cmp.Or(strings.Compare(a.state, b.state), int(a.zone-b.zone))
	})
	var rows []row
	for _, p := range places {
		in := choose(stations, func(s station) bool { return s.state == p.state && s.zone == p.zone })
		r := pooled(in)
		r.state, r.zone, r.zips = p.state, p.zone.String(), p.zips
		additive, ok := model.at(p.state, p.zone)
		if !ok {
			return nil, fmt.Errorf("no station in %s: its zones cannot be worked out", p.state)
		}
		n := float64(len(in))
		r.ten = r.ten.times(n/(n+pull)).plus(pull/(n+pull), additive)
		if len(in) == 0 {
			if !p.located {
				return nil, fmt.Errorf("%s %s has neither a station nor a position in the zone table", p.state, p.zone)
			}
			r.lat, r.lon = p.lat, p.lon
		}
		rows = append(rows, r)
	}
	cellErrors(rows, stations, model)

	states, zones := map[string][]station{}, map[climate.Zone][]station{}
	for _, s := range stations {
		states[s.state] = append(states[s.state], s)
		zones[s.zone] = append(zones[s.zone], s)
	}
	for _, state := range slices.Sorted(maps.Keys(states)) {
		r := pooled(states[state])
		r.state, r.zone = state, "*"
		rows = append(rows, r)
	}
	for _, zone := range slices.Sorted(maps.Keys(zones)) {
		r := pooled(zones[zone])
		r.state, r.zone = "*", zone.String()
		rows = append(rows, r)
	}
	return rows, nil
}

// pull is how many stations the additive model counts for beside those of a cell. [model]
// section 3
const pull = 2.0 // [model] section 3

func choose(all []station, keep func(station) bool) (some []station) {
	for _, s := range all {
		if keep(s) {
			some = append(some, s)
		}
	}
	return some
}

// pooled averages stations into a row; its errors are the scatter of the
// stations about it.
func pooled(in []station) row {
	r := row{stations: len(in)}
	if len(in) == 0 {
		r.lat, r.lon, r.elevation = math.NaN(), math.NaN(), math.NaN()
	}
	first, last := 0, 0
	for _, s := range in {
		k := 1 / float64(len(in))
		r.lat += k * s.lat
		r.lon += k * s.lon
		r.elevation += k * s.elevation
		r.ten = r.ten.plus(k, s.ten)
		if s.hasFirst {
			first++
			r.observed[0] += s.firstFreeze
		}
		if s.hasLast {
			last++
			r.observed[1] += s.last
		}
	}
	r.observed[0] /= float64(first) // NaN, written as a blank, where none is published
	r.observed[1] /= float64(last)
	r.freezeStations = first
	r.errors = scatter(in, r.ten.mean)
	return r
}

// additive is the model number = state constant + b z + q z², z the middle of
// the half-zone in units of 10 °F. [model] section 3
type additive struct {
	b, q       ten
	states     map[string]*stateMeans
	zz, zq, qq float64 // sums of squares and products of z and z², state means taken out
}

type stateMeans struct {
	n, z, zz float64 // stations; means of z and z²
	ten      ten
}

func middle(z climate.Zone) float64 {
	low, high := z.Bounds()
	return float64(low+high) / 20
}

// fitAdditive fits the model by least squares: with the state means taken out,
// the two slopes are an ordinary regression.
func fitAdditive(stations []station) (additive, error) {
	a := additive{states: map[string]*stateMeans{}}
	for _, s := range stations {
		m := a.states[s.state]
		if m == nil {
			m = &stateMeans{}
			a.states[s.state] = m
		}
		z := middle(s.zone)
		m.n++
		m.z += z
		m.zz += z * z
		m.ten = m.ten.plus(1, s.ten)
	}
	for _, m := range a.states {
		m.z /= m.n
		m.zz /= m.n
		m.ten = m.ten.times(1 / m.n)
	}
	var zt, qt ten
	for _, s := range stations {
		m := a.states[s.state]
		z, q := middle(s.zone)-m.z, middle(s.zone)*middle(s.zone)-m.zz
		t := s.ten.plus(-1, m.ten)
		a.zz += z * z
		a.zq += z * q
		a.qq += q * q
		zt = zt.plus(z, t)
		qt = qt.plus(q, t)
	}
	if !(a.det() > 1e-9*a.zz*a.qq) {
		return additive{}, errors.New("the stations lie in too few zones to tell what a zone means")
	}
	a.b = zt.times(a.qq/a.det()).plus(-a.zq/a.det(), qt)
	a.q = qt.times(a.zz/a.det()).plus(-a.zq/a.det(), zt)
	return a, nil
}

func (a additive) det() float64 { return a.zz*a.qq - a.zq*a.zq }

// at is the model's value for a zone of a state with stations.
func (a additive) at(state string, zone climate.Zone) (ten, bool) {
	m, ok := a.states[state]
	if !ok {
		return ten{}, false
	}
	z := middle(zone)
	return m.ten.plus(z-m.z, a.b).plus(z*z-m.zz, a.q), true
}

// without is the value that the model would give at a station if it were fitted without
// that station: the residual grows by 1/(1 - h), where h is the station's leverage.
func (a additive) without(s station) ten {
	m := a.states[s.state]
	z, q := middle(s.zone)-m.z, middle(s.zone)*middle(s.zone)-m.zz
	h := 1/m.n + (z*z*a.qq-2*z*q*a.zq+q*q*a.zz)/a.det()
	fitted, _ := a.at(s.state, s.zone)
	return s.ten.plus(-1/(1-h), s.ten.plus(-1, fitted))
}
