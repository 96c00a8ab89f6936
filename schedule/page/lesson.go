package page

import (
	"fmt"
	"html/template"
	"strings"

	"swardbook/schedule"
	"swardbook/schedule/lesson"
	"swardbook/schedule/word"
)

// lessonView is worksheets for a class, or the key to them.
type lessonView struct {
	head
	Many    bool // more than one set of numbers
	Lessons []worksheetView
	Key     []answerView
	Tables  []lesson.Given // of all sets
	Sources []source
}

// worksheetView is one student's pages.
type worksheetView struct {
	*lesson.Lesson
	Sub   string
	drawn map[int]sizes
}

// Year is the empty drawing of a question.
func (v worksheetView) Year(n int) []template.HTML {
	d := v.drawn[n]
	if d.Wide == nil {
		return nil
	}
	return []template.HTML{d.Narrow.HTML(), d.Wide.HTML()}
}

// Drawing names the drawing of a question, for those who move through the page.
func (v worksheetView) Drawing(n int) string {
	if v.Set > 0 {
		return fmt.Sprintf("Drawing of question %d, set %d", n, v.Set)
	}
	return fmt.Sprintf("Drawing of question %d", n)
}

// answerView is one question worked.
type answerView struct {
	N              int
	Title, Results string
	Steps          []cited
}

// Lesson writes worksheets as one HTML file, one set of numbers after the other,
// with room to answer.
func Lesson(sets []*lesson.Lesson) ([]byte, error) {
	if len(sets) == 0 {
		return nil, lesson.ErrNothing
	}
	v := &lessonView{head: newHead(sets[0].Site + ": worksheet"), Many: len(sets) > 1}
	for _, l := range sets {
		w := worksheetView{Lesson: l, Sub: underTitle(l), drawn: map[int]sizes{}}
		for _, q := range l.Questions() {
			if len(q.Draw) == 0 {
				continue
			}
			s, err := emptyYear(l, q)
			if err != nil {
				return nil, err
			}
			w.drawn[q.N] = s
		}
		v.Lessons = append(v.Lessons, w)
	}
	return render("lesson.html", v)
}

// LessonKey writes the key to worksheets: the first set worked step by step with
// its sources, and the results of all sets where there are several.
func LessonKey(sets []*lesson.Lesson) ([]byte, error) {
	v, err := newKey(sets)
	if err != nil {
		return nil, err
	}
	return render("key.html", v)
}

func newKey(sets []*lesson.Lesson) (*lessonView, error) {
	if len(sets) == 0 {
		return nil, lesson.ErrNothing
	}
	v := &lessonView{head: newHead(sets[0].Site + ": key to the worksheet"), Many: len(sets) > 1}
	first := sets[0]
	v.Lessons = []worksheetView{{Lesson: first, Sub: underTitle(first)}}
	cite := newCitations()
	for _, q := range first.Questions() {
		a := answerView{N: q.N, Title: q.Title, Steps: cite.reasons(q.Steps)}
		var results []string
		for _, r := range q.Answers {
			results = append(results, r.Name+": "+r.Value)
		}
		a.Results = strings.Join(results, " · ")
		v.Key = append(v.Key, a)
	}
	if v.Many {
		v.Tables = lesson.Results(sets)
	}
	v.Sources = cite.list
	return v, nil
}

// underTitle says what a worksheet is about.
func underTitle(l *lesson.Lesson) string {
	out := l.Site + ", " + l.Area + "."
	if l.Set > 0 {
		out = fmt.Sprintf("Set %d. ", l.Set) + out
	}
	return out + fmt.Sprintf(" Amounts are for %s unless “in all”; three figures are enough.", l.Per)
}

// laneToDraw is the room of an empty lane.
const laneToDraw = 40.0

// emptyYear is the place's year with empty lanes.
func emptyYear(l *lesson.Lesson, q *lesson.Question) (sizes, error) {
	year, err := l.Program.Year()
	if err != nil {
		return sizes{}, err
	}
	p := *l.Program
	p.Entries = nil
	from := schedule.Date{Year: p.Start.Year, Month: p.Start.Month, Day: 1} // whole months have their names over them
	s := scene{program: &p, from: from, to: schedule.Earlier(p.Through, from.AddMonths(12)), lanes: q.Draw, blank: laneToDraw,
		year: year, measure: word.Measure{Metric: p.Metric}}
	for _, a := range p.Site.Areas {
		if a.Name == l.Area {
			s.seasons = append(s.seasons[:0], a.Stand.Season())
		}
	}
	out, _ := s.drawn(fmt.Sprintf("year-%d-%d", l.Set, q.N), "The year of the place", "Growth, soil temperature, freezes and closed ground, with room to draw in.")
	return out, nil
}
