// Package schedule turns a site into a dated program: what to put down, where,
// how much, when, why, and until which day.
//
// [Plan] does all of it. It reads a [Site] and the record book ([Done]) and
// nothing else, so the same input gives the same program whatever the day; the
// reader's date only decides how it is shown ([Program.Standing]).
//
// # The way through
//
// The place gives its year, which the almanac lays on dates. Each area is a
// [Case]: its report, its stand, what is down. Lime and feeding are worked out
// for the case (lime.go, feeding*.go), drawing on one shed. The rules (rule_*.go)
// turn that into jobs: a [Job] has a dose, words, reasons, and windows between
// named events ("soil at 2 in rises through 65 °F", "last safe day before the
// ground freezes") with a best day in each.
//
// What one job's own rules forbid (crew days, absences, frozen ground, law, heat)
// is struck from its days, and each day left has a cost:
//
//	weight × (days from the best day ÷ length of the window)²
//	+ a fixed cost for each window passed over
//
// What holds between jobs is a limit (limits.go): distances of the trade, 30 days
// of quick nitrogen, a sample before more lime. [Plan] finds the days on which
// every limit holds and the sum of costs is least (place*.go); a job that finds
// none is left out with the reason, as that costs more than any day. A limit is
// never bent.
//
// # What comes out
//
// A [Program]: entries with their day, window, dose, steps, cautions, working;
// what is left out; assumptions; the law it keeps. [Program.Ledger],
// [Program.Supplies] and [Compare] read it; [EncodeJSON] writes it; the packages
// below this one make text, pages, a calendar and a feed of it.
//
// # What it leaves out
//
// The weather, gypsum, seed to buy, other people's ordinances. Units: amounts
// are in pounds, gallons, square feet and lb/1000 sq ft inside; [Measure] shows
// them in the site's own.
package schedule
