package soil

import (
	"testing"

	"swardbook/agronomy"
)

// Every band's edges lead to the level that the scale itself gives.
func TestBandsAgreeWithLevels(t *testing.T) {
	for _, method := range []agronomy.Extractant{agronomy.Mehlich3, agronomy.Mehlich1, agronomy.ModifiedMorgan, agronomy.Bray1, agronomy.Olsen, agronomy.AmmoniumAcetate} {
		for _, n := range Nutrients() {
			for _, texture := range []agronomy.Texture{agronomy.Sand, agronomy.Loam, agronomy.Clay} {
				r := agronomy.Report{Method: method, Texture: texture}
				b, ok := BandsOf(r, n, "GA")
				if !ok {
					continue
				}
				for _, c := range []struct {
					ppm  agronomy.PPM
					want Level
				}{
					{b.Low * 0.99, VeryLow}, {b.Low, Low}, {b.Medium * 0.999, Low}, {b.Medium, Medium},
					{b.High, Medium}, {b.High * 1.001, High}, {b.VeryHigh, High}, {b.VeryHigh * 1.001, VeryHigh},
				} {
					if got, _ := levelOf(n, c.ppm, method, texture, "GA", 0); got != c.want && c.ppm > 0 {
						t.Errorf("%s by %s on %s, %.4g ppm: %s, the bands say %s", n, method, texture, float64(c.ppm), got, c.want)
					}
				}
			}
		}
	}
}

func TestBandsOfTheLabsOwnOptimum(t *testing.T) {
	r := agronomy.Report{Potassium: agronomy.Reading{Given: true, PPM: 50, Wanted: agronomy.Optimum{Given: true, Low: 80, High: 120}}}
	b, ok := BandsOf(r, agronomy.Potassium, "")
	if !ok || b.Medium != 80 || b.High != 120 || !b.Optimum {
		t.Errorf("bands %+v, %v", b, ok)
	}
	if _, ok := BandsOf((agronomy.Report{}), agronomy.Potassium, ""); ok {
		t.Error("a report without an extractant has bands")
	}
}
