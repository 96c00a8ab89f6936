package lime

import (
	"fmt"
	"slices"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
)

// FinenessRule is one state's way to count the coarse part of a lime: each band
// between sieves has an efficiency, 1 meaning that all of it acts in time.
type FinenessRule struct {
	State      string
	Basis      string    // the name of the result, and its span of years if stated
	Mesh       []int     // coarse to fine
	Efficiency []float64 // held on the first sieve, then between sieves, then through the last
	Source     string
	Codes      []string // of the states that go by it here by themselves: those whose rule was read
}

// FinenessRules gives the states' rules. Those of Kansas and Oklahoma,
// Illinois and Oregon are from memory, those of Minnesota, Wisconsin and
// Kentucky in part.
func FinenessRules() []FinenessRule { return slices.Clone(finenessRules) }

var finenessRules = []FinenessRule{
	{"Missouri", "ENM", []int{8, 40, 60}, []float64{0, 0.25, 0.60, 1}, "mo-ag-lime", []string{"MO"}},
	{"New York", "ENV, one year", []int{20, 60, 100}, []float64{0, 0.40, 0.80, 1}, "cornell-env", []string{"NY"}},
	{"Minnesota", "ENP, three years", []int{8, 20, 60}, []float64{0, 0.20, 0.60, 1}, "mn-mda-enp", []string{"MN"}},
	{"Ohio", "ENP", []int{8, 20, 60}, []float64{0, 0.20, 0.60, 1}, "bc-637-200", []string{"OH"}},
	{"Wisconsin", "neutralizing index", []int{8, 20, 60}, []float64{0, 0.20, 0.60, 1}, "laboski-lime", []string{"WI"}},
	{"Kansas and Oklahoma", "ECC", []int{8, 60}, []float64{0, 0.50, 1}, "common", nil}, // from memory
	{"Kentucky", "RNV", []int{10, 50}, []float64{0, 0.50, 1}, "uky-lime-quality", []string{"KY"}},
	{"Mississippi", "RNV", []int{10, 50}, []float64{0, 0.50, 1}, "msstate-p3762", []string{"MS"}},
	{"Iowa", "ECCE", []int{4, 8, 60}, []float64{0, 0.10, 0.40, 1}, "laboski-lime", []string{"IA"}},
	{"Illinois, one year", "ENV", []int{8, 30, 60}, []float64{0.05, 0.20, 0.50, 1}, "common", nil}, // from memory
	{"Illinois, four years", "ENV", []int{8, 30, 60}, []float64{0.15, 0.45, 1, 1}, "common", nil},  // from memory
	{"Oregon", "lime score", []int{10, 20, 40}, []float64{0, 0.30, 0.60, 1}, "common", nil},        // from memory
}

// FinenessRuleOf finds a state's rule by the State of FinenessRules, in capitals
// or not.
func FinenessRuleOf(state string) (FinenessRule, bool) {
	for _, r := range finenessRules {
		if strings.EqualFold(r.State, state) {
			return r, true
		}
	}
	return FinenessRule{}, false
}

// RuleFor gives the rule for the whole effect of a lime in a state, by its two
// letters: its own where that was read, else Ohio's bands. New York counts one
// year only.
func RuleFor(code string) FinenessRule {
	ohio, _ := FinenessRuleOf("Ohio")
	for _, r := range finenessRules {
		if code != "NY" && slices.Contains(r.Codes, code) {
			return r
		}
	}
	return ohio
}

// Fineness gives the share of a lime that acts, by the sieves of its label. A
// sieve that the label does not name is read as the next finer one, so the
// result is never too high; with none finer it is an error.
func (r FinenessRule) Fineness(label []material.Sieve) (agronomy.Percent, error) {
	coarser := agronomy.Percent(100)
	var total agronomy.Percent
	for i, mesh := range r.Mesh {
		p, ok := passing(label, mesh)
		if !ok {
			return 0, fmt.Errorf("the label names no sieve of %d mesh or finer, which %s's rule needs", mesh, r.State)
		}
		if p < 0 || p > coarser {
			return 0, &RangeError{fmt.Sprintf("passing %d mesh, %%,", mesh), float64(p), 0, float64(coarser), "a finer sieve never passes more than a coarser one"}
		}
		total += (coarser - p) * agronomy.Percent(r.Efficiency[i])
		coarser = p
	}
	return total + coarser*agronomy.Percent(r.Efficiency[len(r.Mesh)]), nil
}

// passing gives what passes a sieve, or the next finer one that is named.
func passing(label []material.Sieve, mesh int) (agronomy.Percent, bool) {
	best, found := material.Sieve{}, false
	for _, s := range label {
		if s.Mesh >= mesh && (!found || s.Mesh < best.Mesh) {
			best, found = s, true
		}
	}
	return best.Passing, found
}

// Effective gives the neutralizing value of a lime by the rule: CCE × fineness
// × dry matter, percent of pure fine CaCO3. Moisture is 0 to under 100 %. [cornell-env]
func (r FinenessRule) Effective(cce agronomy.Percent, label []material.Sieve, moisture agronomy.Percent) (agronomy.Percent, error) {
	if err := within("CCE, %,", cce, 0, 250, "read the CCE off the label; pure limestone is 100"); err != nil { // [atomic-weights] magnesium oxide
		return 0, err
	}
	if err := within("moisture, %,", moisture, 0, 99, "read the moisture off the label"); err != nil { // [definitions]
		return 0, err
	}
	f, err := r.Fineness(label)
	return cce * f / 100 * (1 - moisture/100), err
}

// ENM gives Missouri's effective neutralizing material, lb per ton. [mo-ag-lime]
func ENM(cce agronomy.Percent, label []material.Sieve) (agronomy.Pounds, error) {
	r, _ := FinenessRuleOf("Missouri")
	share, err := r.Effective(cce, label, 0)
	return agronomy.Pounds(share / 100 * 800), err // [mo-ag-lime]
}

// ENP gives the effective neutralizing power of Minnesota and Ohio, lb per ton.
// [mn-mda-enp] [bc-637-200]
func ENP(cce agronomy.Percent, label []material.Sieve, moisture agronomy.Percent) (agronomy.Pounds, error) {
	r, _ := FinenessRuleOf("Ohio")
	share, err := r.Effective(cce, label, moisture)
	return agronomy.Pounds(share / 100 * agronomy.PoundsPerTon), err
}

// ForENM gives the lime for a wanted lb ENM per acre. [mo-enm-example]
func ForENM(wanted agronomy.PerAcre, perTon agronomy.Pounds) (agronomy.TonsPerAcre, error) {
	if err := within("lb ENM per ton", perTon, 1, 800, "read it off the lime dealer's sheet"); err != nil { // [mo-ag-lime]
		return 0, err
	}
	return agronomy.TonsPerAcre(float64(wanted) / float64(perTon)), nil
}

// MaterialRate gives the weight of a lime that does the work of a fully
// effective rate: × 100 / value, its ECCE or, for want of that, its CCE.
// [psu-report-notes]
func MaterialRate(effective agronomy.PerThousand, value agronomy.Percent) (agronomy.PerThousand, error) {
	if err := within("effective value, %,", value, 1, 250, "read ECCE or CCE off the bag"); err != nil { // [atomic-weights]
		return 0, err
	}
	return effective * 100 / agronomy.PerThousand(value), nil
}

// StandardCCE is the lime that field tables are made for, %. [tristate-1995]
const StandardCCE agronomy.Percent = 90

// GroundActs is the part of ordinary ground limestone that acts like pure fine
// carbonate. [common] from memory, as it is sold; five limes in Georgia did 0.73
// [uga-aglime-study]
const GroundActs = 0.85

// Value is how much of a lime's weight acts like pure fine CaCO3: in all, over
// the about three years that coarse stone takes, and in the first of them.
type Value struct {
	Full, FirstYear agronomy.Percent
	Why             []agronomy.Reason
}

// ValueOf gives the value of a lime. The one on the bag wins; else CCE and
// sieves, by the state's own rule where one was read, elsewhere by Ohio's bands
// [bc-637-200], and by New York's for one year [cornell-env]; else CCE alone.
// ground says that the requirement was read off a table of ordinary ground
// limestone: a stone of which nothing but the CCE is known is then taken to be
// such, so that its fineness is not counted twice.
func ValueOf(m material.Material, state string, ground bool) Value {
	if m.ECCE > 0 {
		return Value{m.ECCE, m.ECCE, []agronomy.Reason{{Text: fmt.Sprintf("effective value printed on the bag: %s %%", agronomy.Short(m.ECCE)), Source: ""}}}
	}
	cce, why := cceOf(m)
	if m.Hydrated || m.Kind == material.WoodAsh {
		return Value{cce, cce, append(why, agronomy.Reason{Text: "hydrated lime and ash are fine powders: all of it acts", Source: "common"})}
	}
	rule := RuleFor(state)
	fine, err := rule.Fineness(m.Fineness)
	switch {
	case err != nil && ground:
		v := cce * GroundActs * 100 / StandardCCE
		return Value{v, v, append(why, agronomy.Reason{Text: fmt.Sprintf("no usable sieve figures: it is taken to be such ground limestone as the table is made for, of which 85 %% acts at a CCE of 90 %%: %s %%", agronomy.Short(v)), Source: "common, tristate-1995"})}
	case err != nil:
		return Value{cce, cce, append(why, agronomy.Reason{Text: fmt.Sprintf("no usable sieve figures: CCE %s %% is taken as it is, which is optimistic for coarse limestone", agronomy.Short(cce)), Source: "psu-report-notes"})}
	}
	v := Value{Full: cce * fine / 100}
	v.FirstYear = v.Full
	why = append(why, agronomy.Reason{Text: fmt.Sprintf("CCE %s %% × fineness %s %% (sieves as %s counts them) = %s %% over three years", agronomy.Short(cce), agronomy.Short(fine), rule.State, agronomy.Short(v.Full)), Source: rule.Source})
	year, _ := FinenessRuleOf("New York")
	if fine, err := year.Fineness(m.Fineness); err == nil {
		v.FirstYear = min(v.Full, cce*fine/100)
		why = append(why, agronomy.Reason{Text: fmt.Sprintf("in the first year × fineness %s %% (sieves as New York counts them) = %s %%", agronomy.Short(fine), agronomy.Short(v.FirstYear)), Source: year.Source})
	} else {
		why = append(why, agronomy.Reason{Text: "the bag names no 100 mesh sieve, so the first year may show less", Source: "cornell-env"})
	}
	v.Why = why
	return v
}

// ashCCE is the least of the half to three quarters of limestone's value that
// wood ash has, %. [common]
const ashCCE agronomy.Percent = 50

// cceOf gives the CCE of a lime, or the usual one of its kind.
func cceOf(m material.Material) (agronomy.Percent, []agronomy.Reason) {
	switch {
	case m.CCE > 0:
		return m.CCE, nil
	case m.Kind == material.WoodAsh:
		return ashCCE, []agronomy.Reason{{Text: fmt.Sprintf("no CCE given: %s %% is taken, the least of the half to three quarters of limestone's value that wood ash has", agronomy.Short(ashCCE)), Source: "common"}}
	case m.Hydrated:
		cce, _ := CCEOf("Ca(OH)2")
		return cce, []agronomy.Reason{{Text: fmt.Sprintf("no CCE given: that of pure hydrated lime, %s %%", agronomy.Short(cce)), Source: "atomic-weights"}}
	}
	return StandardCCE, []agronomy.Reason{{Text: fmt.Sprintf("no CCE given: %s %% is assumed, as ordinary ground limestone has; read the bag", agronomy.Short(StandardCCE)), Source: "tristate-1995"}}
}

// CCEOf gives the calcium carbonate equivalent of a pure compound, percent: the
// weight of CaCO3 (100.086) with the same charge. It knows CaCO3, MgCO3,
// CaMg(CO3)2, Ca(OH)2, CaO, MgO, CaSiO3, and gypsum, CaSO4·2H2O, which does not
// raise pH. [atomic-weights]
func CCEOf(compound string) (agronomy.Percent, bool) {
	const caCO3 = 100.086 // [atomic-weights]
	switch compound {
	case "CaCO3":
		return 100, true
	case "MgCO3":
		return 100 * caCO3 / 84.313, true // [atomic-weights]
	case "CaMg(CO3)2":
		return 100 * 2 * caCO3 / 184.399, true // [atomic-weights]
	case "Ca(OH)2":
		return 100 * caCO3 / 74.092, true // [atomic-weights]
	case "CaO":
		return 100 * caCO3 / 56.077, true // [atomic-weights]
	case "MgO":
		return 100 * caCO3 / 40.304, true // [atomic-weights]
	case "CaSiO3":
		return 100 * caCO3 / 116.16, true // [atomic-weights]
	case "CaSO4·2H2O":
		return 0, true
	}
	return 0, false
}

// ForAcidity gives the pure CaCO3 that neutralizes an acidity in a weight
// of soil: 1 meq is 50.04 mg of CaCO3. [atomic-weights]
func ForAcidity(acidity agronomy.Meq, soil agronomy.PerAcre) agronomy.PerAcre {
	return soil * agronomy.PerAcre(acidity) * 50.043 * 10 / 1e6 // [atomic-weights]
}
