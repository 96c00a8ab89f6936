package page

import (
	"slices"
	"strings"

	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// Field is one field of the ask page: its name, and what stands in it.
type Field struct{ Name, Value string }

// Asked is the ask page as it stands: what was typed, what is wrong with it, what was
// understood, and where it goes from here.
type Asked struct {
	Fields   []Field
	Today    schedule.Date
	Seen     string // problems are told on the screens up to this one; "" none, "all" all
	Problems []schedule.Problem
	Where    string        // the place as understood from the ZIP; "" not yet
	LastSafe schedule.Date // the last safe day there
	File     string        // the site file that is written; "" the answers become a link
	Action   string        // where the form is sent
	Planner  bool          // the page plans in the browser, with the planner from the files beside it
	Units    func(key string) []string
	Grasses, Textures,
	Methods, Buffers []string
}

// askPage is the ask page as its template reads it.
type askPage struct {
	head
	Asked
	Screens []askScreen
	Wrong   []askWrong // problems, each with the field where it stands
	Carried []Field
	Intro   string
	Credit  string
}

// askScreen is one subject of the questions.
type askScreen struct {
	ID, Title, Lead string
	N               int
	Groups          []askGroup
	Next, NextName  string // the screen after it
	Last            bool
	More, MoreName  string // a button for one more of the same
	Less            string // the area that a button takes away
}

// askGroup is a set of fields that stand together.
type askGroup struct {
	Class, Legend, Hint string
	Fields              []askField
	Groups              []askGroup
	ID                  string
	Folds               bool // behind a heading that opens
}

// Open tells whether the group starts unfolded: one of its fields is filled in, or wrong.
func (g askGroup) Open() bool {
	return slices.ContainsFunc(g.Fields, func(f askField) bool { return f.Value != "" || len(f.Errs) > 0 })
}

// askField is one field with its label.
type askField struct {
	Type, Name, ID, Label, Hint string // Type: text, number, date, select, radio, check
	Value, Auto                 string
	Options                     []askOption
	Unit                        *askField
	Errs                        []string
	Got                         []string
	Tell                        *askTell
}

// Described gives the ids of what a screen reader reads out with the field.
func (f askField) Described() string {
	var ids []string
	if len(f.Errs) > 0 {
		ids = append(ids, f.ID+"-err")
	}
	if len(f.Got) > 0 {
		ids = append(ids, f.ID+"-got")
	}
	return strings.Join(ids, " ")
}

type askOption struct {
	Value, Text string
	On          bool
}

// askTell explains how to find out what somebody does not know.
type askTell struct {
	Title string
	Lines []spoken
	Note  string
}

// askWrong is a problem with the field where it stands.
type askWrong struct{ Of, ID, Text string }

// Colon stands between the name of a field and its problem; "" after a question mark.
func (w askWrong) Colon() string {
	if strings.HasSuffix(w.Of, "?") {
		return ""
	}
	return ":"
}

// Ask writes the page of questions.
func Ask(a Asked) ([]byte, error) {
	q := newQuestions(a)
	v := &askPage{head: headWith("When to lime and feed a lawn", "ask.css"), Asked: a, Credit: climate.ZIPCredit + "."}
	v.Screens = q.screens()
	v.Carried = q.carried()
	v.Wrong = q.wrong
	v.Policy = v.policy()
	v.Intro = "Nothing is stored: your answers become a link that only you have."
	if a.File != "" {
		v.Intro = "The answers are written to " + a.File + ", and nowhere else."
	}
	return render("ask.html", v)
}

// policy is the page's Content-Security-Policy: it lets the form be sent and, where the
// page plans in the browser, lets the planner's files load and run.
func (v *askPage) policy() string {
	p := strings.Replace(v.head.Policy, "form-action 'none'", "form-action 'self'", 1)
	if v.Planner {
		p += "; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'; worker-src 'self'; img-src 'self'"
	}
	return p
}

// questions makes the fields of the page out of what was typed.
type questions struct {
	Asked
	used   map[string]bool
	said   map[int]bool // problems that stand at a field
	wrong  []askWrong
	order  []string // ids of the screens
	screen string   // id of the screen that is being made
}

func newQuestions(a Asked) *questions {
	return &questions{Asked: a, used: map[string]bool{}, said: map[int]bool{}}
}

// get gives what stands in a field; of several of one name the first.
func (q *questions) get(name string) string {
	q.used[name] = true
	for _, f := range q.Fields {
		if f.Name == name && f.Value != "" {
			return f.Value
		}
	}
	return ""
}

func (q *questions) all(name string) (out []string) {
	q.used[name] = true
	for _, f := range q.Fields {
		if f.Name == name {
			out = append(out, f.Value)
		}
	}
	return out
}

// names lists what stands below a table, each once.
func (q *questions) names(table string) (out []string) {
	for _, f := range q.Fields {
		rest, ok := strings.CutPrefix(f.Name, table+".")
		if name, _, below := strings.Cut(rest, "."); ok && below && !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	return out
}

// carried gives the answers that have no field on the page; they are sent along in hidden
// fields.
func (q *questions) carried() (out []Field) {
	for _, f := range q.Fields {
		if !q.used[f.Name] && f.Value != "" {
			out = append(out, f)
		}
	}
	for i, p := range q.Problems {
		if !q.said[i] && (q.Seen == "all" || q.used[p.Key]) && !p.Warning {
			q.wrong = append(q.wrong, askWrong{Text: sentenceOf(p.Key, p)})
		}
	}
	return out
}

// problems gives the problems of a key, in sentences, if they are shown on this screen
// yet.
func (q *questions) problems(key, label, id string) (out []string) {
	for i, p := range q.Problems {
		if p.Key != key && !strings.HasPrefix(p.Key, key+".") || q.said[i] {
			continue
		}
		q.said[i] = true
		if !q.spoken() {
			continue
		}
		out = append(out, sentenceOf(label, p))
		if !p.Warning {
			q.wrong = append(q.wrong, askWrong{label, id, sentenceOf(label, p)})
		}
	}
	return out
}

// spoken tells whether problems are shown on the screen that is being made: only once the
// person has gone on from it.
func (q *questions) spoken() bool {
	return q.Seen == "all" || slices.Contains(q.order, q.Seen) && slices.Index(q.order, q.screen) <= slices.Index(q.order, q.Seen)
}

// sentenceOf writes a problem in the words of "check", with the name of its field where
// the words begin with a verb.
func sentenceOf(label string, p schedule.Problem) string {
	text := p.Message
	for _, verb := range []string{"is ", "are ", "means ", "differs ", "stands ", "cannot ", "has ", "holds ", "brings ", "with ", "makes "} {
		if strings.HasPrefix(text, verb) && label != "" {
			text = label + " " + text
			break
		}
	}
	text = word.Sentence(word.Capital(text))
	if p.Hint != "" {
		first, then, _ := strings.Cut(p.Hint, "? ") // "did you mean 6.4? give a value from 3 to 9"
		text += " " + word.Sentence(word.Capital(first))
		if then != "" {
			text = strings.TrimSuffix(text, ".") + "? " + word.Sentence(word.Capital(then))
		}
	}
	return text
}

// fieldID makes a name an id of the page.
func fieldID(name string) string { return anchor("q-", name) }

func (q *questions) field(kind, name, label, hint string) askField {
	f := askField{Type: kind, Name: name, ID: fieldID(name), Label: label, Hint: hint, Value: q.get(name)}
	if kind == "date" && f.Value != "" {
		if _, err := schedule.ParseDate(f.Value); err != nil {
			f.Type = "text" // a date field would drop what is no date
		}
	}
	f.Errs = q.problems(name, label, f.ID)
	return f
}

// withUnit adds the choice of the unit.
func (q *questions) withUnit(f askField, key string) askField {
	name := "form." + key + ".unit"
	u := q.field("select", name, "Unit of: "+f.Label, "")
	for _, unit := range q.Units(key) {
		u.Options = append(u.Options, askOption{unit, unit, unit == u.Value})
	}
	f.Unit = &u
	return f
}

// choose makes a list of values and their words; a value that is in none is kept as it is.
func choose(f askField, kind string, pairs ...string) askField {
	f.Type = kind
	known := false
	for i := 0; i+1 < len(pairs); i += 2 {
		on := pairs[i] == f.Value
		known = known || on
		f.Options = append(f.Options, askOption{pairs[i], pairs[i+1], on})
	}
	if !known && f.Value != "" {
		f.Options = append(f.Options, askOption{f.Value, f.Value, true})
	} else if !known && kind == "radio" {
		f.Options[0].On = true
	}
	return f
}
