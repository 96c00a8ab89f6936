package main

import (
	"compress/gzip"
	"encoding/csv"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"

	"swardbook/climate"
)

// station is one row of the station file.
type station struct {
	state               string
	zone                climate.Zone
	lat, lon, elevation float64                // degrees, metres
	highs, lows, months [12]climate.Fahrenheit // monthly means: daily high, daily low, their middle
	ten                 ten
	firstFreeze, last   float64 // published medians, day of the year
	hasFirst, hasLast   bool
	fall50, spring50    float64 // days on which its finer cycle passes 50 °F
	crosses50           bool
}

// place is what a state's half-zone is called and where its gardeners live.
type place struct {
	state    string
	zone     climate.Zone
	zips     int
	lat, lon float64 // mean of the ZIPs, if located
	located  bool
}

// table reads a CSV row by row by the names of its columns.
type table struct {
	name    string
	c       *csv.Reader
	columns map[string]int
	record  []string
	err     error
}

func openTable(name string) (*table, io.Closer, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, nil, err
	}
	var r io.Reader = f
	if strings.HasSuffix(name, ".gz") {
		if r, err = gzip.NewReader(f); err != nil {
			f.Close()
			return nil, nil, fmt.Errorf("%s: %w", name, err)
		}
	}
	t := &table{name: name, c: csv.NewReader(r), columns: map[string]int{}}
	t.c.Comment = '#'
	header, err := t.c.Read()
	if err != nil {
		f.Close()
		return nil, nil, fmt.Errorf("%s: no header: %w", name, err)
	}
	for i, column := range header {
		t.columns[column] = i
	}
	return t, f, nil
}

func (t *table) next() bool {
	if t.err != nil {
		return false
	}
	t.record, t.err = t.c.Read()
	return t.err == nil
}

// done is the first error met, other than the end of the file.
func (t *table) done() error {
	if t.err == io.EOF {
		return nil
	}
	return t.err
}

func (t *table) fail(format string, args ...any) {
	if t.err == nil {
		line, _ := t.c.FieldPos(0)
		t.err = fmt.Errorf("%s:%d: %s", t.name, line, fmt.Sprintf(format, args...))
	}
}

func (t *table) text(column string) string {
	i, ok := t.columns[column]
	if !ok {
		t.fail("no column %s", column)
		return ""
	}
	return t.record[i]
}

// number reads a figure; given is false for a blank.
func (t *table) number(column string) (x float64, given bool) {
	s := t.text(column)
	if s == "" {
		return 0, false
	}
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.fail("%s: %q is not a number", column, s)
	}
	return x, true
}

func (t *table) must(column string) float64 {
	x, given := t.number(column)
	if !given {
		t.fail("%s is blank", column)
	}
	return x
}

func (t *table) zone() climate.Zone {
	z, err := climate.ParseZone(t.text("zone"))
	if err != nil {
		t.fail("%v", err)
	}
	return z
}

func readStations(name string) ([]station, error) {
	t, f, err := openTable(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	var all []station
	for t.next() {
		s := station{state: t.text("state"), zone: t.zone(), lat: t.must("lat"), lon: t.must("lon"), elevation: t.must("elev_m")}
		var spread [12]climate.Fahrenheit
		for m := range 12 {
			high, low := t.must(fmt.Sprintf("tx%02d", m+1)), t.must(fmt.Sprintf("tn%02d", m+1))
			s.highs[m], s.lows[m] = climate.Fahrenheit(high), climate.Fahrenheit(low)
			s.months[m] = climate.Fahrenheit(high+low) / 2
			spread[m] = climate.Fahrenheit(high - low)
		}
		s.ten = ten{climate.FitCycle(s.months), climate.FitCycle(spread)}
		s.fall50, s.spring50, s.crosses50 = fitFine(s.months).crossings(50)
		s.firstFreeze, s.hasFirst = t.number("ff50")
		s.last, s.hasLast = t.number("lf50")
		all = append(all, s)
	}
	return all, t.done()
}

func readZones(name string) ([]place, error) {
	t, f, err := openTable(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	var all []place
	for t.next() {
		p := place{state: t.text("state"), zone: t.zone(), zips: int(t.must("zips"))}
		if p.lat, p.located = t.number("lat"); p.located {
			p.lon = t.must("lon")
		}
		all = append(all, p)
	}
	return all, t.done()
}
