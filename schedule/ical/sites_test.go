package ical

import (
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"swardbook/schedule"
	"swardbook/schedule/plan"
	"swardbook/schedule/sitefile"
)

var someNames = []string{"", "Front", "East lawn", "The strip", "Lawn along the old reading room, by the river", "Bank above the lower terrace", "Hillside-without-any-blank-to-cut-it-at", "Wiese am Äußeren Garten"}

// somewhere is a place and grasses that grow there.
var somewhere = []struct {
	place   string
	grasses []string
}{
	{`state = "OH"` + "\n" + `hardiness = "6a"`, []string{"Kentucky bluegrass", "perennial ryegrass", "tall fescue", "fine fescue"}},
	{`state = "MN"` + "\n" + `hardiness = "4b"` + "\n" + `water_within = "20 ft"`, []string{"Kentucky bluegrass", "fine fescue"}},
	{`state = "NC"` + "\n" + `hardiness = "7b"`, []string{"tall fescue", "bermudagrass", "centipedegrass", "zoysiagrass"}},
	{`state = "OR"` + "\n" + `hardiness = "8b"`, []string{"perennial ryegrass", "fine fescue"}},
	{`state = "FL"` + "\n" + `hardiness = "9b"`, []string{"St. Augustinegrass", "bahiagrass"}},
}

// someSite writes a site file as people might: one to three areas, named or
// not, with and without a report, a crew, a shed, in both units.
func someSite(r *rand.Rand) string {
	pick := func(all []string) string { return all[r.IntN(len(all))] }
	where := somewhere[r.IntN(len(somewhere))]
	var b strings.Builder
	put := func(format string, a ...any) { fmt.Fprintf(&b, format+"\n", a...) }
	start := schedule.Date{Year: 2026, Month: 1, Day: 1}.AddDays(r.IntN(365))
	put("id = \"some\"\ntitle = %q\nstart = %s\nunits = %q\n[place]\n%s", "Odderwyn reading garden", start, pick([]string{"us", "metric"}), where.place)
	if r.IntN(2) == 0 {
		put("[crew]\ndays = [\"sat\", \"wed\"]\n[crew.people]\nmara = \"Mara\"\n[crew.who]\nlime = \"mara\"")
	}
	for i := range 1 + r.IntN(3) {
		put("[area.a%d]\nsize = \"%d sq ft\"\ngrass = %q\ntexture = %q\nclippings = %q", i, 300+r.IntN(r.IntN(60000)+1), pick(where.grasses), pick([]string{"loam", "sandy loam", "clay"}), pick([]string{"returned", "removed"}))
		if name := pick(someNames); name != "" {
			put("name = %q", name)
		}
		if r.IntN(3) == 0 {
			put("seeded = %s", start.AddDays(r.IntN(200)-150))
		}
		if r.IntN(4) > 0 {
			put("[area.a%d.soil]\nsampled = %s\nph = %.1f\nmethod = \"mehlich-3\"\nphosphorus = \"%d ppm\"\npotassium = \"%d ppm\"\nmagnesium = \"%d ppm\"", i, start.AddDays(-60), 4.8+r.Float64()*3, 4+r.IntN(60), 20+r.IntN(150), 10+r.IntN(120))
		}
	}
	if r.IntN(2) == 0 {
		put("[material.feed]\nanalysis = \"28-0-6\"\nslow_share = 0.4\npack = \"15 lb\"\non_hand = %d", r.IntN(4))
	}
	return b.String()
}

// plainLength is about how long the text of a plain event may be: what a phone
// shows without much scrolling.
const plainLength = 1100 // [common]

// plainCase tells whether nothing out of the ordinary goes with a job: one
// material that is in no law of the place, grass that is not young, no other
// way of spreading, nothing on record of it.
func plainCase(e *schedule.Entry, description string) bool {
	return e.Material != "" && e.State == schedule.Planned && len(e.Steps) <= 4 &&
		!strings.Contains(description, "mowed three or four times") && !strings.Contains(description, "By law")
}

var titledAmount = regexp.MustCompile(`, [0-9.,]+ (lb|oz|kg|g|gal|fl oz|L|mL)( \([0-9./]+ packs?\))?$`)

// TestExamples: the same holds for the examples.
func TestExamples(t *testing.T) {
	files, err := filepath.Glob("../../examples/*/site.toml")
	if err != nil || len(files) < 3 {
		t.Fatal(files, err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		site, problems := sitefile.Load(file, text, func(name string) (io.ReadCloser, error) {
			return os.Open(filepath.Join(filepath.Dir(file), name))
		})
		if schedule.Fatal(problems) {
			t.Fatal(problems)
		}
		p, err := plan.Program(site, nil, schedule.Date{})
		if err != nil {
			t.Fatal(err)
		}
		c, err := choose(p, Options{})
		if err != nil {
			t.Fatal(err)
		}
		for i, e := range c.events {
			short(t, file, e, &p.Entries[i])
			n := utf8.RuneCountInString(e.Description)
			t.Logf("%s: %d characters, plain %v: %s", file, n, plainCase(&p.Entries[i], e.Description), e.Summary)
			if n > plainLength+100 && plainCase(&p.Entries[i], e.Description) {
				t.Errorf("%s: %d characters in a plain case:\n%s", file, n, e.Description)
			}
		}
	}
}

// short checks a SUMMARY in each state: short, and with its amount.
func short(t *testing.T, site string, e Event, from *schedule.Entry) {
	t.Helper()
	for _, s := range []string{e.Summary, titled(doneTitle, from.Title), titled(missedTitle, from.Title), titled(cancelledTitle, from.Title)} {
		if n := utf8.RuneCountInString(s); n > summaryLength {
			t.Errorf("%s: %d characters: %s", site, n, s)
		}
		if from.Material != "" && !titledAmount.MatchString(s) {
			t.Errorf("%s: no amount: %s", site, s)
		}
	}
}

// TestFiveHundredSites: each SUMMARY is short and keeps its amount, and an
// event reads in one breath. Run with -v to see what is longer, and why.
func TestFiveHundredSites(t *testing.T) {
	var jobs, plain, long, longest, chars, sum int
	for seed := range uint64(500) {
		text := someSite(rand.New(rand.NewPCG(seed, 19)))
		site, problems := sitefile.Load("some.toml", []byte(text), nil)
		if schedule.Fatal(problems) {
			t.Fatalf("seed %d: %v\n%s", seed, problems, text)
		}
		p, err := plan.Program(site, nil, schedule.Date{})
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		if len(p.Entries) == 0 {
			continue
		}
		c, err := choose(p, Options{Page: "https://example.org/odderwyn/"})
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		for i, e := range c.events {
			from := p.Entries[i]
			short(t, fmt.Sprint("seed ", seed), e, &p.Entries[i])
			if from.Material == "" {
				continue
			}
			if small := from.Pounds < 1 && !from.Dose.Material.Liquid; small && !site.Metric && !strings.Contains(e.Description, " cup") && !strings.Contains(e.Description, "tablespoon") {
				t.Errorf("seed %d: a small amount without its cups:\n%s", seed, e.Description)
			}
			n := utf8.RuneCountInString(e.Description)
			jobs, chars, longest = jobs+1, chars+n, max(longest, n)
			if !plainCase(&from, e.Description) {
				continue
			}
			if plain, sum = plain+1, sum+n; n > plainLength {
				long++
				t.Logf("seed %d: %d characters: %s", seed, n, e.Summary)
			}
			if n > plainLength+200 { // names of 60 characters, three more jobs of the day
				t.Errorf("seed %d: %d characters in a plain case:\n%s", seed, n, e.Description)
			}
		}
	}
	if jobs < 1000 || plain < 300 {
		t.Errorf("only %d jobs, %d of them plain", jobs, plain)
	}
	if sum > plain*plainLength {
		t.Error("plain events are too long")
	}
	t.Logf("%d jobs, %d characters each on average, %d at most; %d plain ones, %d on average, %d of them over %d", jobs, chars/max(jobs, 1), longest, plain, sum/max(plain, 1), long, plainLength)
}
