// Package door answers whoever stands at a door of the ask page: a machine's own, a
// server's, or a browser that brought the planner along. What was typed goes in, and the
// page to show next comes out, or the code of the link that carries all of it.
//
//	form ─ Press ─▶ the questions again, with what was understood and what is wrong
//	              └▶ the code of the answers ─ Answer ─▶ the page of the program
//
// It knows no clock, no network and no file: a door hands it the day and the id that it
// has drawn by lot.
package door
