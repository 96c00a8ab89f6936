// Package schedule says what a dated program is, and what it is made of: the
// site and its record book, kinds of job, jobs with their windows, and the
// program with its entries, what is left out, its ledger and what to buy.
//
// # Where things are
//
//	schedule            site, kind, job, window, case, program, ledger, compare
//	schedule/rule       one file a kind: what to do in one area, how much, when
//	schedule/plan       makes the program: record book, rules, limits, days, people
//	schedule/place      finds days for jobs; numbers only
//	schedule/law        the table of law by state
//	schedule/word       amounts, sentences, citations
//	schedule/sitefile   reads the site file and the record book
//	schedule/book       adds lines to a record book, and replaces files
//	schedule/{text,page,ical,feed}   write a program for people
//
// The last safe day is worked out in package climate ([climate.Ground]); where a
// job's own window closes, in window.go; what a day costs a job, in days.go.
//
// # What it takes, what it gives
//
// A [Site] and lines of a record book ([Done]) become a [Program] in package
// plan. What rules read about one area is a [Case]: its report, its stand, the
// place's year laid on dates ([Almanac]), what is down, what is in the [Shed].
// What they answer is a [Proposal]: each [Job] has a dose, words, reasons and
// windows between named events, with a best day in each.
//
// [Program.Ledger], [Program.Supplies] and [Compare] read a program;
// [EncodeJSON] writes it.
//
// # What it leaves out
//
// The weather, seed to buy, other people's ordinances. Amounts are in pounds,
// gallons, square feet and lb/1000 sq ft inside; package word shows them in the
// site's own.
package schedule
