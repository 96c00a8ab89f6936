package law

import (
	"math"
	"reflect"
	"strings"
	"testing"
	"time"
)

// Adding a local rule never turns No into Yes or Ask, nor Ask into Yes.
func TestLocalOnlyTightens(t *testing.T) {
	rank := map[Verdict]int{Yes: 0, MustAsk: 1, No: 2}
	winter := Span{MonthDay{time.November, 1}, MonthDay{time.April, 14}}
	locals := []Local{
		{NoNitrogen: []Span{winter}},
		{NoPhosphorus: []Span{winter}},
		{MaxN: 0.3},
		{NoNitrogen: []Span{winter, {MonthDay{time.June, 1}, MonthDay{time.September, 30}}}, MaxN: 2, Note: "an ordinance"},
	}
	for _, st := range States() {
		for month := time.January; month <= time.December; month++ {
			for _, n := range []float64{0.2, 0.8, 1.5} {
				for _, l := range locals {
					q := Question{State: st.Code, N: n, P2O5: 0.1, Date: MonthDay{month, 16}, WaterFeet: Unknown, SlowShare: 0.3}
					free := ask(t, q)
					q.Local = l
					bound := ask(t, q)
					if rank[bound.Verdict] < rank[free.Verdict] {
						t.Errorf("%s %s: a local rule turned %s into %s", st.Code, q.Date, free.Verdict, bound.Verdict)
					}
				}
			}
		}
	}
}

func TestLocalRulesBind(t *testing.T) {
	q := Question{State: "TX", N: 0.5, SlowShare: 0.5, WaterFeet: Unknown, Local: Local{
		NoNitrogen: []Span{{MonthDay{time.November, 15}, MonthDay{time.March, 1}}}, MaxN: 0.5, Note: "Borough ordinance, see the clerk"}}
	for _, c := range []struct {
		date MonthDay
		n    float64
		want Verdict
	}{
		{MonthDay{time.November, 14}, 0.5, MustAsk},
		{MonthDay{time.November, 15}, 0.5, No},
		{MonthDay{time.March, 1}, 0.5, No},
		{MonthDay{time.March, 2}, 0.5, MustAsk},
		{MonthDay{time.March, 2}, 0.51, No},
	} {
		q.Date, q.N = c.date, c.n
		a := ask(t, q)
		if a.Verdict != c.want {
			t.Errorf("%s, %v lb: %s, want %s", c.date, c.n, a.Verdict, c.want)
		}
		if c.want == No && !strings.Contains(a.Deciding[0].String(), "Borough ordinance") {
			t.Errorf("the note of the local rule is missing: %s", a.Deciding[0])
		}
	}
	_, rules, _ := For("MD", "", Homeowner)
	before := append(Rules(nil), rules...)
	if l, _ := rules.With(Local{MaxN: 0.4}).NCap(Question{}); l.Value != 0.4 {
		t.Errorf("the smaller cap wins: %v", l.Value)
	}
	if l, _ := rules.With(Local{MaxN: 2}).NCap(Question{}); l.Value != 0.9 {
		t.Errorf("a looser local cap changes nothing: %v", l.Value)
	}
	if !reflect.DeepEqual(before, rules) {
		t.Error("With changed the state's rules")
	}
}

func TestSpan(t *testing.T) {
	summer := Span{MonthDay{time.June, 1}, MonthDay{time.September, 30}}
	winter := Span{MonthDay{time.November, 16}, MonthDay{time.February, 29}}
	for _, c := range []struct {
		s    Span
		m    MonthDay
		want bool
	}{
		{summer, MonthDay{time.May, 31}, false}, {summer, MonthDay{time.June, 1}, true},
		{summer, MonthDay{time.September, 30}, true}, {summer, MonthDay{time.October, 1}, false},
		{winter, MonthDay{time.November, 15}, false}, {winter, MonthDay{time.November, 16}, true},
		{winter, MonthDay{time.January, 1}, true}, {winter, MonthDay{time.February, 28}, true},
		{winter, MonthDay{time.February, 29}, true}, {winter, MonthDay{time.March, 1}, false},
		{winter, MonthDay{}, false}, {Span{}, MonthDay{time.June, 1}, false},
	} {
		if got := c.s.Has(c.m); got != c.want {
			t.Errorf("%s has %s: %v", c.s, c.m, got)
		}
	}
	if got := winter.String(); got != "16 Nov to the end of February" {
		t.Error(got)
	}
}

func TestAskRefuses(t *testing.T) {
	good := Question{State: "MD", N: 0.5}
	for want, change := range map[string]func(*Question){
		"unknown state \"ZZ\"":      func(q *Question) { q.State = "ZZ" },
		"unknown state \"\"":        func(q *Question) { q.State = "" },
		"unknown state \"md\"":      func(q *Question) { q.State = "md" },
		"unknown kind of user":      func(q *Question) { q.Who = 7 },
		"nitrogen, lb per 1000":     func(q *Question) { q.N = math.NaN() },
		"soluble nitrogen":          func(q *Question) { q.SolubleN = 0.6 },
		"phosphate, lb":             func(q *Question) { q.P2O5 = -0.1 },
		"potash":                    func(q *Question) { q.K2O = 51 },
		"slow share":                func(q *Question) { q.SlowShare = 1.1 },
		"phosphate in the product":  func(q *Question) { q.P2O5Percent = 101 },
		"distance from water":       func(q *Question) { q.WaterFeet = math.Inf(1) },
		"months since":              func(q *Question) { q.ReportAgeMonths = -2 },
		"nitrogen already":          func(q *Question) { q.YearN = math.Inf(1) },
		"phosphate already":         func(q *Question) { q.YearP2O5 = -1 },
		"local cap":                 func(q *Question) { q.Local.MaxN = -1 },
		"no such day":               func(q *Question) { q.Date = MonthDay{time.February, 30} },
		"unknown turf":              func(q *Question) { q.Turf = 3 },
		"unknown soil report":       func(q *Question) { q.Report = -1 },
		"unknown state of the":      func(q *Question) { q.Ground = 16 },
		"no such day of the year: ": func(q *Question) { q.Local.NoNitrogen = []Span{{MonthDay{13, 1}, MonthDay{1, 1}}} },
	} {
		q := good
		change(&q)
		if _, err := Ask(q); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("want an error with %q, got %v", want, err)
		}
	}
}
