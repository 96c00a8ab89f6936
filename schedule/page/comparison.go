package page

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"swardbook/schedule"
	"swardbook/schedule/word"
)

// Variant is one of the programs to compare: the label says what was varied,
// such as "seeded 2026-08-24" or a file's name.
type Variant struct {
	Label   string
	Program *schedule.Program
}

// comparisonView is several programs on one axis of time.
type comparisonView struct {
	head
	For, Span string
	Figure    figure
	Jobs      []comparedJob
	Left      []comparedJob
	Changes   []comparedChange
}

// comparedJob is one job in each of the programs.
type comparedJob struct {
	Name string
	Rows []comparedRow
}

type comparedRow struct{ Label, Day, What string }

// comparedChange is what differs from the first program.
type comparedChange struct {
	Label, From string
	Lines       []string
}

// Comparison writes programs under each other on one axis of time, then job by
// job, then what changed against the first. Their places may differ, their
// times should overlap. It needs at least two.
func Comparison(programs []Variant, o Options) ([]byte, error) {
	if len(programs) < 2 {
		return nil, errors.New("page: a comparison needs at least two programs")
	}
	programs = slices.Clone(programs)
	for i := range programs {
		p, err := o.view(programs[i].Program)
		if err != nil {
			return nil, err
		}
		programs[i].Program = p
	}
	first := programs[0].Program
	from, through := first.Start, first.Through
	for _, v := range programs[1:] {
		from, through = schedule.Earlier(from, v.Program.Start), schedule.Later(through, v.Program.Through)
	}
	b := &sheetBuilder{p: first, o: o}
	v := &comparisonView{head: newHead(first.Title + ": programs compared"), For: b.forWhom(), Span: span(from, through)}
	v.Figure = drawPrograms(programs, timeline{from: from, to: through})
	v.Jobs, v.Left = comparedJobs(programs)
	for _, is := range programs[1:] {
		c := comparedChange{Label: is.Label, From: programs[0].Label}
		for _, d := range schedule.Compare(first, is.Program) {
			c.Lines = append(c.Lines, word.Capital(named(first, named(is.Program, d.ID)))+": "+d.What+", "+d.Text)
		}
		v.Changes = append(v.Changes, c)
	}
	return render("comparison.html", v)
}

// comparedJobs gathers every job by its id, in the order of its first day.
func comparedJobs(programs []Variant) (jobs, left []comparedJob) {
	type key struct {
		id string
		on schedule.Date
	}
	var keys []key
	for _, v := range programs {
		for _, e := range v.Program.Entries {
			i := slices.IndexFunc(keys, func(k key) bool { return k.id == e.ID })
			if i < 0 {
				keys = append(keys, key{e.ID, e.Date})
			} else {
				keys[i].on = schedule.Earlier(keys[i].on, e.Date)
			}
		}
	}
	slices.SortStableFunc(keys, func(a, b key) int { return cmp.Or(a.on.Compare(b.on), cmp.Compare(a.id, b.id)) })
	for _, k := range keys {
		job := comparedJob{}
		for _, v := range programs {
			row := comparedRow{v.Label, "not in it", ""}
			for i := range v.Program.Entries {
				if e := &v.Program.Entries[i]; e.ID == k.id {
					row.Day, row.What = e.Date.Words(), e.Summary
					job.Name = word.Capital(nameOf(e))
				}
			}
			for _, l := range v.Program.LeftOut {
				if l.ID == k.id {
					row.Day, row.What = "left out", l.Reason
				}
			}
			job.Rows = append(job.Rows, row)
		}
		jobs = append(jobs, job)
	}
	for _, v := range programs {
		for _, l := range v.Program.LeftOut {
			if slices.ContainsFunc(keys, func(k key) bool { return k.id == l.ID }) {
				continue // shown with the jobs, as another program has it
			}
			name := word.Capital(named(v.Program, l.ID))
			i := slices.IndexFunc(left, func(j comparedJob) bool { return j.Name == name })
			if i < 0 {
				left = append(left, comparedJob{Name: name})
				i = len(left) - 1
			}
			left[i].Rows = append(left[i].Rows, comparedRow{v.Label, "left out", l.Reason})
		}
	}
	return jobs, left
}

// The plane of the drawing of several programs: time runs to the right.
const (
	stripsLeft  = 92.0
	stripsRight = 352.0
	stripsTop   = 34.0
	laneHeight  = 15.0
	stripHead   = 20.0
	stripGap    = 12.0
)

// drawPrograms lays the programs under each other: one strip each, with one
// lane for each kind of job.
func drawPrograms(programs []Variant, t timeline) figure {
	var all []*schedule.Program
	for _, v := range programs {
		all = append(all, v.Program)
	}
	lanes := lanesOf(all...)
	t.start = stripsLeft
	t.perDay = (stripsRight - stripsLeft) / float64(t.to.DaysFrom(t.from)+1)
	f := figure{ID: "programs", Title: "Programs under each other on one axis of time", W: yearWidth}
	strip := stripHead + laneHeight*float64(len(lanes)) + stripGap
	f.H = stripsTop + strip*float64(len(programs))
	last := -99.0
	for i, d := range t.months() {
		x := t.at(d)
		if x-last > 24 && x < stripsRight-12 {
			f.word("small", "start", x+1, stripsTop-10, d.Time().Format("Jan"))
			last = x
		}
		if d.Month == 1 || i == 0 {
			f.word("small", "start", x+1, stripsTop-22, fmt.Sprint(d.Year))
		}
	}
	var said []string
	for i, v := range programs {
		y := stripsTop + strip*float64(i)
		f.word("strong", "start", 0, y+13, short(v.Label, 52))
		drawStrip(&f, t, v.Program, lanes, y+stripHead)
		var days []string
		for _, e := range v.Program.Entries {
			if !e.Kind.Notice() {
				days = append(days, e.Kind.Noun()+" on "+e.Date.Short())
			}
		}
		said = append(said, v.Label+": "+strings.Join(days, ", ")+".")
	}
	f.Desc = "Time runs to the right, " + span(t.from, t.to) + ". " + strings.Join(said, " ") + " The table of jobs has the same."
	return f
}

func drawStrip(f *figure, t timeline, p *schedule.Program, lanes []schedule.Kind, top float64) {
	bottom := top + laneHeight*float64(len(lanes))
	for _, d := range t.months() {
		f.line("hair", t.at(d), top, t.at(d), bottom)
	}
	s := p.Season
	if a, z, ok := t.within(s.LastSafe, s.Reopens); ok && s.LastSafe.Before(s.Reopens) && !s.GroundFreeze.Early.IsZero() {
		f.box("closed", a, top, z, bottom)
	}
	for _, d := range []schedule.Date{s.LastSafe, s.Reopens} {
		if t.has(d) {
			f.line("close", t.at(d), top, t.at(d), bottom)
		}
	}
	for i, k := range lanes {
		y := top + laneHeight*(float64(i)+0.5)
		f.word("small", "end", stripsLeft-6, y+4, k.Noun())
		f.line("hair", stripsLeft, y+laneHeight/2, stripsRight, y+laneHeight/2)
		for _, w := range brackets(p, k) {
			if a, z, ok := t.within(w.from, w.to); ok {
				off := y - 5 + 2.5*float64(w.beside%3)
				f.path("window", "M", a, off+3, "v -3 H", z, "v 3")
			}
		}
		for _, e := range p.Entries {
			if e.Kind == k && t.has(e.Date) {
				f.chosen(t.at(e.Date), y+1, e.State)
			}
		}
	}
}

// short cuts a text that would run out of a drawing.
func short(s string, n int) string {
	if r := []rune(s); len(r) > n {
		return string(r[:n-1]) + "…"
	}
	return s
}
