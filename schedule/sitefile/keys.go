package sitefile

import (
	"strings"
	"sync"

	"swardbook/schedule"
)

// shape is what a value may look like; a key may take more than one.
type shape uint

const (
	asTable    shape = 1 << iota // a table of keys
	asText                       // words in quotes
	asQuantity                   // a number with its unit, in quotes
	asNumber                     // a plain number
	asWhole                      // a plain whole number
	asFlag                       // true or false
	asDate                       // a day, 2026-09-12
	asTexts                      // a list of texts
	asMonths                     // a list of twelve numbers
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
	{"id", asText, `"odderwyn-7q2m"`},
	{"title", asText, `"Odderwyn reading lawn"`},
	{"start", asDate, `2026-09-12`},
	{"through", asDate, `2027-09-11`},
	{"units", asText, `"us"`},

	{"place", asTable, ""},
	{"place.zip", asText, `"43017"`},
	{"place.county", asText, `"Delaware"`},
	{"place.state", asText, `"OH"`},
	{"place.hardiness", asText, `"6a"`},
	{"place.elevation", asQuantity, `"900 ft"`},
	{"place.latitude", asNumber, `40.1`},
	{"place.longitude", asNumber, `-83.1`},
	{"place.mean_high_f", asMonths, `[36, 40, 51, 63, 73, 82, 85, 84, 77, 65, 52, 40]`},
	{"place.mean_low_f", asMonths, `[20, 23, 31, 40, 51, 60, 64, 62, 55, 43, 34, 25]`},
	{"place.mean_high_c", asMonths, `[2, 4, 11, 17, 23, 28, 29, 29, 25, 18, 11, 4]`},
	{"place.mean_low_c", asMonths, `[-7, -5, -1, 4, 11, 16, 18, 17, 13, 6, 1, -4]`},
	{"place.normals", asText, `"station.csv"`},
	{"place.first_freeze", asText, `"10-14"`},
	{"place.last_freeze", asText, `"05-02"`},
	{"place.water_within", asQuantity, `"30 ft"`},

	{"crew", asTable, ""},
	{"crew.paid", asFlag, `false`},
	{"crew.budget", asNumber, `120.00`},
	{"crew.days", asTexts, `["sat", "wed"]`},
	{"crew.away", asTexts, `["2026-10-03/2026-10-11"]`},
	{"crew.jobs_per_day", asWhole, `2`},
	{"crew.people", asTable, ""},
	{"crew.people.*", asText, `"Mara"`},
	{"crew.absent", asTable, ""},
	{"crew.absent.*", asTexts, `["2026-10-20/2026-10-28"]`},
	{"crew.who", asTable, ""},
	{"crew.who.*", asText, `"mara"`},

	{"area", asTable, ""},
	{"area.*", asTable, ""},
	{"area.*.name", asText, `"East lawn"`},
	{"area.*.size", asQuantity, `"2600 sq ft"`},
	{"area.*.grass", asText | asTable, `"perennial ryegrass"`},
	{"area.*.grass.*", asNumber, `60`},
	{"area.*.seeded", asDate, `2026-08-24`},
	{"area.*.overseed", asDate, `2027-09-05`},
	{"area.*.dormant", asFlag, `false`},
	{"area.*.texture", asText, `"sandy loam"`},
	{"area.*.care", asText, `"medium"`},
	{"area.*.clippings", asText, `"returned"`},
	{"area.*.sprinkler", asQuantity, `"0.4 in/h"`},
	{"area.*.soluble_only", asFlag, `false`},
	{"area.*.cored", asFlag, `false`},

	{"area.*.soil", asTable, ""},
	{"area.*.soil.sampled", asDate, `2026-08-11`},
	{"area.*.soil.received", asDate, `2026-08-20`},
	{"area.*.soil.depth", asQuantity, `"4 in"`},
	{"area.*.soil.method", asText, `"mehlich-3"`},
	{"area.*.soil.ph", asNumber, `5.6`},
	{"area.*.soil.buffer", asTable, `{ method = "smp", ph = 6.4 }`},
	{"area.*.soil.buffer.method", asText, `"smp"`},
	{"area.*.soil.buffer.ph", asNumber, `6.4`},
	{"area.*.soil.target_ph", asNumber, `6.5`},
	{"area.*.soil.lower_ph", asFlag, `false`},
	{"area.*.soil.acidity", asNumber, `2.5`},
	{"area.*.soil.cec", asNumber, `7.4`},
	{"area.*.soil.organic_matter", asQuantity, `"2.1 %"`},
	{"area.*.soil.phosphorus", asQuantity | asTable, `"14 ppm"`},
	{"area.*.soil.potassium", asQuantity | asTable, `"61 ppm"`},
	{"area.*.soil.calcium", asQuantity | asTable, `"520 ppm"`},
	{"area.*.soil.magnesium", asQuantity | asTable, `"48 ppm"`},
	{"area.*.soil.sulfur", asQuantity | asTable, `"9 ppm"`},
	{"area.*.soil.sodium", asQuantity | asTable, `"18 ppm"`},
	{"area.*.soil.iron", asQuantity | asTable, `"72 ppm"`},
	{"area.*.soil.lb_per_acre_depth", asFlag, `false`},
	{"area.*.soil.lime", asQuantity, `"60 lb/1000 sq ft"`},
	{"area.*.soil.lime_ecce", asNumber, `70`},
	{"area.*.soil.nitrogen", asQuantity, `"3 lb/1000 sq ft"`},
	{"area.*.soil.phosphate", asQuantity, `"1 lb/1000 sq ft"`},
	{"area.*.soil.potash", asQuantity, `"2 lb/1000 sq ft"`},

	{"material", asTable, ""},
	{"material.*", asTable, ""},
	{"material.*.name", asText, `"pelletized limestone"`},
	{"material.*.kind", asText, `"lime"`},
	{"material.*.cce", asNumber, `90`},
	{"material.*.ecce", asNumber, `85`},
	{"material.*.fineness", asTable, `{ "8" = 100, "20" = 98, "60" = 75, "100" = 60 }`},
	{"material.*.fineness.*", asNumber, `98`},
	{"material.*.hydrated", asFlag, `false`},
	{"material.*.analysis", asText, `"18-24-12"`},
	{"material.*.slow_share", asNumber, `0.4`},
	{"material.*.lasts", asQuantity, `"8 weeks"`},
	{"material.*.form", asText, `"granular"`},
	{"material.*.density", asQuantity, `"9.6 lb/gal"`},
	{"material.*.magnesium", asNumber, `1.5`},
	{"material.*.sulfur", asNumber, `12`},
	{"material.*.iron", asNumber, `20`},
	{"material.*.pesticide", asFlag, `false`},
	{"material.*.pack", asQuantity, `"40 lb"`},
	{"material.*.on_hand", asNumber, `1.5`},
	{"material.*.counted", asDate, `2026-09-12`},
	{"material.*.rebuy", asFlag, `true`},
	{"material.*.price", asNumber, `7.25`},

	{"local", asTable, ""},
	{"local.no_nitrogen", asTexts, `["11-15/03-01"]`},
	{"local.no_phosphorus", asTexts, `["11-15/03-01"]`},
	{"local.max_n_per_application", asQuantity, `"0.7 lb/1000 sq ft"`},
	{"local.note", asText, `"Borough ordinance, see the clerk"`},

	{"sprayer", asTable, ""},
	{"sprayer.tank", asQuantity, `"4 gal"`},
	{"sprayer.covers", asQuantity, `"1000 sq ft per gal"`},
	{"spreader", asTable, ""},
	{"spreader.width", asQuantity, `"4 ft"`},

	{"calendar", asTable, ""},
	{"calendar.remind", asTexts, `["15h before", "7h after"]`},
	{"calendar.link", asText, `"https://example.org/lawn/"`},
	{"calendar.secret", asText, `"a-word-nobody-guesses-4711"`},
}

// readingKeys are the keys of a reading that comes with the lab's own optimum.
var readingKeys = []key{
	{"found", asQuantity, `"14 ppm"`},
	{"wanted", asQuantity | asTexts, `["12 ppm", "20 ppm"]`},
}

// Keys lists the pattern of every key that can hold a value, in the order of
// the starter file. A * stands for a name of the writer's choice.
func Keys() []string {
	var out []string
	for _, k := range allKeys() {
		if k.takes != asTable || k.example != "" {
			out = append(out, k.pattern)
		}
	}
	return out
}

func allKeys() []key {
	var out []key
	for _, k := range keys {
		out = append(out, k)
		if k.takes == asQuantity|asTable {
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
	names []string // the names in below, in order
}

// under gives the node that a name below n stands for; nil if there is none.
func (n *node) under(name string) *node {
	if k := n.below[name]; k != nil {
		return k
	}
	star := n.below["*"]
	if star != nil && star.pattern == datedSoil {
		if _, err := schedule.ParseDate(name); err != nil {
			return nil
		}
	}
	return star
}

// datedSoil is the pattern of a soil report that stands under its sampling day, so that
// an area may have several. It takes every key of a report that stands alone.
const datedSoil = "area.*.soil.*"

func soilKeys(all []key) (dated []key) {
	dated = append(dated, key{datedSoil, asTable, ""})
	for _, k := range all {
		if name, ok := strings.CutPrefix(k.pattern, "area.*.soil."); ok {
			dated = append(dated, key{datedSoil + "." + name, k.takes, k.example})
		}
	}
	return dated
}

var tree = sync.OnceValue(func() *node {
	root := &node{below: map[string]*node{}}
	all := allKeys()
	for _, k := range append(all, soilKeys(all)...) {
		at := root
		parts := strings.Split(k.pattern, ".")
		for _, p := range parts[:len(parts)-1] {
			at = at.below[p]
		}
		last := parts[len(parts)-1]
		at.below[last] = &node{k, map[string]*node{}, nil}
		if last != "*" || len(at.names) == 0 {
			at.names = append(at.names, last)
		}
	}
	return root
})
