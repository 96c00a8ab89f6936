package schedule

import (
	"swardbook/agronomy"
)

// Unlimited stands for no limit: it is above any dose.
const Unlimited agronomy.PerThousand = 1000

// MostKAtOnce is the most potassium (K₂O) that goes down at once, in lb/1000 sq ft.
const MostKAtOnce agronomy.PerThousand = 1.0 // [common]

// QuickDays is the run of days over which quick nitrogen is counted.
const QuickDays = 30 // [common]

// TwelveMonths gives the most nitrogen in any 12 months, by custom or by law;
// [Unlimited] if there is none. Any 12 months reach over several seasons and turf years:
// so rules plan no more for a season than the 12 months that end with it have left, and
// a dose with a day waits until the 12 months that end with it have room.
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

// LastOf12 is how many days after its first day a run of 12 months ends.
const LastOf12 = 364

// LeastDose is the least amount of a nutrient worth a job, in lb/1000 sq ft.
const LeastDose agronomy.PerThousand = 0.1 // [common]

// Dust is the difference, in lb/1000 sq ft, under which two amounts are equal: more than
// rounding can make.
const Dust agronomy.PerThousand = 1e-6

// Remains gives what a need still lacks when an amount is down or planned. Less than
// [Dust] counts as none: a need that went down as planned lacks nothing.
func Remains(need, less agronomy.PerThousand) agronomy.PerThousand {
	if left := need - less; left >= Dust {
		return left
	}
	return 0
}

// WorthJob tells whether what is left of a nutrient is worth a job. It asks for a little
// more than [LeastDose], or rounding could make the same amount worth a job in one plan
// and none in the next.
func WorthJob(left agronomy.PerThousand) bool { return left >= LeastDose+Dust }
