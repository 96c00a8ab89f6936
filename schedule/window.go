package schedule

import (
	"cmp"
	"slices"

	"swardbook/climate"
)

// opening is a stretch of the year that a rule names by its events, laid on
// dates: between them a kind of job makes sense.
type opening struct {
	Span
	opens, closes string
}

// openGround lists the stretches of open ground around the program. Where the
// ground never freezes it is one stretch.
func (a *almanac) openGround() []opening {
	if a.ground.Kind == climate.GroundNever {
		return []opening{{Span{a.start.AddDays(-800), a.through.AddDays(1200)}, "the ground is open all year", "the ground is open all year"}}
	}
	return a.between(a.ground.Reopens, a.ground.LastSafe, "the ground is open again", "last safe day before the ground freezes")
}

// between lays two events of one year on every year around the program.
func (a *almanac) between(from, to climate.When, opens, closes string) []opening {
	years := a.years()
	out := make([]opening, 0, len(years))
	for _, y := range years {
		if s := (Span{a.on(from, y), a.on(to, y)}); s.Days() > 0 {
			out = append(out, opening{s, opens, closes})
		}
	}
	return out
}

// meet cuts openings down to where both hold.
func meet(as, bs []opening) []opening {
	out := make([]opening, 0, len(as))
	for i := range as {
		a := &as[i]
		for k := range bs {
			b := &bs[k]
			s := opening{Span{Later(a.From, b.From), Earlier(a.To, b.To)}, a.opens, a.closes}
			if s.To.Before(s.From) {
				continue
			}
			if b.From.After(a.From) {
				s.opens = b.opens
			}
			if b.To.Before(a.To) {
				s.closes = b.closes
			}
			out = append(out, s)
		}
	}
	return out
}

// sortOpenings puts openings in order of time.
func sortOpenings(os []opening) {
	slices.SortStableFunc(os, func(a, b opening) int {
		return cmp.Or(a.From.Compare(b.From), a.To.Compare(b.To))
	})
}

// from cuts openings to the days on or after d, saying so.
func from(os []opening, d Date, because string) []opening {
	return meet(os, []opening{{Span{d, d.AddDays(4000)}, because, ""}})
}

// windows turns openings into the windows of a job inside the program. ideal
// picks the best day of an opening. The second value is the ideal day of the
// first opening after the program, for what must be carried over.
func (c *Case) windows(os []opening, ideal func(opening) Date) ([]Window, Date) {
	var out []Window
	var next Date
	carried := ""
	for _, o := range os {
		if o.To.Before(c.Start) {
			if c.Start.DaysFrom(o.To) < recently {
				carried = "too late for the window that closed on " + o.To.Short() + " (" + o.closes + ")"
			}
			continue
		}
		best := clamp(ideal(o), o.Span)
		if o.From.After(c.Through) {
			next = best
			break
		}
		w := Window{Span: o.Span, Ideal: best, Opens: o.opens, Closes: o.closes}
		if o.To.DaysFrom(c.Through) < endless {
			w.Last = o.To
		}
		if w.From.Before(c.Start) {
			w.From, w.Opens = c.Start, "start of the program"
		}
		if w.To.After(c.Through) {
			w.To, w.Closes = c.Through, "end of the program"
		}
		w.Ideal = clamp(w.Ideal, w.Span)
		if len(out) > 0 {
			carried = "no room in the window of " + out[len(out)-1].From.Short() + " to " + out[len(out)-1].To.Short()
		}
		w.Carried = carried
		out = append(out, w)
	}
	return out, next
}

// endless is how far beyond the program an opening ends that has no last day
// of its own, such as ground that never freezes.
const endless = 1000

// recently is how long after a window has closed a job is still told to have
// missed it, in days.
const recently = 75 // [common]

func clamp(d Date, s Span) Date { return Later(s.From, Earlier(d, s.To)) }

// soonest takes the first day of an opening, for what should not wait.
func soonest(o opening) Date { return o.From }

// at takes a wished day.
func at(d Date) func(opening) Date { return func(opening) Date { return d } }

// byGrowth takes the day of the opening by which the given share of its
// growth has passed.
func (c *Case) byGrowth(share float64) func(opening) Date {
	return func(o opening) Date {
		n := o.Days()
		sums := make([]float64, n)
		total := 0.0
		for i, d := 0, o.From; i < n; i, d = i+1, d.next() {
			total += c.growth.on(d)
			sums[i] = total
		}
		for i, sum := range sums {
			if sum >= share*total {
				return o.From.AddDays(i)
			}
		}
		return o.To
	}
}
