package sitefile

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"swardbook/schedule"
)

// absentMeansUnknown are the keys that may be left out without a word: what
// they say is then not known, or does not hold, and nothing is put in its place.
var absentMeansUnknown = []string{"through", "area.*.soil.received", "material.*.counted", "material.*.rebuy", "crew.budget",
	"place.zip", "place.county", "place.hardiness", "place.elevation", "place.latitude", "place.longitude", "place.first_freeze", "place.last_freeze", "place.water_within",
	"crew.paid", "crew.absent.*", "crew.jobs_per_day", "crew.who.*",
	"area.*.name", "area.*.seeded", "area.*.overseed", "area.*.texture", "area.*.sprinkler", "area.*.soluble_only", "area.*.cored",
	"area.*.soil.ph", "area.*.soil.buffer", "area.*.soil.target_ph", "area.*.soil.acidity", "area.*.soil.cec", "area.*.soil.organic_matter",
	"area.*.soil.phosphorus", "area.*.soil.potassium", "area.*.soil.calcium", "area.*.soil.magnesium", "area.*.soil.sulfur", "area.*.soil.sodium", "area.*.soil.iron",
	"area.*.soil.lb_per_acre_depth", "area.*.soil.lime", "area.*.soil.lower_ph", "area.*.soil.lime_ecce", "area.*.soil.nitrogen", "area.*.soil.phosphate", "area.*.soil.potash",
	"material.*.name", "material.*.cce", "material.*.ecce", "material.*.fineness", "material.*.hydrated", "material.*.magnesium",
	"material.*.sulfur", "material.*.iron", "material.*.price",
	"material.*.pesticide", // the name of the material says it, or it is taken to hold none
	"material.*.kind",      // a fertilizer is known by its analysis
	"local.no_nitrogen", "local.no_phosphorus", "local.max_n_per_application",
	"calendar.remind", "calendar.link", "calendar.secret",
}

// freeText are the keys that take any words.
var freeText = []string{"id", "title", "area.*.name", "material.*.name", "crew.people.*", "local.note"}

// fullKey is one key of the full file that stands on a line of its own.
type fullKey struct {
	path, pattern string
	line          int
}

func fullKeys(t *testing.T, text string) []fullKey {
	byLine := map[int]fullKey{}
	for path, s := range scan(text).spots {
		if k, ok := byLine[s.line]; !ok || len(path) < len(k.path) {
			byLine[s.line] = fullKey{path, "", s.line}
		}
	}
	var out []fullKey
	for i, l := range strings.Split(text, "\n") {
		k, ok := byLine[i+1]
		if !ok || !strings.Contains(l, " = ") || strings.HasSuffix(l, "[") {
			continue
		}
		for _, p := range Keys() {
			if regexp.MustCompile("^" + strings.ReplaceAll(strings.ReplaceAll(p, ".", `\.`), "*", `"?[a-z0-9/-]+"?`) + "$").MatchString(k.path) {
				k.pattern = p
			}
		}
		if k.pattern == "" {
			t.Fatalf("no pattern for %s", k.path)
		}
		out = append(out, k)
	}
	if len(out) < 80 {
		t.Fatalf("only %d keys", len(out))
	}
	return out
}

// with gives the text with one line replaced; "" removes it.
func with(text string, line int, by string) string {
	lines := strings.Split(text, "\n")
	if by == "" {
		return strings.Join(slices.Delete(lines, line-1, line), "\n")
	}
	lines[line-1] = by
	return strings.Join(lines, "\n")
}

func assumed(s *schedule.Site) string {
	said := fmt.Sprint(s.Assumed)
	for _, a := range s.Areas {
		said += fmt.Sprint(a.Assumed)
	}
	return said
}

// Each key of the full file removed: a problem, a default that is named, or a
// key whose absence means "not known".
func TestKeyRemoved(t *testing.T) {
	text := string(mustRead(t, "testdata/full.toml"))
	whole, _ := load(t, text)
	for _, k := range fullKeys(t, text) {
		s, ps := load(t, with(text, k.line, ""))
		named := s != nil && assumed(s) != assumed(whole)
		optional := slices.Contains(absentMeansUnknown, k.pattern)
		switch {
		case optional && schedule.Fatal(ps) && !strings.Contains(ps[0].Hint, "give "+k.path[strings.LastIndexByte(k.path, '.')+1:]): // another key needs it
			t.Errorf("%s may be left out, but: %v", k.path, ps)
		case !optional && len(ps) == 0 && !named:
			t.Errorf("%s was removed, and nothing is said", k.path)
		}
	}
}

// Each key doubled, misspelt, of a wrong type, or out of range: a problem on
// its line, under its name.
func TestKeySpoilt(t *testing.T) {
	text := string(mustRead(t, "testdata/full.toml"))
	for _, k := range fullKeys(t, text) {
		old := strings.Split(text, "\n")[k.line-1]
		name, value, _ := strings.Cut(old, " = ")
		spoilt := map[string]string{
			"doubled":  old + "\n" + old,
			"misspelt": name[:1] + "zq" + name[1:] + " = " + value,
			"a table":  name + " = { zz = 1 }",
			"lists":    name + " = [[1], [2]]",
			"a time":   name + " = 07:30:00",
			"infinite": name + " = inf",
			"no value": name + " = nan",
			"huge":     name + " = 1e308",
			"below":    name + " = -1e9",
			"empty":    name + ` = ""`,
			"tab":      name + ` = "a\tb"`,
			"long":     name + ` = "` + strings.Repeat("x", 201) + `"`,
			"year 1":   name + " = 0001-01-01",
		}
		if !slices.Contains(freeText, k.pattern) {
			spoilt["nonsense"] = name + ` = "zzz"`
		}
		if strings.HasPrefix(k.pattern, "crew.people") {
			delete(spoilt, "misspelt") // a new person
		}
		for how, by := range spoilt {
			s, ps := load(t, with(text, k.line, by))
			line := k.line
			if how == "doubled" {
				line++
			}
			found := slices.ContainsFunc(ps, func(p schedule.Problem) bool {
				return p.Line == line && !p.Warning && p.Hint != "" && (how == "misspelt" || how == "doubled" || strings.HasPrefix(p.Key, k.path))
			})
			if s != nil || !found {
				t.Errorf("%s %s: %q gives %v", k.path, how, by, ps)
			}
		}
	}
}

func FuzzSite(f *testing.F) {
	for _, name := range []string{"full", "values", "wrong-types", "unknown-keys", "lists-of-tables", "place-celsius", "syntax-double"} {
		f.Add(string(mustRead(f, "testdata/"+name+".toml")))
	}
	f.Add(starter)
	f.Fuzz(func(t *testing.T, text string) {
		s, ps := load(t, text)
		if (s == nil) != schedule.Fatal(ps) {
			t.Errorf("%q: site %v, problems %v", text, s, ps)
		}
		count := 1 + strings.Count(text, "\n")
		for _, p := range ps {
			if p.Line < 0 || p.Line > count || p.Message == "" || strings.ContainsAny(p.Key+p.Message+p.Hint, "\n\r\x1b") {
				t.Errorf("%q: problem %+v", text, p)
			}
		}
		if s != nil && (s.Through.Before(s.Start) || len(s.Areas) == 0 || s.ID == "") {
			t.Errorf("%q: site %+v", text, s)
		}
		keysOf(t, text)
	})
}
