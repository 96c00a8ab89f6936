package page_test

import (
	"testing"

	"swardbook/schedule/page"
)

func variants(t *testing.T) []page.Variant {
	early, late := stored(t, "garden"), stored(t, "garden")
	for i := range late.Entries { // two weeks later, and one job less
		e := &late.Entries[i]
		e.Date, e.Ideal = e.Date.AddDays(14), e.Ideal.AddDays(14)
		e.Earliest, e.Latest = e.Earliest.AddDays(14), e.Latest.AddDays(14)
	}
	late.Entries = late.Entries[1:]
	return []page.Variant{{Label: "seeded 2026-08-24", Program: early}, {Label: "seeded 2026-09-07", Program: late}}
}

func TestComparisonGolden(t *testing.T) {
	got, err := page.Comparison(variants(t), page.Options{})
	if err != nil {
		t.Fatal(err)
	}
	golden(t, "garden.comparison.html", got)
	if _, err := page.Comparison(variants(t)[:1], page.Options{}); err == nil {
		t.Error("one program is compared with nothing")
	}
}
