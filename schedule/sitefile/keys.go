package sitefile

import (
	"strings"
	"sync"
)

// shape is what a value may look like; a key may take more than one.
type shape uint

const (
	table_    shape = 1 << iota // a table of keys
	text                        // words in quotes
	quantity_                   // a number with its unit, in quotes
	number                      // a plain number
	whole                       // a plain whole number
	flag                        // true or false
	date                        // a day, 2026-09-12
	texts                       // a list of texts
	months                      // a list of twelve numbers
)

// key is one key of the site file. A * in its pattern stands for a name that
// the writer of the file chooses.
type key struct {
	pattern string
	takes   shape
	example string // a value, as it stands in a file
}

// keys is every key of the site file, in the order of the starter file.
var keys = []key{
	{"id", text, `"fernbank-7q2m"`},
	{"title", text, `"Fernbank reading lawn"`},
	{"start", date, `2026-09-12`},
	{"through", date, `2027-09-11`},
	{"units", text, `"us"`},

	{"place", table_, ""},
	{"place.state", text, `"OH"`},
	{"place.hardiness", text, `"6a"`},
	{"place.elevation", quantity_, `"900 ft"`},
	{"place.latitude", number, `40.1`},
	{"place.longitude", number, `-83.1`},
	{"place.mean_high_f", months, `[36, 40, 51, 63, 73, 82, 85, 84, 77, 65, 52, 40]`},
	{"place.mean_low_f", months, `[20, 23, 31, 40, 51, 60, 64, 62, 55, 43, 34, 25]`},
	{"place.mean_high_c", months, `[2, 4, 11, 17, 23, 28, 29, 29, 25, 18, 11, 4]`},
	{"place.mean_low_c", months, `[-7, -5, -1, 4, 11, 16, 18, 17, 13, 6, 1, -4]`},
	{"place.normals", text, `"station.csv"`},
	{"place.first_freeze", text, `"10-14"`},
	{"place.last_freeze", text, `"05-02"`},
	{"place.water_within", quantity_, `"30 ft"`},

	{"crew", table_, ""},
	{"crew.paid", flag, `false`},
	{"crew.days", texts, `["sat", "wed"]`},
	{"crew.away", texts, `["2026-10-03/2026-10-11"]`},
	{"crew.jobs_per_day", whole, `2`},
	{"crew.people", table_, ""},
	{"crew.people.*", text, `"Mara"`},
	{"crew.who", table_, ""},
	{"crew.who.*", text, `"mara"`},

	{"area", table_, ""},
	{"area.*", table_, ""},
	{"area.*.name", text, `"East lawn"`},
	{"area.*.size", quantity_, `"2600 sq ft"`},
	{"area.*.grass", text | table_, `"perennial ryegrass"`},
	{"area.*.grass.*", number, `60`},
	{"area.*.seeded", date, `2026-08-24`},
	{"area.*.dormant", flag, `false`},
	{"area.*.texture", text, `"sandy loam"`},
	{"area.*.care", text, `"medium"`},
	{"area.*.clippings", text, `"returned"`},
	{"area.*.sprinkler", quantity_, `"0.4 in/h"`},
	{"area.*.soluble_only", flag, `false`},
	{"area.*.cored", flag, `false`},

	{"area.*.soil", table_, ""},
	{"area.*.soil.sampled", date, `2026-08-11`},
	{"area.*.soil.depth", quantity_, `"4 in"`},
	{"area.*.soil.method", text, `"mehlich-3"`},
	{"area.*.soil.ph", number, `5.6`},
	{"area.*.soil.buffer", table_, `{ method = "smp", ph = 6.4 }`},
	{"area.*.soil.buffer.method", text, `"smp"`},
	{"area.*.soil.buffer.ph", number, `6.4`},
	{"area.*.soil.target_ph", number, `6.5`},
	{"area.*.soil.acidity", number, `2.5`},
	{"area.*.soil.cec", number, `7.4`},
	{"area.*.soil.organic_matter", quantity_, `"2.1 %"`},
	{"area.*.soil.phosphorus", quantity_ | table_, `"14 ppm"`},
	{"area.*.soil.potassium", quantity_ | table_, `"61 ppm"`},
	{"area.*.soil.calcium", quantity_ | table_, `"520 ppm"`},
	{"area.*.soil.magnesium", quantity_ | table_, `"48 ppm"`},
	{"area.*.soil.sulfur", quantity_ | table_, `"9 ppm"`},
	{"area.*.soil.sodium", quantity_ | table_, `"18 ppm"`},
	{"area.*.soil.iron", quantity_ | table_, `"72 ppm"`},

	{"material", table_, ""},
	{"material.*", table_, ""},
	{"material.*.name", text, `"pelletized limestone"`},
	{"material.*.kind", text, `"lime"`},
	{"material.*.cce", number, `90`},
	{"material.*.ecce", number, `85`},
	{"material.*.fineness", table_, `{ "8" = 100, "20" = 98, "60" = 75, "100" = 60 }`},
	{"material.*.fineness.*", number, `98`},
	{"material.*.hydrated", flag, `false`},
	{"material.*.analysis", text, `"18-24-12"`},
	{"material.*.slow_share", number, `0.4`},
	{"material.*.lasts", quantity_, `"8 weeks"`},
	{"material.*.form", text, `"granular"`},
	{"material.*.density", quantity_, `"9.6 lb/gal"`},
	{"material.*.calcium", number, `30`},
	{"material.*.magnesium", number, `1.5`},
	{"material.*.sulfur", number, `12`},
	{"material.*.pack", quantity_, `"40 lb"`},
	{"material.*.on_hand", number, `1.5`},
	{"material.*.price", number, `7.25`},

	{"local", table_, ""},
	{"local.no_nitrogen", texts, `["11-15/03-01"]`},
	{"local.no_phosphorus", texts, `["11-15/03-01"]`},
	{"local.max_n_per_application", quantity_, `"0.7 lb/1000 sq ft"`},
	{"local.note", text, `"Borough ordinance, see the clerk"`},

	{"sprayer", table_, ""},
	{"sprayer.tank", quantity_, `"4 gal"`},
	{"sprayer.covers", quantity_, `"1000 sq ft per gal"`},
	{"spreader", table_, ""},
	{"spreader.width", quantity_, `"4 ft"`},

	{"calendar", table_, ""},
	{"calendar.remind", texts, `["15h before", "7h after"]`},
	{"calendar.link", text, `"https://example.org/lawn/"`},
	{"calendar.secret", text, `"a-word-nobody-guesses-4711"`},
}

// readingKeys are the keys of a reading that comes with the lab's own optimum.
var readingKeys = []key{
	{"found", quantity_, `"14 ppm"`},
	{"wanted", quantity_ | texts, `["12 ppm", "20 ppm"]`},
}

// Keys lists the pattern of every key that can hold a value, in the order of
// the starter file. A * stands for a name of the writer's choice.
func Keys() []string {
	var out []string
	for _, k := range allKeys() {
		if k.takes != table_ || k.example != "" {
			out = append(out, k.pattern)
		}
	}
	return out
}

func allKeys() []key {
	var out []key
	for _, k := range keys {
		out = append(out, k)
		if k.takes == quantity_|table_ {
			for _, sub := range readingKeys {
				sub.pattern = k.pattern + "." + sub.pattern
				out = append(out, sub)
			}
		}
	}
	return out
}

// node is a key in the tree of keys, with those below it.
type node struct {
	key
	below map[string]*node
	names []string // of below, in order
}

// under gives the key of a name below n; nil if there is none.
func (n *node) under(name string) *node {
	if k := n.below[name]; k != nil {
		return k
	}
	return n.below["*"]
}

var tree = sync.OnceValue(func() *node {
	root := &node{below: map[string]*node{}}
	for _, k := range allKeys() {
		at := root
		parts := strings.Split(k.pattern, ".")
		for _, p := range parts[:len(parts)-1] {
			at = at.below[p]
		}
		last := parts[len(parts)-1]
		at.below[last] = &node{k, map[string]*node{}, nil}
		at.names = append(at.names, last)
	}
	return root
})
