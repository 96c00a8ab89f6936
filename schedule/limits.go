package schedule

import "swardbook/agronomy"

// Unlimited is more than any dose.
const Unlimited agronomy.PerThousand = 1000

// kAtOnce is the most potassium that goes down at once.
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
