package feed

import (
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"time"

	"swardbook/schedule"
	"swardbook/schedule/door"
	"swardbook/schedule/ical"
	"swardbook/schedule/page"
	"swardbook/schedule/plan"
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
	base     string                              // public address above all sites, without a slash at the end; "" not known
	prefix   string                              // first part of the site's path
	code     string                              // of a link that carries the site, in place of a prefix; "" none
	stamp    func(*schedule.Entry) schedule.Date // of the events of a link
	record   bool                                // the form is there
	now      time.Time
	problems []schedule.Problem // of the newest files, when an older program is shown
	// old gives the calendar that was published before at a path of the tree;
	// the error is fs.ErrNotExist when there was none.
	old  func(path string) ([]byte, error)
	left []string // calendars that were published before, of persons and areas that have left the site

	whole, asOf *schedule.Program // the last program given to today, and what that gave, so that it is worked out once
}

// today gives the program as today sees it.
func (t *tree) today(p *schedule.Program) *schedule.Program {
	if t.whole != p {
		t.whole, t.asOf = p, p.AsOf(day(t.now))
	}
	return t.asOf
}

// day gives the day that it is in the time zone of the clock.
func day(now time.Time) schedule.Date {
	y, m, d := now.Date()
	return schedule.Date{Year: y, Month: m, Day: d}
}

// address gives the public address of a path in the site, "" when there is no
// base.
func (t *tree) address(path string) string {
	switch {
	case t.base == "":
		return ""
	case t.code != "":
		return t.base + "/" + linkPath + "/" + within(t.code, path)
	}
	return t.base + "/" + url.PathEscape(t.prefix) + "/" + path
}

// part is one calendar of a site.
type part struct {
	path, name string
	o          ical.Options
}

// parts lists the calendars of a site, the whole one first, then people, then
// areas.
func (t *tree) parts(p *schedule.Program) []part {
	shared := &ical.Shared{}
	out := []part{{calendarFile, p.Title, ical.Options{}}}
	for _, who := range p.Site.Crew.People {
		out = append(out, part{personFile(who.ID), who.Name, ical.Options{Person: who.ID}})
	}
	for _, a := range p.Site.Areas {
		out = append(out, part{areaFile(a.ID), a.Name, ical.Options{Area: a.ID}})
	}
	for i := range out {
		out[i].o.Shared = shared
		out[i].o.Address, out[i].o.Page = t.address(out[i].path), t.address(sheetFile)
		if t.record {
			out[i].o.Record = t.address(formPath)
		}
		if t.code != "" {
			out[i].o.Closing = door.Closing
		}
	}
	return out
}

// files makes all files of a site. A file without a body is a calendar of a person or an
// area that has left, and is to be removed. A calendar of one person or area that cannot
// be written, because it would be empty, is left out with the reason on the
// landing page; anything else that fails is an error.
func (t *tree) files(p *schedule.Program) ([]file, error) {
	var out []file
	why := map[string]string{}
	for _, k := range t.parts(p) {
		body, err := t.calendar(p, k.o, k.path)
		if u, ok := errors.AsType[*ical.Unwritable](err); ok && k.path != calendarFile {
			why[k.path] = u.Why
			continue
		}
		if err != nil {
			return nil, err
		}
		out = append(out, file{k.path, calendarType, body})
	}
	for _, path := range t.left {
		switch f, err := t.leaver(p, path); {
		case err == nil:
			out = append(out, f)
		case errors.Is(err, errOver):
			out = append(out, file{path: path}) // to be removed
		case !errors.Is(err, errNoFile):
			return nil, err
		}
	}
	for _, path := range []string{sheetFile, jsonFile} {
		f, err := t.file(p, path)
		if err != nil {
			return nil, err
		}
		out = append(out, f)
	}
	land, err := t.landing(p, why).write()
	if err != nil {
		return nil, err
	}
	return append(out, file{landingFile, htmlType, land}), nil
}

// file makes one file of a site. The error is errNoFile if the site has no such
// file, or no job for that person or area.
func (t *tree) file(p *schedule.Program, path string) (file, error) {
	switch path {
	case landingFile:
		why := map[string]string{}
		for _, k := range t.parts(p)[1:] {
			if _, err := ical.Write(p, k.o, t.now); err != nil {
				u, ok := errors.AsType[*ical.Unwritable](err)
				if !ok {
					return file{}, err
				}
				why[k.path] = u.Why
			}
		}
		body, err := t.landing(p, why).write()
		return file{path, htmlType, body}, err
	case sheetFile:
		o := page.Options{Today: day(t.now), Link: t.address(""), Warning: t.warning()}
		if t.record {
			o.Record = formPath
		}
		body, err := page.Sheet(p.Around(day(t.now)), o)
		if err != nil {
			err = fmt.Errorf("the sheet: %w", err)
		}
		return file{path, htmlType, body}, err
	case jsonFile:
		body, err := schedule.EncodeJSON(t.today(p))
		if err != nil {
			err = fmt.Errorf("the JSON: %w", err)
		}
		return file{path, jsonType, body}, err
	}
	for _, k := range t.parts(p) {
		if k.path != path {
			continue
		}
		body, err := t.calendar(p, k.o, path)
		if _, ok := errors.AsType[*ical.Unwritable](err); ok && path != calendarFile {
			err = errNoFile
		}
		return file{path, calendarType, body}, err
	}
	if t.code != "" {
		return file{}, errNoFile
	}
	return t.leaver(p, path)
}

// calendar writes a calendar on top of the one that was there.
func (t *tree) calendar(p *schedule.Program, o ical.Options, path string) ([]byte, error) {
	if t.code != "" {
		return ical.Anew(p, o, plan.Release, t.stamp, day(t.now))
	}
	p = t.today(p)
	old, err := t.old(path)
	if errors.Is(err, fs.ErrNotExist) {
		return ical.Write(p, o, t.now)
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
