package law

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "rewrite testdata/table.txt")

// The whole table in words: each state with whom to ask, each rule with its days,
// figures, lifts and citation, each local rule. The words come from the table, so
// this says nothing of whether it is right; what changes a word or a figure shows
// here as a line to be read against its source ("go test ./schedule/law -update" rewrites it).
func TestTheTableInWords(t *testing.T) {
	var b strings.Builder
	for _, s := range states {
		fmt.Fprintf(&b, "\n%s %s: %s, %s, %s confidence\n", s.Code, s.Name, s.Law, s.How, s.Confidence)
		for _, line := range s.Lines("", Paid) {
			if line != RulesChange && line != NoAdvice {
				fmt.Fprintf(&b, "  %s\n", line)
			}
		}
		for _, r := range All() {
			if r.State != s.Code {
				continue
			}
			fmt.Fprintf(&b, "  %s, for %v: %s\n    %s; %s; in force %s; as of %s; %s; %s confidence\n", r.ID, r.Binds, r.Statement(), r.Citation, r.Agency, printed(r.InForce), r.Dated(), r.How, r.Confidence)
			fmt.Fprintf(&b, "    %+v\n", [...]any{r.Kind, r.When, r.Value, r.Raised, r.RaisedSlow, r.RaisedWhen, r.Lesser, r.LesserWith, r.Waters, r.Unless, r.Only, r.ReportMonths, r.LowP2O5Percent, r.MaxP2O5Percent, r.OrganicMaxP2O5, r.NewSeasons, r.Nutrients, r.Ground, r.Strip, r.ByHolders, r.RefersTo, r.Keep, r.byGrass, r.doubt, r.Place, r.Counties, r.Scope, r.Note})
		}
	}
	for _, o := range ordinances {
		fmt.Fprintf(&b, "\n%s, %s, %v: %s\n", o.ID, o.State, o.Counties, o)
	}
	const file = "testdata/table.txt"
	if *update {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	was := strings.Split(string(want), "\n")
	for i, line := range strings.Split(b.String(), "\n") {
		if i >= len(was) || was[i] != line {
			t.Fatalf("line %d of %s is now:\n%s", i+1, file, line)
		}
	}
	if b.String() != string(want) {
		t.Errorf("%s has lines more", file)
	}
}
