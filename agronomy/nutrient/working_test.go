package nutrient

import (
	"slices"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/check"
	"swardbook/agronomy/soil"
)

func texts(reasons ...[]agronomy.Reason) string {
	var b strings.Builder
	for _, r := range slices.Concat(reasons...) {
		b.WriteString(r.Text + " [" + r.Source + "]\n")
	}
	return b.String()
}

// TestWorkingOfNeeds holds what a need's working says, where it says it and
// where not, to sums done by hand.
func TestWorkingOfNeeds(t *testing.T) {
	read := func(x agronomy.PPM) agronomy.Reading { return agronomy.Reading{Given: true, PPM: x} }
	lab := func(found, low, high agronomy.PPM) agronomy.Reading {
		return agronomy.Reading{Given: true, PPM: found, Wanted: agronomy.Optimum{Given: true, Low: low, High: high, Steps: []agronomy.Reason{{Text: "as the laboratory wants it"}}}}
	}
	report := func(method agronomy.Extractant, r agronomy.Reading) agronomy.Report {
		return agronomy.Report{Method: method, Texture: agronomy.Loam, Phosphorus: r, Potassium: r, Magnesium: r, Sulfur: r, Depth: 4}
	}
	const (
		line     = "A line through two lawn reports"
		virginia = "Virginia likewise adds none of a nutrient that tests high. [vt-spes384]"
		minimum  = "The minimum-levels school would ask"
		little   = "A little phosphorus with the seed"
		atLeast  = "Take it as at least this much"
		young    = "New turf gets at least 0.5 lb P₂O₅ with the seed."
	)
	p := func(isNew bool) func(agronomy.Report) (Need, error) {
		return func(r agronomy.Report) (Need, error) { return PhosphorusNeed(r, "", isNew) }
	}
	k := func(isNew bool) func(agronomy.Report) (Need, error) {
		return func(r agronomy.Report) (Need, error) { return PotassiumNeed(r, "", isNew) }
	}
	mg := func(r agronomy.Report) (Need, error) { return MagnesiumNeed(r, "") }
	noDepth := report(agronomy.Mehlich3, lab(10, 20, 30))
	noDepth.Depth = 0
	for name, c := range map[string]struct {
		need  func(agronomy.Report) (Need, error)
		r     agronomy.Report
		lb    float64
		says  []string
		not   []string
		assum int
	}{
		"P by Bray":          {p(false), report(agronomy.Bray1, read(13)), 1, []string{line + ", by custom only, asks for about 0.7 lb P₂O₅. [common]", "low on established turf, a year: 1.0 lb P₂O₅/1000 sq ft, a middle way between published amounts [common]"}, []string{virginia, little}, 0},
		"P by Bray, new":     {p(true), report(agronomy.Bray1, read(13)), 2, []string{"low on new turf, at seeding: 2.0 lb P₂O₅/1000 sq ft, a middle way between published amounts [common, purdue-p, unl-renovate]"}, []string{line, little}, 0},
		"P by Mehlich":       {p(false), report(agronomy.Mehlich3, read(13.5)), 1, nil, []string{line}, 0},
		"P by Bray, a lab's": {p(false), report(agronomy.Bray1, lab(13, 20, 30)), 7 * 1.2 / 43.56 * agronomy.P2O5PerP, []string{atLeast}, []string{line}, 0},
		"P high":             {p(false), report(agronomy.Mehlich3, read(60)), 0, []string{virginia, "high on established turf, a year: 0.0 lb"}, []string{little}, 0},
		"P high, new":        {p(true), report(agronomy.Mehlich3, read(60)), 0.5, []string{little}, []string{virginia}, 0},
		"P very high, new":   {p(true), report(agronomy.Mehlich3, read(160)), 0, []string{virginia}, []string{little}, 0},
		"P a lab's": {p(false), report(agronomy.Mehlich3, lab(10, 20, 30)), 10 * 1.2 / 43.56 * agronomy.P2O5PerP,
			[]string{"as the laboratory wants it", "wanted 20 − found 10 = 10 ppm short; in 4 in of soil (10 × 300,000 lb × 4 in ÷ 1,000,000 ÷ 43.56) that is 0.28 lb of the element, 0.63 lb P₂O₅/1000 sq ft [definitions, atomic-weights]", atLeast}, []string{young}, 0},
		"P a lab's, new":          {p(true), report(agronomy.Mehlich3, lab(19, 20, 30)), 0.5, []string{young}, nil, 0},
		"P a lab's, new, enough":  {p(true), report(agronomy.Mehlich3, lab(10, 20, 30)), 10 * 1.2 / 43.56 * agronomy.P2O5PerP, nil, []string{young}, 0},
		"P a lab's, met":          {p(false), report(agronomy.Mehlich3, lab(20, 20, 30)), 0, []string{"= 0 ppm short"}, []string{atLeast, virginia}, 0},
		"P a lab's, no depth":     {p(false), noDepth, 10 * 1.2 / 43.56 * agronomy.P2O5PerP, []string{"no depth; 4 in is taken"}, nil, 1},
		"P optimum reached":       {p(false), report(agronomy.ModifiedMorgan, read(4)), 0, []string{virginia, "medium on established turf"}, nil, 0},
		"K":                       {k(false), report(agronomy.Mehlich3, read(60)), 2, []string{"low on established turf, a year: 2.0 lb K₂O/1000 sq ft, a middle way between published amounts [common, umn-lawn-report, askhrgreen]", minimum + ", with 3 lb of nitrogen a year on cool-season grass: 49 ppm used + 37 kept − 60 found = 26 ppm, or 1.0 lb K₂O.", "[mlsn-manual, slan-mlsn-trial]", "No potassium is put down for the winter"}, []string{virginia}, 0},
		"K, new":                  {k(true), report(agronomy.Mehlich3, read(60)), 2, []string{"low on new turf, at seeding: 2.0 lb K₂O/1000 sq ft, a middle way between published amounts [common]"}, nil, 0},
		"K, plenty":               {k(false), report(agronomy.Mehlich3, read(300)), 0, []string{"− 300 found = 0 ppm, or 0.0 lb K₂O", virginia}, nil, 0},
		"K by ammonium acetate":   {k(false), report(agronomy.AmmoniumAcetate, read(60)), 2, []string{"+ 31 kept"}, nil, 0},
		"K by modified Morgan":    {k(false), report(agronomy.ModifiedMorgan, read(60)), 2, nil, []string{minimum}, 0},
		"K a lab's":               {k(false), report(agronomy.Mehlich3, lab(60, 90, 120)), 30 * 1.2 / 43.56 * agronomy.K2OPerK, []string{"lb K₂O/1000 sq ft"}, []string{minimum, young}, 0},
		"K a lab's, new":          {k(true), report(agronomy.Mehlich3, lab(89, 90, 120)), 1.2 / 43.56 * agronomy.K2OPerK, nil, []string{young}, 0},
		"Mg low":                  {mg, report(agronomy.Mehlich3, read(40)), 30 * 1.2 / 43.56, []string{"= 30 ppm short", "lb Mg/1000 sq ft", "dolomitic lime brings the magnesium"}, []string{"Nothing is wanted"}, 0},
		"Mg fair":                 {mg, report(agronomy.Mehlich3, read(70)), 0, []string{"Nothing is wanted"}, []string{"dolomitic"}, 0},
		"K far under a lab's own": {k(false), report(agronomy.Mehlich3, lab(0, 200, 220)), 4, []string{"No more than 4.0 lb K₂O in a year; the other 2.6 lb wait for the next report."}, nil, 0},
	} {
		n, err := c.need(c.r)
		if err != nil {
			t.Errorf("%s: %v", name, err)
		}
		near(t, float64(n.Year), c.lb, "%s", name)
		all := texts(n.Why, n.Assumed)
		for _, want := range c.says {
			if !strings.Contains(all, want) {
				t.Errorf("%s: no %q in\n%s", name, want, all)
			}
		}
		for _, not := range c.not {
			if strings.Contains(all, not) {
				t.Errorf("%s: %q in\n%s", name, not, all)
			}
		}
		if len(n.Assumed) != c.assum {
			t.Errorf("%s: assumed %v", name, n.Assumed)
		}
		check.Resolve(t, n.Why)
		check.Resolve(t, n.Assumed)
	}
	for nutrient, unit := range map[agronomy.Nutrient]string{agronomy.Phosphorus: "P₂O₅", agronomy.Potassium: "K₂O", agronomy.Magnesium: "Mg", agronomy.Sulfur: "S"} {
		if onBag(nutrient) != unit {
			t.Errorf("%s is %s on the bag", nutrient, onBag(nutrient))
		}
	}
	for _, c := range []struct {
		need func(agronomy.Report) (Need, error)
		name string
	}{{p(false), "phosphorus"}, {k(false), "potassium"}, {mg, "magnesium"}} {
		n, err := c.need(agronomy.Report{})
		if err == nil || !strings.HasPrefix(err.Error(), c.name+" is not on the soil report") || n.Level != soil.Unknown {
			t.Errorf("%s: %+v (%v)", c.name, n, err)
		}
		n, err = c.need(report(agronomy.Morgan, read(10)))
		if err == nil || !strings.HasPrefix(err.Error(), c.name+": no scale for this reading: No turf scale") || n.Level != soil.Unknown {
			t.Errorf("%s by Morgan: %+v (%v)", c.name, n, err)
		}
	}
}

// What a year's nitrogen says of its working; figures in TestCellsNitrogenYear.
func TestWorkingOfNitrogen(t *testing.T) {
	stand := func(parts ...any) (s agronomy.Stand) {
		for i := 0; i < len(parts); i += 2 {
			s = append(s, agronomy.Share{Grass: check.Grass(t, parts[i].(string)), Percent: agronomy.Percent(parts[i+1].(int))})
		}
		return s
	}
	rye := stand("perennial ryegrass", 100)
	bermudaMix := stand("perennial ryegrass", 60, "bermudagrass", 40)
	for name, c := range map[string]struct {
		of   NitrogenCase
		lb   float64
		says []string
		not  []string
	}{
		"plain":                    {NitrogenCase{Stand: rye, Care: MediumCare}, 3, []string{"perennial ryegrass, medium care: 3 lb N/1000 sq ft a year (published: 2 to 4 lb) [ill-1995]"}, []string{"weighted", "Clippings", "level of care", "thickening"}},
		"no care":                  {NitrogenCase{Stand: rye}, 3, []string{"No level of care is given; medium is taken."}, nil},
		"rich, high":               {NitrogenCase{Stand: rye, Care: HighCare, OrganicMatter: 5.01}, 3, []string{"Organic matter of 5.01 % feeds the grass: one level of care less, medium"}, nil},
		"rich, low":                {NitrogenCase{Stand: rye, Care: LowCare, OrganicMatter: 9}, 2, nil, []string{"Organic matter"}},
		"rich and young":           {NitrogenCase{Stand: rye, Care: MediumCare, OrganicMatter: 9, New: true}, 3, []string{"one level of care less, low", "still thickening"}, nil},
		"young, medium":            {NitrogenCase{Stand: rye, Care: MediumCare, New: true}, 3, nil, []string{"thickening"}},
		"15 years":                 {NitrogenCase{Stand: rye, Care: MediumCare, ClippingsReturned: true, Age: 15}, 2.25, []string{"3.00 × 0.75 = 2.25 lb N"}, []string{"Over 15"}},
		"over 15 years":            {NitrogenCase{Stand: rye, Care: MediumCare, ClippingsReturned: true, Age: 15.1}, 1.5, []string{"Over 15 years old", "3.00 × 0.5 = 1.50 lb N"}, []string{"about a quarter"}},
		"a mixture":                {NitrogenCase{Stand: stand("perennial ryegrass", 50, "tall fescue", 50), Care: MediumCare}, 2.75, []string{"weighted by share: 2.75 lb N [common]"}, []string{"held to"}},
		"a mixture with a ceiling": {NitrogenCase{Stand: stand("perennial ryegrass", 90, "fine fescue", 10), Care: HighCare}, 2.5, []string{"weighted by share: 3.85 lb N", "held to the 2.5 lb that fine fescue tolerates"}, nil},
		"the lower of two":         {NitrogenCase{Stand: stand("fine fescue", 50, "centipedegrass", 50), Care: HighCare}, 2, []string{"held to the 2.0 lb that centipedegrass tolerates"}, nil},
		"under its ceiling":        {NitrogenCase{Stand: stand("perennial ryegrass", 50, "fine fescue", 50), Care: MediumCare}, 2.25, nil, []string{"held to"}},
		"Florida, returned":        {NitrogenCase{Stand: stand("bahiagrass", 100), Care: MediumCare, State: "FL", Florida: CentralFlorida, ClippingsReturned: true}, 3, []string{"bahiagrass in central Florida: 2 to 4 lb N a year; medium care 3.", "no further credit"}, []string{"÷ 0.75"}},
		"Florida, removed":         {NitrogenCase{Stand: stand("bahiagrass", 100), Care: MediumCare, State: "FL", Florida: CentralFlorida}, 4, []string{"3.00 ÷ 0.75 = 4.00 lb N"}, []string{"no further credit"}},
		"Florida, one not tabled":  {NitrogenCase{Stand: stand("bermudagrass", 50, "carpetgrass", 50), Care: MediumCare, State: "FL", Florida: CentralFlorida, ClippingsReturned: true}, 3 * 0.75, []string{"about a quarter"}, []string{"no further credit"}},
		"cool, held to 4":          {NitrogenCase{Stand: bermudaMix, Care: HighCare, State: "FL", Florida: SouthFlorida, ClippingsReturned: false}, 4, []string{"Cool-season lawns need no more than 4 lb N a year. [ksu-eckert]"}, nil},
		"cool, 4":                  {NitrogenCase{Stand: rye, Care: HighCare}, 4, nil, []string{"no more than 4"}},
		"warm, over 4":             {NitrogenCase{Stand: stand("bermudagrass", 100), Care: HighCare, State: "FL", Florida: SouthFlorida, ClippingsReturned: true}, 7, []string{"south Florida"}, []string{"no more than 4"}},
	} {
		n, err := NitrogenYear(c.of)
		if err != nil {
			t.Errorf("%s: %v", name, err)
		}
		near(t, float64(n.Year), c.lb, "%s", name)
		all := texts(n.Why, n.Assumed)
		for _, want := range c.says {
			if !strings.Contains(all, want) {
				t.Errorf("%s: no %q in\n%s", name, want, all)
			}
		}
		for _, not := range c.not {
			if strings.Contains(all, not) {
				t.Errorf("%s: %q in\n%s", name, not, all)
			}
		}
	}
	near(t, float64(ClippingsCredit(4, 0.25)), 3, "a quarter off 4 lb")
}

// Every key behind a rule, a calendar or a custom resolves.
func TestKeysResolve(t *testing.T) {
	var why []agronomy.Reason
	for _, r := range spacingRules {
		why = append(why, r.Why)
	}
	for _, season := range []agronomy.Season{agronomy.Cool, agronomy.Warm} {
		for _, r := range LastUsefuls(season) {
			why = append(why, r.Why)
		}
		why = append(why, SharesOf(season).Why)
	}
	for _, c := range PublishedCalendars() {
		why = append(why, agronomy.Reason{Text: c.Name, Source: c.Source})
	}
	for _, state := range []string{"IN", "KS", "NE", "NC", "AZ", "MN"} {
		_, _, source, _ := LateCustom(state)
		why = append(why, agronomy.Reason{Text: state, Source: source})
	}
	check.Resolve(t, why)
}
