package soil

import (
	"fmt"

	"swardbook/agronomy"
)

// Suspicion is a figure that may be a slip, with the likely cause. Field is its
// key in a soil report of the site file.
type Suspicion struct {
	Field string
	agronomy.Reason
}

// usualMost is the reading in ppm above which a lawn's figure is more likely
// to be a slip.
func usualMost(n agronomy.Nutrient, method agronomy.Extractant) agronomy.PPM {
	switch n {
	case agronomy.Phosphorus:
		switch method {
		case agronomy.ModifiedMorgan, agronomy.Morgan:
			return 60 // [common]
		case agronomy.Olsen:
			return 100 // [common]
		}
		return 150 // [common]
	case agronomy.Potassium:
		return 600 // [common]
	case agronomy.Calcium:
		return 6000 // [common]
	case agronomy.Magnesium:
		return 1000 // [common]
	case agronomy.Sulfur:
		return 200 // [common]
	case agronomy.Sodium:
		return 500 // [common]
	}
	return 1500 // [common] iron
}

// bufferStart is a buffer solution's own pH, which no soil can exceed.
func bufferStart(m agronomy.BufferMethod) agronomy.PH {
	switch m {
	case agronomy.AdamsEvans:
		return 8.0 // [common]
	case agronomy.MehlichBuffer, agronomy.ModifiedMehlich:
		return 6.6 // [common]
	}
	return 7.5 // [common] SMP, and Sikora made to read like it
}

// Suspicious lists the figures of a report that look like slips of reading or
// copying. None of them stops a program.
func Suspicious(r agronomy.Report) []Suspicion {
	var all []Suspicion
	add := func(field, format string, a ...any) {
		all = append(all, Suspicion{field, agronomy.Reason{Text: fmt.Sprintf(format, a...), Source: "common"}})
	}
	switch {
	case r.PH > 0 && r.PH < 4.2: // [common] and so for the other lines of this file
		add("ph", "pH %.1f is rare under turf: was it measured in a salt solution (0.5 to 1 lower), or were two digits swapped?", float64(r.PH))
	case r.PH > 8.7:
		add("ph", "pH %.1f is rare under turf: check the sheet, or have sodium measured.", float64(r.PH))
	}
	if b := r.Buffer; b.PH > 0 {
		start := bufferStart(b.Method)
		switch {
		case b.PH > start:
			add("buffer", "A buffer pH of %.2f is above the buffer's own %.1f: it may be another method's, or the soil pH.", float64(b.PH), float64(start))
		case b.PH < 4.8:
			add("buffer", "A buffer pH of %.2f is below every table: check the sheet.", float64(b.PH))
		case r.PH >= 7 && b.PH < start-0.5: // [common] such a reading asks for lime
			add("buffer", "Soil of pH %.1f needs no lime, yet a buffer pH of %.2f asks for much: is one of them from another sample, or is a digit wrong?", float64(r.PH), float64(b.PH))
		case r.PH > 0 && b.PH < r.PH-0.5:
			add("buffer", "The buffer pH (%.2f) is well under the soil pH (%.2f): were the two swapped?", float64(b.PH), float64(r.PH))
		}
	}
	if r.CEC > 0 && r.Acidity > r.CEC {
		add("acidity", "An acidity of %s is more than the whole CEC of %s meq/100 g: have the two changed places, or is it another unit?", agronomy.Figure(r.Acidity), agronomy.Figure(r.CEC))
	}
	for _, n := range Nutrients() {
		reading := r.Reading(n)
		if !reading.Given {
			continue
		}
		if most := usualMost(n, r.Method); reading.PPM > most {
			slip := "is it lb/acre (half of it, or less, in ppm)"
			switch n {
			case agronomy.Phosphorus:
				slip += ", or P₂O₅ (2.29 times the P)"
			case agronomy.Potassium:
				slip += ", or K₂O (1.20 times the K)"
			case agronomy.Sulfur:
				slip = "is it sulfate (3 times the S), or was gypsum put down"
			}
			add(string(n), "%s ppm of %s is more than lawns usually show (%.0f): %s?", agronomy.Figures(reading.PPM, 4), n, float64(most), slip)
		}
	}
	all = append(all, cecSuspicions(r)...)
	if r.OrganicMatter > 20 && r.Texture != agronomy.Muck { // [tristate-1995] organic soil
		add("organic_matter", "Organic matter of %s %% makes this an organic soil: then the texture is muck. Or was the decimal point lost?", agronomy.Figure(r.OrganicMatter))
	}
	return all
}

// cecSuspicions compares the CEC with the bases that must fit in it and with
// the texture.
func cecSuspicions(r agronomy.Report) []Suspicion {
	if r.CEC <= 0 {
		return nil
	}
	var all []Suspicion
	sum := 0.0
	for _, n := range []agronomy.Nutrient{agronomy.Potassium, agronomy.Calcium, agronomy.Magnesium, agronomy.Sodium} {
		if share, ok := Saturation(n, r.Reading(n).PPM, r.CEC); ok {
			sum += float64(share)
		}
	}
	if sum > 130 && r.PH > 0 && r.PH < 7.3 { // [common] above, free lime explains it
		all = append(all, Suspicion{"cec", agronomy.Reason{Text: fmt.Sprintf("Potassium, calcium, magnesium and sodium come to %.0f %% of the CEC: are they lb/acre read as ppm?", sum), Source: "common"}})
	}
	if r.CEC > 60 && r.Texture != agronomy.Muck { // [common]
		all = append(all, Suspicion{"cec", agronomy.Reason{Text: fmt.Sprintf("A CEC of %s meq/100 g is rare in mineral soil: check the unit.", agronomy.Figure(r.CEC)), Source: "common"}})
	}
	if Sandy(r.Texture) && r.CEC > 15 { // [common]
		all = append(all, Suspicion{"texture", agronomy.Reason{Text: fmt.Sprintf("A %s seldom has a CEC of %s: is it heavier than it feels?", r.Texture, agronomy.Figure(r.CEC)), Source: "common"}})
	}
	return all
}
