package law

import (
	"math/bits"
	"testing"
	"time"
)

// edges holds, for each kind of rule, a check of what is just allowed and of what is just
// forbidden. A kind without one fails TestEveryRuleAtItsEdges.
var edges = map[Kind]func(*testing.T, Rule){
	NitrogenClosed:   closedEdges,
	PhosphorusClosed: closedEdges,
	PotassiumClosed:  closedEdges,
	PhosphorusReport: reportEdges,
	NitrogenDose:     amountEdges,
	SolubleDose:      amountEdges,
	NitrogenYear:     amountEdges,
	PhosphorusDose:   amountEdges,
	PhosphorusYear:   amountEdges,
	SlowNitrogen:     slowEdges,
	WaterDistance:    distanceEdges,
	GroundState:      groundEdges,
	HeavyRain:        conditionEdges,
	PavedSurface:     conditionEdges,
	LabelOrSign:      conditionEdges,
}

func TestEveryRuleAtItsEdges(t *testing.T) {
	for _, r := range All() {
		t.Run(r.ID, func(t *testing.T) {
			check, ok := edges[r.Kind]
			if !ok {
				t.Fatalf("no edge check for %s", r.Kind)
			}
			check(t, r)
			q := plain(r)
			countyEdges(t, r)
			waterEdges(t, r)
			if r.Binds != Everyone {
				q.Who = Paid - q.Who
				expect(t, r, q, "apart", "the other kind of user")
			}
		})
	}
}

// plain is an application that r is about and that is far inside every limit: in July, or on
// the first day on which r holds.
func plain(r Rule) Question {
	q := Question{State: r.State, N: 0.1, P2O5: 0.1, K2O: 0.1, SlowShare: 0.5, P2O5Percent: 20, Certified: !r.ByHolders.IsZero(),
		ReportAgeMonths: Unknown, WaterFeet: 1000, Date: MonthDay{time.July, 1}}
	if r.Extent != Statewide {
		q.County = r.Counties[0]
	}
	if r.Binds == PaidOnly {
		q.Who = Paid
	}
	switch {
	case r.Only.Has(OrganicSource):
		q.Organic = true
	case r.Only.Has(NewLawn):
		q.Turf = New
	}
	if !r.When.IsZero() {
		q.Date = r.When.From
	}
	return q
}

// expect asks the question and checks what became of the finding of r: its verdict,
// "condition", or "apart" if there is none.
func expect(t *testing.T, r Rule, q Question, want, what string) {
	t.Helper()
	a, err := Ask(q)
	if err != nil {
		t.Fatalf("%s: %v", what, err)
	}
	got := "apart"
	for _, f := range append(a.Deciding, a.Also...) {
		if f.Rule.ID == r.ID {
			got = f.Verdict.String()
		}
	}
	for _, f := range a.Conditions {
		if f.Rule.ID == r.ID {
			got = "condition"
		}
	}
	if got != want {
		t.Errorf("%s: %s, want %s (%s)", what, got, want, r.Statement())
	}
	if got == "no" && a.Verdict != No {
		t.Errorf("%s: the rule forbids, the answer is %s", what, a.Verdict)
	}
	if got == "ask" && a.Verdict == Yes {
		t.Errorf("%s: the rule is in doubt, the answer is yes", what)
	}
}

// shut is what [expect] is to find of a rule that speaks against an application.
func shut(r Rule) string {
	switch {
	case r.Binding == BindsSale || r.Binding == Advises:
		return "condition"
	case r.Scope != "" && r.Only == 0 && (r.Kind == WaterDistance || r.Extent != Statewide):
		return "ask"
	case r.Scope != "" && r.Only == 0:
		return "condition"
	case r.Confidence == LowConfidence && !r.Keep:
		return "ask"
	}
	return "no"
}

// shift gives the day so many days later, in a leap year.
func shift(m MonthDay, days int) MonthDay {
	d := time.Date(2024, m.Month, m.Day+days, 0, 0, 0, 0, time.UTC)
	return MonthDay{d.Month(), d.Day()}
}

func closedEdges(t *testing.T, r Rule) {
	for _, c := range []struct {
		day  MonthDay
		want string
		what string
	}{
		{shift(r.When.From, -1), "yes", "day before the first closed day"},
		{r.When.From, shut(r), "first closed day"},
		{shift(r.When.From, 1), shut(r), "second closed day"},
		{shift(r.When.To, -1), shut(r), "day before the last closed day"},
		{r.When.To, shut(r), "last closed day"},
		{shift(r.When.To, 1), "yes", "day after the last closed day"},
		{MonthDay{}, "condition", "no day given"},
	} {
		q := plain(r)
		q.Date = c.day
		expect(t, r, q, c.want, c.what)
	}
	q := plain(r)
	switch r.Kind {
	case NitrogenClosed:
		q.N = 0
	case PhosphorusClosed:
		q.P2O5 = 0
	case PotassiumClosed:
		q.K2O = 0
	}
	expect(t, r, q, "apart", "another nutrient")
	q = plain(r)
	q.P2O5Percent = 0.67 // the one threshold that laws with closed dates have
	want := shut(r)
	if r.Unless.Has(LowPhosphate) {
		want = "yes"
	}
	expect(t, r, q, want, "a product at 0.67 % phosphate")
}

func reportEdges(t *testing.T, r Rule) {
	closed := shut(r)
	if r.doubt == askIfShut {
		closed = "ask"
	}
	open := func(e Exception) string {
		if r.Unless.Has(e) {
			return "yes"
		}
		return closed
	}
	q := plain(r)
	expect(t, r, q, closed, "no report")
	q.Report = Enough
	q.ReportAgeMonths = 1
	expect(t, r, q, closed, "a report that calls for none")

	q = plain(r)
	q.Turf = New
	expect(t, r, q, open(NewLawn), "new lawn")
	q.Turf = Repair
	expect(t, r, q, open(RepairWork), "repair")

	q = plain(r)
	q.Organic = true
	want := open(OrganicSource)
	if r.doubt == askIfOrganic {
		want = "ask"
	}
	expect(t, r, q, want, "organic source")
	if r.OrganicMaxP2O5 > 0 {
		q.P2O5 = r.OrganicMaxP2O5
		expect(t, r, q, "yes", "organic source at its most")
		q.P2O5 += 0.01
		expect(t, r, q, closed, "organic source above it")
	}

	q = plain(r)
	if q.P2O5Percent = r.LowP2O5Percent; r.LowP2O5Percent > 0 {
		expect(t, r, q, "yes", "low-phosphate product")
	}
	q.P2O5Percent = r.LowP2O5Percent + 0.01
	expect(t, r, q, closed, "just above the low-phosphate mark")

	q = plain(r)
	q.Report = Low
	q.ReportAgeMonths = max(r.ReportMonths, 1)
	if r.MaxP2O5Percent > 0 {
		q.P2O5Percent = r.MaxP2O5Percent + 0.1
		expect(t, r, q, closed, "report, product above the percent it opens")
		q.P2O5Percent = 0
		expect(t, r, q, "ask", "report, analysis not given")
		q.P2O5Percent = r.MaxP2O5Percent
	}
	want = open(SoilTest)
	if r.doubt == askWithReport {
		want = "ask"
	}
	expect(t, r, q, want, "report at its oldest")
	if r.ReportMonths > 0 {
		q.ReportAgeMonths++
		expect(t, r, q, closed, "report a month too old")
		q.ReportAgeMonths = Unknown
		expect(t, r, q, "ask", "report of unknown age")
	} else if r.Unless.Has(SoilTest) {
		q.ReportAgeMonths = 600
		expect(t, r, q, "yes", "old report where no age is set")
	}
	q.P2O5 = 0
	expect(t, r, q, "apart", "no phosphorus")
}

// put sets the amount that a cap of kind k limits to lb.
func put(q *Question, k Kind, lb float64) {
	switch k {
	case NitrogenDose:
		q.N = lb
	case SolubleDose:
		q.N, q.SolubleN = lb+0.1, lb
	case NitrogenYear:
		q.YearN = lb - q.N
	case PhosphorusDose:
		q.P2O5 = lb
	case PhosphorusYear:
		q.YearP2O5 = lb - q.P2O5
	}
}

func amountEdges(t *testing.T, r Rule) {
	limits := r.byGrass
	if r.Value > 0 {
		limits = append(limits, grassCap{"", r.Value})
	}
	if r.Value == 0 {
		q := plain(r)
		q.Grass, q.YearN = "a grass without a figure", 99
		expect(t, r, q, "condition", "the law points elsewhere")
	}
	for _, l := range limits {
		q := plain(r)
		q.Grass = l.grass
		put(&q, r.Kind, l.lb)
		expect(t, r, q, "yes", "at the cap")
		put(&q, r.Kind, l.lb+0.001)
		expect(t, r, q, shut(r), "just above the cap")
		for _, e := range []struct {
			bit Exception
			set func(*Question)
		}{
			{EnhancedSource, func(q *Question) { q.Enhanced = true }},
			{NewLawn, func(q *Question) { q.Turf = New }},
			{SoilTest, func(q *Question) { q.Report, q.ReportAgeMonths = Low, 1 }},
		} {
			lifted := q
			e.set(&lifted)
			want := shut(r)
			switch {
			case r.Unless.Has(e.bit) && e.bit == EnhancedSource:
				want = "ask"
			case r.Unless.Has(e.bit):
				want = "yes"
			}
			expect(t, r, lifted, want, "above the cap with "+e.bit.String())
		}
		if r.Raised > 0 {
			raisedEdges(t, r, q)
		}
		if !r.When.IsZero() {
			q.Date = shift(r.When.From, -1)
			expect(t, r, q, "apart", "before the days of the cap")
			q.Date = r.When.To
			expect(t, r, q, shut(r), "last day of the cap")
			q.Date = shift(r.When.To, 1)
			expect(t, r, q, "apart", "after the days of the cap")
			q.Date = MonthDay{}
			expect(t, r, q, "condition", "no day given")
		}
	}
	if r.Kind == SolubleDose {
		q := plain(r)
		q.N, q.SlowShare, q.SolubleN = r.Value+0.01, Unknown, Unknown
		expect(t, r, q, "ask", "soluble part not given")
		q.SlowShare = 0
		expect(t, r, q, shut(r), "soluble part worked out")
	}
}

func raisedEdges(t *testing.T, r Rule, q Question) {
	if r.RaisedSlow == 0 {
		q.Turf = New
		put(&q, r.Kind, r.Raised)
		expect(t, r, q, "yes", "the most a new lawn may have")
		put(&q, r.Kind, r.Raised+0.001)
		expect(t, r, q, shut(r), "more than a new lawn may have")
		return
	}
	put(&q, r.Kind, r.Raised)
	q.SlowShare, q.Date = r.RaisedSlow, r.RaisedWhen.From
	expect(t, r, q, "ask", "the raised dose, earned")
	q.SlowShare -= 0.01
	expect(t, r, q, shut(r), "too little slow nitrogen for it")
	q.SlowShare, q.Date = r.RaisedSlow, shift(r.RaisedWhen.To, 1)
	expect(t, r, q, shut(r), "out of its season")
	q.Date = r.RaisedWhen.To
	put(&q, r.Kind, r.Raised+0.001)
	expect(t, r, q, shut(r), "above the raised dose")
}

func slowEdges(t *testing.T, r Rule) {
	q := plain(r)
	q.SlowShare = r.Value
	expect(t, r, q, "yes", "just enough slow nitrogen")
	q.SlowShare = r.Value - 0.001
	expect(t, r, q, shut(r), "just too little")
	for _, e := range []struct {
		bit Exception
		set func(*Question)
	}{
		{NewLawn, func(q *Question) { q.Turf = New }},
		{RepairWork, func(q *Question) { q.Turf = Repair }},
		{LiquidForm, func(q *Question) { q.Liquid = true }},
		{AllSoluble, func(q *Question) { q.SlowShare = 0 }},
	} {
		lifted, want := q, shut(r)
		e.set(&lifted)
		if r.Unless.Has(e.bit) {
			want = "yes"
		}
		expect(t, r, lifted, want, "too little slow nitrogen with "+e.bit.String())
	}
	q.SlowShare = Unknown
	expect(t, r, q, "condition", "slow share not given")
	if r.Unless.Has(NewLawn) {
		lifted := q
		lifted.Turf = New
		expect(t, r, lifted, "yes", "slow share not given, on a new lawn")
	}
	q.N, q.SolubleN = 0, 0
	expect(t, r, q, "apart", "no nitrogen")
}

func distanceEdges(t *testing.T, r Rule) {
	q := plain(r)
	q.WaterFeet = r.Value
	expect(t, r, q, "yes", "at the distance")
	q.WaterFeet = r.Value - 0.1
	expect(t, r, q, shut(r), "just inside")
	near := q
	near.Turf = New
	want := shut(r)
	if r.Unless.Has(NewLawn) {
		want = "yes"
	}
	expect(t, r, near, want, "just inside on a new lawn")
	near = q
	near.P2O5Percent, want = 0.67, shut(r)
	if r.Unless.Has(LowPhosphate) {
		want = "yes"
	}
	expect(t, r, near, want, "just inside with a product at 0.67 % phosphate")
	q.GentleSpreader = true
	if r.Lesser > 0 {
		q.WaterFeet = r.Lesser
		expect(t, r, q, "yes", "at the lesser distance")
		q.WaterFeet = r.Lesser - 0.1
		expect(t, r, q, shut(r), "just inside the lesser distance")
	} else {
		expect(t, r, q, shut(r), "no lesser distance to earn")
	}
	q.WaterFeet = Unknown
	expect(t, r, q, "condition", "distance not given")
	conditionEdges(t, r)
}

func groundEdges(t *testing.T, r Rule) {
	for _, g := range []GroundIs{Frozen, Snow, Saturated, Dormant} {
		q, want := plain(r), "condition"
		if q.Ground = g; r.Ground&g != 0 {
			want = shut(r)
		}
		expect(t, r, q, want, g.String())
	}
	conditionEdges(t, r)
}

func conditionEdges(t *testing.T, r Rule) {
	q := plain(r)
	q.WaterFeet = Unknown
	expect(t, r, q, "condition", "kept on the day")
	for i, set := range []*float64{&q.N, &q.P2O5, &q.K2O} {
		q.N, q.P2O5, q.K2O, q.SolubleN = 0, 0, 0, 0
		*set = 0.1
		want := "apart"
		if n := Nutrient(1 << i); r.Nutrients == 0 || r.Nutrients&n != 0 {
			want = "condition"
		}
		expect(t, r, q, want, "only "+Nutrient(1<<i).String())
	}
}

func TestEveryExceptionHasWords(t *testing.T) {
	for _, r := range All() {
		for e := r.Unless | r.Only; e != 0; e &= e - 1 {
			if one := Exception(1 << bits.TrailingZeros16(uint16(e))); one.String() == "" {
				t.Errorf("%s: exception %b has no words", r.ID, one)
			}
		}
	}
}
