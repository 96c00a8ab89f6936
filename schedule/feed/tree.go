package feed

import (
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"time"

	"swardbook/schedule"
	"swardbook/schedule/ical"
	"swardbook/schedule/page"
)

// Names in the tree of one site.
const (
	landingFile  = "index.html" // served as the folder itself
	calendarFile = "program.ics"
	sheetFile    = "program.html"
	jsonFile     = "program.json"
	formPath     = "done"
)

func personFile(id string) string { return "person/" + id + ".ics" }
func areaFile(id string) string   { return "area/" + id + ".ics" }

// Media types of the files.
const (
	htmlType     = "text/html; charset=utf-8"
	calendarType = "text/calendar; charset=utf-8"
	jsonType     = "application/json"
	plainType    = "text/plain; charset=utf-8"
)

// file is one file of a site's tree.
type file struct {
	path, kind string
	body       []byte
}

// tree makes the files of one site.
type tree struct {
	base     string // public address above all sites, without a slash at the end; "" not known
	prefix   string // first part of the site's path
	record   bool   // the form is there
	now      time.Time
	problems []schedule.Problem // of the newest files, when an older program is shown
	// old gives the calendar that was published before at a path of the tree;
	// the error is fs.ErrNotExist when there was none.
	old func(path string) ([]byte, error)
}

// day is the day that is today where the clock hangs.
func day(now time.Time) schedule.Date {
	y, m, d := now.Date()
	return schedule.Date{Year: y, Month: m, Day: d}
}

// address gives the public address of a path in the site, "" when there is no
// base.
func (t *tree) address(path string) string {
	if t.base == "" {
		return ""
	}
	return t.base + "/" + url.PathEscape(t.prefix) + "/" + path
}

// files makes all files of a site. The calendars come first. A calendar of one
// person or area that cannot be written, because it would be empty, is left out
// with the reason on the landing page; anything else that fails is an error.
func (t *tree) files(p *schedule.Program) ([]file, error) {
	record := ""
	if t.record {
		record = t.address(formPath)
	}
	whole, err := t.calendar(p, ical.Options{Address: t.address(calendarFile), Record: record}, calendarFile)
	if err != nil {
		return nil, err
	}
	out := []file{{calendarFile, calendarType, whole}}
	l := t.landing(p)
	part := func(name, path string, o ical.Options) (link, error) {
		o.Address, o.Record = t.address(path), record
		body, err := t.calendar(p, o, path)
		if u, ok := errors.AsType[*ical.Unwritable](err); ok {
			return link{Name: name, Why: u.Why}, nil
		}
		if err != nil {
			return link{}, err
		}
		out = append(out, file{path, calendarType, body})
		return t.link(name, path), nil
	}
	for _, who := range p.Site.Crew.People {
		k, err := part(who.Name, personFile(who.ID), ical.Options{Person: who.ID})
		if err != nil {
			return nil, err
		}
		l.People = append(l.People, k)
	}
	for _, a := range p.Site.Areas {
		k, err := part(a.Name, areaFile(a.ID), ical.Options{Area: a.ID})
		if err != nil {
			return nil, err
		}
		l.Areas = append(l.Areas, k)
	}

	o := page.Options{Today: day(t.now), Link: t.address(""), Warning: l.Warning}
	if t.record {
		o.Record = formPath
	}
	sheet, err := page.Sheet(p, o)
	if err != nil {
		return nil, fmt.Errorf("the sheet: %w", err)
	}
	program, err := schedule.EncodeJSON(p)
	if err != nil {
		return nil, fmt.Errorf("the JSON: %w", err)
	}
	land, err := l.write()
	if err != nil {
		return nil, err
	}
	return append(out, file{sheetFile, htmlType, sheet}, file{jsonFile, jsonType, program}, file{landingFile, htmlType, land}), nil
}

// calendar writes a calendar on top of the one that was there.
func (t *tree) calendar(p *schedule.Program, o ical.Options, path string) ([]byte, error) {
	old, err := t.old(path)
	if errors.Is(err, fs.ErrNotExist) {
		return ical.Write(p, o)
	}
	if err != nil {
		return nil, fmt.Errorf("the calendar %s that was published before: %w", path, bare(err))
	}
	out, _, err := ical.Update(old, p, o, t.now)
	if err != nil {
		return nil, fmt.Errorf("the calendar %s: %w", path, err)
	}
	return out, nil
}
