package figure

import (
	"fmt"
	"maps"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/cmd/swardbook/flag"
)

const wantsHelp = `        --n R                 nitrogen wanted; a plain number is lb/1000 sq ft
        --p2o5 R              phosphate wanted
        --k2o R               potash wanted
        --n-cap R             most nitrogen at once
        --soluble-cap R       most quick nitrogen at once
        --size A              of the area, for the whole weight
`

func wantFlags(fs *flag.Set) {
	texts(fs, "n", "p2o5", "k2o", "n-cap", "soluble-cap", "size")
}

// wants reads what one application should bring, and the caps.
func wants(q *asked) (material.Wants, material.Caps, agronomy.SquareFeet) {
	w := material.Wants{N: q.rate("n"), P2O5: q.rate("p2o5"), K2O: q.rate("k2o")}
	c := material.NoCaps()
	if q.given("n-cap") {
		c.N = q.rate("n-cap")
	}
	if q.given("soluble-cap") {
		c.SolubleN = q.rate("soluble-cap")
	}
	if w == (material.Wants{}) && q.err == nil {
		q.err = fmt.Errorf("nothing is wanted: give --n, --p2o5 or --k2o")
	}
	return w, c, quantityOf(q, "size", agronomy.ParseArea)
}

var rateFigure = Figure{
	Name:    "rate",
	What:    "how much of a fertilizer brings what is wanted",
	Example: `--analysis 18-24-12 --n 0.7 --size "2600 sq ft" --pack "25 lb"`,
	Help: `The rate at which the first nutrient reaches what is wanted, or its cap.
        --analysis N-P-K      N-P2O5-K2O on the bag, percent
` + wantsHelp + `        --slow X              slow share of the nitrogen, 0 to 1
        --density D           of a liquid, like "9.6 lb/gal"
        --pack W              of one pack, like "25 lb", of a liquid "2.5 gal"
`,
	setup: func(fs *flag.Set) func(*asked) (Answer, error) {
		wantFlags(fs)
		texts(fs, "analysis", "slow", "density", "pack")
		return rate
	},
}

// usualMostN is the most nitrogen that is put down at once without a warning.
const usualMostN agronomy.PerThousand = 1 // [common]

func rate(q *asked) (Answer, error) {
	q.need("analysis")
	w, c, size := wants(q)
	m := material.Material{Name: q.text("analysis"), Kind: material.FertilizerMaterial, SlowShare: q.number("slow", 0, 1),
		Density: quantityOf(q, "density", agronomy.ParseDensity), Liquid: q.given("density")}
	if m.Liquid {
		m.PackVolume = quantityOf(q, "pack", agronomy.ParseVolume)
	} else {
		m.Pack = quantityOf(q, "pack", agronomy.ParseWeight)
	}
	if size == 0 && q.given("pack") {
		q.wrong("pack", fmt.Errorf("packs are counted for an area: give its --size"))
	}
	var err error
	if m.Analysis, err = agronomy.ParseAnalysis(q.text("analysis")); err != nil {
		q.wrong("analysis", err)
	}
	if q.err != nil {
		return Answer{}, q.err
	}
	d, err := material.DoseFor(m, w, c)
	if err != nil {
		return Answer{}, err
	}
	a := Answer{Text: dosed(d), Why: d.Why, Values: doseValues(d)}
	if d.N > usualMostN {
		a.More = append(a.More, fmt.Sprintf("More than %s at a time can burn turf and is more than most rules allow: split it.", bothNutrients(material.Wants{N: usualMostN})))
	}
	if size > 0 {
		a.More = append(a.More, onArea(d, size))
		maps.Copy(a.Values, amountValues(d, size))
	}
	return a, nil
}

// dosed says a dose in one sentence.
func dosed(d material.Dose) string {
	t := bothRates(d.Rate)
	if d.Gallons > 0 {
		t = us.VolumeRate(d.Gallons) + " (" + metric.VolumeRate(d.Gallons) + "), " + t
	}
	brings := material.Wants{N: d.N, P2O5: d.P2O5, K2O: d.K2O, Mg: d.Mg, S: d.S}
	return fmt.Sprintf("%s of %s; it brings %s.", t, d.Material.Name, bothNutrients(brings))
}

func onArea(d material.Dose, size agronomy.SquareFeet) string {
	amount := d.For(size)
	t := fmt.Sprintf("For %s: %s of %s", bothAreas(size), bothWeights(amount.Weight), d.Material.Name)
	if amount.Volume > 0 {
		t += ", " + bothVolumes(amount.Volume)
	}
	if amount.Packs > 0 {
		t += fmt.Sprintf(", %.1f packs", amount.Packs)
	}
	return t + "."
}

func doseValues(d material.Dose) map[string]any {
	return map[string]any{"material": d.Material.Name, "rate_lb_per_1000_sqft": rounded(float64(d.Rate), 3), "gal_per_1000_sqft": rounded(float64(d.Gallons), 4),
		"n_lb_per_1000_sqft": rounded(float64(d.N), 3), "slow_n_lb_per_1000_sqft": rounded(float64(d.SlowN), 3),
		"p2o5_lb_per_1000_sqft": rounded(float64(d.P2O5), 3), "k2o_lb_per_1000_sqft": rounded(float64(d.K2O), 3), "bound_by": d.BoundBy, "by_cap": d.ByCap}
}

func amountValues(d material.Dose, size agronomy.SquareFeet) map[string]any {
	amount := d.For(size)
	return map[string]any{"amount_lb": rounded(float64(amount.Weight), 3), "amount_gal": rounded(float64(amount.Volume), 4), "packs": rounded(amount.Packs, 2)}
}

var mixFigure = Figure{
	Name:    "mix",
	What:    "several fertilizers together for several nutrients",
	Example: `--n 1 --p2o5 0.5 --k2o 1 --material 18-46-0 --material 46-0-0 --material 0-0-60 --size "3500 sq ft"`,
	Help: `Phosphate first, then the nitrogen still short, then potash.
        --material N-P-K      one of the bags on hand; give it once for each
                              (default: the plain materials of the trade)
` + wantsHelp,
	setup: func(fs *flag.Set) func(*asked) (Answer, error) {
		wantFlags(fs)
		materials := fs.StringArray("material", nil, "")
		return func(q *asked) (Answer, error) {
			q.read["material"] = true
			return mix(q, *materials)
		}
	},
}

func mix(q *asked, analyses []string) (Answer, error) {
	w, c, size := wants(q)
	ms := material.TradeMaterials()
	if len(analyses) > 0 {
		ms = nil
	}
	for _, t := range analyses {
		n, err := agronomy.ParseAnalysis(t)
		if err != nil {
			q.wrong("material", err)
		}
		ms = append(ms, material.Material{ID: t, Name: t, Kind: material.FertilizerMaterial, Analysis: n})
	}
	if q.err != nil {
		return Answer{}, q.err
	}
	over := size
	if over == 0 {
		over = 1000
	}
	doses, short, why := material.Mix(ms, w, c, over)
	if len(doses) == 0 {
		return Answer{}, fmt.Errorf("none of these materials brings what is wanted: %s", w)
	}
	a := Answer{Why: why}
	if size == 0 && len(analyses) == 0 {
		a.Why = append(a.Why, agronomy.Reason{Text: "No --size was given: the bags are chosen as for 1,000 sq ft."})
	}
	var shown []map[string]any
	var lines []string
	for _, d := range doses {
		lines = append(lines, bothRates(d.Rate)+" of "+d.Material.Name)
		a.More = append(a.More, dosed(d))
		v := doseValues(d)
		if size > 0 {
			a.More = append(a.More, onArea(d, size))
			maps.Copy(v, amountValues(d, size))
		}
		shown = append(shown, v)
	}
	a.Text = strings.Join(lines, "; ") + "."
	if short != (material.Wants{}) {
		a.More = append(a.More, "Still short: "+bothNutrients(short)+".")
	}
	a.Values = map[string]any{"doses": shown, "short_n_lb_per_1000_sqft": rounded(float64(short.N), 3),
		"short_p2o5_lb_per_1000_sqft": rounded(float64(short.P2O5), 3), "short_k2o_lb_per_1000_sqft": rounded(float64(short.K2O), 3)}
	return a, nil
}
