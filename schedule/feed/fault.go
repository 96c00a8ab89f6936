package feed

import (
	"errors"
	"maps"
	"slices"

	"swardbook/schedule"
)

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
