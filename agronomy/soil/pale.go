package soil

import "swardbook/agronomy"

// Pale is the answer, as far as a soil report can give one, to "why is it pale
// here?": what fits, what the report speaks against, and what to look at next.
type Pale struct {
	Fits     []agronomy.Reason
	Against  []agronomy.Reason
	LookNext []agronomy.Reason
}

// WhyPale goes through the causes of pale turf that a report bears on.
func WhyPale(r agronomy.Report, s agronomy.Stand, state string, isNew bool) Pale {
	var p Pale
	fits := func(source, text string) { p.Fits = append(p.Fits, agronomy.Reason{Text: text, Source: source}) }
	against := func(source, text string) { p.Against = append(p.Against, agronomy.Reason{Text: text, Source: source}) }
	limit, ironWhy := IronPH(s)
	highPH := r.PH > limit
	fits("az-iron, uga-tissue", "Lack of nitrogen, if the paleness is even, began on the oldest leaves and growth is slow. No report can show or rule it out.")
	if r.PH > 0 {
		_, low, _ := s.TargetPH()
		if r.PH < acidLimit && r.PH < low {
			fits("common", "Acid soil: at pH "+r.PH.Words()+" roots are stunted and feed seems to do nothing.")
		}
		if highPH {
			fits(ironWhy.Source, "Lack of iron: pH "+r.PH.Words()+" keeps it from the roots of this grass, whatever the iron reading says. Young leaves yellow between green veins.")
		} else {
			against("az-iron", "Lack of iron from a high pH: "+r.PH.Words()+" is not high for this grass. Cold, wet or scalped turf can still show it.")
		}
	}
	level := func(n agronomy.Nutrient) (l Level, given bool) {
		l = LevelIn(r, n, state)
		return l, r.Reading(n).Given && l != Unknown
	}
	if l, ok := level(agronomy.Iron); ok {
		switch {
		case l == Low || l == VeryLow:
			fits("rutgers-levels", "Little iron: "+agronomy.Figure(r.Iron.PPM)+" ppm is low by the scale.")
		case !highPH:
			against("rutgers-levels", "Lack of iron in the soil itself: "+agronomy.Figure(r.Iron.PPM)+" ppm is enough.")
		}
	}
	if l, ok := level(agronomy.Phosphorus); ok {
		switch {
		case l == VeryHigh && highPH:
			fits("az-iron", "Very high phosphorus makes iron still harder to get.")
		case l == VeryHigh:
			fits("az-iron", "Lack of iron from very high phosphorus, which ties it up, though the pH is not high.")
		case (l == Low || l == VeryLow) && isNew:
			fits("psu-fert-copy, uga-tissue", "Low phosphorus under seedlings: dark or purple and slow, more than pale. Cold soil does the same.")
		}
	}
	for _, c := range []struct {
		of             agronomy.Nutrient
		sign           string
		source, enough string
	}{
		{agronomy.Sulfur, "young and old leaves pale, as with nitrogen, on sand poor in organic matter (from memory)", "common", "of sulfur"},
		{agronomy.Magnesium, "older leaves yellow between the veins or red at the edge (from memory)", "common", "of magnesium"},
		{agronomy.Potassium, "thin turf with scorched tips and edges, more than paleness", "uga-tissue", "of potassium"},
	} {
		l, ok := level(c.of)
		switch {
		case !ok:
		case l == Low || l == VeryLow:
			fits(c.source, "Low "+string(c.of)+": "+c.sign+".")
		default:
			against(c.source, "Lack "+c.enough+": the reading is "+string(l)+".")
		}
	}
	if l, ok := level(agronomy.Sodium); ok && (l == High || l == VeryHigh) {
		fits("handbook60", "Salt: brown tips, crusts, thin along roads and walks.")
	}
	p.LookNext = lookNext(r)
	return p
}

// lookNext is what to do where the report ends.
func lookNext(r agronomy.Report) []agronomy.Reason {
	next := []agronomy.Reason{
		{Text: "Which leaves are pale? The oldest first points to nitrogen; the youngest, striped yellow and green, to iron.", Source: "az-iron"},
		{Text: "Feed one strip with a little nitrogen and spray another with iron: iron colors in one to three days, nitrogen in one to two weeks.", Source: "az-iron"},
		{Text: "Patches, rings, sharp edges or one side of the lawn are disease, insects, drought, rubble, dogs or a spreader's miss, not hunger: dig and look.", Source: "common"},
		{Text: "Shade, compaction, wet ground and traffic do not show on a report.", Source: "uconn-lawn-practices"},
	}
	if r.PH == 0 {
		next = append([]agronomy.Reason{{Text: "There is no pH to go by: have the soil tested first.", Source: "psu-report-notes"}}, next...)
	}
	return next
}
