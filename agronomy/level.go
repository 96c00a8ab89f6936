package agronomy

import (
	"fmt"
	"slices"
)

// scale is one published ladder of levels for one nutrient under one
// extractant. Each edge is the upper end of its class, in ppm, and belongs to
// it; the very low class ends just below veryLow.
type scale struct {
	name    string
	source  string
	veryLow PPM  // below: very low
	low     PPM  // below: low
	medium  PPM  // up to: medium
	high    PPM  // up to: high; above: very high
	enough  bool // the scale's medium is an optimum: nothing wanted
	notes   []Reason
}

// halves completes a scale of three classes. Published turf scales stop at
// low, medium and high; half the low end and twice the high end are this
// tool's own edges for the outer two. [common]
func halves(name, source string, low, medium PPM) scale {
	return scale{name: name, source: source, veryLow: low / 2, low: low, medium: medium, high: 2 * medium} // [common]
}

// level places a reading on the scale.
func (s scale) level(ppm PPM) Level {
	switch {
	case ppm < s.veryLow:
		return VeryLow
	case ppm < s.low:
		return Low
	case ppm <= s.medium:
		return Medium
	case ppm <= s.high:
		return High
	}
	return VeryHigh
}

// says is the reading placed on the scale, in words.
func (s scale) says(ppm PPM) Reason {
	medium := "medium"
	if s.enough {
		medium = "optimum"
	}
	word := string(s.level(ppm))
	if s.enough && word == "medium" {
		word = "in the optimum"
	}
	return Reason{s.name + ": " + figure(ppm) + " ppm is " + word + "; " + medium + " is " + figure(s.low) + " to " + figure(s.medium) + " ppm", s.source}
}

// standing is where a reading stands, for the needs that follow.
type standing struct {
	level  Level
	enough bool  // medium already means nothing is wanted
	ppm    PPM   // the figure that was placed
	scale  scale // on this; without a name there is none, and the notes say why
	notes  []Reason

	// How others see it, for a published scale.
	nutrient Nutrient
	method   Extractant
	cec      Meq
}

// why says which scale it was and what the reading is on it, then where other
// published scales see it differently.
func (s standing) why() []Reason {
	if s.scale.name == "" {
		return s.notes
	}
	why := slices.Concat([]Reason{s.scale.says(s.ppm)}, s.scale.notes, s.notes)
	if s.nutrient == "" {
		return why
	}
	return append(why, others(s.nutrient, s.ppm, s.method, s.cec)...)
}

// grid is the level to look up in a table of amounts: a reading inside an
// optimum is treated as high, which asks for nothing but a starter.
func (s standing) grid() Level {
	if s.enough && s.level == Medium {
		return High
	}
	return s.level
}

// LevelOf places a reading on the scale for its extractant and says which
// scale it was, and where other published scales see it differently. Texture,
// state and CEC choose among bands; any may be empty or zero. Unknown means
// that no scale here fits, and the reasons say whom to ask.
func LevelOf(n Nutrient, ppm PPM, method Extractant, texture Texture, state string, cec Meq) (Level, []Reason) {
	s := stand(n, Reading{Given: true, PPM: ppm}, method, texture, state, cec)
	return s.level, s.why()
}

// Level places one reading of the report. The lab's own optimum, where it
// printed one, comes before every scale.
func (r Report) Level(n Nutrient, state string) Level { return r.standing(n, state).level }

func (r Report) standing(n Nutrient, state string) standing {
	reading := r.Reading(n)
	switch {
	case !reading.Given:
		return standing{level: Unknown, notes: []Reason{{Text: "The report gives no " + string(n) + "."}}}
	case reading.Wanted.Given:
		o := reading.Wanted
		s := halves("the laboratory's own optimum", "", o.Low, o.High)
		s.enough = true
		return standing{level: s.level(reading.PPM), enough: true, ppm: reading.PPM, scale: s}
	}
	return stand(n, reading, r.Method, r.Texture, state, r.CEC)
}

// stand picks the scale and places the reading on it.
func stand(n Nutrient, reading Reading, method Extractant, texture Texture, state string, cec Meq) standing {
	if n == Sodium {
		return sodiumStanding(reading.PPM, cec)
	}
	s, ok, notes := scaleFor(n, method, texture, state)
	if !ok {
		return standing{level: Unknown, notes: notes}
	}
	ppm := reading.PPM
	if method == Mehlich1 && reading.PerAcre > 0 {
		// These bands are printed for the sheet's own lb/acre.
		ppm = PPM(reading.PerAcre / 2) // [uga-sod-769]
		notes = append(notes, Reason{fmt.Sprintf("The bands are printed in the sheet's own lb/acre, so %s lb/acre is read on them as it stands.", figures(reading.PerAcre, 4)), s.source})
	}
	return standing{s.level(ppm), s.enough, ppm, s, notes, n, method, cec}
}

// scaleFor picks the scale that ships for an extractant.
func scaleFor(n Nutrient, method Extractant, texture Texture, state string) (scale, bool, []Reason) {
	none := func(text string) (scale, bool, []Reason) {
		return scale{}, false, []Reason{{Text: text}}
	}
	switch method {
	case Mehlich3:
		if s, ok := mehlich3Scale(n, texture); ok {
			return s, true, nil
		}
	case Mehlich1:
		if s, notes, ok := georgiaScale(n, texture, state); ok {
			return s, true, notes
		}
	case ModifiedMorgan:
		if s, ok := modifiedMorganScale(n); ok {
			return s, true, nil
		}
	case Bray1, Olsen, AmmoniumAcetate:
		return cationLabScale(n, method, texture)
	case Morgan:
		return none("No turf scale for the Morgan extractant is held here, and no conversion from another is safe: give the optimum printed on the sheet as wanted, or ask the lab for its own rating.")
	case "":
		return none(fmt.Sprintf("The report does not name the extractant, and a %s figure means nothing without it: ask the lab, or give the optimum it printed.", n))
	}
	return none(fmt.Sprintf("No scale for %s by %s is held here: give the optimum printed on the sheet as wanted, or ask the lab for its own rating.", n, method))
}

// sandy says whether a soil counts as sand on the scales that part sand from
// the rest.
func sandy(t Texture) bool { return t == Sand || t == LoamySand } // [common]
