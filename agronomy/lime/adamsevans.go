package lime

import (
	"math"

	"swardbook/agronomy"
)

// Adams-Evans was made for sandy southeastern soils of low CEC.
const (
	aeDepth    agronomy.Inches = 20.0 / 3 // 2,000,000 lb of soil to the acre [adams-evans-1962]
	aeLowest   agronomy.PH     = 4.41     // root of the quadratic, 4.40, rounded up [adams-evans-1962]
	aeHighest  agronomy.PH     = 7.0      // [adams-evans-1962]
	aeMost                     = 10000    // lb/acre, 5 tons [huluka-manual]
	aeMostCEC  agronomy.Meq    = 13       // [huluka-manual]
	aeOrdinary                 = 0.73     // of pure carbonate, what ordinary ground lime did [uga-aglime-study]
)

// AdamsEvansAcidity gives the acidity behind an Adams-Evans buffer pH of 7.0
// to 8.0. [uga-adams-evans]
func AdamsEvansAcidity(buffer agronomy.PH) (agronomy.Meq, error) {
	if err := within("Adams-Evans buffer pH", buffer, 7.0, 8.0, "the buffer itself starts at 8.0; ask the laboratory to check it, or for an SMP, Sikora or Mehlich reading"); err != nil { // [huluka-manual]
		return 0, err
	}
	return agronomy.Meq(8 * (8.00 - float64(buffer))), nil // [uga-adams-evans]
}

// AdamsEvansSaturation gives the share of the exchange sites held by acidity
// at a soil pH of 4.41 to 7.0. From memory. [adams-evans-1962]
func AdamsEvansSaturation(ph agronomy.PH) (float64, error) {
	if err := within("soil pH for Adams-Evans", ph, aeLowest, aeHighest, "go by another buffer, or by pH and texture"); err != nil {
		return 0, err
	}
	return aeSaturation(ph), nil
}

// aeSaturation solves pH = 7.79 - 5.55 H + 2.27 H² for H.
func aeSaturation(ph agronomy.PH) float64 {
	return (5.55 - math.Sqrt(5.55*5.55-4*2.27*(7.79-float64(ph)))) / (2 * 2.27) // from memory [adams-evans-1962]
}

// AdamsEvansLime gives ordinary ground limestone (CCE 100 %) for a layer of
// 6⅔ inches: soil pH 4.41 to 7.0, buffer pH 7.0 to 8.0, a need of up to 5 tons.
// Its factor 1.5 already stands for the coarse part of ground lime: correct it
// for CCE, not for fineness. [adams-evans-1962] [huluka-manual]
func AdamsEvansLime(ph, buffer, target agronomy.PH) (agronomy.PerAcre, error) {
	acidity, err := AdamsEvansAcidity(buffer)
	if err != nil {
		return 0, err
	}
	now, err := AdamsEvansSaturation(ph)
	if err != nil {
		return 0, err
	}
	wanted, err := AdamsEvansSaturation(target)
	if err != nil || wanted >= now {
		return 0, err
	}
	lb := aeLime(acidity, now, wanted)
	return lb, within("lime need by Adams-Evans, lb/acre,", float64(lb), 0, aeMost, "ask the laboratory for an SMP, Sikora or Mehlich reading")
}

// aeLime is the equation, from the shares of acid sites now and wanted.
func aeLime(acidity agronomy.Meq, now, wanted float64) agronomy.PerAcre {
	return agronomy.PerAcre(1000 * float64(acidity) / now * max(0, now-wanted) * 1.5) // [adams-evans-1962] [huluka-2007]
}
