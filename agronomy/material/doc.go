// Package material knows what a bag or a tank brings and how it is put down.
//
// It takes materials with their analysis, and what is wanted under caps, and
// gives doses: Choose finds the best of several materials, Mix combines them,
// DoseFor works one out and says which nutrient bound it, For turns a dose into
// pounds, gallons and packs for an area. Purchase says what to buy.
//
// How it goes down is here too: spreader passes, sprayer fills, watering in as
// depth, gallons and minutes, and the cautions of each kind of material. The
// product's label overrides all of it.
//
// How much of a nutrient is wanted is the business of package nutrient.
package material
