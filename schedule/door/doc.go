// Package door is what the three doors of the ask page have in common: the page for one
// person on their own machine, the page of a server, and the page that plans in the
// browser. What was typed goes in, and the page to show next comes out, or the code of
// the link that carries all of it.
//
//	form ─ Press ─▶ the questions again, with what was understood and what is wrong
//	              └▶ the code of the answers ─ Answer ─▶ the page of the program
//
// It knows no clock, no network and no file: a door hands it the day and an id drawn at
// random.
package door
