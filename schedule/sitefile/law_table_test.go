package sitefile

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"

	"swardbook/schedule/law"
)

// TestLawTableAgainstItsSource compares every rule, field by field, with the
// table that the rules were taken from, where that lies beside the project.
func TestLawTableAgainstItsSource(t *testing.T) {
	text, err := os.ReadFile("../../../shared/reference/regulation/regulation.toml")
	if errors.Is(err, fs.ErrNotExist) {
		t.Skip("the source of the table is not here")
	}
	if err != nil {
		t.Fatal(err)
	}
	var src struct {
		State map[string]struct{ Name, Law, Local, Ask string }
		Rule  []struct {
			ID, State, Kind, Binding, Start, End, Unit, Citation, Agency, How, Confidence string
			Applies                                                                       string `toml:"applies_to"`
			InForce                                                                       string `toml:"in_force"`
			AsOf                                                                          string `toml:"as_of"`
			RefersTo                                                                      string `toml:"refers_to"`
			Value                                                                         float64
			Reduced                                                                       float64  `toml:"reduced_value"`
			Raised                                                                        float64  `toml:"raised_value"`
			LowP                                                                          *float64 `toml:"threshold_p2o5_percent"`
			TestMonths                                                                    int      `toml:"test_months"`
			Seasons                                                                       int      `toml:"new_lawn_seasons"`
			Exceptions, Ground, Nutrients                                                 []string
		}
		Local []struct {
			State, Place, Start, End, Citation, How, Confidence string
			AsOf                                                string `toml:"as_of"`
			Nutrients                                           []string
		}
	}
	if _, err := toml.Decode(string(text), &src); err != nil {
		t.Fatal(err)
	}
	ours := map[string]law.Rule{}
	for _, r := range law.All() {
		if r.Place == "" {
			ours[r.ID] = r
		}
	}
	if len(ours) != len(src.Rule) {
		t.Errorf("%d rules, their source has %d", len(ours), len(src.Rule))
	}
	for _, s := range src.Rule {
		r, ok := ours[s.ID]
		if !ok {
			t.Errorf("%s: missing", s.ID)
			continue
		}
		same := func(what string, got, want any) {
			if fmt.Sprint(got) != fmt.Sprint(want) {
				t.Errorf("%s: %s: %v, its source has %v", s.ID, what, got, want)
			}
		}
		same("state", r.State, s.State)
		same("kind", r.Kind, kinds[s.Kind])
		same("who", r.Binds, map[string]law.Bound{"both": law.Everyone, "homeowner": law.HomeownersOnly, "professional": law.PaidOnly}[s.Applies])
		same("binding", r.Binding, map[string]law.Binding{"use": law.BindsUse, "label": law.BindsLabel, "sale": law.BindsSale, "advice": law.Advises}[s.Binding])
		span := ""
		if s.Start != "" {
			span = s.Start + "/" + s.End
		}
		days := ""
		if !r.When.IsZero() {
			days = fmt.Sprintf("%02d-%02d/%02d-%02d", r.When.From.Month, r.When.From.Day, r.When.To.Month, r.When.To.Day)
		}
		same("days", days, span)
		same("value", r.Value, s.Value)
		same("lesser", r.Lesser, s.Reduced)
		same("refers to", r.RefersTo != "", s.RefersTo != "")
		same("raised", r.Raised != 0 || s.Raised == 0, true)
		same("report months", r.ReportMonths, s.TestMonths)
		same("new seasons", r.NewSeasons, s.Seasons+fromNotes[s.ID].seasons)
		if s.LowP != nil {
			same("low phosphate", r.LowP2O5Percent, *s.LowP)
		}
		same("citation", r.Citation, s.Citation)
		same("agency", r.Agency, s.Agency)
		same("in force", r.InForce, s.InForce)
		same("as of", r.AsOf, s.AsOf)
		same("how", r.How, map[string]law.How{"seen": law.Seen, "part": law.InPart, "memory": law.FromMemory}[s.How])
		same("confidence", r.Confidence, s.Confidence)
		unless := fromNotes[s.ID].unless
		for _, e := range s.Exceptions {
			unless |= exceptions[e]
		}
		same("unless", r.Unless, unless)
		var ground law.GroundIs
		for _, g := range s.Ground {
			ground |= map[string]law.GroundIs{"frozen": law.Frozen, "snow": law.Snow, "saturated": law.Saturated, "dormant": law.Dormant}[g]
		}
		same("ground", r.Ground, ground)
		var nutrients law.Nutrient
		for _, n := range s.Nutrients {
			nutrients |= map[string]law.Nutrient{"N": law.Nitrogen, "P": law.Phosphorus, "K": law.Potassium}[strings.ToUpper(n)[:1]]
		}
		same("nutrients", r.Nutrients, nutrients)
	}
	for _, l := range src.Local {
		days := ""
		if l.Start != "" {
			days = l.Start + "/" + l.End
		}
		if l.State != "MB" {
			compareOrdinance(t, l.State, l.Place, l.Citation, l.AsOf, l.How, l.Confidence, days, l.Nutrients)
		}
	}
	for code, s := range src.State {
		i := slices.IndexFunc(law.States(), func(o law.State) bool { return o.Code == code })
		if i < 0 {
			t.Errorf("%s: missing", code)
			continue
		}
		if o := law.States()[i]; o.Law != s.Law || o.Ask != s.Ask || o.Name != s.Name {
			t.Errorf("%s: %q %q %q, the source has %q %q %q", code, o.Name, o.Law, o.Ask, s.Name, s.Law, s.Ask)
		}
	}
}

// compareOrdinance compares a local rule with its source. The source has Tahoe once for two
// states, and Manitoba, which this table leaves out.
func compareOrdinance(t *testing.T, state, place, citation, asOf, how, sure, days string, nutrients []string) {
	t.Helper()
	for _, o := range law.Ordinances(state) {
		if !strings.HasPrefix(place, o.Place) {
			continue
		}
		ours := ""
		if !o.Closed.IsZero() {
			ours = fmt.Sprintf("%02d-%02d/%02d-%02d", o.Closed.From.Month, o.Closed.From.Day, o.Closed.To.Month, o.Closed.To.Day)
		}
		n := law.Nutrient(0)
		for _, s := range nutrients {
			n |= map[string]law.Nutrient{"N": law.Nitrogen, "P": law.Phosphorus, "K": law.Potassium}[s]
		}
		read := map[string]law.How{"seen": law.Seen, "part": law.InPart, "memory": law.FromMemory}[how]
		if o.Citation != citation || o.AsOf != asOf || o.How != read || o.Confidence.String() != sure || ours != days || o.Nutrients != n {
			t.Errorf("%s: %s, %s, its source has %s, %s, %s, %s, %s, %v", place, o, ours, citation, asOf, how, sure, days, nutrients)
		}
		return
	}
	t.Errorf("%s: missing", place)
}

// fromNotes is what the source says in its notes only.
var fromNotes = map[string]struct {
	seasons int
	unless  law.Exception
}{
	"ct-p-soil-test-required":  {seasons: 2},             // binds grass that has stood two seasons
	"ma-p-soil-test-required":  {seasons: 1},             // new in its first growing season
	"md-slow-release-fraction": {unless: law.AllSoluble}, // an all-soluble dose stops at 0.7 lb
	"pa-slow-release-fraction": {unless: law.AllSoluble}, // fully soluble products are outside
}

var kinds = map[string]law.Kind{"n_blackout": law.NitrogenClosed, "p_blackout": law.PhosphorusClosed, "k_blackout": law.PotassiumClosed,
	"p_soil_test_required": law.PhosphorusReport, "n_cap_per_application": law.NitrogenDose, "n_soluble_cap_per_application": law.SolubleDose,
	"n_annual_cap": law.NitrogenYear, "p_cap_per_application": law.PhosphorusDose, "p_annual_cap": law.PhosphorusYear,
	"slow_release_fraction": law.SlowNitrogen, "setback_water_ft": law.WaterDistance, "frozen_ground": law.GroundState, "rain": law.HeavyRain,
	"impervious": law.PavedSurface, "label": law.LabelOrSign}

var exceptions = map[string]law.Exception{"soil_test": law.SoilTest, "new_lawn": law.NewLawn, "repair": law.RepairWork, "low_p": law.LowPhosphate,
	"organic": law.OrganicSource, "enhanced": law.EnhancedSource, "liquid": law.LiquidForm, "buffer_10ft": law.NaturalStrip,
	"stream_buffer": law.StreamBuffer, "growing_crop": law.GrowingCrop, "incorporated": law.WorkedIn, "golf": law.GolfCourse, "farm": law.FarmLand}
