package law

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// Statement is the rule in one sentence or two, US figures as printed with
// metric beside them.
func (r Rule) Statement() string {
	s := r.place() + ": " + r.says()
	if marks := r.marks(); marks != "" {
		s += " (" + marks + ")"
	}
	return s + "."
}

func (r Rule) says() string {
	switch r.Kind {
	case NitrogenClosed, PhosphorusClosed, PotassiumClosed:
		return fmt.Sprintf("no products with %s from %s", r.closes(), r.When)
	case PhosphorusReport:
		s := "no phosphorus"
		if r.LowP2O5Percent > 0 {
			s = fmt.Sprintf("no product above %s phosphate", percent(r.LowP2O5Percent/100))
		}
		if open := r.Unless &^ (GolfCourse | FarmLand | LowPhosphate); open != 0 {
			s += " unless there is " + open.String()
		}
		if r.ReportMonths > 0 {
			s += fmt.Sprintf("; a soil report is valid for %d months", r.ReportMonths)
		}
		return s
	case NitrogenDose:
		return r.atMost("nitrogen in one application")
	case SolubleDose:
		return r.atMost("soluble nitrogen in one application")
	case NitrogenYear:
		return r.atMost("nitrogen in a year")
	case PhosphorusDose:
		return r.atMost("phosphate (P₂O₅) in one application")
	case PhosphorusYear:
		return r.atMost("phosphate (P₂O₅) in a year")
	case SlowNitrogen:
		return fmt.Sprintf("at least %s of the nitrogen must be slow-release", percent(r.Value))
	case WaterDistance:
		s := fmt.Sprintf("keep %s %s from open water", r.products(), feet(r.Value))
		if r.Lesser > 0 {
			s += fmt.Sprintf(", or %s with %s", feet(r.Lesser), r.LesserWith)
		}
		return s
	case GroundState:
		return fmt.Sprintf("no %s on ground or turf that is %s", r.products(), r.Ground)
	case HeavyRain:
		return fmt.Sprintf("no %s while heavy rain falls or is forecast", r.products())
	case PavedSurface:
		return fmt.Sprintf("keep %s off paving and sweep up what lands there", r.products())
	}
	return "the label or a sign in the shop must state limits on fertilizer"
}

func (r Rule) atMost(what string) string {
	s := fmt.Sprintf("at most %s of %s", dose(r.Value), what)
	if r.Value == 0 {
		s = fmt.Sprintf("%s: see the %s", what, r.RefersTo)
		var by []string
		for _, g := range r.byGrass {
			by = append(by, fmt.Sprintf("%s %s", g.grass, dose(g.lb)))
		}
		if by != nil {
			s += ", " + strings.Join(by, "; ")
		}
	}
	if !r.When.IsZero() {
		s += " from " + r.When.String()
	}
	return s
}

func (r Rule) products() string {
	if r.Nutrients == 0 {
		return "fertilizer"
	}
	return "fertilizer with " + list(pick(uint16(r.Nutrients), "nitrogen", "phosphorus", "potassium"), "or")
}

// marks says for whom the rule is, if it is not for everybody, and how it binds.
func (r Rule) marks() string {
	var out []string
	switch r.Binds {
	case HomeownersOnly:
		out = append(out, Homeowner.String())
	case PaidOnly:
		out = append(out, Paid.String())
	}
	switch {
	case r.Kind == LabelOrSign:
	case r.Binding == BindsLabel:
		out = append(out, "binds the product label")
	case r.Binding == BindsSale:
		out = append(out, "binds the shop")
	case r.Binding == Advises:
		out = append(out, "advice, not a ban")
	}
	return strings.Join(out, "; ")
}

// place is whose rule it is: the county's or town's, the state's, or the site's own.
func (r Rule) place() string {
	if r.Place != "" {
		return r.Place
	}
	i, ok := slices.BinarySearchFunc(states, r.State, func(s State, c string) int { return cmp.Compare(s.Code, c) })
	if !ok {
		return "Local rule"
	}
	return states[i].Name
}

// dose, lb per 1000 sq ft, with kg per 100 m2: 0.45359237 kg in a lb and
// 92.90304 m2 in 1000 sq ft, both exact by definition.
func dose(lb float64) string {
	kg := lb * 0.45359237 / 92.90304 * 100
	return fmt.Sprintf("%s lb per 1000 sq ft (%.2f kg per 100 m²)", number(lb), kg)
}

// feet with metres; 0.3048 m in a ft, exact by definition.
func feet(ft float64) string {
	return fmt.Sprintf("%s ft (%.1f m)", number(ft), ft*0.3048)
}

func percent(share float64) string { return number(share*100) + " %" }

// number shows up to three decimals and no trailing zeros.
func number(v float64) string {
	return strconv.FormatFloat(math.Round(v*1000)/1000, 'f', -1, 64)
}
