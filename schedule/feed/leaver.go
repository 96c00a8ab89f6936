package feed

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"slices"
	"strings"

	"swardbook/schedule"
	"swardbook/schedule/ical"
)

// errOver is the error of the calendar of a person or an area that has left the site, when
// its time to tell so is over.
var errOver = fmt.Errorf("%w any more", errNoFile)

// partOf reads a path as the calendar of a person or an area.
func partOf(path string) (o ical.Options, ok bool) {
	folder, name, _ := strings.Cut(path, "/")
	id, ics := strings.CutSuffix(name, ".ics")
	if !ics || id == "" || strings.ContainsAny(id, `/\.`) {
		return o, false
	}
	switch folder {
	case "person":
		o.Person = id
	case "area":
		o.Area = id
	default:
		return o, false
	}
	return o, true
}

// left lists the calendars of persons and areas in a folder that are not among
// the parts of the site, in order.
func left(folder *os.Root, site string, parts []string) []string {
	var out []string
	for _, dir := range []string{"person", "area"} {
		d, err := folder.Open(site + "/" + dir)
		if err != nil {
			continue // what cannot be listed is not served, and not called old
		}
		all, _ := d.ReadDir(-1)
		d.Close()
		for _, e := range all {
			path := dir + "/" + e.Name()
			if _, ok := partOf(path); ok && e.Type().IsRegular() && !slices.Contains(parts, path) {
				out = append(out, path)
			}
		}
	}
	slices.Sort(out)
	return out
}

// leaver updates the calendar of a person or an area that has left the site. The error is
// errOver when it has nothing left to tell, and errNoFile when there is no such calendar, or
// it is not ours.
func (t *tree) leaver(p *schedule.Program, path string) (file, error) {
	o, ok := partOf(path)
	if _, err := t.old(path); !ok || !ical.Gone(p, o) || errors.Is(err, fs.ErrNotExist) {
		return file{}, errNoFile
	}
	o.Address = t.address(path)
	body, err := t.calendar(p, o, path)
	switch _, foreign := errors.AsType[*ical.Refused](err); {
	case foreign:
		return file{}, errNoFile
	case err == nil && body == nil:
		return file{}, errOver
	}
	return file{path, calendarType, body}, err
}

// forget removes the calendar of a person or an area that has left the site. The caller
// has taken the site, see [site.take].
func (f *Feed) forget(s *site, path string) {
	delete(s.kept, path)
	if f.o.State == nil {
		return
	}
	if err := f.o.State.Remove(s.name + "/" + path); err != nil && !errors.Is(err, fs.ErrNotExist) {
		f.o.Log.Warn("the calendar of somebody gone cannot be removed", "site", s.logName(), "file", path, "error", bare(err).Error())
	}
}

// leavers lists the calendars of persons and areas that have left the site. The caller has
// taken the site.
func (f *Feed) leavers(s *site, n *shown) []string {
	var out []string
	if f.o.State != nil {
		out = left(f.o.State, s.name, n.parts)
	}
	for path := range s.kept {
		if _, ok := partOf(path); ok && !slices.Contains(n.parts, path) && !slices.Contains(out, path) {
			out = append(out, path)
		}
	}
	return out
}
