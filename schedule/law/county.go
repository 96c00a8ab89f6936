package law

import (
	"fmt"
	"slices"
	"strings"
)

// Ordinance is what is known of a rule of one county, town or basin. Its dates
// and figures become rules: a county's bind like a site's own, a town's or a
// basin's are shown, as a county alone does not tell whether they hold.
type Ordinance struct {
	ID             string // the first part of the ids of its rules
	State, Place   string
	Extent         Extent
	Counties       []string // counties in which it holds, at least in a part; empty: not known
	Closed         Span     // zero if no dates are known
	Nutrients      Nutrient // those closed on the days of Closed
	Figures        []Rule   // its other figures, such as caps and distances
	Citation, AsOf string
	How            How
	Confidence     Confidence
	Note           string
}

// Ordinances returns the local rules known of a state; far from complete.
func Ordinances(code string) []Ordinance {
	var out []Ordinance
	for _, o := range ordinances {
		if o.State == code {
			out = append(out, o)
		}
	}
	return out
}

var rulesLocal = func() []Rule {
	var out []Rule
	for _, o := range ordinances {
		out = append(out, o.rules()...)
	}
	return out
}()

// rules gives the ordinance's dates and figures as rules, one rule for each.
func (o Ordinance) rules() []Rule {
	var all []Rule
	for _, c := range [...]struct {
		id string
		n  Nutrient
		k  Kind
	}{{"n-blackout", Nitrogen, NitrogenClosed}, {"p-blackout", Phosphorus, PhosphorusClosed}, {"k-blackout", Potassium, PotassiumClosed}} {
		if o.Nutrients&c.n != 0 {
			all = append(all, Rule{ID: c.id, Kind: c.k, When: o.Closed})
		}
	}
	all = append(all, o.Figures...)
	for i := range all {
		r := &all[i]
		r.ID, r.State, r.Place, r.Extent, r.Counties = o.ID+"-"+r.ID, o.State, o.Place, o.Extent, o.Counties
		if o.Extent == InTown {
			r.Scope = "the town of " + o.Place
			r.Place = "Town of " + o.Place
		}
		r.Citation, r.Agency, r.InForce, r.AsOf = o.Citation, o.Place, "not read", o.AsOf
		r.How, r.Confidence, r.Note = o.How, o.Confidence, o.Note
	}
	return all
}

// String is one line: place, closed days, note, source.
func (o Ordinance) String() string {
	var b strings.Builder
	b.WriteString(o.Place)
	if !o.Closed.IsZero() {
		fmt.Fprintf(&b, ", %s closed %s", o.Nutrients, o.Closed)
	}
	fmt.Fprintf(&b, ". %s (%s; as of %s; %s; %s confidence)", o.Note, o.Citation, printed(o.AsOf), o.How, o.Confidence)
	return b.String()
}

// SameCounty reports whether two names are of one county: "Saint Lucie County"
// and "St. Lucie" are.
func SameCounty(a, b string) bool { return countyKey(a) == countyKey(b) }

var countySigns = strings.NewReplacer(".", "", "'", "", "’", "", "-", " ")

func countyKey(name string) string {
	name = strings.ToLower(strings.TrimSpace(name))
	for _, end := range [...]string{" county", " parish", " borough"} {
		name = strings.TrimSuffix(name, end)
	}
	name = countySigns.Replace(name)
	if rest, ok := strings.CutPrefix(name, "saint "); ok {
		name = "st " + rest
	}
	return strings.TrimSpace(name)
}

func among(counties []string, county string) bool {
	return slices.ContainsFunc(counties, func(c string) bool { return SameCounty(c, county) })
}

// reaches reports whether the rule may hold in the county; "" is a county not known.
func (r Rule) reaches(county string) bool {
	switch {
	case r.Extent == InCounty, r.Extent == InTown:
		return county != "" && among(r.Counties, county)
	case r.Extent == InBasin:
		return county == "" || len(r.Counties) == 0 || among(r.Counties, county)
	}
	return true
}

// inPart reports whether the rule holds in a part of the asker's county only.
func (r Rule) inPart() bool { return r.Scope != "" && (r.Extent == InTown || r.here) }

// along gives the rule with Scope as far as the question settles it: by the county, for a
// rule of a basin, and by the kind of water.
func (r Rule) along(q Question) Rule {
	if r.Extent == InBasin && q.County != "" && len(r.Counties) > 0 {
		r.here = true
		r.Scope += "; at least a part of this county lies there"
	}
	if r.Waters&q.Water != 0 && (r.Strip == 0 || q.WaterFeet >= 0) {
		r.Scope = ""
	}
	return r
}

// holds reports whether the rule is about the water that the question names.
func (r Rule) holds(q Question) bool {
	if r.Waters == 0 || q.Water == 0 {
		return true
	}
	return r.Waters&q.Water != 0 && (r.Strip == 0 || q.WaterFeet <= r.Strip)
}

// certified turns what the rule allows only to holders of a certificate into a doubt, unless
// the question says that whoever spreads holds one.
func (r Rule) certified(q Question, how stance, text string) (stance, string) {
	if r.ByHolders.Has(q.Date) && !q.Certified && how == kept {
		return doubtful, text + fmt.Sprintf(" From %s holders of a certificate may spread; without one, ask.", r.ByHolders)
	}
	return how, text
}

// localLines say what is known of local rules in the county, or in the state
// where no county is given.
func (s State) localLines(county string) []string {
	var out []string
	all := Ordinances(s.Code)
	if county == "" {
		for _, o := range all {
			out = append(out, "A local rule in the state, among others: "+o.String())
		}
		if len(all) > 0 {
			out = append(out, "The county was not given. Give it, and the county's rules that are known are kept.")
		}
		return out
	}
	found := false
	for _, o := range all {
		switch {
		case len(o.Counties) == 0:
			out = append(out, fmt.Sprintf("Ask whether this holds in the county (%s): %s", county, o))
		case !among(o.Counties, county):
			continue
		case o.Extent == InCounty && len(o.rules()) > 0:
			out = append(out, "The county's own rule, kept here: "+o.String())
		default:
			out = append(out, "Ask here: "+o.String())
		}
		found = true
	}
	for _, r := range slices.Concat(rulesCTtoIL, rulesMAtoMN, rulesNHtoNY, rulesOHtoWV) {
		if r.State != s.Code || r.Extent != InBasin {
			continue
		}
		line := fmt.Sprintf("By a list from memory, the county (%s) is not in the %s, so the state's rules for it are not kept.", county, r.Scope)
		if r.reaches(county) {
			line = fmt.Sprintf("By a list from memory, the county (%s) lies in part or whole in the %s: ask whether the lawn does.", county, r.Scope)
		}
		if !slices.Contains(out, line) {
			out = append(out, line)
		}
	}
	if !found {
		out = append(out, fmt.Sprintf("No rule of the county (%s) or of a town in it is known here. That is not permission: ask.", county))
	}
	return out
}
