// Package word writes amounts, sentences and citations the way a site wants to
// read them: US or metric, rounded to what a person can measure.
//
// [Measure] takes amounts in their own types and gives words; [Cited] and
// [ShortSources] turn source keys into names; [Runs] tells between which words
// no line should end. All rounding for people is here.
package word
