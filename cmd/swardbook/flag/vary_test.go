package flag

import (
	"slices"
	"strings"
	"testing"
)

func TestParseVary(t *testing.T) {
	for _, c := range []struct {
		text, key string
		values    []string
	}{
		{"hardiness=5b,6a, 6b", "hardiness", []string{"5b", "6a", "6b"}},
		{"area.east.soil.ph=5.0..6.5/0.5", "area.east.soil.ph", []string{"5.0", "5.5", "6.0", "6.5"}},
		{"ph=5..5.3/0.1", "ph", []string{"5.0", "5.1", "5.2", "5.3"}},
		{"latitude=-2..2/2", "latitude", []string{"-2", "0", "2"}},
		{"seeded=2026-08-30..2026-09-12/7", "seeded", []string{"2026-08-30", "2026-09-06"}},
		{"size=1000 sq ft..2000 sq ft/500 sq ft", "size", []string{"1000 sq ft", "1500 sq ft", "2000 sq ft"}},
		{`days=["sat", "sun"]`, "days", []string{`["sat", "sun"]`}},
	} {
		key, values, err := ParseVary(c.text)
		if err != nil || key != c.key || !slices.Equal(values, c.values) {
			t.Errorf("%s: %q %q %v", c.text, key, values, err)
		}
	}
	for text, says := range map[string]string{
		"ph":                                   "not of the form",
		"=5":                                   "not of the form",
		"ph=":                                  "not of the form",
		"ph=5,,6":                              "empty value",
		"ph=5..6":                              "needs its step",
		"ph=5..6/0":                            "must go up",
		"ph=6..5/0.1":                          "must go up",
		"ph=0..1000000/0.1":                    "must go up",
		"ph=a..b/c":                            "give numbers",
		"seeded=2026-08-30..x/7":               "not a date",
		"seeded=2026-08-30..2026-09-30/0":      "no number of days",
		"seeded=2026-08-30..2036-09-30/1":      "must go up",
		"ph=" + strings.Repeat("5,", 50) + "5": "more than the 50",
	} {
		if _, _, err := ParseVary(text); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%.40s: %v, want %q", text, err, says)
		}
	}
}
