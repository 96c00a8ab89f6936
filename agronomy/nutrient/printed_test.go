package nutrient

import (
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/check"
)

// The laboratory's own amounts count before the level of the reading and the
// grass's table, and are shown beside them.
func TestPrintedCountsFirst(t *testing.T) {
	lb := func(x agronomy.PerThousand) *agronomy.PerThousand { return &x }
	r := agronomy.Report{Method: agronomy.Mehlich3, Texture: agronomy.Loam, Depth: 4,
		Phosphorus: agronomy.Reading{Given: true, PPM: 14}, Potassium: agronomy.Reading{Given: true, PPM: 200},
		Printed: agronomy.Recommended{Phosphate: lb(0.8), Potash: lb(5)}}
	p, err := PhosphorusNeed(r, "OH", false)
	if err != nil || p.Year != 0.8 || !strings.Contains(p.Why[len(p.Why)-1].Text, "By the reading it would be 1 lb") {
		t.Errorf("phosphate: %+v, %v", p, err)
	}
	if k, err := PotassiumNeed(r, "OH", false); err != nil || k.Year != yearK2O || k.Carried != 1 {
		t.Errorf("potash: %+v, %v", k, err)
	}
	r.Method = agronomy.Morgan // has no scale
	if p, err := PhosphorusNeed(r, "OH", false); err != nil || p.Year != 0.8 {
		t.Errorf("phosphate without a scale: %+v, %v", p, err)
	}
	n, err := NitrogenYear(NitrogenCase{Stand: agronomy.Stand{{Grass: check.Grass(t, "perennial ryegrass"), Percent: 100}}, Printed: lb(2)})
	if err != nil || n.Year != 2 || !strings.Contains(n.Why[len(n.Why)-1].Text, "before the 3 lb") {
		t.Errorf("nitrogen: %+v, %v", n, err)
	}
}
