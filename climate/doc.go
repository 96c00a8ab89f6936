// Package climate turns what is known about a place into its normal year:
// temperatures of air and soil, freezes, growth of grass, frozen ground, and
// the dates that follow, each with its spread in days.
//
// Start with [Place.Year], or [FindZIP] for what a ZIP code stands for; then
// [Year.FirstFreeze], [Year.SoilFalls], [Year.Ground], [Year.SeedWindow], or
// [Year.Events] for every date at once. [ParseNormals] reads a station's
// monthly normals. The package reads no clock and no file; the same place gives
// the same year.
//
// # The model
//
// In what follows, "section" is a section of the source "model" of [Sources].
// East and West: [West] lists the states of the West. t is days since 1
// January 00:00 in a year of 365 days, w = 2 pi / 365, D = t + 0.5 the day
// number (noon of calendar day d is D = d), temperatures are in °F.
//
// Section 2, cycle.go, degreedays.go. The annual cycle of the daily mean and
// of the daily range (high minus low):
//
//	T(t) = M + c1 cos wt + s1 sin wt + c2 cos 2wt + s2 sin 2wt
//	high = mean + range/2, low = mean - range/2
//
// fitted to twelve monthly means, each an average over its month, by least
// squares. Single days scatter about it by 5 to 9 °F; with a scatter of 8 the
// degree days above a base are the sum over days of
//
//	z Phi(z/8) + 8 phi(z/8), z = T - base
//
// Section 3, hardiness.go, knowledge.go. Without normals the ten numbers come from
// data/hardiness.csv, by state and half-zone, and are moved by fixed amounts
// per km of elevation, degree of latitude and longitude, and half-zone.
//
// Section 3b, nearest.go, position.go. Where the position is known, each monthly
// high and low is that of a plane fitted to the twenty nearest stations:
// values brought to the place's elevation by a lapse, weight
// 1/((d/25)² + (dz/0.15)² + 0.02), d and dz in km, slopes held back by a ridge.
// The freeze dates of section 4 are moved by as many days as the medians that the
// stations publish differ, on the average, from that rule.
//
// Section 4, freeze.go. The median first freeze falls where the daily low
// falls through 42.8 (East) or 39.7 (West); the median last freeze where it
// rises through 42.6 or 40.4, less 0.11 (latitude - 39). Year to year, with g
// the slope of the low in °F a day, at least 0.10:
//
//	SD autumn = 6.8 + 1.62/g, SD spring = 6.1 + 1.84/g days
//
// Where the low stays above 34 all year, freezes come in single nights and the
// rule misses them: there the mean of the medians published around is used.
//
// Section 5, soil.go. Soil at depth z cm, m = (M - 50)/10, W = 1 in the West:
//
//	X(z,t) = M + off + r0 exp(-z/145) [T(t - z/(145 w)) - M]
//	off    = 1.5 + 1.7 W + 1.3 m,  r0 = 1.00 + 0.14 W + 0.05 m
//	soil   = X from 32 up; 32 - n (32 - X) below, n = 0.10 (East), 0.25 (West)
//
// Section 6, ground.go. At 5 cm: X falls through 36, frozen by then in an early
// year, from one in 16 (Minnesota) to one in five; through 33, half of the
// years; through 40, less 7 days, the last safe day. A least X of 40 or more:
// the ground does not freeze. The ground is taken to be open again when X rises
// through 40, which is our own rule.
//
// Section 7, hardiness.go, year.go. The spread of a date in one coming year is
// the error of the place and the year-to-year spread, squared and added.
// Year to year a temperature is passed with an SD of 8 days in autumn, 11 at
// 40 °F and below; 9 in spring, 11 south of 41 degrees.
//
// growth.go. The growth potential, exp(-((T - best)/width)²/2): best 20 °C and
// width 5.5 for cool-season, 31 and 7 for warm-season grass, held at 1 above
// 31. Growth begins and ends at 0.10; nitrogen is not worth it under 0.20.
//
// seeding.go. Autumn sowing of cool-season grass closes when 475 degree days
// above a mean of 40 °F are left until growth ends, which is how the last days
// that pages print fall on the average from Minnesota to Georgia.
//
// # Where autumn is
//
// Nothing looks at the calendar. Autumn runs from the warmest point of a cycle
// to the coldest after it, spring from the coldest before it to the warmest;
// see [When] for the day numbers. A level is passed in autumn where the cycle
// first falls to it, in spring where it last rises to it.
//
// # What it leaves out
//
// It is a normal of 1981-2010: later years run about half a degree warmer, a
// day or two in autumn. Mulch, shade, irrigation, slope, snow depth and the
// town's heat are not in it. Soil under dense turf warms a few days later in
// spring. A soil thermometer beats it.
package climate
