package soil

import (
	"math"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/check"
)

// The published bands, whole, typed from the sources and not from the code: a
// wrong digit in either shows here.

func near(t *testing.T, got, want float64, what string, args ...any) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-9*max(1, math.Abs(want))) {
		t.Errorf(what+": %v, want %v", append(args, got, want)...)
	}
}

// band is the medium of a scale; the outer two classes end at half its low end
// and twice its high end, common practice.
type band struct {
	nutrient  agronomy.Nutrient
	low, high agronomy.PPM
	optimum   bool
}

// Sufficiency levels for turf, Carrow and others 2003-2004 [slan-sheet]; iron by
// Rutgers [rutgers-levels]; University of Massachusetts [morgan-ranges], its
// sulfur closed at the 40 of [slan-sheet]; Georgia's Mehlich-1 in lb/acre halved
// [uga-sod-769]; a Nebraska laboratory's sulfur and iron [neb-lab-2007].
func TestCellsBands(t *testing.T) {
	other := []band{{agronomy.Phosphorus, 27, 54, false}, {agronomy.Potassium, 75, 176, false}, {agronomy.Calcium, 500, 750, false}, {agronomy.Magnesium, 70, 140, false}, {agronomy.Sulfur, 15, 40, false}, {agronomy.Iron, 50, 100, true}}
	sand := []band{{agronomy.Phosphorus, 27, 54, false}, {agronomy.Potassium, 50, 116, false}, {agronomy.Calcium, 500, 750, false}, {agronomy.Magnesium, 60, 120, false}, {agronomy.Sulfur, 15, 40, false}, {agronomy.Iron, 50, 100, true}}
	lab := func(p []band, base []band) []band { // phosphorus of its own, cations as by Mehlich-3
		return append(append(p, base[1:4]...), band{agronomy.Sulfur, 7, 12, true}, band{agronomy.Iron, 5, 20, true})
	}
	for _, c := range []struct {
		method   agronomy.Extractant
		textures []agronomy.Texture
		bands    []band
	}{
		{agronomy.Mehlich3, []agronomy.Texture{"", agronomy.SandyLoam, agronomy.Loam, agronomy.Clay}, other},
		{agronomy.Mehlich3, []agronomy.Texture{agronomy.Sand, agronomy.LoamySand}, sand},
		{agronomy.Bray1, []agronomy.Texture{agronomy.Loam}, lab([]band{{agronomy.Phosphorus, 15, 30, false}}, other)},
		{agronomy.Olsen, []agronomy.Texture{agronomy.Sand}, lab([]band{{agronomy.Phosphorus, 12, 28, false}}, sand)},
		{agronomy.AmmoniumAcetate, []agronomy.Texture{agronomy.Loam}, lab(nil, other)},
		{agronomy.ModifiedMorgan, []agronomy.Texture{agronomy.Loam, agronomy.Sand}, []band{{agronomy.Phosphorus, 4, 14, true}, {agronomy.Potassium, 100, 160, true}, {agronomy.Magnesium, 50, 120, true}, {agronomy.Calcium, 1000, 1500, true}, {agronomy.Sulfur, 10, 40, true}, {agronomy.Iron, 2.7, 9.4, true}}},
	} {
		for _, texture := range c.textures {
			for _, b := range c.bands {
				got, ok := BandsOf(agronomy.Report{Method: c.method, Texture: texture}, b.nutrient, "OH")
				want := Bands{Name: got.Name, Low: b.low / 2, Medium: b.low, High: b.high, VeryHigh: 2 * b.high, Optimum: b.optimum, Source: got.Source}
				if !ok || got != want || got.Name == "" || got.Source == "" {
					t.Errorf("%s by %s on %q: %+v, want %+v", b.nutrient, c.method, texture, got, want)
				}
			}
		}
	}
}

// Georgia's classes for centipedegrass sod in the sheet's lb/acre: upper ends of
// low, medium and high. [uga-sod-769]
func TestCellsGeorgia(t *testing.T) {
	for _, c := range []struct {
		n      agronomy.Nutrient
		region GeorgiaRegion
		ends   [3]agronomy.PerAcre
	}{
		{agronomy.Phosphorus, CoastalPlain, [3]agronomy.PerAcre{30, 60, 100}}, {agronomy.Phosphorus, Piedmont, [3]agronomy.PerAcre{20, 40, 75}},
		{agronomy.Potassium, CoastalPlain, [3]agronomy.PerAcre{60, 150, 250}}, {agronomy.Potassium, Piedmont, [3]agronomy.PerAcre{100, 200, 350}},
		{agronomy.Magnesium, CoastalPlain, [3]agronomy.PerAcre{30, 60, 0}}, {agronomy.Magnesium, Piedmont, [3]agronomy.PerAcre{60, 120, 0}},
	} {
		for i, end := range c.ends {
			levels := []Level{Low, Medium, High, VeryHigh}
			if end == 0 { // magnesium has no end of high
				continue
			}
			for add, want := range map[agronomy.PerAcre]Level{0: levels[i], 1: levels[i+1]} {
				state, texture := "GA", agronomy.Loam
				if c.region == CoastalPlain {
					texture = agronomy.SandyLoam
				}
				if read, _ := levelOf(c.n, agronomy.PPM(end+add)/2, agronomy.Mehlich1, texture, state, 0); read != want {
					t.Errorf("%s on a %s, %v lb/acre: %s, want %s", c.n, texture, end+add, read, want)
				}
			}
		}
	}
	if _, _, _, ok := georgiaBands(agronomy.Calcium, Piedmont); ok {
		t.Error("Georgia's sheet has calcium")
	}
	for _, c := range []struct {
		state   string
		texture agronomy.Texture
		coastal bool
	}{{"FL", agronomy.Clay, true}, {"LA", "", true}, {"MS", agronomy.Loam, true}, {"DE", agronomy.Loam, true}, {"GA", agronomy.Loam, false}, {"GA", "", false}, {"SC", agronomy.Sand, true}, {"SC", agronomy.LoamySand, true}, {"AL", agronomy.SandyLoam, true}, {"AL", agronomy.SiltLoam, false}} {
		// 15 ppm is 30 lb/acre: low on the coastal plain, medium on the piedmont
		want := map[bool]Level{true: Low, false: Medium}[c.coastal]
		got, why := levelOf(agronomy.Phosphorus, 15, agronomy.Mehlich1, c.texture, c.state, 0)
		if got != want {
			t.Errorf("15 ppm P on %q in %s: %s, want %s", c.texture, c.state, got, want)
		}
		check.Resolve(t, why)
	}
}

// The minimum levels, Mehlich-3 and estimated equivalents. [mlsn-2014] [mlsn-manual]
func TestCellsMLSN(t *testing.T) {
	printed := map[agronomy.Extractant]map[agronomy.Nutrient]agronomy.PPM{
		agronomy.Mehlich3:        {agronomy.Potassium: 37, agronomy.Phosphorus: 21, agronomy.Calcium: 331, agronomy.Magnesium: 47, agronomy.Sulfur: 7},
		agronomy.AmmoniumAcetate: {agronomy.Potassium: 31, agronomy.Magnesium: 41, agronomy.Calcium: 248},
		agronomy.Olsen:           {agronomy.Phosphorus: 6},
	}
	for _, method := range []agronomy.Extractant{agronomy.Mehlich3, agronomy.AmmoniumAcetate, agronomy.Olsen, agronomy.Bray1, agronomy.ModifiedMorgan} {
		for _, n := range Nutrients() {
			got, ok := MLSN(n, method)
			if want := printed[method][n]; got != want || ok != (want > 0) {
				t.Errorf("%s by %s: %v, want %v", n, method, got, want)
			}
		}
	}
}

// Rutgers, lb/acre, upper ends of very low, low, medium, high [rutgers-levels];
// the wider bands of a garden [common]; North Carolina's index, classes from
// memory [nc-index].
func TestCellsOtherStates(t *testing.T) {
	five := []Level{VeryLow, Low, Medium, High, VeryHigh}
	for n, ends := range map[agronomy.Nutrient][4]agronomy.PerAcre{
		agronomy.Phosphorus: {24, 45, 71, 137}, agronomy.Potassium: {40, 81, 145, 277},
		agronomy.Magnesium: {45, 83, 143, 295}, agronomy.Calcium: {615, 1007, 1400, 1790},
	} {
		for i, end := range ends {
			at, _ := Rutgers(n, end)
			above, ok := Rutgers(n, end+0.1)
			if !ok || at != five[i] || above != five[i+1] {
				t.Errorf("Rutgers, %s, %v lb/acre: %s, above %s", n, end, at, above)
			}
		}
	}
	if _, ok := Rutgers(agronomy.Sulfur, 10); ok {
		t.Error("Rutgers has sulfur")
	}
	for n, want := range map[agronomy.Nutrient][2]agronomy.PPM{agronomy.Phosphorus: {30, 50}, agronomy.Potassium: {170, 280}, agronomy.Magnesium: {60, 120}, agronomy.Calcium: {800, 1200}} {
		if low, high, ok := NewHampshire(n); !ok || low != want[0] || high != want[1] {
			t.Errorf("New Hampshire, %s: %v to %v, want %v", n, low, high, want)
		}
	}
}

// Phosphorus advised or not: Penn State, lawns up to 45 ppm [psu-m3p], greens
// under 90 [atc-two-datasets]; Washington under 25 Bray, 18 Olsen [wsu-fs058e].
func TestCellsPhosphorusAdvised(t *testing.T) {
	for _, c := range []struct {
		ppm   agronomy.PPM
		green bool
		want  bool
	}{{45, false, true}, {45.1, false, false}, {89.9, true, true}, {90, true, false}} {
		if PennStateAdvisesP(c.ppm, c.green) != c.want {
			t.Errorf("Penn State: %+v", c)
		}
	}
	for _, c := range []struct {
		ppm     agronomy.PPM
		method  agronomy.Extractant
		advised bool
	}{{24.9, agronomy.Bray1, true}, {25, agronomy.Bray1, false}, {17.9, agronomy.Olsen, true}, {18, agronomy.Olsen, false}} {
		if got, ok := WashingtonAdvisesP(c.ppm, c.method); !ok || got != c.advised {
			t.Errorf("Washington: %+v", c)
		}
	}
	if _, ok := WashingtonAdvisesP(10, agronomy.Mehlich3); ok {
		t.Error("Washington has Mehlich-3")
	}
}

// A Nebraska laboratory's optimum by CEC, up to 5, 10, 15 and 20. [neb-lab-2007]
func TestCellsNebraska(t *testing.T) {
	printed := map[agronomy.Nutrient][4][2]agronomy.PPM{
		agronomy.Potassium: {{91, 121}, {121, 160}, {151, 200}, {181, 240}},
		agronomy.Magnesium: {{60, 119}, {120, 239}, {180, 359}, {240, 479}},
		agronomy.Calcium:   {{600, 0}, {1200, 0}, {1800, 0}, {2400, 0}},
	}
	for n, rows := range printed {
		for i, top := range []agronomy.Meq{5, 10, 15, 20} {
			for _, cec := range []agronomy.Meq{top - 4.9, top} {
				if low, high, ok := NebraskaOptimum(n, cec); !ok || low != rows[i][0] || high != rows[i][1] {
					t.Errorf("Nebraska, %s at CEC %v: %v to %v, want %v", n, cec, low, high, rows[i])
				}
			}
		}
	}
	if _, _, ok := NebraskaOptimum(agronomy.Phosphorus, 8); ok {
		t.Error("Nebraska's phosphorus goes by CEC")
	}
}

// What others say beside the scale that ships: where each begins and ends.
func TestCellsOthers(t *testing.T) {
	for _, c := range []struct {
		n      agronomy.Nutrient
		ppm    agronomy.PPM
		method agronomy.Extractant
		cec    agronomy.Meq
		says   []string
		silent []string
	}{
		{agronomy.Phosphorus, 20, agronomy.Mehlich3, 0, []string{"MLSN) calls it too little", "is 21 ppm", "calls it low", "30 to 50 ppm", "still advises phosphorus"}, []string{"Washington", "Nebraska"}},
		{agronomy.Phosphorus, 21, agronomy.Mehlich3, 8, []string{"already enough"}, []string{"too little", "Nebraska"}},
		{agronomy.Phosphorus, 46, agronomy.Mehlich3, 0, []string{"advises no phosphorus", "calls it high"}, []string{"still advises"}},
		{agronomy.Potassium, 36, agronomy.Mehlich3, 8, []string{"too little", "170 to 280"}, []string{"Penn State", "Nebraska"}},
		{agronomy.Phosphorus, 24, agronomy.Bray1, 0, []string{"expects phosphorus to help: it stops at 25"}, []string{"MLSN", "Rutgers"}},
		{agronomy.Phosphorus, 25, agronomy.Bray1, 0, []string{"expects no help from phosphorus from 25"}, nil},
		{agronomy.Phosphorus, 17, agronomy.Olsen, 0, []string{"stops at 18", "already enough"}, nil},
		{agronomy.Potassium, 30, agronomy.Olsen, 8, []string{"too little", "121 to 160 ppm at 8 meq"}, []string{"Washington"}},
		{agronomy.Calcium, 900, agronomy.AmmoniumAcetate, 8, []string{"at least 1200 ppm"}, nil},
		{agronomy.Calcium, 900, agronomy.AmmoniumAcetate, 0, nil, []string{"Nebraska"}},
	} {
		var all strings.Builder
		for _, w := range others(c.n, c.ppm, c.method, c.cec) {
			all.WriteString(w.Text + "\n")
		}
		for _, want := range c.says {
			if !strings.Contains(all.String(), want) {
				t.Errorf("%s %v ppm by %s: no %q in\n%s", c.n, c.ppm, c.method, want, &all)
			}
		}
		for _, not := range c.silent {
			if strings.Contains(all.String(), not) {
				t.Errorf("%s %v ppm by %s: %q in\n%s", c.n, c.ppm, c.method, not, &all)
			}
		}
	}
}

// Cations. [atomic-weights]: K 391, Ca 200.4, Mg 121.5, Na 230 ppm to the meq/100 g.
func TestCellsCations(t *testing.T) {
	for n, ppm := range map[agronomy.Nutrient]float64{agronomy.Potassium: 391, agronomy.Calcium: 200.4, agronomy.Magnesium: 121.5, agronomy.Sodium: 230} {
		share, ok := Saturation(n, agronomy.PPM(ppm), 10)
		if !ok || math.Abs(float64(share)-10) > 0.01 {
			t.Errorf("%s, 1 meq of 10: %v %%", n, share)
		}
	}
	if _, ok := Saturation(agronomy.Phosphorus, 10, 10); ok {
		t.Error("phosphorus holds a share of the CEC")
	}
	if _, ok := Saturation(agronomy.Calcium, 10, 0); ok {
		t.Error("a share of no CEC")
	}
	near(t, float64(GypsumFor(1, 6)), 860.9*1.8/43.56, "gypsum for 1 meq in 6 in of 1,800,000 lb")
}

// Readings that are more likely slips; common practice. A reading at the edge
// passes, one above it is asked about.
func TestCellsSuspicious(t *testing.T) {
	asked := func(r agronomy.Report) string {
		var fields []string
		for _, s := range Suspicious(r) {
			fields = append(fields, s.Field)
		}
		return strings.Join(fields, " ")
	}
	for _, c := range []struct {
		n      agronomy.Nutrient
		method agronomy.Extractant
		most   agronomy.PPM
	}{
		{agronomy.Phosphorus, agronomy.Mehlich3, 150}, {agronomy.Phosphorus, agronomy.Olsen, 100}, {agronomy.Phosphorus, agronomy.ModifiedMorgan, 60}, {agronomy.Phosphorus, agronomy.Morgan, 60},
		{agronomy.Potassium, agronomy.Mehlich3, 600}, {agronomy.Calcium, agronomy.Mehlich3, 6000}, {agronomy.Magnesium, agronomy.Mehlich3, 1000},
		{agronomy.Sulfur, agronomy.Mehlich3, 200}, {agronomy.Sodium, agronomy.Mehlich3, 500}, {agronomy.Iron, agronomy.Mehlich3, 1500},
	} {
		for add, want := range map[agronomy.PPM]string{0: "", 0.1: string(c.n)} {
			reading := agronomy.Reading{Given: true, PPM: c.most + add}
			r := agronomy.Report{Method: c.method}
			for n, at := range map[agronomy.Nutrient]*agronomy.Reading{
				agronomy.Phosphorus: &r.Phosphorus, agronomy.Potassium: &r.Potassium, agronomy.Calcium: &r.Calcium, agronomy.Magnesium: &r.Magnesium,
				agronomy.Sulfur: &r.Sulfur, agronomy.Sodium: &r.Sodium, agronomy.Iron: &r.Iron,
			} {
				if n == c.n {
					*at = reading
				}
			}
			if got := asked(r); got != want {
				t.Errorf("%s %v ppm by %s: asks about %q, want %q", c.n, reading.PPM, c.method, got, want)
			}
		}
	}
	buffer := func(m agronomy.BufferMethod, ph, soil agronomy.PH) agronomy.Report {
		return agronomy.Report{PH: soil, Buffer: agronomy.Buffer{Method: m, PH: ph}}
	}
	for _, c := range []struct {
		r    agronomy.Report
		want string
	}{
		{agronomy.Report{PH: 4.2}, ""}, {agronomy.Report{PH: 4.19}, "ph"}, {agronomy.Report{PH: 8.7}, ""}, {agronomy.Report{PH: 8.71}, "ph"},
		{buffer(agronomy.SMP, 7.5, 7), ""}, {buffer(agronomy.SMP, 7.51, 7), "buffer"}, {buffer(agronomy.Sikora, 7.51, 7), "buffer"},
		{buffer(agronomy.AdamsEvans, 8, 7), ""}, {buffer(agronomy.AdamsEvans, 8.01, 7), "buffer"},
		{buffer(agronomy.MehlichBuffer, 6.6, 6.5), ""}, {buffer(agronomy.MehlichBuffer, 6.61, 6.5), "buffer"}, {buffer(agronomy.ModifiedMehlich, 6.61, 6.5), "buffer"},
		{buffer(agronomy.SMP, 4.8, 5), ""}, {buffer(agronomy.SMP, 4.79, 5), "buffer"},
		{buffer(agronomy.SMP, 6, 6.5), ""}, {buffer(agronomy.SMP, 6, 6.51), "buffer"}, {buffer(agronomy.SMP, 6, 0), ""},
		{agronomy.Report{OrganicMatter: 20}, ""}, {agronomy.Report{OrganicMatter: 20.1}, "organic_matter"}, {agronomy.Report{OrganicMatter: 20.1, Texture: agronomy.Muck}, ""},
		{agronomy.Report{CEC: 60}, ""}, {agronomy.Report{CEC: 60.1}, "cec"}, {agronomy.Report{CEC: 60.1, Texture: agronomy.Muck}, ""},
	} {
		if got := asked(c.r); got != c.want {
			t.Errorf("%+v: asks about %q, want %q", c.r, got, c.want)
		}
	}
}
