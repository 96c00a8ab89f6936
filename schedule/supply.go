package schedule

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule/word"
)

// Supply is one material over the whole program: what it takes, what is there,
// what to buy by when, and what is left over.
type Supply struct {
	Material string           `json:"material"`
	Name     string           `json:"name"`
	Pounds   agronomy.Pounds  `json:"amount_lb"`
	Gallons  agronomy.Gallons `json:"amount_gal"`
	Packs    float64          `json:"packs"`
	PackSize string           `json:"pack_size,omitzero"`
	OnHand   float64          `json:"on_hand_packs"`
	Buy      int              `json:"buy_packs"`
	By       Date             `json:"by,omitzero"` // first job that runs short
	Cost     float64          `json:"cost"`
	Priced   bool             `json:"priced"`
	Left     float64          `json:"left_packs"`
	Uses     []Use            `json:"uses"`
	Note     string           `json:"note,omitzero"` // why a material in the shed is not used
}

// Use is one job's part of a material.
type Use struct {
	Job    string          `json:"job"`
	Date   Date            `json:"date"`
	Pounds agronomy.Pounds `json:"amount_lb"`
	Packs  float64         `json:"packs"`
}

// usedUp gives the packs of each material that are down since they were counted: on
// record, or taken as done.
func (p *Program) usedUp() map[string]float64 {
	used := map[string]float64{}
	for _, c := range p.Cases {
		for _, d := range c.Down {
			if d.Presumed == nil && !d.NotDone {
				used[d.Dose.Material.ID] += p.Site.PacksUsed(d.Date, d.Dose, c.Area.Size)
			}
		}
	}
	for _, e := range p.Entries {
		if a := p.Site.Area(e.Area); a != nil && e.State == Taken {
			used[e.Material] += p.Site.PacksUsed(e.Date, e.Dose, a.Size)
		}
	}
	return used
}

// ahead tells whether a job still takes of its material.
func (e *Entry) ahead() bool { return e.State == Planned || e.State == Due }

// Supplies lists every material that the program still uses or that is in the shed,
// in the order of the site file, then what must be bought beside it. What is down
// already is not used again.
func (p *Program) Supplies() []Supply {
	var out []Supply
	used := p.usedUp()
	at := map[string]int{}
	add := func(m material.Material) int {
		if i, ok := at[m.ID]; ok {
			return i
		}
		s := Supply{Material: m.ID, Name: word.MaterialName(m), OnHand: max(0, m.OnHand-used[m.ID]), Uses: []Use{}, Priced: m.Price > 0}
		switch w, ok := m.PackWeight(); {
		case m.PackVolume > 0:
			s.PackSize = word.Measure{Metric: p.Metric}.Volume(m.PackVolume)
		case ok:
			s.PackSize = word.Measure{Metric: p.Metric}.Weight(w)
		}
		at[m.ID] = len(out)
		out = append(out, s)
		return at[m.ID]
	}
	for _, m := range p.Site.Materials {
		add(m)
	}
	materials := map[string]material.Material{}
	for _, e := range p.Entries {
		if e.Material == "" || !e.ahead() {
			continue
		}
		m := e.Dose.Material
		if given := slices.IndexFunc(p.Site.Materials, func(g material.Material) bool { return g.ID == m.ID }); given >= 0 {
			m = p.Site.Materials[given]
		}
		materials[m.ID] = m
		s := &out[add(m)]
		s.Pounds += e.Pounds
		s.Gallons += e.Gallons
		s.Packs += e.Packs
		s.Uses = append(s.Uses, Use{Job: e.ID, Date: e.Date, Pounds: e.Pounds, Packs: e.Packs})
		if s.By.IsZero() && s.Packs > s.OnHand+1e-9 {
			s.By = e.Date
		}
	}
	for i := range out {
		s := &out[i]
		m, used := materials[s.Material]
		if !used {
			s.Left = s.OnHand
			if given := slices.IndexFunc(p.Site.Materials, func(g material.Material) bool { return g.ID == s.Material }); p.Site.Materials[given].Pesticide {
				s.Note = "never planned, " + pesticideInside
			} else if s.OnHand > 0 {
				s.Note = "in the shed, not used by this program"
			}
			continue
		}
		if s.PackSize == "" {
			s.Note = "the size of a pack is not given, so packs cannot be counted"
			continue
		}
		m.OnHand = s.OnHand
		b := m.Purchase(s.Packs)
		s.Buy, s.Cost, s.Left = b.Packs, math.Round(b.Cost*100)/100, b.Left
		if m.NoRebuy && s.Buy > 0 {
			s.Note = fmt.Sprintf("%s short, and none of it is to be bought", word.Packs(s.Packs-s.OnHand))
			s.Buy, s.Cost, s.Left = 0, 0, 0
			continue
		}
		if s.Buy == 0 {
			s.By = Date{}
		} else if !s.Priced {
			s.Note = fmt.Sprintf("no price is given for %s", s.Name)
		}
	}
	return out
}

// TellSupplies says what cannot be done if nothing more is bought, and has the
// first job that the shed does not reach for begin with the purchase.
func (p *Program) TellSupplies() {
	for _, s := range p.Supplies() {
		short := p.runsOut(s)
		if s.Buy == 0 || len(short) == 0 {
			continue
		}
		jobs := make([]string, len(short))
		for i, e := range short {
			jobs[i] = fmt.Sprintf("%s on %s, %s", e.Kind.Noun(), e.AreaName, e.Date.Short())
		}
		text := "If no %s is bought, this cannot be done: %s."
		if s.OnHand > 0 {
			text = "If no more %s is bought, it runs out at: %s."
		}
		p.InTheShed = append(p.InTheShed, fmt.Sprintf(text, s.Name, strings.Join(jobs, "; ")))
		if first := short[0]; !first.ToBuy { // else each job says so itself
			buy := fmt.Sprintf("Buy %s of %s first: the shed runs out.", word.Packs(float64(s.Buy)), s.Name)
			first.Steps = slices.Concat([]string{buy}, first.Steps)
		}
	}
}

// runsOut gives the jobs still to do for which the shed does not reach.
func (p *Program) runsOut(s Supply) []*Entry {
	var out []*Entry
	used := 0.0
	for _, u := range s.Uses {
		if used += u.Packs; used <= s.OnHand+1e-9 {
			continue
		}
		i := slices.IndexFunc(p.Entries, func(e Entry) bool { return e.ID == u.Job })
		if e := &p.Entries[i]; e.State != Finished {
			out = append(out, e)
		}
	}
	return out
}
