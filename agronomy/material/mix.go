package material

import (
	"fmt"

	"swardbook/agronomy"
)

// Mix covers several wants with several materials, in the order of the
// classic three-bag sum: phosphate first, then the nitrogen still short, then
// potash, magnesium and sulfur. Each material is used at most once, and what
// is down already counts against the caps. It returns the doses, what is still
// short, and the working. [umn-three-bag]
func Mix(ms []Material, w Wants, c Caps, area agronomy.SquareFeet) ([]Dose, Wants, []agronomy.Reason) {
	var doses []Dose
	var why []agronomy.Reason
	left := w
	used := map[int]bool{}
	for _, n := range []struct {
		name string
		of   func(Wants) agronomy.PerThousand
	}{
		{"P₂O₅", func(w Wants) agronomy.PerThousand { return w.P2O5 }},
		{"N", func(w Wants) agronomy.PerThousand { return w.N }},
		{"K₂O", func(w Wants) agronomy.PerThousand { return w.K2O }},
		{"Mg", func(w Wants) agronomy.PerThousand { return w.Mg }},
		{"S", func(w Wants) agronomy.PerThousand { return w.S }},
	} {
		if n.of(left) <= 0 {
			continue
		}
		var carriers []Material
		var index []int
		for i, m := range ms {
			if !used[i] && n.of(m.contents()) > 0 {
				carriers, index = append(carriers, m), append(index, i)
			}
		}
		d, reasons, ok := Choose(carriers, left, c, area)
		why = append(why, reasons...)
		if !ok {
			why = append(why, agronomy.Reason{Text: fmt.Sprintf("no material left that may bring %s lb %s", agronomy.Figure(n.of(left)), n.name)})
			continue
		}
		why = append(why, d.Why...)
		for k, m := range carriers {
			if m.ID == d.Material.ID {
				used[index[k]] = true
			}
		}
		doses = append(doses, d)
		left = d.Under
		c = c.less(d)
	}
	return doses, left, why
}

// less takes a dose off the caps; what is used up stays at 0.
func (c Caps) less(d Dose) Caps {
	take := func(limit, down agronomy.PerThousand) agronomy.PerThousand {
		if limit < 0 {
			return limit
		}
		return over(Wants{N: limit}, Wants{N: down}).N
	}
	return Caps{take(c.N, d.N), take(c.SolubleN, d.SolubleN), take(c.P2O5, d.P2O5), take(c.K2O, d.K2O)}
}
