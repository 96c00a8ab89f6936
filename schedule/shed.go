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
	Materials []*material.Material // the stock, then the trade's
	stock     []material.Material  // the site's that may be planned, with the packs still there

	Offered, Slow []*material.Material // the last offers, see offers in package rule
}

// NewShed starts from the packs in the site file less those used since they were
// counted, by the id of the material. What holds a pesticide is nothing to draw
// from.
func NewShed(s *Site, used map[string]float64) *Shed {
	sh := &Shed{stock: slices.DeleteFunc(slices.Clone(s.Materials), func(m material.Material) bool { return m.Pesticide })}
	for i := range sh.stock {
		m := &sh.stock[i]
		m.OnHand = max(0, m.OnHand-used[m.ID])
	}
	sh.stock = slices.DeleteFunc(sh.stock, func(m material.Material) bool { return m.NoRebuy && m.OnHand < 0.01 }) // [common] a hundredth of a pack is dust in the bag
	trade := sh.Trade()
	sh.Materials = make([]*material.Material, 0, len(sh.stock)+len(trade))
	for _, ms := range [][]material.Material{sh.stock, trade} {
		for i := range ms {
			sh.Materials = append(sh.Materials, &ms[i])
		}
	}
	return sh
}

// slack is how many times what is on hand may be planned: no scale at home shows the
// difference.
const slack = 1.02 // [common]

// Short tells whether a dose of a material of which none is to be bought is more than
// what is on hand of it.
func Short(d material.Dose, size agronomy.SquareFeet) bool {
	return d.Material.NoRebuy && d.For(size).Packs > d.Material.OnHand*slack
}

// PacksUsed gives the packs that a dose on a day took of one of the site's materials:
// none if the material was counted after that day, or is not the site's.
func (s *Site) PacksUsed(on Date, d material.Dose, size agronomy.SquareFeet) float64 {
	i := slices.IndexFunc(s.Materials, func(m material.Material) bool { return m.ID == d.Material.ID })
	if i < 0 || on.Before(s.CountedOn(d.Material.ID)) {
		return 0
	}
	return material.DoseOf(s.Materials[i], d.Rate).For(size).Packs
}

// CountedOn gives the day on which what is on hand of a material was counted.
func (s *Site) CountedOn(id string) Date {
	if d, ok := s.Counted[id]; ok {
		return d
	}
	return s.Start
}

// Stock gives the site's materials with the packs that are still there. It must not be
// written to.
func (s *Shed) Stock() []material.Material { return s.stock }

// Restore puts the packs back that were drawn since a copy of the stock was made.
func (s *Shed) Restore(stock []material.Material) { copy(s.stock, stock) }

// Trade gives the materials that can be bought beside the site's. It must not be written
// to.
func (s *Shed) Trade() []material.Material { return material.Shelf() }

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
	for i := range s.stock {
		if m := &s.stock[i]; m.ID == d.Material.ID {
			m.OnHand = max(0, m.OnHand-d.For(size).Packs)
		}
	}
}
