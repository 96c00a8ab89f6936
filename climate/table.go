package climate

// DayRow is one day of the year's table.
type DayRow struct {
	Day                    Day
	Mean, High, Low        Fahrenheit
	Soil2, Soil4           Fahrenheit // at 2 in and 4 in
	GrowthCool, GrowthWarm float64    // growth potential, 0 to 1
	DegreeDays50           float64    // growing degree days above 50 °F, summed from 1 January
}

// Table is the whole year, 1 January to 31 December: 365 rows.
func (y *Year) Table() []DayRow {
	rows := make([]DayRow, daysPerYear)
	two, four := y.soil(2), y.soil(4)
	sum := 0.0
	for i := range rows {
		d := Day(i + 1)
		sum += y.DegreeDay(d, 50)
		rows[i] = DayRow{
			Day: d, Mean: y.Mean(d), High: y.High(d), Low: y.Low(d),
			Soil2:        y.limited(Fahrenheit(two.At(float64(d)))),
			Soil4:        y.limited(Fahrenheit(four.At(float64(d)))),
			GrowthCool:   y.Growth(d, Cool),
			GrowthWarm:   y.Growth(d, Warm),
			DegreeDays50: sum,
		}
	}
	return rows
}

// Event is a dated event with a name for machines.
type Event struct {
	Name string // such as "first_freeze"
	When When
}

// Events are the year's dates, in the order in which people read them: from
// the end of winter to the freezing of the ground.
func (y *Year) Events() []Event {
	g := y.Ground()
	return []Event{
		{"ground_reopens", g.Reopens},
		{"growth_begins_cool", y.GrowthBegins(Cool)},
		{"soil_above_40f", y.SoilRises(2, 40)},
		{"soil_above_50f", y.SoilRises(2, 50)},
		{"soil_above_55f", y.SoilRises(2, 55)},
		{"last_freeze", y.LastFreeze()},
		{"growth_begins_warm", y.GrowthBegins(Warm)},
		{"soil_above_65f", y.SoilRises(2, 65)},
		{"soil_below_65f", y.SoilFalls(2, 65)},
		{"growth_slows_warm", y.GrowthSlows(Warm)},
		{"growth_ends_warm", y.GrowthEnds(Warm)},
		{"first_freeze", y.FirstFreeze()},
		{"growth_slows_cool", y.GrowthSlows(Cool)},
		{"soil_below_50f", y.SoilFalls(2, 50)},
		{"growth_ends_cool", y.GrowthEnds(Cool)},
		{"soil_below_40f", y.SoilFalls(2, 40)},
		{"last_safe", g.LastSafe},
		{"ground_freeze_early", g.Early},
		{"ground_freeze_median", g.Median},
	}
}
