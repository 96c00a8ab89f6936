package law

import (
	"fmt"
	"math"
)

// Who says who spreads. A volunteer who is not paid counts as a homeowner; someone
// employed by the owner, a club or a town often counts as paid.
type Who int

const (
	Homeowner Who = iota
	Paid
)

// String is "homeowners" or "paid applicators".
func (w Who) String() string {
	if w == Paid {
		return "paid applicators"
	}
	return "homeowners"
}

// Turf is what the application goes on.
type Turf int

const (
	Established Turf = iota
	New              // first establishment, by seed or sod
	Repair           // overseeding, patching, renovation of an old lawn
)

// Report is what the soil report says of phosphorus.
type Report int

const (
	NoReport Report = iota
	Low             // it calls for phosphorus
	Enough          // it does not
)

// Unknown marks a share, age or distance that was not given.
const Unknown = -1

// Question is one application on one day. Where something is not given the
// stricter case is taken or named as a condition.
type Question struct {
	State     string   // two-letter code
	County    string   // name, with or without "County"; "" not given
	Date      MonthDay // zero: any day, dates become conditions
	Who       Who
	Certified bool // whoever spreads holds the certificate that a rule asks for

	// lb per 1000 sq ft of this application, 0 to 50 each.
	N, SolubleN, P2O5, K2O float64 // SolubleN is worked out from SlowShare if it is Unknown, or 0 while N is not

	SlowShare       float64 // slow share of N, 0 to 1, or Unknown
	P2O5Percent     float64 // the product's analysis, 0 to 100; 0 while P2O5 is not: not given
	Turf            Turf
	Report          Report
	ReportAgeMonths int       // completed months since sampling, or Unknown
	WaterFeet       float64   // distance of the spot from open water, or Unknown
	Water           WaterKind // 0: not given
	GentleSpreader  bool      // drop spreader, deflector or targeted spray
	Ground          GroundIs
	Organic         bool
	Enhanced        bool // enhanced-efficiency nitrogen
	Liquid          bool

	YearN, YearP2O5 float64 // lb per 1000 sq ft already down or planned this year besides this one, 0 to 100
	Grass           string  // such as "tall fescue"; for yearly amounts by grass
	Local           Local   // the site's own stricter rules
}

// Check returns an error that names the first value out of range and its range.
// [Ask] calls it.
func (q Question) Check() error {
	for _, v := range []struct {
		name         string
		value, top   float64
		mayBeUnknown bool
	}{
		{"nitrogen, lb per 1000 sq ft", q.N, 50, false},               // [common] no turf product goes near it
		{"soluble nitrogen, lb per 1000 sq ft", q.SolubleN, 50, true}, // [common] the same
		{"phosphate, lb per 1000 sq ft", q.P2O5, 50, false},
		{"potash, lb per 1000 sq ft", q.K2O, 50, false},
		{"slow share", q.SlowShare, 1, true},
		{"phosphate in the product, %", q.P2O5Percent, 100, false},
		{"distance from water, ft", q.WaterFeet, math.MaxFloat64, true},
		{"months since the soil report", float64(q.ReportAgeMonths), 1200, true}, // [common] a century
		{"nitrogen already this year, lb per 1000 sq ft", q.YearN, 100, false},   // [common]
		{"phosphate already this year, lb per 1000 sq ft", q.YearP2O5, 100, false},
		{"local cap on nitrogen, lb per 1000 sq ft", q.Local.MaxN, 50, false},
	} {
		if v.mayBeUnknown && v.value == Unknown {
			continue
		}
		if !(v.value >= 0 && v.value <= v.top) {
			return fmt.Errorf("%s: %v is out of range: give 0 to %v", v.name, v.value, v.top)
		}
	}
	if q.SolubleN > q.N+slack {
		return fmt.Errorf("soluble nitrogen %v is more than the nitrogen %v: give the soluble part of it", q.SolubleN, q.N)
	}
	if !q.Date.IsZero() && !q.Date.Valid() {
		return fmt.Errorf("no such day of the year: month %d, day %d", int(q.Date.Month), q.Date.Day)
	}
	if q.Turf < Established || q.Turf > Repair {
		return fmt.Errorf("unknown turf %d: established, new or repair", q.Turf)
	}
	if q.Report < NoReport || q.Report > Enough {
		return fmt.Errorf("unknown soil report %d: none, low or enough", q.Report)
	}
	if q.Ground > Frozen|Snow|Saturated|Dormant {
		return fmt.Errorf("unknown state of the ground %d: frozen, snow, saturated or dormant", q.Ground)
	}
	if q.Water > anyWater {
		return fmt.Errorf("unknown kind of water %d", q.Water)
	}
	return q.Local.Check()
}

// slack, in lb per 1000 sq ft, keeps the rounding of binary fractions from taking a sum
// over a cap.
const slack = 1e-9

// nutrients of the application.
func (q Question) nutrients() Nutrient {
	var n Nutrient
	if q.N > 0 {
		n |= Nitrogen
	}
	if q.P2O5 > 0 {
		n |= Phosphorus
	}
	if q.K2O > 0 {
		n |= Potassium
	}
	return n
}

// soluble returns the soluble nitrogen of the dose and whether it is known.
func (q Question) soluble() (float64, bool) {
	switch {
	case q.SolubleN > 0:
		return q.SolubleN, true
	case q.SlowShare >= 0:
		return q.N * (1 - q.SlowShare), true
	}
	return q.N, q.N == 0
}

// tooOld reports whether the soil report is past the age a rule allows, and
// whether its age is known where the rule wants one.
func (q Question) tooOld(months int) (old, known bool) {
	if months == 0 {
		return false, true
	}
	return q.ReportAgeMonths > months, q.ReportAgeMonths >= 0
}

// marks are the exceptions that apply to this application under r, as far as the question
// tells. Those that no question tells (a natural strip, farm land) are left out.
func (q Question) marks(r Rule) Exception {
	var e Exception
	if old, known := q.tooOld(r.ReportMonths); q.Report == Low && known && !old {
		e |= SoilTest
	}
	for _, m := range [...]struct {
		is bool
		e  Exception
	}{
		{q.Turf == New, NewLawn},
		{q.Turf == Repair, RepairWork},
		{q.P2O5Percent > 0 && q.P2O5Percent <= r.LowP2O5Percent, LowPhosphate},
		{q.Organic, OrganicSource},
		{q.Enhanced, EnhancedSource},
		{q.Liquid, LiquidForm},
		{q.SlowShare == 0, AllSoluble},
		{q.Certified, Certificate},
	} {
		if m.is {
			e |= m.e
		}
	}
	return e
}

// LiftedBy returns the exceptions of r that apply to this application; 0: none.
func (r Rule) LiftedBy(q Question) Exception { return r.Unless & q.marks(r) }
