package nutrient

import (
	"math"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/check"
)

func TestNitrogenYear(t *testing.T) {
	rye, fine := check.Grass(t, "perennial ryegrass"), check.Grass(t, "fine fescue")
	pure := func(name string) agronomy.Stand { return agronomy.Stand{{Grass: check.Grass(t, name), Percent: 100}} }
	mix := agronomy.Stand{{Grass: rye, Percent: 60}, {Grass: fine, Percent: 40}}
	for _, tt := range []struct {
		what string
		c    NitrogenCase
		want agronomy.PerThousand
	}{
		{"medium, removed", NitrogenCase{Stand: pure("perennial ryegrass"), Care: MediumCare}, 3},
		{"medium, returned", NitrogenCase{Stand: pure("perennial ryegrass"), Care: MediumCare, ClippingsReturned: true}, 2.25},
		{"no care given", NitrogenCase{Stand: pure("perennial ryegrass")}, 3},
		{"old lawn, returned", NitrogenCase{Stand: pure("perennial ryegrass"), Care: MediumCare, ClippingsReturned: true, Age: 16}, 1.5},
		{"old lawn, removed", NitrogenCase{Stand: pure("perennial ryegrass"), Care: MediumCare, Age: 16}, 3},
		{"rich soil", NitrogenCase{Stand: pure("perennial ryegrass"), Care: MediumCare, OrganicMatter: 5.1}, 2},
		{"soil at 5 %", NitrogenCase{Stand: pure("perennial ryegrass"), Care: MediumCare, OrganicMatter: 5}, 3},
		{"young, low care", NitrogenCase{Stand: pure("perennial ryegrass"), Care: LowCare, Age: 1.9}, 3},
		{"two years, low care", NitrogenCase{Stand: pure("perennial ryegrass"), Care: LowCare, Age: 2}, 2},
		{"new, low care", NitrogenCase{Stand: pure("perennial ryegrass"), Care: LowCare, New: true}, 3},
		{"mixture", NitrogenCase{Stand: mix, Care: MediumCare}, 0.6*3 + 0.4*1.5},
		{"mixture at its ceiling", NitrogenCase{Stand: mix, Care: HighCare}, 2.5}, // 0.6 × 4 + 0.4 × 2.5 = 3.4
		{"north Florida", NitrogenCase{Stand: pure("bermudagrass"), Care: MediumCare, State: "FL", Florida: NorthFlorida, ClippingsReturned: true}, 4},
		{"south Florida, high", NitrogenCase{Stand: pure("bermudagrass"), Care: HighCare, State: "FL", Florida: SouthFlorida, ClippingsReturned: true}, 7},
		{"Florida, removed", NitrogenCase{Stand: pure("centipedegrass"), Care: LowCare, State: "FL", Florida: CentralFlorida}, 2 / 0.75},
		{"Florida, not in its table", NitrogenCase{Stand: pure("carpetgrass"), Care: MediumCare, State: "FL", Florida: CentralFlorida}, 1},
		{"Georgia", NitrogenCase{Stand: pure("bermudagrass"), Care: HighCare, State: "GA"}, 4},
	} {
		got, err := NitrogenYear(tt.c)
		if err != nil || math.Abs(float64(got.Year-tt.want)) > 1e-9 {
			t.Errorf("%s: %v lb, %v; want %v", tt.what, got.Year, err, tt.want)
		}
		check.Resolve(t, append(got.Why, got.Assumed...))
	}
	if _, err := NitrogenYear(NitrogenCase{Stand: pure("seashore paspalum")}); err == nil || !strings.Contains(err.Error(), "seashore paspalum") {
		t.Errorf("grass without a figure: %v", err)
	}
}

// Care never lowers the amount, and the amounts lie in the published ranges.
func TestNitrogenOfGrasses(t *testing.T) {
	for _, name := range agronomy.GrassNames() {
		g := check.Grass(t, name)
		if _, ok := agronomy.GrassPH(name); !ok {
			t.Errorf("%s: no target pH", name)
		}
		if !g.HasN() {
			continue
		}
		if !(g.N[0] < g.N[1] && g.N[1] < g.N[2]) {
			t.Errorf("%s: %v does not rise with care", name, g.N)
		}
		if g.N[1] < g.Published[0] || g.N[1] > g.Published[1] || g.N[2] > g.Published[1] {
			t.Errorf("%s: %v outside the published %v", name, g.N, g.Published)
		}
		if s := g.EmergeDays; s[0] > s[1] || s[1] > 30 {
			t.Errorf("%s: emerges in %v days", name, s)
		}
		for care := range g.Florida {
			if r := g.Florida[care]; r[0] > r[1] {
				t.Errorf("%s: Florida %v", name, r)
			}
		}
	}
}

func TestStand(t *testing.T) {
	rye, fine, bermuda := check.Grass(t, "perennial ryegrass"), check.Grass(t, "fine fescue"), check.Grass(t, "bermudagrass")
	mix := agronomy.Stand{{Grass: rye, Percent: 60}, {Grass: fine, Percent: 40}}
	target, low, high := mix.TargetPH()
	if math.Abs(float64(target)-6.3) > 1e-9 || low != 6.0 || high != 6.5 { // 0.6 × 6.5 + 0.4 × 6.0
		t.Errorf("mixture: target %v, %v to %v", target, low, high)
	}
	check.Resolve(t, mix.WhyPH())
	centipede := check.Grass(t, "centipedegrass")
	if _, low, high := (agronomy.Stand{{Grass: rye, Percent: 80}, {Grass: centipede, Percent: 20}}).TargetPH(); low > high {
		t.Errorf("disjoint ranges: %v to %v", low, high)
	}
	if s := (agronomy.Stand{{Grass: rye, Percent: 60}, {Grass: bermuda, Percent: 40}}).Season(); s != agronomy.Cool {
		t.Error("mostly ryegrass is not cool-season")
	}
	if _, mixed := mix.Mixed(); mixed {
		t.Error("two cool-season grasses mix seasons")
	}
	for _, s := range []agronomy.Stand{{{Grass: rye, Percent: 40}, {Grass: bermuda, Percent: 60}}, {{Grass: bermuda, Percent: 60}, {Grass: fine, Percent: 10}, {Grass: rye, Percent: 30}}} {
		if why, mixed := s.Mixed(); s.Season() != agronomy.Warm || !mixed || !strings.Contains(why.Text, "warm-season grass, sets the calendar, and the other 40 %") {
			t.Errorf("mostly bermudagrass: %v, %v", s.Season(), why)
		}
	}
	if first, last, _, ok := mix.Emergence(); !ok || first != 5 || last != 14 {
		t.Errorf("mixture emerges in %d to %d days", first, last)
	}
	if _, _, _, ok := (agronomy.Stand{{Grass: check.Grass(t, "st. augustinegrass"), Percent: 100}}).Emergence(); ok {
		t.Error("St. Augustine has days to emerge")
	}
	if mix.String() != "perennial ryegrass 60 %, fine fescue 40 %" {
		t.Error(mix)
	}
}

func TestSeasonRules(t *testing.T) {
	for _, s := range []agronomy.Season{agronomy.Cool, agronomy.Warm} {
		l := LimitsOfNitrogen(s)
		if l.Soluble > l.Single || l.Heat > l.Soluble || l.Single > l.SingleSlow || l.DaysSoluble > l.DaysSlow {
			t.Errorf("season %v: limits %+v", s, l)
		}
		check.Resolve(t, l.Why)
		sh := SharesOf(s)
		if math.Abs(sh.Spring+sh.Summer+sh.Fall-1) > 1e-9 {
			t.Errorf("season %v: shares %+v", s, sh)
		}
	}
	r := SeedlingsOf(agronomy.Stand{{Grass: check.Grass(t, "perennial ryegrass"), Percent: 60}, {Grass: check.Grass(t, "kentucky bluegrass"), Percent: 40}})
	if r.EmergesBy != 8 || r.FirstDays != 28 || r.FirstN != 0.5 {
		t.Errorf("seedlings: %+v", r)
	}
	check.Resolve(t, r.Why)
}

func TestLateNitrogen(t *testing.T) {
	for _, tt := range []struct {
		s         agronomy.Season
		zone      int
		texture   agronomy.Texture
		low, high agronomy.PerThousand
	}{
		{agronomy.Cool, 5, agronomy.Loam, 0.3, 0.5},
		{agronomy.Cool, 6, agronomy.Loam, 0.5, 1.0},
		{agronomy.Cool, 0, agronomy.Loam, 0.3, 0.5},
		{agronomy.Cool, 7, agronomy.Sand, 0.5, 0.5},
		{agronomy.Warm, 8, agronomy.Loam, 0, 0},
	} {
		got := LateNitrogenFor(tt.s, tt.zone, tt.texture)
		if got.Low != tt.low || got.High != tt.high || got.Wanted != (tt.high > 0) {
			t.Errorf("zone %d %s: %+v, want %v to %v", tt.zone, tt.texture, got, tt.low, tt.high)
		}
		check.Resolve(t, got.Why)
	}
}

func TestGrowthPotential(t *testing.T) {
	for c := -20.0; c <= 45; c += 0.5 {
		for _, s := range []agronomy.Season{agronomy.Cool, agronomy.Warm} {
			g := GrowthPotentialC(c, s)
			if !(g >= 0 && g <= 1) {
				t.Fatalf("growth %v at %v °C", g, c)
			}
			if d := math.Abs(g - GrowthPotentialF(c*1.8+32, s)); d > 0.05 {
				t.Errorf("the two forms differ by %.3f at %v °C", d, c)
			}
		}
	}
	// The published New York year, month by month, to the printed percent.
	printed := []float64{0, 0, 2, 20, 71, 100, 83, 88, 98, 45, 9, 1}
	for i, f := range []float64{30.4, 32.9, 39.6, 50.0, 59.7, 69.0, 74.1, 73.0, 66.1, 55.3, 45.9, 35.8} {
		if got := 100 * GrowthPotentialF(f, agronomy.Cool); math.Abs(got-printed[i]) > 1 {
			t.Errorf("month %d: %.1f %%, printed %v", i+1, got, printed[i])
		}
	}
}
