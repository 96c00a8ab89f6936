package nutrient_test

import (
	"fmt"

	"swardbook/agronomy"
	"swardbook/agronomy/nutrient"
	"swardbook/agronomy/soil"
)

// A figure off a sheet, read, placed and turned into a year's potash.
func ExamplePotassiumNeed() {
	k, err := soil.ParseReading(agronomy.Potassium, "61 ppm", 4, 7.4)
	if err != nil {
		fmt.Println(err)
		return
	}
	report := agronomy.Report{Method: agronomy.Mehlich3, Texture: agronomy.SandyLoam, Depth: 4, Potassium: k}
	need, err := nutrient.PotassiumNeed(report, "OH", false)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s: %.1f lb K₂O/1000 sq ft a year, %.1f at once\n", need.Level, float64(need.Year), float64(need.Single))
	fmt.Println(need.Why[0].Text)
	// Output:
	// low: 2.0 lb K₂O/1000 sq ft a year, 1.0 at once
	// Sufficiency levels for turf (Carrow and others 2003-2004): 61 ppm is low; medium is 75 to 176 ppm
}

func ExampleNitrogenYear() {
	rye, _ := agronomy.LookupGrass("perennial ryegrass")
	need, err := nutrient.NitrogenYear(nutrient.NitrogenCase{
		Stand: agronomy.Stand{{Grass: rye, Percent: 100}},
		Care:  nutrient.MediumCare, ClippingsReturned: true,
	})
	fmt.Println(need.Year, err)
	for _, why := range need.Why {
		fmt.Println(why.Text)
	}
	// Output:
	// 2.25 <nil>
	// perennial ryegrass, medium care: 3 lb N/1000 sq ft a year (published: 2 to 4 lb)
	// Clippings left on the lawn give back about a quarter: 3.00 × 0.75 = 2.25 lb N. Published shares run from a quarter to a half.
}
