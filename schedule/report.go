package schedule

import (
	"swardbook/agronomy"
	"swardbook/agronomy/lime"
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
