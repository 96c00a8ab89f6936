package climate

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
)

// Columns of the weather service's monthly normals by station.
const (
	highColumn = "MLY-TMAX-NORMAL"
	lowColumn  = "MLY-TMIN-NORMAL"
)

// ParseNormals reads a monthly normals CSV of one station, as the US weather
// service publishes it: a header with DATE or month, MLY-TMAX-NORMAL and
// MLY-TMIN-NORMAL among other columns, and a row for each month. Values are in
// °F, in whole tenths if no value has a decimal point and they are too large
// for degrees. Errors name the line.
func ParseNormals(r io.Reader) (highs, lows []Fahrenheit, err error) {
	c := csv.NewReader(r)
	c.FieldsPerRecord = -1
	c.LazyQuotes = true
	c.TrimLeadingSpace = true
	c.ReuseRecord = true

	var at columns
	var station string
	var text [2][12]string // highs and lows as written
	var line [12]int
	found := false
	for {
		record, err := c.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			var bad *csv.ParseError
			if errors.As(err, &bad) {
				return nil, nil, fmt.Errorf("line %d: not a CSV line: %v", bad.Line, bad.Err)
			}
			return nil, nil, fmt.Errorf("reading the normals: %w", err)
		}
		n, _ := c.FieldPos(0)
		if !found {
			if at, found = findColumns(record); found {
				if err := at.complete(n); err != nil {
					return nil, nil, err
				}
			}
			continue
		}
		if len(record) == 1 && strings.TrimSpace(record[0]) == "" {
			continue
		}
		if s := at.field(record, at.station); s != "" {
			if station != "" && s != station {
				return nil, nil, fmt.Errorf("line %d: a second station, %s, after %s: keep one station in the file", n, s, station)
			}
			station = s
		}
		m, err := month(at.field(record, at.month))
		if err != nil {
			return nil, nil, fmt.Errorf("line %d: %w", n, err)
		}
		if line[m] != 0 {
			return nil, nil, fmt.Errorf("line %d: month %d is given a second time, first on line %d", n, m+1, line[m])
		}
		line[m] = n
		text[0][m], text[1][m] = at.field(record, at.high), at.field(record, at.low)
	}
	if !found {
		return nil, nil, fmt.Errorf("no header with %s and %s: this is not a monthly normals file by station", highColumn, lowColumn)
	}
	for m, n := range line {
		if n == 0 {
			return nil, nil, fmt.Errorf("month %d is missing: the file must have a row for each of the twelve months", m+1)
		}
	}
	var values [2][]Fahrenheit
	for i, name := range [2]string{highColumn, lowColumn} {
		values[i] = make([]Fahrenheit, 12)
		for m, s := range text[i] {
			v, err := normal(s)
			if err != nil {
				return nil, nil, fmt.Errorf("line %d: %s: %w", line[m], name, err)
			}
			values[i][m] = Fahrenheit(v)
		}
	}
	if inTenths(text[:], slices.Concat(values[0], values[1])) {
		for i := range values {
			for m := range values[i] {
				values[i][m] /= 10
			}
		}
	}
	if problems := checkNormals(values[0], values[1]); len(problems) > 0 {
		return nil, nil, problems
	}
	return values[0], values[1], nil
}

// columns are the positions of the columns wanted, -1 where there is none.
type columns struct{ month, high, low, station int }

// findColumns finds the columns by the names in the header; ok is false for a line that
// is no header, as it names neither temperature.
func findColumns(record []string) (at columns, ok bool) {
	at = columns{-1, -1, -1, -1}
	date := -1
	for i, s := range record {
		switch strings.ToUpper(strings.Trim(s, "\ufeff\" \t")) {
		case "MONTH":
			at.month = i
		case "DATE":
			date = i
		case highColumn:
			at.high = i
		case lowColumn:
			at.low = i
		case "STATION":
			at.station = i
		}
	}
	if at.month < 0 {
		at.month = date
	}
	return at, at.high >= 0 || at.low >= 0
}

func (at columns) complete(line int) error {
	for _, c := range []struct {
		position int
		name     string
	}{{at.high, highColumn}, {at.low, lowColumn}, {at.month, "DATE or month"}} {
		if c.position < 0 {
			return fmt.Errorf("line %d: the header has no column %s: order the normals with it", line, c.name)
		}
	}
	return nil
}

func (at columns) field(record []string, i int) string {
	if i < 0 || i >= len(record) {
		return ""
	}
	return strings.TrimSpace(record[i])
}

// month reads "7", "07", "2010-07" or "201007" as 6.
func month(s string) (int, error) {
	t := s
	if i := strings.LastIndexAny(t, "-/"); i >= 0 {
		t = t[i+1:]
	} else if len(t) == 6 {
		t = t[4:]
	}
	m, err := strconv.Atoi(t)
	if err != nil || m < 1 || m > 12 {
		return 0, fmt.Errorf("%q is no month", s)
	}
	return m - 1, nil
}

// normal reads a value with its completeness letter, such as "312S", and
// refuses the codes that stand for no value: -9999, -8888, -7777, -6666,
// -5555, whole or in tenths.
func normal(s string) (float64, error) {
	t := strings.TrimSpace(strings.TrimRight(s, "CSRPQcsrpq"))
	if t == "" {
		return 0, errors.New("no value: choose a station that has all twelve months")
	}
	v, err := strconv.ParseFloat(t, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, fmt.Errorf("%q is not a number", s)
	}
	for _, code := range [...]float64{-9999, -8888, -7777, -6666, -5555} {
		if v == code || v == math.Trunc(code)/10 {
			return 0, fmt.Errorf("%s is the code for a value that is missing or not worked out: choose a station that has all twelve months", t)
		}
	}
	return v, nil
}

// inTenths tells whether the values are whole tenths of a degree: none is
// written with a decimal point, and the largest is too high for a monthly mean.
func inTenths(text [][12]string, values []Fahrenheit) bool {
	for _, months := range text {
		for _, s := range months {
			if strings.Contains(s, ".") {
				return false
			}
		}
	}
	return slices.Max(values) > 130 // [common] °F, as for a mean typed in
}
