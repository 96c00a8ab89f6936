// Package lesson makes a worksheet for a class of fifty minutes out of a program: what is
// given of one area, the tables and rules that are needed, about eight questions, and a
// key that works each of them in the taught steps.
//
// Whatever the key uses stands on the worksheet, in the site's units and as it is
// printed there: [Of] calculates with the printed figures, not with the unrounded ones. A
// question is asked only where its taught steps lead to what the program plans; where the
// program went by something that the sheet cannot hold, the question is left out.
//
// [Vary] gives a site other numbers, for the neighbour in the class.
package lesson
