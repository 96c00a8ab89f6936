package feed

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"log/slog"
	"runtime"
	"sync"
	"time"

	"swardbook/schedule"
)

// interval is how often the folder is looked at.
const interval = time.Second // [common]

// perRound is how many sites are looked at in a round, beside those that are
// asked for: so many that a small folder is looked at whole, and so few that a
// large one costs little.
const perRound = 1000 // [common]

// Watch looks at the folder every second and brings the feed up to date, until
// the context ends. New sites are planned once beside it, so that the log tells
// of those that cannot be.
func (f *Feed) Watch(ctx context.Context) {
	var proving sync.WaitGroup
	proving.Go(func() {
		for ctx.Err() == nil {
			f.prove(ctx, 1)
			select {
			case <-ctx.Done():
			case <-f.looked:
			}
		}
	})
	defer proving.Wait()
	t := time.NewTicker(interval)
	defer t.Stop()
	for {
		f.lookOver(ctx)
		select {
		case <-ctx.Done():
			return
		case <-t.C:
		}
	}
}

// Refresh looks at the folder once and plans what is new in it. The error is of
// the folder as a whole.
func (f *Feed) Refresh() error {
	if err := f.lookOver(context.Background()); err != nil {
		return err
	}
	f.prove(context.Background(), runtime.GOMAXPROCS(0))
	return f.relist()
}

// lookOver is one round: sites come and go, new ones and some of the others are
// looked at.
func (f *Feed) lookOver(ctx context.Context) error {
	names, err := siteNames(f.o.Sites)
	if err != nil {
		f.mu.Lock()
		defer f.mu.Unlock()
		f.say(slog.LevelError, "", "the folder of sites could not be read", "error", bare(err).Error())
		return fmt.Errorf("could not read the folder of sites: %w", bare(err))
	}
	todo := f.comeAndGo(names)
	look := func(s *site) {
		if ctx.Err() == nil && s.tryTake() { // else whoever has taken it looks at its files
			defer s.release()
			f.look(s)
		}
	}
	// Secrets first: whoever asks for one that is not known yet must wait.
	each(todo, runtime.GOMAXPROCS(0), func(s *site) {
		if s.shown.Load() == nil && f.mayBePrivate(s.name) {
			look(s)
		}
	})
	if err = f.relist(); ctx.Err() == nil {
		f.wholeOnce.Do(func() { close(f.whole) })
	}
	each(todo, runtime.GOMAXPROCS(0), func(s *site) {
		if s.shown.Load() == nil || s.round.Load() != f.round.Load() {
			look(s)
		}
	})
	err = cmp.Or(err, f.relist())
	select {
	case f.looked <- struct{}{}:
	default:
	}
	return err
}

// mayBePrivate tells whether a site may have a secret, at the price of a look.
func (f *Feed) mayBePrivate(name string) bool {
	text, err := readAtMost(f.o.Sites, siteFile(name), mostText)
	return err != nil || mayHoldSecret(text)
}

// each does something to all sites, several at once.
func each(sites []*site, most int, do func(*site)) {
	next := make(chan *site)
	var work sync.WaitGroup
	for range most {
		work.Go(func() {
			for s := range next {
				do(s)
			}
		})
	}
	for _, s := range sites {
		next <- s
	}
	close(next)
	work.Wait()
}

// comeAndGo begins a round and gives the sites to look at in it.
func (f *Feed) comeAndGo(names []string) (todo []*site) {
	f.mu.Lock()
	defer f.mu.Unlock()
	f.round.Add(1)
	here := make(map[string]bool, len(names))
	var known []*site
	for _, name := range names {
		err := nameable(name)
		if f.o.Ask && (name == askPath || name == linkPath) {
			err = errors.New("its address is that of the questions or of their links; rename the file")
		}
		if err != nil {
			f.say(slog.LevelError, name, "the site is not served", "error", err.Error())
			continue
		}
		here[name] = true
		s := f.sites[name]
		if s == nil {
			s = newSite(name)
			f.sites[name] = s
			f.dirty.Store(true)
		}
		if s.gone = false; s.shown.Load() == nil {
			todo = append(todo, s)
		} else {
			known = append(known, s)
		}
	}
	for i := range min(perRound, len(known)) {
		todo = append(todo, known[(f.next+i)%len(known)])
	}
	f.next += perRound
	for name, s := range f.sites {
		if here[name] {
			continue
		}
		// Editors that save by delete and create leave a moment without the
		// file, so a site goes when it was missing twice.
		if s.gone {
			delete(f.sites, name)
			f.dirty.Store(true)
			f.o.Log.Info("the site file is gone", "site", s.logName())
		}
		s.gone = true
	}
	return todo
}

// prove plans the sites whose newest files were never planned.
func (f *Feed) prove(ctx context.Context, most int) {
	f.mu.Lock()
	var todo []*site
	for _, s := range inOrder(f.sites) {
		if s.unproven.Load() {
			todo = append(todo, s)
		}
	}
	f.mu.Unlock()
	each(todo, most, func(s *site) {
		if ctx.Err() != nil || s.take(ctx) != nil {
			return
		}
		defer s.release()
		if s.unproven.Load() {
			f.make(ctx, s, "") // has logged its error
		}
	})
}

// relist brings table and index up to date.
func (f *Feed) relist() error {
	if !f.dirty.Swap(false) {
		return nil
	}
	f.mu.Lock()
	defer f.mu.Unlock()
	return f.list()
}

// tell logs how the reading of a site went.
func (f *Feed) tell(s *site, r *reading, good bool) {
	if r.fault != nil {
		f.fault(s.name, r.fault)
	}
	switch {
	case r.program != nil:
		f.o.Log.Info("planned", "site", s.logName(), "jobs", len(r.program.Entries))
	case good:
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
