package schedule

import (
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule/word"
)

// Shed keeps count of what is on hand while areas draw from it, in the order
// of the file.
type Shed struct {
	Materials []material.Material // the site's that may be planned, with the packs still there, then the trade's
	own       int                 // how many are the site's

	Offered, Slow []material.Material // the last offers, see [Case.offers]
}

// NewShed starts from the packs in the site file less what the record book has
// used since the program's start. What holds a pesticide is nothing to draw from.
func NewShed(s *Site, book []Down) *Shed {
	sh := &Shed{Materials: slices.DeleteFunc(slices.Clone(s.Materials), func(m material.Material) bool { return m.Pesticide })}
	sh.own = len(sh.Materials)
	sh.Materials = append(sh.Materials, material.TradeMaterials()...)
	for _, d := range book {
		if a := s.Area(d.AreaID); a != nil && !d.Date.Before(s.Start) {
			sh.Take(d.Dose, a.Size)
		}
	}
	return sh
}

// Stock gives the site's materials with the packs that are still there, and
// trade what can be bought beside. Neither may be written to.
func (s *Shed) Stock() []material.Material { return s.Materials[:s.own] }
func (s *Shed) Trade() []material.Material { return s.Materials[s.own:] }

// NotPlanned says which materials of the site are never planned, and why.
func (s *Site) NotPlanned() (out []string) {
	for _, m := range s.Materials {
		if m.Pesticide {
			out = append(out, word.MaterialName(m)+": never planned, "+pesticideInside)
		}
	}
	return out
}

const pesticideInside = "for it kills or prevents weeds, moss, insects or disease: its label and the rules for pesticides say where and when; what does go down belongs in the record book"

// Take draws a dose for an area.
func (s *Shed) Take(d material.Dose, size agronomy.SquareFeet) {
	for i := range s.Stock() {
		if m := &s.Materials[i]; m.ID == d.Material.ID {
			m.OnHand = max(0, m.OnHand-d.For(size).Packs)
		}
	}
}
