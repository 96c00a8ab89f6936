package climate

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// better is something about the place that is not known yet, with the errors that would
// be left if it were.
type better struct {
	what   string
	errors placeErrors
}

// moreExact says what would narrow the place's dates, the most helpful first,
// each with the date it narrows most: "elevation (last freeze to ± 16 days
// instead of 18)". What would not narrow any date by a day is left out.
func (y *Year) moreExact(p Place, at *position, zone Zone) []string {
	var ways []better
	byPosition := func(elevation bool) placeErrors {
		e := errorsOfPosition(y.West, elevation)
		if y.inSingleNights() {
			e.firstFreeze, e.lastFreeze = y.nearErrors()
		}
		return e
	}
	outside, _ := outsideTable(p.State)
	switch {
	case p.Highs != nil: // a position adds nothing: its errors are those between two nearby stations
	case y.Where != "":
		if p.Elevation == nil {
			ways = append(ways, better{"elevation", byPosition(true)})
		}
	case outside != "":
		ways = append(ways, better{"twelve monthly mean highs and lows of a nearby station", errorsOfNormals()})
	default:
		if at == nil && (p.State != "" || !y.Southern) {
			ways = append(ways, better{"ZIP code", byPosition(p.Elevation != nil)})
		}
		typical := errorsOfRow(row{state: p.State, month: 2.55}, y.West) // [model] section 3, all
		switch {
		case p.State == "":
			ways = append(ways, better{"state", typical})
		case zone < 0:
			ways = append(ways, better{"hardiness zone", typical})
		case p.Elevation == nil:
			sharper := y.errors
			sharper.sharpen(y.West)
			ways = append(ways, better{"elevation", sharper})
		}
	}
	own := y.errors
	own.firstFreeze, own.lastFreeze = 0, 0
	ways = append(ways, better{"the middle dates of your own first and last freezes over ten years or more", own})

	type gain struct {
		days float64
		text string
	}
	var gains []gain
	now := y.uncertain()
	for _, w := range ways {
		if g, text := now.gain(w.errors); g > 0 {
			gains = append(gains, gain{g, w.what + text})
		}
	}
	slices.SortStableFunc(gains, func(a, b gain) int { return cmp.Compare(b.days, a.days) })
	var words []string
	for _, g := range gains {
		words = append(words, g.text)
	}
	return words
}

// uncertain holds the events of a year that better knowledge of the place would date more
// closely.
type uncertain struct{ firstFreeze, lastFreeze, fall, spring When }

func (y *Year) uncertain() uncertain {
	return uncertain{y.FirstFreeze(), y.LastFreeze(), y.SoilFalls(seedDepth, coolSoil), y.SoilRises(seedDepth, coolSoil)}
}

// gain works out which event the errors e would date more closely than now, the most
// improved one: by how many days its SD would shrink, and the words that say so. It gives
// 0 and "" if no printed number of days would get smaller.
func (u uncertain) gain(e placeErrors) (days float64, text string) {
	for _, d := range []struct {
		what string
		when When
		left float64
	}{
		{"first freeze", u.firstFreeze, e.firstFreeze}, {"last freeze", u.lastFreeze, e.lastFreeze},
		{"soil at 50 °F in autumn", u.fall, e.fall}, {"soil at 50 °F in spring", u.spring, e.spring},
	} {
		if d.when.Never {
			continue
		}
		then := d.when
		then.SD = math.Hypot(d.left, then.YearSD)
		if g := d.when.SD - then.SD; g > days && then.Within() < d.when.Within() {
			days, text = g, fmt.Sprintf(" (%s to ± %d days instead of %d)", d.what, then.Within(), d.when.Within())
		}
	}
	return days, text
}
