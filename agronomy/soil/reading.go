package soil

import (
	"fmt"
	"strings"

	"swardbook/agronomy"
)

// Nutrients lists the nutrients in the order of a report.
func Nutrients() []agronomy.Nutrient {
	return []agronomy.Nutrient{agronomy.Phosphorus, agronomy.Potassium, agronomy.Calcium, agronomy.Magnesium, agronomy.Sulfur, agronomy.Sodium, agronomy.Iron}
}

// form is a way to count a nutrient that is not the element itself.
type form struct {
	name    string // as a sheet prints it, small letters
	of      agronomy.Nutrient
	element float64 // weight of the element in it
}

var forms = []form{
	{"p2o5", agronomy.Phosphorus, agronomy.PPerP2O5}, {"k2o", agronomy.Potassium, agronomy.KPerK2O}, {"cao", agronomy.Calcium, agronomy.CaPerCaO},
	{"mgo", agronomy.Magnesium, agronomy.MgPerMgO}, {"na2o", agronomy.Sodium, agronomy.NaPerNa2O}, {"so4", agronomy.Sulfur, agronomy.SPerSulfate},
}

// Symbols may follow a unit: "14 ppm P".
var Symbols = map[string]agronomy.Nutrient{
	"p": agronomy.Phosphorus, "k": agronomy.Potassium, "ca": agronomy.Calcium, "mg": agronomy.Magnesium, "s": agronomy.Sulfur, "so4-s": agronomy.Sulfur, "na": agronomy.Sodium, "fe": agronomy.Iron,
}

// maxPPM is the largest reading believed: 2 % of the soil's weight.
const maxPPM = 20000 // [common]

const readingHint = `like "14 ppm", "28 lb/acre", "9 mg/kg", "1.9 meq/100 g", "32 ppm P2O5"`

// ParseReading reads one figure of a soil report and brings it to elemental
// ppm, with each step of the way. A figure by the acre is twice the ppm, as
// laboratories print it for a furrow slice however deep the sample was; with a
// layer above 0 it is the pounds in that layer, and "28 lb/acre in 6.67 in"
// names one of its own. A share in percent is of the CEC and needs it. Errors
// are QuantityErrors.
func ParseReading(n agronomy.Nutrient, text string, layer agronomy.Inches, cec agronomy.Meq) (agronomy.Reading, error) {
	fail := func(problem, hint string) (agronomy.Reading, error) {
		return agronomy.Reading{}, &agronomy.QuantityError{Text: text, Problem: problem, Hint: hint}
	}
	x, rest, ok := agronomy.Number(strings.TrimSpace(text))
	if point, comma := agronomy.DecimalComma(text); comma {
		return fail(agronomy.CommaProblem, "for a part write a point: "+point)
	}
	if !ok {
		return fail("not a reading: it must begin with a plain number", readingHint)
	}
	unit, layer, err := layerOf(agronomy.PlainUnit(rest), layer)
	if err != nil {
		return fail(err.Error(), `like "28 lb/acre in 6.67 in"`)
	}
	r := agronomy.Reading{Given: true, AsGiven: strings.TrimSpace(text)}
	share := 1.0
	for _, f := range forms {
		if before, found := strings.CutSuffix(unit, " "+f.name); found {
			if f.of != n {
				return fail(fmt.Sprintf("%s does not count %s", strings.ToUpper(f.name), n), readingHint)
			}
			unit, share = before, f.element
			r.Steps = append(r.Steps, agronomy.Reason{Text: fmt.Sprintf("%s holds %.1f %% of its weight as the element: %s × %.4f = %s", oxideName(f.name), 100*share, agronomy.Figures(x, 4), share, agronomy.Figures(x*share, 4)), Source: "atomic-weights"})
		}
	}
	if i := strings.LastIndex(unit, " "); i > 0 && share == 1 {
		if of, found := Symbols[unit[i+1:]]; found && unit[i+1:] != "g" {
			if of != n {
				return fail(fmt.Sprintf("this counts %s, not %s", of, n), readingHint)
			}
			unit = unit[:i]
		}
	}
	x *= share
	switch unit {
	case "ppm", "mg/kg", "ug/g":
		r.PPM = agronomy.PPM(x)
	case "lb/acre", "lbs/acre", "lb/a", "lbs/a", "lb/ac", "lbs/ac", "pp2m":
		r.PerAcre = agronomy.PerAcre(x)
		r.PPM = fromAcre(&r, layer)
	case "kg/ha":
		r.PerAcre = agronomy.PerThousand(x * 0.1 / agronomy.GramsPerM2PerThousand).PerAcre()
		r.Steps = append(r.Steps, agronomy.Reason{Text: fmt.Sprintf("%s kg/ha = %s lb/acre", agronomy.Figures(x, 4), agronomy.Figures(r.PerAcre, 4)), Source: "definitions"})
		r.PPM = fromAcre(&r, layer)
	case "meq/100 g", "meq/100g", "me/100 g", "me/100g", "cmol/kg", "cmol(+)/kg", "cmolc/kg", "meq":
		w, cation := agronomy.MeqWeight(n)
		if !cation {
			return fail(fmt.Sprintf("%s is not counted in meq", n), `use ppm or lb/acre`)
		}
		r.PPM = agronomy.PPM(x) * w
		r.Steps = append(r.Steps, agronomy.Reason{Text: fmt.Sprintf("%s meq/100 g × %.0f ppm = %s ppm", agronomy.Figures(x, 4), float64(w), agronomy.Figures(r.PPM, 4)), Source: "atomic-weights"})
	case "%", "% of cec", "percent":
		w, cation := agronomy.MeqWeight(n)
		switch {
		case !cation:
			return fail(fmt.Sprintf("%s has no share of the CEC", n), "use ppm or lb/acre")
		case cec <= 0:
			return fail("a share of the CEC needs the CEC", "give cec on the report, in meq/100 g")
		case x > 100:
			return fail("more than 100 % of the CEC", "check the figure on the sheet")
		}
		r.PPM = agronomy.PPM(x/100*float64(cec)) * w
		r.Steps = append(r.Steps, agronomy.Reason{Text: fmt.Sprintf("%s %% of %s meq/100 g × %.0f ppm = %s ppm", agronomy.Figures(x, 4), agronomy.Figures(cec, 4), float64(w), agronomy.Figures(r.PPM, 4)), Source: "atomic-weights"})
	case "":
		return fail("a reading needs a unit", readingHint)
	default:
		return fail(fmt.Sprintf("%q is no unit of a soil reading", unit), readingHint)
	}
	if r.PPM > maxPPM {
		return fail(fmt.Sprintf("%s ppm is not a believable reading", agronomy.Figures(r.PPM, 6)), fmt.Sprintf("0 to %d ppm", maxPPM))
	}
	return r, nil
}

// layerOf splits "lb/acre in 6.67 in" into its unit and depth; without one it
// is the layer given.
func layerOf(unit string, layer agronomy.Inches) (string, agronomy.Inches, error) {
	before, after, found := strings.Cut(unit, " in ")
	if !found {
		return unit, layer, nil
	}
	d, err := agronomy.ParseDepth(after)
	if err != nil {
		return "", 0, fmt.Errorf("%q is no depth", after)
	}
	return before, d, nil
}

// fromAcre turns the figure an acre into ppm and notes how.
func fromAcre(r *agronomy.Reading, layer agronomy.Inches) agronomy.PPM {
	if layer <= 0 {
		r.Doubled = true
		ppm := agronomy.PPM(float64(r.PerAcre) * 1e6 / agronomy.PoundsPerPloughLayer)
		r.Steps = append(r.Steps, agronomy.Reason{Text: fmt.Sprintf("laboratories print twice the ppm as lb/acre, for a furrow slice of 2,000,000 lb of soil however deep the sample was: %s lb/acre ÷ 2 = %s ppm", agronomy.Figures(r.PerAcre, 4), agronomy.Figures(ppm, 4)), Source: "tx-plantanswers"})
		return ppm
	}
	ppm := r.PerAcre.PPM(layer)
	million := agronomy.SoilPerAcreInch * float64(layer) / 1e6
	r.Steps = append(r.Steps, agronomy.Reason{Text: fmt.Sprintf("%s in of soil weigh %s million lb an acre: %s lb/acre ÷ %s = %s ppm", agronomy.Figures(layer, 4), agronomy.Figure(million), agronomy.Figures(r.PerAcre, 4), agronomy.Figure(million), agronomy.Figures(ppm, 4)), Source: "definitions"})
	return ppm
}

func oxideName(form string) string {
	switch form {
	case "p2o5":
		return "P₂O₅"
	case "k2o":
		return "K₂O"
	case "cao":
		return "CaO"
	case "mgo":
		return "MgO"
	case "na2o":
		return "Na₂O"
	}
	return "Sulfate"
}

// ParseOptimum reads a lab's own wanted value: one text, or a low and a high.
// Units are those of ParseReading.
func ParseOptimum(n agronomy.Nutrient, texts []string, layer agronomy.Inches, cec agronomy.Meq) (agronomy.Optimum, error) {
	all := strings.Join(texts, " to ")
	if len(texts) < 1 || len(texts) > 2 {
		return agronomy.Optimum{}, &agronomy.QuantityError{Text: all, Problem: "an optimum is one value, or a low and a high", Hint: `like wanted = ["12 ppm", "20 ppm"]`}
	}
	low, err := ParseReading(n, texts[0], layer, cec)
	if err != nil {
		return agronomy.Optimum{}, err
	}
	high := low
	if len(texts) == 2 {
		if high, err = ParseReading(n, texts[1], layer, cec); err != nil {
			return agronomy.Optimum{}, err
		}
		if high.PPM < low.PPM {
			return agronomy.Optimum{}, &agronomy.QuantityError{Text: all, Problem: "the low end is above the high end", Hint: "give the smaller value first"}
		}
	}
	if low.PPM <= 0 {
		return agronomy.Optimum{}, &agronomy.QuantityError{Text: all, Problem: "an optimum must be above 0", Hint: "check the sheet; leave it out if the lab printed none"}
	}
	o := agronomy.Optimum{Given: true, Low: low.PPM, High: high.PPM, AsGiven: all, Steps: low.Steps}
	if len(texts) == 2 {
		o.Steps = append(o.Steps, high.Steps...)
	}
	return o, nil
}
