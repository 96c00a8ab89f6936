package schedule

import (
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
	if len(Kinds()) > mostKinds {
		t.Errorf("%d kinds, and at most %d can be told apart by rank", len(Kinds()), mostKinds)
	}
	ruled := map[Kind]int{}
	for _, r := range rules {
		ruled[r.kind]++
		if Kinds().rank(r.kind) < 0 {
			t.Errorf("there is a rule for %s, which is not in the table", r.kind)
		}
	}
	seen := map[string]bool{}
	name := regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)
	for _, k := range Kinds() {
		want := 1
		if k == Sow || k.Notice() {
			want = 0
		}
		if ruled[k] != want {
			t.Errorf("%s: %d rules, want %d", k, ruled[k], want)
		}
		r := k.of()
		switch {
		case seen[r.Name]:
			t.Errorf("two kinds are called %s", r.Name)
		case !name.MatchString(r.Name):
			t.Errorf("%q cannot be part of an id", r.Name)
		case r.Noun == "" || r.Category == "" || r.Weight <= 0 || (r.Verb == "") != k.Notice():
			t.Errorf("%s: the row lacks something: %+v", k, *r)
		case k.Spreads() != (r.Serves != nil):
			t.Errorf("%s: spreads is %t, yet what serves it says otherwise", k, k.Spreads())
		}
		seen[r.Name] = true
		if found, ok := KindNamed(r.Name); !ok || found != k {
			t.Errorf("%s is not found by its name", k)
		}
	}
}

// Three kinds that the program does not plan: to each belongs a row and a rule,
// and nothing else.
var (
	Overseed = Row{Name: "overseed", Noun: "overseeding", Verb: "Overseed", Category: "Overseed", Does: Sows, Weight: 3}.Kind()
	Gypsum   = Row{Name: "gypsum", Noun: "gypsum", Verb: "Gypsum on", Category: "Gypsum", Weight: 1,
		Serves: func(m material.Material) bool { return m.Kind == material.GypsumMaterial }}.Kind()
	Iron = Row{Name: "iron", Noun: "iron for color", Verb: "Green up", Category: "Iron", Weight: 1,
		Serves: func(m material.Material) bool { return m.ID == "iron" }}.Kind()
)

// PlanWithMore plans with these kinds beside all others.
func PlanWithMore(site *Site, book []Done) (*Program, error) {
	more := slices.Insert(Kinds(), Kinds().rank(Starter), Overseed)
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
