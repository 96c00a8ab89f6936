package plan

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/climate"
	"swardbook/schedule"
)

// unsayable tells what is wrong with an amount that nobody can weigh, or with a rate
// that is not the rate of it. The steps are those of a kitchen and a bathroom scale. [common]
func unsayable(e *schedule.Entry, size agronomy.SquareFeet, metric bool) string {
	w, unit := float64(e.Pounds), 1.0
	steps := [3]float64{1.0 / 16, 0.1, 1}
	over, from := 5.0, [3]float64{1, 10, 50}
	if metric {
		unit = agronomy.PoundsPerKilogram
		steps, over, from = [3]float64{0.01, 0.1, 0.5}, 2, [3]float64{1, 5, 25}
	}
	in := w / unit
	var may []float64
	for i, step := range steps { // an amount that was rounded up past the end of a step's range keeps that step
		if in < from[i]*1.001 && (i == 0 || in >= from[i-1]*0.999) {
			may = append(may, step)
		}
	}
	if in >= from[2]*0.999 {
		may = append(may, over, float64(e.Dose.Material.Pack)/2/unit)
	}
	if !slices.ContainsFunc(may, func(step float64) bool { return math.Abs(in/step-math.Round(in/step)) < 1e-6 }) {
		return fmt.Sprintf("%s is %v, in steps of %v", e.ID, in, may)
	}
	if math.Abs(w*1000/float64(size)-float64(e.Rate)) > 1e-9 {
		return fmt.Sprintf("%s: %v lb and %v lb/1000 sq ft", e.ID, w, float64(e.Rate))
	}
	return ""
}

// TestSayableEverywhere draws five hundred sites by a seed, from every place, grass and
// situation, small and large, in pounds and in kilograms: each feeding is an amount that
// can be weighed, its rate the rate of that amount, and within every cap.
func TestSayableEverywhere(t *testing.T) {
	const seed = 1807
	r := rand.New(rand.NewPCG(seed, seed))
	places, grasses := cells(t), agronomy.GrassNames()
	fed := 0
	for i := range 500 {
		cell, grass, s := places[r.IntN(len(places))], grasses[r.IntN(len(grasses))], situations[r.IntN(len(situations))]
		site := s.site(t, cell[0], cell[1], grass)
		size := agronomy.SquareFeet(math.Round(300 * math.Pow(200, r.Float64()))) // 300 to 60,000
		site.Areas[0].Size, site.Metric = size, r.IntN(3) == 0
		p, err := Program(site, s.book, schedule.Date{})
		if err != nil {
			t.Fatalf("seed %d, site %d: %v", seed, i, err)
		}
		year, err := site.Place.Year()
		if err != nil {
			t.Fatal(err)
		}
		for k := range p.Entries {
			e := &p.Entries[k]
			if e.State != schedule.Planned || e.Pounds == 0 {
				continue
			}
			for _, b := range brokenDose(site, year, e) {
				t.Errorf("seed %d, site %d, %s %s, %s, %s: %s", seed, i, cell[0], cell[1], grass, s.name, b)
			}
			if slices.Contains([]schedule.Kind{schedule.Lime, schedule.Sulfur, schedule.Iron, schedule.Gypsum}, e.Kind) {
				continue // amounts that follow from the pH or the leaf, in ounces and packs
			}
			fed++
			if why := unsayable(e, size, site.Metric); why != "" {
				t.Errorf("seed %d, site %d, %s %s, %s, %s, %v sq ft, metric %v: %s", seed, i, cell[0], cell[1], grass, s.name, float64(size), site.Metric, why)
			}
		}
	}
	if fed < 1000 {
		t.Errorf("only %d feedings seen", fed)
	}
}

// What a season's nitrogen falls short by has its reason: on a soil that wants neither
// phosphorus nor potassium, neither held a dose back.
func TestShortForTheRightReason(t *testing.T) {
	short := 0
	for _, cell := range [][2]string{{"TX", "8a"}, {"FL", "9a"}, {"KS", "6a"}, {"OH", "6a"}} {
		for _, grass := range []string{"bermudagrass", "zoysiagrass", "tall fescue"} {
			site := lawn(t, grass, 2500, 90, 220)
			site.Place = climate.Place{State: cell[0], Hardiness: cell[1]}
			for _, l := range plan(t, site).LeftOut {
				if strings.Contains(l.Reason, "is short: ") {
					short++
				}
				if strings.Contains(l.Reason, "phosphorus or potassium in the material") {
					t.Errorf("%v, %s: %s: %s", cell, grass, l.ID, l.Reason)
				}
			}
		}
	}
	if short == 0 {
		t.Error("nothing was short")
	}
}
