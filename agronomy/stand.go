package agronomy

import (
	"fmt"
	"strings"
)

// Share is one grass of a mixture and its part.
type Share struct {
	Grass   Grass
	Percent Percent
}

// Stand is the grass of an area: one grass, or a mixture in the order of the
// site file. It has at least one grass; the shares are taken in proportion.
type Stand []Share

// String names the stand: "perennial ryegrass 60 %, fine fescue 40 %".
func (s Stand) String() string {
	if len(s) == 1 {
		return s[0].Grass.Name
	}
	names := make([]string, len(s))
	for i, sh := range s {
		names[i] = fmt.Sprintf("%s %s %%", sh.Grass.Name, Figures(sh.Percent, 4))
	}
	return strings.Join(names, ", ")
}

// Weight is a grass's part, 0 to 1.
func (s Stand) Weight(i int) float64 {
	sum := Percent(0)
	for _, sh := range s {
		sum += sh.Percent
	}
	if sum <= 0 {
		return 1 / float64(len(s))
	}
	return float64(s[i].Percent / sum)
}

// Season is the season of the larger part; cool where they are even.
func (s Stand) Season() Season {
	if s.warm() > 0.5 {
		return Warm
	}
	return Cool
}

// warm is the part of warm-season grass, 0 to 1.
func (s Stand) warm() (part float64) {
	for i := range s {
		if s[i].Grass.Season == Warm {
			part += s.Weight(i)
		}
	}
	return part
}

// Mixed tells what it means that the stand holds grass of both seasons; false
// for most stands.
func (s Stand) Mixed() (Reason, bool) {
	warm := s.warm()
	other := min(warm, 1-warm)
	if other < 0.005 {
		return Reason{}, false
	}
	return Reason{fmt.Sprintf("the stand mixes seasons: its larger part, %s grass, sets the calendar, and the other %.0f %% is fed at its wrong time", s.Season(), 100*other), "common"}, true
}

// TargetPH weights the grasses' targets and gives the range in which all of
// them do well; where they share none, the widest range of the larger part.
func (s Stand) TargetPH() (target, low, high PH) {
	for i := range s {
		if t, ok := GrassPH(s[i].Grass.Name); ok {
			target += PH(s.Weight(i)) * t.Default
		}
	}
	low, high, _ = s.rangePH()
	return target, low, high
}

// rangePH gives the range in which all grasses do well; not shared, that of the
// larger part.
func (s Stand) rangePH() (low, high PH, shared bool) {
	var larger GrassTarget
	part := 0.0
	low, high = 0, 14
	for i := range s {
		t, ok := GrassPH(s[i].Grass.Name)
		if !ok {
			continue
		}
		low, high = max(low, t.Low), min(high, t.High)
		if w := s.Weight(i); w > part {
			larger, part = t, w
		}
	}
	if low > high {
		return larger.Low, larger.High, false
	}
	return low, high, true
}

// WhyPH tells where the figures of [Stand.TargetPH] come from.
func (s Stand) WhyPH() (why []Reason) {
	for _, sh := range s {
		if t, ok := GrassPH(sh.Grass.Name); ok {
			why = append(why, Reason{sh.Grass.Name + ": pH " + t.Default.Words() + ", range " + t.Low.Words() + " to " + t.High.Words(), t.Source})
		}
	}
	if low, high, shared := s.rangePH(); !shared {
		why = append(why, Reason{fmt.Sprintf("The grasses share no range; that of the larger part, %.1f to %.1f, is used.", float64(low), float64(high)), "common"})
	}
	if target, _, _ := s.TargetPH(); len(s) > 1 {
		why = append(why, Reason{fmt.Sprintf("weighted by share: pH %.2f", float64(target)), "common"})
	}
	return why
}

// MostUp is the days from sowing until most of the stand is up: the middle of the
// range of the grass with the largest part. ok is false where that grass has no
// figure, as those that are planted as plugs or sod.
func (s Stand) MostUp() (days int, why Reason, ok bool) {
	most := 0
	for i := range s {
		if s.Weight(i) > s.Weight(most) {
			most = i
		}
	}
	g := s[most].Grass
	if g.EmergeDays[1] == 0 {
		return 0, Reason{}, false
	}
	days = (g.EmergeDays[0] + g.EmergeDays[1] + 1) / 2 // [common] the middle
	return days, Reason{fmt.Sprintf("%s, the larger part of the stand, is mostly up %d days after sowing, the middle of %d to %d", g.Name, days, g.EmergeDays[0], g.EmergeDays[1]), g.EmergeSource}, true
}

// Emergence is the span from sowing to seedlings, in days: the earliest of the
// quickest grass and the latest of the slowest. ok is false where a grass has
// no figure, as those that are planted as plugs or sod.
func (s Stand) Emergence() (first, last int, why []Reason, ok bool) {
	for _, sh := range s {
		d := sh.Grass.EmergeDays
		if d[1] == 0 {
			return 0, 0, []Reason{{Text: fmt.Sprintf("No figure for %s from sowing to seedlings: it is mostly planted as sod or plugs.", sh.Grass.Name)}}, false
		}
		if first == 0 || d[0] < first {
			first = d[0]
		}
		last = max(last, d[1])
		why = append(why, Reason{fmt.Sprintf("%s is up in %d to %d days", sh.Grass.Name, d[0], d[1]), sh.Grass.EmergeSource})
	}
	return first, last, why, true
}
