package schedule

import "swardbook/agronomy"

// Seed gives the weight of seed for a sowing of a kind, from the least that its grasses
// take to the most; 0 if their rates are not known.
func (a *Area) Seed(k Kind) (low, high agronomy.Pounds) {
	for i, s := range a.Stand {
		rates := s.Grass.SeedRate
		if k == Overseed {
			rates[0], rates[1] = agronomy.OverseedRate(rates[0]), agronomy.OverseedRate(rates[1])
		}
		part := agronomy.PerThousand(a.Stand.Weight(i))
		low += (rates[0] * part).Over(a.Size)
		high += (rates[1] * part).Over(a.Size)
	}
	return low, high
}

// SeedPart gives the part of the seed that a line of the record book put down: by weight
// the part of the least that the grasses take.
func (a *Area) SeedPart(k Kind, d *Done) float64 {
	whole := d.Of
	if whole == 0 {
		whole, _ = a.Seed(k)
	}
	switch {
	case d.Weight > 0 && whole > 0:
		return min(1, float64(d.Weight/whole))
	case d.Share > 0:
		return d.Share
	}
	return 1
}

// LeastRest is the part of a sowing from which what is missing is worth going out again:
// less is within what a person weighs out.
const LeastRest = 0.1 // [common]
