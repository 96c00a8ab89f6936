package check

import (
	"math"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/lime"
)

func TestGrassTargets(t *testing.T) {
	for _, name := range append(agronomy.GrassNames(), "creeping bentgrass") {
		g, ok := agronomy.GrassPH(name)
		if !ok {
			t.Errorf("%s has no target", name)
			continue
		}
		if !(g.Low < g.Default && g.Default < g.High && g.LimeBelow <= g.Low+0.001 && g.LimeBelow < g.Default) {
			t.Errorf("%+v: out of order", g)
		}
		trigger, why := agronomy.LimeTrigger(g, 0)
		if trigger != g.LimeBelow {
			t.Errorf("%s: lime below %v", g.Grass, trigger)
		}
		Resolve(t, []agronomy.Reason{why})
		own, why := agronomy.LimeTrigger(g, 6.4)
		if math.Abs(float64(own-6.2)) > 1e-9 {
			t.Errorf("%s to 6.4: lime below %v", g.Grass, own)
		}
		Resolve(t, []agronomy.Reason{why})
		if _, err := lime.Requirement(lime.Case{PH: g.LimeBelow - 0.1, Target: g.Default, LimeBelow: g.LimeBelow, Texture: agronomy.SandyLoam}); err != nil {
			t.Errorf("%s: %v", g.Grass, err)
		}
	}
	if _, ok := agronomy.GrassPH("crabgrass"); ok {
		t.Error("crabgrass has a target")
	}
	if !lime.WarmLimeRegion("GA") || lime.WarmLimeRegion("OH") {
		t.Error("Georgia takes the warm column, Ohio the cool one")
	}
}
