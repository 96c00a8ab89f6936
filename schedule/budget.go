package schedule

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"swardbook/schedule/word"
)

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
	return fmt.Sprintf("The budget of %.2f does not reach for all that is to be bought, %.2f. Buy in this order: %s. The money ends before: %s.",
		s.Budget, s.Cost, strings.Join(order, ", "), strings.Join(waits, "; "))
}
