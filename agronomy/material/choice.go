package material

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"swardbook/agronomy"
)

// Choose picks one material for an application on an area, and says why each
// of the others was passed over. It reports false when none is fit.
//
// Unfit is what [DoseFor] refuses, and what brings less than half as much of
// the wanted as the best of the others (a cap on something else holds it back).
// Among the fit: enough on hand, then some on hand, then in the site file, then
// to buy; then the least over (N, P2O5, K2O) and under the wants; then the cost of what must
// be bought; then the order given. Of what is to buy, those that fit about as well
// come by what would be left over.
//
// To let a material of the trade stand in, append [TradeMaterials] to the list.
func Choose(ms []Material, w Wants, c Caps, area agronomy.SquareFeet) (Dose, []agronomy.Reason, bool) {
	return ChooseAlong(ms, w, Wants{}, c, area)
}

// ChooseAlong is [Choose] where the wants size the dose and may bring others along:
// what comes along is welcome and counts in the choice, but never cuts the dose.
func ChooseAlong(ms []Material, w, along Wants, c Caps, area agronomy.SquareFeet) (Dose, []agronomy.Reason, bool) {
	fit, passed := rank(ms, w, along, c, area)
	if len(fit) == 0 {
		return Dose{}, passed, false
	}
	chosen := fit[0]
	chosen.explain(w, c)
	why := []agronomy.Reason{{Text: chosen.Material.Title() + " chosen: " + chosen.describe()}}
	for _, x := range fit[1:] {
		if !x.Material.ToBuy {
			passed = append(passed, agronomy.Reason{Text: fmt.Sprintf("not used: %s, %s", x.Material.Title(), x.describe())})
		}
	}
	return chosen.Dose, append(why, passed...), true
}

// Likely gives the material that [ChooseAlong] would pick, without the reasons.
func Likely(ms []Material, w, along Wants, c Caps, area agronomy.SquareFeet) (Material, bool) {
	fit, _ := rank(ms, w, along, c, area)
	if len(fit) == 0 {
		return Material{}, false
	}
	return fit[0].Material, true
}

// rank lists the fit materials, the best first, and says why others are unfit.
func rank(ms []Material, w, along Wants, c Caps, area agronomy.SquareFeet) (fit []*choice, passed []agronomy.Reason) {
	best := agronomy.PerThousand(0)
	for i := range ms {
		m := &ms[i]
		if m.ToBuy && (m.contents().within(w).total() == 0 || m.barred(c)) {
			continue // the quick way past most of the trade's list
		}
		d, err := solve(m, w, c)
		if err != nil {
			if !m.ToBuy { // nobody asks why a material of the trade was not bought
				passed = append(passed, agronomy.Reason{Text: "not used: " + err.Error()})
			}
			continue
		}
		d.Over, d.Under = over(d.brings(), w.Plus(along)), over(w.Plus(along), d.brings())
		x := newChoice(d, w.Plus(along), area, i)
		if m.ToBuy && strings.HasSuffix(m.ID, "-small") && x.packs > aFewPacks {
			continue // the large pack stands in the list as well
		}
		fit = append(fit, x)
		best = max(best, fit[len(fit)-1].useful)
	}
	fit = slices.DeleteFunc(fit, func(x *choice) bool {
		if x.useful >= best/2*(1-1e-9) { // [common] half is our own line
			return false
		}
		if !x.Material.ToBuy {
			passed = append(passed, agronomy.Reason{Text: fmt.Sprintf("not used: %s would bring only %s before %s is reached",
				x.Material.Title(), x.brings().within(w), x.limit())})
		}
		return true
	})
	slices.SortStableFunc(fit, func(a, b *choice) int {
		return cmp.Or(cmp.Compare(a.supply, b.supply), a.compareMisfit(b), cmp.Compare(a.waste, b.waste), cmp.Compare(a.cost, b.cost), cmp.Compare(a.order, b.order))
	})
	return fit, passed
}

// choice is a dose with what ranks it.
type choice struct {
	Dose
	supply supply
	useful agronomy.PerThousand // of the wanted nutrients, what it brings
	misfit agronomy.PerThousand // over the wants of N, P2O5 and K2O, and under all wants
	packs  float64              // that it takes
	waste  agronomy.Pounds      // of the trade: left over of the packs to buy
	cost   float64              // of the packs to buy; +Inf where it is not known
	order  int
}

// supply tells where a material comes from, best first.
type supply int

const (
	enoughOnHand supply = iota
	someOnHand
	inFile
	toBuy
)

func (s supply) String() string {
	return [...]string{"enough on hand", "some on hand, more to buy", "none on hand", "to buy"}[s]
}

func newChoice(d Dose, w Wants, area agronomy.SquareFeet, order int) *choice {
	x := &choice{Dose: d, order: order, useful: d.brings().within(w).total()}
	// Mg and S beyond the wants do no harm at these rates. [common]
	x.misfit = d.Over.N + d.Over.P2O5 + d.Over.K2O/harmlessK + d.Under.total()
	m := d.Material
	packs, known := m.PacksFor(d.Rate.Over(area))
	buy := m.Purchase(packs)
	switch {
	case m.ToBuy:
		x.supply = toBuy
		x.misfit += d.Over.Mg // nobody buys magnesium that is not wanted
		if w.K2O == 0 {       // nor potash where none is
			x.misfit += d.Over.K2O - d.Over.K2O/harmlessK
		}
		x.packs, x.waste = packs, agronomy.Pounds(buy.Left)*m.Pack
	case m.OnHand <= 0:
		x.supply = inFile
	case known && buy.Packs == 0:
		x.supply = enoughOnHand
	default:
		x.supply = someOnHand
	}
	x.cost = buy.Cost
	if !known || buy.Packs > 0 && m.Price == 0 {
		x.cost = math.Inf(1)
	}
	return x
}

// harmlessK is how many pounds of potash beyond the wants weigh as much in the choice
// as a pound of another nutrient: it feeds no algae and burns little.
const harmlessK = 2 // [common]

// asWell is the misfit in steps of which two materials of the trade fit as well.
const asWell agronomy.PerThousand = 0.2 // [common]

// compareMisfit compares how badly two choices fit.
func (x *choice) compareMisfit(y *choice) int {
	if x.supply == toBuy && y.supply == toBuy {
		return cmp.Compare(math.Floor(float64(x.misfit/asWell)+1e-9), math.Floor(float64(y.misfit/asWell)+1e-9))
	}
	return near(x.misfit, y.misfit)
}

func (x *choice) limit() string {
	if x.ByCap {
		return "the cap on " + inWords(x.BoundBy)
	}
	return "the " + inWords(x.BoundBy) + " wanted"
}

func (x *choice) describe() string {
	s := "brings " + x.brings().String()
	if _, counted := x.Material.PackWeight(); counted || x.supply != inFile { // or nobody knows what is on hand
		s = x.supply.String() + "; " + s
	}
	if x.Under != (Wants{}) {
		s += "; short by " + x.Under.String()
	}
	if x.Over != (Wants{}) {
		s += "; over by " + x.Over.String()
	}
	return s
}

// near compares two amounts that may differ by rounding.
func near(a, b agronomy.PerThousand) int {
	if math.Abs(float64(a-b)) <= 1e-9*math.Max(float64(a), float64(b)) {
		return 0
	}
	return cmp.Compare(a, b)
}
