package soil

import (
	"fmt"
	"slices"

	"swardbook/agronomy"
)

// scale is one published scale of levels for one nutrient under one
// extractant. Each edge is the upper end of its class, in ppm, and belongs to
// it; the very low class ends just below veryLow.
type scale struct {
	name    string
	source  string
	veryLow agronomy.PPM // below: very low
	Low     agronomy.PPM // below: low
	Medium  agronomy.PPM // up to: medium
	high    agronomy.PPM // up to: high; above: very high
	enough  bool         // the scale's medium is an optimum: nothing wanted
	notes   []agronomy.Reason
}

// halves completes a scale of three classes. Published turf scales stop at
// low, medium and high; half the low end and twice the high end are this
// tool's own edges for the outer two. [common]
func halves(name, source string, low, medium agronomy.PPM) scale {
	return scale{name: name, source: source, veryLow: low / 2, Low: low, Medium: medium, high: 2 * medium} // [common]
}

// level places a reading on the scale.
func (s scale) level(ppm agronomy.PPM) Level {
	switch {
	case ppm < s.veryLow:
		return VeryLow
	case ppm < s.Low:
		return Low
	case ppm <= s.Medium:
		return Medium
	case ppm <= s.high:
		return High
	}
	return VeryHigh
}

// says is the reading placed on the scale, in words.
func (s scale) says(ppm agronomy.PPM) agronomy.Reason {
	medium := "medium"
	if s.enough {
		medium = "optimum"
	}
	word := string(s.level(ppm))
	if s.enough && word == "medium" {
		word = "in the optimum"
	}
	return agronomy.Reason{Text: s.name + ": " + agronomy.Figure(ppm) + " ppm is " + word + "; " + medium + " is " + agronomy.Figure(s.Low) + " to " + agronomy.Figure(s.Medium) + " ppm", Source: s.source}
}

// standing is where a reading stands, for the needs that follow.
type standing struct {
	Level  Level
	enough bool         // medium already means nothing is wanted
	Ppm    agronomy.PPM // the figure that was placed
	scale  scale        // on this; without a name there is none, and the notes say why
	notes  []agronomy.Reason

	// How others see it, for a published scale.
	nutrient agronomy.Nutrient
	method   agronomy.Extractant
	cec      agronomy.Meq
}

// Why says which scale it was and what the reading is on it, then where other
// published scales see it differently.
func (s standing) Why() []agronomy.Reason {
	if s.scale.name == "" {
		return s.notes
	}
	why := slices.Concat([]agronomy.Reason{s.scale.says(s.Ppm)}, s.scale.notes, s.notes)
	if s.nutrient == "" {
		return why
	}
	return append(why, others(s.nutrient, s.Ppm, s.method, s.cec)...)
}

// Grid is the level to look up in a table of amounts: a reading inside an
// optimum is treated as high, which asks for nothing but a starter.
func (s standing) Grid() Level {
	if s.enough && s.Level == Medium {
		return High
	}
	return s.Level
}

// LevelIn places one reading of the report. The lab's own optimum, where it
// printed one, comes before every scale.
func LevelIn(r agronomy.Report, n agronomy.Nutrient, state string) Level {
	return StandingOf(r, n, state).Level
}

// StandingOf is [LevelIn] with all that a need goes by: the scale, its working and its
// notes.
func StandingOf(r agronomy.Report, n agronomy.Nutrient, state string) standing {
	reading := r.Reading(n)
	switch {
	case !reading.Given:
		return standing{Level: Unknown, notes: []agronomy.Reason{{Text: "The report gives no " + string(n) + "."}}}
	case reading.Wanted.Given:
		o := reading.Wanted
		s := halves("the laboratory's own optimum", "", o.Low, o.High)
		s.enough = true
		return standing{Level: s.level(reading.PPM), enough: true, Ppm: reading.PPM, scale: s}
	}
	return stand(n, reading, r.Method, r.Texture, state, r.CEC)
}

// stand picks the scale and places the reading on it.
func stand(n agronomy.Nutrient, reading agronomy.Reading, method agronomy.Extractant, texture agronomy.Texture, state string, cec agronomy.Meq) standing {
	if n == agronomy.Sodium {
		return sodiumStanding(reading.PPM, cec)
	}
	s, ok, notes := ScaleFor(n, method, texture, state)
	if !ok {
		return standing{Level: Unknown, notes: notes}
	}
	ppm := reading.PPM
	if method == agronomy.Mehlich1 && reading.PerAcre > 0 {
		// These bands are printed for the sheet's own lb/acre.
		ppm = agronomy.PPM(reading.PerAcre / 2) // [uga-sod-769]
		notes = append(notes, agronomy.Reason{Text: fmt.Sprintf("The bands are printed in the sheet's own lb/acre, so %s lb/acre is read on them as it stands.", agronomy.Figures(reading.PerAcre, 4)), Source: s.source})
	}
	return standing{s.level(ppm), s.enough, ppm, s, notes, n, method, cec}
}

// ScaleFor picks the scale by which this tool goes for an extractant, and says where other
// published ones differ.
func ScaleFor(n agronomy.Nutrient, method agronomy.Extractant, texture agronomy.Texture, state string) (scale, bool, []agronomy.Reason) {
	none := func(text string) (scale, bool, []agronomy.Reason) {
		return scale{}, false, []agronomy.Reason{{Text: text}}
	}
	switch method {
	case agronomy.Mehlich3:
		if s, ok := mehlich3Scale(n, texture); ok {
			return s, true, nil
		}
	case agronomy.Mehlich1:
		if s, notes, ok := georgiaScale(n, texture, state); ok {
			return s, true, notes
		}
	case agronomy.ModifiedMorgan:
		if s, ok := modifiedMorganScale(n); ok {
			return s, true, nil
		}
	case agronomy.Bray1, agronomy.Olsen, agronomy.AmmoniumAcetate:
		return cationLabScale(n, method, texture)
	case agronomy.Morgan:
		return none("No turf scale for the Morgan extractant is held here, and no conversion from another is safe: give the optimum printed on the sheet as wanted, or ask the lab for its own rating.")
	case "":
		return none(fmt.Sprintf("The report does not name the extractant, and a %s figure means nothing without it: ask the lab, or give the optimum it printed.", n))
	}
	return none(fmt.Sprintf("No scale for %s by %s is held here: give the optimum printed on the sheet as wanted, or ask the lab for its own rating.", n, method))
}

// Sandy says whether a soil counts as sand on the scales that part sand from
// the rest.
func Sandy(t agronomy.Texture) bool { return t == agronomy.Sand || t == agronomy.LoamySand } // [common]
