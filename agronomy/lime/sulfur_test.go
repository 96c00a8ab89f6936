package lime

import (
	"errors"
	"math"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/check"
	"swardbook/agronomy/soil"
)

func TestSulfurAndExpectedPHAreInverse(t *testing.T) {
	for _, texture := range []agronomy.Texture{agronomy.Sand, agronomy.LoamySand, agronomy.SandyLoam, agronomy.Loam, agronomy.SiltLoam, agronomy.ClayLoam, agronomy.Clay} {
		var before agronomy.PerThousand
		for ph := agronomy.PH(6.6); ph <= 8.2; ph += 0.1 {
			n, err := SulfurToLower(ph, 6.5, texture, 4)
			if err != nil {
				t.Fatal(err)
			}
			if n.Total <= before {
				t.Errorf("%s at %v: %v lb, no more than %v before", texture, ph, n.Total, before)
			}
			before = n.Total
			check.Resolve(t, n.Why)
			if perYear := n.Total / agronomy.PerThousand(n.Years); perYear > SulfurCapYear+1e-9 {
				t.Errorf("%s at %v: %v lb a year", texture, ph, perYear)
			}
			var sum agronomy.PerThousand
			for _, a := range n.Applications {
				if sum += a; a > SulfurCap+1e-9 {
					t.Errorf("%s at %v: %v lb at once", texture, ph, a)
				}
			}
			if math.Abs(float64(sum-n.Total)) > 1e-9 {
				t.Errorf("%s at %v: applications add up to %v of %v", texture, ph, sum, n.Total)
			}
			part, err := SulfurToLower(ph, 6.55, texture, 4)
			if err != nil {
				t.Fatal(err)
			}
			at, why, err := PHAfterSulfur(ph, texture, 4, part.Total)
			if err != nil || math.Abs(float64(at-6.55)) > 0.01 {
				t.Errorf("%s from %v: %v lb reaches %v (%v), want 6.55", texture, ph, part.Total, at, err)
			}
			check.Resolve(t, why)
			if at, _, err := PHAfterSulfur(ph, texture, 4, 0); err != nil || math.Abs(float64(at-ph)) > 0.01 {
				t.Errorf("%s from %v: no sulfur reaches %v (%v)", texture, ph, at, err)
			}
		}
	}
}

// An amount that is only rounding is no application.
func TestSulfurPlanOfAlmostNothing(t *testing.T) {
	for _, total := range []agronomy.PerThousand{0, 1e-300, 1e-16, 1e-10} {
		if parts, years := SulfurPlan(total); len(parts) != 0 || years != 0 {
			t.Errorf("%g lb: %d applications in %d years", float64(total), len(parts), years)
		}
	}
}

// The printed rows of the plow layer, at its own depth.
func TestSulfurTable(t *testing.T) {
	for _, c := range []struct {
		ph      agronomy.PH
		texture agronomy.Texture
		lb      agronomy.PerAcre
	}{{7.0, agronomy.Sand, 100}, {7.5, agronomy.Loam, 800}, {8.0, agronomy.Clay, 2000}, {7.25, agronomy.Clay, 650}} {
		n, err := SulfurToLower(c.ph, 6.5, c.texture, 6.5)
		if err != nil || math.Abs(float64(n.Total.PerAcre()-c.lb)) > 0.01 {
			t.Errorf("%s from %v: %v lb/acre (%v), want %v", c.texture, c.ph, n.Total.PerAcre(), err, c.lb)
		}
	}
	if _, err := SulfurToLower(7.4, 6.5, "", 4); err == nil || !strings.HasPrefix(err.Error(), "no texture is given") {
		t.Errorf("without a texture: %v", err)
	}
	if n, err := SulfurToLower(6.8, 7.0, agronomy.Loam, 4); err != nil || n.Total != 0 || len(n.Why) == 0 {
		t.Errorf("already below: %+v (%v)", n, err)
	}
}

func TestSulfurRefused(t *testing.T) {
	for _, c := range []struct {
		ph, target agronomy.PH
		texture    agronomy.Texture
		depth      agronomy.Inches
	}{{8.3, 6.5, agronomy.Loam, 4}, {6.2, 6.5, agronomy.Loam, 4}, {7.5, 5.5, agronomy.Loam, 4}, {7.5, 6.5, agronomy.Muck, 4}, {7.5, 6.5, agronomy.Loam, 12}, {agronomy.PH(math.NaN()), 6.5, agronomy.Loam, 4}} {
		if n, err := SulfurToLower(c.ph, c.target, c.texture, c.depth); err == nil {
			t.Errorf("%+v gave %v", c, n.Total)
		}
	}
	var outside *RangeError
	if _, _, err := PHAfterSulfur(7.5, agronomy.Loam, 4, 500); !errors.As(err, &outside) {
		t.Errorf("500 lb of sulfur: %v", err)
	}
}

// Where sulfur may still be planned no finding calls it useless, and where the
// finding calls the soil chalky none is planned.
func TestChalkAndSulfurAgree(t *testing.T) {
	blue := agronomy.Stand{{Grass: check.Grass(t, "kentucky bluegrass"), Percent: 100}}
	for _, ph := range []agronomy.PH{7.6, 8.0, 8.1, 8.2, 8.3, 8.6} {
		_, err := SulfurToLower(ph, 7, agronomy.Loam, 4)
		chalky := strings.Contains(soil.Findings(agronomy.Report{PH: ph}, blue, "PA", false)[0].Text, "uses up sulfur")
		if chalky != (err != nil) {
			t.Errorf("pH %.1f: called chalky %t, sulfur refused: %v", float64(ph), chalky, err)
		}
	}
}
