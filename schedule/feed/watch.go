package feed

import (
	"context"
	"fmt"
	"log/slog"
	"runtime"
	"sync"
	"sync/atomic"
	"time"

	"swardbook/schedule"
)

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
	r := read(f.o.Sites, s.name, now, f.o.Plan)
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
	if r.fault != nil {
		f.fault(s.name, r.fault)
	}
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
