package material

import (
	"fmt"

	"swardbook/agronomy"
)

// gallonsPerInch is the water of one inch on 1000 sq ft, in gallons:
// 1000 x 144 / 231. [definitions]
const gallonsPerInch = 1000 * 144.0 / 231

// WaterVolume gives the water that makes a depth on an area.
func WaterVolume(depth agronomy.Inches, area agronomy.SquareFeet) (agronomy.Gallons, error) {
	if !(depth >= 0) || !(area >= 0) {
		return 0, fmt.Errorf("%s in of water on %s sq ft: give amounts of 0 or more", agronomy.Figure(depth), agronomy.Figure(area))
	}
	return agronomy.Gallons(float64(depth) * gallonsPerInch * float64(area) / 1000), nil
}

// WaterMinutes gives the minutes a sprinkler needs for a depth.
func WaterMinutes(depth agronomy.Inches, rate agronomy.InchesPerHour) (float64, error) {
	if !(depth >= 0) || !(rate > 0) {
		return 0, fmt.Errorf("%s in at %s in per hour: give a rate above 0; catch the water in straight-sided cups for 15 minutes to find it", agronomy.Figure(depth), agronomy.Figure(rate))
	}
	return float64(depth) / float64(rate) * 60, nil
}

// CatchRate gives a sprinkler's rate from the mean depth that cups caught in
// 15 minutes.
func CatchRate(caught agronomy.Inches) (agronomy.InchesPerHour, error) {
	if !(caught > 0) {
		return 0, fmt.Errorf("%s in caught: measure the mean depth in the cups, above 0", agronomy.Figure(caught))
	}
	return agronomy.InchesPerHour(caught * 4), nil // 60 ÷ 15 minutes
}

// FlowRate gives a sprinkler's rate from the gallons a minute it puts on an
// area: gpm x 96.25 / sq ft. [definitions]
func FlowRate(gallonsPerMinute agronomy.Gallons, area agronomy.SquareFeet) (agronomy.InchesPerHour, error) {
	if !(gallonsPerMinute > 0) || !(area > 0) {
		return 0, fmt.Errorf("%s gal a minute on %s sq ft: give amounts above 0", agronomy.Figure(gallonsPerMinute), agronomy.Figure(area))
	}
	return agronomy.InchesPerHour(float64(gallonsPerMinute) * 60 * 1000 / gallonsPerInch / float64(area)), nil
}
