package schedule

import "swardbook/agronomy"

// trace is the least amount of a nutrient worth a job, in lb/1000 sq ft.
const LeastDose agronomy.PerThousand = 0.1 // [common]

// Dust is more than rounding makes of two equal amounts, in lb/1000 sq ft.
const Dust agronomy.PerThousand = 1e-6

// Remains gives what a need still lacks of an amount that is down or planned.
// Dust is nothing: a need that went down as planned lacks nothing.
func Remains(need, less agronomy.PerThousand) agronomy.PerThousand {
	if left := need - less; left >= Dust {
		return left
	}
	return 0
}

// WorthJob tells whether what is left of a nutrient is worth a job, with room for
// rounding, or it would be worth one on one day and none on the next.
func WorthJob(left agronomy.PerThousand) bool { return left >= LeastDose+Dust }
