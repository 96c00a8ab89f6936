// Package agronomy holds what all of the agronomy below it shares: the grasses
// and their stands, the soil report as a laboratory prints it, the units, the
// reasons behind every answer and the sources behind every reason.
//
// # Where things are
//
//	agronomy            grass, stand, target pH, report, units, quantities, sources
//	agronomy/soil       what a reading means: levels, findings, "why is it pale?"
//	agronomy/lime       lime by buffer or texture, its quality and dressings; sulfur
//	agronomy/nutrient   nitrogen, phosphorus, potassium and minor needs, their limits
//	agronomy/material   bags and tanks: doses, choice, mixing, spreading, watering in
//	agronomy/check      the published checks, and what the tests share
//
// A value goes through them from a sheet to a dose: soil reads it and places it
// on a scale, lime and nutrient turn the level into a need, material turns the
// need into pounds of a bag.
//
// # Units and limits
//
// Amounts are in the unit of their type: PerThousand is lb/1000 sq ft, as
// the oxide for phosphorus and potassium. ParseArea and its kin read US and
// metric quantities. Outside its range a function returns an error that says
// the range and what to do; nothing is extrapolated.
//
// All of it is pure: no clock, no files, no state; the same input gives the
// same answer. Start from LookupGrass, ParseArea and Sources.
package agronomy
