package sitefile

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// row is one line of the book, its cells by column.
type row struct {
	*book
	line  int
	cells map[string]string
}

func (w row) wrong(column, message, hint string) {
	w.report(schedule.Problem{Line: w.line, Key: column, Message: message, Hint: hint})
}

func (w row) doubt(column, message, hint string) {
	w.report(schedule.Problem{Line: w.line, Key: column, Message: message, Hint: hint, Warning: true})
}

func (w row) date() schedule.Date {
	s := w.cells["date"]
	d, err := schedule.ParseDate(s)
	switch {
	case s == "":
		w.wrong("date", "is missing", "the day it was done, like 2026-09-19")
	case err != nil:
		w.wrong("date", fmt.Sprintf("%q is not a date", s), dateHint(s))
	case d.Year < firstYear || d.Year > lastYear:
		w.wrong("date", fmt.Sprintf("the year %d is not believable", d.Year), fmt.Sprintf("give a day from %d to %d", firstYear, lastYear))
	default:
		return d
	}
	return schedule.Date{}
}

// dateHint knows the forms in which spreadsheets write dates.
func dateHint(s string) string {
	const hint = "write it as 2026-09-19; in a spreadsheet, format the column as text"
	parts := strings.FieldsFunc(s, func(c rune) bool { return c == '/' || c == '.' || c == '-' })
	if len(parts) != 3 || len(parts[2]) != 4 {
		return hint
	}
	a, errA := strconv.Atoi(parts[0])
	b, errB := strconv.Atoi(parts[1])
	if errA != nil || errB != nil || a < 1 || b < 1 || a > 31 || b > 31 || a > 12 && b > 12 {
		return hint
	}
	monthFirst, dayFirst := fmt.Sprintf("%s-%02d-%02d", parts[2], a, b), fmt.Sprintf("%s-%02d-%02d", parts[2], b, a)
	switch {
	case a > 12:
		return "did you mean " + dayFirst + "? " + hint
	case b > 12 || a == b:
		return "did you mean " + monthFirst + "? " + hint
	}
	return "did you mean " + monthFirst + " or " + dayFirst + "? " + hint
}

// job reads the area and the job, and gives the job's whole id if it has a
// number, else its kind.
func (w row) job() (area, job string) {
	s := w.cells["job"]
	area = w.cells["area"]
	if kind := w.cells["kind"]; s == "" && kind != "" {
		s = kind
		if season, n := w.cells["season"], w.cells["n"]; season != "" || n != "" {
			s += "/" + season + "-" + n
			if _, _, _, _, err := schedule.JobName(s); err != nil {
				w.wrong("season", fmt.Sprintf("season %q and number %q name no job", season, n), "the year in which the season begins, like 2026, and a number such as 1; leave both empty if you do not know")
				return area, ""
			}
		}
	}
	if s == "" {
		w.wrong("job", "is missing", "a kind of job or an id, like lime or east/lime/2026-1")
		return area, ""
	}
	idArea, kind, season, n, err := schedule.JobName(s)
	if err != nil {
		hint := "like lime, lime/2026-1 or east/lime/2026-1"
		parts := strings.Split(s, "/")
		name := parts[(len(parts)-1)/2] // the kind in lime, lime/1 and east/lime/1
		if _, known := schedule.KindNamed(name); !known && len(parts) <= 3 {
			hint = suggest(name, kindNames())
		}
		w.wrong("job", plain(err.Error()), hint)
		return area, ""
	}
	if kind.Notice() {
		w.wrong("job", fmt.Sprintf("%s marks a day; there is nothing to do and nothing to record", kind), "remove the line")
	}
	if n > maxNumber {
		w.wrong("job", fmt.Sprintf("number %d: a season has no more than %d days", n, maxNumber), "leave season and number empty, and the line finds its job by the day")
	}
	if area != "" && idArea != "" && area != idArea {
		w.wrong("area", fmt.Sprintf("%q is not the area of job %s", area, s), "leave the area empty, or mend one of the two")
	}
	if idArea != "" {
		area = idArea
	}
	if w.site != nil {
		ids := areaIDs(w.site)
		switch {
		case area == "" && len(ids) == 1:
			area = ids[0]
		case area == "":
			w.wrong("area", "is missing", "one of: "+strings.Join(ids, ", "))
		case !slices.Contains(ids, area):
			w.wrong("area", fmt.Sprintf("unknown area %q", area), suggest(area, ids))
		}
	}
	switch {
	case season > 0:
		return area, schedule.JobID(area, kind, season, n)
	case n > 0: // a numbered job in an older book
		return area, fmt.Sprintf("%s/%s/%d", area, kind, n)
	}
	return area, kind.String()
}

func kindNames() []string {
	var out []string
	for _, k := range schedule.Kinds() {
		if !k.Notice() {
			out = append(out, k.String())
		}
	}
	return out
}

// material reads the name of the material and looks it up. It gives nil if the line names
// none, if there is no site, or if the site has no such material; that is a problem unless
// the line itself says what the bag held.
func (w row) material(d *schedule.Done) *material.Material {
	d.Material = w.cells["material"]
	if d.Material == "" || w.site == nil {
		return nil
	}
	if m := w.bags[d.Material]; m != nil {
		return m
	}
	if w.cells["analysis"] != "" || w.cells["lime_value"] != "" {
		return nil
	}
	var ids []string
	for _, m := range append(slices.Clone(w.site.Materials), material.TradeMaterials()...) {
		ids = append(ids, m.ID)
	}
	w.wrong("material", fmt.Sprintf("unknown material %q", d.Material), suggest(d.Material, ids)+" What is not in the site file goes there first, as [material.NAME]")
	return nil
}

// plausible compares a line with the site's program and with the lines before.
func (w row) plausible(d schedule.Done) {
	named := strings.Contains(d.Job, "/")
	switch {
	case d.Date.Before(w.site.Start) && !named && !d.Missed && spreads(d.Job) && (d.AsPlanned || d.Material == ""):
		w.wrong("material", "before the program starts nothing is planned, so the line must say what went down", "give the material and the amount")
	case !w.site.Through.IsZero() && d.Date.After(w.site.Through):
		w.doubt("date", fmt.Sprintf("is after the program ends, %s", w.site.Through), "is the year right?")
	}
	if numbered(d.Job) || d.Missed && named {
		return
	}
	same := d
	same.Line, same.By, same.Note, same.Content = 0, "", "", nil
	if line, ok := w.seen[same]; ok {
		w.doubt("job", fmt.Sprintf("the same as line %d", line), "if it was done once, remove one of the two")
	}
	w.seen[same] = d.Line
}

// spreads tells whether a job is of a kind that puts a material down.
func spreads(job string) bool {
	k, ok := schedule.KindNamed(job)
	return ok && k.Spreads()
}
