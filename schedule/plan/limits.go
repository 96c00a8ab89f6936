package plan

import (
	"cmp"

	"swardbook/agronomy"
	"swardbook/agronomy/nutrient"
	"swardbook/schedule"
	"swardbook/schedule/place"
)

// limit is a [place.Limit] between two jobs, with the reason for people.
type limit struct {
	place.Limit
	why string
}

// limitsBetween gives the limits between jobs of the same area: the distances of the trade
// between the things that they put down, and the order of sample and lime. Jobs without a
// day come first.
func limitsBetween(jobs []*schedule.Job) []limit {
	var out []limit
	things := make([]nutrient.Things, len(jobs))
	quick := nutrient.LimitsOfNitrogen(agronomy.Cool).Soluble30Days // the same for both seasons
	for i := range jobs {
		things[i] = jobs[i].Things()
	}
	for a := range jobs {
		if !jobs[a].On.IsZero() {
			break // from here on all have their day: no limit between them is of use
		}
		for b := a + 1; b < len(jobs); b++ {
			if jobs[a].Area == nil || jobs[a].AreaID() != jobs[b].AreaID() {
				continue
			}
			if jobs[a].Kind == jobs[b].Kind && jobs[a].Season == jobs[b].Season && jobs[a].N == jobs[b].N {
				continue // the rest of a job need not keep its distance from what is down of it
			}
			if l, ok := limitOf(jobs[a], jobs[b], things[a], things[b], quick); ok {
				l.A, l.B = a, b
				out = append(out, l)
			}
		}
	}
	return out
}

// limitOf gives the limit between two jobs; false if any days will do. as and bs are what
// they count as for spacing, quick is the most quick nitrogen in 30 days.
func limitOf(a, b *schedule.Job, as, bs nutrient.Things, quick agronomy.PerThousand) (limit, bool) {
	tilled := a.Tilled && b.Tilled
	ab, _ := nutrient.Between(as, bs, tilled)
	ba, _ := nutrient.Between(bs, as, tilled)
	l := limit{Limit: place.Limit{AThenB: ab.Days, BThenA: ba.Days}}
	why := ab.Why.Text
	if ba.Days > ab.Days {
		why = ba.Why.Text
	}
	if widen := quickApart(a, b, quick); widen > 0 {
		if widen > max(l.AThenB, l.BThenA) {
			why = "more than 1 lb of quick nitrogen may not come together in 30 days"
		}
		l.AThenB, l.BThenA = max(l.AThenB, widen), max(l.BThenA, widen)
	}
	if a.Dose.K2O > 0 && b.Dose.K2O > 0 && a.Dose.K2O+b.Dose.K2O > schedule.MostKAtOnce+1e-9 && max(l.AThenB, l.BThenA) < kDays {
		l.AThenB, l.BThenA = max(l.AThenB, kDays), max(l.BThenA, kDays)
		why = "more than 1 lb of potassium (K₂O) may not come together"
	}
	switch {
	case tilled && a.Kind == b.Kind: // one tilling works both in
	case a.Kind == b.Kind && a.State != schedule.Finished && b.State != schedule.Finished: // the numbers follow the days
		l.Order = 1
		if follows(a, b) {
			l.Order = -1
		}
		l.AThenB, l.BThenA = max(1, l.AThenB), max(1, l.BThenA)
		why = cmp.Or(why, "jobs of one kind follow each other")
	case a.Kind.Notice() || b.Kind.Notice():
	case a.Kind == schedule.SoilTest && b.Kind == schedule.Lime:
		return sampleAndLime(a, b, l)
	case a.Kind == schedule.Lime && b.Kind == schedule.SoilTest:
		m, ok := sampleAndLime(b, a, limit{Limit: place.Limit{AThenB: l.BThenA, BThenA: l.AThenB}})
		m.AThenB, m.BThenA, m.Order = m.BThenA, m.AThenB, -m.Order
		return m, ok
	case a.Kind == schedule.SoilTest && a.Area.Soil == nil && b.Ahead() || b.Kind == schedule.SoilTest && b.Area.Soil == nil && a.Ahead():
		if a.Kind == schedule.SoilTest { // the sample comes before feed
			l.Order = 1
		} else {
			l.Order = -1
		}
		why = "the sample comes before anything is spread"
	}
	switch {
	case a.Kind == schedule.SoilTest && decided(b) && !answered(a):
		l.AThenB, why = max(l.AThenB, schedule.AnswerDays), cmp.Or(why, becauseAnswer)
	case b.Kind == schedule.SoilTest && decided(a) && !answered(b):
		l.BThenA, why = max(l.BThenA, schedule.AnswerDays), cmp.Or(why, becauseAnswer)
	}
	l.why = why
	if l.AThenB == 0 && l.BThenA == 0 && l.Order == 0 {
		return limit{}, false
	}
	return l, true
}

// follows tells whether of two jobs of one kind the first comes after the second: by
// their windows where one closes before the other opens, else by their numbers.
func follows(a, b *schedule.Job) bool {
	if len(a.Windows) > 0 && len(b.Windows) > 0 {
		switch {
		case a.Windows[len(a.Windows)-1].To.Before(b.Windows[0].From):
			return false
		case b.Windows[len(b.Windows)-1].To.Before(a.Windows[0].From):
			return true
		}
	}
	return a.N > b.N
}

// sampleAndLime adds to the limit between a sample and a dressing, whose distances already
// keep the sample half a year behind lime. Lime after the sample waits for the answer. The
// sample must come first if the area has no report, or if the dressing goes on top of lime
// that the report does not know of.
func sampleAndLime(sample, lime *schedule.Job, l limit) (limit, bool) {
	l.why = "the retest shows what the lime before it did, and comes before any more"
	if !answered(sample) {
		l.AThenB = max(l.AThenB, schedule.AnswerDays)
	}
	if !lime.Ahead() {
		return l, true
	}
	if lime.Again {
		l.Order = 1
	}
	if sample.Area.Soil == nil {
		l.Order, l.why = 1, "the sample comes before lime"
	}
	return l, true
}

// answered tells whether a sample on record is the one that the report in force answers.
func answered(sample *schedule.Job) bool {
	return !sample.On.IsZero() && !sample.Area.Sampled.IsZero() && !sample.Area.Sampled.AddDays(nearTaken).Before(sample.On)
}

const becauseAnswer = "the answer to the sample decides first"

// decided tells whether a job still to come is one that a soil sample decides:
// what a shortage in the report asks for, and what changes the soil itself.
func decided(j *schedule.Job) bool {
	return j.Ahead() && j.Kind != schedule.Lime && j.Kind.Decided()
}

// kDays is how many days two doses keep apart that would bring too much potassium
// together.
const kDays = 7 // [common]

// quickApart gives the days two jobs need between them so that 30 days hold no
// more than the most of quick nitrogen; 0 if they may meet.
func quickApart(a, b *schedule.Job, most agronomy.PerThousand) int {
	if a.Dose.SolubleN == 0 || b.Dose.SolubleN == 0 {
		return 0
	}
	if a.Dose.SolubleN+b.Dose.SolubleN > most+1e-9 {
		return schedule.QuickDays
	}
	return 0
}
