package sitefile

import (
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/soil"
	"swardbook/schedule"
)

// readSoil reads the laboratory's results for an area.
func readSoil(t table, a schedule.Area) *agronomy.Report {
	r := &agronomy.Report{
		Depth:         quantity(t, "depth", between(agronomy.ParseDepth, 1, 24, "samples are taken 1 to 24 in deep")),
		Method:        choice(t, "method", agronomy.Extractants()...),
		PH:            agronomy.PH(t.number("ph", 2, 12)),
		Texture:       a.Texture,
		CEC:           agronomy.Meq(t.number("cec", 0.1, 200)),
		Acidity:       agronomy.Meq(t.number("acidity", 0, 100)),
		OrganicMatter: quantity(t, "organic_matter", agronomy.ParsePercent),
		TargetPH:      agronomy.PH(t.number("target_ph", 4.5, 8)),
	}
	if b := t.under("buffer"); t.given("buffer") {
		b.need("method", "the lab names it: "+list(agronomy.BufferMethods()))
		b.need("ph", "like ph = 6.4")
		r.Buffer = agronomy.Buffer{Method: choice(b, "method", agronomy.BufferMethods()...), PH: agronomy.PH(b.number("ph", 3, 9))}
	}
	r.Phosphorus = readReading(t, agronomy.Phosphorus, r)
	r.Potassium = readReading(t, agronomy.Potassium, r)
	r.Calcium = readReading(t, agronomy.Calcium, r)
	r.Magnesium = readReading(t, agronomy.Magnesium, r)
	r.Sulfur = readReading(t, agronomy.Sulfur, r)
	r.Sodium = readReading(t, agronomy.Sodium, r)
	r.Iron = readReading(t, agronomy.Iron, r)

	unscaled := func(x agronomy.Reading) bool { return x.Given && !x.Wanted.Given }
	if !t.given("method") && (unscaled(r.Phosphorus) || unscaled(r.Potassium)) {
		t.doubt("method", "is missing, so phosphorus and potassium have no scale", "the lab names the extractant: "+list(agronomy.Extractants())+"; or give the lab's own optimum as wanted")
	}
	for _, s := range soil.Suspicious(*r, t.site.Place.State) {
		at := t
		if !t.given(s.Field) { // the texture stands with the area
			at.path, _, _ = strings.Cut(t.path, ".soil")
		}
		message, hint, _ := strings.Cut(s.Text, ": ")
		at.doubt(s.Field, plain(message), strings.TrimSuffix(hint, "."))
	}
	return r
}

// readReading reads "14 ppm", or a table of what was found and what the lab
// itself wants.
func readReading(t table, n agronomy.Nutrient, r *agronomy.Report) agronomy.Reading {
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
		if reading, err = soil.ParseReading(n, found, r.Depth, r.CEC); err != nil {
			t.refuse(name, err)
		}
	}
	if len(wanted) > 0 {
		o, err := soil.ParseOptimum(n, wanted, r.Depth, r.CEC)
		if err != nil {
			t.refuse("wanted", err)
		}
		reading.Wanted = o
	}
	return reading
}
