package figure

import (
	"fmt"

	"swardbook/agronomy"
	"swardbook/agronomy/soil"
	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule/word"
)

var convertFigure = Figure{
	Name:    "convert",
	Args:    "AMOUNT",
	What:    "an amount in the other units, or a soil reading in ppm",
	Example: `"28 lb/acre" --nutrient phosphorus --depth "4 in"`,
	Help: `AMOUNT is a weight, volume, area, length or rate with its unit. With --nutrient
it is a figure of a soil report, and comes out as ppm of the element.
        --nutrient NAME       phosphorus, potassium, calcium, magnesium, sulfur,
                              sodium, iron
        --depth D             of the layer whose pounds a figure by the acre
                              counts (default: it is twice the ppm)
        --cec X               meq/100 g, for a share in percent
`,
	setup: func(fs *flag.Set) func(*asked) (Answer, error) {
		texts(fs, "nutrient", "depth", "cec")
		return convert
	},
}

func convert(q *asked) (Answer, error) {
	if len(q.args) != 1 {
		return Answer{}, fmt.Errorf(`give one AMOUNT in quotes, like "5 g/m2"`)
	}
	if q.given("nutrient") {
		return reading(q)
	}
	if q.given("depth") || q.given("cec") {
		return Answer{}, fmt.Errorf("--depth and --cec are for a soil reading: add --nutrient")
	}
	given := q.args[0]
	for _, try := range []func(string) (Answer, error){asRate, asWeight, asVolume, asArea, asLength} {
		if a, err := try(given); err == nil {
			a.Text = given + " = " + a.Text + "."
			a.Why = []agronomy.Reason{{Text: "Units are converted by their definitions.", Source: "definitions"}}
			return a, nil
		}
	}
	return Answer{}, fmt.Errorf(`%q has no unit that is known here; for a soil reading add --nutrient`, given)
}

func asRate(t string) (Answer, error) {
	r, err := agronomy.ParseRate(t)
	return Answer{
		Text: fmt.Sprintf("%s lb/1000 sq ft = %s lb/acre = %s g/m² = %s kg/ha", significant(r), significant(r.PerAcre()),
			significant(r.GramsPerM2()), significant(r.GramsPerM2()*10)),
		Values: map[string]any{"lb_per_1000_sqft": float64(r), "lb_per_acre": float64(r.PerAcre()), "g_per_m2": r.GramsPerM2(), "kg_per_ha": r.GramsPerM2() * 10},
	}, err
}

func asWeight(t string) (Answer, error) {
	p, err := agronomy.ParseWeight(t)
	return Answer{Text: fmt.Sprintf("%s lb = %s kg", significant(p), significant(p.Kilograms())),
		Values: map[string]any{"lb": float64(p), "kg": p.Kilograms()}}, err
}

func asVolume(t string) (Answer, error) {
	g, err := agronomy.ParseVolume(t)
	return Answer{Text: fmt.Sprintf("%s gal = %s L", significant(g), significant(g.Liters())),
		Values: map[string]any{"gal": float64(g), "l": g.Liters()}}, err
}

func asArea(t string) (Answer, error) {
	s, err := agronomy.ParseArea(t)
	return Answer{Text: fmt.Sprintf("%s sq ft = %s m² = %s acre", significant(s), significant(s.Meters2()), significant(s/agronomy.SquareFeetPerAcre)),
		Values: map[string]any{"sqft": float64(s), "m2": s.Meters2(), "acre": float64(s / agronomy.SquareFeetPerAcre)}}, err
}

func asLength(t string) (Answer, error) {
	f, err := agronomy.ParseLength(t)
	if d, wrong := agronomy.ParseDepth(t); err != nil && wrong == nil { // millimeters are a depth
		f, err = agronomy.Feet(d/12), nil
	}
	return Answer{Text: fmt.Sprintf("%s in = %s mm = %s ft = %s m", significant(f*12), significant(f*12*agronomy.MillimetersPerInch), significant(f), significant(f.Meters())),
		Values: map[string]any{"in": float64(f * 12), "ft": float64(f), "m": float64(f.Meters())}}, err
}

// significant writes four figures.
func significant[T ~float64](v T) string {
	x := float64(v)
	digits := 3
	for s := x; s >= 10 && digits > 0; s /= 10 {
		digits--
	}
	for s := x; s > 0 && s < 1 && digits < 9; s *= 10 {
		digits++
	}
	return word.Number(x, digits)
}

func reading(q *asked) (Answer, error) {
	n := oneOf(q, "nutrient", soil.Nutrients()...)
	depth := quantityOf(q, "depth", agronomy.ParseDepth)
	cec := agronomy.Meq(q.number("cec", 0, 200))
	if q.err != nil {
		return Answer{}, q.err
	}
	r, err := soil.ParseReading(n, q.args[0], depth, cec)
	if err != nil {
		return Answer{}, err
	}
	return Answer{Text: fmt.Sprintf("%s of %s = %s ppm (mg/kg).", q.args[0], n, significant(r.PPM)), Values: map[string]any{"ppm": float64(r.PPM)}, Why: r.Steps}, nil
}
