package page

import (
	"cmp"
	"html/template"
	"strings"

	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// Answered says where the page of a program stands, and what its reader can do there. An
// address that is "" is not offered.
type Answered struct {
	Today                                schedule.Date
	Change                               string // the questions with the answers in them
	Link                                 string // address of this page, which carries the answers
	Subscribe                            string // address of the calendar, where a server answers
	Calendar, Site, Record, Sheet, Again string // the .ics, the site file, its record book, the page to print, the questions without an answer
	File                                 string // the site file that was written; "": the answers became a link
	Each                                 []Own  // the calendars of single people and areas
	Was                                  *schedule.Program
}

// Own is the calendar of one person, or of one area.
type Own struct{ Name, Subscribe, Calendar string }

// Webcal opens the dialog to subscribe in many calendars; "" where no server answers.
func (o Own) Webcal() template.URL { return webcal(o.Subscribe) }

func webcal(address string) template.URL {
	_, rest, ok := strings.Cut(address, "://")
	if !ok {
		return ""
	}
	return template.URL("webcal://" + rest) // webcals has no client on phones
}

// answeredView is the page as its template reads it.
type answeredView struct {
	*sheetView
	To     Answered
	Sub    string // the place and the areas in a line
	Code   *Code
	Webcal template.URL
	Moved  []movedView
	ByJob  []string
	Credit string
	Same   bool // an answer was changed, and nothing in the program moved
	Limits []areaView
}

// movedView is one thing that changed in the program because an answer was changed.
type movedView struct{ What, Before, Now string }

// Answer writes the page that follows the questions: what to do now, what limits the
// grass, all dates, materials, and how to keep it.
func Answer(p *schedule.Program, a Answered) ([]byte, error) {
	if err := linkable(a.Change); err != nil { // the rest goes through a template, which sees to it
		return nil, err
	}
	year, err := p.Year()
	if err != nil {
		return nil, err
	}
	v := &answeredView{sheetView: &sheetView{head: headWith(p.Title, "ask.css")}, To: a, Credit: climate.ZIPCredit + "."}
	v.fill(p, p, Options{Today: a.Today}, year)
	v.Policy = strings.Replace(v.head.Policy, "form-action 'none'", "form-action 'self'", 1)
	v.Changed = a.Change
	v.Limits = v.Areas
	v.Sub = v.Place
	for _, l := range v.Areas {
		v.Sub += ". " + cmp.Or(l.Sub, l.Name)
	}
	if a.Link != "" {
		if v.Code, err = NewCode(a.Link); err != nil {
			return nil, err
		}
	}
	v.Webcal = webcal(a.Subscribe)
	if a.Was != nil {
		v.Moved = moved(a.Was, p)
		for _, c := range schedule.Compare(a.Was, p) {
			v.ByJob = append(v.ByJob, word.Capital(named(p, named(a.Was, c.ID)))+" "+c.What+": "+word.Sentence(c.Text))
		}
		v.Same = len(v.Moved)+len(v.ByJob) == 0
	}
	return render("answer.html", v)
}

// moved lists what changed in the program from the old answers to the new.
func moved(was, now *schedule.Program) (out []movedView) {
	pair := []Variant{{Label: "Before", Program: was}, {Label: "Now", Program: now}}
	for _, c := range consequences(pair) {
		if c.Cells[1].Other {
			out = append(out, movedView{c.What, c.Cells[0].Text, c.Cells[1].Text})
		}
	}
	return out
}
