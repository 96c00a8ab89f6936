package feed

import (
	"cmp"
	"context"
	"errors"
	"log/slog"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"swardbook/schedule"
)

// site is one site file and what is known of it. Programs and files are made
// when they are asked for, and programs are not kept.
type site struct {
	name     string
	shown    atomic.Pointer[shown] // nil: not read yet
	round    atomic.Int64          // in which its files were last looked at
	unproven atomic.Bool           // the newest files are usable, and not planned yet

	mu    sync.Mutex
	slots map[string]*slot // the files that were asked for, by their paths

	// turn holds one value while somebody has taken the site, to read, plan or write it.
	// Only who has taken it may use the fields below.
	turn     chan struct{}
	stamp    stamp
	sum      [32]byte // a hash of the newest files
	usable   bool     // whether these can be planned by
	proven   *inputs  // the last files that were planned
	swept    bool
	kept     map[string]kept    // calendars as last made, where no state keeps them
	recorded map[string]outcome // what became of each form, by its id
	warned   bool               // that calendars cannot be kept

	gone bool // whether its file was missing at the last look
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
	left                []string           // those of persons and areas that have left the site
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

// daily tells whether a file changes with the day. The calendar of a person or an area
// that has left does, as it ends after so many days.
func (n *shown) daily(path string) bool {
	return path == landingFile || path == sheetFile || slices.Contains(n.left, path)
}

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

// look reads the site's files if they may have changed. The caller has taken the site.
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
	if next.private {
		f.warnOfOpenSecret(s)
	}
	if n != nil {
		if next.before = n.before; s.proven != nil {
			next.before = s.proven
		}
	}
	s.unproven.Store(true)
	f.show(s, next)
}

// warnOfOpenSecret says that the site file, which holds the secret, is open to
// others on this machine. It is not ours to close.
func (f *Feed) warnOfOpenSecret(s *site) {
	info, err := f.o.Sites.Stat(siteFile(s.name))
	if err != nil || info.Mode().Perm()&0o044 == 0 {
		return
	}
	f.mu.Lock()
	defer f.mu.Unlock()
	f.say(slog.LevelWarn, s.name, "the site file holds a secret and can be read by others on this machine; close it with chmod 600")
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
	n.left = f.leavers(s, n)
	was := s.shown.Swap(n)
	if was == nil || was.prefix != n.prefix || was.title != n.title || was.note != n.note || was.private != n.private {
		f.dirty.Store(true)
	}
}
