package law

import (
	"slices"
	"strings"
	"testing"
	"time"
)

// opposed is an application that r speaks against; ok is false if no question can describe
// one.
func opposed(r Rule) (q Question, ok bool) {
	q = plain(r)
	switch r.Kind {
	case NitrogenClosed, PhosphorusClosed, PotassiumClosed, PhosphorusReport:
		return q, true
	case NitrogenDose, SolubleDose, NitrogenYear, PhosphorusDose, PhosphorusYear:
		if r.Value == 0 {
			q.Grass = r.byGrass[0].grass
		}
		most, _ := r.most(q.Grass)
		put(&q, r.Kind, most+0.01)
		return q, true
	case SlowNitrogen:
		q.SlowShare = r.Value - 0.01
		return q, true
	case WaterDistance:
		q.WaterFeet = r.Value - 1
		return q, true
	case GroundState:
		q.Ground = r.Ground
		return q, true
	}
	return q, false
}

// A rule for some counties binds in them and nowhere else. Where the county is not given,
// the rule of a county or a town is left out, and that of a basin is a condition.
func countyEdges(t *testing.T, r Rule) {
	if r.Extent == Statewide {
		return
	}
	q, ok := opposed(r)
	if !ok {
		return
	}
	for _, county := range r.Counties {
		q.County = strings.ToUpper(county) + " County"
		expect(t, r, q, shut(r), "in "+county)
	}
	q.County = "Nowhere"
	expect(t, r, q, "apart", "in another county")
	q.County = ""
	want := "apart"
	if r.Extent == InBasin {
		want = "condition"
	}
	expect(t, r, q, want, "county not given")
	if r.Unless.Has(Certificate) {
		q.County, q.Certified = r.Counties[0], true
		expect(t, r, q, "yes", "with a certificate")
	}
}

// A rule along one kind of water binds there and nowhere else.
func waterEdges(t *testing.T, r Rule) {
	if r.Waters == 0 {
		return
	}
	q, ok := opposed(r)
	if !ok {
		t.Fatal("no application that it speaks against")
	}
	if r.Strip > 0 {
		q.WaterFeet = r.Strip
	}
	settled := r
	settled.Scope = ""
	for w := DrinkingSupply; w < anyWater; w <<= 1 {
		want := "apart"
		if r.Waters&w != 0 {
			want = shut(settled)
		}
		q.Water = w
		expect(t, r, q, want, "along one kind of water")
	}
	if r.Strip > 0 {
		q.Water = r.Waters
		q.WaterFeet = r.Strip + 0.1
		expect(t, r, q, "apart", "beyond the strip")
		q.WaterFeet = Unknown
		expect(t, r, q, "condition", "distance not given")
	}
}

// The dates of the county for which the issue gives an example, with its source:
// Sarasota County fertilizer ordinance (2007), 1 June to September 30.
func TestCountyBindsLikeLocal(t *testing.T) {
	for _, c := range []struct {
		day  MonthDay
		want Verdict
	}{
		{MonthDay{time.May, 31}, MustAsk}, {MonthDay{time.June, 1}, No}, {MonthDay{time.September, 30}, No}, {MonthDay{time.October, 1}, MustAsk},
	} {
		a := ask(t, Question{State: "FL", County: "Sarasota", N: 0.5, SlowShare: 0.5, WaterFeet: Unknown, Date: c.day})
		if a.Verdict != c.want {
			t.Errorf("%s: %s, want %s", c.day, a.Verdict, c.want)
		}
		if s := a.Deciding; c.want == No && (!strings.HasPrefix(s[0].Text, "Sarasota County: no products with nitrogen from 1 Jun to 30 Sep.") || !strings.Contains(s[0].String(), "Sarasota County fertilizer ordinance (2007) (Sarasota County; in force not read; as of Jun 2021; read; high confidence)")) {
			t.Errorf("%s: %v", c.day, s)
		}
	}
	for _, county := range []string{"", "Orange"} {
		if a := ask(t, Question{State: "FL", County: county, N: 0.5, SlowShare: 0.5, WaterFeet: Unknown, Date: MonthDay{time.July, 1}}); a.Verdict != MustAsk {
			t.Errorf("county %q: %s", county, a.Verdict)
		}
	}
	_, rules, _ := For("NY", "Nassau", Homeowner) // the county closes sixteen days before the state
	if spans := rules.Closed(Potassium); len(spans) != 2 || spans[1].Warn || spans[1].Span.From != (MonthDay{time.November, 15}) {
		t.Errorf("Nassau: %v", spans)
	}
	_, rules, _ = For("FL", "Marion County", Homeowner)
	if l, ok := rules.AnnualNCap(Question{Grass: "centipedegrass"}); !ok || l.Value != 2 {
		t.Errorf("Marion: %v", l)
	}
}

func TestCountyLines(t *testing.T) {
	for _, c := range []struct{ state, county, has, hasNot string }{
		{"FL", "Sarasota", "The county's own rule, kept here: Sarasota County", "Manatee"},
		{"FL", "Saint Lucie", "Ask here: other counties", "Sarasota"},
		{"FL", "Orange", "No rule of the county (Orange)", "rainy-season"},
		{"FL", "", "The county was not given", "No rule of the county"},
		{"MA", "Barnstable", "Ask here: Mashpee", "kept here"},
		{"NY", "Rockland", "Ask here: Rockland County", "kept here"},
		{"OH", "Cuyahoga", "the county (Cuyahoga) is not in the western Lake Erie basin", "ask whether the lawn"},
		{"OH", "Lucas", "the county (Lucas) lies in part or whole in the western Lake Erie basin", "is not in"},
		{"NC", "Wake", "Ask whether this holds in the county (Wake): Jordan Lake", "No rule of the county"},
	} {
		st, _, err := For(c.state, c.county, Homeowner)
		text := strings.Join(st.Lines(c.county, Homeowner), "\n")
		if err != nil || !strings.Contains(text, c.has) || strings.Contains(text, c.hasNot) {
			t.Errorf("%s %s: want %q and not %q in\n%s", c.state, c.county, c.has, c.hasNot, text)
		}
	}
	for _, bound := range rulesOHtoWV {
		if bound.Extent == InBasin && (len(bound.Counties) != 24 || !slices.IsSorted(bound.Counties)) { // the row's own number
			t.Errorf("%s: %d counties", bound.ID, len(bound.Counties))
		}
	}
}

// Dates written for holders of a certificate leave others in doubt (N.J.S.A.
// 58:10A-62: certified applicators to December 1).
func TestCertificate(t *testing.T) {
	q := Question{State: "NJ", Who: Paid, N: 0.5, SlowShare: 0.5, WaterFeet: 100, Date: MonthDay{time.November, 20}}
	if a := ask(t, q); a.Verdict != MustAsk {
		t.Errorf("without: %s", a.Verdict)
	}
	q.Certified = true
	if a := ask(t, q); a.Verdict != Yes {
		t.Errorf("with: %s", a.Verdict)
	}
	q.Date, q.Certified = MonthDay{time.November, 15}, false // open to everybody
	if a := ask(t, q); a.Verdict != Yes {
		t.Errorf("on the last day open to all: %s", a.Verdict)
	}
	q.Date = MonthDay{time.December, 2}
	if a := ask(t, q); a.Verdict != No {
		t.Errorf("on a closed day: %s", a.Verdict)
	}
}

// Naming the county never loosens an answer.
func TestCountyOnlyTightens(t *testing.T) {
	rank := map[Verdict]int{Yes: 0, MustAsk: 1, No: 2}
	for _, o := range ordinances {
		for _, county := range o.Counties {
			for month := time.January; month <= time.December; month++ {
				q := Question{State: o.State, N: 1.2, P2O5: 0.3, K2O: 0.1, Date: MonthDay{month, 16}, WaterFeet: 50, SlowShare: 0.3}
				free := ask(t, q)
				q.County = county
				if bound := ask(t, q); rank[bound.Verdict] < rank[free.Verdict] {
					t.Errorf("%s, %s: %s became %s", county, q.Date, free.Verdict, bound.Verdict)
				}
			}
		}
	}
}
