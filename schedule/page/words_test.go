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
	if got := tied("urea 46-0-0, 18-24-12"); got != "urea 46-\u20600-\u20600, 18-\u206024-\u206012" {
		t.Errorf("an analysis may break: %q", got)
	}
}
