package ical

import (
	"fmt"
	"io"
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"swardbook/schedule"
	"swardbook/schedule/plan"
	"swardbook/schedule/sitefile"
)

// A calendar that is written again after every edit of three years keeps its word: no
// SEQUENCE and no stamp ever falls, an event whose content changed has a higher one, no
// id stands twice, and what is done is never called off.
func TestLifeOfACalendar(t *testing.T) {
	for seed := range uint64(8) {
		r := rand.New(rand.NewPCG(seed, 1))
		text := someSite(r)
		site := loadSite(t, text)
		if site == nil || !site.Through.IsZero() {
			continue
		}
		var file []byte
		var book []schedule.Done
		var last map[string]Event
		for today := site.Start; today.Before(site.Start.AddDays(3 * 365)); today = today.AddDays(9 + r.IntN(40)) {
			switch r.IntN(8) {
			case 0:
				site.Crew.Days = []time.Weekday{time.Weekday(r.IntN(7)), time.Weekday(r.IntN(7))}
			case 1:
				site.Place.Hardiness = map[string]string{"6a": "6b", "6b": "6a", "4b": "5a", "5a": "4b", "7b": "7a", "7a": "7b", "8b": "8a", "8a": "8b", "9b": "9a", "9a": "9b"}[site.Place.Hardiness]
			case 2:
				site.Crew.Away = append(site.Crew.Away, schedule.Span{From: today, To: today.AddDays(12)})
			}
			until, err := plan.Through(site, today)
			if err != nil {
				t.Fatal(err)
			}
			p, err := plan.Program(site, book, until)
			if err != nil {
				t.Fatal(err)
			}
			for _, e := range p.Entries { // what came due is mostly recorded
				if e.State == schedule.Planned && e.Rate > 0 && !e.Date.After(today) && today.DaysFrom(e.Date) < 40 && r.IntN(3) > 0 {
					m := e.Dose.Material
					book = append(book, schedule.Done{Line: len(book) + 2, Date: e.Date, Area: e.Area, Job: e.ID, Material: m.ID, Content: &m, Weight: e.Pounds})
				}
			}
			if p, err = plan.Program(site, book, until); err != nil {
				t.Fatal(err)
			}
			p = p.AsOf(today)
			if file == nil {
				file, err = Write(p, Options{}, p.Start.Time())
			} else {
				file, _, err = Update(file, p, Options{}, today.Time())
			}
			if file == nil || err != nil {
				t.Fatal(seed, err)
			}
			now := eventsOf(t, file)
			for _, bad := range fallen(last, now) {
				t.Errorf("site %d on %s: %s", seed, today, bad)
			}
			last = now
		}
		for name, plant := range map[string]func(*Event){
			"falls from": func(e *Event) { e.Sequence-- },
			"is older":   func(e *Event) { e.Stamp = e.Stamp.Add(-time.Hour) },
			"changed":    func(e *Event) { e.Summary += "!" },
			"called off": func(e *Event) { e.Cancelled = true; e.Sequence++; e.Stamp = e.Stamp.Add(time.Hour) },
		} {
			planted := map[string]Event{}
			for uid, e := range last {
				if strings.HasPrefix(e.Summary, doneTitle) {
					plant(&e)
				}
				planted[uid] = e
			}
			any := slices.ContainsFunc(slices.Collect(maps.Values(last)), func(e Event) bool { return strings.HasPrefix(e.Summary, doneTitle) })
			if any && !strings.Contains(strings.Join(fallen(last, planted), "\n"), name) {
				t.Errorf("site %d: a planted fault was not found: %s", seed, name)
			}
		}
	}
}

func loadSite(t *testing.T, text string) *schedule.Site {
	t.Helper()
	site, ps := sitefile.Load("site.toml", []byte(text), func(string) (io.ReadCloser, error) { return nil, io.EOF })
	if schedule.Fatal(ps) {
		t.Fatal(ps, text)
	}
	return site
}

func eventsOf(t *testing.T, file []byte) map[string]Event {
	t.Helper()
	c, err := read(file)
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]Event{}
	for _, e := range c.events {
		if _, again := out[e.UID]; again {
			t.Errorf("%s stands twice", e.UID)
		}
		out[e.UID] = e
	}
	return out
}

// fallen says where a calendar broke its word.
func fallen(was, is map[string]Event) (bad []string) {
	for uid, e := range is {
		o, known := was[uid]
		switch {
		case !known:
		case e.Sequence < o.Sequence:
			bad = append(bad, fmt.Sprintf("%s falls from %d to %d", uid, o.Sequence, e.Sequence))
		case e.Stamp.Before(o.Stamp):
			bad = append(bad, uid+" is older than it was")
		case !e.equal(o.Content) && e.Sequence == o.Sequence:
			bad = append(bad, uid+" changed, and its SEQUENCE did not")
		case e.Cancelled && over(o.Summary):
			bad = append(bad, uid+" was done, or counted as done, and is called off")
		}
	}
	return bad
}
