package sitefile

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// takenNote marks the line of a job that nobody recorded.
const takenNote = "taken"

// whole reads what only a line that stands by itself says: what the bag held, and the
// dose first planned.
func (w row) whole(d *schedule.Done) {
	d.Taken = d.Note == takenNote && w.cells["kind"] != ""
	if of := w.cells["of"]; of != "" {
		var err error
		if d.Of, err = agronomy.ParseWeight(of); err != nil {
			w.wrong("of", fmt.Sprintf("%q is not a weight", of), "the dose first planned, like 96 lb; leave it empty if you do not know")
		}
	}
	_, kind, _, _, err := schedule.JobName(d.Job)
	if err == nil && kind.Sows() && (d.Packs > 0 || d.Volume > 0) {
		w.wrong("amount", "seed is recorded by its weight, or as a part of all", `like "6 lb" or half`)
	}
	analysis, slow, value := w.cells["analysis"], w.cells["slow"], w.cells["lime_value"]
	if err != nil || !kind.Spreads() || analysis == "" && value == "" {
		return
	}
	m := material.Material{ID: d.Material, Kind: material.FertilizerMaterial}
	if have := w.bags[d.Material]; have != nil { // name, pack and such come from the site file, what the bag held from the line
		m.Name, m.Liquid, m.Density, m.Pack, m.PackVolume, m.Lasts = have.Name, have.Liquid, have.Density, have.Pack, have.PackVolume, have.Lasts
	}
	if !w.analysis(&m, analysis) {
		return
	}
	if slow != "" {
		share, err := strconv.ParseFloat(slow, 64)
		if err != nil || !(share >= 0 && share <= 1) {
			w.wrong("slow", fmt.Sprintf("%q is not a share", slow), "the slow part of the nitrogen, from 0 to 1, like 0.4")
			return
		}
		m.SlowShare = share
	}
	switch {
	case value != "":
		v, err := strconv.ParseFloat(value, 64)
		if err != nil || !(v > 0 && v <= 200) {
			w.wrong("lime_value", fmt.Sprintf("%q is not a lime value", value), "the effective part of the weight in percent, like 85")
			return
		}
		m.Kind, m.ECCE = material.LimeMaterial, agronomy.Percent(v)
		if m.Analysis.K2O > 0 {
			m.Kind = material.WoodAsh
		}
	case kind == schedule.Gypsum:
		m.Kind = material.GypsumMaterial
	case kind == schedule.Iron && m.Analysis == (agronomy.Analysis{}):
		m.Kind = material.IronMaterial
	case m.Analysis == (agronomy.Analysis{}) && m.Sulfur >= 50: // [common] elemental sulfur holds 85 % and more
		m.Kind = material.SulfurMaterial
	case m.Analysis == (agronomy.Analysis{}) && m.Magnesium > 0:
		m.Kind = material.MagnesiumMaterial
	}
	d.Content = &m
	d.AsPlanned = d.Of > 0 && math.Abs(float64(d.Weight/d.Of)-1) < 0.06 // [common] rounding and a scale at home may be off by as much
}

// analysis reads "18-24-12", with what else is in the bag after it: "0-0-22 11Mg 22S".
func (w row) analysis(m *material.Material, text string) bool {
	for i, part := range strings.Fields(text) {
		var err error
		var v float64
		switch {
		case i == 0 && strings.Count(part, "-") == 2:
			m.Analysis, err = agronomy.ParseAnalysis(part)
		case strings.HasSuffix(part, "Mg"):
			v, err = strconv.ParseFloat(strings.TrimSuffix(part, "Mg"), 64)
			m.Magnesium = agronomy.Percent(v)
		case strings.HasSuffix(part, "Fe"):
			v, err = strconv.ParseFloat(strings.TrimSuffix(part, "Fe"), 64)
			m.Iron = agronomy.Percent(v)
		case strings.HasSuffix(part, "S"):
			v, err = strconv.ParseFloat(strings.TrimSuffix(part, "S"), 64)
			m.Sulfur = agronomy.Percent(v)
		default:
			err = fmt.Errorf("no part of an analysis")
		}
		if err != nil || !(v >= 0 && v <= 100) {
			w.wrong("analysis", fmt.Sprintf("%q is not an analysis", text), `the three numbers on the bag, then what else it holds, like "18-24-12" or "0-0-22 11Mg 22S"`)
			return false
		}
	}
	return true
}

// IsWhole tells whether a line that is added to a book is read as one that stands by
// itself, or needs [Header] before it.
func IsWhole(book []byte) bool {
	whole := true
	first := true
	for line := range strings.Lines(string(book)) {
		cells := strings.Split(strings.ToLower(strings.TrimSpace(line)), ",")
		switch {
		case cells[0] == "" || strings.HasPrefix(cells[0], "#"):
			continue
		case contains(cells, "date") && contains(cells, "kind"):
			whole = true
		case first || contains(cells, "date") && contains(cells, "job"):
			whole = false
		}
		first = false
	}
	return whole
}

func contains(cells []string, name string) bool {
	for _, c := range cells {
		if strings.Trim(c, " \"") == name {
			return true
		}
	}
	return false
}

// Short warns of the lines of a book that do not stand by themselves.
func Short(name string, done []schedule.Done) (out []schedule.Problem) {
	for _, d := range done {
		_, k, season, _, err := schedule.JobName(d.Job)
		if err != nil || season > 0 && (d.Missed || !k.Spreads() || d.Content != nil) {
			continue
		}
		out = append(out, schedule.Problem{File: name, Line: d.Line, Key: "job", Warning: true,
			Message: "the line is short: what it leaves open is worked out from today's site file, and changes with it",
			Hint:    "swardbook check --fill writes it whole"})
	}
	return out
}
