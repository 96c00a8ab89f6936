package flag

import (
	"time"

	"swardbook/schedule"
)

// Today defines --today; see [Day].
func Today(fs *Set) func(now func() time.Time) (schedule.Date, error) { return Day(fs, "today") }

// Day defines a flag for a day, and gives what reads it: without the flag the
// clock is asked, once.
func Day(fs *Set, name string) func(now func() time.Time) (schedule.Date, error) {
	given := fs.String(name, "", "")
	return func(now func() time.Time) (schedule.Date, error) {
		if *given == "" {
			y, m, d := now().Date()
			return schedule.Date{Year: y, Month: m, Day: d}, nil
		}
		d, err := schedule.ParseDate(*given)
		if err != nil {
			return d, Wrong("--%s: %s", name, err)
		}
		return d, nil
	}
}
