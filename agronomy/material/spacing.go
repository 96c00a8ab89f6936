package material

import (
	"swardbook/agronomy"
)

// Ammonium tells whether a material's nitrogen is urea or ammonium, which
// fresh lime drives off as gas. Nitrogen of an unknown form is taken as such.
func (m Material) Ammonium() (bool, agronomy.Reason) {
	switch m.NitrogenForm() {
	case noNitrogen:
		return false, agronomy.Reason{Text: m.Title() + " carries no nitrogen"}
	case ammonium:
		return true, agronomy.Reason{Text: m.Title() + ": its analysis is that of urea or an ammonium salt, which fresh lime drives off as gas", Source: "definitions"}
	case Nitrate:
		return false, agronomy.Reason{Text: m.Title() + ": its analysis is that of a nitrate, which lime does not drive off", Source: "common"}
	}
	return true, agronomy.Reason{Text: m.Title() + ": the form of its nitrogen is not given; like most, it is taken as urea or ammonium, which fresh lime drives off as gas", Source: "common"}
}

// nitrogenForm is what a material's nitrogen is, as far as its analysis tells.
type nitrogenForm int

const (
	unknownForm nitrogenForm = iota
	noNitrogen
	ammonium
	Nitrate
)

func (m *Material) NitrogenForm() nitrogenForm {
	a := &m.Analysis
	switch {
	case a.N <= 0:
		return noNitrogen
	case a.N == 46 && a.P2O5 == 0, a.N == 21 && a.P2O5 == 0, a.N == 18 && a.P2O5 == 46, a.N == 11 && a.P2O5 == 52: // [definitions]
		return ammonium
	case a.P2O5 == 0 && (a.N == 15.5 && a.K2O == 0 || a.N == 16 && a.K2O == 0 || a.N == 13 && a.K2O >= 44): // [common] from memory: calcium, sodium, potassium nitrate
		return Nitrate
	}
	return unknownForm
}
