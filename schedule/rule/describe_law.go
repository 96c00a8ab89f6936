package rule

import (
	"fmt"

	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// lawConditions are the rules to keep on the day: distance from water, paving,
// the state of the ground, rain.
func (c *Treatment) lawConditions(j *schedule.Job, m word.Measure) []string {
	n := schedule.Nutrients(j.Dose)
	if n == 0 {
		return c.waterEdge(m)
	}
	var out []string
	q := c.Question(j.FirstDay())
	q.P2O5Percent = float64(j.Dose.Material.Analysis.P2O5)
	if s := c.Law.Setback(n, q); s.Plain > 0 {
		text := fmt.Sprintf("By law keep %s from open water", m.Length(climate.Feet(s.Plain)))
		if s.Gentle > 0 && s.Gentle < s.Plain {
			text += fmt.Sprintf(", %s with a drop spreader or a deflector", m.Length(climate.Feet(s.Gentle)))
		}
		out = append(out, text+" ("+s.Findings[0].Rule.Brief()+").")
		if c.Water > 0 && float64(c.Water) < s.Plain {
			out = append(out, fmt.Sprintf("Open water is %s away here: leave that strip untreated.", m.Length(c.Water)))
		}
	} else {
		out = append(out, c.waterEdge(m)...)
	}
	return append(out, c.Law.OfTheDay(n)...)
}

// waterEdge is the usual distance from water where no law names one.
func (c *Treatment) waterEdge(m word.Measure) []string {
	if c.Water == 0 || c.Water > 50 { // [common] near water
		return nil
	}
	return []string{fmt.Sprintf("Open water is %s away: leave a strip of %s untreated along it.", m.Length(c.Water), m.Length(20))} // [common] 20 to 25 ft with a rotary spreader
}
