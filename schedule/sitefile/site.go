package sitefile

import (
	"fmt"
	"net/url"
	"regexp"
	"strconv"
	"strings"
	"time"

	"swardbook/agronomy"
	"swardbook/schedule"
)

// Longest program that a site file may ask for by its last day, in days. [common] three
// years; a soil report is too old by then
const maxProgram = 1096

// read fills the site from the head of the file and its tables.
func (r *reader) read(top table) {
	s := &r.site
	s.Title = top.text("title")
	top.need("title", `like title = "Odderwyn reading lawn"`)
	r.readID(top)
	r.readDays(top)
	switch choice(top, "units", "us", "metric") {
	case "metric":
		s.Metric = true
	case "":
		if !top.given("units") {
			r.assume("units not given: amounts are shown in US units")
		}
	}
	r.readPlace(top)
	r.readMaterials(top)
	r.readAreas(top)
	r.readCrew(top) // after the areas, which it may name
	r.readLocal(top)
	r.readMachines(top)
	r.readCalendar(top)
}

func (r *reader) readID(top table) {
	if !top.given("id") {
		r.site.ID = slug(r.site.Title)
		if r.site.ID == "" {
			if r.site.Title != "" {
				top.wrong("id", "is missing, and the title has no plain letters to make one from", `like id = "odderwyn-7q2m"`)
			}
			return
		}
		r.assume("id not given: taken from the title as %s; another title would make every calendar event a new one", r.site.ID)
		return
	}
	if id := top.text("id"); id != "" {
		if message, hint := isID(id); message != "" {
			top.wrong("id", message, hint)
			return
		}
		r.site.ID = id
	}
}

// slug makes an id from a title: letters and digits, with hyphens between.
func slug(title string) string {
	words := strings.FieldsFunc(strings.ToLower(title), func(c rune) bool {
		return !(c >= 'a' && c <= 'z' || c >= '0' && c <= '9')
	})
	id := strings.Join(words, "-")
	return strings.Trim(id[:min(len(id), 40)], "-")
}

func (r *reader) readDays(top table) {
	s := &r.site
	top.need("start", "the first day the program may use, like start = 2026-09-12")
	s.Start, s.Through = top.date("start"), top.date("through")
	if s.Start.IsZero() {
		return
	}
	if s.Through.IsZero() {
		return
	}
	switch days := s.Through.DaysFrom(s.Start) + 1; {
	case days < 1:
		top.wrong("through", fmt.Sprintf("the last day, %s, is before the start, %s", s.Through, s.Start), "have the two changed places?")
		s.Through = schedule.Date{} // or every later day would be wrong too
	case days > maxProgram:
		top.wrong("through", fmt.Sprintf("the program would run for %d days", days), fmt.Sprintf("at most %d; without through the site goes on by itself, season after season", maxProgram))
	}
}

func (r *reader) readMachines(top table) {
	t := top.under("sprayer")
	r.site.Sprayer = schedule.Sprayer{
		Tank:   quantity(t, "tank", above(agronomy.ParseVolume)),
		Covers: agronomy.SquareFeet(quantity(t, "covers", agronomy.ParseCoverage)),
	}
	if top.given("sprayer") {
		t.need("tank", `like tank = "4 gal"`)
		t.need("covers", `how far a gallon goes, like covers = "1000 sq ft per gal"`)
	}
	t = top.under("spreader")
	r.site.Spreader.Width = quantity(t, "width", between(agronomy.ParseLength, 0.5, 60, "a spreader throws from 0.5 to 60 ft wide"))
	if top.given("spreader") {
		t.need("width", `how wide it throws, like width = "4 ft"`)
	}
}

// above makes a parser refuse a quantity of 0 or less, such as a tank of 0 gal.
func above[Q ~float64](parse func(string) (Q, error)) func(string) (Q, error) {
	return func(s string) (Q, error) {
		q, err := parse(s)
		if err == nil && q <= 0 {
			return 0, &agronomy.QuantityError{Text: s, Problem: "is nothing", Hint: "give an amount above 0, or remove the key"}
		}
		return q, err
	}
}

// between narrows what a parser takes to what is believable at a key.
func between[Q ~float64](parse func(string) (Q, error), low, high Q, hint string) func(string) (Q, error) {
	return func(s string) (Q, error) {
		q, err := parse(s)
		if err == nil && !(q >= low && q <= high) {
			return 0, &agronomy.QuantityError{Text: s, Problem: "not believable here", Hint: hint}
		}
		return q, err
	}
}

var reminder = regexp.MustCompile(`^(\d{1,4}) ?([hmd]) (before|after)$`)

func (r *reader) readCalendar(top table) {
	t := top.under("calendar")
	reminds := t.texts("remind")
	if len(reminds) > 2 {
		t.wrong("remind", fmt.Sprintf("%d reminders are too many", len(reminds)), "at most two: phones drop the others")
		reminds = nil
	}
	for i, s := range reminds {
		d, ok := parseReminder(s)
		switch {
		case !ok:
			t.wrong("remind", fmt.Sprintf("%q is not a reminder", s), `hours before or after the day begins, like "15h before" or "7h after"; up to 7 days before, 24 hours after`)
		case i > 0 && reminds[0] == s:
			t.wrong("remind", fmt.Sprintf("%q is given twice", s), "remove one of them")
		default:
			r.site.Calendar.Remind = append(r.site.Calendar.Remind, d)
		}
	}
	if link := t.text("link"); link != "" {
		u, err := url.Parse(link)
		if err != nil || u.Scheme != "http" && u.Scheme != "https" || u.Hostname() == "" || strings.ContainsAny(link, " <>\"") {
			t.wrong("link", fmt.Sprintf("%q is not a web address", link), "it must begin with https:// or http:// and name a host")
		} else {
			r.site.Calendar.Link = link
		}
	}
	if secret := t.text("secret"); secret != "" {
		ok := len(secret) >= 16 && len(secret) <= 64
		for i := range len(secret) {
			ok = ok && isBare(secret[i])
		}
		if !ok {
			t.wrong("secret", "cannot stand in an address, or is too short to be one", "16 to 64 letters, digits, hyphens and underscores")
		} else {
			r.site.Calendar.Secret = secret
		}
	}
}

// parseReminder reads "15h before" as -15 hours from the start of the day.
func parseReminder(s string) (time.Duration, bool) {
	m := reminder.FindStringSubmatch(s)
	if m == nil {
		return 0, false
	}
	n, _ := strconv.Atoi(m[1])
	unit := map[string]time.Duration{"h": time.Hour, "m": time.Minute, "d": 24 * time.Hour}[m[2]]
	d := time.Duration(n) * unit
	if m[3] == "before" {
		return -d, d <= 7*24*time.Hour
	}
	return d, d <= 24*time.Hour
}

// monthDay reads "10-14"; it reports false for what is no day of any year.
func monthDay(s string) (time.Month, int, bool) {
	t, err := time.Parse("2006-01-02", "2024-"+s) // a leap year
	if err != nil {
		return 0, 0, false
	}
	return t.Month(), t.Day(), true
}
