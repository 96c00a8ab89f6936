package sitefile

import (
	"strings"
	"testing"

	"swardbook/schedule"
	"swardbook/schedule/plan"
)

const sarasota = `title = "Court"
start = 2027-03-01
[place]
zip = "34236"
[area.court]
size = "2000 sq ft"
grass = "St. Augustinegrass"
`

// The county is that of the ZIP unless the file names another, and a name that is no county
// of the state is refused.
func TestCounty(t *testing.T) {
	for _, c := range []struct{ line, want, problem, said string }{
		{"", "Sarasota", "", "county not given: Sarasota, that of the ZIP; a ZIP may cross a county line"},
		{`county = "manatee county"`, "Manatee", "", ""},
		{`county = "Saint Lucie"`, "St. Lucie", "", ""},
		{`county = "Sarasotta"`, "", `FL has no county "Sarasotta"`, ""},
	} {
		s, ps := load(t, strings.Replace(sarasota, "[area", c.line+"\n[area", 1))
		if c.problem != "" {
			if s != nil || len(ps) == 0 || ps[0].Key != "place.county" || ps[0].Message != c.problem || ps[0].Hint != "Sarasota" {
				t.Errorf("%s: %v", c.line, ps)
			}
			continue
		}
		if s == nil || s.County != c.want || strings.Contains(assumed(s), "county not given") != (c.said != "") || !strings.Contains(assumed(s), c.said) {
			t.Fatalf("%s: %v %v", c.line, s, ps)
		}
	}
}

// A program keeps the county's closed days, names them once, and without the
// county keeps none of them: Sarasota County fertilizer ordinance (2007).
func TestCountyBinds(t *testing.T) {
	closed := func(line string) (inside int, law string) {
		s, ps := load(t, strings.Replace(sarasota, "[area", line+"\n[area", 1))
		if s == nil {
			t.Fatal(ps)
		}
		p, err := plan.Program(s, nil, schedule.Date{})
		if err != nil {
			t.Fatal(err)
		}
		summer := schedule.Span{From: schedule.Date{Year: 2027, Month: 6, Day: 1}, To: schedule.Date{Year: 2027, Month: 9, Day: 30}}
		for _, e := range p.Entries {
			if e.N > 0 && summer.Has(e.Date) {
				inside++
			}
		}
		for _, l := range p.Laws {
			law += l.Text + "\n"
		}
		return inside, law
	}
	if n, law := closed(""); n != 0 || strings.Count(law, "Sarasota County: no products with nitrogen from 1 Jun to 30 Sep") != 1 {
		t.Errorf("%d feedings on closed days; %s", n, law)
	}
	s, _ := load(t, strings.NewReplacer("34236", "02601", "St. Augustinegrass", "tall fescue").Replace(sarasota))
	p, err := plan.Program(s, nil, schedule.Date{})
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range p.Laws {
		if strings.Contains(l.Text, "Town of") {
			t.Errorf("a town's rule among those that are kept: %s", l.Text)
		}
	}
	if notes := strings.Join(p.LawNotes, "\n"); !strings.Contains(notes, "Ask here: Mashpee, nitrogen closed 30 Oct to 14 Apr.") {
		t.Errorf("nobody is told to ask: %s", notes)
	}
	if n, law := closed(`county = "Orange"`); n == 0 || strings.Contains(law, "Sarasota") {
		t.Errorf("%d feedings in summer where no county closes it; %s", n, law)
	}
}
