package page

import (
	"strings"
	"testing"
)

func TestTied(t *testing.T) {
	got := tied("1.5 lb per 1,000 sq ft; brings 0.75 lb K₂O by Mon 16 Nov 2026")
	if want := "1.5~lb per 1,000~sq~ft; brings 0.75~lb~K₂O by Mon~16~Nov~2026"; strings.ReplaceAll(got, "\u00a0", "~") != want {
		t.Errorf("%q", got)
	}
}
