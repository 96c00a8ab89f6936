package feed

import (
	"context"
	"errors"
	"io/fs"
	"log/slog"

	"swardbook/schedule"
)

// made is what a turn makes of a site's files.
type made struct {
	reading *reading
	file    file
	err     error // of the file
}

// make plans the site and writes one file of it, or none for "". When the newest files
// cannot be planned, the last good ones take their place. The caller has taken the site.
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
			if m.reading.plan(s.name, day(t.now), f.o.Plan); m.reading.program == nil || path == "" {
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
		if err != nil { // the turn was given up
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
		if m.err == errOver {
			f.forget(s, path)
		}
		if !errors.Is(m.err, errNoFile) {
			f.mu.Lock()
			f.say(slog.LevelError, s.name, "a file of the site cannot be made", "file", path, "error", m.err.Error())
			f.mu.Unlock()
			f.fault(s.name, m.err)
		}
		if isFault(m.err) || errors.Is(m.err, errNoFile) {
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
	case k == nil || k.of != n || n.daily(path) && k.day != day(f.o.Now()):
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
