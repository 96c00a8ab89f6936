package law

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"
)

var (
	when   = regexp.MustCompile(`^\d{4}(-\d\d){0,2}$`)
	idForm = regexp.MustCompile(`^[a-z]{2}-[a-z0-9-]+$`)
)

func TestTable(t *testing.T) {
	seen := map[string]bool{}
	for _, r := range All() {
		if seen[r.ID] || !idForm.MatchString(r.ID) || !strings.HasPrefix(r.ID, strings.ToLower(r.State)+"-") {
			t.Errorf("%s: an id is unique and starts with its state", r.ID)
		}
		seen[r.ID] = true
		if _, _, err := For(r.State, "", Homeowner); err != nil {
			t.Errorf("%s: %v", r.ID, err)
		}
		inForce := when.MatchString(r.InForce) || r.Place != "" && r.InForce == "not read"
		if r.Citation == "" || r.Agency == "" || !inForce || !when.MatchString(r.AsOf) {
			t.Errorf("%s: a rule names citation, agency, in force and as of: %q", r.ID, r.Source())
		}
		closes := r.closes() != 0
		if closes != (!r.When.IsZero() && r.Kind <= PotassiumClosed) || !r.When.IsZero() && r.When.Check() != nil {
			t.Errorf("%s: dates %s", r.ID, r.When)
		}
		limits := r.Kind >= NitrogenDose && r.Kind <= WaterDistance
		if limits != (r.Value > 0 || r.RefersTo != "") || r.Kind == SlowNitrogen && r.Value > 1 {
			t.Errorf("%s: value %v", r.ID, r.Value)
		}
		if r.Lesser >= r.Value && r.Lesser > 0 || (r.Lesser > 0) != (r.LesserWith != "") {
			t.Errorf("%s: a lesser distance is less and says what earns it", r.ID)
		}
		if (r.Extent == InCounty || r.Extent == InTown) != (r.Place != "") || (r.Extent == InTown || r.Extent == InBasin) && r.Scope == "" || r.Extent != Statewide && len(r.Counties) == 0 {
			t.Errorf("%s: extent %d, place %q, scope %q, counties %q", r.ID, r.Extent, r.Place, r.Scope, r.Counties)
		}
		if (r.Kind == GroundState) != (r.Ground != Open) {
			t.Errorf("%s: ground %s", r.ID, r.Ground)
		}
		for _, text := range []string{r.Statement(), r.Note} {
			if strings.ContainsAny(text, "<>") || strings.Contains(text, "%!") || strings.Contains(text, "  ") {
				t.Errorf("%s: %s", r.ID, text)
			}
		}
	}
}

func TestStates(t *testing.T) {
	if !slices.IsSortedFunc(States(), func(a, b State) int { return strings.Compare(a.Code, b.Code) }) {
		t.Error("states are looked up by code: keep them sorted")
	}
	none := 0
	for _, s := range States() {
		if s.Name == "" || s.Law == "" || s.Local == "" || s.Ask == "" {
			t.Errorf("%s: %+v", s.Code, s)
		}
		_, home, _ := For(s.Code, "", Homeowner)
		_, paid, _ := For(s.Code, "", Paid)
		if s.NoneFound() != (len(home)+len(paid) == 0) {
			t.Errorf("%s: law %q with %d and %d rules", s.Code, s.Law, len(home), len(paid))
		}
		if s.NoneFound() {
			none++
		}
	}
	if len(states) != 51+5 || none != 31+5 {
		t.Errorf("%d entries, %d without a rule; want 50 states, DC and 5 territories, 31 states and the territories without", len(states), none)
	}
	count := map[Extent]int{}
	for _, o := range ordinances {
		count[o.Extent]++
		if _, _, err := For(o.State, "", Homeowner); err != nil || o.Citation == "" || o.AsOf == "" || o.Closed.IsZero() != (o.Nutrients == 0) {
			t.Errorf("%s: %v", o.Place, err)
		}
	}
	if count[Statewide] != 0 || count[InCounty] != 9 || count[InTown] != 2 || count[InBasin] != 4 || len(rulesLocal) != 30 {
		t.Errorf("local rules by extent %v, with %d dates and figures", count, len(rulesLocal))
	}
}

// Every answer says that rules change, that local codes count, whom to ask, and
// that it is no legal advice; one without a rule says none was found.
func TestEveryAnswerSaysWhomToAsk(t *testing.T) {
	for _, s := range States() {
		for _, who := range []Who{Homeowner, Paid} {
			a := ask(t, Question{State: s.Code, Who: who, N: 0.5, SlowShare: 0.3, WaterFeet: Unknown, Date: MonthDay{time.May, 20}})
			notes := strings.Join(a.Notes, "\n")
			for _, want := range []string{RulesChange, LocalCodes, WhomToAsk, NoAdvice, s.Ask} {
				if strings.Count(notes, want) != 1 {
					t.Errorf("%s: %q once in\n%s", s.Code, want, notes)
				}
			}
			if s.NoneFound() != strings.Contains(notes, "no lawn fertilizer rule was found") || s.NoneFound() && a.Verdict != MustAsk {
				t.Errorf("%s: %s\n%s", s.Code, a.Verdict, notes)
			}
			if a.Verdict == Yes && len(a.Deciding)+len(a.Conditions) == 0 && !strings.Contains(a.Notes[0], "Looked at: ") {
				t.Errorf("%s: yes without a rule that was looked at", s.Code)
			}
		}
	}
}

func TestLimeIsNoFertilizer(t *testing.T) {
	a := ask(t, Question{State: "NY", Date: MonthDay{time.January, 10}})
	if a.Verdict != Yes || len(a.Deciding) != 0 || !strings.Contains(a.Notes[0], "lime is not fertilizer") {
		t.Errorf("lime in a New York January: %s %v %s", a.Verdict, a.Deciding, a.Notes[0])
	}
}

func FuzzAsk(f *testing.F) {
	f.Add("MD", 11, 20, 0, 0.8, 0.6, 0.0, 0.0, 0.2, 0, 0, -1, -1.0, uint8(0), "tall fescue", 0.0)
	f.Add("PA", 12, 16, 1, 0.5, 0.0, 0.25, 1.0, -1.0, 1, 1, 12, 14.0, uint8(3), "", 0.7)
	f.Add("OH", 0, 0, 0, 0.0, 0.0, 0.0, 0.0, 0.0, 2, 2, 37, 0.0, uint8(15), "", 0.0)
	f.Fuzz(func(t *testing.T, state string, month, dayOf, who int, n, soluble, p, k, slow float64, turf, report, age int, water float64, ground uint8, grass string, localN float64) {
		q := Question{State: state, Date: MonthDay{time.Month(month), dayOf}, Who: Who(who), N: n, SolubleN: soluble, P2O5: p, K2O: k,
			SlowShare: slow, Turf: Turf(turf), Report: Report(report), ReportAgeMonths: age, WaterFeet: water, Ground: GroundIs(ground), Grass: grass}
		a, err := Ask(q)
		if err != nil {
			if err.Error() == "" || a.Verdict != MustAsk {
				t.Fatalf("%+v with error %v", a, err)
			}
			return
		}
		if math.IsNaN(n + p + k) {
			t.Fatal("NaN was let through")
		}
		for _, f := range slices.Concat(a.Deciding, a.Also, a.Conditions) {
			if f.Text == "" || strings.Contains(f.String(), "NaN") {
				t.Fatalf("%q", f.String())
			}
		}
		if a.Verdict == No && len(a.Deciding) == 0 {
			t.Fatal("no without a deciding rule")
		}
		q.Local.MaxN = localN
		if b, err := Ask(q); err == nil && a.Verdict == No && b.Verdict != No {
			t.Fatalf("a local cap of %v turned no into %s", localN, b.Verdict)
		}
	})
}

func BenchmarkAsk(b *testing.B) {
	q := Question{State: "NJ", N: 0.8, SolubleN: 0.6, P2O5: 0.2, SlowShare: 0.25, Date: MonthDay{time.October, 1}, WaterFeet: Unknown}
	for b.Loop() {
		if _, err := Ask(q); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkFor(b *testing.B) {
	for b.Loop() {
		if _, _, err := For("WV", "", Homeowner); err != nil {
			b.Fatal(err)
		}
	}
}
