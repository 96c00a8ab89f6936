package schedule

import (
	"encoding/json"
	"math"
	"regexp"
	"slices"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
)

// Each kind has one row, and one rule unless the planner itself dates it: a
// sowing comes first, as everything else in its area hangs on it, and what only
// tells a day asks for no rule.
func TestKindsAndRules(t *testing.T) {
	if len(kinds) > mostKinds {
		t.Errorf("%d kinds, and at most %d can be told apart by rank", len(kinds), mostKinds)
	}
	ruled := map[Kind]int{}
	for _, r := range rules {
		ruled[r.kind]++
		if kinds.rank(r.kind) < 0 {
			t.Errorf("there is a rule for %s, which is not in the table", r.kind)
		}
	}
	seen := map[string]bool{}
	name := regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)
	for _, k := range kinds {
		want := 1
		if k == Sow || k.Notice() {
			want = 0
		}
		if ruled[k] != want {
			t.Errorf("%s: %d rules, want %d", k, ruled[k], want)
		}
		r := k.of()
		switch {
		case seen[r.name]:
			t.Errorf("two kinds are called %s", r.name)
		case !name.MatchString(r.name):
			t.Errorf("%q cannot be part of an id", r.name)
		case r.noun == "" || r.category == "" || r.weight <= 0 || (r.verb == "") != k.Notice():
			t.Errorf("%s: the row lacks something: %+v", k, *r)
		case k.Spreads() != (r.serves != nil):
			t.Errorf("%s: spreads is %t, yet what serves it says otherwise", k, k.Spreads())
		}
		seen[r.name] = true
		if found, ok := KindNamed(r.name); !ok || found != k {
			t.Errorf("%s is not found by its name", k)
		}
	}
}

func TestKindInJSON(t *testing.T) {
	text, err := json.Marshal([]Kind{LateNitrogen, {}})
	if err != nil || string(text) != `["late-nitrogen",""]` {
		t.Errorf("%s, %v", text, err)
	}
	var k Kind
	if err := json.Unmarshal([]byte(`"late-nitrogen"`), &k); err != nil || k != LateNitrogen {
		t.Errorf("read as %q, %v", k, err)
	}
	if err := json.Unmarshal([]byte(`"mow"`), &k); err == nil {
		t.Error("an unknown kind was read")
	}
}

func TestMaterialsServeKinds(t *testing.T) {
	materials := map[string]material.Material{
		"limestone": {Kind: material.LimeMaterial, Magnesium: 11},
		"sulfur":    {Kind: material.SulfurMaterial, Sulfur: 90},
		"24-2-0":    {Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 24, P2O5: 2}},
		"0-0-50":    {Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{K2O: 50}},
		"epsom":     {Kind: material.MagnesiumMaterial, Magnesium: 9.86},
	}
	want := map[Kind][]string{
		SoilTest: nil, Sow: nil, LastSafe: nil, Reopen: nil, {}: nil,
		Starter: {"24-2-0"}, Phosphorus: {"24-2-0"}, Nitrogen: {"24-2-0"}, LateNitrogen: {"24-2-0"},
		Lime: {"limestone"}, Sulfur: {"sulfur"}, Potassium: {"0-0-50"}, Magnesium: {"epsom"},
	}
	for k, names := range want {
		for name, m := range materials {
			if got := k.servedBy(m); got != slices.Contains(names, name) {
				t.Errorf("%s serves %q: %t", name, k, got)
			}
		}
	}
}

func TestLeavingOutCostsMoreThanAnyPlacing(t *testing.T) {
	var below int64 // one job of each kind below
	for rank := mostKinds - 1; rank >= 0; rank-- {
		cost := leaveOut(rank)
		if cost <= below {
			t.Errorf("rank %d does not outweigh one of each kind below it", rank)
		}
		if rank < mostKinds-1 && cost <= 2*leaveOut(rank+1) {
			t.Errorf("rank %d does not outweigh two of rank %d", rank, rank+1)
		}
		below += cost
	}
	if least := leaveOut(mostKinds - 1); least < 999*perUnit {
		t.Errorf("the least costs %d", least)
	}
	if most := leaveOut(0); most > math.MaxInt64/8/200 {
		t.Error("200 jobs left out pass what place adds up")
	}
}

// Three kinds that the program does not plan: to each belongs a row and a rule,
// and nothing else.
var (
	Overseed = Kind{&row{name: "overseed", noun: "overseeding", verb: "Overseed", category: "Overseed", does: sows, weight: 3}}
	Gypsum   = Kind{&row{name: "gypsum", noun: "gypsum", verb: "Gypsum on", category: "Gypsum", weight: 1,
		serves: is(material.GypsumMaterial)}}
	Iron = Kind{&row{name: "iron", noun: "iron for color", verb: "Green up", category: "Iron", weight: 1,
		serves: func(m material.Material) bool { return m.ID == "iron" }}}
)

// PlanWithMore plans with these kinds beside all others.
func PlanWithMore(site *Site, book []Done) (*Program, error) {
	more := slices.Insert(slices.Clone(kinds), kinds.rank(Starter), Overseed)
	more = slices.Insert(more, more.rank(Sulfur), Gypsum)
	more = slices.Insert(more, more.rank(LastSafe), Iron)
	return planWith(site, book, more, append(slices.Clip(rules),
		rule{Overseed, func(c *treatment) (p proposal) {
			if c.doneSince(Overseed, c.Start) {
				return p
			}
			c.finish(&p, Job{Kind: Overseed, N: c.number(Overseed)(), Area: c.Area}, c.growing(), soonest)
			return p
		}},
		rule{Gypsum, spreadOnce(Gypsum, 40)},
		rule{Iron, spreadOnce(Iron, 1)},
	))
}

// spreadOnce is a rule that spreads what serves its kind, unless it is down.
func spreadOnce(k Kind, rate agronomy.PerThousand) func(*treatment) proposal {
	return func(c *treatment) (p proposal) {
		i := slices.IndexFunc(c.Materials, k.servedBy)
		if i < 0 || c.doneSince(k, c.Start) {
			return p
		}
		c.finish(&p, Job{Kind: k, N: c.number(k)(), Area: c.Area, Dose: material.DoseOf(c.Materials[i], rate), Because: "The test asks for it."}, c.open(), soonest)
		return p
	}
}
