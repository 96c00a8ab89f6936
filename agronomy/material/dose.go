package material

import (
	"fmt"
	"math"

	"swardbook/agronomy"
)

// Wants is what one application should bring, in lb per 1000 sq ft of each
// nutrient; 0 is not wanted.
type Wants struct{ N, P2O5, K2O, Mg, S agronomy.PerThousand }

// Caps is what one application may not pass, in lb per 1000 sq ft. A negative
// value is no cap; 0 lets no material in that carries the nutrient at all.
type Caps struct{ N, SolubleN, P2O5, K2O agronomy.PerThousand }

// NoCaps is the absence of every cap.
func NoCaps() Caps { return Caps{N: -1, SolubleN: -1, P2O5: -1, K2O: -1} }

// Dose is one material at one rate, with what it brings. Rates are lb per
// 1000 sq ft.
type Dose struct {
	Material           Material
	Rate               agronomy.PerThousand // of product, by weight
	Gallons            agronomy.Gallons     // of product per 1000 sq ft; liquids with a known density only
	N, SolubleN, SlowN agronomy.PerThousand // N is the sum of the other two
	P2O5, K2O, Mg, S   agronomy.PerThousand
	BoundBy            string // "N", "soluble N", "P2O5", "K2O", "Mg", "S"; "" for a rate that was given
	ByCap              bool   // a cap bound the rate, not a want
	Over, Under        Wants  // beyond the wants, and short of them
	Why                []agronomy.Reason
}

// DoseOf gives what a product rate brings, with no wants to compare with.
// A liquid without a density gives no gallons.
func DoseOf(m Material, rate agronomy.PerThousand) Dose {
	in := m.contents()
	d := Dose{
		Material: m, Rate: rate,
		N: rate * in.N, P2O5: rate * in.P2O5, K2O: rate * in.K2O, Mg: rate * in.Mg, S: rate * in.S,
	}
	d.SlowN = d.N * agronomy.PerThousand(m.SlowShare)
	d.SolubleN = d.N - d.SlowN
	if m.Liquid && m.Density > 0 {
		d.Gallons = agronomy.Gallons(float64(rate) / float64(m.Density))
	}
	return d
}

// Sum gives what two doses bring together. It carries the material of the second.
func Sum(a, b Dose) Dose {
	b.Rate, b.Gallons = b.Rate+a.Rate, b.Gallons+a.Gallons
	b.N, b.SolubleN, b.SlowN = b.N+a.N, b.SolubleN+a.SolubleN, b.SlowN+a.SlowN
	b.P2O5, b.K2O, b.Mg, b.S = b.P2O5+a.P2O5, b.K2O+a.K2O, b.Mg+a.Mg, b.S+a.S
	return b
}

// DoseFor finds the product rate at which the first nutrient reaches its want
// or its cap, and says what is then over or short of the others.
//
// It refuses a material that carries none of what is wanted, one that carries
// something under a cap of 0, a lime or elemental sulfur (those are dosed by
// pH), a liquid without a density, and figures that are no amounts.
func DoseFor(m Material, w Wants, c Caps) (Dose, error) {
	b, err := solve(&m, w, c)
	if err != nil {
		return Dose{}, err
	}
	d := b.dose(&m, w)
	d.explain(w, c)
	return d, nil
}

// solve gives the bound by which [DoseFor] finds the rate: choosing among many
// materials needs the dose and the working of one only.
func solve(m *Material, w Wants, c Caps) (bound, error) {
	if err := m.dosable(); err != nil {
		return bound{}, err
	}
	if err := w.check(); err != nil {
		return bound{}, err
	}
	bounds := m.bounds(w, c)
	var first *bound
	wanted := false
	for i := range bounds {
		b := &bounds[i]
		switch {
		case b.cap && math.IsNaN(float64(b.amount)):
			return bound{}, fmt.Errorf("the cap on %s is not a number: give an amount, or a negative one for no cap", inWords(b.name))
		case !b.holds():
			continue
		case b.amount == 0:
			return bound{}, fmt.Errorf("%s carries %s, of which none may go down: choose a material without it", m.Title(), inWords(b.name))
		}
		wanted = wanted || !b.cap
		// A cap that falls together with a want changes nothing, so it must be
		// clearly lower to be named.
		if first == nil || b.rate() < first.rate()*(1-1e-9) {
			first = b
		}
	}
	if !wanted {
		return bound{}, fmt.Errorf("%s brings none of what is needed (%s)", m.Title(), w)
	}
	return *first, nil
}

// dose is a material at the rate of its bound, compared with the wants.
func (b bound) dose(m *Material, w Wants) Dose {
	d := DoseOf(*m, b.rate())
	d.BoundBy, d.ByCap = b.name, b.cap
	d.Over, d.Under = over(d.brings(), w), over(w, d.brings())
	return d
}

// brings is what a material brings at the rate of its bound.
func (b bound) brings(m *Material) Wants {
	in, rate := m.contents(), b.rate()
	return Wants{rate * in.N, rate * in.P2O5, rate * in.K2O, rate * in.Mg, rate * in.S}
}

// explain writes the working of a dose that [solve] found.
func (d *Dose) explain(w Wants, c Caps) {
	d.Why = make([]agronomy.Reason, 0, 8)
	for _, b := range d.Material.bounds(w, c) {
		if b.holds() {
			d.Why = append(d.Why, b.reason())
		}
	}
	what := inWords(d.BoundBy) + " is met first"
	if d.ByCap {
		what = "the cap on " + inWords(d.BoundBy) + " is met first"
	}
	d.Why = append(d.Why, agronomy.Reason{Text: what + ": " + agronomy.Figure(d.Rate) + " lb of product per 1000 sq ft brings " + d.brings().String()})
	if d.Under != (Wants{}) {
		d.Why = append(d.Why, agronomy.Reason{Text: "still wanted from another material or day: " + d.Under.String()})
	}
	if d.Over != (Wants{}) {
		d.Why = append(d.Why, agronomy.Reason{Text: "more than wanted: " + d.Over.String()})
	}
	if d.Gallons > 0 {
		d.Why = append(d.Why, agronomy.Reason{Text: fmt.Sprintf("%s lb ÷ %s lb per gal = %s gal (%s fl oz) per 1000 sq ft",
			agronomy.Figure(d.Rate), agronomy.Figure(d.Material.Density), agronomy.Figure(d.Gallons), agronomy.Figure(d.Gallons*FluidOuncesPerGallon)), Source: "definitions"})
	}
}

// bound is one nutrient's limit on the product rate.
type bound struct {
	name   string
	share  agronomy.PerThousand // lb of nutrient in 1 lb of product
	amount agronomy.PerThousand // wanted, or allowed
	cap    bool
}

// bounds lists what may limit a material's rate, wants before caps.
func (m *Material) bounds(w Wants, c Caps) [9]bound {
	in := m.contents()
	return [9]bound{
		{"N", in.N, w.N, false},
		{"P2O5", in.P2O5, w.P2O5, false},
		{"K2O", in.K2O, w.K2O, false},
		{"Mg", in.Mg, w.Mg, false},
		{"S", in.S, w.S, false},
		{"N", in.N, c.N, true},
		{"soluble N", in.N * agronomy.PerThousand(1-m.SlowShare), c.SolubleN, true},
		{"P2O5", in.P2O5, c.P2O5, true},
		{"K2O", in.K2O, c.K2O, true},
	}
}

// barred tells whether the material carries something of which none may go down.
func (m *Material) barred(c Caps) bool {
	in := m.contents()
	return c.N == 0 && in.N > 0 || c.SolubleN == 0 && in.N > 0 && m.SlowShare < 1 || c.P2O5 == 0 && in.P2O5 > 0 || c.K2O == 0 && in.K2O > 0
}

// holds tells whether the bound limits anything: the material carries the
// nutrient, and it is wanted or capped.
func (b bound) holds() bool {
	return b.share > 0 && (b.amount > 0 && !math.IsInf(float64(b.amount), 1) || b.cap && b.amount == 0)
}

// inWords writes the name of a bound as people do: "P₂O₅".
func inWords(bound string) string {
	switch bound {
	case "P2O5":
		return "P₂O₅"
	case "K2O":
		return "K₂O"
	}
	return bound
}

func (b bound) rate() agronomy.PerThousand { return b.amount / b.share }

func (b bound) reason() agronomy.Reason {
	verb := "wanted"
	if b.cap {
		verb = "allowed"
	}
	return agronomy.Reason{Text: agronomy.Figure(b.amount) + " lb " + inWords(b.name) + " " + verb + " ÷ " + agronomy.Figure(100*b.share) + " % = " + agronomy.Figure(b.rate()) + " lb of product per 1000 sq ft", Source: "unl-calc"}
}

// contents is what one pound of the material holds, in pounds.
func (m *Material) contents() Wants {
	return Wants{
		N: agronomy.PerThousand(m.Analysis.N / 100), P2O5: agronomy.PerThousand(m.Analysis.P2O5 / 100), K2O: agronomy.PerThousand(m.Analysis.K2O / 100),
		Mg: agronomy.PerThousand(m.Magnesium / 100), S: agronomy.PerThousand(m.Sulfur / 100),
	}
}

func (d Dose) brings() Wants { return Wants{d.N, d.P2O5, d.K2O, d.Mg, d.S} }

// dosable tells why a material cannot be dosed by nutrient.
func (m *Material) dosable() error {
	in := m.contents()
	for _, x := range []agronomy.PerThousand{in.N, in.P2O5, in.K2O, in.Mg, in.S} {
		if !(x >= 0 && x <= 1) {
			return fmt.Errorf("%s: a percentage on its label lies outside 0 to 100; read the label again", m.Title())
		}
	}
	switch {
	case in.N+in.P2O5+in.K2O > 1:
		return fmt.Errorf("%s: its analysis adds up to more than 100 %%; read the label again", m.Title())
	case !(m.SlowShare >= 0 && m.SlowShare <= 1):
		return fmt.Errorf("%s: its slow share must lie between 0 and 1", m.Title())
	case m.Kind == LimeMaterial || m.Kind == WoodAsh || m.Kind == SulfurMaterial:
		return fmt.Errorf("%s is dosed by the soil's pH, not by its nutrients", m.Title())
	case m.Liquid && !(m.Density > 0 && !math.IsInf(float64(m.Density), 0)):
		return fmt.Errorf("%s is a liquid: its density is needed, from the label, to turn pounds into gallons", m.Title())
	}
	return nil
}

func (w Wants) check() error {
	any := false
	for _, x := range []agronomy.PerThousand{w.N, w.P2O5, w.K2O, w.Mg, w.S} {
		if !(x >= 0 && x <= maxWant) {
			return fmt.Errorf("an amount wanted must lie between 0 and %s lb per 1000 sq ft", agronomy.Figure(maxWant))
		}
		any = any || x > 0
	}
	if !any {
		return fmt.Errorf("nothing is wanted")
	}
	return nil
}

// maxWant bounds a want to what a slip of the pen would pass, in lb per
// 1000 sq ft. [common]
const maxWant agronomy.PerThousand = 100

// over gives, nutrient by nutrient, how far a lies above b. Differences that
// come from rounding alone are none.
func over(a, b Wants) Wants {
	more := func(x, y agronomy.PerThousand) agronomy.PerThousand {
		if x-y <= 1e-9*max(x, y) {
			return 0
		}
		return x - y
	}
	return Wants{more(a.N, b.N), more(a.P2O5, b.P2O5), more(a.K2O, b.K2O), more(a.Mg, b.Mg), more(a.S, b.S)}
}
