package feed

import (
	"context"
	"errors"
	"fmt"
	"maps"
	"slices"
	"time"

	"swardbook/schedule"
)

// Limits of a turn, which is the planning and writing of one site.
const (
	turnTime  = 30 * time.Second       // after it, a turn is given up // [common]
	shareTime = 500 * time.Millisecond // after it, others no longer wait for a turn to end // [common]
	waitTime  = 10 * time.Second       // so long a request waits for a turn // [common]
)

// errBusy is the error of a request that waited too long for its turn.
var errBusy = errors.New("too many programs are being made at this moment")

// took is the result of a turn.
type took[T any] struct {
	value T
	err   error
}

// aside runs f on a goroutine of its own.
func aside(f func()) { go f() }

// lane runs one turn after another on one goroutine, whose stack need not grow anew for each.
type lane struct{ work chan func() }

func (l *lane) run(f func()) {
	if l.work == nil {
		l.work = make(chan func())
		go func(work <-chan func()) {
			for f := range work {
				f()
			}
		}(l.work)
	}
	l.work <- f
}

// leave gives the goroutine up, which ends with its turn; the next turn has another.
func (l *lane) leave() {
	if l.work != nil {
		close(l.work)
		l.work = nil
	}
}

// begin runs f beside the caller. A panic becomes a [schedule.Fault].
func begin[T any](run func(func()), f func() (T, error)) <-chan took[T] {
	end := make(chan took[T], 1)
	run(func() {
		var t took[T]
		t.err = schedule.Guarded(func() (err error) {
			t.value, err = f()
			return err
		})
		end <- t
	})
	return end
}

// bounded runs f, and gives it up when its time is over. What was given up goes
// on by itself, as nothing in Go can end it, but nobody looks at its value; so
// f must change nothing that others see.
func bounded[T any](limit time.Duration, run func(func()), f func() (T, error)) (T, error) {
	if limit == 0 {
		limit = turnTime
	}
	over := time.NewTimer(limit)
	defer over.Stop()
	select {
	case t := <-begin(run, f):
		return t.value, t.err
	case <-over.C:
		var none T
		return none, &schedule.Fault{What: fmt.Sprintf("no end after %v", limit)}
	}
}

// inTurn is bounded for a feed, which makes only so many programs at once. One
// that takes long makes room for others, so that a few that never end do not
// stop them all.
func inTurn[T any](ctx context.Context, f *Feed, work func() (T, error)) (T, error) {
	var none T
	ctx, cancel := context.WithTimeout(ctx, waitTime)
	defer cancel()
	select {
	case f.turns <- struct{}{}:
	case <-ctx.Done():
		return none, errBusy
	}
	late := time.AfterFunc(shareTime, func() { <-f.turns })
	v, err := bounded(f.o.Turn, aside, work)
	if late.Stop() {
		<-f.turns
	}
	return v, err
}

// take waits until nobody else has the site, and takes it.
func (s *site) take(ctx context.Context) error {
	select {
	case s.turn <- struct{}{}:
		return nil
	default:
	}
	ctx, cancel := context.WithTimeout(ctx, waitTime)
	defer cancel()
	select {
	case s.turn <- struct{}{}:
		return nil
	case <-ctx.Done():
		return errBusy
	}
}

// tryTake takes the site if nobody has it.
func (s *site) tryTake() bool {
	select {
	case s.turn <- struct{}{}:
		return true
	default:
		return false
	}
}

func (s *site) release() { <-s.turn }

func isFault(err error) bool {
	_, ok := errors.AsType[*schedule.Fault](err)
	return ok
}

// fault logs a panic with the place where it happened, and remembers the site.
// Other errors are no concern of it.
func (f *Feed) fault(name string, err error) {
	fault, ok := errors.AsType[*schedule.Fault](err)
	if !ok {
		return
	}
	f.o.Log.Error("the program has a fault that this site shows", "site", name, "fault", fault.What, "trace", fault.Trace)
	f.faultMu.Lock()
	defer f.faultMu.Unlock()
	f.faulty[name] = true
}

// Faulty lists the sites with which the program panicked since it began.
func (f *Feed) Faulty() []string {
	f.faultMu.Lock()
	defer f.faultMu.Unlock()
	return slices.Sorted(maps.Keys(f.faulty))
}
