package soil

import (
	"cmp"
	"fmt"
	"slices"

	"swardbook/agronomy"
)

// Findings says what each figure of a report means and what it cannot say,
// ranked by what limits the grass most: a sour or chalky soil, phosphorus
// under new grass, nitrogen (of which a report knows nothing), potassium, the
// lesser nutrients, salt, iron; then what is well. [common] order, after the
// limits of a report in [psu-report-notes] and [uconn-lawn-practices].
// An empty report has no findings.
func Findings(r agronomy.Report, s agronomy.Stand, state string, isNew bool) []Finding {
	type ranked struct {
		order int
		Finding
	}
	var all []ranked
	add := func(order int, f Finding) { all = append(all, ranked{order, f}) }
	if r.PH > 0 {
		add(phFinding(r, s))
	}
	for i, n := range Nutrients() {
		if !r.Reading(n).Given {
			continue
		}
		f := nutrientFinding(r, n, state, isNew)
		f.Text += acreWords(r, n, state)
		order := 100 + i
		switch short := f.Level == Low || f.Level == VeryLow; {
		case n == agronomy.Phosphorus && short && isNew:
			order = 20
		case n == agronomy.Phosphorus && short:
			order = 35
		case n == agronomy.Potassium && short:
			order = 40
		case n == agronomy.Sodium && (f.Level == High || f.Level == VeryHigh):
			order = 60
		case n == agronomy.Iron && short:
			order = 70
		case n != agronomy.Sodium && short:
			order = 50 + i
		}
		add(order, f)
	}
	if len(all) == 0 {
		return nil
	}
	add(30, Finding{Reading: "nitrogen", Level: Unknown,
		Text:   "No soil test tells how much nitrogen turf needs; it is planned from the grass, the care it gets and its age.",
		Source: "psu-report-notes", Why: []agronomy.Reason{{Text: "No reliable test is used for turf.", Source: "psu-report-notes"}}})
	if r.OrganicMatter > 0 {
		add(120, organicFinding(r.OrganicMatter))
	}
	if r.CEC > 0 {
		add(121, cecFinding(r))
	}
	slices.SortStableFunc(all, func(a, b ranked) int { return cmp.Compare(a.order, b.order) })
	out := make([]Finding, len(all))
	for i, f := range all {
		out[i] = f.Finding
		out[i].Rank = i + 1
	}
	return out
}

// SulfurFreeLime is the pH over which the soil holds free lime.
const SulfurFreeLime agronomy.PH = 8.2 // [common]

// RichSoil is the organic matter above which a soil feeds the grass in part.
const RichSoil agronomy.Percent = 5.0 // [common] from memory

// The pH bounds that limit any grass.
const (
	acidLimit   agronomy.PH = 5.5            // [mlsn-2014] aluminum dissolves below
	chalkyLimit             = SulfurFreeLime // over this sulfur moves nothing
)

// phFinding places the pH on the grass's range: half a unit under it is very
// low, over free lime very high. [common]
func phFinding(r agronomy.Report, s agronomy.Stand) (order int, f Finding) {
	target, low, high := s.TargetPH()
	why := s.WhyPH()
	if r.TargetPH > 0 {
		target = r.TargetPH
		why = append(why, agronomy.Reason{Text: fmt.Sprintf("the target asked for: pH %.1f", float64(target))})
	}
	f = Finding{Reading: "ph", Value: float64(r.PH), Level: Medium, Source: scaleSource(why), Why: why}
	order = 99
	switch {
	case r.PH <= low-0.5:
		f.Level = VeryLow
		f.Text = fmt.Sprintf("The soil is far too acid for this grass, which does best at about %.1f: feeding does little and roots stay short until it is limed.", float64(target))
	case r.PH < low:
		f.Level = Low
		f.Text = fmt.Sprintf("The soil is a little too acid for this grass, which does best at about %.1f: lime helps everything else.", float64(target))
	case r.PH <= high:
		f.Text = fmt.Sprintf("The pH suits this grass (%.1f to %.1f).", float64(low), float64(high))
	case r.PH <= chalkyLimit:
		f.Level = High
		f.Text = fmt.Sprintf("The pH is above what this grass likes (%.1f to %.1f) and is accepted: no lime.", float64(low), float64(high))
		if why, likely := IronShort(r, s); likely {
			f.Text += " Where young leaves turn yellow, spray iron on them."
			f.Why = append(f.Why, why...)
		}
		f.Why = append(f.Why, agronomy.Reason{Text: "On established turf sulfur does little; it is planned only where the site file asks for it, lower_ph = true.", Source: "purdue-sulfur"})
	default:
		f.Level = VeryHigh
		f.Text = "The soil is calcareous, and that is accepted: no lime; expect yellow young leaves from lack of iron, and spray iron on them. The free lime in it uses up sulfur."
	}
	switch {
	case r.PH < acidLimit && r.PH < low, r.PH > chalkyLimit:
		order = 10
	case f.Level != Medium:
		order = 25
	}
	if r.PH < acidLimit {
		f.Why = append(f.Why, agronomy.Reason{Text: "Below pH 5.5 aluminum dissolves and stunts roots.", Source: "mlsn-2014"})
	}
	if r.Buffer.PH > 0 {
		f.Why = append(f.Why, agronomy.Reason{Text: fmt.Sprintf("The pH says whether lime is wanted; the buffer pH of %.2f says how much.", float64(r.Buffer.PH))})
	}
	return order, f
}

// scaleSource is the first source in a working that is not about converting units.
func scaleSource(why []agronomy.Reason) string {
	for _, w := range why {
		if w.Source != "" && w.Source != "definitions" && w.Source != "atomic-weights" {
			return w.Source
		}
	}
	return ""
}

// nutrientFinding says what one nutrient's reading means.
func nutrientFinding(r agronomy.Report, n agronomy.Nutrient, state string, isNew bool) Finding {
	reading := r.Reading(n)
	s := StandingOf(r, n, state)
	why := s.Why()
	f := Finding{Reading: string(n), Value: float64(reading.PPM), Unit: "ppm", Level: s.Level, Source: scaleSource(why),
		Why: slices.Concat(reading.Steps, why)}
	if share, ok := Saturation(n, reading.PPM, r.CEC); ok {
		if n == agronomy.Sodium {
			f.Value, f.Unit = float64(share), "% of CEC"
		} else {
			f.Why = append(f.Why, agronomy.Reason{Text: "It holds " + agronomy.Tenths(share) + " % of the CEC.", Source: "atomic-weights"})
		}
	}
	if s.Level == Unknown {
		f.Text = fmt.Sprintf("There is no sure way to read this %s figure: %s", n, lowerFirst(why[0].Text))
		return f
	}
	if s.enough && s.Level == Medium {
		f.Text = fmt.Sprintf("%s is in its optimum: nothing to do.", agronomy.Capital(string(n)))
		if n == agronomy.Sodium {
			f.Text = sodiumWords(Medium)
		}
		return f
	}
	f.Text = nutrientWords(n, s.Level, r, isNew)
	if n == agronomy.Phosphorus && r.Method == agronomy.Mehlich3 && reading.PPM > 200 { // [psu-m3p]
		f.Why = append(f.Why, agronomy.Reason{Text: "Above 200 ppm by Mehlich-3, phosphorus in run-off can harm streams.", Source: "psu-m3p"})
	}
	return f
}

// acreWords says how a figure per acre was read, if counted over the sampled depth it
// would be of another level.
func acreWords(r agronomy.Report, n agronomy.Nutrient, state string) string {
	reading := r.Reading(n)
	if !reading.Doubled || r.Depth <= 0 || reading.Wanted.Given || r.Method == agronomy.Mehlich1 { // whose bands are in the sheet's own lb/acre
		return ""
	}
	deep := reading
	deep.PPM = reading.PerAcre.PPM(r.Depth)
	here := StandingOf(r, n, state).Level
	there := stand(n, deep, r.Method, r.Texture, state, r.CEC).Level
	if here == there {
		return ""
	}
	return fmt.Sprintf(" %s is read as twice the ppm, %s ppm. If it counts the pounds in the %s in sampled, it is %s ppm, %s: then set lb_per_acre_depth = true.",
		reading.AsGiven, agronomy.Figure(reading.PPM), agronomy.Figure(r.Depth), agronomy.Figure(deep.PPM), there)
}

// nutrientWords are the plain words for a level.
func nutrientWords(n agronomy.Nutrient, l Level, r agronomy.Report, isNew bool) string {
	short, ample := l == Low || l == VeryLow, l == High || l == VeryHigh
	switch n {
	case agronomy.Phosphorus:
		switch {
		case short && isNew:
			return "Phosphorus is low just where seedlings need it: a starter with the seed will show."
		case short:
			return "Phosphorus is low: roots and spread suffer, and a modest yearly dose helps."
		case ample:
			return "There is enough phosphorus: use feed without it. More would only wash into water."
		}
		return "Phosphorus is fair: a small dose may or may not show."
	case agronomy.Potassium:
		switch {
		case short:
			return "Potassium is low: the turf stands wear, drought and winter badly until it is raised."
		case ample:
			return "There is enough potassium: none is needed, and potassium for the winter does harm."
		}
		return "Potassium is fair: a moderate dose keeps it so."
	case agronomy.Calcium:
		switch {
		case short && r.PH > 0 && r.PH < 6.5: // [common] under the usual target
			return "Calcium is low, as in most acid soils: the lime that raises the pH brings it."
		case short:
			return "Calcium is low though the pH is not: gypsum brings it without changing the pH. A true lack of it is rare."
		case ample:
			return "There is enough calcium. A high figure on calcareous soil says little: the test dissolves the lime itself."
		}
		return "Calcium is fair: nothing to do."
	case agronomy.Magnesium:
		switch {
		case short:
			return "Magnesium is low: choose a dolomitic lime if lime is needed, otherwise magnesium sulfate."
		case ample:
			return "There is enough magnesium: choose a calcitic lime. Balancing it against calcium does nothing for turf."
		}
		return "Magnesium is fair: nothing to do."
	case agronomy.Sulfur:
		switch {
		case short:
			return "Sulfur is low: use some nitrogen as ammonium sulfate. Rain and soil life bring more than the test sees."
		case ample:
			return "There is enough sulfur. A high figure points to gypsum, sulfate feed or wet, airless soil."
		}
		return "Sulfur is fair: nothing to do."
	case agronomy.Sodium:
		return sodiumWords(l)
	}
	switch {
	case short:
		return "Iron is low for this test, yet leaf color tells more: try a strip sprayed with iron."
	case ample:
		return "There is plenty of iron, as is usual in acid soil. At a high pH yellow leaves may still need it sprayed on."
	}
	return "Iron is fair; the test says little about color, which depends on the pH."
}

func sodiumWords(l Level) string {
	switch l {
	case VeryHigh:
		return "Sodium is high enough to seal the soil: gypsum, then plenty of water and drainage. Ask where it comes from first."
	case High:
		return "Sodium is above the usual ceiling: rinse with good water after winter or salty irrigation, and test again."
	case Medium:
		return "Sodium is worth watching: look to road salt, softened or salty water."
	}
	return "Sodium is no worry."
}

func organicFinding(om agronomy.Percent) Finding {
	f := Finding{Reading: "organic_matter", Value: float64(om), Unit: "%", Level: Medium, Source: "common",
		Text: "Organic matter is ordinary: it stores water and feeds slowly."}
	switch {
	case om < 2: // [common]
		f.Level, f.Text = Low, "Organic matter is low: feed in small doses, and leave the clippings."
	case om > RichSoil:
		f.Level, f.Text = High, "Organic matter is high: the soil feeds the grass by itself in warm, moist weeks, so less nitrogen is needed."
	}
	f.Why = []agronomy.Reason{{Text: "Each 1 % may set free about half a pound of nitrogen a year where it is warm and moist (from memory).", Source: "common"}}
	return f
}

func cecFinding(r agronomy.Report) Finding {
	f := Finding{Reading: "cec", Value: float64(r.CEC), Unit: "meq/100 g", Level: Medium, Source: "tristate-2020, common",
		Text: "The soil holds nutrients reasonably well."}
	switch {
	case r.CEC < 5: // [tristate-2020]
		f.Level, f.Text = Low, "The soil holds few nutrients: feed small doses more often. A little lime changes its pH much."
	case r.CEC > 20: // [common]
		f.Level, f.Text = High, "The soil holds many nutrients: it takes much lime to change its pH, and that is slow."
	}
	f.Why = append([]agronomy.Reason{{Text: "Under 5 meq/100 g a soil holds little, over 20 a great deal.", Source: f.Source}}, Saturations(r)...)
	return f
}

func lowerFirst(s string) string {
	if s[0] >= 'A' && s[0] <= 'Z' {
		return string(s[0]-'A'+'a') + s[1:]
	}
	return s
}
