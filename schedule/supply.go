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
	if p.used != nil {
		return p.used
	}
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
		m, planned := materials[s.Material]
		if !planned {
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
			s.Buy, s.Cost, s.By, s.Left = 0, 0, Date{}, 0
			if s.Packs <= s.OnHand*slack {
				continue
			}
			s.Note = fmt.Sprintf("%s short, and none of it is to be bought", word.Packs(s.Packs-s.OnHand))
			continue
		}
		if s.Buy == 0 {
			s.By = Date{}
		} else if !s.Priced {
			s.Note = fmt.Sprintf("no price is given for %s", s.Name)
		}
	}
	for i := range out {
		s := &out[i]
		if over := p.Site.overdrawn(s.Material, used[s.Material]); over != "" {
			s.Note = strings.TrimSuffix(over+"; "+s.Note, "; ")
		}
	}
	return out
}

// overdrawn says that more of a material is down than was counted; "" if it is not.
func (s *Site) overdrawn(id string, used float64) string {
	i := slices.IndexFunc(s.Materials, func(m material.Material) bool { return m.ID == id })
	if i < 0 || used < s.Materials[i].OnHand+0.05 { // [common] a twentieth of a pack is within what a person weighs
		return ""
	}
	m := s.Materials[i]
	over := fmt.Sprintf("%s more %s down since %s than the %s on hand: count again, and write on_hand with counted", word.Packs(used-m.OnHand), verb(used-m.OnHand), s.CountedOn(id).Short(), word.Packs(m.OnHand))
	if m.NoRebuy {
		over += "; none of it is to be bought"
	}
	return over
}

func verb(packs float64) string {
	if packs > 1 {
		return "are"
	}
	return "is"
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
	used, at := 0.0, 0
	for _, u := range s.Uses {
		if used += u.Packs; used <= s.OnHand+1e-9 {
			continue
		}
		for at < len(p.Entries) && p.Entries[at].ID != u.Job { // both are in order of time
			at++
		}
		if at == len(p.Entries) {
			break
		}
		if e := &p.Entries[at]; e.State != Finished {
			out = append(out, e)
		}
	}
	return out
}

// Buying is one material in the order in which to buy where money is short.
type Buying struct {
	Material string   `json:"material"`
	Name     string   `json:"name"`
	Packs    int      `json:"packs"`      // to buy
	Paid     int      `json:"paid_packs"` // of them within the budget
	Cost     float64  `json:"cost"`       // of all of them
	Priced   bool     `json:"priced"`
	Waits    []string `json:"waits"` // jobs that the budget does not reach for
}

// Spending is the order of buying, and how far the budget goes.
type Spending struct {
	Budget float64  `json:"budget"`
	Cost   float64  `json:"cost"` // of all that has a price
	Order  []Buying `json:"order"`
}

// Spending puts what is to be bought in order: what serves the most important kind
// of job first, then what is needed first. The budget pays for as many packs of each
// as it still reaches for; what has no price is not counted. It gives false where the
// site has no budget or nothing is to be bought.
func (p *Program) Spending(all []Supply) (Spending, bool) {
	s := Spending{Budget: p.Site.Crew.Budget, Order: []Buying{}}
	buys := slices.DeleteFunc(slices.Clone(all), func(b Supply) bool { return b.Buy == 0 })
	if s.Budget <= 0 || len(buys) == 0 {
		return s, false
	}
	kinds := p.Kinds()
	rank := func(b Supply) int {
		best := len(kinds)
		for _, e := range p.runsOut(b) {
			best = min(best, kinds.Rank(e.Kind))
		}
		return best
	}
	slices.SortStableFunc(buys, func(a, b Supply) int {
		if r := rank(a) - rank(b); r != 0 {
			return r
		}
		return a.By.Compare(b.By)
	})
	left := s.Budget
	for _, b := range buys {
		o := Buying{Material: b.Material, Name: b.Name, Packs: b.Buy, Cost: b.Cost, Priced: b.Priced, Waits: []string{}}
		if b.Priced {
			pack := b.Cost / float64(b.Buy)
			o.Paid = min(b.Buy, int(math.Floor(left/pack+1e-9)))
			left -= float64(o.Paid) * pack
			s.Cost += b.Cost
			b.OnHand += float64(o.Paid)
			if o.Paid < o.Packs {
				for _, e := range p.runsOut(b) {
					o.Waits = append(o.Waits, fmt.Sprintf("%s on %s, %s", e.Kind.Noun(), e.AreaName, e.Date.Short()))
				}
			}
		}
		s.Order = append(s.Order, o)
	}
	s.Cost = math.Round(s.Cost*100) / 100
	return s, true
}

// Reaches tells whether the budget pays for all that has a price.
func (s Spending) Reaches() bool { return s.Cost <= s.Budget+1e-9 }

// Words says in what order to buy where the budget does not reach; "" where it does.
func (s Spending) Words() string {
	if s.Reaches() {
		return ""
	}
	var order, waits []string
	for _, o := range s.Order {
		price := "no price given"
		if o.Priced {
			price = fmt.Sprintf("%.2f", o.Cost)
		}
		order = append(order, fmt.Sprintf("%s of %s (%s)", word.Packs(float64(o.Packs)), o.Name, price))
		waits = append(waits, o.Waits...)
	}
	return fmt.Sprintf("The budget of %.2f does not cover all that is to be bought, %.2f. Buy in this order: %s. Not covered: %s.",
		s.Budget, s.Cost, strings.Join(order, ", "), strings.Join(waits, "; "))
}
