package agronomy

import (
	"maps"

	"swardbook/climate"
)

// Source is a reference behind a figure: who, title, year; where it was read;
// and how far it was checked ("seen", "part", "memory", "common").
type Source = climate.Source

// basicSources are the keys that every part of the package uses.
var basicSources = map[string]Source{
	"common": {
		Title: "Common practice in turf care; no published source.",
		How:   "common",
	},
	"definitions": {
		Title: "Exact unit definitions: 1 acre = 43560 sq ft; 1 ft = 0.3048 m; 1 lb = 453.59237 g; 1 US gal = 231 cubic inches.",
		How:   "common",
	},
	"atomic-weights": {
		By:    "IUPAC",
		Title: "Abridged standard atomic weights",
		In:    "H 1.008, C 12.011, N 14.007, O 15.999, Na 22.990, Mg 24.305, P 30.974, S 32.06, K 39.098, Ca 40.078, Fe 55.845",
		How:   "memory",
	},
}

// Sources gives every reference behind the figures of this package, by key.
// The map is the caller's own.
func Sources() map[string]Source {
	all := maps.Clone(basicSources)
	for _, part := range []map[string]Source{limeSources, soilSources, materialSources} {
		maps.Copy(all, part)
	}
	return all
}
