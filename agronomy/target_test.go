package agronomy

import (
	"math"
	"testing"
)

func TestGrassTargets(t *testing.T) {
	for _, name := range append(GrassNames(), "creeping bentgrass") {
		g, ok := GrassPH(name)
		if !ok {
			t.Errorf("%s has no target", name)
			continue
		}
		if !(g.Low < g.Default && g.Default < g.High && g.LimeBelow <= g.Low+0.001 && g.LimeBelow < g.Default) {
			t.Errorf("%+v: out of order", g)
		}
		trigger, why := LimeTrigger(g, 0)
		if trigger != g.LimeBelow {
			t.Errorf("%s: lime below %v", g.Grass, trigger)
		}
		resolve(t, []Reason{why})
		own, why := LimeTrigger(g, 6.4)
		if math.Abs(float64(own-6.2)) > 1e-9 {
			t.Errorf("%s to 6.4: lime below %v", g.Grass, own)
		}
		resolve(t, []Reason{why})
		if _, err := LimeRequirement(LimeCase{PH: g.LimeBelow - 0.1, Target: g.Default, LimeBelow: g.LimeBelow, Texture: SandyLoam}); err != nil {
			t.Errorf("%s: %v", g.Grass, err)
		}
	}
	if _, ok := GrassPH("crabgrass"); ok {
		t.Error("crabgrass has a target")
	}
	if !WarmLimeRegion("GA") || WarmLimeRegion("OH") {
		t.Error("Georgia takes the warm column, Ohio the cool one")
	}
}
