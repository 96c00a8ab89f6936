// Command hardiness rebuilds the data of package climate from plain files:
//
//	hardiness table STATIONS ZONES > hardiness.csv
//	hardiness stations STATIONS > stations.bin
//	hardiness zips ZIPS > zips.bin
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
// ZIPS is a CSV, or a gzipped one, with one row a ZIP code: zip, place, state,
// county, lat, lon.
//
// The recipe of the table is in recipe.go, the packing in pack.go; nothing
// else goes into the files.
package main

import (
	"fmt"
	"io"
	"os"
)

func main() {
	var err error
	switch {
	case len(os.Args) == 4 && os.Args[1] == "table":
		err = run(os.Stdout, os.Args[2], os.Args[3])
	case len(os.Args) == 3 && os.Args[1] == "stations":
		err = packStations(os.Stdout, os.Args[2])
	case len(os.Args) == 3 && os.Args[1] == "zips":
		err = packZIPs(os.Stdout, os.Args[2])
	default:
		fmt.Fprintln(os.Stderr, "usage: hardiness table STATIONS ZONES > hardiness.csv, hardiness stations STATIONS > stations.bin or hardiness zips ZIPS > zips.bin")
		os.Exit(2)
	}
	if err != nil {
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
