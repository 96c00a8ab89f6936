package check

import (
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
		Resolve(t, []agronomy.Reason{{Text: g.Grass, Source: g.Source}})
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
