// Package place puts tasks on days. It knows numbers only: days are counted,
// costs are whole numbers, and what words or dates they stand for is the
// caller's.
//
// # What it takes
//
// A [Problem]: tasks, each with the days on which it may be done, what each of
// these costs, and what it costs to leave the task out; limits, each of which
// keeps two tasks some days apart or in order; how many tasks one
// person does on a day; and what tasks of one group gain by sharing a day. Tasks
// that are fixed, such as what is on record, only push the others.
//
// # What it gives
//
// An [Answer]: a day for each task, or none; what keeps each from days that
// would cost less; and two facts about the answer: that areas contested days,
// and that the search stopped before it was through. Every limit is kept, and no
// person has more tasks than a day holds, whatever the effort. If neither fact
// holds, no other answer has a smaller sum of costs. Of several answers with that
// sum it is the one with the first task earliest, then the second, and so on,
// where left out counts as later than any day.
//
// # How the search goes
//
//  1. Only limits and people tie tasks together. The tasks of an area fall into
//     the connected components of its limits, and each is solved by itself
//     (component.go).
//  2. Most often every task of a component can have its cheapest day. If not,
//     it is settled first which tasks get a day (subset.go): the dearest to leave
//     out come first, and a set of tasks is given up when no order of them leaves
//     each a day (feasible.go).
//  3. Then their days are found by branch and bound (branch.go). The relaxation
//     leaves limits out. Where its days break a limit, both orders of the two
//     tasks are tried, each a relaxation with one more limit; where they overfill
//     a day, one task after the other is kept off it. With the orders given, the
//     least-cost days of all tasks are a minimum cut (cut.go).
//  4. Tasks of one group get the bonus on one day, chosen beforehand, and those
//     that would gain are solved again (group.go).
//  5. Components of an area that together overfill a person's day are solved as
//     one. Then the area's days are the best there are.
//  6. Areas that together overfill a day share the days the plain way (share.go):
//     a contested day goes to the dearer task, the others move, and areas change
//     days, alone or by twos, until that gains nothing or its steps are spent.
//
// Each step solves a simpler problem exactly and adds the rest only where its
// answer breaks it, so effort grows with what is contested, not with what is
// asked. It is bounded by counted steps, never by time.
//
// # What it leaves out
//
// Between areas that contest days the answer is good, not proven best. Limits
// among three tasks or more, such as the most in 12 months, are the caller's: it
// places again with fewer days. Of a component of more than 64 tasks it is not
// settled before whether all can have a day.
package place
