package page_test

import (
	"testing"

	"swardbook/schedule/page"
)

func BenchmarkSheet(b *testing.B) {
	p := planned(b, "garden")
	for b.Loop() {
		if _, err := page.Sheet(p, page.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
