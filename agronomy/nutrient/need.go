package nutrient

import (
	"errors"
	"fmt"
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/soil"
)

// Need is what a year should bring of one nutrient, as the bag counts
// it: P2O5, K2O, and magnesium and sulfur as elements.
type Need struct {
	Year    agronomy.PerThousand // in all, no more than turf can use in a year
	Carried agronomy.PerThousand // beyond that: left for the next report to decide
	Single  agronomy.PerThousand // the most to put down at once
	Level   soil.Level
	Why     []agronomy.Reason
	Assumed []agronomy.Reason
}

// ErrNoReading marks a need that cannot be worked out because the report is
// silent; ErrNoScale one whose reading fits no scale held here.
var (
	ErrNoReading = errors.New("not on the soil report")
	ErrNoScale   = errors.New("no scale for this reading")
)

// The most that goes down, in lb/1000 sq ft. No text states the single doses
// and the yearly P2O5; Georgia's lawn sheets allow 2 lb at once.
const (
	singleP2O5 agronomy.PerThousand = 1.0 // [common]
	yearP2O5   agronomy.PerThousand = 2.0 // [common]
	singleK2O  agronomy.PerThousand = 1.0 // [common]
	yearK2O    agronomy.PerThousand = 4.0 // [common]
	singleMg   agronomy.PerThousand = 1.0 // [common] well under Penn State's bound for splitting [psu-report-notes]
	yearMg     agronomy.PerThousand = 1.0 // [common]
)

// amounts is a row of pounds by level.
type amounts struct{ veryLow, low, medium, high agronomy.PerThousand }

func (a amounts) at(l soil.Level) agronomy.PerThousand {
	switch l {
	case soil.VeryLow:
		return a.veryLow
	case soil.Low:
		return a.low
	case soil.Medium:
		return a.medium
	case soil.High:
		return a.high
	}
	return 0
}

// The table of amounts by level is a working compromise, not any one state's.
// Seen figures that bear it out on established turf: very low P 1.35 to 2.6,
// low P 0.7 to 2.0, medium K 0.8 to 1.4, low K 1.4 to 3.0. Medium P and most
// of the column for new turf rest on common practice alone.
var (
	p2o5New         = amounts{3.0, 2.0, 1.0, 0.5} // [common] [purdue-p] [unl-renovate]
	p2o5Established = amounts{1.5, 1.0, 0.5, 0}   // [common]
	k2oNew          = amounts{3.0, 2.0, 1.0, 0}   // [common]
	k2oEstablished  = amounts{3.0, 2.0, 1.0, 0}   // [common] [umn-lawn-report] [askhrgreen]
)

// PhosphorusNeed gives a year's P2O5. New turf is sown this season; its amount
// goes in with the seed. The error is ErrNoReading or ErrNoScale.
func PhosphorusNeed(r agronomy.Report, state string, isNew bool) (Need, error) {
	by, source := p2o5Established, "common"
	if isNew {
		by, source = p2o5New, "common, purdue-p, unl-renovate"
	}
	n, err := need(r, agronomy.Phosphorus, state, isNew, by, source)
	if p := r.Printed.Phosphate; p != nil {
		n, err = n.printed(*p, err), nil
	}
	if err != nil {
		return n, err
	}
	if isNew {
		n.Single = n.Year // worked into the seedbed
		if n.Level == soil.High {
			n.Why = append(n.Why, agronomy.Reason{Text: "A little phosphorus with the seed feeds the first roots, though trials found none needed where the test suffices; the law may forbid it.", Source: "gcm-p-seeding"})
		}
		return n, nil
	}
	n.limit(yearP2O5, singleP2O5, "P₂O₅")
	if r.Method == agronomy.Bray1 && !r.Phosphorus.Wanted.Given {
		if about, ok := MichiganP2O5(r.Phosphorus.PPM); ok {
			n.Why = append(n.Why, agronomy.Reason{Text: fmt.Sprintf("A line through two lawn reports, by custom only, asks for about %.1f lb P₂O₅.", float64(about)), Source: "common"})
		}
	}
	return n, nil
}

// Up holds the phosphorus of a new stand that is up already to what goes on top:
// nothing can be worked in beside its seed any more.
func (n Need) Up() Need {
	n.Why = slices.Clip(n.Why)
	n.limit(yearP2O5, singleP2O5, "P₂O₅")
	return n
}

// PotassiumNeed gives a year's K2O.
func PotassiumNeed(r agronomy.Report, state string, isNew bool) (Need, error) {
	by, source := k2oEstablished, "common, umn-lawn-report, askhrgreen"
	if isNew {
		by, source = k2oNew, "common"
	}
	n, err := need(r, agronomy.Potassium, state, isNew, by, source)
	if k := r.Printed.Potash; k != nil {
		n = n.printed(*k, err)
		n.limit(yearK2O, singleK2O, "K₂O")
		return n, nil
	}
	if err != nil {
		return n, err
	}
	n.limit(yearK2O, singleK2O, "K₂O")
	if floor, ok := soil.MLSN(agronomy.Potassium, soil.DrawnWith(r.Method, agronomy.Potassium)); ok && !r.Potassium.Wanted.Given {
		use := mlsnUse(3) // lb N, an ordinary lawn
		short := max(0, use+floor-r.Potassium.PPM)
		n.Why = append(n.Why, agronomy.Reason{Text: fmt.Sprintf("The minimum-levels school would ask, with 3 lb of nitrogen a year on cool-season grass: %.0f ppm used + %.0f kept − %s found = %.0f ppm, or %.1f lb K₂O. On one green the sufficiency levels asked for more than three times its amount, with no better turf to show for it in the first year.",
			float64(use), float64(floor), agronomy.Figure(r.Potassium.PPM), float64(short), float64(short)*mlsnLayer*agronomy.K2OPerK), Source: "mlsn-manual, slan-mlsn-trial"})
	}
	if state == "MI" && !isNew && !r.Potassium.Wanted.Given {
		if about, ok := MichiganK2O(r.Potassium.PPM); ok {
			n.Why = append(n.Why, agronomy.Reason{Text: fmt.Sprintf("A line through lawn reports of Michigan, by custom only, asks for about %.1f lb K₂O.", float64(about)), Source: "common"})
		}
	}
	n.Why = append(n.Why, agronomy.Reason{Text: "No potassium is put down for the winter: more than the soil test asks brings snow mold and no gain.", Source: "soldat-k-2024"})
	return n, nil
}

// need works out an amount from the lab's own optimum by arithmetic, else from
// the level by the table.
func need(r agronomy.Report, n agronomy.Nutrient, state string, isNew bool, by amounts, source string) (Need, error) {
	reading := r.Reading(n)
	if !reading.Given {
		return Need{Level: soil.Unknown}, fmt.Errorf("%s is %w: it cannot be planned without a figure", n, ErrNoReading)
	}
	s := soil.StandingOf(r, n, state)
	out := Need{Level: s.Level, Why: slices.Concat(reading.Steps, s.Why())}
	if s.Level == soil.Unknown {
		return out, fmt.Errorf("%s: %w: %s", n, ErrNoScale, s.Why()[0].Text)
	}
	if reading.Wanted.Given {
		out.byOptimum(r, n)
		if isNew && n == agronomy.Phosphorus && out.Year < by.high {
			out.Year = by.high
			out.Why = append(out.Why, agronomy.Reason{Text: fmt.Sprintf("New turf gets at least %.1f lb P₂O₅ with the seed.", float64(by.high)), Source: source})
		}
		return out, nil
	}
	out.Year = by.at(s.Grid())
	if out.Year == 0 {
		out.Why = append(out.Why, agronomy.Reason{Text: "Virginia likewise adds none of a nutrient that tests high.", Source: "vt-spes384"})
	}
	turf := "established turf, a year"
	if isNew {
		turf = "new turf, at seeding"
	}
	out.Why = append(out.Why, agronomy.Reason{Text: fmt.Sprintf("%s on %s: %.1f lb %s/1000 sq ft, a middle way between published amounts", s.Level, turf, float64(out.Year), onBag(n)), Source: source})
	return out, nil
}

// onBag is how the bag counts a nutrient.
func onBag(n agronomy.Nutrient) string {
	switch n {
	case agronomy.Phosphorus:
		return "P₂O₅"
	case agronomy.Potassium:
		return "K₂O"
	case agronomy.Magnesium:
		return "Mg"
	}
	return "S"
}

// FromOptimum is the amount, as the bag counts it, that lifts a layer of soil
// from the found reading to the wanted one, and nothing if it is there.
func FromOptimum(n agronomy.Nutrient, found, wanted agronomy.PPM, depth agronomy.Inches) agronomy.PerThousand {
	element := max(0, wanted-found).In(depth)
	switch n {
	case agronomy.Phosphorus:
		return element * agronomy.P2O5PerP
	case agronomy.Potassium:
		return element * agronomy.K2OPerK
	}
	return element
}

// byOptimum sets the amount from the lab's found and wanted values.
func (n *Need) byOptimum(r agronomy.Report, of agronomy.Nutrient) {
	reading, depth := r.Reading(of), r.Depth
	n.Why = append(n.Why, reading.Wanted.Steps...)
	if depth <= 0 {
		depth = 4 // [nc-sampling] [vt-452-125]
		n.Assumed = append(n.Assumed, agronomy.Reason{Text: "The report gives no depth; 4 in is taken, the usual one for lawns.", Source: "nc-sampling, vt-452-125"})
	}
	n.Year = FromOptimum(of, reading.PPM, reading.Wanted.Low, depth)
	deficit := max(0, reading.Wanted.Low-reading.PPM)
	n.Why = append(n.Why, agronomy.Reason{Text: fmt.Sprintf("wanted %s − found %s = %s ppm short; in %s in of soil (%s × 300,000 lb × %s in ÷ 1,000,000 ÷ 43.56) that is %s lb of the element, %s lb %s/1000 sq ft",
		agronomy.Figures(reading.Wanted.Low, 4), agronomy.Figures(reading.PPM, 4), agronomy.Figures(deficit, 4), agronomy.Figure(depth), agronomy.Figures(deficit, 4), agronomy.Figure(depth), agronomy.Figures(deficit.In(depth), 2), agronomy.Figures(n.Year, 2), onBag(of)), Source: "definitions, atomic-weights"})
	if deficit > 0 {
		n.Why = append(n.Why, agronomy.Reason{Text: "Take it as at least this much: soil holds back part of what is put down, and a mild extractant sees a small slice of it. If the lab prints pounds, they count more.", Source: "common"})
	}
}

// printed puts the laboratory's own amount in the place of the one worked out
// here; err is why there was none.
func (n Need) printed(rate agronomy.PerThousand, err error) Need {
	text := fmt.Sprintf("The laboratory itself asks for %s lb/1000 sq ft a year; that counts before any table.", agronomy.Figure(rate))
	if err == nil {
		text += fmt.Sprintf(" By the reading it would be %s lb.", agronomy.Figures(n.Year, 2))
	}
	n.Year, n.Why = rate, append(n.Why, agronomy.Reason{Text: text})
	return n
}

// limit holds the year to what turf can use and carries the rest over.
func (n *Need) limit(year, single agronomy.PerThousand, name string) {
	n.Single = single
	if n.Year <= year {
		return
	}
	n.Carried = n.Year - year
	n.Why = append(n.Why, agronomy.Reason{Text: fmt.Sprintf("No more than %.1f lb %s in a year; the other %s lb wait for the next report.", float64(year), name, agronomy.Figures(n.Carried, 2)), Source: "common"})
	n.Year = year
}

// MichiganP2O5 is a year's P2O5 for established turf by a straight line, ours,
// through two of that state's reports: 2.6 lb at 1 ppm, 0.7 at 13. It is for
// Bray-1 readings from 1 ppm; from about 17 ppm up it is 0.
func MichiganP2O5(ppm agronomy.PPM) (agronomy.PerThousand, bool) {
	if ppm < 1 {
		return 0, false
	}
	return max(0, agronomy.PerThousand(2.6-0.158*(float64(ppm)-1))), true // [common]
}

// MichiganK2O is the same for K2O: 1.3 lb at 87 ppm, none from 272 up.
func MichiganK2O(ppm agronomy.PPM) (agronomy.PerThousand, bool) {
	if ppm < 87 {
		return 0, false
	}
	return max(0, agronomy.PerThousand(1.3*(272-float64(ppm))/(272-87))), true // [common]
}
