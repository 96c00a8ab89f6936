package door

import (
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
	File    string // the site file that is written; "" the answers become a link
	Action  string // where the form is sent
	Planner bool   // the page plans by itself, in the browser
}

// Turn is what somebody typed, and the button that was pressed.
type Turn struct {
	Form  ask.Form
	Press string // a screen to go on to, "program", "enter", "more-bag", "more-line"; "" none
	Today schedule.Date
	ID    ask.ID // drawn by lot, for answers that have none
}

// Next is what comes of a turn.
type Next struct {
	Page    []byte      // the questions, to be shown again
	Screen  string      // the screen of them to go to
	Answers ask.Answers // complete and without a fault: nothing is left to ask
	Code    string      // of the link that carries the answers; "" they became none
	Left    []string    // what the link does not carry
	Draft   bool        // the page can be made again from the answers alone
}

// Press takes the turn. The answers come back complete if "program" was pressed and
// nothing in them is wrong.
func (d Door) Press(t Turn) (Next, error) {
	typed := ask.FromForm(t.Form)
	answers := complete(typed, t.Today)
	last := t.Press == "program" || t.Press == "enter"
	_, _, problems := ask.Load(answers, nil)
	next := Next{Answers: answers, Screen: t.Press}
	if last && !schedule.Fatal(problems) {
		if d.File != "" {
			return next, nil
		}
		var err error
		next.Code, next.Left, err = Code(answers, t.Form.Get("form.share") == "yes", t.ID)
		if err == nil {
			return next, nil
		}
		problems = append(problems, schedule.Problem{Message: err.Error()})
	}
	next.Answers = nil
	a := d.asked(t, answers, problems)
	switch more, add := strings.CutPrefix(t.Press, "more-"); {
	case last:
		a.Seen, next.Screen = "all", "wrong"
	case add:
		next.Screen = map[string]string{"bag": "shed", "line": "already"}[more]
		a.Seen = next.Screen
		a.Fields = append(a.Fields, another(t.Form, more))
	default:
		a.Seen = before(a, t.Press)
	}
	var err error
	next.Page, err = page.Ask(a)
	next.Draft = kept(t.Form, typed)
	return next, err
}

// Fill gives the page with the answers in it, for somebody who changes them.
func (d Door) Fill(a ask.Answers, today schedule.Date) ([]byte, error) {
	t := Turn{Form: ask.ToForm(a), Today: today}
	_, _, problems := ask.Load(a, nil)
	asked := d.asked(t, a, problems)
	asked.Changes = true
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
	last, err := plan.LastDay(site, today)
	if err != nil {
		return "", lastSafe
	}
	p, err := plan.Program(site, nil, last)
	if err != nil {
		return "", lastSafe
	}
	return p.Place.Where, p.Season.LastSafe
}

// complete adds what the page does not ask for: a title, the first day, and the day on
// which the laboratory's answer came, where it is known to have come early.
func complete(a ask.Answers, today schedule.Date) ask.Answers {
	if a.Get("title") == "" {
		a = a.Set("title", "My lawn")
	}
	if a.Get("start") == "" {
		a = a.Set("start", today.String())
	}
	for _, area := range a.Names("area") {
		soil := "area." + area + ".soil."
		sampled, err := schedule.ParseDate(a.Get(soil + "sampled"))
		if err != nil || a.Get(soil+"received") != "" || a.Get(soil+"ph") == "" {
			continue
		}
		if r := (schedule.SoilReport{Sampled: sampled}); r.Answer().After(today) && !sampled.After(today) {
			a = a.Set(soil+"received", today.String())
		}
	}
	return a
}

// Code gives the code of the link that carries the answers, and says what it leaves out.
func Code(a ask.Answers, people bool, id ask.ID) (code string, left []string, err error) {
	if own, ok := ask.IDOf(a); ok {
		id = own
	}
	shared, left := ask.Share(a, people)
	code, err = ask.Encode(shared, id)
	return code, left, err
}

// kept tells whether the page can be filled again from the answers as it was.
func kept(f ask.Form, a ask.Answers) bool {
	again := ask.ToForm(a)
	return !slices.ContainsFunc(f, func(one ask.Answer) bool {
		value := strings.TrimSpace(one.Value)
		unit := strings.HasSuffix(one.Key, ".unit")
		return value != "" && !unit && again.Get(one.Key) != value && !slices.Contains(again, ask.Answer{Key: one.Key, Value: value})
	})
}

// another is an empty row more.
func another(f ask.Form, what string) page.Field {
	table, stem, field := "material", "bag", "kind"
	if what == "line" {
		table, stem, field = "record", "", "material"
	}
	for n := 1; ; n++ {
		row := stem + strconv.Itoa(n)
		if !slices.ContainsFunc(f, func(one ask.Answer) bool {
			return strings.HasPrefix(strings.TrimPrefix(one.Key, "form."), table+"."+row+".")
		}) {
			return page.Field{Name: table + "." + row + "." + field}
		}
	}
}

// before gives the screen before one: that which was just left.
func before(a page.Asked, screen string) string {
	order := page.Screens(a)
	if i := slices.Index(order, screen); i > 0 {
		return order[i-1]
	}
	return ""
}
