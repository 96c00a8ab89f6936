package law

// Limit is the strictest figure among the enforced rules of one kind, in the
// unit of the kind, and the rule it comes from.
type Limit struct {
	Value float64
	Rule  Rule
}

// ClosedSpan is a closed stretch of the year with its rule.
type ClosedSpan struct {
	Span Span
	Rule Rule // [Rule.LiftedBy] tells whether a product escapes it
	Warn bool // not enforced: show it and plan on
}

// Closed returns the spans closed to products with a nutrient of n.
func (rs Rules) Closed(n Nutrient) []ClosedSpan {
	var out []ClosedSpan
	for _, r := range rs {
		if r.closes()&n != 0 {
			out = append(out, ClosedSpan{r.When, r, !r.Enforced()})
		}
	}
	return out
}

// NCap is the most nitrogen of one application, lb per 1000 sq ft. It reads
// Date: with none given, caps that hold on certain days only are left aside. An
// enhanced-efficiency product does not raise it.
func (rs Rules) NCap(q Question) (Limit, bool) { return rs.least(NitrogenDose, q) }

// SolubleCap is the most soluble nitrogen of one application, lb per 1000 sq ft.
func (rs Rules) SolubleCap(q Question) (Limit, bool) { return rs.least(SolubleDose, q) }

// AnnualNCap is the most nitrogen of a year, lb per 1000 sq ft, for Grass. Where
// the law points at a table that has no figure for the grass there is none: see
// [Rules.Shown].
func (rs Rules) AnnualNCap(q Question) (Limit, bool) { return rs.least(NitrogenYear, q) }

// PCap is the most phosphate of one application, lb P2O5 per 1000 sq ft. It
// reads Turf, Report with its age, Organic and Enhanced.
func (rs Rules) PCap(q Question) (Limit, bool) { return rs.least(PhosphorusDose, q) }

// PAnnualCap is the most phosphate of a year, lb P2O5 per 1000 sq ft; it reads
// what PCap reads.
func (rs Rules) PAnnualCap(q Question) (Limit, bool) { return rs.least(PhosphorusYear, q) }

// SlowShareMin is the least slow share of the nitrogen, 0 to 1. It reads Turf,
// Liquid and SlowShare: a fully soluble product (SlowShare 0) escapes some of
// these rules under the cap for soluble nitrogen.
func (rs Rules) SlowShareMin(q Question) (Limit, bool) {
	var best Limit
	for i := range rs { // by index: this runs for every material, and a Rule is large
		if r := &rs[i]; r.Kind == SlowNitrogen && r.Enforced() && r.LiftedBy(q) == 0 && r.Value > best.Value {
			best = Limit{r.Value, *r}
		}
	}
	return best, best.Value > 0
}

func (rs Rules) least(k Kind, q Question) (Limit, bool) {
	var best Limit
	found := false
	for i := range rs { // by index: this runs for every day, and a Rule is large
		r := &rs[i]
		if r.Kind != k || !r.Enforced() || r.Only != 0 && r.Only&q.marks(*r) == 0 ||
			!r.When.IsZero() && !r.When.Has(q.Date) {
			continue
		}
		v, ok := r.most(q.Grass)
		if lift := r.LiftedBy(q) &^ EnhancedSource; lift.Has(NewLawn) && r.Raised > 0 {
			v = r.Raised
		} else if lift != 0 {
			continue
		}
		if ok && (!found || v < best.Value) {
			best, found = Limit{v, *r}, true
		}
	}
	return best, found
}

// Distance to keep from open water, ft.
type Distance struct {
	Plain, Gentle float64   // with any spreader, and with the tool that Rule.LesserWith names; 0: none found
	Findings      []Finding // the rules behind these, then those that are only shown
}

// Setback returns the distance for an application of the nutrients n. It reads
// Turf and P2O5Percent for exceptions.
func (rs Rules) Setback(n Nutrient, q Question) Distance {
	var d Distance
	var shown []Finding
	for _, r := range rs {
		if r.Kind != WaterDistance || r.Nutrients != 0 && r.Nutrients&n == 0 || r.LiftedBy(q) != 0 {
			continue
		}
		_, text := r.soften(onTheDay, r.Statement())
		f := Finding{Rule: r, Text: text}
		if !r.Enforced() {
			shown = append(shown, f)
			continue
		}
		d.Plain = max(d.Plain, r.distance(false))
		d.Gentle = max(d.Gentle, r.distance(true))
		d.Findings = append(d.Findings, f)
	}
	d.Findings = append(d.Findings, shown...)
	return d
}

// Ground returns the rules on frozen, snow-covered, saturated or dormant turf
// for nutrients n, as conditions for the day; Rule.Ground holds the states.
func (rs Rules) Ground(n Nutrient) []Finding { return rs.conditions(GroundState, n) }

// Rain returns the rules on rain for nutrients n, as conditions for the day.
func (rs Rules) Rain(n Nutrient) []Finding { return rs.conditions(HeavyRain, n) }

// Impervious returns the rules on paving for nutrients n, as conditions for the day.
func (rs Rules) Impervious(n Nutrient) []Finding { return rs.conditions(PavedSurface, n) }

func (rs Rules) conditions(k Kind, n Nutrient) []Finding {
	var out []Finding
	for _, r := range rs {
		if r.Kind == k && (r.Nutrients == 0 || r.Nutrients&n != 0) {
			_, text := r.soften(onTheDay, r.Statement())
			out = append(out, Finding{Rule: r, Text: text})
		}
	}
	return out
}

// Shown returns the rules that a program names but cannot or need not keep to: those of low
// confidence or for one region, advice, rules for the label or the shop, and laws that only
// point at a table.
func (rs Rules) Shown() []Finding {
	var out []Finding
	for _, r := range rs {
		if !r.Enforced() || r.Kind == LabelOrSign || r.RefersTo != "" {
			_, text := r.soften(onTheDay, r.Statement())
			out = append(out, Finding{Rule: r, Text: text})
		}
	}
	return out
}
