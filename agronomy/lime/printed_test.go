package lime

import (
	"math"
	"strings"
	"testing"

	"swardbook/agronomy"
)

// What the laboratory itself asks for counts before every table, also where no
// table holds or none would lime; the working shows both.
func TestPrintedCountsFirst(t *testing.T) {
	printed := func(lb agronomy.PerThousand) *agronomy.PerThousand { return &lb }
	sour := Case{PH: 5.1, Target: 6.5, LimeBelow: 6, Buffer: agronomy.Buffer{Method: agronomy.SMP, PH: 6.4}, Depth: 4}
	ours, err := Requirement(sour)
	if err != nil {
		t.Fatal(err)
	}
	for _, lb := range []agronomy.PerThousand{0, 20, 60, 120} {
		c := sour
		c.Printed = printed(lb)
		n, err := Requirement(c)
		if err != nil || n.Rate != lb || n.Low > lb || n.High < lb || n.Low > ours.Rate || n.High < ours.Rate {
			t.Errorf("printed %v: %+v, %v", lb, n, err)
			continue
		}
		if reaches := map[bool]agronomy.PH{true: 5.1, false: 6.5}[lb == 0]; n.Reaches != reaches {
			t.Errorf("printed %v: reaches %v, want %v", lb, n.Reaches, reaches)
		}
		text := n.Why[len(n.Why)-1].Text
		if !strings.Contains(text, "asks for "+agronomy.Short(lb)+" lb") || !strings.Contains(text, "it would be "+agronomy.Short(ours.Rate)) {
			t.Errorf("printed %v: not both are shown: %s", lb, text)
		}
		if lb == 0 {
			continue
		}
		if ph, _, err := ExpectedPH(c, lb); err != nil || math.Abs(float64(ph-6.5)) > 0.01 {
			t.Errorf("the laboratory's own %v lb reach pH %v (%v), want its target", lb, ph, err)
		}
		if half, _, err := ExpectedPH(c, lb/2); err != nil || half <= c.PH || half >= 6.4 {
			t.Errorf("half of %v lb reaches pH %v (%v)", lb, half, err)
		}
	}
	below := Case{PH: 4.0, Target: 6.5, Texture: agronomy.Loam, Depth: 4, Printed: printed(100)} // the table starts at 4.5
	if n, err := Requirement(below); err != nil || n.Rate != 100 {
		t.Errorf("below the table: %+v, %v", n, err)
	}
	well := Case{PH: 6.6, Target: 6.5, Texture: agronomy.Loam, Depth: 4, Printed: printed(25)}
	if n, err := Requirement(well); err != nil || n.Rate != 25 {
		t.Errorf("where no lime is due here: %+v, %v", n, err)
	}
}

// The laboratory's amount stretches its method: twice the lime for the same way, also in
// what the pH may come to at the least and at the most. An amount of 0, or a method that
// asks for none, has no such measure, and changes nothing.
func TestPrintedStretchesTheMethod(t *testing.T) {
	same := func(what string, a, b Case, lbA, lbB agronomy.PerThousand) {
		t.Helper()
		phA, _, errA := ExpectedPH(a, lbA)
		phB, _, errB := ExpectedPH(b, lbB)
		lowA, highA, _ := ExpectedPHSpread(a, lbA)
		lowB, highB, _ := ExpectedPHSpread(b, lbB)
		for _, p := range [][2]agronomy.PH{{phA, phB}, {lowA, lowB}, {highA, highB}} {
			if math.Abs(float64(p[0]-p[1])) > 1e-6 || (errA == nil) != (errB == nil) {
				t.Errorf("%s: %v lb bring pH %v, %v to %v (%v), and %v lb %v, %v to %v (%v)", what, lbA, phA, lowA, highA, errA, lbB, phB, lowB, highB, errB)
				return
			}
		}
	}
	plain := Case{PH: 5.1, Target: 6.5, Buffer: agronomy.Buffer{Method: agronomy.SMP, PH: 6.4}, Depth: 4}
	ours, err := Requirement(plain)
	if err != nil {
		t.Fatal(err)
	}
	twice, none := ours.Rate*2, agronomy.PerThousand(0)
	stretched, zero := plain, plain
	stretched.Printed, zero.Printed = &twice, &none
	for _, lb := range []agronomy.PerThousand{5, 10, 20, 40} {
		same("twice", stretched, plain, 2*lb, lb)
		same("none", zero, plain, lb, lb)
	}
	neutral := Case{PH: 5.1, Target: 6.5, CEC: 8, Buffer: agronomy.Buffer{Method: agronomy.AdamsEvans, PH: 8}, Depth: 4} // no acidity to lime
	asked := neutral
	asked.Printed = &twice
	same("a method that asks for none", asked, neutral, 10, 10)
}

// A figure that cannot be has no expected pH either.
func TestExpectedPHRefuses(t *testing.T) {
	for _, c := range []Case{{PH: 5.5, Texture: agronomy.Loam, Depth: 1}, {PH: 5.5, Texture: agronomy.Loam, Depth: 4, CEC: -1}, {PH: 9.5, Texture: agronomy.Loam, Depth: 4}} {
		_, _, err := ExpectedPH(c, 10)
		outside(t, err, "%+v", c)
		_, _, err = ExpectedPHSpread(c, 10)
		outside(t, err, "%+v, spread", c)
	}
}

// On a soil too acid for its table one safe dressing goes down, no pH is
// promised, and a buffer pH is asked for.
func TestTooSourForTheTables(t *testing.T) {
	for _, c := range []Case{
		{PH: 4.3, Target: 6.5, Depth: 4, Texture: agronomy.Loam},
		{PH: 3.6, Target: 6.2, Depth: 4, Texture: agronomy.SandyLoam, WarmRegion: true},
		{PH: 5.5, Target: 6.5, Depth: 4, Buffer: agronomy.Buffer{Method: agronomy.SMP, PH: 4.5}},
		{PH: 4.3, Target: 6.5, Depth: 4, Buffer: agronomy.Buffer{Method: agronomy.AdamsEvans, PH: 7.6}},
		{PH: 5.5, Target: 6.5, Depth: 4, Acidity: 30},
	} {
		n, err := Requirement(c)
		if err != nil || !n.BelowTable || n.Rate <= 0 || n.Rate > CapTurf*GroundActs || n.Reaches != c.PH || !strings.Contains(n.Why[len(n.Why)-1].Text, "buffer pH") {
			t.Errorf("%+v: %+v, %v", c, n, err)
		}
		if ph, _, err := ExpectedPH(c, n.Rate); err == nil {
			t.Errorf("%+v: pH %v is promised", c, ph)
		}
	}
}
