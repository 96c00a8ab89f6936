// Package book writes the files that a person keeps about a lawn, so that no
// line is ever lost: [NewLine] writes what was done as a line that stands by
// itself, [Append] adds a line to a record book that many may be writing at
// once, [Replace] gives a file new content, all or nothing, and [Create] writes
// a new one.
//
// Whatever writes works inside a folder opened as an [os.Root]: no name and no
// symbolic link leads out of it.
package book
