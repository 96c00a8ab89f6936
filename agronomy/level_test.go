package agronomy

import (
	"strings"
	"testing"
)

func TestLevelEdges(t *testing.T) {
	tests := []struct {
		n       Nutrient
		method  Extractant
		texture Texture
		state   string
		below   PPM // the last reading of one class
		at      PPM // the first of the next
		was, is Level
	}{
		{Phosphorus, Mehlich3, Loam, "", 13.4, 13.5, VeryLow, Low},
		{Phosphorus, Mehlich3, Loam, "", 26.9, 27, Low, Medium},
		{Phosphorus, Mehlich3, Loam, "", 54, 54.1, Medium, High},
		{Phosphorus, Mehlich3, Loam, "", 108, 108.1, High, VeryHigh},
		{Potassium, Mehlich3, Loam, "", 74.9, 75, Low, Medium},
		{Potassium, Mehlich3, Loam, "", 176, 176.1, Medium, High},
		{Potassium, Mehlich3, Sand, "", 49.9, 50, Low, Medium},
		{Potassium, Mehlich3, LoamySand, "", 116, 116.1, Medium, High},
		{Potassium, Mehlich3, SandyLoam, "", 74.9, 75, Low, Medium},
		{Calcium, Mehlich3, Loam, "", 499, 500, Low, Medium},
		{Calcium, Mehlich3, Loam, "", 750, 751, Medium, High},
		{Magnesium, Mehlich3, Loam, "", 69, 70, Low, Medium},
		{Magnesium, Mehlich3, Sand, "", 59, 60, Low, Medium},
		{Sulfur, Mehlich3, Loam, "", 14.9, 15, Low, Medium},
		{Sulfur, Mehlich3, Loam, "", 40, 40.1, Medium, High},
		{Iron, Mehlich3, Loam, "", 49.9, 50, Low, Medium},
		{Iron, Mehlich3, Loam, "", 100, 101, Medium, High},
		{Phosphorus, Bray1, Loam, "", 14.9, 15, Low, Medium},
		{Phosphorus, Bray1, Loam, "", 30, 30.1, Medium, High},
		{Phosphorus, Olsen, Loam, "", 11.9, 12, Low, Medium},
		{Phosphorus, Olsen, Loam, "", 28, 28.1, Medium, High},
		{Phosphorus, Mehlich1, Loam, "GA", 10, 10.1, Low, Medium},      // 20 lb/acre, piedmont
		{Phosphorus, Mehlich1, SandyLoam, "GA", 15, 15.1, Low, Medium}, // 30 lb/acre, coastal
		{Phosphorus, Mehlich1, Loam, "FL", 15, 15.1, Low, Medium},      // all of Florida
		{Potassium, Mehlich1, Clay, "GA", 100, 100.1, Medium, High},    // 200 lb/acre
		{Potassium, Mehlich1, Clay, "GA", 175, 175.1, High, VeryHigh},  // 350 lb/acre
		{Phosphorus, ModifiedMorgan, Loam, "MA", 3.9, 4, Low, Medium},
		{Phosphorus, ModifiedMorgan, Loam, "MA", 14, 14.1, Medium, High},
		{Potassium, ModifiedMorgan, Loam, "MA", 99, 100, Low, Medium},
		{Potassium, AmmoniumAcetate, Loam, "MN", 74.9, 75, Low, Medium},
		{Potassium, Bray1, Loam, "MN", 74.9, 75, Low, Medium}, // its cations are by ammonium acetate
	}
	for _, tt := range tests {
		for _, side := range []struct {
			ppm  PPM
			want Level
		}{{tt.below, tt.was}, {tt.at, tt.is}} {
			got, why := LevelOf(tt.n, side.ppm, tt.method, tt.texture, tt.state, 0)
			if got != side.want {
				t.Errorf("%s %s %s %v ppm: %s, want %s", tt.method, tt.texture, tt.n, float64(side.ppm), got, side.want)
			}
			resolve(t, why)
		}
	}
}

func TestLevelsOfSodium(t *testing.T) {
	for _, tt := range []struct {
		ppm  PPM
		want Level
	}{{68, Low}, {69, Medium}, {114, Medium}, {115, High}, {344, High}, {345, VeryHigh}} { // 3, 5 and 15 % of 10 meq
		if got, _ := LevelOf(Sodium, tt.ppm, Mehlich3, Loam, "", 10); got != tt.want {
			t.Errorf("sodium %v ppm at CEC 10: %s, want %s", float64(tt.ppm), got, tt.want)
		}
	}
	if got, why := LevelOf(Sodium, 69, Mehlich3, Loam, "", 0); got != Unknown || !strings.Contains(why[0].Text, "CEC") {
		t.Errorf("sodium without CEC: %s, %v", got, why)
	}
}

func TestNoScale(t *testing.T) {
	for _, tt := range []struct {
		n      Nutrient
		method Extractant
		says   string
	}{
		{Phosphorus, Morgan, "ask the lab"},
		{Phosphorus, "", "does not name the extractant"},
		{Phosphorus, AmmoniumAcetate, "draws no phosphorus"},
		{Calcium, Mehlich1, "ask the lab"},
	} {
		got, why := LevelOf(tt.n, 10, tt.method, Loam, "", 0)
		if got != Unknown || len(why) == 0 || !strings.Contains(why[0].Text, tt.says) {
			t.Errorf("%s by %q: %s, %v; want unknown and %q", tt.n, tt.method, got, why, tt.says)
		}
	}
}

// A higher reading never stands lower, on any scale.
func TestLevelsRise(t *testing.T) {
	rank := map[Level]int{VeryLow: 1, Low: 2, Medium: 3, High: 4, VeryHigh: 5}
	for _, method := range []Extractant{Mehlich3, Mehlich1, Bray1, Olsen, ModifiedMorgan, AmmoniumAcetate} {
		for _, n := range Nutrients() {
			for _, texture := range []Texture{"", Sand, SandyLoam, Clay} {
				last := 0
				for ppm := PPM(0); ppm < 4000; ppm += 0.5 {
					l := func() Level { // without the words, for speed
						if n == Sodium {
							return sodiumStanding(ppm, 10).level
						}
						s, ok, _ := scaleFor(n, method, texture, "GA")
						if !ok {
							return Unknown
						}
						return s.level(ppm)
					}()
					if l == Unknown {
						break
					}
					if rank[l] < last {
						t.Fatalf("%s %s %s: %s at %v ppm after a higher level", method, texture, n, l, float64(ppm))
					}
					last = rank[l]
				}
			}
		}
	}
}

func TestSpreadIsShown(t *testing.T) {
	_, why := LevelOf(Phosphorus, 38, Mehlich3, Loam, "NJ", 0)
	all := ""
	for _, r := range why {
		all += r.Text + "\n"
	}
	for _, want := range []string{"medium is 27 to 54 ppm", "Rutgers", "calls it high", "MLSN", "already enough", "New Hampshire", "30 to 50", "Penn State still advises"} {
		if !strings.Contains(all, want) {
			t.Errorf("P 38 ppm by Mehlich-3: no %q in\n%s", want, all)
		}
	}
}

// A Mehlich-1 sheet in lb/acre is read on its own bands, whatever the depth.
func TestMehlich1AsPrinted(t *testing.T) {
	for _, depth := range []Inches{0, 4, 6} {
		p, err := ParseReading(Phosphorus, "28 lb/acre", depth, 0)
		if err != nil {
			t.Fatal(err)
		}
		r := Report{Method: Mehlich1, Texture: SandyLoam, Depth: depth, Phosphorus: p}
		if got := r.Level(Phosphorus, "SC"); got != Low {
			t.Errorf("28 lb/acre over %v in on coastal bands: %s, want low (ends at 30)", float64(depth), got)
		}
	}
}

func TestLabOptimumFirst(t *testing.T) {
	o, err := ParseOptimum(Phosphorus, []string{"12 ppm", "20 ppm"}, 4, 0)
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		ppm  PPM
		want Level
	}{{5.9, VeryLow}, {6, Low}, {11.9, Low}, {12, Medium}, {20, Medium}, {20.1, High}, {40.1, VeryHigh}} {
		r := Report{Method: Mehlich3, Phosphorus: Reading{Given: true, PPM: tt.ppm, Wanted: o}}
		if got := r.Level(Phosphorus, ""); got != tt.want {
			t.Errorf("%v ppm against 12 to 20: %s, want %s", float64(tt.ppm), got, tt.want)
		}
	}
}

func TestNebraskaEndsAtItsLastClass(t *testing.T) {
	if _, _, ok := NebraskaOptimum(Potassium, 20); !ok {
		t.Error("none at 20")
	}
	if low, high, ok := NebraskaOptimum(Potassium, 20.1); ok {
		t.Errorf("%v to %v above 20", low, high)
	}
}
