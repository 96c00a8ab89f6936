// Package nutrient says how much of each nutrient turf needs in a year, what
// the most at once is, and what must lie between two jobs.
//
// It takes a report, a grass and a level of care, and gives amounts in lb per
// 1000 sq ft, phosphorus and potassium as oxides. PhosphorusNeed, PotassiumNeed
// and MagnesiumNeed turn a level into a year's amount, or a laboratory's wanted
// value by arithmetic:
//
//	lb/1000 sq ft = ppm short × 300,000 × depth ÷ 1,000,000 ÷ 43.56 (× 2.291 for P₂O₅, 1.205 for K₂O)
//
// and never ask for more than turf can use in a year. NitrogenYear needs no
// report: grass, care, place, age and clippings decide. Released follows the
// slow part of a dose over the weeks; Spacing, LastUsefulFor and SeedlingsOf
// are the tables of gaps, last days and young stands, each with its sources.
//
// It dates nothing and chooses no bag: see packages material and schedule.
package nutrient
