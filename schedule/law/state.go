package law

import (
	"cmp"
	"fmt"
	"slices"
)

// Sentences that every program or answer carries once.
const (
	RulesChange = "Lawn fertilizer rules change: check the date beside each rule."
	LocalCodes  = "Local codes apply where state law allows them. Permits for wetlands, shorelines, wells and storm water apply everywhere, and so do the rules of a lake or homeowners' association."
	WhomToAsk   = "Ask the office named here, the county extension office, then the city, town or county clerk."
	NoAdvice    = "This is a table for planning, not legal advice. Where the product label is stricter, the label decides."
)

// State says what kind of law a state has and whom to ask.
type State struct {
	Code, Name string
	Law        string // the kind of law: full, phosphorus, professional, …; "none found"
	Local      string // whether local rules may add to it
	Ask        string // the offices to ask
	Paid       string // what paid applicators need
	Note       string
	How        How
	Confidence Confidence
}

// NoneFound reports whether no rule for lawns was found. That is not permission.
func (s State) NoneFound() bool { return s.Law == "none found" }

// LocalUse reports whether the state binds only the label and leaves use to
// counties and cities, so that no state rule can say yes.
func (s State) LocalUse() bool { return s.Law == "label and local" }

// Rules is a set of rules of one state, in the order of the table.
type Rules []Rule

// All returns every rule of the table, by state.
func All() Rules {
	return slices.Concat(rulesCTtoIL, rulesMAtoMN, rulesNHtoNY, rulesOHtoWV, rulesLocal)
}

// States returns every entry, by code: states, the District of Columbia, territories.
func States() []State { return slices.Clone(states) }

// For returns the entry of a state and the rules there for who spreads, enforced
// or not. The code is two capitals; anything else is an error. A state for which
// no rules were found returns none, and its State says so. The county's own rules
// are among them where it is given, those of towns and basins in it are shown; a
// rule for a part of the state that the county has no share in is not.
func For(code, county string, who Who) (State, Rules, error) {
	i, ok := slices.BinarySearchFunc(states, code, func(s State, c string) int { return cmp.Compare(s.Code, c) })
	if !ok {
		return State{}, nil, fmt.Errorf("unknown state %q: give the two-letter code of a US state, DC or a territory, such as MD", code)
	}
	if who != Homeowner && who != Paid {
		return State{}, nil, fmt.Errorf("unknown kind of user %d: homeowner or paid", who)
	}
	var out Rules
	for _, t := range [...][]Rule{rulesCTtoIL, rulesMAtoMN, rulesNHtoNY, rulesOHtoWV, rulesLocal} {
		for i := range t {
			if t[i].State == code && t[i].Binds.holds(who) && t[i].reaches(county) {
				out = append(out, t[i])
			}
		}
	}
	return states[i], out, nil
}

// Lines are the sentences that belong once with a program in this state and
// county, "" if not known: none found, the state's notes, local rules, whom to
// ask, that rules change, no legal advice.
func (s State) Lines(county string, who Who) []string {
	var out []string
	if s.NoneFound() {
		out = append(out, fmt.Sprintf("%s: no lawn fertilizer rule was found (%s). That is not permission: ask.", s.Name, s.looked()))
	}
	if s.Note != "" {
		out = append(out, s.Name+": "+s.Note)
	}
	if who == Paid && s.Paid != "" {
		out = append(out, s.Name+", paid work: "+s.Paid)
	}
	out = append(out, fmt.Sprintf("Local rules in %s: %s. %s", s.Name, s.Local, LocalCodes))
	out = append(out, s.localLines(county)...)
	return append(out, fmt.Sprintf("%s Here: %s.", WhomToAsk, s.Ask), RulesChange, NoAdvice)
}

func (s State) looked() string {
	switch s.How {
	case Seen:
		return "statutes or rules were read"
	case InPart:
		return "statutes or rules were read in part"
	}
	return "from memory and a general search only"
}
