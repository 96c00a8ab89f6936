// Package rule holds what is to be done in one area: one file a kind of job.
//
// [Propose] takes the case of an area and asks every [Rule] in turn. A rule reads
// the [Treatment], which is the case and what its rules settle together: the overseeding
// (overseed.go), the lime (lime.go, its days in lime_dates.go), then the feedings, which
// draw on one shed (feeding*.go). It gives jobs with windows, best days, steps, cautions
// and reasons with sources, and what it leaves out. The steps and cautions are written in
// describe*.go.
//
// A rule never looks at another rule's jobs. What holds between jobs is a limit of
// package plan, which also chooses the days.
package rule
