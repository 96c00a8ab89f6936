package climate

import (
	"strings"
	"testing"
)

// The bounds of the half-zones as the map defines them. [usda-zones]
func TestZoneBounds(t *testing.T) {
	for name, low := range map[string]Fahrenheit{
		"1a": -60, "1b": -55, "2a": -50, "3b": -35, "5a": -20, "5b": -15, "6a": -10, "7b": 5, "10a": 30, "13a": 60, "13b": 65, // [usda-zones]
	} {
		z, err := ParseZone(name)
		if err != nil {
			t.Fatal(err)
		}
		if l, h := z.Bounds(); l != low || h != low+5 {
			t.Errorf("%s: %v to %v, want %v to %v", name, l, h, low, low+5)
		}
		if z.String() != name {
			t.Errorf("%s comes back as %s", name, z)
		}
	}
}

func TestParseZone(t *testing.T) {
	for text, want := range map[string]string{
		"6a": "6a", " 13B ": "13b", "1A": "1a",
		"6": "lacks its half; write 6a", "14a": "off the map; zones go from 1a to 13b", "0a": "not a half-zone",
		"": "not a half-zone", "6c": "not a half-zone", "6ab": "not a half-zone", "a": "not a half-zone",
		"-6a": "not a half-zone", "+6a": "not a half-zone", "06a": "not a half-zone", "6 a": "not a half-zone", "99999999999999999999a": "not a half-zone",
	} {
		z, err := ParseZone(text)
		if err == nil && z.String() != want || err != nil && !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, %v; want %q", text, z, err, want)
		}
	}
}

func FuzzZone(f *testing.F) {
	for _, s := range []string{"6a", "13b", "6", "14a", "", "1a ", "é", "0b"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		z, err := ParseZone(s)
		if err != nil {
			return
		}
		if z < Zone1a || z > Zone13b || !strings.EqualFold(z.String(), strings.TrimSpace(s)) {
			t.Errorf("%q gives %d, %s", s, z, z)
		}
	})
}
