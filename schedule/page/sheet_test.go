package page_test

import (
	"testing"

	"swardbook/schedule/page"
)

func TestSheetGolden(t *testing.T) {
	for _, name := range names {
		o := page.Options{Link: "https://example.org/lawn/", Today: stored(t, name).Start.AddDays(70)}
		if name == "garden" {
			o = page.Options{}
		}
		got, err := page.Sheet(stored(t, name), o)
		if err != nil {
			t.Fatal(err)
		}
		golden(t, name+".sheet.html", got)
	}
}

func BenchmarkSheet(b *testing.B) {
	p := planned(b, "garden")
	for b.Loop() {
		if _, err := page.Sheet(p, page.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
