package lesson

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"swardbook/schedule"
)

// Lesson is one worksheet with its answers.
type Lesson struct {
	Title   string // "From soil report to dates"
	Site    string
	Area    string
	Set     int    // number of the set; 0: the numbers of the site file
	Per     string // what amounts are for, unless they are "in all"
	Pages   []Page
	Program *schedule.Program
}

// Page is one printed page.
type Page struct{ Topics []Topic }

// Topic is a step on the way from the soil report to the dates, with what is given for
// it.
type Topic struct {
	Title     string
	Given     []Given
	Questions []Question
}

// Given is a table or a list of rules.
type Given struct {
	Title string
	Head  []string   // of a table
	Rows  [][]string // the first cell names the row
	Rules []string
	Wide  bool // printed over the whole width of the page
	Tall  bool // printed in one column, with two other tables beside it
}

// Question is one task and its way to the answer.
type Question struct {
	N       int
	Title   string // in the key: "The stone"
	Text    string
	Draw    []schedule.Kind // jobs to draw into the place's year
	Steps   []schedule.Reason
	Answers []Answer
}

// Answer is one result under its name.
type Answer struct{ Name, Value string }

// Questions lists all of a lesson, in order.
func (l *Lesson) Questions() []*Question {
	var out []*Question
	for i := range l.Pages {
		for j := range l.Pages[i].Topics {
			t := &l.Pages[i].Topics[j]
			for k := range t.Questions {
				out = append(out, &t.Questions[k])
			}
		}
	}
	return out
}

// Options choose what a lesson holds.
type Options struct {
	Area string // by id; "" the first with a soil report
	Set  int    // the number of the set, printed at the top
	Long bool   // every question, not about eight
}

// How many questions and pages fifty minutes hold.
const (
	classLength = 8 // [common]
	classPages  = 3
)

// ErrNothing says that no question can be asked about an area.
var ErrNothing = errors.New("the program of this area leads to nothing that a worksheet could ask: give it a soil report, or another start")

// Of makes the lesson of one area of a program.
func Of(p *schedule.Program, o Options) (*Lesson, error) {
	if p == nil || p.Site == nil {
		return nil, errors.New("lesson: the program carries no site")
	}
	a := areaFor(p.Site, o.Area)
	if a == nil {
		return nil, fmt.Errorf("there is no area %q", o.Area)
	}
	m := newMaker(p, a)
	asked := m.all()
	if !o.Long {
		asked = m.forClass(asked)
	}
	if len(asked) == 0 {
		return nil, ErrNothing
	}
	l := &Lesson{Title: "From soil report to dates", Site: p.Title, Area: a.Name, Set: o.Set, Per: m.unit("1,000 sq ft", "1 m²"), Program: p}
	if m.young() {
		l.Title += ": a young lawn"
	}
	l.Pages = m.pages(asked)
	for i, q := range l.Questions() {
		q.N = i + 1
	}
	return l, nil
}

// ErrNoSet says that no other numbers lead to the same questions.
var ErrNoSet = errors.New("no other numbers near the site's lead to the same questions: choose another area, or leave --set away")

// areaFor finds the area to teach with: the one named, else the first with a report.
func areaFor(s *schedule.Site, id string) *schedule.Area {
	i := slices.IndexFunc(s.Areas, func(a schedule.Area) bool {
		_, ok := a.Report()
		return id == "" && ok || id == a.ID
	})
	if i < 0 && id == "" {
		i = 0
	}
	if i < 0 || i >= len(s.Areas) {
		return nil
	}
	return &s.Areas[i]
}

// task is a question with what it needs.
type task struct {
	topic  string
	urgent int // the tasks with the lowest figures are chosen first
	given  []Given
	Question
}

// all lists the questions that can be asked, in the order of the worksheet.
func (m *maker) all() []task {
	var out []task
	for _, make := range []func() (task, bool){
		m.levels, m.limits,
		m.aim, m.stone, m.dressings,
		m.year, m.doses, m.product, m.tooMuch,
		m.straight, m.water, m.passes, m.sprayer,
		m.days,
	} {
		if t, ok := make(); ok {
			out = append(out, t)
		}
	}
	return out
}

// forClass takes the most urgent that fit on a class's pages.
func (m *maker) forClass(all []task) []task {
	byUrgency := slices.Clone(all)
	slices.SortStableFunc(byUrgency, func(a, b task) int { return cmp.Compare(a.urgent, b.urgent) })
	var chosen []task
	for _, t := range byUrgency {
		if len(chosen) == classLength {
			break
		}
		more := append(slices.Clone(chosen), t)
		slices.SortStableFunc(more, func(a, b task) int { return cmp.Compare(order(all, a), order(all, b)) })
		if len(m.pages(more)) <= classPages {
			chosen = more
		}
	}
	return chosen
}

// order is the place of a task in the list that all gives.
func order(all []task, t task) int {
	return slices.IndexFunc(all, func(o task) bool { return o.Title == t.Title })
}

// pages lays the tasks out: a topic begins on a new page where it would not end
// on this one.
func (m *maker) pages(tasks []task) []Page {
	var topics []Topic
	given := map[string]bool{}
	for _, t := range tasks {
		if n := len(topics); n == 0 || topics[n-1].Title != t.topic {
			topics = append(topics, Topic{Title: t.topic})
		}
		topic := &topics[len(topics)-1]
		for _, g := range t.given {
			if !given[g.Title] { // once on the sheet is enough
				given[g.Title] = true
				topic.Given = append(topic.Given, g)
			}
		}
		topic.Questions = append(topic.Questions, t.Question)
	}
	if len(topics) > 0 && topics[0].Title == reportTopic {
		topics[0].Given = slices.Concat(m.facts(), topics[0].Given)
	} else {
		topics = slices.Insert(topics, 0, Topic{Title: reportTopic, Given: m.facts()})
	}
	var pages []Page
	room := 0.0
	for _, t := range topics {
		high := t.height()
		if len(pages) == 0 || high > room {
			pages, room = append(pages, Page{}), pageHeight
		}
		room -= high
		pages[len(pages)-1].Topics = append(pages[len(pages)-1].Topics, t)
	}
	return pages
}

// Heights in millimetres of print, rounded up, in the widest of the usual typefaces.
const (
	pageHeight = 238.0
	rowHeight  = 5.2
	headHeight = 10.0 // title and head of a table, or a topic's title
	lineHeight = 4.7
	roomHeight = 18.0 // to write in, at the least
	yearHeight = 42.0
	laneHeight = 10.0
	lineSigns  = 54.0 // letters to a line in half the width
)

// height is what a topic takes in print.
func (t *Topic) height() float64 {
	high := headHeight
	left, right := 0.0, 0.0 // how far down the two columns have come
	for _, g := range t.Given {
		switch h := g.height(); {
		case g.Wide:
			high, left, right = high+max(left, right)+h, 0, 0
		case left <= right:
			left += h
		default:
			right += h
		}
	}
	high += max(left, right)
	for _, q := range t.Questions {
		high += 3 + lineHeight*float64(1+len(q.Text)/int(2*lineSigns))
		if len(q.Draw) > 0 {
			high += yearHeight + laneHeight*float64(len(q.Draw))
		} else {
			high += roomHeight
		}
	}
	return high
}

func (g *Given) height() float64 {
	h := headHeight + rowHeight*float64(len(g.Rows))
	if len(g.Rows) == 0 {
		h = headHeight / 2
	}
	per := lineSigns
	if g.Wide {
		per *= 2
	}
	for _, r := range g.Rules {
		h += lineHeight * float64(1+int(float64(len(r))/per))
	}
	return h
}
