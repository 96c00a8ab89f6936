package feed

import (
	"cmp"
	"context"
	"errors"
	"io/fs"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"swardbook/schedule"
	"swardbook/schedule/book"
)

// site is one site file and what is known of it. Programs and files are made
// when they are asked for, and programs are not kept.
type site struct {
	name     string
	shown    atomic.Pointer[shown] // nil: not read yet
	round    atomic.Int64          // in which its files were last looked at
	unproven atomic.Bool           // the newest files are usable, and not planned yet

	mu    sync.Mutex
	slots map[string]*slot // by path, what was asked for

	turn     chan struct{} // holds one while the site is read, planned or written; the rest belongs to who put it there
	stamp    stamp
	sum      [32]byte // of the newest files
	usable   bool     // are they
	proven   *inputs  // the last that were planned
	swept    bool
	kept     map[string]kept    // calendars as last made, where no state keeps them
	recorded map[string]outcome // what became of each form, by its id
	warned   bool               // that calendars cannot be kept

	gone bool // its file was not there the last time
}

func newSite(name string) *site {
	return &site{name: name, turn: make(chan struct{}, 1), slots: map[string]*slot{}, kept: map[string]kept{}, recorded: map[string]outcome{}}
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
	from                *inputs            // of the program; nil: there is none
	before              *inputs            // the last good ones, until from is known to be as good
	problems            []schedule.Problem // of the newest files, when from is older
	parts               []string           // the calendars of persons and areas
}

// shownOf shows what was read. It keeps nothing of it: the texts of a site are
// cut from its file.
func shownOf(name string, r *reading, from *inputs) *shown {
	n := &shown{prefix: strings.Clone(r.prefix(name)), title: strings.Clone(cmp.Or(r.site.Title, name)), private: r.private, from: from}
	for _, who := range r.site.Crew.People {
		n.parts = append(n.parts, personFile(who.ID))
	}
	for _, a := range r.site.Areas {
		n.parts = append(n.parts, areaFile(a.ID))
	}
	return n
}

// slot is a file that was asked for. Its body may have been dropped since.
type slot struct {
	of   *shown
	day  schedule.Date // of pages
	mark mark
	r    *resource // nil: only the mark is left
	bad  error     // why it cannot be made of this; set for faults, which are not tried again
}

// errNoFile is the error of a path that the site does not have.
var errNoFile = errors.New("no such file")

// daily tells whether a file changes with the day.
func daily(path string) bool { return path == landingFile || path == sheetFile }

// fresh gives what is shown of a site, after a look at its files if nobody has
// looked in this round. It waits for nobody unless nothing is known yet.
func (f *Feed) fresh(ctx context.Context, s *site) (*shown, error) {
	n := s.shown.Load()
	switch {
	case n != nil && s.round.Load() == f.round.Load():
		return n, nil
	case n != nil && !s.tryTake():
		return n, nil
	case n == nil:
		if err := s.take(ctx); err != nil {
			return nil, err
		}
	}
	defer s.release()
	f.look(s)
	return s.shown.Load(), nil
}

// look reads the site's files if they may have changed. The site is taken.
func (f *Feed) look(s *site) {
	round, now, n := f.round.Load(), f.o.Now(), s.shown.Load()
	defer s.round.Store(round)
	if n != nil {
		at := stampOf(f.o.Sites, s.name, s.stamp.normalsName, now)
		if !at.site.there || s.stamp.same(at) { // a file that is gone may only be being saved
			return
		}
	}
	r := load(f.o.Sites, s.name, now)
	s.stamp = r.stamp
	if n != nil && s.sum == r.sum && s.usable == r.usable() {
		return
	}
	s.sum, s.usable = r.sum, r.usable()
	if !s.usable {
		f.goOn(s, r)
		return
	}
	next := shownOf(s.name, r, r.inputs.alone())
	if n != nil {
		if next.before = n.before; s.proven != nil {
			next.before = s.proven
		}
	}
	s.unproven.Store(true)
	f.show(s, next)
}

// goOn goes on with the last good program when the newest files have errors.
func (f *Feed) goOn(s *site, r *reading) {
	n := s.shown.Load()
	next := &shown{prefix: r.prefix(s.name), title: s.name, private: r.private}
	if n != nil && n.from != nil {
		good := *n
		next = &good
	}
	next.note, next.problems = brokenNote, r.problems
	s.unproven.Store(next.from != nil && next.from != s.proven)
	f.show(s, next)
	f.tell(s, r, next.from != nil)
}

// show replaces what is shown.
func (f *Feed) show(s *site, n *shown) {
	was := s.shown.Swap(n)
	if was == nil || was.prefix != n.prefix || was.title != n.title || was.note != n.note || was.private != n.private {
		f.dirty.Store(true)
	}
}

// made is what a turn makes of a site's files.
type made struct {
	reading *reading
	file    file
	err     error // of the file
}

// make plans the site and writes one file of it, or none for "". When the
// newest files cannot be planned, the last good ones take their place. The site
// is taken.
func (f *Feed) make(ctx context.Context, s *site, path string) (made, error) {
	for {
		n := s.shown.Load()
		if n.from == nil {
			return made{}, errNoProgram
		}
		t := &tree{base: f.o.Base, prefix: n.prefix, record: f.o.Record, now: f.o.Now(), problems: n.problems}
		old, there := s.kept[path]
		t.old = func(path string) ([]byte, error) {
			switch {
			case there:
				return old.body, nil
			case f.o.State == nil:
				return nil, fs.ErrNotExist
			}
			return readAtMost(f.o.State, s.name+"/"+path, mostCalendar)
		}
		m, err := inTurn(ctx, f, func() (made, error) {
			m := made{reading: n.from.reading(s.name)}
			if m.reading.plan(s.name, f.o.Plan); m.reading.program == nil || path == "" {
				return m, nil
			}
			m.err = schedule.Guarded(func() (err error) {
				m.file, err = t.file(m.reading.program, path)
				return err
			})
			return m, nil
		})
		if errors.Is(err, errBusy) {
			return made{}, err
		}
		if err != nil { // it came to no end
			m.reading = &reading{inputs: *n.from}
			m.reading.fault, _ = errors.AsType[*schedule.Fault](err)
			m.reading.fail(siteFile(s.name), err.Error())
		}
		if m.reading.program != nil {
			if s.proven != n.from {
				s.proven = n.from
				if s.unproven.Swap(false) {
					f.tell(s, m.reading, true)
				}
			}
			return m, nil
		}
		f.tell(s, m.reading, n.before != nil)
		f.fallBack(s, n, m.reading.problems)
	}
}

// fallBack shows the program of the files before, since these cannot be
// planned.
func (f *Feed) fallBack(s *site, n *shown, problems []schedule.Problem) {
	next := &shown{prefix: n.prefix, title: n.title, private: n.private, note: brokenNote, problems: problems}
	if n.before != nil && n.before != n.from {
		next = shownOf(s.name, n.before.reading(s.name), n.before)
		next.note, next.problems = brokenNote, problems
	}
	s.unproven.Store(false)
	f.show(s, next)
}

// program plans what is shown of a site.
func (f *Feed) program(ctx context.Context, s *site) (*reading, error) {
	if err := s.take(ctx); err != nil {
		return nil, err
	}
	defer s.release()
	m, err := f.make(ctx, s, "")
	return m.reading, err
}

// ready gives a file of a site, made anew if what there is does not hold any
// more. It may come without its body for a client that has it.
func (f *Feed) ready(ctx context.Context, s *site, path string, enough func(*resource) bool) (*resource, error) {
	if r, err := f.there(s, path, enough); r != nil || err != nil {
		return r, err
	}
	if err := s.take(ctx); err != nil {
		return nil, err
	}
	defer s.release()
	if r, err := f.there(s, path, enough); r != nil || err != nil { // somebody made it meanwhile
		return r, err
	}
	m, err := f.make(ctx, s, path)
	if err != nil {
		return nil, err
	}
	n, now := s.shown.Load(), f.o.Now()
	s.mu.Lock()
	was := s.slots[path]
	s.mu.Unlock()
	next := &slot{of: n, day: day(now)}
	if was != nil {
		next.mark = was.mark
	}
	if m.err != nil {
		if m.err != errNoFile {
			f.o.Log.Error("a file of the site cannot be made", "site", s.name, "file", path, "error", m.err.Error())
			f.fault(s.name, m.err)
		}
		if isFault(m.err) || m.err == errNoFile {
			next.bad = m.err
			s.put(path, next)
		}
		return nil, m.err
	}
	modified := now
	if m.file.kind == calendarType {
		modified = f.keep(s, m.file, n.private, now)
	}
	var last *mark
	if was != nil && was.mark.size > 0 && m.file.kind != calendarType { // a calendar's time is kept with it
		last = &was.mark
	}
	next.r = newResource(m.file, last, modified, n.private)
	next.mark = next.r.mark
	s.put(path, next)
	for _, b := range f.cache.add(s, path, next.r) {
		b.site.drop(b.path, b.r)
	}
	return next.r, nil
}

func (s *site) put(path string, next *slot) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.slots[path] = next
}

// drop leaves only the mark of a file, unless another has taken its place.
func (s *site) drop(path string, r *resource) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if k := s.slots[path]; k != nil && k.r == r {
		k.r = nil
	}
}

// there gives a file that still holds; nil if there is none.
func (f *Feed) there(s *site, path string, enough func(*resource) bool) (*resource, error) {
	n := s.shown.Load()
	s.mu.Lock()
	defer s.mu.Unlock()
	k := s.slots[path]
	switch {
	case k == nil || k.of != n || daily(path) && k.day != day(f.o.Now()):
		return nil, nil
	case k.bad != nil:
		return nil, k.bad
	case k.r != nil:
		if !k.r.used.Load() {
			k.r.used.Store(true)
		}
		return k.r, nil
	}
	if r := k.mark.bare(n.private); enough(r) {
		return r, nil
	}
	return nil, nil
}

// keep stores a calendar for the next update and the next run, and gives the
// time of its last change. The site is taken.
func (f *Feed) keep(s *site, m file, private bool, now time.Time) time.Time {
	name := s.name + "/" + m.path
	was, there := s.kept[m.path]
	if !there && f.o.State != nil {
		if body, err := readAtMost(f.o.State, name, mostCalendar); err == nil {
			if info, err := f.o.State.Stat(name); err == nil {
				was, there = kept{body, info.ModTime()}, true
			}
		}
	}
	k := kept{m.body, now.Truncate(time.Second)}
	switch {
	case there && string(was.body) == string(m.body):
		k.modified = was.modified
	case there && !k.modified.After(was.modified): // twice within a second
		k.modified = was.modified.Add(time.Second)
	}
	if f.o.State != nil {
		err := f.store(s, name, k, private)
		if err == nil {
			delete(s.kept, m.path)
			return k.modified
		}
		if !s.warned {
			s.warned = true
			f.o.Log.Warn("calendars cannot be kept; after a restart, changes made until then may not reach every phone",
				"site", s.logName(), "error", bare(err).Error())
		}
	}
	s.kept[m.path] = k
	return k.modified
}

// store writes a calendar into the state.
func (f *Feed) store(s *site, name string, k kept, private bool) error {
	if !s.swept {
		s.swept = true
		for _, dir := range []string{s.name, s.name + "/person", s.name + "/area"} {
			if err := book.Sweep(f.o.State, dir); err != nil {
				return err
			}
		}
	}
	replace := book.Replace
	if private {
		replace = book.ReplacePrivate
		if err := f.o.State.MkdirAll(s.name, 0o700); err != nil {
			return err
		}
		if err := f.o.State.Chmod(s.name, 0o700); err != nil {
			return err
		}
	}
	changed, err := replace(f.o.State, name, k.body)
	if err == nil && changed {
		err = f.o.State.Chtimes(name, k.modified, k.modified)
	}
	return err
}
