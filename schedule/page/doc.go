// Package page writes programs for people as HTML: the sheet to print and pin
// up, the lesson for a class, and several programs under each other on one
// axis of time. Start from [Sheet], [Lesson] and [Comparison]; [LessonMarkdown]
// is the lesson as plain text.
//
// Every page is one file: its style is inside, it asks the network for nothing
// and runs no script. It is read on a phone, on a desk, on paper, by eye and by
// ear, in light and dark, and no meaning hangs on colour.
//
// Marks on an axis of time: a bracket is the window of a job, an open diamond
// its ideal day, a filled square the chosen day, a filled circle a job on
// record, a cross one that was missed. Hatching is closed ground.
//
// The pages leave out nothing the program says. A figure that they draw and
// the program does not carry, the soil's temperature and the growth through
// the year, comes from the climate of the program's own place.
package page
