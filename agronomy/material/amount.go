package material

import (
	"fmt"
	"math"

	"swardbook/agronomy"
)

// FluidOuncesPerGallon is exact for US measure. [definitions]
const FluidOuncesPerGallon = 128

// Amount is a dose on an area: the weight, the volume of a liquid, and the
// packs that makes (0 where the pack's size is not known).
type Amount struct {
	Weight agronomy.Pounds
	Volume agronomy.Gallons
	Packs  float64
}

// For gives the amount of a dose on an area.
func (d Dose) For(area agronomy.SquareFeet) Amount {
	a := Amount{Weight: d.Rate.Over(area), Volume: d.Gallons * agronomy.Gallons(area/1000)}
	a.Packs, _ = d.Material.PacksFor(a.Weight)
	return a
}

// RateOf turns an amount of product on an area back into a rate.
func RateOf(p agronomy.Pounds, area agronomy.SquareFeet) (agronomy.PerThousand, error) {
	if !(area > 0) {
		return 0, fmt.Errorf("an area of %s sq ft: give an area above 0", agronomy.Figure(area))
	}
	return agronomy.PerThousand(float64(p) * 1000 / float64(area)), nil
}

// VolumeOf gives the gallons a weight of a liquid fills; false without a
// density.
func (m Material) VolumeOf(p agronomy.Pounds) (agronomy.Gallons, bool) {
	if !m.Liquid || m.Density <= 0 {
		return 0, false
	}
	return agronomy.Gallons(float64(p) / float64(m.Density)), true
}

// WeightOf gives the weight of a volume of a liquid; false without a density.
func (m Material) WeightOf(g agronomy.Gallons) (agronomy.Pounds, bool) {
	if !m.Liquid || m.Density <= 0 {
		return 0, false
	}
	return agronomy.Pounds(float64(g) * float64(m.Density)), true
}

// PackWeight is the weight of one pack; for a liquid it may come from its
// volume. False when neither is known.
func (m Material) PackWeight() (agronomy.Pounds, bool) {
	if m.Pack > 0 {
		return m.Pack, true
	}
	if w, ok := m.WeightOf(m.PackVolume); ok && w > 0 {
		return w, true
	}
	return 0, false
}

// PacksFor gives the packs, parts included, that hold a weight; false when the
// pack's size is not known.
func (m Material) PacksFor(p agronomy.Pounds) (float64, bool) {
	w, ok := m.PackWeight()
	if !ok {
		return 0, false
	}
	return float64(p / w), true
}

// InPack gives the pounds of each nutrient in a weight of the material: 50 lb
// of 10-10-10 hold 5 lb of each. [vt-fall-2008]
func (m Material) InPack(p agronomy.Pounds) Wants {
	in := m.contents()
	x := agronomy.PerThousand(p)
	return Wants{in.N * x, in.P2O5 * x, in.K2O * x, in.Mg * x, in.S * x}
}

// Purchase is what must be bought so that some packs are at hand.
type Purchase struct {
	Packs int     // whole packs to buy
	Cost  float64 // in the site's own money; 0 where the price is not known
	Left  float64 // packs left over afterwards
}

// Purchase counts the whole packs to buy beyond those on hand.
func (m Material) Purchase(packs float64) Purchase {
	short := packs - m.OnHand
	p := Purchase{Left: -short}
	if short > 1e-9 {
		p.Packs = int(math.Ceil(short - 1e-9))
		p.Cost = float64(p.Packs) * m.Price
		p.Left = max(float64(p.Packs)-short, 0)
	}
	return p
}
