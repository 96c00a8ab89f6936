package climate

import (
	_ "embed"
	"encoding/binary"
	"math"
)

// packedStations are the weather stations of the 48 adjoining states, one
// record each, sorted by latitude, read in place without unpacking.
// data/README.md describes the record.
//
//go:embed data/stations.bin
var packedStations string

// stationSize is the length of a record in bytes.
const stationSize = 68

// notGiven stands for a figure the station does not publish.
const notGiven = math.MinInt16

// stationStates lists the states in the order of their numbers in a record's state byte.
const stationStates = "AL AR AZ CA CO CT DE FL GA IA ID IL IN KS KY LA MA MD ME MI MN MO MS MT NC ND NE NH NJ NM NV NY OH OK OR PA RI SC SD TN TX UT VA VT WA WI WV WY"

// station is one record of packedStations.
type station string

func stationCount() int { return len(packedStations) / stationSize }

func stationAt(i int) station {
	return station(packedStations[i*stationSize : (i+1)*stationSize])
}

func (s station) int16(at int) int16 {
	return int16(uint16(s[at]) | uint16(s[at+1])<<8)
}

func (s station) int32(at int) int32 {
	return int32(binary.LittleEndian.Uint32([]byte(s[at : at+4])))
}

func (s station) latitude() float64  { return float64(s.int32(0)) / 1e4 }
func (s station) longitude() float64 { return float64(s.int32(4)) / 1e4 }
func (s station) kilometers() float64 { // above the sea
	return (float64(uint16(s.int16(8))) - 1000) / 1e4
}
func (s station) state() string { i := 3 * int(s[10]); return stationStates[i : i+2] }
func (s station) zone() Zone    { return Zone(s[11]) }

// high and low are the monthly means, 0 for January.
func (s station) high(month int) float64 { return float64(s.int16(12+2*month)) / 10 }
func (s station) low(month int) float64  { return float64(s.int16(36+2*month)) / 10 }

// published is the median day of the first freeze, or of the last one in spring, that the
// station publishes; ok is false if it publishes none.
func (s station) published(spring bool) (day float64, ok bool) {
	d := s.int16(60 + offset(spring))
	return float64(d), d != notGiven
}

// beyondRule is by how many days the published median comes after the one that the freeze
// rule gives from the station's own normals; ok is false if there is no such figure.
func (s station) beyondRule(spring bool) (days float64, ok bool) {
	d := s.int16(64 + offset(spring))
	return float64(d) / 10, d != notGiven
}

func offset(spring bool) int {
	if spring {
		return 2
	}
	return 0
}
