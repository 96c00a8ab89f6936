package schedule

import (
	"fmt"
	"runtime/debug"
)

// Planner makes the program of a site; plan.Program is the one there is. Whoever
// plans many sites takes it as a value, so that a test can hand in a bad one.
type Planner func(site *Site, book []Done, last Date) (*Program, error)

// Fault is the error of a program that panicked. The fault is the program's
// own; the files only showed it.
type Fault struct {
	What  string // what the panic said
	Trace string // where
}

func (f *Fault) Error() string {
	return "swardbook has a fault that these files show, so they cannot be planned: " + f.What + "; please report it together with them"
}

// Guarded runs f, and makes a [Fault] of a panic in it, so that one site's
// panic ends the turn of that site and no other.
func Guarded(f func() error) (err error) {
	defer func() {
		if v := recover(); v != nil {
			err = &Fault{fmt.Sprint(v), string(debug.Stack())}
		}
	}()
	return f()
}
