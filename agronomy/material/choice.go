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
	return ChooseAlong(refer(ms), w, Wants{}, c, area)
}

// refer lists materials without copies of them.
func refer(ms []Material) []*Material {
	out := make([]*Material, len(ms))
	for i := range ms {
		out[i] = &ms[i]
	}
	return out
}

// ChooseAlong is [Choose] where the wants size the dose and may bring others along:
// what comes along is welcome and counts in the choice, but never cuts the dose.
func ChooseAlong(ms []*Material, w, along Wants, c Caps, area agronomy.SquareFeet) (Dose, []agronomy.Reason, bool) {
	fit, passed := rank(ms, w, along, c, area)
	if len(fit) == 0 {
		return Dose{}, passed, false
	}
	first := &fit[0]
	all := w.Plus(along)
	chosen := first.dose(first.of, all)
	chosen.explain(w, c)
	why := make([]agronomy.Reason, 0, 1+len(fit)+len(passed))
	why = append(why, agronomy.Reason{Text: chosen.Material.Title() + " chosen: " + first.describe(all)})
	for i := range fit[1:] {
		if x := &fit[1+i]; !x.of.ToBuy {
			passed = append(passed, agronomy.Reason{Text: fmt.Sprintf("not used: %s, %s", x.of.Title(), x.describe(all))})
		}
	}
	return chosen, append(why, passed...), true
}

// Likely gives the material that [ChooseAlong] would pick, without the reasons.
func Likely(ms []*Material, w, along Wants, c Caps, area agronomy.SquareFeet) (Material, bool) {
	fit, _ := rank(ms, w, along, c, area)
	if len(fit) == 0 {
		return Material{}, false
	}
	return *fit[0].of, true
}

// rank lists the fit materials, the best first, and says why others are unfit. The trade's
// come last: where each of the others is fit, whatever the trade has, they are left out.
func rank(ms []*Material, w, along Wants, c Caps, area agronomy.SquareFeet) (fit []choice, passed []agronomy.Reason) {
	best := agronomy.PerThousand(0)
	all := w.Plus(along)
	consider := func(trade bool) {
		for i, m := range ms {
			if m.ToBuy != trade || trade && (m.contents().within(w).total() == 0 || m.barred(c)) {
				continue // the quick way past most of the trade's list
			}
			r, err := solve(m, w, c)
			if err != nil {
				if !trade { // nobody asks why a material of the trade was not bought
					passed = append(passed, agronomy.Reason{Text: "not used: " + err.Error()})
				}
				continue
			}
			x := newChoice(m, r, all, area, i)
			if trade && strings.HasSuffix(m.ID, "-small") && x.packs > aFewPacks {
				continue // the large pack stands in the list as well
			}
			fit = append(fit, x)
			best = max(best, x.useful)
		}
	}
	consider(false)
	if len(fit) == 0 || slices.ContainsFunc(fit, func(x choice) bool { return x.useful < all.total()/2 }) { // nothing brings more than all
		fit = slices.Grow(fit, usualChoices)
		consider(true)
	}
	fit = slices.DeleteFunc(fit, func(x choice) bool {
		if x.useful >= best/2*(1-1e-9) { // [common] half is our own line
			return false
		}
		if !x.of.ToBuy {
			passed = append(passed, agronomy.Reason{Text: fmt.Sprintf("not used: %s would bring only %s before %s is reached",
				x.of.Title(), x.brings(x.of).within(w), x.limit())})
		}
		return true
	})
	slices.SortStableFunc(fit, func(a, b choice) int {
		if by := cmp.Compare(a.supply, b.supply); by != 0 {
			return by
		}
		if by := a.compareMisfit(&b); by != 0 {
			return by
		}
		return cmp.Or(cmp.Compare(a.waste, b.waste), cmp.Compare(a.cost, b.cost), cmp.Compare(a.order, b.order))
	})
	return fit, passed
}

// usualChoices is about how many materials are fit for a dose. It only sizes a slice.
const usualChoices = 12

// choice is a material at the rate that binds it, with what ranks it.
type choice struct {
	bound
	of     *Material
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

func newChoice(m *Material, r bound, w Wants, area agronomy.SquareFeet, order int) choice {
	brings := r.brings(m)
	x := choice{bound: r, of: m, order: order, useful: brings.within(w).total()}
	more, less := over(brings, w), over(w, brings)
	// Mg and S beyond the wants do no harm at these rates. [common]
	x.misfit = more.N + more.P2O5 + more.K2O/harmlessK + less.total()
	packs, known := m.PacksFor(r.rate().Over(area))
	buy := m.Purchase(packs)
	switch {
	case m.ToBuy:
		x.supply = toBuy
		x.misfit += more.Mg // nobody buys magnesium that is not wanted
		if w.K2O == 0 {     // nor potash where none is
			x.misfit += more.K2O - more.K2O/harmlessK
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
	if x.cap {
		return "the cap on " + inWords(x.name)
	}
	return "the " + inWords(x.name) + " wanted"
}

// describe says where the material comes from and what it brings, beside the wants.
func (x *choice) describe(w Wants) string {
	brings := x.brings(x.of)
	s := "brings " + brings.String()
	if _, counted := x.of.PackWeight(); counted || x.supply != inFile { // or nobody knows what is on hand
		s = x.supply.String() + "; " + s
	}
	if less := over(w, brings); less != (Wants{}) {
		s += "; short by " + less.String()
	}
	if more := over(brings, w); more != (Wants{}) {
		s += "; over by " + more.String()
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
