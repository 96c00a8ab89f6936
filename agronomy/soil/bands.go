package soil

import "swardbook/agronomy"

// Bands is a scale in full, as one would print it beside a report: the lower
// ends of low, medium, high and very high, in elemental ppm. What lies under
// Low is very low. Medium runs to High, both ends included.
type Bands struct {
	Name                        string
	Low, Medium, High, VeryHigh agronomy.PPM
	Optimum                     bool // medium is an optimum: nothing is wanted in it
	Source                      string
}

// Bands gives the scale on which a reading of the report is placed, that of
// the lab's own optimum where it printed one. False when no scale fits, and
// for sodium, which is judged by its share of the CEC.
func BandsOf(r agronomy.Report, n agronomy.Nutrient, state string) (Bands, bool) {
	var s scale
	if o := r.Reading(n).Wanted; o.Given {
		s = halves("the laboratory's own optimum", "", o.Low, o.High)
		s.enough = true
	} else {
		var ok bool
		if n == agronomy.Sodium {
			return Bands{}, false
		}
		if s, ok, _ = ScaleFor(n, r.Method, r.Texture, state); !ok {
			return Bands{}, false
		}
	}
	return Bands{Name: s.name, Low: s.veryLow, Medium: s.Low, High: s.Medium, VeryHigh: s.high, Optimum: s.enough, Source: s.source}, true
}
