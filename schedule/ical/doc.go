// Package ical writes a program as an iCalendar file that phones subscribe to.
//
// Start with [Write] for a first publication and [Update] for every later one.
// [Update] reads the file that is there and changes only what changed, so that
// an event keeps its identity, and with it the reader's own alarms and notes.
//
// # Form
//
// RFC 5545 and RFC 7986, UTF-8, CRLF. There is no METHOD: the file is a
// calendar, not an invitation. Every job is one all-day event on its chosen
// day, transparent to free/busy; its window stands in the text. UID comes from
// the program and never changes; SEQUENCE and LAST-MODIFIED grow exactly when
// the content of the event does, and DTSTAMP equals LAST-MODIFIED. The order of
// properties is fixed, events are sorted by day and then UID, and no clock is
// read: the same input gives the same bytes.
//
// # Which calendar a file is
//
// X-WR-RELCALID names the site and the choice of area, person and kinds. A
// file is only ever updated with the calendar it already holds; anything else
// is refused, never overwritten.
//
// # Life of an event
//
// A job that leaves the program stays as a cancelled event that says "Do not do
// this job", until 30 days past its day. A past job from before the program's
// first day is history and stays as it was for 18 months. A cancelled job that
// comes back is an ordinary event again, with a higher SEQUENCE.
//
// # Library and own code
//
// The calendar around the events and the escaping of texts come from a general
// iCalendar library. The lines of an event are written here, because the library
// copies each text four times and escapes the commas between categories. Cleaning
// and folding are done here, because it lets control characters through and can
// break a line inside an escape. Reading is done here too: the file is our own,
// so the reader can be strict, bounded and free of recursion.
package ical
