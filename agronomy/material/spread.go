package material

import (
	"fmt"

	"swardbook/agronomy"
	"swardbook/climate"
)

// Spread is how to put a granular dose down evenly: half of it in each of two
// directions at right angles.
type Spread struct {
	HalfRate   agronomy.PerThousand // what the spreader is set to
	HalfWeight agronomy.Pounds      // what goes into the hopper for one direction
	Width      climate.Feet         // that the spreader covers; 0 not known
	Walk       climate.Feet         // distance walked in one direction; 0 without a width
}

// SpreadOver sets out a dose on an area with a spreader of a given effective
// width; width 0 is not known. The effective width of a rotary spreader is
// less than its full throw: to where the throw thins to half. [common]
func SpreadOver(rate agronomy.PerThousand, area agronomy.SquareFeet, width climate.Feet) (Spread, error) {
	if !(rate > 0) || !(area > 0) || !(width >= 0) {
		return Spread{}, fmt.Errorf("a rate of %s lb per 1000 sq ft on %s sq ft, %s ft wide: give amounts above 0", agronomy.Figure(rate), agronomy.Figure(area), agronomy.Figure(width))
	}
	s := Spread{HalfRate: rate / 2, Width: width}
	s.HalfWeight = s.HalfRate.Over(area)
	if width > 0 {
		s.Walk = climate.Feet(float64(area) / float64(width))
	}
	return s, nil
}

// Steps tells how to go about it.
func (s Spread) Steps() []agronomy.Reason {
	steps := []agronomy.Reason{
		{Text: fmt.Sprintf("Set the spreader to half the rate, %s lb per 1000 sq ft (%s g/m2), and go over the area twice, the second time at right angles to the first; %s lb (%s kg) each time.",
			agronomy.Figure(s.HalfRate), agronomy.Figure(s.HalfRate.GramsPerM2()), agronomy.Figure(s.HalfWeight), agronomy.Figure(s.HalfWeight.Kilograms())), Source: "umn-spreader, ill-1995, rutgers-spreader"},
	}
	if s.Width > 0 {
		steps = append(steps, agronomy.Reason{Text: fmt.Sprintf("At a working width of %s ft that is a walk of about %s ft (%s m) in each direction.",
			agronomy.Figure(s.Width), agronomy.Figure(s.Walk), agronomy.Figure(float64(s.Walk)/agronomy.FeetPerMeter))})
	}
	return append(steps,
		agronomy.Reason{Text: "Do a strip along both ends first, then go back and forth between them; shut the spreader while turning or standing.", Source: "umn-spreader"},
		agronomy.Reason{Text: "Sweep whatever lands on paving back onto the turf.", Source: "purdue-p"},
	)
}

// DropCalibration gives the rate a spreader is set to, from what it dropped on
// a measured area: 0.5 lb on 50 sq ft is 10 lb per 1000. [definitions]
func DropCalibration(caught agronomy.Pounds, area agronomy.SquareFeet) (agronomy.PerThousand, error) {
	if !(caught >= 0) {
		return 0, fmt.Errorf("%s lb caught: weigh what fell, 0 or more", agronomy.Figure(caught))
	}
	return RateOf(caught, area)
}
