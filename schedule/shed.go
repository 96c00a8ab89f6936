package schedule

import (
	"maps"

	"swardbook/agronomy"
)

// shed keeps count of what is on hand while areas draw from it, in the order
// of the file.
type shed struct {
	left  map[string]float64  // packs, by material id
	trade []agronomy.Material // what can be bought beside
}

// newShed starts from the packs in the site file less what the record book has
// used since the program's start.
func newShed(s *Site, book []down) *shed {
	sh := &shed{left: map[string]float64{}, trade: agronomy.TradeMaterials()}
	for _, m := range s.Materials {
		sh.left[m.ID] = m.OnHand
	}
	for _, d := range book {
		if a := s.area(d.area); a != nil && !d.Date.Before(s.Start) {
			sh.take(d.dose, a.Size)
		}
	}
	return sh
}

// stock gives materials with the packs that are still there.
func (s *shed) stock(ms []agronomy.Material) []agronomy.Material {
	out := make([]agronomy.Material, len(ms), len(ms)+len(s.trade))
	for i, m := range ms {
		if left, ok := s.left[m.ID]; ok {
			m.OnHand = left
		}
		out[i] = m
	}
	return out
}

// all gives the stock and then what the trade sells.
func (s *shed) all(ms []agronomy.Material) []agronomy.Material {
	return append(s.stock(ms), s.trade...)
}

// take draws a dose for an area.
func (s *shed) take(d agronomy.Dose, size agronomy.SquareFeet) {
	if left, ok := s.left[d.Material.ID]; ok {
		s.left[d.Material.ID] = max(0, left-d.For(size).Packs)
	}
}

func (s *shed) copy() *shed { return &shed{maps.Clone(s.left), s.trade} }
