package lime

import (
	"fmt"

	"swardbook/agronomy"
)

const (
	weakCEC  agronomy.Meq = 5   // a soil under it is weakly buffered [tristate-2020]
	scant    agronomy.PH  = 6.8 // SMP readings from here up say little; the table ends here [ncr221-smp]
	smpStart agronomy.PH  = 7.5 // the buffer itself, from memory [smp-1961]
)

// bySMP goes by an SMP or Sikora buffer pH: one calibration serves both
// [iowa-buffers] [sikora-2006]. The spread is that of Iowa, Oregon and Tri-state.
func bySMP(c Case) (limeMethod, error) {
	rule := iowa()
	var notes []agronomy.Reason
	switch c.State {
	case "OR", "WA":
		rule = oregon()
	case "KS":
		rule = kansas()
	default:
		if c.Buffer.PH < rule.low {
			notes = append(notes, agronomy.Reason{Text: fmt.Sprintf("Iowa's table ends at %s; Oregon's goes lower.", agronomy.Short(rule.low)), Source: "osu-em9585"})
			rule = oregon()
		}
	}
	if err := within("buffer pH", c.Buffer.PH, rule.low, smpStart, "the tables do not reach so far: ask the laboratory to check it, or for its own lime figure"); err != nil {
		return limeMethod{}, err
	}
	if c.Buffer.Method == agronomy.SMP && rule.source != "laboski-lime" || c.Buffer.Method == agronomy.Sikora && rule.source == "laboski-lime" {
		notes = append(notes, agronomy.Reason{Text: "The Sikora buffer was made to read as SMP does, and one table serves both.", Source: "iowa-buffers, sikora-2006"})
	}
	notes = append(notes, agronomy.Reason{Text: "Published tables differ by half for one reading; the spread is that of Iowa, Oregon and Tri-state (from memory).", Source: "laboski-lime, osu-em9585, tristate-1995"})
	table := rule.laid(c)
	table.notes = notes
	var beside []limeMethod
	for _, other := range []bufferRule{iowa(), oregon(), triState()} {
		if c.Buffer.PH >= other.low && c.Buffer.PH <= other.high && other.targets[len(other.targets)-1] > c.PH {
			beside = append(beside, other.laid(c))
		}
	}
	table.spread = func(t agronomy.PH) (agronomy.PerThousand, agronomy.PerThousand) {
		low, high := table.need(t), table.need(t)
		for _, o := range beside {
			if t <= o.top {
				low, high = min(low, o.need(t)), max(high, o.need(t))
			}
		}
		return low, high
	}
	weak := c.CEC > 0 && c.CEC < weakCEC || c.CEC == 0 && (c.Texture == agronomy.Sand || c.Texture == agronomy.LoamySand)
	switch {
	case weak:
		return besideTexture(c, rule, table, ton, agronomy.Reason{Text: "Weakly buffered soil: a buffer reading tells little, so pH and texture are asked too and the larger counts, up to 1 ton/acre.", Source: "tristate-2020"})
	case c.Buffer.PH >= scant:
		last := c
		last.Buffer.PH = scant
		most := rule.laid(last).need(min(max(c.Target, c.PH), table.top))
		return besideTexture(c, rule, table, most, agronomy.Reason{Text: fmt.Sprintf("A reading of %s says little: pH and texture are asked too and the larger counts, up to what the table gives at 6.8 (%s lb/1000 sq ft). With a CEC under 5 on the report it could be more.", agronomy.Short(c.Buffer.PH), agronomy.Short(most)), Source: "common"})
	}
	return table, nil
}

// besideTexture gives the larger of two needs: by the buffer table, and by pH and texture,
// of which at most most counts. Above the readings of the table the second is the only one.
// So a reading nearer to neutral never asks for more lime.
func besideTexture(c Case, rule bufferRule, table limeMethod, most agronomy.PerThousand, why agronomy.Reason) (limeMethod, error) {
	reads := c.Buffer.PH <= rule.high
	lowest := c
	if class, _ := c.textureOf(); len(usdaSteps(class, c.WarmRegion)) > 0 {
		lowest.PH = max(c.PH, usdaKnots(class, c.WarmRegion)[0].ph)
	}
	texture, err := byTexture(lowest)
	if err != nil {
		if reads {
			return table, nil // the soil's pH is above those of the table by texture
		}
		return texture, err
	}
	m := texture
	m.most = most
	m.notes = table.notes
	if lowest.PH > c.PH {
		m.notes = append(m.notes, agronomy.Reason{Text: fmt.Sprintf("The table by texture starts at pH %s, so its figure is a minimum.", agronomy.Short(lowest.PH)), Source: "usda-1957"})
	}
	if !reads {
		m.why = func(t agronomy.PH) []agronomy.Reason {
			return append([]agronomy.Reason{{Text: fmt.Sprintf("Buffer pH %s is above %s, where the readings of %s end.", agronomy.Short(c.Buffer.PH), agronomy.Short(rule.high), rule.name), Source: rule.source}, why}, texture.why(t)...)
		}
		return m, nil
	}
	m.top = table.top
	m.need = func(t agronomy.PH) agronomy.PerThousand { return max(table.need(t), texture.need(min(t, texture.top))) }
	if t := min(c.Target, texture.top); c.Target > 0 && texture.need(t) <= table.need(c.Target) {
		m.name, m.why, m.spread, m.most, m.assumed, m.ground = table.name, table.why, table.spread, unheld, table.assumed, false
		return m, nil
	}
	m.name = "pH and texture, beside " + rule.name
	m.most = max(most, table.need(min(max(c.Target, c.PH), table.top)))
	m.spread = func(t agronomy.PH) (agronomy.PerThousand, agronomy.PerThousand) {
		low, high := table.spread(t)
		least, greatest := texture.spread(min(t, texture.top))
		return max(low, least), max(high, greatest)
	}
	m.why = func(t agronomy.PH) []agronomy.Reason {
		return append(append(table.why(t), why), texture.why(min(t, texture.top))...)
	}
	return m, nil
}

// byAdamsEvans goes by an Adams-Evans buffer pH, counted in fully effective
// lime: 73 % of the ordinary ground lime of the equation.
func byAdamsEvans(c Case) (limeMethod, error) {
	const name = "Adams-Evans"
	if c.CEC >= aeMostCEC {
		m, err := byTexture(c)
		m.notes = append(m.notes, agronomy.Reason{Text: fmt.Sprintf("Adams-Evans is for a CEC under 13, and this soil has %s: pH and texture stand in; better ask for an SMP, Sikora or Mehlich reading.", agronomy.Short(c.CEC)), Source: "huluka-manual"})
		return m, err
	}
	if _, err := AdamsEvansLime(c.PH, c.Buffer.PH, min(max(c.Target, c.PH), aeHighest)); err != nil {
		return limeMethod{}, err
	}
	acidity, err := AdamsEvansAcidity(c.Buffer.PH)
	if err != nil {
		return limeMethod{}, err
	}
	now := aeSaturation(c.PH)
	printed := func(t agronomy.PH) agronomy.PerAcre { return aeLime(acidity, now, aeSaturation(t)) }
	lawn := func(t agronomy.PH) agronomy.PerThousand {
		return printed(t).PerThousand() * agronomy.PerThousand(c.Depth/aeDepth)
	}
	return limeMethod{
		name: name, top: aeHighest, most: unheld,
		need: func(t agronomy.PH) agronomy.PerThousand { return aeOrdinary * lawn(t) },
		spread: func(t agronomy.PH) (agronomy.PerThousand, agronomy.PerThousand) {
			return lawn(t) / 1.5, lawn(t) // with all and with none of the factor 1.5 taken off [huluka-2007]
		},
		why: func(t agronomy.PH) []agronomy.Reason {
			lb := float64(printed(t))
			return append([]agronomy.Reason{
				{Text: fmt.Sprintf("Adams-Evans buffer pH %s: 8 × (8.00 − %s) = %s meq/100 g of acidity", agronomy.Short(c.Buffer.PH), agronomy.Short(c.Buffer.PH), agronomy.Short(acidity)), Source: "uga-adams-evans"},
				{Text: fmt.Sprintf("share of acid sites %.3f at pH %s, %.3f at pH %s (line from memory)", now, agronomy.Short(c.PH), aeSaturation(t), agronomy.Short(t)), Source: "adams-evans-1962"},
				{Text: fmt.Sprintf("1000 × %s × (%.3f − %.3f)/%.3f × 1.5 = %s lb/acre of ordinary ground lime over 6.7 in", agronomy.Short(acidity), now, aeSaturation(t), now, agronomy.Short(lb)), Source: "huluka-2007"},
				{Text: fmt.Sprintf("such lime does 73 %% of what pure carbonate does: %s lb/acre of effective lime", agronomy.Short(lb*aeOrdinary)), Source: "uga-aglime-study"},
			}, scaled(lb*aeOrdinary, "lb", aeDepth, c.Depth)...)
		},
	}, nil
}

// byMehlichBuffer goes by a Mehlich buffer pH with North Carolina's equation,
// the one that starts from the reading itself; with an exchangeable acidity
// beside it Penn State's turf table is used outside North Carolina.
func byMehlichBuffer(c Case) (limeMethod, error) {
	if c.Acidity > 0 && c.State != "NC" {
		return byPennTurf(c)
	}
	acidity, err := MehlichAcidity(c.Buffer.PH)
	if err != nil {
		return limeMethod{}, err
	}
	m, err := byCarolina(c, acidity, fmt.Sprintf("Mehlich buffer pH %s: 4 × (6.6 − %s) = %s meq/100 cm3 of acidity", agronomy.Short(c.Buffer.PH), agronomy.Short(c.Buffer.PH), agronomy.Short(acidity)))
	if c.Buffer.Method == agronomy.ModifiedMehlich {
		m.assumed = append(m.assumed, agronomy.Reason{Text: "The modified Mehlich buffer is read as the Mehlich buffer it replaced.", Source: "common"})
	}
	return m, err
}

// byCarolina goes by North Carolina's equation.
func byCarolina(c Case, acidity agronomy.Meq, first string) (limeMethod, error) {
	if err := within("soil pH for the Mehlich equation", c.PH, 3.5, ncEnds, "no lime is due over pH 6.6"); err != nil { // [nc-lime-factor]
		return limeMethod{}, err
	}
	if c.PH == ncEnds {
		return limeMethod{}, &RangeError{"soil pH for the Mehlich equation", float64(c.PH), 3.5, float64(ncEnds), "no lime is due at pH 6.6"}
	}
	tons := func(t agronomy.PH) agronomy.TonsPerAcre { return ncTons(c.PH, t, acidity) }
	need := func(t agronomy.PH) agronomy.PerThousand {
		return tons(t).PerThousand() * agronomy.PerThousand(c.Depth/ncDepth)
	}
	return limeMethod{
		name: "North Carolina's Mehlich equation", top: ncTarget, need: need, spread: third(need), most: unheld,
		why: func(t agronomy.PH) []agronomy.Reason {
			return append([]agronomy.Reason{{Text: first, Source: "nc-lime-factor"},
				{Text: fmt.Sprintf("%s × (%s − %s)/(6.6 − %s) = %s tons/acre over 8 in (depth from memory)", agronomy.Short(acidity), agronomy.Short(t), agronomy.Short(c.PH), agronomy.Short(c.PH), agronomy.Fine(float64(tons(t)))), Source: "nc-lime-factor"}},
				scaled(float64(tons(t)), "tons", ncDepth, c.Depth)...)
		},
	}, nil
}

// byPennTurf goes by exchangeable acidity with Penn State's turf table.
func byPennTurf(c Case) (limeMethod, error) {
	row, err := pennTurfRow(c.Acidity)
	if err != nil {
		return limeMethod{}, err
	}
	laid := []knot{{c.PH, 0}}
	for _, k := range knots(pennTurfTargets, row) {
		if k.ph > c.PH {
			laid = append(laid, k)
		}
	}
	need := func(t agronomy.PH) agronomy.PerThousand {
		return agronomy.PerThousand(along(laid, max(t, c.PH)) * float64(c.Depth/pennDepth))
	}
	return limeMethod{
		name: "Penn State's turf table", top: 7.0, need: need, most: unheld,
		spread: func(t agronomy.PH) (agronomy.PerThousand, agronomy.PerThousand) {
			return need(t) * 2 / 3, agronomy.PerThousand(along(laid, t))
		},
		why: func(t agronomy.PH) []agronomy.Reason {
			printed := along(laid, t)
			return []agronomy.Reason{
				{Text: fmt.Sprintf("exchangeable acidity %s meq/100 g to pH %s: %s lb/1000 sq ft of pure lime in the plow layer", agronomy.Short(c.Acidity), agronomy.Short(t), agronomy.Short(printed)), Source: "psu-turf-lime"},
				{Text: fmt.Sprintf("for %s of the 7 in of that layer (the depth is our reading): %s × %s/7 = %s lb/1000 sq ft; the laboratory itself gives the whole figure in dressings", agronomy.Short(c.Depth), agronomy.Short(printed), agronomy.Short(c.Depth), agronomy.Short(need(t))), Source: "psu-turf-lime, tristate-1995"},
			}
		},
	}, nil
}
