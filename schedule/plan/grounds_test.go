package plan

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"swardbook/schedule"
	"swardbook/schedule/word"
)

// own are the grounds that rest on the site file, the record book or a sum alone:
// they need no source.
var own = []string{"the site file", "the record book", "the sowing day", "the last day of the program", "sown on", "pack", "as far as the method", "printed on the bag", "more than it takes"}

// ungrounded lists what is printed of a program's jobs without a working and a
// source.
func ungrounded(p *schedule.Program) (bad []string) {
	for i := range p.Entries {
		e := &p.Entries[i]
		of := map[string]bool{}
		for _, g := range p.Grounds(e) {
			name, _, _ := strings.Cut(g.Of, ",")
			of[name] = true
			for _, r := range g.Why {
				known := false
				for _, c := range word.Cited(r.Source) {
					known = known || c.How != ""
				}
				known = known || r.Source == "" && slices.ContainsFunc(own, func(w string) bool { return strings.Contains(r.Text, w) })
				if !known || r.Text == "" {
					bad = append(bad, fmt.Sprintf("%s, %s: no source for %q [%s]", e.Kind, g.Of, r.Text, r.Source))
				}
			}
		}
		wants := func(is bool, names ...string) {
			for _, name := range names {
				if is && !of[name] {
					bad = append(bad, fmt.Sprintf("%s (%s): nothing tells of its %s", e.Kind, e.Window, strings.ToLower(name)))
				}
			}
		}
		wants(e.State == schedule.Planned && !e.Kind.Notice(), "First day", "Last day")
		wants(e.Kind == schedule.LastSafe || !e.LastSafe.IsZero() && e.LastSafe != e.Latest && !e.Kind.Notice(), "Last safe day")
		wants(e.Kind.Samples(), "12 cores")
		wants(e.IfRain != "" && e.Dose.Rate > 0, "Rain")
		wants(slices.ContainsFunc(e.Cautions, func(c string) bool { return strings.Contains(c, "wind above") }), "Wind")
		wants(e.State == schedule.Planned && slices.ContainsFunc(e.Steps, func(s string) bool { return strings.HasPrefix(s, "Water in ") }), "Water in "+p.Site.Measure().Depth(e.WaterIn)+" within "+hours(e))
	}
	return bad
}

// hours reads how soon a job is watered in.
func hours(e *schedule.Entry) string {
	for _, s := range e.Steps {
		if _, after, ok := strings.Cut(s, " within "); ok && strings.HasPrefix(s, "Water in ") {
			return strings.TrimSuffix(after, ".")
		}
	}
	return ""
}

// Whatever day, depth and limit is printed of a job has a working and a source, or
// says that it is common practice.
func TestEverythingPrintedHasAGround(t *testing.T) {
	told := map[string]bool{}
	product(t, fairSample, func(cell [2]string, grass string, s situation) {
		site := s.site(t, cell[0], cell[1], grass)
		p, err := Program(site, s.book, schedule.Date{})
		if err != nil {
			return // the laws tell of it
		}
		for _, bad := range ungrounded(p) {
			if key := strings.Join(strings.FieldsFunc(bad, func(r rune) bool { return '0' <= r && r <= '9' }), "#"); !told[key] {
				told[key] = true
				t.Errorf("%v %s, %s: %s", cell, grass, s.name, bad)
			}
		}
	})
}
