package schedule

import "swardbook/agronomy/nutrient"

// Sprouts gives the day from which seed comes up: that of sowing, or where seed
// lies through the cold, as after a dormant sowing, the day on which growth begins.
func (c *Case) Sprouts() Date {
	if !c.Lies() {
		return c.Seeded
	}
	return c.Almanac.After(c.Growth.Begins, c.Seeded)
}

// Lies tells whether seed was or will be sown into cold, to lie until spring: a
// month at the least, as seed of a cold April comes up soon enough.
func (c *Case) Lies() bool {
	if c.Seeded.IsZero() || c.Growth.Begins.Never || c.Growth.on(c.Seeded) > nutrient.GrowthFloor {
		return false
	}
	days := c.Almanac.After(c.Growth.Begins, c.Seeded).DaysFrom(c.Seeded)
	return days > 30 && days < 200 // [common] a winter; not the heat of summer
}
