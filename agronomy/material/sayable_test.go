package material

import (
	"math"
	"testing"

	"swardbook/agronomy"
)

// The steps are those of the contract: ounces under 1 lb, 0.1 under 10, 1 under 50,
// above it 5 or half a pack, and down where up would pass a cap. [common]
func TestSayable(t *testing.T) {
	for _, c := range []struct {
		rate   agronomy.PerThousand
		area   agronomy.SquareFeet
		pack   agronomy.Pounds
		caps   Caps
		metric bool
		want   float64 // lb
	}{
		{1.087, 500, 50, NoCaps(), false, 9.0 / 16},
		{1.522, 2000, 50, NoCaps(), false, 3.0},
		{1.549, 2000, 50, NoCaps(), false, 3.1},
		{4.17, 2600, 40, NoCaps(), false, 11},
		{4.17, 13900, 15, NoCaps(), false, 60}, // 57.96: four packs, or 60
		{4.17, 13900, 25, NoCaps(), false, 60}, // 62.5 is farther
		{2.1739, 2700, 50, Caps{N: 1, SolubleN: -1, P2O5: -1, K2O: -1}, false, 5.8},
		{2.1739, 5000, 50, Caps{N: 1, SolubleN: -1, P2O5: -1, K2O: -1}, false, 10},
		{1.522, 2000, 50, NoCaps(), true, 1.4 * agronomy.PoundsPerKilogram},
	} {
		m := labelled("46-0-0")
		m.Pack = c.pack
		d := DoseOf(m, c.rate).Sayable(c.area, c.caps, c.metric)
		if got := float64(d.Rate.Over(c.area)); math.Abs(got-c.want) > 1e-6 {
			t.Errorf("%v lb/1000 on %v sq ft: %v lb, want %v", c.rate, c.area, got, c.want)
		}
		if c.caps.passedBy(d) || math.Abs(float64(d.N-d.Rate*0.46)) > 1e-9 {
			t.Errorf("%v lb/1000 on %v sq ft: %+v", c.rate, c.area, d)
		}
	}
}

// The working of a rounding, four figures shown: 4.17 lb on 2.6 thousand sq ft are
// 10.842 lb, weighed as 11, which are 11/2.6 = 4.2308 lb; 1.522 lb on 2 thousand are
// 3.044 lb, weighed as 1.4 kg or 3.0865 lb, which are 1.5432 lb.
func TestWorkingOfSayable(t *testing.T) {
	for _, c := range []struct {
		rate   agronomy.PerThousand
		area   agronomy.SquareFeet
		metric bool
		want   string
	}{
		{4.17, 2600, false, "10.84 lb on the area, rounded to what a person can weigh: 11 lb, so 4.231 lb of product per 1000 sq ft"},
		{1.522, 2000, true, "3.044 lb on the area, rounded to what a person can weigh: 3.086 lb, so 1.543 lb of product per 1000 sq ft"},
	} {
		d := DoseOf(labelled("46-0-0"), c.rate).Sayable(c.area, NoCaps(), c.metric)
		if len(d.Why) == 0 || d.Why[len(d.Why)-1].Text != c.want {
			t.Errorf("%v, want %q", d.Why, c.want)
		}
	}
}

// A rounded dose still tells what bound it, and what is over and short of the wants.
func TestSayableKeepsWhatBoundTheDose(t *testing.T) {
	caps := NoCaps()
	caps.N = 0.9
	d, err := DoseFor(labelled("18-24-12"), Wants{N: 1.8, K2O: 0.5}, caps)
	if err != nil {
		t.Fatal(err)
	}
	x := d.Sayable(2600, caps, false)
	if x.Rate == d.Rate || x.BoundBy != d.BoundBy || x.ByCap != d.ByCap || x.Over != d.Over || x.Under != d.Under || d.BoundBy == "" || d.Over == (Wants{}) || d.Under == (Wants{}) {
		t.Errorf("%+v, rounded from %+v", x, d)
	}
}

// A dose at its most is rounded down, never up: 2 lb of Epsom salt per 1000 sq ft on
// 2,861 sq ft are 5.722 lb, weighed as 5.7; 0.15 oz is less than a step.
func TestSayableWithin(t *testing.T) {
	m := Material{Kind: MagnesiumMaterial, Magnesium: 9.8, Pack: 5}
	for _, c := range []struct {
		area   agronomy.SquareFeet
		metric bool
		pounds float64
	}{{2861, false, 5.7}, {5298, false, 10}, {44892, false, 87.5}, {341, false, 10.0 / 16}, {5, false, 0.01}, {1136, true, 1 * agronomy.PoundsPerKilogram}} {
		d := DoseOf(m, 2).SayableWithin(c.area, c.metric)
		if got := float64(d.Rate.Over(c.area)); math.Abs(got-c.pounds) > 1e-9 || d.Rate > 2 {
			t.Errorf("%v sq ft: %v lb, want %v", c.area, got, c.pounds)
		}
	}
}
