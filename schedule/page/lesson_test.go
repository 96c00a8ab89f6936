package page_test

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"swardbook/agronomy"
	"swardbook/schedule"
	"swardbook/schedule/lesson"
	"swardbook/schedule/page"
	scplan "swardbook/schedule/plan"
	"swardbook/schedule/sitefile"
)

// replan plans a site with other numbers.
func replan(s *schedule.Site) (*schedule.Program, error) {
	return scplan.Program(s, nil, schedule.Date{})
}

// lessonOf gives the lesson of a program: with its own numbers, or with those of a set.
func lessonOf(t testing.TB, p *schedule.Program, o lesson.Options) *lesson.Lesson {
	t.Helper()
	l, err := lesson.SetOf(p, o, replan)
	if err != nil {
		t.Fatalf("%s, set %d: %v", p.Title, o.Set, err)
	}
	return l
}

// solved works every question of a worksheet from what stands on it, and holds the
// answers against the key.
func solved(t *testing.T, name string, l *lesson.Lesson) int {
	t.Helper()
	work, err := page.Lesson([]*lesson.Lesson{l})
	if err != nil {
		t.Fatal(err)
	}
	key, err := page.LessonKey([]*lesson.Lesson{l})
	if err != nil {
		t.Fatal(err)
	}
	p := readPaper(t, name, work)
	var results []string
	for _, e := range elements(t, name, key) {
		if e.attr["class"] == "result" {
			results = append(results, plain(e.text))
		}
	}
	if len(results) != len(p.questions) {
		t.Fatalf("%s: %d questions, %d answers", name, len(p.questions), len(results))
	}
	for i, q := range p.questions {
		mine := p.solve(q)
		for r := range strings.SplitSeq(results[i], " · ") {
			what, value, _ := strings.Cut(r, ": ")
			if err := agree(mine[what], value); err != nil {
				t.Errorf("%s, %q, %s: %v", name, q, what, err)
			}
		}
	}
	return len(p.questions)
}

// taught are the examples that a class works through: those that begin anew. What a
// record book holds is no part of a worksheet.
func taught(t *testing.T) []string {
	t.Helper()
	files, err := filepath.Glob("../../examples/*/site.toml")
	if err != nil || len(files) < 3 {
		t.Fatalf("%d examples (%v)", len(files), err)
	}
	return slices.DeleteFunc(files, func(file string) bool {
		_, err := os.Stat(strings.TrimSuffix(file, ".toml") + ".record.csv")
		return err == nil
	})
}

// Every question can be solved from the worksheet alone, and the answers are the
// key's.
func TestWorksheetIsEnough(t *testing.T) {
	for _, file := range taught(t) {
		p := plan(t, file)
		asked := solved(t, file, lessonOf(t, p, lesson.Options{}))
		if asked < 7 || asked > 9 {
			t.Errorf("%s: %d questions, about eight are wanted", file, asked)
		}
		for _, a := range p.Site.Areas {
			if long := solved(t, file+" long, "+a.ID, lessonOf(t, p, lesson.Options{Area: a.ID, Long: true})); long < asked-3 {
				t.Errorf("%s, %s: --long asks %d questions", file, a.ID, long)
			}
		}
	}
	for _, name := range names {
		p := planned(t, name)
		l, err := lesson.Of(p, lesson.Options{Long: true})
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if solved(t, name, l) < 3 {
			t.Errorf("%s: hardly anything is asked", name)
		}
	}
}

// The lesson of a site with a record book goes by what holds now: by the report in force,
// less the lime that went down since, and by the jobs still to be done.
func TestWorksheetOfARecordBook(t *testing.T) {
	const file = "../../examples/orchard-walk/site.toml"
	s := load(t, file)
	text, err := os.ReadFile("../../examples/orchard-walk/site.record.csv")
	if err != nil {
		t.Fatal(err)
	}
	book, problems := sitefile.LoadRecord(file, text, s)
	if schedule.Fatal(problems) {
		t.Fatal(problems)
	}
	last, err := scplan.Through(s, schedule.Date{Year: 2026, Month: time.November, Day: 27})
	if err != nil {
		t.Fatal(err)
	}
	on := func(s *schedule.Site) (*schedule.Program, error) { return scplan.Program(s, book, last) }
	p, err := on(s)
	if err != nil {
		t.Fatal(err)
	}
	for set := range 4 {
		l, err := lesson.SetOf(p, lesson.Options{Set: set}, on)
		if err != nil {
			t.Fatal(err)
		}
		if asked := solved(t, fmt.Sprintf("%s, set %d", file, set), l); asked < 6 {
			t.Errorf("set %d: %d questions", set, asked)
		}
		work, err := page.LessonMarkdown([]*lesson.Lesson{l})
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(string(work), "The soil report of 16 Sep 2025") {
			t.Errorf("set %d is not taught from the last report:\n%s", set, work)
		}
		if set > 0 {
			continue
		}
		for _, q := range l.Questions() { // pH 5.9, and lime is due under 5.8: by hand from the site file and the table
			for _, a := range q.Answers {
				if a.Name == "Lime due" && a.Value != "no" {
					t.Errorf("%s: %s", a.Name, a.Value)
				}
			}
		}
	}
}

// The same holds for other places, grasses, soils, ages and units.
func TestWorksheetIsEnoughElsewhere(t *testing.T) {
	asked, sites := 0, 0
	for i, at := range [][2]string{{"OH", "6a"}, {"GA", "8a"}, {"MN", "4b"}, {"OR", "8b"}, {"FL", "9b"}, {"NC", "7b"}, {"KS", "6b"}} {
		for j, grass := range []string{"tall fescue", "bermudagrass", "Kentucky bluegrass", "centipedegrass"} {
			for k, texture := range []agronomy.Texture{agronomy.SandyLoam, agronomy.ClayLoam} {
				s := *load(t, "../../examples/reading-garden/site.toml")
				s.Place.State, s.Place.Hardiness = at[0], at[1]
				s.Metric = (i+j+k)%2 == 1
				s.Areas = slices.Clone(s.Areas)[1:]
				a := &s.Areas[0]
				g, _ := agronomy.LookupGrass(grass)
				a.Stand = agronomy.Stand{{Grass: g, Percent: 100}}
				a.Texture = texture
				if k == 0 {
					a.Seeded = schedule.Date{}
				}
				r := *a.Soil
				r.PH -= agronomy.PH(0.4 * float64(i%4))
				r.Texture = texture
				if j%2 == 0 {
					r.Buffer = agronomy.Buffer{}
				}
				a.Soil = &r
				p, err := replan(&s)
				if err != nil {
					t.Fatal(err)
				}
				l, err := lesson.Of(p, lesson.Options{Long: (i+k)%2 == 0})
				if errors.Is(err, lesson.ErrNothing) {
					continue
				}
				if err != nil {
					t.Fatal(err)
				}
				sites++
				asked += solved(t, fmt.Sprintf("%s %s %s %s", at[0], at[1], grass, texture), l)
			}
		}
	}
	if sites < 50 || asked < 6*sites {
		t.Errorf("%d questions on %d sites", asked, sites)
	}
}

// Each of thirty students has other numbers, and the same every time.
func TestSets(t *testing.T) {
	for _, file := range taught(t) {
		p := plan(t, file)
		seen := map[string]int{}
		var all []*lesson.Lesson
		for n := 1; n <= lesson.MostSets; n++ {
			l := lessonOf(t, p, lesson.Options{Set: n})
			solved(t, fmt.Sprintf("%s, set %d", file, n), l)
			var facts strings.Builder
			for _, g := range l.Pages[0].Topics[0].Given {
				fmt.Fprintln(&facts, g.Rows)
			}
			if other := seen[facts.String()]; other > 0 {
				t.Errorf("%s: sets %d and %d have the same numbers", file, other, n)
			}
			seen[facts.String()] = n
			all = append(all, l)
		}
		again := lessonOf(t, p, lesson.Options{Set: 7})
		a, _ := page.Lesson([]*lesson.Lesson{all[6]})
		b, _ := page.Lesson([]*lesson.Lesson{again})
		if !bytes.Equal(a, b) {
			t.Errorf("%s: set 7 has other numbers the second time", file)
		}
		key, err := page.LessonKeyMarkdown(all)
		if err != nil {
			t.Fatal(err)
		}
		for _, q := range all[29].Questions() {
			for _, r := range q.Answers {
				if varies := all[0].Questions()[q.N-1].Answers; !strings.Contains(string(key), strings.TrimSuffix(r.Value, " 2026")) && len(varies) > 0 {
					t.Errorf("%s: the key lacks set 30's %s %q", file, r.Name, r.Value)
				}
			}
		}
	}
}

// A worksheet of a metric site holds no pounds, feet or inches; its key neither.
func TestLessonKeepsToTheSitesUnits(t *testing.T) {
	us := regexp.MustCompile(`[0-9] (lb|oz|sq ft|ft|in|gal|°F)\b`)
	quoted := regexp.MustCompile(`\([^)]*\)`) // the source's own figure, the laboratory's print
	metric := regexp.MustCompile(`[0-9] (kg|g|m²|m|mm|cm|L|mL|°C)( |\.|,|$)`)
	for _, name := range append([]string{"infield"}, names[0]) {
		p := planned(t, name)
		for _, long := range []bool{false, true} {
			l := []*lesson.Lesson{lessonOf(t, p, lesson.Options{Long: long})}
			work, err := page.LessonMarkdown(l)
			if err != nil {
				t.Fatal(err)
			}
			key, err := page.LessonKeyMarkdown(l)
			if err != nil {
				t.Fatal(err)
			}
			steps, _, _ := strings.Cut(string(key), "## Sources")
			wrong := us
			if !p.Metric {
				wrong = metric
			}
			for line := range strings.SplitSeq(strings.ReplaceAll(quoted.ReplaceAllString(string(work)+steps, ""), "meq/100 g", ""), "\n") {
				if m := wrong.FindString(line); m != "" {
					t.Errorf("%s: %q in %s", name, m, line)
				}
			}
		}
	}
}

// The worksheet gives no answer away: nothing of a job's dose or day stands on it.
func TestWorksheetHoldsNoAnswers(t *testing.T) {
	p := planned(t, "garden")
	l := []*lesson.Lesson{lessonOf(t, p, lesson.Options{})}
	work, err := page.LessonMarkdown(l)
	if err != nil {
		t.Fatal(err)
	}
	for _, q := range l[0].Questions() {
		for _, a := range q.Answers {
			if value := " " + a.Value + " "; len(a.Value) > 7 && strings.Contains(string(work), value) && !strings.HasSuffix(a.Name, "until") {
				t.Errorf("the worksheet tells %s: %s", a.Name, a.Value)
			}
		}
		if len(q.Steps) == 0 || len(q.Answers) == 0 {
			t.Errorf("question %d has no working", q.N)
		}
	}
	for _, e := range p.Entries {
		if !e.Kind.Notice() && strings.Contains(string(work), e.Summary) {
			t.Errorf("the worksheet tells the dose of %s", e.ID)
		}
	}
}
