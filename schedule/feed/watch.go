package feed

import (
	"context"
	"fmt"
	"io/fs"
	"log/slog"
	"maps"
	"runtime"
	"slices"
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

// interval is how often the folder is looked at.
const interval = time.Second // [common]

// Watch looks at the folder every second and brings the feed up to date, until
// the context ends.
func (f *Feed) Watch(ctx context.Context) {
	t := time.NewTicker(interval)
	defer t.Stop()
	for {
		select {
		case <-ctx.Done():
			return
		case <-t.C:
			f.Refresh() // has logged its error
		}
	}
}

// Refresh looks at the folder once. Sites whose files changed are read and
// planned anew, and so is every site when a new day begins, as its pages say
// what is next. The error is of the folder as a whole.
func (f *Feed) Refresh() error {
	f.mu.Lock()
	defer f.mu.Unlock()
	names, err := siteNames(f.o.Sites)
	if err != nil {
		f.say(slog.LevelError, "", "the folder of sites could not be read", "error", bare(err).Error())
		return fmt.Errorf("could not read the folder of sites: %w", bare(err))
	}
	here := make(map[string]bool, len(names))
	for _, name := range names {
		if err := nameable(name); err != nil {
			f.say(slog.LevelError, name, "the site is not served", "error", err.Error())
			continue
		}
		here[name] = true
		if f.sites[name] == nil {
			f.sites[name] = &site{name: name, kept: map[string]kept{}, recorded: map[string]outcome{}}
		}
	}
	var changed atomic.Bool
	var work sync.WaitGroup
	free := make(chan struct{}, runtime.GOMAXPROCS(0))
	for name, s := range f.sites {
		if !here[name] {
			// Editors that save by delete and create leave a moment without the
			// file, so a site goes when it was missing twice.
			if s.gone {
				delete(f.sites, name)
				changed.Store(true)
				f.o.Log.Info("the site file is gone", "site", s.logName())
			}
			s.gone = true
			continue
		}
		s.gone = false
		free <- struct{}{}
		work.Go(func() {
			defer func() { <-free }()
			s.mu.Lock()
			defer s.mu.Unlock()
			if f.refresh(s) {
				changed.Store(true)
			}
		})
	}
	work.Wait()
	if changed.Load() || f.index.Load() == nil {
		return f.list()
	}
	return nil
}

// refresh brings one site up to date and tells whether anything may be served
// differently now. The site is locked.
func (f *Feed) refresh(s *site) bool {
	now := f.o.Now()
	today := day(now)
	if s.last != nil && s.day == today &&
		s.last.stamp.same(stampOf(f.o.Sites, s.name, s.last.stamp.normalsName, now)) {
		return false
	}
	r := read(f.o.Sites, s.name, now)
	if s.last != nil && s.day == today && r.sum == s.last.sum && (r.program == nil) == (s.last.program == nil) {
		s.last.stamp = r.stamp
		return false
	}
	fresh := s.last == nil || r.sum != s.last.sum
	s.last, s.day = r, today
	if r.program != nil {
		s.good = r
	}
	if fresh {
		f.tell(s, r)
	}
	f.show(s, now)
	return true
}

// tell logs how the reading of a site went.
func (f *Feed) tell(s *site, r *reading) {
	switch {
	case r.program != nil:
		f.o.Log.Info("planned", "site", s.logName(), "jobs", len(r.program.Entries))
	case s.good != nil:
		f.o.Log.Error("the files have errors; the last good program is served on", "site", s.logName(), "problems", texts(r.problems))
	default:
		f.o.Log.Error("the files have errors; there is no program to serve", "site", s.logName(), "problems", texts(r.problems))
	}
}

// logName is the name of the site file, which is no secret: the log is for the
// person who has the folder.
func (s *site) logName() string { return s.name }

// mostTold is how many problems of one reading are logged.
const mostTold = 10

func texts(ps []schedule.Problem) []string {
	var out []string
	for _, p := range ps {
		if !p.Warning && len(out) < mostTold {
			out = append(out, p.Error())
		}
	}
	return out
}

// say logs something about a name, unless it was the last thing said about it.
// The feed is locked.
func (f *Feed) say(level slog.Level, name, message string, args ...any) {
	all := message + fmt.Sprint(args...)
	if f.told[name] == all {
		return
	}
	f.told[name] = all
	f.o.Log.Log(context.Background(), level, message, append([]any{"site", name}, args...)...)
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
	made, err := t.files(s.good.program)
	if err != nil {
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

// list makes the table of paths and the index page. The feed is locked.
func (f *Feed) list() error {
	table := make(map[string]*site, len(f.sites))
	var lines []indexLine
	for _, s := range inOrder(f.sites) {
		n := s.shown.Load()
		switch {
		case n == nil || n.resources == nil && n.unready == nil: // private and broken
			continue
		case table[n.prefix] != nil:
			f.say(slog.LevelError, s.name, "the site is not served: another has the same address", "other", table[n.prefix].logName())
			continue
		}
		table[n.prefix] = s
		if !n.private {
			lines = append(lines, newIndexLine(n.prefix, n.title, n.note))
		}
	}
	body, err := indexOf(lines)
	if err != nil {
		return err
	}
	f.table.Store(&table)
	f.index.Store(newResource(file{landingFile, htmlType, body}, f.index.Load(), f.o.Now(), false))
	return nil
}

// inOrder gives the sites in the order of their names, so that of two with one
// address it is always the same that is served.
func inOrder(sites map[string]*site) []*site {
	out := make([]*site, 0, len(sites))
	for _, name := range slices.Sorted(maps.Keys(sites)) {
		out = append(out, sites[name])
	}
	return out
}
