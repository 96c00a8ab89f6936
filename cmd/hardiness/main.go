// Command hardiness rebuilds the hardiness table of package climate from
// station normals and a zone table:
//
//	hardiness STATIONS ZONES > hardiness.csv
//
// STATIONS is a CSV, or a gzipped CSV if its name ends in .gz, with one row a
// station and at least these columns:
//
//	state            postal code
//	lat, lon, elev_m degrees, east positive; metres
//	zone             half-zone of the nearest ZIP centroid in the state
//	tx01 ... tx12    normal monthly mean of the daily high, °F
//	tn01 ... tn12    normal monthly mean of the daily low, °F
//	ff50, lf50       median first autumn and last spring 32 °F freeze, day of
//	                 the year, blank where not published
//
// ZONES is a CSV with one row a state and half-zone that occurs:
//
//	state, zone
//	zips             ZIP codes in it
//	lat, lon, elev_m mean position of its ZIPs; needed only where no station
//	                 lies in the zone
//
// The recipe is in recipe.go; nothing else goes into the table.
package main

import (
	"fmt"
	"io"
	"os"
)

func main() {
	if len(os.Args) != 3 {
		fmt.Fprintln(os.Stderr, "usage: hardiness STATIONS ZONES > hardiness.csv")
		os.Exit(2)
	}
	if err := run(os.Stdout, os.Args[1], os.Args[2]); err != nil {
		fmt.Fprintln(os.Stderr, "hardiness:", err)
		os.Exit(1)
	}
}

func run(w io.Writer, stationFile, zoneFile string) error {
	stations, err := readStations(stationFile)
	if err != nil {
		return err
	}
	cells, err := readZones(zoneFile)
	if err != nil {
		return err
	}
	rows, err := rebuild(stations, cells)
	if err != nil {
		return err
	}
	return write(w, rows)
}
