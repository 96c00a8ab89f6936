package sitefile

import (
	"fmt"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/soil"
	"swardbook/schedule"
)

// readSoil reads the laboratory's results for an area.
func readSoil(t table, a schedule.Area) *agronomy.Report {
	r := &agronomy.Report{
		Depth:         quantity(t, "depth", between(agronomy.ParseDepth, 1, 24, "samples are taken 1 to 24 in deep")),
		Method:        readMethod(t),
		PH:            agronomy.PH(t.number("ph", 2, 12)),
		Texture:       a.Texture,
		CEC:           agronomy.Meq(t.number("cec", 0.1, 200)),
		Acidity:       agronomy.Meq(t.number("acidity", 0, 100)),
		OrganicMatter: quantity(t, "organic_matter", agronomy.ParsePercent),
		LowerPH:       t.flag("lower_ph"),
		TargetPH:      agronomy.PH(t.number("target_ph", 4.5, 8)),
	}
	if b := t.under("buffer"); t.given("buffer") {
		b.need("method", "the lab names it: "+list(agronomy.BufferMethods()))
		b.need("ph", "like ph = 6.4")
		r.Buffer = agronomy.Buffer{Method: choice(b, "method", agronomy.BufferMethods()...), PH: agronomy.PH(b.number("ph", 3, 9))}
	}
	layer := readLayer(t, r)
	r.Phosphorus = readReading(t, agronomy.Phosphorus, layer, r)
	r.Potassium = readReading(t, agronomy.Potassium, layer, r)
	r.Calcium = readReading(t, agronomy.Calcium, layer, r)
	r.Magnesium = readReading(t, agronomy.Magnesium, layer, r)
	r.Sulfur = readReading(t, agronomy.Sulfur, layer, r)
	r.Sodium = readReading(t, agronomy.Sodium, layer, r)
	r.Iron = readReading(t, agronomy.Iron, layer, r)
	r.Printed = readPrinted(t)

	unscaled := func(x agronomy.Reading) bool { return x.Given && !x.Wanted.Given }
	if !t.given("method") && (unscaled(r.Phosphorus) || unscaled(r.Potassium)) {
		t.doubt("method", "is missing, so phosphorus and potassium have no scale", "the lab names the extractant: "+list(agronomy.Extractants())+"; or give the lab's own optimum as wanted")
	}
	for _, s := range soil.Suspicious(*r) {
		at := t
		if !t.given(s.Field) { // a key of the area, not of its report, such as the texture
			at.path, _, _ = strings.Cut(t.path, ".soil")
		}
		message, hint, _ := strings.Cut(s.Text, ": ")
		at.doubt(s.Field, plain(message), strings.TrimSuffix(hint, "."))
	}
	return r
}

// readMethod reads the extractant by any usual spelling.
func readMethod(t table) agronomy.Extractant {
	name := t.text("method")
	if name == "" {
		return ""
	}
	e, ok := agronomy.ExtractantNamed(name)
	if !ok {
		t.wrong("method", fmt.Sprintf("unknown value %q", name), "known: "+list(agronomy.Extractants()))
	}
	return e
}

// readLayer gives the depth of the soil whose nutrient a figure in lb/acre counts, if the
// report says that this is the sampled depth; 0 where lb/acre is twice the ppm.
func readLayer(t table, r *agronomy.Report) agronomy.Inches {
	if !t.flag("lb_per_acre_depth") {
		return 0
	}
	t.need("depth", "lb_per_acre_depth says that pounds by the acre are those in the sampled depth, so give it, like depth = \"4 in\"")
	return r.Depth
}

// readPrinted reads the amounts that the laboratory's report recommends.
func readPrinted(t table) (p agronomy.Recommended) {
	rate := func(name string) *agronomy.PerThousand {
		if t.text(name) == "" {
			return nil
		}
		before := len(t.problems)
		v := quantity(t, name, agronomy.ParseRate)
		if len(t.problems) > before {
			return nil
		}
		return &v
	}
	p = agronomy.Recommended{Lime: rate("lime"), Nitrogen: rate("nitrogen"), Phosphate: rate("phosphate"), Potash: rate("potash")}
	acts := t.number("lime_ecce", 1, 180) // [common] as for a material
	switch {
	case t.given("lime_ecce") && !t.given("lime"):
		t.wrong("lime_ecce", "is the value of the lime that the laboratory counts in, and no lime is given", `give lime too, like lime = "60 lb/1000 sq ft"`)
	case acts > 0 && p.Lime != nil:
		*p.Lime *= agronomy.PerThousand(acts / 100)
	}
	for _, of := range []struct {
		key  string
		rate *agronomy.PerThousand
		most agronomy.PerThousand
	}{{"nitrogen", p.Nitrogen, 8}, {"phosphate", p.Phosphate, 8}, {"potash", p.Potash, 8}, {"lime", p.Lime, 400}} { // [common]
		if of.rate != nil && *of.rate > of.most {
			t.doubt(of.key, fmt.Sprintf("%q is more than laboratories ask for on a lawn in a year", t.text(of.key)), "is it by the acre, or of product instead of the nutrient?")
		}
	}
	return p
}

// readReading reads "14 ppm", or a table of what was found and the lab's own
// optimum.
func readReading(t table, n agronomy.Nutrient, layer agronomy.Inches, r *agronomy.Report) agronomy.Reading {
	name, found := string(n), t.text(string(n))
	var wanted []string
	if sub := t.under(name); sub.values != nil {
		sub.need("found", `like found = "14 ppm"`)
		sub.need("wanted", `the lab's own optimum, like wanted = ["12 ppm", "20 ppm"]`)
		if v, ok := sub.values["wanted"].([]any); ok && len(v) == 0 {
			sub.wrong("wanted", "is an empty list", `like wanted = ["12 ppm", "20 ppm"]`)
		}
		wanted = sub.texts("wanted")
		if one := sub.text("wanted"); one != "" {
			wanted = []string{one}
		}
		t, name, found = sub, "found", sub.text("found")
	}
	var reading agronomy.Reading
	if found != "" {
		var err error
		if reading, err = soil.ParseReading(n, found, layer, r.CEC); err != nil {
			t.refuse(name, err)
		}
	}
	if len(wanted) > 0 {
		o, err := soil.ParseOptimum(n, wanted, layer, r.CEC)
		if err != nil {
			t.refuse("wanted", err)
		}
		reading.Wanted = o
	}
	return reading
}
