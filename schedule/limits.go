package schedule

import (
	"swardbook/agronomy"
)

// Unlimited is more than any dose.
const Unlimited agronomy.PerThousand = 1000

// MostKAtOnce is the most potassium that goes down at once.
const MostKAtOnce agronomy.PerThousand = 1.0 // [common]

// QuickDays is the run of days over which quick nitrogen is counted.
const QuickDays = 30 // [common]

// What any 12 months hold, by custom or by law, binds doses of several seasons
// and turf years. So each season is held to what is left of it, and each dose,
// once it has a day, waits until the 12 months that end with it have room.

// TwelveMonths gives the most nitrogen in any 12 months; unlimited if nothing
// limits it.
func (c *Case) TwelveMonths() (most agronomy.PerThousand, why Reason) {
	most = c.MostN.Year
	why = Reason{Text: "cool-season lawns need no more in any 12 months", Source: "ksu-eckert"}
	if l, ok := c.Law.AnnualNCap(c.Asked); ok && (most == 0 || agronomy.PerThousand(l.Value) < most) {
		most, why = agronomy.PerThousand(l.Value), LawReason(l.Rule)
	}
	if most == 0 {
		most = Unlimited
	}
	return most, why
}

// LastOf12 is the last day, counted from the first, of a run of 12 months.
const LastOf12 = 364

// LeastDose is the least amount of a nutrient worth a job, in lb/1000 sq ft.
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
