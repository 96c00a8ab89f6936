// Package plan makes the program of a site from its site file and its record
// book, and from nothing else: the same input gives the same program.
//
// [Program] does it in steps (plan.go):
//
//  1. The place gives its year, which the almanac lays on dates.
//  2. A sowing to come is dated, as everything else in its area hangs on it.
//  3. The record book is worked out line by line
//     (line.go), and each area is taken through its seasons (life.go).
//  4. An area becomes a [schedule.Case], and package rule proposes its jobs.
//  5. What one job's own rules forbid (crew days, absences, frozen ground, law,
//     heat) is struck from its days, and each day left has a cost:
//     weight × (days from the best day ÷ length of the window)², and a fixed cost
//     for each window passed over ([schedule.Case.Candidates]).
//  6. What holds between jobs is a limit (limits.go): distances of the trade,
//     30 days of quick nitrogen, a sample before more lime. Package place finds
//     the days on which every limit holds and the sum of costs is least
//     (assign.go); the most in 12 months is held after that (twelve.go).
//  7. Placed jobs become entries (write.go), with the notices of the season
//     (notices.go).
//
// A job that finds no day is left out with the reason. A limit is never bent.
// [With] plans with any table of kinds and any rules.
package plan
