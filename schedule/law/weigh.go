package law

import (
	"fmt"
	"strings"
)

// closes is the nutrient whose dates the rule closes, 0 for other kinds.
func (r Rule) closes() Nutrient {
	switch r.Kind {
	case NitrogenClosed:
		return Nitrogen
	case PhosphorusClosed:
		return Phosphorus
	case PotassiumClosed:
		return Potassium
	}
	return 0
}

func (r Rule) weighDate(q Question) (stance, string) {
	switch lift := r.LiftedBy(q); {
	case lift != 0:
		return kept, fmt.Sprintf("Exempt: %s.", lift)
	case q.Date.IsZero():
		return onTheDay, ""
	case r.When.Has(q.Date):
		return against, fmt.Sprintf("%s is closed.", q.Date)
	}
	return kept, fmt.Sprintf("%s is open.", q.Date)
}

// amount is the part of the application that the cap limits, in lb per 1000 sq ft, and
// whether it is known; where the soluble part is not, it is all of the nitrogen.
func (r Rule) amount(q Question) (lb float64, known bool) {
	switch r.Kind {
	case NitrogenDose:
		return q.N, true
	case SolubleDose:
		return q.soluble()
	case NitrogenYear:
		return q.YearN + q.N, true
	case PhosphorusDose:
		return q.P2O5, true
	case PhosphorusYear:
		return q.YearP2O5 + q.P2O5, true
	}
	return 0, false
}

// most is the cap that the rule sets for the grass, and whether it sets one.
func (r Rule) most(grass string) (lb float64, ok bool) {
	for _, g := range r.byGrass {
		if strings.EqualFold(g.grass, grass) {
			return g.lb, true
		}
	}
	return r.Value, r.Value > 0
}

func (r Rule) weighAmount(q Question) (stance, string) {
	of := q.N
	if r.Kind == PhosphorusDose || r.Kind == PhosphorusYear {
		of = q.P2O5
	}
	if of == 0 || !r.When.IsZero() && !q.Date.IsZero() && !r.When.Has(q.Date) {
		return apart, ""
	}
	limit, ok := r.most(q.Grass)
	if !ok {
		return onTheDay, ""
	}
	lb, known := r.amount(q)
	over := fmt.Sprintf("%s is over it.", dose(lb))
	switch lift := r.LiftedBy(q); {
	case lb <= limit+slack:
		return kept, fmt.Sprintf("%s is within it.", dose(lb))
	case !known:
		return doubtful, "How much of the nitrogen is soluble was not given."
	case !r.When.IsZero() && q.Date.IsZero():
		return onTheDay, over
	case lift.Has(EnhancedSource):
		return doubtful, over + " Enhanced-efficiency products have limits of their own: ask."
	case lift.Has(NewLawn) && r.Raised > 0 && lb > r.Raised+slack:
		return against, fmt.Sprintf("%s is over the most that a new lawn may have, %s.", dose(lb), dose(r.Raised))
	case lift != 0:
		return kept, fmt.Sprintf("%s is over it, but exempt: %s.", dose(lb), lift)
	case r.mayRise(q) && lb <= r.Raised+slack:
		return doubtful, fmt.Sprintf("%s is over it. With that much slow nitrogen up to %s may be allowed: ask.", dose(lb), dose(r.Raised))
	}
	return against, over
}

// mayRise reports whether the application can earn the higher dose: enough
// nitrogen is slow, and the day does not rule it out.
func (r Rule) mayRise(q Question) bool {
	return r.RaisedSlow > 0 && q.SlowShare >= r.RaisedSlow-slack && (q.Date.IsZero() || r.RaisedWhen.Has(q.Date))
}

func (r Rule) weighSlow(q Question) (stance, string) {
	if q.N == 0 {
		return apart, ""
	}
	switch lift := r.LiftedBy(q); {
	case lift != 0:
		return kept, fmt.Sprintf("Exempt: %s.", lift)
	case q.SlowShare == Unknown:
		return onTheDay, ""
	case q.SlowShare < r.Value-slack:
		return against, fmt.Sprintf("This product has %s.", percent(q.SlowShare))
	}
	return kept, fmt.Sprintf("This product has %s.", percent(q.SlowShare))
}

func (r Rule) weighDistance(q Question) (stance, string) {
	lift := r.LiftedBy(q)
	switch keep := r.distance(q.GentleSpreader); {
	case lift != 0:
		return kept, fmt.Sprintf("Exempt: %s.", lift)
	case q.WaterFeet == Unknown:
		return onTheDay, ""
	case q.WaterFeet < keep-slack:
		return against, fmt.Sprintf("%s is too close.", feet(q.WaterFeet))
	}
	return kept, fmt.Sprintf("%s is far enough.", feet(q.WaterFeet))
}

// distance gives the distance to keep, in ft; gentle asks for the lesser one that some
// laws allow, as [Distance] says.
func (r Rule) distance(gentle bool) float64 {
	if gentle && r.Lesser > 0 {
		return r.Lesser
	}
	return r.Value
}
