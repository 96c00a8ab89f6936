package word

import (
	"testing"

	"swardbook/climate"
)

func TestShortCite(t *testing.T) {
	for want, s := range map[string]climate.Source{
		"Moore 2025":                     {By: "Moore, A. (Oregon State University)", Title: "Updated lime requirement", Year: "2025"},
		"Shoemaker 1961":                 {By: "Shoemaker, H.E., McLean, E.O. & Pratt, P.F.", Title: "Buffer methods", Year: "1961"},
		"Penn State AASL":                {By: "Penn State AASL (Agricultural Analytical Services Laboratory)", Title: "Notes to the report"},
		"UC Davis Analytical Laboratory": {By: "UC Davis Analytical Laboratory", Title: "Method 450"},
		"swardbook":                      {Title: "swardbook climate model", How: "ours"},
		"Md. Code, Agric., § 8-803":      {Title: "Md. Code, Agric., § 8-803"},
	} {
		if got := (Reference{Key: "k", Source: s}).Short(); got != want {
			t.Errorf("short of %+v = %q, want %q", s, got, want)
		}
	}
}
