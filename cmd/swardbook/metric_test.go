package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"html"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"
)

// The units of the sources. In a metric site they stand only in brackets, beside
// the same in metric, as the source's own figure.
var (
	american = regexp.MustCompile(`\d ?(lb|oz|fl oz|sq ft|ft|gal|°F|mph|tons?|lb/acre)\b|\d in( of|,|\.|;|:| \(|$)|\b(lb|pounds?|inch|inches|feet|gallons?) (per|of|an?) |/1,?000 sq ft|/acre`)
	bracket  = regexp.MustCompile(`\([^()]*\)|\[[^\[\]]*\]`)
	markup   = regexp.MustCompile(`(?s)<style>.*?</style>|<[^>]*>`)
)

// stray finds what is in the wrong units in a text.
func stray(text string) []string {
	for bracket.MatchString(text) {
		text = bracket.ReplaceAllString(text, "")
	}
	var out []string
	for _, at := range american.FindAllStringIndex(text, -1) {
		out = append(out, text[max(0, at[0]-70):min(len(text), at[1]+40)])
	}
	return out
}

// metricOutputs runs what a metric site's people see.
func metricOutputs(t *testing.T, file, today string, everyJob bool) map[string]string {
	t.Helper()
	got := map[string]string{}
	ask := func(args ...string) string {
		var out, talk bytes.Buffer
		now := func() time.Time { return time.Date(2026, 9, 18, 12, 0, 0, 0, time.UTC) }
		if code := run(context.Background(), args, strings.NewReader(""), &out, &talk, func(string) string { return "" }, now); code != 0 {
			t.Fatalf("%v: exit code %d: %s", args, code, talk.String())
		}
		got[strings.Join(args, " ")] = out.String()
		return out.String()
	}
	for _, command := range []string{"soil", "program --full", "materials", "ledger", "roster", "sheet --full"} {
		words := strings.Fields(command)
		args := append([]string{words[0], file, "--today", today}, words[1:]...)
		if words[0] == "soil" {
			args = args[:2]
		}
		ask(args...)
	}
	ask("calendar", file)
	ask("climate", file)
	var p struct{ Entries []struct{ ID string } }
	if err := json.Unmarshal([]byte(ask("program", file, "--today", today, "--format", "json")), &p); err != nil {
		t.Fatal(err)
	}
	if everyJob {
		ask("lesson", file, "--long", "--format", "markdown")
		ask("lesson", file, "--long", "--key", "--format", "markdown")
		for _, e := range p.Entries {
			ask("why", file, e.ID)
		}
	}
	for name, text := range got {
		if strings.HasPrefix(text, "<!DOCTYPE") {
			text = html.UnescapeString(markup.ReplaceAllString(text, " "))
		}
		text = strings.NewReplacer("\r\n ", "", "\\,", ",", "\u2060", "", "\u00a0", " ").Replace(text)
		if i := strings.Index(text, "\nSources\n"); i >= 0 && strings.HasPrefix(name, "why") {
			text = text[:i]
		}
		if i := strings.Index(text, "## Sources"); i >= 0 {
			text = text[:i]
		}
		if strings.HasPrefix(name, "sheet") {
			text, _, _ = strings.Cut(text, " Sources ")
		}
		if !strings.HasSuffix(name, "json") && !strings.HasPrefix(name, "calendar") {
			text = strings.Join(strings.Fields(text), " ") // brackets run over lines
		}
		got[name] = text
	}
	return got
}

// metricKeys are the names in JSON that say a unit.
var metricKeys = regexp.MustCompile(`"[a-z0-9_]+":`)

func TestMetricIsWhole(t *testing.T) {
	told := map[string]bool{}
	check := func(file, today string, everyJob bool) {
		for name, text := range metricOutputs(t, file, today, everyJob) {
			for _, s := range stray(metricKeys.ReplaceAllString(text, "")) {
				kind := regexp.MustCompile(`[0-9.,]+`).ReplaceAllString(s, "#")
				if !told[kind] {
					told[kind] = true
					t.Errorf("%s: …%s…", name, s)
				}
			}
		}
	}
	for name, today := range shownOn {
		text, err := os.ReadFile(filepath.Join("../../examples", name, "site.toml"))
		if err != nil {
			t.Fatal(err)
		}
		s := regexp.MustCompile(`(?m)^units = .*\n`).ReplaceAllString(string(text), "")
		s = strings.Replace(s, "\nstart = ", "\nunits = \"metric\"\nstart = ", 1)
		file := filepath.Join(t.TempDir(), "site.toml")
		if err := os.WriteFile(file, []byte(s), 0o600); err != nil {
			t.Fatal(err)
		}
		check(file, today, true)
	}
	r := rand.New(rand.NewPCG(22, 2))
	for i := range 100 {
		file := filepath.Join(t.TempDir(), "site.toml")
		if err := os.WriteFile(file, []byte(metricSite(r, i)), 0o600); err != nil {
			t.Fatal(err)
		}
		check(file, "2027-03-20", i%10 == 0)
	}
}

// metricSite invents a metric site.
func metricSite(r *rand.Rand, i int) string {
	one := func(of ...string) string { return of[r.IntN(len(of))] }
	places := []string{"OH 6a", "GA 8a", "MN 4b", "OR 8b", "FL 9b", "NC 7b", "KS 6b", "NY 5b", "TX 8b", "MD 7a", "CO 5b", "WA 8a", "NH 5a", "IA 5a", "NJ 7a"}
	state, zone, _ := strings.Cut(places[i%len(places)], " ")
	cool := slices.Contains([]string{"OH", "MN", "OR", "KS", "NY", "CO", "WA", "NH", "IA", "MD", "NJ"}, state)
	grass := one("bermudagrass", "zoysiagrass", "centipedegrass", "tall fescue", "bahiagrass")
	if cool {
		grass = one("tall fescue", "Kentucky bluegrass", "perennial ryegrass", "fine fescue")
	}
	ph := 4.6 + 0.1*float64(r.IntN(40))
	var b strings.Builder
	put := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	put("title = \"Lawn %d\"\nid = \"lawn-%d\"\nstart = 2027-03-15\nthrough = 2028-03-14\nunits = \"metric\"\n\n[place]\nstate = %q\nhardiness = %q", i, i, state, zone)
	if r.IntN(3) == 0 {
		put("water_within = \"8 m\"")
	}
	put("\n[area.a]\nname = \"Front\"\nsize = \"%d m2\"\ngrass = %q\ntexture = %q\ncare = %q\nclippings = %q", 80+r.IntN(900), grass,
		one("sand", "sandy loam", "loam", "silt loam", "clay loam", "clay"), one("low", "medium", "high"), one("returned", "removed"))
	switch r.IntN(3) {
	case 0:
		put("seeded = 2026-09-05")
	case 1:
		put("seeded = 2027-%02d-10", 4+r.IntN(5))
	}
	if r.IntN(2) == 0 {
		put("sprinkler = \"10 mm/h\"")
	}
	put("\n[area.a.soil]\nsampled = 2027-01-20\ndepth = \"10 cm\"\nmethod = %q\nph = %.1f\ncec = %d\norganic_matter = \"%d %%\"", one("mehlich-3", "mehlich-1", "bray-1", "olsen", "modified-morgan"), ph, 4+r.IntN(18), 1+r.IntN(7))
	if ph < 6.2 && r.IntN(2) == 0 {
		put("buffer = { method = %q, ph = %.2f }", one("smp", "sikora", "adams-evans", "mehlich"), 6.0+0.1*float64(r.IntN(10)))
	}
	if r.IntN(5) == 0 {
		put("phosphorus = { found = \"11 ppm\", wanted = [\"20 ppm\", \"40 ppm\"] }")
	} else {
		put("phosphorus = \"%d ppm\"", 2+r.IntN(90))
	}
	put("potassium = \"%d ppm\"\nmagnesium = \"%d ppm\"\ncalcium = \"%d ppm\"\nsulfur = \"%d ppm\"\niron = \"%d ppm\"\nsodium = \"%d ppm\"", 15+r.IntN(250), 8+r.IntN(250), 150+r.IntN(1500), 3+r.IntN(40), 10+r.IntN(200), 5+r.IntN(200))
	put("\n[material.stone]\nkind = \"lime\"\ncce = %d\npack = \"20 kg\"\non_hand = %d", 70+r.IntN(35), r.IntN(4))
	if r.IntN(2) == 0 {
		put("fineness = { \"8\" = 100, \"20\" = 95, \"60\" = 70, \"100\" = 55 }")
	}
	put("\n[material.feed]\nanalysis = %q\nslow_share = %.1f\nlasts = \"8 weeks\"\npack = \"%d kg\"\non_hand = %d", one("18-24-12", "28-0-6", "10-10-10", "21-0-0", "32-0-8"), 0.1*float64(r.IntN(9)), 5+r.IntN(20), r.IntN(3))
	if r.IntN(3) == 0 {
		put("\n[material.liquid]\nanalysis = \"12-0-0\"\nform = \"liquid\"\ndensity = \"1.15 kg/L\"\npack = \"10 L\"\non_hand = 1\n\n[sprayer]\ntank = \"15 L\"\ncovers = \"25 m2 per L\"")
	}
	put("\n[spreader]\nwidth = \"1.2 m\"")
	return b.String()
}
