package lesson

import (
	"math"
	"slices"

	"swardbook/agronomy"
	"swardbook/schedule"
)

// MostSets is how many sets of numbers there are.
const MostSets = 30

// For a set, different numbers are tried until one leads to the same questions as the
// site's own numbers: at most tries of them. They lie a stride apart, chosen so that
// [spread] goes through all its values.
const (
	tries  = 40
	stride = 41
)

// SetOf makes the lesson of a set: other numbers, the same questions. plan is the
// function that plans the changed site. The same set of the same site has the same
// numbers every time.
func SetOf(p *schedule.Program, o Options, plan func(*schedule.Site) (*schedule.Program, error)) (*Lesson, error) {
	own, err := Of(p, o)
	if err != nil || o.Set == 0 {
		return own, err
	}
	for try := range tries {
		q, err := plan(Vary(p.Site, o.Set+try*stride))
		if err != nil {
			return nil, err
		}
		l, err := Of(q, o)
		if err == nil && sameQuestions(own, l) {
			return l, nil
		}
	}
	return nil, ErrNoSet
}

// sameQuestions tells whether two lessons ask the same, with the same kinds of answer.
func sameQuestions(a, b *Lesson) bool {
	return slices.EqualFunc(a.Questions(), b.Questions(), func(x, y *Question) bool {
		return x.Title == y.Title && slices.EqualFunc(x.Answers, y.Answers, func(v, w Answer) bool { return v.Name == w.Name })
	})
}

// Vary gives a site other numbers: its sizes, the readings of its reports and the
// pounds in its packs stay believable, and change a little with the number.
func Vary(s *schedule.Site, n int) *schedule.Site {
	out := *s
	out.Areas = slices.Clone(s.Areas)
	for i := range out.Areas {
		a := &out.Areas[i]
		unit := 50.0 // sq ft
		if s.Metric {
			unit = 10 * agronomy.SquareFeetPerMeter2
		}
		step := max(unit, math.Round(float64(a.Size)*0.04/unit)*unit)
		a.Size = agronomy.SquareFeet(max(unit, math.Round(float64(a.Size)/unit)*unit+spread(n, 1, 9)*step))
		if a.Soil != nil {
			a.Soil = varied(a.Soil, n)
		}
		a.Reports = slices.Clone(a.Reports)
		for j := range a.Reports {
			if a.Reports[j].Soil != nil {
				a.Reports[j].Soil = varied(a.Reports[j].Soil, n)
			}
		}
	}
	return &out
}

// spread gives a whole number from minus half a span to half a span. As n grows by 1 it
// moves on by pace, and begins again at the other end, so that it takes all values.
func spread(n, pace, span int) float64 { return float64(n*pace%span - span/2) }

// varied is a report with other readings.
func varied(r *agronomy.Report, n int) *agronomy.Report {
	v := *r
	if r.PH > 0 {
		v.PH = agronomy.PH(math.Round(float64(r.PH)*10+spread(n, 2, 5)) / 10)
	}
	if r.Buffer.PH > 0 {
		v.Buffer.PH = agronomy.PH(math.Round(float64(r.Buffer.PH)*100+spread(n, 1, 7)*2) / 100)
	}
	for i, reading := range []*agronomy.Reading{&v.Phosphorus, &v.Potassium, &v.Calcium, &v.Magnesium, &v.Sulfur, &v.Iron} {
		if !reading.Given || reading.PerAcre > 0 || reading.Wanted.Given {
			continue
		}
		by := 1 + 0.05*spread(n, i+2, 11) // a twentieth a step, up to a quarter
		reading.PPM = agronomy.PPM(max(1, math.Round(float64(reading.PPM)*by)))
		reading.AsGiven, reading.Steps = agronomy.Figure(reading.PPM)+" ppm", nil
	}
	return &v
}
