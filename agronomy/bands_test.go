package agronomy

import "testing"

// Every band's edges lead to the level that the scale itself gives.
func TestBandsAgreeWithLevels(t *testing.T) {
	for _, method := range []Extractant{Mehlich3, Mehlich1, ModifiedMorgan, Bray1, Olsen, AmmoniumAcetate} {
		for _, n := range Nutrients() {
			for _, texture := range []Texture{Sand, Loam, Clay} {
				r := Report{Method: method, Texture: texture}
				b, ok := r.Bands(n, "GA")
				if !ok {
					continue
				}
				for _, c := range []struct {
					ppm  PPM
					want Level
				}{
					{b.Low * 0.99, VeryLow}, {b.Low, Low}, {b.Medium * 0.999, Low}, {b.Medium, Medium},
					{b.High, Medium}, {b.High * 1.001, High}, {b.VeryHigh, High}, {b.VeryHigh * 1.001, VeryHigh},
				} {
					if got, _ := LevelOf(n, c.ppm, method, texture, "GA", 0); got != c.want && c.ppm > 0 {
						t.Errorf("%s by %s on %s, %.4g ppm: %s, the bands say %s", n, method, texture, float64(c.ppm), got, c.want)
					}
				}
			}
		}
	}
}

func TestBandsOfTheLabsOwnOptimum(t *testing.T) {
	r := Report{Potassium: Reading{Given: true, PPM: 50, Wanted: Optimum{Given: true, Low: 80, High: 120}}}
	b, ok := r.Bands(Potassium, "")
	if !ok || b.Medium != 80 || b.High != 120 || !b.Optimum {
		t.Errorf("bands %+v, %v", b, ok)
	}
	if _, ok := (Report{}).Bands(Potassium, ""); ok {
		t.Error("a report without an extractant has bands")
	}
}
