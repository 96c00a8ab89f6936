package schedule

import (
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
)

// shed keeps count of what is on hand while areas draw from it, in the order
// of the file.
type shed struct {
	materials []material.Material // the site's that may be planned, with the packs still there, then the trade's
	own       int                 // how many are the site's

	offered, slow []material.Material // the last offers, see [Case.offers]
}

// newShed starts from the packs in the site file less what the record book has
// used since the program's start. What holds a pesticide is nothing to draw from.
func newShed(s *Site, book []down) *shed {
	sh := &shed{materials: slices.DeleteFunc(slices.Clone(s.Materials), func(m material.Material) bool { return m.Pesticide })}
	sh.own = len(sh.materials)
	sh.materials = append(sh.materials, material.TradeMaterials()...)
	for _, d := range book {
		if a := s.area(d.area); a != nil && !d.Date.Before(s.Start) {
			sh.take(d.dose, a.Size)
		}
	}
	return sh
}

// stock gives the site's materials with the packs that are still there, and
// trade what can be bought beside. Neither may be written to.
func (s *shed) stock() []material.Material { return s.materials[:s.own] }
func (s *shed) trade() []material.Material { return s.materials[s.own:] }

// notPlanned says which materials of the site are never planned, and why.
func (s *Site) notPlanned() (out []string) {
	for _, m := range s.Materials {
		if m.Pesticide {
			out = append(out, materialName(m)+": never planned, "+pesticideInside)
		}
	}
	return out
}

const pesticideInside = "for it kills or prevents weeds, moss, insects or disease: its label and the rules for pesticides say where and when; what does go down belongs in the record book"

// take draws a dose for an area.
func (s *shed) take(d material.Dose, size agronomy.SquareFeet) {
	for i := range s.stock() {
		if m := &s.materials[i]; m.ID == d.Material.ID {
			m.OnHand = max(0, m.OnHand-d.For(size).Packs)
		}
	}
}
