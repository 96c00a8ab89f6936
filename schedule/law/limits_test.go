package law

import (
	"testing"
	"time"
)

// The limits by which the planner sizes and dates jobs never disagree with what Ask answers.
func TestLimitsAgreeWithAsk(t *testing.T) {
	for _, st := range States() {
		for _, who := range []Who{Homeowner, Paid} {
			_, rules, err := For(st.Code, "", who)
			if err != nil {
				t.Fatal(err)
			}
			q := Question{State: st.Code, Who: who, N: 0.1, SlowShare: 0.5, WaterFeet: Unknown, ReportAgeMonths: Unknown}
			for d := time.Date(2024, 1, 1, 0, 0, 0, 0, time.UTC); d.Year() == 2024; d = d.AddDate(0, 0, 1) {
				q.Date = MonthDay{d.Month(), d.Day()}
				closed := false
				for _, c := range rules.Closed(Nitrogen) {
					closed = closed || !c.Warn && c.Span.Has(q.Date)
				}
				if a := ask(t, q); (a.Verdict == No) != closed {
					t.Fatalf("%s %s %s: answer %s, closed %v", st.Code, who, q.Date, a.Verdict, closed)
				}
				l, ok := rules.NCap(q)
				if !ok || closed {
					continue
				}
				at := q
				at.N, at.SolubleN = l.Value, 0.05
				if a := ask(t, at); a.Verdict == No {
					t.Fatalf("%s %s %s: the cap itself is forbidden: %v", st.Code, who, q.Date, a.Deciding)
				}
				at.N += 0.01
				if a := ask(t, at); a.Verdict != No {
					t.Fatalf("%s %s %s: above the cap: %s", st.Code, who, q.Date, a.Verdict)
				}
			}
		}
	}
}

func ask(t *testing.T, q Question) Answer {
	t.Helper()
	a, err := Ask(q)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func TestPhosphorusAgreesWithAsk(t *testing.T) {
	for _, st := range States() {
		for _, who := range []Who{Homeowner, Paid} {
			_, rules, _ := For(st.Code, "", who)
			for turf := Established; turf <= Repair; turf++ {
				for report := NoReport; report <= Enough; report++ {
					for _, age := range []int{Unknown, 0, 18, 19, 24, 25, 36, 37} {
						for _, organic := range []bool{false, true} {
							q := Question{State: st.Code, Who: who, P2O5: 0.1, P2O5Percent: 4, SlowShare: Unknown, WaterFeet: Unknown,
								Turf: turf, Report: report, ReportAgeMonths: age, Organic: organic, Date: MonthDay{time.July, 1}}
							f, ok := rules.Phosphorus(q)
							a := ask(t, q)
							if ok && f.Verdict != a.Verdict {
								t.Errorf("%s %s turf %d report %d age %d organic %v: door %s, answer %s",
									st.Code, who, turf, report, age, organic, f.Verdict, a.Verdict)
							}
							if !ok && a.Verdict == No {
								t.Errorf("%s %s: no rule asks, yet the answer is no", st.Code, who)
							}
						}
					}
				}
			}
		}
	}
}

func TestLimitsHonourWhatLiftsThem(t *testing.T) {
	_, fl, _ := For("FL", "", Homeowner)
	starter := Question{Turf: New}
	if l, ok := fl.PCap(starter); !ok || l.Value != 1.0 {
		t.Errorf("FL, one starter on a new lawn: %v %v, want 1.0 [Fla. Admin. Code r. 5E-1.003]", l.Value, ok)
	}
	if _, ok := fl.PAnnualCap(starter); ok {
		t.Error("FL: the yearly phosphorus cap does not hold for a new lawn")
	}
	_, md, _ := For("MD", "", Paid)
	if l, _ := md.NCap(Question{Date: MonthDay{time.November, 20}, Enhanced: true}); l.Value != 0.5 {
		t.Errorf("MD, paid, late November: %v, want 0.5", l.Value)
	}
	if _, ok := md.SlowShareMin(Question{SlowShare: 0}); ok {
		t.Error("MD: a fully soluble product is held to the soluble cap, not to a slow share")
	}
	if _, ok := md.AnnualNCap(Question{Grass: "perennial ryegrass"}); ok {
		t.Error("MD: the schedule has no figure for perennial ryegrass")
	}
	_, mi, _ := For("MI", "", Homeowner)
	if _, ok := mi.PCap(Question{}); ok {
		t.Error("MI: the phosphorus cap is for natural sources")
	}
	if l, ok := mi.PCap(Question{Organic: true}); !ok || l.Value != 0.25 {
		t.Errorf("MI, natural source: %v %v, want 0.25", l.Value, ok)
	}
	_, ct, _ := For("CT", "", Homeowner)
	if d := ct.Setback(Nitrogen, Question{}); d.Plain != 0 {
		t.Errorf("CT keeps only phosphorus from water, got %v ft for nitrogen", d.Plain)
	}
	_, ma, _ := For("MA", "", Homeowner)
	if d := ma.Setback(Nitrogen, Question{}); d.Plain != 0 || len(d.Findings) != 2 {
		t.Errorf("MA: both distances are for some waters: shown, not kept; got %v ft, %d shown", d.Plain, len(d.Findings))
	}
}

// Among rules that meet, the strictest wins, whatever their order.
func TestStrictestWins(t *testing.T) {
	slow := func(v float64) Rule { return Rule{Kind: SlowNitrogen, Value: v, Confidence: HighConfidence} }
	for _, rs := range []Rules{{slow(0.2), slow(0.5)}, {slow(0.5), slow(0.2)}} {
		if l, _ := rs.SlowShareMin(Question{SlowShare: 0.3}); l.Value != 0.5 {
			t.Errorf("slow share %v, want 0.5", l.Value)
		}
	}
	_, md, _ := For("MD", "", Homeowner)
	if l, ok := md.NCap(Question{Date: MonthDay{time.July, 1}, Enhanced: true}); !ok || l.Value != 0.9 {
		t.Errorf("an enhanced-efficiency product raises no cap: %v %v", l.Value, ok)
	}
	_, ny, _ := For("NY", "", Homeowner)
	if d := ny.Setback(Nitrogen, Question{Turf: New}); d.Plain != 0 {
		t.Errorf("NY: a new lawn's first season lifts the distance, got %v ft", d.Plain)
	}
}

func TestConditionsOfTheDay(t *testing.T) {
	_, nj, _ := For("NJ", "", Homeowner)
	if len(nj.Rain(Nitrogen)) != 1 || len(nj.Ground(Nitrogen)) != 1 || len(nj.Impervious(Nitrogen)) != 1 {
		t.Error("NJ has one rule each on rain, ground and paving")
	}
	_, wa, _ := For("WA", "", Homeowner)
	if len(wa.Ground(Nitrogen)) != 0 || len(wa.Ground(Phosphorus)) != 1 {
		t.Error("WA closes frozen ground to phosphorus alone")
	}
	_, fl, _ := For("FL", "", Homeowner)
	if len(fl.Shown()) != 1 || fl.Shown()[0].Rule.ID != "fl-n-annual-cap" {
		t.Errorf("FL points at a table for the year's nitrogen: %v", fl.Shown())
	}
}
