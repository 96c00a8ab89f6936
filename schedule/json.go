package schedule

import (
	"bytes"
	"encoding/json"
	"math"

	"swardbook/agronomy"
)

// EncodeJSON writes the program in its versioned form, on one line with a line break at its end.
// Amounts are rounded to what the sources bear; keys are only ever added.
func EncodeJSON(p *Program) ([]byte, error) {
	q := *p
	q.Entries = make([]Entry, len(p.Entries))
	for i, e := range p.Entries {
		for _, r := range []*agronomy.PerThousand{&e.Rate, &e.N, &e.SlowN, &e.P2O5, &e.K2O} {
			*r = rounded(*r, 3)
		}
		e.Pounds, e.Gallons, e.Packs = rounded(e.Pounds, 2), rounded(e.Gallons, 3), rounded(e.Packs, 2)
		e.WaterIn = rounded(e.WaterIn, 3)
		q.Entries[i] = e
	}
	q.Areas = make([]AreaShown, len(p.Areas))
	for i, a := range p.Areas {
		a.Size = rounded(a.Size, 1)
		needs := make([]Need, len(a.Needs))
		for k, n := range a.Needs {
			n.Total = rounded(n.Total, 3)
			needs[k] = n
		}
		findings := make([]FindingShown, len(a.Findings))
		for k, f := range a.Findings {
			f.Value = rounded(f.Value, 3)
			findings[k] = f
		}
		a.Needs, a.Findings = needs, findings
		q.Areas[i] = a
	}
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	err := enc.Encode(q)
	return b.Bytes(), err
}

func rounded[T ~float64](v T, decimals int) T {
	scale := math.Pow10(decimals)
	return T(math.Round(float64(v)*scale) / scale)
}
