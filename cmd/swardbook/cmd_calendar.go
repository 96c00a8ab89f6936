package main

import (
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"os"
	"time"

	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule"
	"swardbook/schedule/ical"
)

var calendarCommand = command{
	name: "calendar", args: "FILE",
	what: "the iCalendar file; with -o it updates that file in place",
	help: `    swardbook calendar lawn.toml -o lawn.ics

Writes the program as a calendar. With -o the file that is there is read first:
events that changed are changed in place, jobs that vanished are cancelled, and
a file with nothing to change is not touched. A file that is not this calendar
is refused and left as it is. The file of a person or an area that is no more
turns into cancellations that say whose the jobs are now; after 60 days it is
removed.

        --today DATE    as of DATE (default: today)
        --area ID       jobs in one area
        --for PERSON    jobs of one person
        --kind KIND     jobs of a kind; several with commas
        --address URL   where the calendar will be found, for its own record
    -o, --output FILE   write to FILE
        --strict        exit status 4 if anything was left out
        --no-color      no colour
`,
	setup: func(fs *flag.Set) func(*session, []string) error {
		out := flag.NewOutput(fs, "ics")
		today := flag.Today(fs)
		pick := flag.NewChoice(fs)
		address := fs.String("address", "", "")
		strict := fs.Bool("strict", false, "")
		return func(s *session, args []string) error {
			file, err := one(args, "FILE")
			if err != nil {
				return err
			}
			if u, err := url.Parse(*address); *address != "" && (err != nil || u.Host == "" || u.Scheme != "http" && u.Scheme != "https") {
				return misuse("--address: %q is no web address; write it as https://example.org/lawn.ics", *address)
			}
			day, err := today(s.now)
			if err != nil {
				return err
			}
			l, p, err := s.plan(file, day)
			if err != nil {
				return err
			}
			kinds, err := pick.Kinds()
			if err != nil {
				return err
			}
			o := ical.Options{Area: pick.Area, Person: pick.Person, Kinds: kinds, Address: *address}
			_, unknown := pick.Apply(p) // only checks the names: package ical cuts the program
			at := s.now()
			if fs.Changed("today") {
				at = day.Time()
			}
			err = s.calendar(p.AsOf(day), o, out.File, at, l.inputs())
			_, refused := errors.AsType[*ical.Refused](err)
			_, unwritable := errors.AsType[*ical.Unwritable](err)
			if unknown != nil && (refused || unwritable) {
				return unknown // a person or area that is gone still has a file to cancel; this name has none
			}
			if err != nil {
				return err
			}
			return strictly(*strict, p)
		}
	},
}

// mostCalendar is how many bytes of a calendar are read: one more than package ical
// accepts, so that it refuses a larger file.
const mostCalendar = 8<<20 + 1

// calendar writes a calendar; the events of a file that is there already are updated or
// cancelled.
func (s *session) calendar(p *schedule.Program, o ical.Options, file string, at time.Time, inputs []string) error {
	if file != "" && file != "-" {
		if err := notInput(file, inputs); err != nil {
			return err
		}
		info, err := os.Stat(file)
		switch {
		case err == nil && info.Mode().IsRegular(): // a device or a pipe is only written to
			old, err := s.readUpTo(file, mostCalendar)
			if err != nil {
				return err
			}
			return s.updateCalendar(file, old, p, o, at)
		case err != nil && !errors.Is(err, fs.ErrNotExist):
			return fmt.Errorf("could not read %s: %w", file, bare(err))
		}
	}
	data, err := ical.Write(p, o, at)
	if err != nil {
		return err
	}
	if err := s.write(file, data, inputs...); err != nil || file == "" || file == "-" {
		return err
	}
	return s.print(file + ": written\n")
}

func (s *session) updateCalendar(file string, old []byte, p *schedule.Program, o ical.Options, at time.Time) error {
	data, changes, err := ical.Update(old, p, o, at)
	if err != nil {
		return fmt.Errorf("%s: %w", file, err)
	}
	if data == nil {
		if err := os.Remove(file); err != nil {
			return fmt.Errorf("could not remove %s: %w", file, bare(err))
		}
		return s.print(file + ": removed: its person or area is no more, and nothing is left to tell\n")
	}
	changed, err := replaceFile(file, data)
	if err != nil {
		return err
	}
	if !changed {
		return s.print(file + ": nothing changed\n")
	}
	for _, part := range []struct {
		what  string
		items []string
	}{{"new", changes.Added}, {"changed", changes.Changed}, {"cancelled", changes.Cancelled}, {"back", changes.Restored}, {"past, dropped", changes.Dropped}} {
		for _, item := range part.items {
			if err := s.print(part.what + ": " + item + "\n"); err != nil {
				return err
			}
		}
	}
	return nil
}
