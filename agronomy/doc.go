// Package agronomy says what a lawn needs, from a soil report and the grass,
// and what a bag or a tank brings. Every answer comes with its reasons, and
// every reason with the key of its source; Sources lists them.
//
// # From a sheet to a need
//
// A figure as a laboratory prints it becomes elemental ppm in ParseReading:
//
//	ppm = lb/acre ÷ (0.3 × depth in inches)      300,000 lb of soil an acre-inch
//	ppm = meq/100 g × atomic weight ÷ charge × 10
//	P = 0.436 P₂O₅, K = 0.830 K₂O
//
// Report.Level places it: on the laboratory's own optimum if it printed one,
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
// The reasons show where other published scales part from the one that ships.
// A figure is never moved to another extractant's scale.
//
// PhosphorusNeed, PotassiumNeed, MagnesiumNeed and SulfurNutrientNeed turn the
// level into a year's amount, or the laboratory's wanted value by arithmetic:
//
//	lb/1000 sq ft = ppm short × 300,000 × depth ÷ 1,000,000 ÷ 43.56 (× 2.291 for P₂O₅, 1.205 for K₂O)
//
// and never ask for more than turf can use in a year. NitrogenYear needs no
// report: grass, care, place, age and clippings decide. LimeRequirement and
// SulfurToLower move the pH; ExpectedPH and PHAfterSulfur are their inverses.
//
// Findings ranks what a report says by what limits the grass most; WhyPale
// answers the question people ask first; Suspicious names likely slips.
//
// # From a need to a dose
//
// Material is a product with its analysis. Choose finds the best of several
// for what is wanted under caps, DoseFor works one out, and Released follows
// its slow part over the weeks. Spreader, sprayer and watering figures, gaps
// between jobs, last useful days and cautions are tables with their sources.
//
// # Units and limits
//
// Amounts are in the unit of their type: PerThousand is lb/1000 sq ft, as
// the oxide for phosphorus and potassium. ParseArea and its kin read US and
// metric quantities. Outside its range a function returns an error that says
// the range and what to do; nothing is extrapolated.
//
// The package is pure: no clock, no files, no state; the same input gives the
// same answer. Start from LookupGrass, Findings, LimeRequirement and Choose.
package agronomy
