package law

import (
	"fmt"
	"slices"
)

// Verdict on an application.
type Verdict uint8

const (
	MustAsk Verdict = iota // not settled here: ask
	Yes                    // a rule that binds the asker was read, and nothing speaks against it
	No
)

// String is "ask", "yes" or "no".
func (v Verdict) String() string { return [...]string{"ask", "yes", "no"}[v] }

// Finding is what one rule says of one application.
type Finding struct {
	Rule    Rule
	Verdict Verdict
	Text    string // the rule in words, and how the application stands to it
}

// String is the text, the rule's note and its source.
func (f Finding) String() string {
	s := f.Text
	if f.Rule.Note != "" {
		s += " " + f.Rule.Note
	}
	return s + " " + f.Rule.Source()
}

// Answer to a Question. Findings keep the order of the table, local rules last.
type Answer struct {
	Verdict    Verdict
	Deciding   []Finding // findings with the answer's own verdict: what forbids, what is in doubt, or what was looked at and kept
	Also       []Finding // the other findings that bear on the application
	Conditions []Finding // to keep on the day: weather, distance, paving, rules for one region, advice
	Notes      []string  // for the state: none found, local rules, whom to ask, no legal advice
}

// stance of an application to a rule.
type stance uint8

const (
	apart    stance = iota // the rule is about something else
	onTheDay               // it depends on the day, or on what the question leaves open
	kept
	doubtful
	against
)

// Ask answers one question, in full sentences; a planner that tries many days
// takes the limits of [For] instead. It returns an error for an unknown state and for
// values out of range (see [Question.Check]).
func Ask(q Question) (Answer, error) {
	if err := q.Check(); err != nil {
		return Answer{}, err
	}
	st, rules, err := For(q.State, q.County, q.Who)
	if err != nil {
		return Answer{}, err
	}
	var a Answer
	if rules.bind() && !st.LocalUse() {
		a.Verdict = Yes
	}
	var found []Finding
	for _, r := range rules.With(q.Local) {
		if r = r.along(q); !r.holds(q) {
			continue
		}
		how, text := r.weigh(q)
		how, text = r.certified(q, how, text)
		how, text = r.soften(how, text)
		f := Finding{Rule: r, Text: text}
		switch how {
		case apart:
			continue
		case onTheDay:
			a.Conditions = append(a.Conditions, f)
			continue
		case kept:
			f.Verdict = Yes
		case against:
			f.Verdict = No
			a.Verdict = No
		case doubtful:
			if a.Verdict == Yes {
				a.Verdict = MustAsk
			}
		}
		found = append(found, f)
	}
	for _, f := range found {
		if f.Verdict == a.Verdict {
			a.Deciding = append(a.Deciding, f)
		} else {
			a.Also = append(a.Also, f)
		}
	}
	switch {
	case q.nutrients() == 0:
		a.Notes = append(a.Notes, "No nitrogen, phosphorus or potassium was named. By the definitions read (CT, ME, MD, NH, NJ and counties of NY), lime is not fertilizer.")
	case st.LocalUse():
		a.Notes = append(a.Notes, st.Name+" regulates the label and leaves use to counties and cities: ask them.")
	case rules.bind() && len(found)+len(a.Conditions) == 0:
		a.Notes = append(a.Notes, fmt.Sprintf("No rule found in %s concerns this application. Looked at: %s.", st.Name, rules.kinds()))
	case !rules.bind() && !st.NoneFound():
		a.Notes = append(a.Notes, fmt.Sprintf("%s: no state rule was found that binds %s on every lawn. That is not permission: ask.", st.Name, q.Who))
	}
	a.Notes = append(a.Notes, st.Lines(q.County, q.Who)...)
	return a, nil
}

// bind reports whether any rule has to be kept.
func (rs Rules) bind() bool {
	for _, r := range rs {
		if r.Enforced() && r.Only == 0 {
			return true
		}
	}
	return false
}

// kinds names what the rules are about, each once.
func (rs Rules) kinds() string {
	var out []string
	for _, r := range rs {
		if !slices.Contains(out, r.Kind.String()) {
			out = append(out, r.Kind.String())
		}
	}
	return list(out, "and")
}

// soften says where the rule applies, and if the rule is only shown, turns its objection to
// an application into a doubt or a condition.
func (r Rule) soften(how stance, text string) (stance, string) {
	if how == apart {
		return how, text
	}
	if r.Scope != "" {
		text += " Where it applies: " + r.Scope + "."
	}
	if r.Enforced() || how < doubtful {
		return how, text
	}
	switch {
	case r.Binding == BindsSale || r.Binding == Advises:
		return onTheDay, text
	case r.inPart():
		return doubtful, text + " Ask here."
	case r.Scope != "" && r.Kind != WaterDistance:
		return onTheDay, text
	case r.Scope != "":
		return doubtful, text
	}
	return doubtful, text + " This rule is not certain: ask."
}

// weigh says how an application stands to a rule, whether or not it is enforced.
func (r Rule) weigh(q Question) (stance, string) {
	has := q.nutrients()
	if has == 0 || r.Nutrients != 0 && has&r.Nutrients == 0 || r.Only != 0 && r.Only&q.marks(r) == 0 {
		return apart, ""
	}
	how, detail := apart, ""
	switch r.Kind {
	case NitrogenClosed, PhosphorusClosed, PotassiumClosed:
		if has&r.closes() == 0 {
			return apart, ""
		}
		how, detail = r.weighDate(q)
	case PhosphorusReport:
		if has&Phosphorus == 0 {
			return apart, ""
		}
		how, detail = r.door(q)
	case NitrogenDose, SolubleDose, NitrogenYear, PhosphorusDose, PhosphorusYear:
		how, detail = r.weighAmount(q)
	case SlowNitrogen:
		how, detail = r.weighSlow(q)
	case WaterDistance:
		how, detail = r.weighDistance(q)
	case GroundState:
		how, detail = onTheDay, ""
		if r.Ground&q.Ground != 0 {
			how, detail = against, fmt.Sprintf("The ground is %s.", q.Ground&r.Ground)
		}
	case HeavyRain, PavedSurface, LabelOrSign:
		how = onTheDay
	}
	if how == apart {
		return apart, ""
	}
	if detail == "" {
		return how, r.Statement()
	}
	return how, r.Statement() + " " + detail
}
