package sitefile

import (
	"regexp"
	"slices"
	"strings"
	"testing"
)

// A new file can be read as it stands.
func TestStarterLoads(t *testing.T) {
	s, ps := load(t, string(Starter("oak-1", day(2026, 9, 12))))
	if s == nil || len(ps) > 0 {
		t.Fatal(ps)
	}
	if s.ID != "oak-1" || s.Start != day(2026, 9, 12) || !s.Through.IsZero() {
		t.Errorf("%+v", s)
	}
}

var hidden = regexp.MustCompile(`(?m)^# (\[[a-z.]+\]|[a-z_]+ = )`)

// With every # taken away from its keys, the file shows every key there is,
// and the only thing wrong with it is that alternatives stand side by side.
func TestStarterShowsEveryKey(t *testing.T) {
	text := hidden.ReplaceAllString(string(Starter("oak-1", day(2026, 9, 12))), "$1")
	_, ps := load(t, text)
	for _, p := range ps {
		if !p.Warning && !strings.HasPrefix(p.Message, "monthly means are given") {
			t.Errorf("%v (%s)", p.Error(), p.Hint)
		}
	}
	spots := scan(text).spots
	for _, pattern := range Keys() {
		if strings.HasSuffix(pattern, ".found") || strings.HasSuffix(pattern, ".wanted") || pattern == "area.*.grass.*" {
			continue // in the comment beside its key
		}
		shown := regexp.MustCompile("^" + strings.ReplaceAll(strings.ReplaceAll(pattern, ".", `\.`), "*", `("?[A-Za-z0-9 ]+"?)`) + "$")
		if !slices.ContainsFunc(names(spots), shown.MatchString) {
			t.Errorf("the starter file does not show %s", pattern)
		}
	}
}

func names(spots map[string]spot) []string {
	var out []string
	for path := range spots {
		out = append(out, path)
	}
	return out
}

// Each example in the list of keys is a value that its key takes.
func TestExamplesFit(t *testing.T) {
	for _, k := range allKeys() {
		if k.example == "" {
			continue
		}
		values, ok := (&reader{}).parse([]byte("x = " + k.example))
		if !ok {
			t.Errorf("%s: %s cannot be read", k.pattern, k.example)
			continue
		}
		if message, hint := fits(values["x"], &node{key: k}, "x"); message != "" {
			t.Errorf("%s: %s: %s (%s)", k.pattern, k.example, message, hint)
		}
	}
	if len(Keys()) < 70 {
		t.Errorf("%d keys", len(Keys()))
	}
}
