package page

import (
	"errors"
	"fmt"
	"slices"

	"swardbook/schedule"
	"swardbook/schedule/word"
)

// Variant is one of the programs to compare: the label says what was varied,
// such as "seeded 2026-08-24" or a file's name.
type Variant struct {
	Label   string
	Program *schedule.Program
	Note    string // what is to be said of it, such as that the varied key decides nothing; "" none
}

// comparisonView is several programs: what follows from each, then each drawn
// on one axis of time.
type comparisonView struct {
	head
	For, Span    string
	Labels       []string
	Consequences []consequence
	Changes      []comparedChange
	Strips       []strip
	Key          []keyMark
	Jobs         []comparedJob
	Left         []comparedJob
}

// strip is the drawing of one program.
type strip struct {
	Label string
	Drawn sizes
}

// comparedChange is what differs from the first program.
type comparedChange struct {
	Label, From, Note string
	Lines             []string
}

// Comparison writes first what follows from each of several programs and what
// changed against the first, then draws them on one axis of time, and last goes
// job by job. Their places may differ, their times should overlap. It needs at
// least two.
func Comparison(programs []Variant, o Options) ([]byte, error) {
	if len(programs) < 2 {
		return nil, errors.New("page: a comparison needs at least two programs")
	}
	programs = slices.Clone(programs)
	var all []*schedule.Program
	for i := range programs {
		p, err := o.view(programs[i].Program)
		if err != nil {
			return nil, err
		}
		programs[i].Program = p
		all = append(all, p)
	}
	first := programs[0].Program
	from, through := first.Start, first.Through
	for _, p := range all[1:] {
		from, through = schedule.Earlier(from, p.Start), schedule.Later(through, p.Through)
	}
	b := &sheetBuilder{p: first, o: o}
	v := &comparisonView{head: newHead(first.Title + ": programs compared"), For: b.forWhom(), Span: span(from, through)}
	v.Consequences = consequences(programs)
	v.Jobs, v.Left = comparedJobs(programs)
	lanes, used := lanesOf(all...), marks(0)
	for i, is := range programs {
		v.Labels = append(v.Labels, is.Label)
		s := scene{program: is.Program, from: from, to: through, how: asPlanned, lanes: lanes, measure: word.Measure{Metric: is.Program.Metric}}
		one := strip{Label: is.Label}
		var m marks
		one.Drawn, m = s.drawn(fmt.Sprintf("program-%d", i+1), is.Label, describeProgram(is.Program))
		used |= m
		v.Strips = append(v.Strips, one)
		if i == 0 {
			continue
		}
		c := comparedChange{Label: is.Label, From: programs[0].Label, Note: is.Note}
		for _, d := range schedule.Compare(first, is.Program) {
			c.Lines = append(c.Lines, word.Capital(named(first, named(is.Program, d.ID)))+": "+d.What+", "+d.Text)
		}
		v.Changes = append(v.Changes, c)
	}
	v.Key = key(used, false, false)
	return render("comparison.html", v)
}

// asPlanned is the mark of a job in a program that is looked at on no day in particular.
func asPlanned(e *schedule.Entry) marks {
	switch e.State {
	case schedule.Finished:
		return done
	case schedule.Missed:
		return missed
	}
	return chosen
}
