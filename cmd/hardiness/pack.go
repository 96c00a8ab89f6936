package main

import (
	"cmp"
	"encoding/binary"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"swardbook/climate"
)

// notGiven stands for a figure the station does not publish.
const notGiven = math.MinInt16

// stationStates are the states in the order a record's state byte counts.
const stationStates = "AL AR AZ CA CO CT DE FL GA IA ID IL IN KS KY LA MA MD ME MI MN MO MS MT NC ND NE NH NJ NM NV NY OH OK OR PA RI SC SD TN TX UT VA VT WA WI WV WY"

// packStations writes the stations as fixed records sorted by latitude;
// climate/data/README.md describes the record.
func packStations(w io.Writer, stationFile string) error {
	stations, err := readStations(stationFile)
	if err != nil {
		return err
	}
	slices.SortStableFunc(stations, func(a, b station) int {
		return cmp.Or(cmp.Compare(a.lat, b.lat), cmp.Compare(a.lon, b.lon))
	})
	var out []byte
	for _, s := range stations {
		state := slices.Index(strings.Fields(stationStates), s.state)
		if state < 0 {
			return fmt.Errorf("state %q is not one of the 48 adjoining ones", s.state)
		}
		rule := climate.FromCycles(s.ten.mean, s.ten.spread, climate.West(s.state), s.lat)
		out = binary.LittleEndian.AppendUint32(out, uint32(int32(math.Round(s.lat*1e4))))
		out = binary.LittleEndian.AppendUint32(out, uint32(int32(math.Round(s.lon*1e4))))
		out = binary.LittleEndian.AppendUint16(out, uint16(math.Round(s.elevation*10)+1000))
		out = append(out, byte(state), byte(s.zone))
		for _, months := range [2][12]climate.Fahrenheit{s.highs, s.lows} {
			for _, v := range months {
				out = appendTenths(out, float64(v), true)
			}
		}
		out = appendTenths(out, s.firstFreeze/10, s.hasFirst)
		out = appendTenths(out, s.last/10, s.hasLast)
		first, last := rule.FirstFreeze(), rule.LastFreeze()
		out = appendTenths(out, s.firstFreeze-first.D, s.hasFirst && !first.Never)
		out = appendTenths(out, s.last-last.D, s.hasLast && !last.Never)
	}
	_, err = w.Write(out)
	return err
}

func appendTenths(out []byte, x float64, given bool) []byte {
	tenths := int16(notGiven)
	if given {
		tenths = int16(math.Round(x * 10))
	}
	return binary.LittleEndian.AppendUint16(out, uint16(tenths))
}

// zip is one row of the ZIP file.
type zip struct {
	code, place, state, county string
	lat, lon                   float64
}

func readZIPs(name string) ([]zip, error) {
	t, f, err := openTable(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	var all []zip
	for t.next() {
		z := zip{t.text("zip"), t.text("place"), t.text("state"), t.text("county"), t.must("lat"), t.must("lon")}
		if len(z.code) != 5 || strings.Trim(z.code, "0123456789") != "" {
			t.fail("zip: %q does not have five digits", z.code)
		}
		if len(z.state) != 2 && z.state != "" || strings.Contains(z.place+z.county, "\n") {
			t.fail("state %q, place %q, county %q cannot be packed", z.state, z.place, z.county)
		}
		all = append(all, z)
	}
	return all, t.done()
}

// packZIPs writes the ZIP codes; climate/data/README.md describes the layout.
// Where two rows have the same code, the one with a state is kept.
func packZIPs(w io.Writer, zipFile string) error {
	zips, err := readZIPs(zipFile)
	if err != nil {
		return err
	}
	slices.SortStableFunc(zips, func(a, b zip) int {
		return cmp.Or(strings.Compare(a.code, b.code), strings.Compare(b.state, a.state))
	})
	zips = slices.CompactFunc(zips, func(a, b zip) bool { return a.code == b.code })

	type county struct{ state, name string }
	var names []string
	var counties []county
	for _, z := range zips {
		names = append(names, z.place, z.county)
		counties = append(counties, county{z.state, z.county})
	}
	slices.Sort(names)
	names = slices.Compact(names)
	byName := func(a, b county) int {
		return cmp.Or(strings.Compare(a.state, b.state), strings.Compare(a.name, b.name))
	}
	slices.SortFunc(counties, byName)
	counties = slices.Compact(counties)
	if max(len(zips), len(names)) > math.MaxUint16 {
		return fmt.Errorf("%d ZIP codes and %d names: more than two bytes count", len(zips), len(names))
	}

	var text []byte
	var steps []byte
	for i, n := range names {
		if i%16 == 0 {
			steps = binary.LittleEndian.AppendUint32(steps, uint32(len(text)))
		}
		text = append(append(text, n...), '\n')
	}
	var out []byte
	for _, n := range [4]int{len(zips), len(counties), len(names), len(text)} {
		out = binary.LittleEndian.AppendUint32(out, uint32(n))
	}
	at := 0
	for prefix := range 1001 {
		for at < len(zips) && zips[at].code[:3] < fmt.Sprintf("%03d", prefix) && prefix < 1000 {
			at++
		}
		if prefix == 1000 {
			at = len(zips)
		}
		out = binary.LittleEndian.AppendUint16(out, uint16(at))
	}
	for _, z := range zips {
		out = append(out, (z.code[3]-'0')*10+z.code[4]-'0')
	}
	index := func(list []string, s string) uint16 {
		i, _ := slices.BinarySearch(list, s)
		return uint16(i)
	}
	for _, z := range zips {
		c, _ := slices.BinarySearchFunc(counties, county{z.state, z.county}, byName)
		out = binary.LittleEndian.AppendUint16(out, uint16(math.Round((z.lat+90)*100)))
		out = binary.LittleEndian.AppendUint16(out, uint16(math.Round((z.lon+180)*100)))
		out = binary.LittleEndian.AppendUint16(out, uint16(c))
		out = binary.LittleEndian.AppendUint16(out, index(names, z.place))
	}
	for _, c := range counties {
		out = append(out, fmt.Sprintf("%-2s", c.state)...)
		out = binary.LittleEndian.AppendUint16(out, index(names, c.name))
	}
	_, err = w.Write(append(append(out, steps...), text...))
	return err
}
