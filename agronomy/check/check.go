// Package check holds the published checks of agronomy, and what its tests
// share. Nothing outside tests uses it.
package check

import (
	"strings"
	"testing"

	"swardbook/agronomy"
)

// Resolve fails for reasons whose source is not listed.
func Resolve(t *testing.T, why []agronomy.Reason) {
	t.Helper()
	all := agronomy.Sources()
	for _, r := range why {
		if r.Text == "" {
			t.Error("a reason without words")
		}
		if strings.ContainsAny(r.Text, "<>") {
			t.Errorf("sign instead of a word in %q", r.Text)
		}
		for key := range strings.SplitSeq(r.Source, ", ") {
			if _, ok := all[key]; !ok && key != "" {
				t.Errorf("no source %q behind %q", key, r.Text)
			}
		}
	}
}

// Grass looks a grass up that must be known.
func Grass(t *testing.T, name string) agronomy.Grass {
	t.Helper()
	g, ok := agronomy.LookupGrass(name)
	if !ok {
		t.Fatalf("no grass %q", name)
	}
	return g
}
