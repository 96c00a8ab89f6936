package main

import (
	"slices"
	"testing"

	"swardbook/schedule/text"
	"swardbook/schedule/word"
)

// The words that stand beside a figure lead to its source.
func TestShortNamesOfSourcesResolve(t *testing.T) {
	for _, r := range word.References() {
		short := r.Short()
		found := sourcesNamed(sources(), short)
		if !slices.ContainsFunc(found, func(s text.Source) bool { return s.Key == r.Key }) {
			t.Errorf("%q does not lead to %s", short, r.Key)
		}
	}
}
