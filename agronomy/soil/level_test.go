package soil

import (
	"slices"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/check"
)

func TestLevelEdges(t *testing.T) {
	tests := []struct {
		n       agronomy.Nutrient
		method  agronomy.Extractant
		texture agronomy.Texture
		state   string
		below   agronomy.PPM // the last reading of one class
		at      agronomy.PPM // the first of the next
		was, is Level
	}{
		{agronomy.Phosphorus, agronomy.Mehlich3, agronomy.Loam, "", 13.4, 13.5, VeryLow, Low},
		{agronomy.Phosphorus, agronomy.Mehlich3, agronomy.Loam, "", 26.9, 27, Low, Medium},
		{agronomy.Phosphorus, agronomy.Mehlich3, agronomy.Loam, "", 54, 54.1, Medium, High},
		{agronomy.Phosphorus, agronomy.Mehlich3, agronomy.Loam, "", 108, 108.1, High, VeryHigh},
		{agronomy.Potassium, agronomy.Mehlich3, agronomy.Loam, "", 74.9, 75, Low, Medium},
		{agronomy.Potassium, agronomy.Mehlich3, agronomy.Loam, "", 176, 176.1, Medium, High},
		{agronomy.Potassium, agronomy.Mehlich3, agronomy.Sand, "", 49.9, 50, Low, Medium},
		{agronomy.Potassium, agronomy.Mehlich3, agronomy.LoamySand, "", 116, 116.1, Medium, High},
		{agronomy.Potassium, agronomy.Mehlich3, agronomy.SandyLoam, "", 74.9, 75, Low, Medium},
		{agronomy.Calcium, agronomy.Mehlich3, agronomy.Loam, "", 499, 500, Low, Medium},
		{agronomy.Calcium, agronomy.Mehlich3, agronomy.Loam, "", 750, 751, Medium, High},
		{agronomy.Magnesium, agronomy.Mehlich3, agronomy.Loam, "", 69, 70, Low, Medium},
		{agronomy.Magnesium, agronomy.Mehlich3, agronomy.Sand, "", 59, 60, Low, Medium},
		{agronomy.Sulfur, agronomy.Mehlich3, agronomy.Loam, "", 14.9, 15, Low, Medium},
		{agronomy.Sulfur, agronomy.Mehlich3, agronomy.Loam, "", 40, 40.1, Medium, High},
		{agronomy.Iron, agronomy.Mehlich3, agronomy.Loam, "", 49.9, 50, Low, Medium},
		{agronomy.Iron, agronomy.Mehlich3, agronomy.Loam, "", 100, 101, Medium, High},
		{agronomy.Phosphorus, agronomy.Bray1, agronomy.Loam, "", 14.9, 15, Low, Medium},
		{agronomy.Phosphorus, agronomy.Bray1, agronomy.Loam, "", 30, 30.1, Medium, High},
		{agronomy.Phosphorus, agronomy.Olsen, agronomy.Loam, "", 11.9, 12, Low, Medium},
		{agronomy.Phosphorus, agronomy.Olsen, agronomy.Loam, "", 28, 28.1, Medium, High},
		{agronomy.Phosphorus, agronomy.Mehlich1, agronomy.Loam, "GA", 10, 10.1, Low, Medium},      // 20 lb/acre, piedmont
		{agronomy.Phosphorus, agronomy.Mehlich1, agronomy.SandyLoam, "GA", 15, 15.1, Low, Medium}, // 30 lb/acre, coastal
		{agronomy.Phosphorus, agronomy.Mehlich1, agronomy.Loam, "FL", 15, 15.1, Low, Medium},      // all of Florida
		{agronomy.Potassium, agronomy.Mehlich1, agronomy.Clay, "GA", 100, 100.1, Medium, High},    // 200 lb/acre
		{agronomy.Potassium, agronomy.Mehlich1, agronomy.Clay, "GA", 175, 175.1, High, VeryHigh},  // 350 lb/acre
		{agronomy.Phosphorus, agronomy.ModifiedMorgan, agronomy.Loam, "MA", 3.9, 4, Low, Medium},
		{agronomy.Phosphorus, agronomy.ModifiedMorgan, agronomy.Loam, "MA", 14, 14.1, Medium, High},
		{agronomy.Potassium, agronomy.ModifiedMorgan, agronomy.Loam, "MA", 99, 100, Low, Medium},
		{agronomy.Potassium, agronomy.AmmoniumAcetate, agronomy.Loam, "MN", 74.9, 75, Low, Medium},
		{agronomy.Potassium, agronomy.Bray1, agronomy.Loam, "MN", 74.9, 75, Low, Medium}, // its cations are by ammonium acetate
	}
	for _, tt := range tests {
		for _, side := range []struct {
			ppm  agronomy.PPM
			want Level
		}{{tt.below, tt.was}, {tt.at, tt.is}} {
			got, why := levelOf(tt.n, side.ppm, tt.method, tt.texture, tt.state, 0)
			if got != side.want {
				t.Errorf("%s %s %s %v ppm: %s, want %s", tt.method, tt.texture, tt.n, float64(side.ppm), got, side.want)
			}
			check.Resolve(t, why)
		}
	}
}

func TestLevelsOfSodium(t *testing.T) {
	for _, tt := range []struct {
		ppm  agronomy.PPM
		want Level
	}{{68, Low}, {69, Medium}, {114, Medium}, {115, High}, {344, High}, {345, VeryHigh}} { // 3, 5 and 15 % of 10 meq
		if got, _ := levelOf(agronomy.Sodium, tt.ppm, agronomy.Mehlich3, agronomy.Loam, "", 10); got != tt.want {
			t.Errorf("sodium %v ppm at CEC 10: %s, want %s", float64(tt.ppm), got, tt.want)
		}
	}
	if got, why := levelOf(agronomy.Sodium, 69, agronomy.Mehlich3, agronomy.Loam, "", 0); got != Unknown || !strings.Contains(why[0].Text, "CEC") {
		t.Errorf("sodium without CEC: %s, %v", got, why)
	}
}

func TestNoScale(t *testing.T) {
	for _, tt := range []struct {
		n      agronomy.Nutrient
		method agronomy.Extractant
		says   string
	}{
		{agronomy.Phosphorus, agronomy.Morgan, "ask the lab"},
		{agronomy.Phosphorus, "", "does not name the extractant"},
		{agronomy.Phosphorus, agronomy.AmmoniumAcetate, "extracts no phosphorus"},
		{agronomy.Calcium, agronomy.Mehlich1, "ask the lab"},
	} {
		got, why := levelOf(tt.n, 10, tt.method, agronomy.Loam, "", 0)
		if got != Unknown || len(why) == 0 || !strings.Contains(why[0].Text, tt.says) {
			t.Errorf("%s by %q: %s, %v; want unknown and %q", tt.n, tt.method, got, why, tt.says)
		}
	}
}

// A higher reading never stands lower, on any scale.
func TestLevelsRise(t *testing.T) {
	rank := map[Level]int{VeryLow: 1, Low: 2, Medium: 3, High: 4, VeryHigh: 5}
	for _, method := range []agronomy.Extractant{agronomy.Mehlich3, agronomy.Mehlich1, agronomy.Bray1, agronomy.Olsen, agronomy.ModifiedMorgan, agronomy.AmmoniumAcetate} {
		for _, n := range Nutrients() {
			for _, texture := range []agronomy.Texture{"", agronomy.Sand, agronomy.SandyLoam, agronomy.Clay} {
				last := 0
				for ppm := agronomy.PPM(0); ppm < 4000; ppm += 0.5 {
					l := func() Level { // without the words, for speed
						if n == agronomy.Sodium {
							return sodiumStanding(ppm, 10).Level
						}
						s, ok, _ := ScaleFor(n, method, texture, "GA")
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
	_, why := levelOf(agronomy.Phosphorus, 38, agronomy.Mehlich3, agronomy.Loam, "NJ", 0)
	all := ""
	for _, r := range why {
		all += r.Text + "\n"
	}
	for _, want := range []string{"medium is 27 to 54 ppm", "Rutgers", "calls it high", "MLSN", "already enough", "wider bands of a garden", "30 to 50", "Penn State still advises"} {
		if !strings.Contains(all, want) {
			t.Errorf("P 38 ppm by Mehlich-3: no %q in\n%s", want, all)
		}
	}
}

// A Mehlich-1 sheet in lb/acre is read on its own bands, whatever the depth.
func TestMehlich1AsPrinted(t *testing.T) {
	for _, depth := range []agronomy.Inches{0, 4, 6} {
		p, err := ParseReading(agronomy.Phosphorus, "28 lb/acre", depth, 0)
		if err != nil {
			t.Fatal(err)
		}
		r := agronomy.Report{Method: agronomy.Mehlich1, Texture: agronomy.SandyLoam, Depth: depth, Phosphorus: p}
		if got := LevelIn(r, agronomy.Phosphorus, "SC"); got != Low {
			t.Errorf("28 lb/acre over %v in on coastal bands: %s, want low (ends at 30)", float64(depth), got)
		}
		told := slices.ContainsFunc(StandingOf(r, agronomy.Phosphorus, "SC").Why(), func(w agronomy.Reason) bool {
			return w.Text == "The bands are printed in the sheet's own lb/acre, so 28 lb/acre is read on them as it stands." && w.Source == "uga-sod-769"
		})
		if !told {
			t.Errorf("over %v in nothing says that the sheet's own figure is read", float64(depth))
		}
	}
}

func TestLabOptimumFirst(t *testing.T) {
	o, err := ParseOptimum(agronomy.Phosphorus, []string{"12 ppm", "20 ppm"}, 4, 0)
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		ppm  agronomy.PPM
		want Level
	}{{5.9, VeryLow}, {6, Low}, {11.9, Low}, {12, Medium}, {20, Medium}, {20.1, High}, {40.1, VeryHigh}} {
		r := agronomy.Report{Method: agronomy.Mehlich3, Phosphorus: agronomy.Reading{Given: true, PPM: tt.ppm, Wanted: o}}
		if got := LevelIn(r, agronomy.Phosphorus, ""); got != tt.want {
			t.Errorf("%v ppm against 12 to 20: %s, want %s", float64(tt.ppm), got, tt.want)
		}
	}
}

func TestNebraskaEndsAtItsLastClass(t *testing.T) {
	if _, _, ok := NebraskaOptimum(agronomy.Potassium, 20); !ok {
		t.Error("none at 20")
	}
	if low, high, ok := NebraskaOptimum(agronomy.Potassium, 20.1); ok {
		t.Errorf("%v to %v above 20", low, high)
	}
}

// levelOf places a reading on the scale for its extractant, as a report with
// only that reading does.
func levelOf(n agronomy.Nutrient, ppm agronomy.PPM, method agronomy.Extractant, texture agronomy.Texture, state string, cec agronomy.Meq) (Level, []agronomy.Reason) {
	s := stand(n, agronomy.Reading{Given: true, PPM: ppm}, method, texture, state, cec)
	return s.Level, s.Why()
}

// What is said of a reading: on a scale of levels its medium, on a laboratory's own that
// it is in the optimum.
func TestReadingInWords(t *testing.T) {
	for _, c := range []struct {
		ppm        agronomy.PPM
		level, own string
	}{
		{5, "5 ppm is very low; medium is 27 to 54 ppm", "5 ppm is very low; optimum is 12 to 20 ppm"},
		{12, "12 ppm is very low; medium is 27 to 54 ppm", "12 ppm is in the optimum; optimum is 12 to 20 ppm"},
		{40, "40 ppm is medium; medium is 27 to 54 ppm", "40 ppm is high; optimum is 12 to 20 ppm"}, // [slan-sheet]
	} {
		r := agronomy.Report{Method: agronomy.Mehlich3, Texture: agronomy.Loam, Depth: 4, Phosphorus: agronomy.Reading{Given: true, PPM: c.ppm}}
		if got := StandingOf(r, agronomy.Phosphorus, "").Why()[0].Text; !strings.HasSuffix(got, ": "+c.level) {
			t.Errorf("%v ppm: %q, want %q", c.ppm, got, c.level)
		}
		r.Phosphorus.Wanted = agronomy.Optimum{Given: true, Low: 12, High: 20}
		if got := StandingOf(r, agronomy.Phosphorus, "").Why()[0].Text; !strings.HasSuffix(got, ": "+c.own) {
			t.Errorf("%v ppm by the laboratory: %q, want %q", c.ppm, got, c.own)
		}
	}
}
