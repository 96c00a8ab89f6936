package figure

import (
	"fmt"
	"strconv"
	"strings"

	"swardbook/agronomy"
	aglime "swardbook/agronomy/lime"
	"swardbook/agronomy/material"
	"swardbook/cmd/swardbook/flag"
)

var limeFigure = Figure{
	Name:    "lime",
	What:    "how much lime a soil needs, or the pH to expect from an amount",
	Example: `--ph 5.1 --buffer smp --buffer-ph 6.4 --cce 90 --size "2600 sq ft"`,
	Help: `By the buffer pH, else an exchangeable acidity, else by pH and texture.
        --ph X                pH of the soil in water
        --target X            pH wanted (default: from the grass, else 6.5)
        --grass NAME          takes the grass's own target
        --buffer METHOD       smp, sikora, adams-evans, mehlich,
                              modified-mehlich
        --buffer-ph X         the buffer pH on the report
        --acidity X           exchangeable acidity, meq/100 g
        --texture NAME        sand, loamy sand, sandy loam, loam, silt loam,
                              clay loam, clay, muck
        --cec X               meq/100 g
        --organic-matter X    percent
        --depth D             to be limed (default: 4 in)
        --state CODE          picks a state's own table
        --cce X               of the lime on hand, percent
        --ecce X              its effective value, percent
        --sieves LIST         percent passing, like "8=100,60=75"
        --rule NAME           whose sieves count: missouri, new york, minnesota,
                              ohio, wisconsin, kansas and oklahoma, kentucky,
                              mississippi, iowa, "illinois, one year",
                              "illinois, four years", oregon (default: the
                              state's own, else ohio)
        --enm X               lb ENM a ton, off the dealer's sheet
        --enm-wanted X        lb ENM an acre, off a report of Missouri; with
                              --enm it is all that is needed
        --hydrated            it is hydrated or burned lime
        --seedbed             before sowing, to be worked in
        --size A              of the area, for the whole weight
        --amount R            the other way round: the pH to expect from this
                              much of the lime, like "20 lb/1000 sq ft", or
                              with --size of so much in all, like "60 lb"
`,
	setup: func(fs *flag.Set) func(*asked) (Answer, error) {
		texts(fs, "ph", "target", "grass", "buffer", "buffer-ph", "acidity", "texture", "cec", "organic-matter", "depth", "state", "cce", "ecce", "sieves", "rule", "enm", "enm-wanted", "size", "amount")
		fs.Bool("hydrated", false, "")
		fs.Bool("seedbed", false, "")
		return lime
	},
}

func lime(q *asked) (Answer, error) {
	if q.given("enm") || q.given("enm-wanted") {
		return byENM(q)
	}
	q.need("ph")
	c := aglime.Case{
		PH:            agronomy.PH(q.number("ph", 0, 14)),
		Target:        agronomy.PH(q.number("target", 0, 14)),
		Acidity:       agronomy.Meq(q.number("acidity", 0, 100)),
		CEC:           agronomy.Meq(q.number("cec", 0, 200)),
		OrganicMatter: agronomy.Percent(q.number("organic-matter", 0, 100)),
		Texture:       oneOf(q, "texture", agronomy.Textures()...),
		Depth:         quantityOf(q, "depth", agronomy.ParseDepth),
		State:         strings.ToUpper(q.text("state")),
		Buffer: agronomy.Buffer{PH: agronomy.PH(q.number("buffer-ph", 0, 14)),
			Method: oneOf(q, "buffer", agronomy.BufferMethods()...)},
	}
	c.WarmRegion = aglime.WarmLimeRegion(c.State)
	if q.given("buffer") != q.given("buffer-ph") && q.err == nil {
		q.err = fmt.Errorf("--buffer and --buffer-ph belong together: the method and the reading")
	}
	var a Answer
	if c.Target == 0 {
		c.Target = 6.5 // [common]
		why := agronomy.Reason{Text: "No target was given: 6.5 is taken.", Source: "common"}
		if q.given("grass") {
			t, ok := agronomy.GrassPH(strings.ToLower(q.text("grass")))
			if !ok {
				q.wrong("grass", fmt.Errorf("unknown grass %q; known: %s", q.text("grass"), agronomy.NearestName(q.text("grass"), agronomy.GrassNames())))
			}
			c.Target, c.LimeBelow = t.Default, t.LimeBelow
			why = agronomy.Reason{Text: fmt.Sprintf("%s is limed to pH %.1f, below pH %.1f.", q.text("grass"), float64(t.Default), float64(t.LimeBelow)), Source: t.Source}
		}
		a.Why = append(a.Why, why)
	}
	hydrated := q.yes("hydrated")
	m := material.Material{Kind: material.LimeMaterial, Hydrated: hydrated, Fineness: sieves(q),
		CCE: agronomy.Percent(q.number("cce", 1, 180)), ECCE: agronomy.Percent(q.number("ecce", 1, 180))}
	size := quantityOf(q, "size", agronomy.ParseArea)
	if q.err != nil {
		return a, q.err
	}
	need, needErr := aglime.Requirement(c)
	value := aglime.Value{Full: 100, FirstYear: 100, Why: []agronomy.Reason{{Text: "Nothing is said of the lime: the amount is of one that acts fully. Give --cce, or --ecce, from the bag."}}}
	if m.CCE > 0 || m.ECCE > 0 || len(m.Fineness) > 0 || hydrated {
		value = aglime.ValueOf(m, c.State, need.Ground)
	}
	if q.given("rule") {
		var err error
		if value, err = byRule(q, m, &a); err != nil {
			return a, err
		}
	}
	if q.given("amount") {
		return expected(a, c, q.limeAmount(size), value.FirstYear, value.Why)
	}
	if needErr != nil {
		return a, needErr
	}
	if c.Acidity > 0 && c.State != "NC" {
		a.Why = append(a.Why, byChemistry(c))
	}
	return required(a, need, m, value, !q.yes("seedbed"), size)
}

// byChemistry says what it takes to neutralize all of an exchangeable acidity; a table
// that stops at a target pH asks for part of it.
func byChemistry(c aglime.Case) agronomy.Reason {
	depth := c.Depth
	if depth == 0 {
		depth = 4 // [nc-sampling] [vt-452-125]
	}
	soil := agronomy.PerAcre(300_000 * float64(depth)) // [definitions] an inch of soil on an acre, lb
	pure := aglime.ForAcidity(c.Acidity, soil).PerThousand()
	return agronomy.Reason{Text: fmt.Sprintf("All of the acidity in %s in of soil would take %s of pure CaCO3", agronomy.Figure(depth), bothRates(pure)), Source: "atomic-weights"}
}

// byENM answers how much lime brings the ENM that a report of Missouri asks for.
func byENM(q *asked) (Answer, error) {
	q.need("enm", "enm-wanted")
	perTon, wanted := agronomy.Pounds(q.number("enm", 1, 800)), agronomy.PerAcre(q.number("enm-wanted", 1, 20000)) // [mo-ag-lime] [common]
	size := quantityOf(q, "size", agronomy.ParseArea)
	for _, other := range []string{"ph", "buffer", "acidity", "amount", "rule", "sieves", "cce", "ecce"} {
		if q.given(other) {
			q.wrong("enm-wanted", fmt.Errorf("the ENM already says what --%s would", other))
		}
	}
	if q.err != nil {
		return Answer{}, q.err
	}
	tons, err := aglime.ForENM(wanted, perTon)
	if err != nil {
		return Answer{}, err
	}
	rate := tons.PerThousand()
	most, capped := aglime.Cap(material.Material{Kind: material.LimeMaterial}, !q.yes("seedbed"))
	parts, err := aglime.Dressings(rate, most)
	if err != nil {
		return Answer{}, err
	}
	a := Answer{Text: bothRates(rate) + " of lime", Why: []agronomy.Reason{
		{Text: fmt.Sprintf("%s lb ENM an acre ÷ %s lb ENM a ton = %.2f tons an acre", agronomy.Figure(wanted), agronomy.Figure(perTon), float64(tons)), Source: "mo-enm-example"}, capped},
		Values: map[string]any{"tons_per_acre": rounded(float64(tons), 3), "rate_lb_per_1000_sqft": rounded(float64(rate), 2), "dressings": len(parts)}}
	if len(parts) > 1 {
		a.Text += fmt.Sprintf(", in %d dressings of %s", len(parts), bothRates(parts[0]))
	}
	a.Text += "."
	if size > 0 {
		a.More = append(a.More, fmt.Sprintf("For %s: %s in all.", bothAreas(size), bothWeights(rate.Over(size))))
		a.Values["amount_lb"] = rounded(float64(rate.Over(size)), 2)
	}
	return a, nil
}

// byRule counts the sieves as the state of --rule does.
func byRule(q *asked, m material.Material, a *Answer) (aglime.Value, error) {
	rule, ok := aglime.FinenessRuleOf(q.text("rule"))
	if !ok {
		var names []string
		for _, r := range aglime.FinenessRules() {
			names = append(names, strings.ToLower(r.State))
		}
		q.wrong("rule", fmt.Errorf("no fineness rule of %q is known; known: %s", q.text("rule"), strings.Join(names, "; ")))
		return aglime.Value{}, q.err
	}
	if m.CCE == 0 || len(m.Fineness) == 0 {
		q.wrong("rule", fmt.Errorf("a fineness rule needs --cce and --sieves"))
		return aglime.Value{}, q.err
	}
	if m.ECCE > 0 {
		q.wrong("ecce", fmt.Errorf("the bag's own effective value and --rule answer the same question: leave one out"))
		return aglime.Value{}, q.err
	}
	share, err := rule.Effective(m.CCE, m.Fineness, 0)
	if err != nil {
		return aglime.Value{}, err
	}
	v := aglime.Value{Full: share, FirstYear: share, Why: []agronomy.Reason{{Text: fmt.Sprintf("CCE %.4g %%, sieves as %s counts them (%s): %.1f %%.", float64(m.CCE), rule.State, rule.Basis, float64(share)), Source: rule.Source}}}
	switch rule.Basis {
	case "ENM":
		lb, err := aglime.ENM(m.CCE, m.Fineness)
		if err != nil {
			return v, err
		}
		a.More = append(a.More, fmt.Sprintf("As Missouri counts it that is %.0f lb ENM a ton.", float64(lb)))
	case "ENP", "ENP, three years":
		lb, err := aglime.ENP(m.CCE, m.Fineness, 0)
		if err != nil {
			return v, err
		}
		a.More = append(a.More, fmt.Sprintf("As %s counts it that is %.0f lb ENP a ton.", rule.State, float64(lb)))
	}
	return v, nil
}

// limeAmount reads --amount: a rate, or with --size a weight for all of it.
func (q *asked) limeAmount(size agronomy.SquareFeet) agronomy.PerThousand {
	w, err := agronomy.ParseWeight(q.text("amount"))
	if err != nil {
		return q.rate("amount")
	}
	if size == 0 {
		q.wrong("amount", fmt.Errorf("%q is a weight: give the --size of the area it goes on", q.text("amount")))
		return 0
	}
	return agronomy.PerThousand(float64(w) * 1000 / float64(size))
}

// expected answers what an amount of lime will do.
func expected(a Answer, c aglime.Case, amount agronomy.PerThousand, effective agronomy.Percent, why []agronomy.Reason) (Answer, error) {
	acts := amount * agronomy.PerThousand(effective) / 100
	ph, steps, err := aglime.ExpectedPH(c, acts)
	if err != nil {
		return a, err
	}
	low, high, err := aglime.ExpectedPHSpread(c, acts)
	if err != nil {
		return a, err
	}
	a.Text = fmt.Sprintf("pH about %.1f, between %.1f and %.1f, about a year on.", float64(ph), float64(low), float64(high))
	a.Values = map[string]any{"ph": rounded(float64(ph), 2), "ph_low": rounded(float64(low), 2), "ph_high": rounded(float64(high), 2),
		"effective_lb_per_1000_sqft": rounded(float64(acts), 2)}
	a.Why = append(append(why, agronomy.Reason{Text: fmt.Sprintf("Of %s, %.0f %% acts: %s", us.Rate(amount), float64(effective), bothRates(acts))}), steps...)
	return a, nil
}

// required answers how much lime it takes.
func required(a Answer, need aglime.Need, m material.Material, value aglime.Value, established bool, size agronomy.SquareFeet) (Answer, error) {
	a.Why = append(a.Why, need.Why...)
	a.Why = append(a.Why, need.Assumed...)
	a.Values = map[string]any{"effective_lb_per_1000_sqft": rounded(float64(need.Rate), 2), "low_lb_per_1000_sqft": rounded(float64(need.Low), 2),
		"high_lb_per_1000_sqft": rounded(float64(need.High), 2), "method": need.Method, "ph": rounded(float64(need.Reaches), 2)}
	if need.Rate == 0 {
		a.Text = "No lime is needed."
		a.Values["rate_lb_per_1000_sqft"], a.Values["dressings"] = 0, 0
		return a, nil
	}
	rate, err := aglime.MaterialRate(need.Rate, value.Full)
	if err != nil {
		return a, err
	}
	most, capped := aglime.Cap(m, established)
	parts, err := aglime.Dressings(rate, most)
	if err != nil {
		return a, err
	}
	a.Why = append(a.Why, value.Why...)
	a.Why = append(a.Why, agronomy.Reason{Text: fmt.Sprintf("%s ÷ %.0f %% = %s of this lime", us.Rate(need.Rate), float64(value.Full), bothRates(rate))}, capped)
	a.Text = bothRates(rate) + " of lime"
	if need.BelowTable {
		a.Text = "A first dressing of " + a.Text + ", as the soil is too acid for the tables; ask the laboratory for a buffer pH before more"
	}
	if len(parts) > 1 {
		a.Text += fmt.Sprintf(", in %d dressings of %s", len(parts), bothRates(parts[0]))
	}
	a.Text += "."
	a.Values["rate_lb_per_1000_sqft"], a.Values["dressings"] = rounded(float64(rate), 2), len(parts)
	if size > 0 {
		a.More = append(a.More, fmt.Sprintf("For %s: %s in all.", bothAreas(size), bothWeights(rate.Over(size))))
		a.Values["amount_lb"] = rounded(float64(rate.Over(size)), 2)
	}
	if need.Low < need.High {
		a.More = append(a.More, fmt.Sprintf("Methods differ: fully effective lime of %s to %s is as far as they lie apart.", bothRates(need.Low), bothRates(need.High)))
	}
	return a, nil
}

// sieves reads "8=100,60=75".
func sieves(q *asked) []material.Sieve {
	if !q.given("sieves") {
		return nil
	}
	var out []material.Sieve
	for part := range strings.SplitSeq(q.text("sieves"), ",") {
		mesh, passing, _ := strings.Cut(strings.TrimSpace(part), "=")
		m, err1 := strconv.Atoi(strings.TrimSpace(mesh))
		p, err2 := strconv.ParseFloat(strings.TrimSpace(passing), 64)
		if err1 != nil || err2 != nil || m < 2 || m > 400 || !(p >= 0 && p <= 100) {
			q.wrong("sieves", fmt.Errorf("%q is not of the form MESH=PERCENT, like 60=75", part))
			return nil
		}
		out = append(out, material.Sieve{Mesh: m, Passing: agronomy.Percent(p)})
	}
	return out
}
