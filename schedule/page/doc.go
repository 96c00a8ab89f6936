// Package page writes programs for people as HTML: the sheet to print and pin up, the
// lesson for a class, several programs under each other on one axis of time, and the page
// of questions with the page that follows it. Start from [Sheet], [Lesson], [LessonKey],
// [Comparison], [Ask] and [Answer]; [LessonMarkdown] is the worksheet as plain text.
//
// Every page is one file: its style is inside, it asks the network for nothing and runs
// no script. Only a page of questions that plans in the browser loads the scripts and the
// planner that are published with it. It is read on a phone, on a desk, on paper, by eye
// and by ear, in light and dark, and no meaning hangs on colour.
//
// In a drawing time runs to the right and each kind of job has a lane: a line is
// the window of a job with a fence at its last safe day, a square the chosen day,
// larger and coloured if it is due or next, hollow if it is past and taken as done;
// a circle is a job on record, a cross one that was missed. Tinted ground is closed.
//
// The pages leave out nothing the program says. A figure that they draw and
// the program does not carry, the soil's temperature and the growth through
// the year, comes from the climate of the program's own place.
package page
