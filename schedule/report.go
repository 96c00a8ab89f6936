package schedule

import (
	"swardbook/agronomy"
	"swardbook/agronomy/lime"
	"swardbook/agronomy/material"
)

// Report gives the area's soil report, with the site file's texture where the
// report has none; false without a report.
func (a *Area) Report() (agronomy.Report, bool) {
	if a.Soil == nil {
		return agronomy.Report{Texture: a.Texture}, false
	}
	r := *a.Soil
	if r.Texture == "" {
		r.Texture = a.Texture
	}
	return r, true
}

// LimeValue gives how much of a lime acts in an area: by the rule of its state, and
// as ordinary ground limestone where the requirement was read off a table of it.
func (s *Site) LimeValue(a *Area, m material.Material) lime.Value {
	need, _ := lime.Requirement(s.LimeCase(a)) // without one there is no table either
	return lime.ValueOf(m, s.Place.State, need.Ground)
}

// EffectiveLime gives the fully effective lime that a dose brings to an area.
func (s *Site) EffectiveLime(a *Area, d material.Dose) agronomy.PerThousand {
	if !limes(d.Material) {
		return 0
	}
	return d.Rate * agronomy.PerThousand(s.LimeValue(a, d.Material).Full) / 100
}

// LimeCase gathers what the lime requirement of an area depends on.
func (s *Site) LimeCase(a *Area) lime.Case {
	r, _ := a.Report()
	target, low, _ := a.Stand.TargetPH()
	lc := lime.Case{
		PH: r.PH, Target: target, LimeBelow: low,
		Buffer: r.Buffer, Acidity: r.Acidity, Texture: r.Texture,
		CEC: r.CEC, OrganicMatter: r.OrganicMatter,
		State: s.Place.State, Depth: r.Depth,
		WarmRegion: lime.WarmLimeRegion(s.Place.State),
		Printed:    r.Printed.Lime,
	}
	if r.TargetPH > 0 {
		lc.Target, lc.LimeBelow = r.TargetPH, 0
	}
	return lc
}
