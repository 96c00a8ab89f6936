package lime

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"swardbook/agronomy"
)

// knot is a target pH and the need for it.
type knot struct {
	ph   agronomy.PH
	need float64
}

// knots pairs targets with the needs printed for them.
func knots(targets []agronomy.PH, needs []float64) []knot {
	ks := make([]knot, len(targets))
	for i, t := range targets {
		ks[i] = knot{t, needs[i]}
	}
	return ks
}

// along reads straight lines between knots of rising pH; ph lies within them.
func along(knots []knot, ph agronomy.PH) float64 {
	for i := 1; i < len(knots); i++ {
		if ph <= knots[i].ph {
			a, b := knots[i-1], knots[i]
			return between(float64(ph), float64(a.ph), a.need, float64(b.ph), b.need)
		}
	}
	return knots[len(knots)-1].need
}

// limeMethod is one method laid on one case: the fully effective lime, in lb
// per 1000 sq ft for the depth of the case, that each target takes. need never
// falls as the target rises, so that it can be turned round.
type limeMethod struct {
	name    string
	top     agronomy.PH // the highest target covered
	need    func(target agronomy.PH) agronomy.PerThousand
	spread  func(target agronomy.PH) (low, high agronomy.PerThousand)
	why     func(target agronomy.PH) []agronomy.Reason
	notes   []agronomy.Reason
	assumed []agronomy.Reason
	most    agronomy.PerThousand // to give on this evidence at once
	ground  bool                 // read off a table of ordinary ground limestone
}

// unheld is the cap of methods without one.
var unheld = agronomy.PerThousand(math.Inf(1))

// ton is 1 ton/acre, the most on a weakly buffered soil. [tristate-2020]
const ton agronomy.PerThousand = agronomy.PoundsPerTon * 1000.0 / agronomy.SquareFeetPerAcre

// reach refuses a target above those of the method.
func (m limeMethod) reach(target agronomy.PH) error {
	if target <= m.top {
		return nil
	}
	return &RangeError{"target pH by " + m.name, float64(target), 4.8, float64(m.top), "take a target within, and retest before more"}
}

// limeMethodFor picks the method of a settled case.
func limeMethodFor(c Case) (limeMethod, error) {
	switch {
	case c.organic():
		m, err := byTexture(c)
		if c.Buffer.PH != 0 || c.Acidity > 0 {
			m.notes = append(m.notes, agronomy.Reason{Text: "The buffer tables are for mineral soil; organic soil goes by pH and the muck column.", Source: "usda-1957"})
		}
		return m, err
	case c.Buffer.PH != 0:
		switch c.Buffer.Method {
		case agronomy.SMP, agronomy.Sikora:
			return bySMP(c)
		case agronomy.AdamsEvans:
			return byAdamsEvans(c)
		case agronomy.MehlichBuffer, agronomy.ModifiedMehlich:
			return byMehlichBuffer(c)
		}
		return limeMethod{}, fmt.Errorf("buffer method %q is not known: name one of smp, sikora, adams-evans, mehlich, modified-mehlich", c.Buffer.Method)
	case c.Acidity > 0 && c.State == "NC":
		return byCarolina(c, c.Acidity, fmt.Sprintf("acidity %s meq/100 cm3 as reported", agronomy.Short(c.Acidity)))
	case c.Acidity > 0:
		return byPennTurf(c)
	}
	return byTexture(c)
}

// third is the error of an estimate that has no second method beside it.
func third(need func(agronomy.PH) agronomy.PerThousand) func(agronomy.PH) (low, high agronomy.PerThousand) {
	return func(t agronomy.PH) (agronomy.PerThousand, agronomy.PerThousand) {
		n := need(t)
		return n * 2 / 3, n * 4 / 3
	}
}

// byTexture goes by soil pH and texture.
func byTexture(c Case) (limeMethod, error) {
	texture, assumed := c.textureOf()
	if _, err := ByTextureUSDA(c.PH, 6.5, texture, c.WarmRegion); err != nil { // [usda-1957]
		return limeMethod{}, err
	}
	knots := usdaKnots(texture, c.WarmRegion)
	top := knots[len(knots)-1].ph
	tons := func(t agronomy.PH) agronomy.TonsPerAcre { return usdaTons(knots, c.PH, t) }
	need := func(t agronomy.PH) agronomy.PerThousand {
		return GroundActs * tons(t).PerThousand() * agronomy.PerThousand(c.Depth/usdaDepth)
	}
	region := "cool"
	if c.WarmRegion {
		region = "warm"
	}
	return limeMethod{
		name: "pH and texture", top: top, need: need, spread: third(need), assumed: assumed, most: unheld, ground: true,
		why: func(t agronomy.PH) []agronomy.Reason {
			return append(append([]agronomy.Reason{{Text: fmt.Sprintf("%s, %s region, pH %s to %s: %s = %s tons/acre of ground limestone over 7 in, an estimate good to a third either way", texture, region, agronomy.Short(c.PH), agronomy.Short(t), climbed(knots, c.PH, t), agronomy.Fine(float64(tons(t)))), Source: "usda-1957"}},
				scaled(float64(tons(t)), "tons", usdaDepth, c.Depth)...),
				agronomy.Reason{Text: fmt.Sprintf("of ordinary ground limestone about 85 %% acts like pure carbonate (73 in a study of five): %s lb/1000 sq ft of fully effective lime", agronomy.Short(need(t))), Source: "common, uga-aglime-study"})
		},
	}, nil
}

// climbed is the working of the way from one pH to another: the part of each
// step of the table that lies on it, times the tons of the step for a unit.
func climbed(knots []knot, from, to agronomy.PH) string {
	var parts []string
	for i := 1; i < len(knots); i++ {
		a, b := knots[i-1], knots[i]
		if part := min(b.ph, to) - max(a.ph, from); part > 1e-9 {
			parts = append(parts, fmt.Sprintf("%s × %s", agronomy.Fine(float64(part)), agronomy.Fine((b.need-a.need)/float64(b.ph-a.ph))))
		}
	}
	return strings.Join(parts, " + ")
}

// scaled is the working from a figure per acre to the lawn.
func scaled(perAcre float64, unit string, table, depth agronomy.Inches) []agronomy.Reason {
	var steps []agronomy.Reason
	if table != depth {
		at := perAcre * float64(depth/table)
		steps = append(steps, agronomy.Reason{Text: fmt.Sprintf("for %s in: %s × %s/%s = %s %s/acre", agronomy.Short(depth), agronomy.Fine(perAcre), agronomy.Short(depth), agronomy.Short(table), agronomy.Fine(at), unit), Source: "tristate-1995"})
		perAcre = at
	}
	if unit == "tons" {
		return append(steps, agronomy.Reason{Text: fmt.Sprintf("%s × 2000/43.56 = %s lb/1000 sq ft", agronomy.Fine(perAcre), agronomy.Short(agronomy.TonsPerAcre(perAcre).PerThousand())), Source: "definitions"})
	}
	return append(steps, agronomy.Reason{Text: fmt.Sprintf("%s/43.56 = %s lb/1000 sq ft", agronomy.Fine(perAcre), agronomy.Short(agronomy.PerAcre(perAcre).PerThousand())), Source: "definitions"})
}

// laid lays a table of needs by target on a case: a straight line from nothing
// at the soil's pH through the printed targets above it.
func (r bufferRule) laid(c Case) limeMethod {
	knots := []knot{{c.PH, 0}}
	for i, need := range r.needs(c.Buffer.PH) {
		if r.targets[i] > c.PH && (r.below == nil || c.PH < r.below[i]) {
			knots = append(knots, knot{r.targets[i], need * float64(r.effective) / 100})
		}
	}
	need := func(t agronomy.PH) agronomy.PerThousand {
		perAcre := agronomy.PerAcre(along(knots, max(t, c.PH)))
		if r.unit == "tons" {
			perAcre *= agronomy.PoundsPerTon
		}
		return perAcre.PerThousand() * agronomy.PerThousand(c.Depth/r.depth)
	}
	top := r.targets[len(r.targets)-1]
	return limeMethod{name: r.name, top: top, need: need, spread: third(need), most: unheld, why: func(t agronomy.PH) []agronomy.Reason {
		if len(knots) == 1 {
			return []agronomy.Reason{{Text: fmt.Sprintf("%s ask for no lime at pH %s: they lime to %s only from under %s.", r.name, agronomy.Short(c.PH), agronomy.Short(top), agronomy.Short(r.below[len(r.below)-1])), Source: r.source}}
		}
		why := r.working(c, knots, t)
		return append(why, scaled(along(knots, t), r.unit, r.depth, c.Depth)...)
	}}
}

// working tells how a table's figure for a target was read.
func (r bufferRule) working(c Case, knots []knot, t agronomy.PH) []agronomy.Reason {
	name := c.Buffer.Method.Name()
	at := along(knots, t)
	stone := "effective lime"
	if r.effective != 100 {
		stone = fmt.Sprintf("effective lime (the %s %% lime of the table × %s)", agronomy.Short(r.effective), agronomy.Short(r.effective/100))
	}
	i := slices.IndexFunc(knots, func(k knot) bool { return k.ph >= t })
	why := []agronomy.Reason{{Text: fmt.Sprintf("%s buffer pH %s to pH %s by %s: %s %s/acre of %s over %s in", name, agronomy.Short(c.Buffer.PH), agronomy.Short(knots[i].ph), r.name, agronomy.Fine(knots[i].need), r.unit, stone, agronomy.Short(r.depth)), Source: r.source}}
	if knots[i].ph != t {
		from := knots[i-1]
		why = append(why, agronomy.Reason{Text: fmt.Sprintf("pH %s lies between %s (%s) and %s (%s): %s %s/acre", agronomy.Short(t), agronomy.Short(from.ph), agronomy.Fine(from.need), agronomy.Short(knots[i].ph), agronomy.Fine(knots[i].need), agronomy.Fine(at), r.unit), Source: ""})
	}
	return why
}
