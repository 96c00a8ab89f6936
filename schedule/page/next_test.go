package page_test

import (
	"strings"
	"testing"

	"swardbook/schedule/page"
)

// section cuts one section out of a page, without its tags.
func section(t *testing.T, b []byte, id string) string {
	t.Helper()
	for _, e := range elements(t, id, b) {
		if e.attr["id"] == id {
			return strings.Join(strings.Fields(e.text), " ")
		}
	}
	t.Fatalf("no section %q", id)
	return ""
}

// In the first seconds a reader learns what is next, how much, and what to do
// if it rains.
func TestNextJobComesFirst(t *testing.T) {
	p := stored(t, "garden")
	first := p.Entries[0]
	sheet := func(o page.Options) string {
		b, err := page.Sheet(p, o)
		if err != nil {
			t.Fatal(err)
		}
		return section(t, b, "next")
	}
	got := sheet(page.Options{})
	for _, want := range []string{"Next: " + first.Date.Words(), first.Title, first.Summary, "Rain: " + first.IfRain, "Last safe day", first.WhoName} {
		if !strings.Contains(got, want) {
			t.Errorf("the next job lacks %q:\n%s", want, got)
		}
	}
	if !strings.HasPrefix(got, "Next: ") {
		t.Errorf("the section begins with %.40q", got)
	}
	if got := sheet(page.Options{Today: first.Date}); !strings.HasPrefix(got, "Today: "+first.Date.Words()) {
		t.Errorf("on the day: %.60q", got)
	}
	if got := sheet(page.Options{Today: first.Date.AddDays(1)}); !strings.Contains(got, "Due, and not in the record book") || !strings.Contains(got, first.Title) {
		t.Errorf("a day late: %s", got)
	}
	if got := sheet(page.Options{Today: first.Latest.AddDays(1)}); !strings.Contains(got, "Past, and not in the record book") {
		t.Errorf("after the window: %s", got)
	}
	if got := sheet(page.Options{Today: p.Through.AddDays(1)}); !strings.HasPrefix(got, "Nothing is left to do") {
		t.Errorf("after the program: %.60q", got)
	}
}

func TestOnePersonsSheet(t *testing.T) {
	b, err := page.Sheet(planned(t, "garden"), page.Options{Person: "teo"})
	if err != nil {
		t.Fatal(err)
	}
	if s := string(b); !strings.Contains(s, "for Teo") || strings.Contains(section(t, b, "dates"), "Lime East") {
		t.Error("Teo's sheet holds another's job, or does not name him")
	}
	if m := section(t, b, "materials"); strings.Contains(m, "limestone") || !strings.Contains(m, "starter") {
		t.Errorf("Teo's materials: %s", m)
	}
}

// Jobs are named in words, never by their ids.
func TestShedSpeaksOfJobsByName(t *testing.T) {
	p := planned(t, "garden")
	b, err := page.Sheet(p, page.Options{})
	if err != nil {
		t.Fatal(err)
	}
	m := section(t, b, "materials")
	if len(p.InTheShed) == 0 || !strings.Contains(m, "lime on East lawn") {
		t.Errorf("the shed: %s", m)
	}
	for _, e := range p.Entries {
		if strings.Contains(m, e.ID) {
			t.Errorf("the id %s stands in: %s", e.ID, m)
		}
	}
}

// What a person typed stands on the page as text.
func TestNamesAreText(t *testing.T) {
	b, err := page.Sheet(planned(t, "infield"), page.Options{Person: "odd"})
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(b), "Odd-Even &lt;&amp; “crew”&gt;") {
		t.Error("the name is not escaped as it should be")
	}
}

func TestProgramWithoutSiteIsRefused(t *testing.T) {
	p := *stored(t, "garden")
	p.Site = nil
	if _, err := page.Sheet(&p, page.Options{}); err == nil {
		t.Error("a program without a site has no year to draw")
	}
}

// The worksheet gives no answer away, and both forms ask the same.
func TestWorksheetHoldsNoAnswers(t *testing.T) {
	p := stored(t, "garden")
	work, err := page.Lesson(p, false, page.Options{})
	if err != nil {
		t.Fatal(err)
	}
	key, err := page.Lesson(p, true, page.Options{})
	if err != nil {
		t.Fatal(err)
	}
	md, err := page.LessonMarkdown(p, false, page.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range p.Entries {
		if e.Kind.Notice() {
			continue
		}
		if strings.Contains(string(work), e.Summary) || strings.Contains(string(md), e.Summary) {
			t.Errorf("the worksheet tells the dose of %s", e.ID)
		}
		if !strings.Contains(section(t, key, "work"), e.Summary) {
			t.Errorf("the key lacks the dose of %s", e.ID)
		}
	}
	asked := strings.Count(string(work), `class="question"`)
	if asked < 20 || asked != strings.Count(string(key), `class="question"`) || asked != strings.Count(string(md), "**Question ") {
		t.Errorf("%d questions on the worksheet, %d on the key, %d in Markdown", asked,
			strings.Count(string(key), `class="question"`), strings.Count(string(md), "**Question "))
	}
}
