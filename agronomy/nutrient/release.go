package nutrient

import (
	"fmt"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
)

// GrowthFloor is the growth potential at and below which slow nitrogen is held
// back: the turf hardly grows, and neither microbes nor water set much free.
// [sportsturf-2016]
const GrowthFloor = 0.1

// QuickFeeds is how long a quick nitrogen feeds, inside the 3 to 6 weeks of
// the texts. [common] from memory
const QuickFeeds agronomy.Weeks = 4

// FeedsOf gives how long a material's nitrogen feeds while the turf grows: the
// life of the slow part as the label gives it, else 8 weeks, the short end of
// most slow sources; without a slow part, 4 weeks.
func FeedsOf(m material.Material) (agronomy.Weeks, agronomy.Reason) {
	switch {
	case m.SlowShare > 0 && m.Lasts > 0:
		return m.Lasts, agronomy.Reason{Text: fmt.Sprintf("%s: the slow part feeds %s weeks by its label", m.Title(), agronomy.Figure(m.Lasts))}
	case m.SlowShare > 0:
		return 8, agronomy.Reason{Text: fmt.Sprintf("%s: no life given for the slow part; taken as 8 weeks", m.Title()), Source: "common"} // [common] from memory: 8-12 methylene urea, 8-16 IBDU
	}
	return QuickFeeds, agronomy.Reason{Text: fmt.Sprintf("%s: quick nitrogen feeds about %s weeks", m.Title(), agronomy.Figure(QuickFeeds)), Source: "common"}
}

// Released gives the nitrogen a dose has set free by the end of a number of
// days after it went down: the soluble part at once, the slow part in equal
// daily shares over its life. Days on which growth is at or below
// [GrowthFloor] do not count, so cold lengthens the life. growth takes the days
// since the application, from 1; nil means that it always grows.
//
// Days below 0 have released nothing.
func Released(d material.Dose, days int, growth func(day int) float64) agronomy.PerThousand {
	if days < 0 {
		return 0
	}
	life, _ := FeedsOf(d.Material)
	growing := 0
	for day := 1; day <= days && float64(growing) < float64(life)*7; day++ {
		if growth == nil || growth(day) > GrowthFloor {
			growing++
		}
	}
	return d.SolubleN + d.SlowN*agronomy.PerThousand(min(float64(growing)/(float64(life)*7), 1))
}

// releaseHorizon is how far ahead a release is followed, in days: no label
// promises three years. [common]
const releaseHorizon = 3 * 365

// FeedsUntil gives the day after the application on which the last of a dose
// feeds, growth counted as in [Released]. It reports false when that lies
// more than three years ahead, as where nothing grows.
func FeedsUntil(d material.Dose, growth func(day int) float64) (int, bool) {
	life, _ := FeedsOf(d.Material)
	growing := 0.0
	for day := 1; day <= releaseHorizon; day++ {
		if growth == nil || growth(day) > GrowthFloor {
			growing++
		}
		if growing >= float64(life)*7 {
			return day, true
		}
	}
	return 0, false
}
