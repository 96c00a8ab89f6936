// Package ask turns answers to questions into a site file with its record book, and
// back, and into the code of a web address that carries them all.
//
//	answers ─ File ─▶ site file and record book ─ Read ─▶ answers
//	answers ─ Load ─▶ a site, what was done, and what is wrong, by the name of the answer
//	answers ─ Share, Encode ─▶ code ─ Decode ─▶ answers
//
// An answer is named by the key of the site file that it fills, "area.lawn.soil.ph", or
// by line and column of the record book, "record.2.amount". So a field of a form, a key
// of the file and the problem found there have one name.
//
// The package is pure: it knows no clock, opens nothing, and draws no number by lot.
package ask
