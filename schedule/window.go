package schedule

import (
	"cmp"
	"slices"

	"swardbook/climate"
)

// Opening is a stretch of the year that a rule names by its events, laid on
// dates: between them a kind of job makes sense.
type Opening struct {
	Span
	Opens, Closes string
}

// openGround lists the stretches of open ground around the program. Where the
// ground never freezes it is one stretch.
func (a *Almanac) openGround() []Opening {
	if a.Ground.Kind == climate.GroundNever {
		return []Opening{{Span{a.start.AddDays(-800), a.through.AddDays(1200)}, "the ground is open all year", "the ground is open all year"}}
	}
	return a.Between(a.Ground.Reopens, a.Ground.LastSafe, "the ground is open again", "last safe day before the ground freezes")
}

// Between lays two events of one year on every year around the program.
func (a *Almanac) Between(from, to climate.When, opens, closes string) []Opening {
	years := a.Years()
	out := make([]Opening, 0, len(years))
	for _, y := range years {
		if s := (Span{a.On(from, y), a.On(to, y)}); s.Days() > 0 {
			out = append(out, Opening{s, opens, closes})
		}
	}
	return out
}

// Meet cuts openings down to where both hold.
func Meet(as, bs []Opening) []Opening {
	out := make([]Opening, 0, len(as))
	for i := range as {
		a := &as[i]
		for k := range bs {
			b := &bs[k]
			s := Opening{Span{Later(a.From, b.From), Earlier(a.To, b.To)}, a.Opens, a.Closes}
			if s.To.Before(s.From) {
				continue
			}
			if b.From.After(a.From) {
				s.Opens = b.Opens
			}
			if b.To.Before(a.To) {
				s.Closes = b.Closes
			}
			out = append(out, s)
		}
	}
	return out
}

// SortOpenings puts openings in order of time.
func SortOpenings(os []Opening) {
	slices.SortStableFunc(os, func(a, b Opening) int {
		return cmp.Or(a.From.Compare(b.From), a.To.Compare(b.To))
	})
}

// beyond is more days than any program has.
const beyond = 4000

// From cuts openings to the days on or after d, saying so.
func From(os []Opening, d Date, because string) []Opening {
	return Meet(os, []Opening{{Span{d, d.AddDays(beyond)}, because, ""}})
}

// Until cuts openings to the days up to d, saying so.
func Until(os []Opening, d Date, because string) []Opening {
	return Meet(os, []Opening{{Span{d.AddDays(-beyond), d}, "", because}})
}

// Windows turns openings into the windows of a job, cut to the days of the case. ideal
// picks the best day of an opening. The second value is the ideal day of the first opening
// after the last day, for a job that has to wait until then.
func (c *Case) Windows(os []Opening, ideal func(Opening) Date) ([]Window, Date) {
	var out []Window
	var next Date
	carried := ""
	for _, o := range os {
		if o.To.Before(c.Start) {
			if c.Start.DaysFrom(o.To) < recently && !o.To.Before(c.Almanac.YearBegins(c.Year, c.Season)) {
				carried = "too late for the window that closed on " + o.To.Short() + " (" + o.Closes + ")"
			}
			continue
		}
		best := clamp(ideal(o), o.Span)
		if o.From.After(c.Through) {
			next = best
			break
		}
		w := Window{Span: o.Span, Ideal: best, Opens: o.Opens, Closes: o.Closes}
		if o.To.DaysFrom(c.Through) < Endless {
			w.Last = o.To
		}
		if w.From.Before(c.Start) {
			w.From, w.Opens = c.Start, c.Opens
		}
		if w.To.After(c.Through) {
			w.To, w.Closes = c.Through, "the season ends"
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

// Endless is a number of days: an opening that ends so long after the last day of a case
// has no last day of its own, such as that of ground which never freezes.
const Endless = 1000

// recently is for how many days after a window has closed the next one says so.
const recently = 75 // [common]

// clamp gives the day of a span that is nearest to d.
func clamp(d Date, s Span) Date { return Later(s.From, Earlier(d, s.To)) }

// Soonest takes the first day of an opening, for what should not wait.
func Soonest(o Opening) Date { return o.From }

// At takes a wished day.
func At(d Date) func(Opening) Date { return func(Opening) Date { return d } }

// ByGrowth gives the days of an opening by which given shares of its growth have passed;
// the shares ascend.
func (c *Case) ByGrowth(o Opening, shares ...float64) []Date {
	total := 0.0
	for d := o.From; !d.After(o.To); d = d.Next() {
		total += c.Growth.on(d)
	}
	out := make([]Date, 0, len(shares))
	sum := 0.0
	for d := o.From; !d.After(o.To); d = d.Next() {
		sum += c.Growth.on(d)
		for len(out) < len(shares) && sum >= shares[len(out)]*total {
			out = append(out, d)
		}
	}
	for len(out) < len(shares) {
		out = append(out, o.To)
	}
	return out
}

// Window gives the window that holds the job's day, or its first.
func (j *Job) Window() Window {
	for _, w := range j.Windows {
		if w.Has(j.On) {
			return w
		}
	}
	if len(j.Windows) > 0 {
		return j.Windows[0]
	}
	return Window{Span: Span{j.On, j.On}, Ideal: j.On}
}

// WindowWords names the events that open and close a window.
func WindowWords(w Window) string {
	switch {
	case w.Opens == "":
		return ""
	case w.Opens == w.Closes:
		return w.Opens
	}
	return "opens: " + w.Opens + "; closes: " + w.Closes
}
