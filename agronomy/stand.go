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
		names[i] = fmt.Sprintf("%s %.4g %%", sh.Grass.Name, float64(sh.Percent))
	}
	return strings.Join(names, ", ")
}

// weight is a grass's part, 0 to 1.
func (s Stand) weight(i int) float64 {
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
func (s Stand) Season() (Season, []Reason) {
	warm := 0.0
	for i, sh := range s {
		if sh.Grass.Season == Warm {
			warm += s.weight(i)
		}
	}
	season, word, other := Cool, "cool-season", warm
	if warm > 0.5 {
		season, word, other = Warm, "warm-season", 1-warm
	}
	why := []Reason{{Text: fmt.Sprintf("%s: %s grass", s, word)}}
	if other > 0 {
		why = append(why, Reason{fmt.Sprintf("The stand mixes seasons; the larger part sets the calendar, and the other %.0f %% will be fed at its wrong time.", 100*other), "common"})
	}
	return season, why
}

// TargetPH weights the grasses' targets and gives the range in which all of
// them do well; where they share none, the widest range of the larger part.
func (s Stand) TargetPH() (target, low, high PH, why []Reason) {
	main := 0
	for i, sh := range s {
		t, ok := GrassPH(sh.Grass.Name)
		if !ok {
			continue
		}
		w := s.weight(i)
		target += PH(w) * t.Default
		if low == 0 || t.Low > low {
			low = t.Low
		}
		if high == 0 || t.High < high {
			high = t.High
		}
		if w > s.weight(main) {
			main = i
		}
		why = append(why, Reason{fmt.Sprintf("%s: pH %.1f, range %.1f to %.1f", sh.Grass.Name, float64(t.Default), float64(t.Low), float64(t.High)), t.Source})
	}
	if low > high {
		t, _ := GrassPH(s[main].Grass.Name)
		low, high = t.Low, t.High
		why = append(why, Reason{fmt.Sprintf("The grasses share no range; that of %s is used.", s[main].Grass.Name), "common"})
	}
	if len(s) > 1 {
		why = append(why, Reason{fmt.Sprintf("weighted by share: pH %.2f", float64(target)), "common"})
	}
	return target, low, high, why
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
