package main

import (
	"encoding/csv"
	"io"
	"math"
	"strconv"
	"strings"

	"swardbook/climate"
)

// header names the columns of the table; climate/data/README.md explains them.
const header = "state,zone,n,zips,lat,lon,elev_m,mean_f,c1_f,s1_f,c2_f,s2_f," +
	"dtr_mean_f,dtr_c1_f,dtr_s1_f,dtr_c2_f,dtr_s2_f,amp_f,warm_day,cold_day," +
	"sd_month_f,sd_fall50_d,sd_spring50_d,ff50_model,lf50_model,ff50_obs,lf50_obs,n_freeze," +
	"sd_ff_d,sd_lf_d,yr_sd_ff_d,yr_sd_lf_d"

func write(w io.Writer, rows []row) error {
	c := csv.NewWriter(w)
	c.Write(strings.Split(header, ","))
	for _, r := range rows {
		c.Write(r.record())
	}
	c.Flush()
	return c.Error()
}

// record writes the row's columns, with the freeze dates of its own cycle.
func (r row) record() []string {
	y := climate.FromCycles(r.ten.mean, r.ten.spread, climate.West(r.state), r.lat)
	first, last := y.FirstFreeze(), y.LastFreeze()
	m, d, e := r.ten.mean, r.ten.spread, r.errors
	hot, cold := turns(m)
	return []string{
		r.state, r.zone, strconv.Itoa(r.stations), strconv.Itoa(r.zips),
		figure(r.lat, 2), figure(r.lon, 2), strings.TrimSuffix(figure(r.elevation, 0), ".0"),
		figure(m.Mean, 2), figure(m.C1, 2), figure(m.S1, 2), figure(m.C2, 2), figure(m.S2, 2),
		figure(d.Mean, 2), figure(d.C1, 2), figure(d.S1, 2), figure(d.C2, 2), figure(d.S2, 2),
		figure(math.Hypot(m.C1, m.S1), 2), figure(hot, 1), figure(cold, 1),
		figure(e.month, 2), figure(e.fall50, 1), figure(e.spring50, 1),
		date(first, first.D), date(last, last.D),
		figure(r.observed[0], 1), figure(r.observed[1], 1), strconv.Itoa(r.freezeStations),
		figure(e.firstFreeze, 1), figure(e.last, 1),
		date(first, first.YearSD), date(last, last.YearSD),
	}
}

// turns are the day numbers of the warmest and of the coldest point, plus 0.5, to a quarter
// of a day.
func turns(c climate.Cycle) (hot, cold float64) {
	hot, cold = 0.5, 0.5
	for d := 0.5; d < 365.5; d += 0.25 {
		if c.At(d) > c.At(hot) {
			hot = d
		}
		if c.At(d) < c.At(cold) {
			cold = d
		}
	}
	return hot + 0.5, cold + 0.5
}

// date writes x, a day or its spread; a blank for an event that does not come.
func date(w climate.When, x float64) string {
	if w.Never {
		return ""
	}
	return figure(x, 1)
}

// figure writes x rounded to the given decimals; a blank for NaN.
func figure(x float64, decimals int) string {
	if math.IsNaN(x) {
		return ""
	}
	scale := math.Pow10(decimals)
	s := strconv.FormatFloat(math.RoundToEven(x*scale)/scale, 'f', -1, 64)
	if !strings.Contains(s, ".") {
		s += ".0"
	}
	return s
}
