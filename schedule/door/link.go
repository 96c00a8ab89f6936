package door

import (
	"fmt"
	"slices"
	"strings"

	"swardbook/schedule"
	"swardbook/schedule/ask"
)

// shareNames is the field that is ticked to let the names of people into the link.
const shareNames = "form.share"

// mostYears is how long a site in a link may have been going on, as each season before
// today's is planned anew every time. // [common]
const mostYears = 10

// Load makes a site of the answers in a link, and says what is wrong with them.
func Load(a ask.Answers, today schedule.Date) (*schedule.Site, []schedule.Done, []schedule.Problem) {
	site, done, problems := ask.Load(a, nil)
	if site != nil && today.After(site.Start.AddMonths(12*mostYears)) {
		site, done = nil, nil
		problems = append(problems, schedule.Problem{Key: "start", Message: fmt.Sprintf("lies more than %d years back", mostYears),
			Hint: "a link works out every season each time it is asked; save the site file and keep it on a server, or begin later"})
	}
	return site, done, problems
}

// problems says what is wrong with the answers, and what the link cannot carry of them:
// nothing that was typed is dropped without a word.
func (d Door) problems(a ask.Answers, t Turn) []schedule.Problem {
	if d.File != "" {
		_, _, problems := ask.Load(a, d.Open)
		return append(problems, t.Wrong...)
	}
	_, _, problems := Load(a, t.Today)
	problems = append(problems, t.Wrong...)
	_, left := ask.Share(a, true)
	for _, why := range left {
		problems = append(problems, schedule.Problem{Message: why})
	}
	if _, named := ask.Share(a, false); len(named) > len(left) && !shares(t.Form) {
		problems = append(problems, schedule.Problem{Key: shareNames, Message: "names of people go into the link only if this is ticked",
			Hint: "tick it, or take the names out"})
	}
	return problems
}

func shares(f ask.Form) bool { return f.Get(shareNames) == "yes" }

// code gives the code of the link that carries the answers: the one they came from if
// they are the same, else a new one with an id of its own, as other answers make another
// calendar.
func code(a ask.Answers, t Turn) (string, error) {
	shared, _ := ask.Share(a, shares(t.Form))
	id := t.ID
	if own, ok := ask.IDOf(t.Was); ok && slices.Equal(t.Was.Set("id", ""), shared.Set("id", "")) {
		id = own
	}
	return ask.Encode(shared, id)
}

// draft gives the code of what was typed so far, if the page can be filled again from it
// as it was.
func draft(t Turn, typed ask.Answers) string {
	shared, left := ask.Share(typed, shares(t.Form))
	if len(left) > 0 || len(shared) == 0 || !kept(t.Form, shared) {
		return ""
	}
	code, err := ask.Encode(shared, t.ID)
	if err != nil {
		return ""
	}
	return code
}

// kept tells whether the page can be filled again from the answers: the page filled from
// them gives the same answers, and loses no field that makes an answer only together with
// other fields.
func kept(f ask.Form, a ask.Answers) bool {
	again := Door{}.Form(a)
	if !slices.Equal(ask.FromForm(f).Set("id", "").Tidy(), ask.FromForm(again).Set("id", "").Tidy()) {
		return false
	}
	return !slices.ContainsFunc(f, func(one ask.Answer) bool {
		value := strings.TrimSpace(one.Value)
		return value != "" && strings.HasPrefix(one.Key, "form.") && !strings.HasSuffix(one.Key, ".unit") && again.Get(one.Key) != value
	})
}
