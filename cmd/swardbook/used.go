package main

import (
	_ "embed"
	"strings"
)

// used.txt says for each source which parts of the code name it beside a
// figure: a line a key. A test writes it from the code, and fails when it is
// no longer true.
//
//go:embed used.txt
var used string

// usedFor lists what a source is used for.
func usedFor(key string) []string {
	for line := range strings.Lines(used) {
		if k, parts, ok := strings.Cut(strings.TrimSpace(line), ": "); ok && k == key {
			return strings.Split(parts, ", ")
		}
	}
	return []string{}
}
