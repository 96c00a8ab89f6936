// Package lime moves a soil's pH: how much lime, or sulfur, in how many
// dressings, and where the pH will come to.
//
// It takes a Case (pH, buffer pH or texture, target, depth, place) and gives a
// Need in lb of fully effective lime per 1000 sq ft, with its working.
// Requirement picks the method: a buffer pH by its own method, an exchangeable
// acidity, else soil pH and texture. ExpectedPH is its inverse: what the bags
// at hand will do. SulfurToLower and PHAfterSulfur are the pair for a high pH.
//
// A stone's label becomes an effective value in Effective, by the fineness rule
// of a state where it has one; MaterialRate turns pure lime into pounds of that
// stone; Cap and Dressings split them for living turf.
//
// Which days the dressings fall on is not decided here. Outside the range of a
// published table every function returns a *RangeError that says what to do.
package lime
