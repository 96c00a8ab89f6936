package plan

import (
	"regexp"
	"slices"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
	scrule "swardbook/schedule/rule"
)

// Each kind has one row, and one rule unless the planner itself dates it: a
// sowing comes first, as everything else in its area hangs on it, and what only
// tells a day asks for no rule.
func TestKindsAndRules(t *testing.T) {
	if len(schedule.Kinds()) > schedule.MostKinds {
		t.Errorf("%d kinds, and at most %d can be told apart by rank", len(schedule.Kinds()), schedule.MostKinds)
	}
	ruled := map[schedule.Kind]int{}
	for _, r := range scrule.All {
		ruled[r.Kind]++
		if schedule.Kinds().Rank(r.Kind) < 0 {
			t.Errorf("there is a rule for %s, which is not in the table", r.Kind)
		}
	}
	seen := map[string]bool{}
	name := regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)
	for _, k := range schedule.Kinds() {
		want := 1
		if k == schedule.Sow || k.Notice() {
			want = 0
		}
		if ruled[k] != want {
			t.Errorf("%s: %d rules, want %d", k, ruled[k], want)
		}
		r := k.Of()
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
		if found, ok := schedule.KindNamed(r.Name); !ok || found != k {
			t.Errorf("%s is not found by its name", k)
		}
	}
}

// Three kinds that the program does not plan: to each belongs a row and a rule,
// and nothing else.
var (
	Verticut = schedule.Row{Name: "verticut", Noun: "verticutting", Verb: "Verticut", Category: "Verticut", Does: schedule.Sows, Weight: 3}.Kind()
	Topdress = schedule.Row{Name: "topdress", Noun: "topdressing", Verb: "Topdress", Category: "Topdress", Weight: 1,
		Serves: func(m material.Material) bool { return m.ID == "sand" }}.Kind()
	Wetting = schedule.Row{Name: "wetting", Noun: "wetting agent", Verb: "Wet", Category: "Wetting", Weight: 1,
		Serves: func(m material.Material) bool { return m.ID == "wetting" }}.Kind()
)

// PlanWithMore plans with these kinds beside all others.
func PlanWithMore(site *schedule.Site, book []schedule.Done) (*schedule.Program, error) {
	more := slices.Insert(schedule.Kinds(), schedule.Kinds().Rank(schedule.Starter), Verticut)
	more = slices.Insert(more, more.Rank(schedule.Sulfur), Topdress)
	more = slices.Insert(more, more.Rank(schedule.LastSafe), Wetting)
	return With(site, book, schedule.Date{}, more, append(slices.Clip(scrule.All),
		scrule.Rule{Kind: Verticut, Propose: func(c *scrule.Treatment) (p schedule.Proposal) {
			if c.DoneSince(Verticut, c.Start) {
				return p
			}
			c.Finish(&p, schedule.Job{Kind: Verticut, N: c.Number(Verticut)(), Area: c.Area}, c.Growing(), schedule.Soonest)
			return p
		}},
		scrule.Rule{Kind: Topdress, Propose: spreadOnce(Topdress, 40)},
		scrule.Rule{Kind: Wetting, Propose: spreadOnce(Wetting, 1)},
	))
}

// spreadOnce is a rule that spreads what serves its kind, unless it is down.
func spreadOnce(k schedule.Kind, rate agronomy.PerThousand) func(*scrule.Treatment) schedule.Proposal {
	return func(c *scrule.Treatment) (p schedule.Proposal) {
		i := slices.IndexFunc(c.Materials, k.ServedBy)
		if i < 0 || c.DoneSince(k, c.Start) {
			return p
		}
		c.Finish(&p, schedule.Job{Kind: k, N: c.Number(k)(), Area: c.Area, Dose: material.DoseOf(c.Materials[i], rate), Because: "The test asks for it."}, c.Open(), schedule.Soonest)
		return p
	}
}
