// Package text writes programs, soil reports, ledgers and climates for a
// terminal, and their tables as CSV and Markdown.
//
//	text.Program(p, style)   the program, to be read from top to bottom
//	text.Why(p, e, style)    the working of one job, step by step with sources
//	text.Entries(p, today)   the program's jobs as a Table for CSV and Markdown
//
// Everything is written into a string; nothing here knows a terminal, a file
// or a clock. Lines keep to Style.Width, and a number is never parted from its
// unit. Colour repeats what the words already say.
package text
