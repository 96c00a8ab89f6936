package feed

import (
	"io/fs"
	"sync"
	"sync/atomic"
	"time"

	"swardbook/schedule"
	"swardbook/schedule/book"
)

// site is one site file and what is served of it.
type site struct {
	name  string
	shown atomic.Pointer[shown]

	mu       sync.Mutex // held while its files are read, planned and written
	last     *reading
	good     *reading // the last that had a program
	day      schedule.Date
	kept     map[string]kept    // the calendars as last made, by path
	recorded map[string]outcome // what became of each form, by its id
	gone     bool               // its file was not there the last time
	warned   bool               // that calendars cannot be kept
}

// kept is a calendar as it was last made, and when its bytes changed.
type kept struct {
	body     []byte
	modified time.Time
}

// shown is what is served of a site; it is replaced as a whole.
type shown struct {
	prefix, title, note string
	private             bool
	resources           map[string]*resource // by the path below the site
	unready             []byte               // the page instead of all others; nil: there is a program
}

// show makes what is served of a site from its last good reading.
func (f *Feed) show(s *site, now time.Time) {
	if s.good == nil {
		f.showUnready(s, s.last.problems)
		return
	}
	t := &tree{base: f.o.Base, prefix: s.good.prefix(s.name), record: f.o.Record, now: now,
		old: func(path string) ([]byte, error) { return f.oldCalendar(s, path) }}
	if s.last.program == nil {
		t.problems = s.last.problems
	}
	var made []file
	err := schedule.Guarded(func() (err error) {
		made, err = t.files(s.good.program)
		return err
	})
	if err != nil {
		f.fault(s.name, err)
		f.o.Log.Error("the site could not be written; what was there is served on", "site", s.logName(), "error", err.Error())
		if s.shown.Load() == nil || s.shown.Load().unready != nil {
			f.showUnready(s, []schedule.Problem{{File: siteFile(s.name), Message: err.Error()}})
		}
		return
	}
	was := s.shown.Load()
	n := &shown{prefix: t.prefix, title: s.good.program.Title, private: s.good.private, resources: make(map[string]*resource, len(made))}
	if t.problems != nil {
		n.note = brokenNote
	}
	for _, m := range made {
		path := m.path
		if path == landingFile {
			path = ""
		}
		modified := now
		if m.kind == calendarType {
			modified = f.keep(s, m, now)
		}
		var before *resource
		if was != nil {
			before = was.resources[path]
		}
		n.resources[path] = newResource(m, before, modified, n.private)
	}
	s.shown.Store(n)
}

// showUnready shows the problems instead of a program. A site that may have a
// secret which cannot be read shows nothing at all.
func (f *Feed) showUnready(s *site, problems []schedule.Problem) {
	n := &shown{prefix: s.last.prefix(s.name), title: s.name, note: brokenNote, private: s.last.private}
	if !n.private || n.prefix != s.name {
		page, err := unready(s.name, problems)
		if err != nil {
			f.o.Log.Error("a page could not be written", "site", s.logName(), "error", err.Error())
		}
		n.unready = page
	}
	s.shown.Store(n)
}

// oldCalendar gives the calendar that was served before, in this run or an
// earlier one.
func (f *Feed) oldCalendar(s *site, path string) ([]byte, error) {
	if k, ok := s.kept[path]; ok {
		return k.body, nil
	}
	if f.o.State == nil {
		return nil, fs.ErrNotExist
	}
	name := s.name + "/" + path
	body, err := readAtMost(f.o.State, name, mostCalendar)
	if err != nil {
		return nil, err
	}
	k := kept{body: body}
	if info, err := f.o.State.Stat(name); err == nil {
		k.modified = info.ModTime()
	}
	s.kept[path] = k
	return body, nil
}

// keep stores a calendar for the next update and the next run, and gives the
// time of its last change.
func (f *Feed) keep(s *site, m file, now time.Time) time.Time {
	was, there := s.kept[m.path]
	if there && string(was.body) == string(m.body) {
		return was.modified
	}
	k := kept{m.body, now.Truncate(time.Second)}
	if there && !k.modified.After(was.modified) { // twice within a second
		k.modified = was.modified.Add(time.Second)
	}
	if f.o.State != nil {
		name := s.name + "/" + m.path
		_, err := book.Replace(f.o.State, name, m.body)
		if err == nil {
			err = f.o.State.Chtimes(name, k.modified, k.modified)
		}
		if err != nil && !s.warned {
			s.warned = true
			f.o.Log.Warn("calendars cannot be kept; after a restart, changes made until then may not reach every phone",
				"site", s.logName(), "error", bare(err).Error())
		}
	}
	s.kept[m.path] = k
	return k.modified
}
