package word

import (
	"testing"

	"swardbook/agronomy"
)

func TestShortCite(t *testing.T) {
	for cite, want := range map[string]string{
		"Moore, A. Updated lime requirement recommendations. Extension EM 9585, October 2025, Table 1.": "Moore 2025",
		"Shoemaker, H.E., McLean, E.O. & Pratt, P.F. 1961. Buffer methods. Proc. 25:274-277.":           "Shoemaker 1961",
		"Penn State. Agronomy Guide, Part 1, Section 2.":                                                "Penn State",
		"UC Davis Analytical Laboratory. Method 450, Lime requirement (SMP).":                           "UC Davis Analytical Laboratory",
		"Camberato, J. (Purdue), in a farm paper, 17 January 2023: pounds of N per gallon, no. 120235.": "Camberato 2023",
		"NOAA National Centers. US Climate Normals 1981-2010: temperature.":                             "NOAA National Centers",
		"": "",
	} {
		if got := (Reference{Key: "k", Source: agronomy.Source{Cite: cite, How: "seen"}}).Short(); got != want {
			t.Errorf("short of %q = %q, want %q", cite, got, want)
		}
	}
}
