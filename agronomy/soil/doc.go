// Package soil says what a soil report means for a stand of grass.
//
// It takes readings as a laboratory prints them and a stand, and gives levels,
// findings ranked by what limits the grass most, and likely slips. It plans
// nothing: needs are the business of packages lime and nutrient.
//
// ParseReading makes elemental ppm of a figure:
//
//	ppm = lb/acre ÷ (0.3 × depth in inches)      300,000 lb of soil an acre-inch
//	ppm = meq/100 g × atomic weight ÷ charge × 10
//	P = 0.436 P₂O₅, K = 0.830 K₂O
//
// LevelIn places a reading: on the laboratory's own optimum if it printed one,
// else on one published scale for its extractant:
//
//	mehlich-3          sufficiency levels for turf (Carrow and others); iron: Rutgers
//	mehlich-1          Georgia's bands, coastal plain or piedmont, in printed lb/acre
//	bray-1, olsen      sufficiency levels for P; cations as ammonium acetate
//	ammonium-acetate   the Mehlich-3 bands
//	modified-morgan    University of Massachusetts optimum
//	morgan             none: ask the laboratory
//	sodium, any        share of the CEC
//
// The reasons show where other published scales part from the one that is
// used. A figure is never moved to another extractant's scale.
//
// Findings ranks what a report says; WhyPale answers the question people ask
// first; Suspicious names likely slips. Start there.
package soil
