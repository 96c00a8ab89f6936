package door

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"swardbook/agronomy"
	"swardbook/schedule"
	"swardbook/schedule/ask"
	"swardbook/schedule/page"
	"swardbook/schedule/plan"
)

// Door is where the ask page stands.
type Door struct {
	File    string                              // the site file that is written; "" the answers become a link
	Mark    string                              // identifies the content of the file, so that a change by others is noticed; the page carries it along
	Open    func(string) (io.ReadCloser, error) // opens a file that the site file names; nil: there is none
	Action  string                              // where the form is sent
	Planner bool                                // the page plans by itself, in the browser
}

// MarkField is the field in which the page carries the mark of its file.
const MarkField = "form.mark"

// Turn is what somebody typed, and the button that was pressed.
type Turn struct {
	Form  ask.Form
	Press string      // a screen to go on to, "program", "enter", "more-area", "more-bag", "more-line", "less-" and an area; "" none
	At    string      // the screen that was shown, from which "enter" goes on; "" the first
	Was   ask.Answers // the answers that are being changed; nil: none
	Today schedule.Date
	ID    ask.ID             // drawn by lot, for answers that are new
	Wrong []schedule.Problem // what else the door has to say
}

// Next is the result of a turn.
type Next struct {
	Page    []byte      // the questions, to be shown again
	Screen  string      // the screen of them to go to
	Answers ask.Answers // complete and without a fault: nothing is left to ask
	Code    string      // of the link that carries the answers; "" they became none
	Draft   string      // of a link from which the same page can be made again; "" none can
}

// Press takes the turn. The answers come back complete if "program" was pressed and
// nothing in them is wrong.
func (d Door) Press(t Turn) (Next, error) {
	if area, less := strings.CutPrefix(t.Press, "less-"); less {
		t.Form, t.Press = without(t.Form, area), "where"
	}
	typed := ask.FromForm(t.Form)
	answers := complete(typed, t.Was, t.Today)
	if answers.Get("id") == "" {
		answers = answers.Set("id", t.ID.String())
	}
	problems := d.problems(answers, t)
	fatal := schedule.Fatal(problems)
	next := Next{Answers: answers, Screen: t.Press}
	if !fatal && (t.Press == "program" || t.Press == "enter") {
		if d.File != "" {
			return next, nil
		}
		var err error
		if next.Code, err = code(answers, t); err == nil {
			return next, nil
		}
		problems = append(problems, schedule.Problem{Message: err.Error()})
	}
	next.Answers = nil
	a := d.asked(t, answers, problems)
	if t.Press == "enter" && fatal {
		t.Press = after(a, t.At)
		next.Screen = t.Press
	}
	switch more, add := strings.CutPrefix(t.Press, "more-"); {
	case t.Press == "program", t.Press == "enter":
		a.Seen, next.Screen = "all", "wrong"
	case add:
		a.Fields = append(a.Fields, another(t.Form, more)...)
		next.Screen = rows[t.Press]
		if a.Seen = next.Screen; more == "area" {
			next.Screen = "grass-" + strings.Split(a.Fields[len(a.Fields)-1].Name, ".")[1]
			a.Seen = before(a, next.Screen)
		}
	default:
		a.Seen = before(a, t.Press)
	}
	if d.File == "" {
		next.Draft = draft(t, typed)
	}
	var err error
	next.Page, err = page.Ask(a)
	return next, err
}

// Form gives the fields of the page with the answers in them.
func (d Door) Form(a ask.Answers) ask.Form {
	f := ask.ToForm(a)
	if d.File == "" && slices.ContainsFunc(a, func(one ask.Answer) bool { return strings.HasPrefix(one.Key, "crew.people.") }) {
		f = append(f, ask.Answer{Key: shareNames, Value: "yes"}) // as they came in the link
	}
	return f
}

// Fill gives the page with the answers in it, for somebody who changes them.
func (d Door) Fill(a ask.Answers, today schedule.Date) ([]byte, error) {
	t := Turn{Form: d.Form(a), Was: a, Today: today}
	problems := d.problems(a, t)
	asked := d.asked(t, a, problems)
	if schedule.Fatal(problems) {
		asked.Seen = "all"
	}
	return page.Ask(asked)
}

// Begin gives the page without an answer.
func (d Door) Begin(today schedule.Date) ([]byte, error) {
	return page.Ask(d.asked(Turn{Today: today}, nil, nil))
}

func (d Door) asked(t Turn, answers ask.Answers, problems []schedule.Problem) page.Asked {
	a := page.Asked{Today: t.Today, Problems: problems, File: d.File, Action: d.Action, Planner: d.Planner,
		Units: ask.Units, Grasses: agronomy.GrassNames()}
	if d.Mark != "" {
		t.Form = t.Form.Set(MarkField, d.Mark)
	}
	for _, f := range t.Form {
		a.Fields = append(a.Fields, page.Field{Name: f.Key, Value: f.Value})
	}
	for _, x := range agronomy.Textures() {
		a.Textures = append(a.Textures, string(x))
	}
	for _, x := range agronomy.Extractants() {
		a.Methods = append(a.Methods, string(x))
	}
	for _, x := range agronomy.BufferMethods() {
		a.Buffers = append(a.Buffers, string(x))
	}
	a.Where, a.LastSafe = understood(answers, t.Today)
	return a
}

// Understood says back which place was meant, and its last safe day; nothing if that
// cannot be told yet.
func Understood(f ask.Form, today schedule.Date) []string {
	where, lastSafe := understood(ask.FromForm(f), today)
	return page.Understood(where, lastSafe)
}

// understood says back which place was meant, and its last safe day, whatever else is
// not answered yet.
func understood(a ask.Answers, today schedule.Date) (where string, lastSafe schedule.Date) {
	few := ask.Answers{{Key: "title", Value: "x"}, {Key: "start", Value: today.String()},
		{Key: "area.x.size", Value: "1000 sq ft"}, {Key: "area.x.grass", Value: "tall fescue"}}
	asked := false
	for _, one := range a {
		if strings.HasPrefix(one.Key, "place.") {
			few, asked = append(few, one), true
		}
	}
	if !asked {
		return "", lastSafe
	}
	site, _, _ := ask.Load(few, nil)
	if site == nil {
		return "", lastSafe
	}
	last, err := plan.Through(site, today)
	if err != nil {
		return "", lastSafe
	}
	p, err := plan.Program(site, nil, last)
	if err != nil {
		return "", lastSafe
	}
	return p.Place.Where, p.Season.LastSafe
}

// complete adds what the page does not ask for: a title, the first day, names for several
// areas, and the day on which the laboratory's answer came. A report that was not there
// before counts as received on the day on which it is typed: what was planned until then
// was planned without it. One that was there keeps the day that it has, or the usual one.
func complete(a, was ask.Answers, today schedule.Date) ask.Answers {
	if a.Get("title") == "" {
		a = a.Set("title", "My lawn")
	}
	if a.Get("start") == "" {
		a = a.Set("start", today.String())
	}
	areas := a.Names("area")
	for i, area := range areas {
		if len(areas) > 1 && a.Get("area."+area+".name") == "" && (area == page.FirstArea || area == page.FirstArea+strconv.Itoa(i+1)) {
			a = a.Set("area."+area+".name", strings.TrimSuffix(fmt.Sprintf("Lawn %d", i+1), " 1"))
		}
		soil := "area." + area + ".soil."
		if was.Get(soil+"sampled") == a.Get(soil+"sampled") {
			continue
		}
		received := ""
		if sampled, err := schedule.ParseDate(a.Get(soil + "sampled")); err == nil && !sampled.After(today) {
			received = today.String()
		}
		a = a.Set(soil+"received", received)
	}
	return a
}

// rows gives, for each button that adds a row, the screen on which the row stands.
var rows = map[string]string{"more-bag": "shed", "more-line": "already"}

// another gives the field of one more, empty row; for a second area, the fields of both.
func another(f ask.Form, what string) []page.Field {
	table, stem, field := "material", "bag", "kind"
	switch what {
	case "line":
		table, stem, field = "record", "", "material"
	case "area":
		table, stem, field = "area", page.FirstArea, "size"
	}
	var out []page.Field
	for n := 1; ; n++ {
		row := stem + strconv.Itoa(n)
		if row == page.FirstArea+"1" {
			row = page.FirstArea
		}
		there := slices.ContainsFunc(f, func(one ask.Answer) bool {
			return strings.HasPrefix(strings.TrimPrefix(one.Key, "form."), table+"."+row+".")
		})
		if !there {
			out = append(out, page.Field{Name: table + "." + row + "." + field})
		}
		if !there && (what != "area" || n > 1) {
			return out
		}
	}
}

// without takes an area out of the form.
func without(f ask.Form, area string) ask.Form {
	return slices.DeleteFunc(slices.Clone(f), func(one ask.Answer) bool {
		return strings.HasPrefix(strings.TrimPrefix(one.Key, "form."), "area."+area+".")
	})
}

// before and after give the screen before one and the screen after it; "" if there is
// none.
func before(a page.Asked, screen string) string {
	order := page.Screens(a)
	if i := slices.Index(order, screen); i > 0 {
		return order[i-1]
	}
	return ""
}

func after(a page.Asked, screen string) string {
	order := page.Screens(a)
	screen = cmp.Or(rows[screen], screen)
	switch i := slices.Index(order, screen); {
	case i < 0:
		return order[1]
	case i+1 < len(order):
		return order[i+1]
	}
	return "program"
}
