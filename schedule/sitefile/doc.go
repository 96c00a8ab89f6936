// Package sitefile reads the two files a person keeps about a lawn, the site
// file (TOML) and the record book (CSV), and writes their text. What is wrong or
// doubtful in them comes out as problems with a line, a key and a remedy, all in
// one run.
//
//	site, problems := sitefile.Load("site.toml", text, open)
//	done, problems := sitefile.LoadRecord("site.record.csv", text, site)
//
// The way through a site file:
//
//	parse    refuses what is no such file at all: size, encoding, TOML syntax
//	scan     finds the line of every key, which the TOML library does not tell
//	check    compares every key and the type of its value with the list of keys
//	site     reads the tables, one file each: place, crew, area, soil, material
//
// The list of keys in keys.go is the whole language: a key that is not there
// is refused with the nearest that is. Named tables only: [area.east], never
// [[area]], so that every area has an id that stays.
//
// A value that is missing and has a default is noted in Site.Assumed or
// Area.Assumed. A value that is missing and has none stays zero, "not known",
// and it is for the planner to say what follows.
//
// The record book:
//
//	record   reads a book: which columns it has, how long it may be
//	row      reads one of its lines
//	whole    reads the columns of a line that stands by itself
//	write    writes lines: whole, short, or a book of them
//
// [Change], [With] and [Without] edit the text of a site file and leave the rest
// of it as it was.
//
// The package opens no file and writes none: package book does. Load is given a function
// that opens the station file which the key place.normals names.
package sitefile
