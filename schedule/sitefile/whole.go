package sitefile

import (
	"encoding/csv"
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

// whole reads what a line says of itself: what the bag held, and the dose first
// planned.
func (w row) whole(d *schedule.Done) {
	d.Taken = d.Note == takenNote && w.cells["kind"] != ""
	if of := w.cells["of"]; of != "" {
		var err error
		if d.Of, err = agronomy.ParseWeight(of); err != nil {
			w.wrong("of", fmt.Sprintf("%q is not a weight", of), "the dose first planned, like 96 lb; leave it empty if you do not know")
		}
	}
	_, kind, _, _, err := schedule.JobName(d.Job)
	analysis, slow, value := w.cells["analysis"], w.cells["slow"], w.cells["lime_value"]
	if err != nil || !kind.Spreads() || analysis == "" && value == "" {
		return
	}
	m := material.Material{ID: d.Material, Kind: material.FertilizerMaterial}
	if have := w.bags[d.Material]; have != nil { // how it is called and shown; what it held stands in the line
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
	d.AsPlanned = d.Of > 0 && math.Abs(float64(d.Weight/d.Of)-1) < 0.06 // [common] what rounding and a scale leave open
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

// WholeLine writes a line that stands by itself, for a job with its season and
// number: what was in the bag, how much of it went down, and the dose first planned;
// the area is as it was planned for, so that a lime has the value it was planned with.
// Weights are written as a person reads them.
func WholeLine(d schedule.Down, s *schedule.Site, a *schedule.Area) string {
	cells := []string{d.Date.String(), d.AreaID, d.Kind.String(), strconv.Itoa(d.Season), strconv.Itoa(d.N), "", "", "", "", "", "", d.By, d.Note}
	if d.Taken {
		cells[12] = takenNote
	}
	weight := func(p agronomy.Pounds) string {
		return strings.ReplaceAll(s.Measure().Fine(p), ",", "")
	}
	switch m := d.Dose.Material; {
	case d.Missed:
		cells[9] = "missed"
	case d.Kind.Spreads() && d.Dose.Rate > 0:
		cells[5], cells[6] = m.ID, contents(m)
		if m.SlowShare > 0 {
			cells[7] = figure(m.SlowShare)
		}
		if m.Kind == material.LimeMaterial || m.Kind == material.WoodAsh {
			cells[8] = figure(float64(s.LimeValue(a, m).Full))
		}
		cells[9] = weight(d.Dose.Rate.Over(a.Size))
		if d.Of > 0 {
			cells[10] = weight(d.Of)
		}
	}
	return csvLine(cells)
}

func contents(m material.Material) string {
	a := m.Analysis
	text := figure(float64(a.N)) + "-" + figure(float64(a.P2O5)) + "-" + figure(float64(a.K2O))
	if m.Magnesium > 0 {
		text += " " + figure(float64(m.Magnesium)) + "Mg"
	}
	if m.Sulfur > 0 {
		text += " " + figure(float64(m.Sulfur)) + "S"
	}
	if m.Iron > 0 {
		text += " " + figure(float64(m.Iron)) + "Fe"
	}
	return text
}

// figure writes a number as short as it is exact to four decimals.
func figure(v float64) string {
	return strconv.FormatFloat(math.Round(v*1e4)/1e4, 'f', -1, 64)
}

func csvLine(cells []string) string {
	for i, s := range cells {
		cells[i] = toCell(strings.Join(strings.Fields(s), " "))
	}
	var b strings.Builder
	w := csv.NewWriter(&b)
	w.Write(cells) // a strings.Builder takes everything
	w.Flush()
	return b.String()
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
