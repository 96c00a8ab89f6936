package sitefile

import (
	"fmt"
	"strconv"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// parts are the words for a part of what was planned.
var parts = map[string]float64{"all": 1, "as planned": 1, "half": 0.5, "a third": 1.0 / 3, "two thirds": 2.0 / 3, "a quarter": 0.25, "quarter": 0.25, "three quarters": 0.75}

const amountHint = `like "96 lb", "18 kg", "2.5 gal", "1.5 packs", "half" or "50 %"; empty for as planned, "missed" for not done`

// amount reads how much went down: a weight, a volume, packs, a part of the
// plan, nothing at all for "as planned", or "missed".
func (w row) amount(d *schedule.Done, m *material.Material) {
	s := strings.ToLower(w.cells["amount"])
	fail := func(message, hint string) { w.wrong("amount", message, hint) }
	if share, ok := parts[s]; ok || s == "" {
		d.Share = share
		if s == "" {
			d.Share = 1
		}
		d.AsPlanned = d.Share == 1
		return
	}
	if s == "missed" {
		d.Missed = true
		return
	}
	if strings.HasSuffix(s, "%") {
		p, err := agronomy.ParsePercent(s)
		if err != nil {
			fail(fmt.Sprintf("%q is not a part of the plan", s), `from 1 % to 100 %; give more than was planned as a weight`)
			return
		}
		d.Share = float64(p) / 100
		if p == 0 {
			fail("nothing went down", `write "missed"`)
		}
		return
	}
	if n, ok := packs(s); ok {
		switch x, err := strconv.ParseFloat(n, 64); {
		case err != nil || !(x > 0 && x <= 10000):
			fail(fmt.Sprintf("%q is not a number of packs", s), `like "1.5 packs"`)
		case m != nil && m.Pack == 0 && m.PackVolume == 0:
			fail(fmt.Sprintf("the pack of %s has no size in the site file", m.ID), `give its pack there, like pack = "40 lb", or the weight here`)
		default:
			d.Packs = x
		}
		return
	}
	if v, err := agronomy.ParseVolume(s); err == nil {
		d.Volume = v
		if m != nil && !m.Liquid {
			fail(fmt.Sprintf("%q is a volume, and %s is granular", s, m.ID), "give a weight or packs")
		}
	} else if point, comma := agronomy.DecimalComma(s); comma {
		fail(fmt.Sprintf("%q has a comma that does not set off thousands", s), "for a part write a point: "+point)
		return
	} else if d.Weight, err = agronomy.ParseWeight(s); err != nil {
		fail(fmt.Sprintf("%q is not an amount", s), amountHint)
		return
	}
	if d.Weight == 0 && d.Volume == 0 {
		fail("nothing went down", `write "missed"`)
	}
}

// packs gives the number in "1.5 packs".
func packs(s string) (string, bool) {
	for _, word := range []string{"packs", "pack", "bags", "bag"} {
		if n, ok := strings.CutSuffix(s, word); ok {
			return strings.TrimSpace(n), true
		}
	}
	return "", false
}
