// Package ical writes a program as an iCalendar file that phones subscribe to.
//
// It takes a [schedule.Program], [Options] that choose an area, a person or kinds
// of job, and, for [Update], the file that is there and the time. It gives the
// bytes of the file, and what changed. It leaves out everything else: it reads no
// clock, no file and no network, and the same input gives the same bytes.
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
// properties is fixed, and events are sorted by day and then UID.
//
// Left out on purpose: organizers, attendees, repeating events, times of day,
// attachments, HTML and colours of single events. Clients treat them too
// differently for a job that somebody has to act on.
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
// first day is history and stays as it was for a year. A cancelled job that
// comes back is an ordinary event again, with a higher SEQUENCE.
//
// # Library and own code
//
// A general iCalendar library carries the calendar: events, alarms and
// properties are of its types, its serializer writes them, and its parser reads
// them back. Three things are done here for its faults, each of which TestTraps
// shows to be there still. Texts are cleaned before, as it lets control
// characters through. Lines are folded after, as it can break one inside an
// escape, and the commas between categories get their escapes taken off. The
// shape of a file is checked before it is parsed, as the parser has no bound and
// takes a file cut short for a whole one.
package ical
