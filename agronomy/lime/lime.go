package lime

import (
	"errors"
	"fmt"
	"strings"

	"swardbook/agronomy"
)

// Case is all that a lime requirement depends on.
type Case struct {
	PH            agronomy.PH // of the soil in water
	Target        agronomy.PH
	LimeBelow     agronomy.PH      // lime only when PH is under this; 0: 0.2 under Target [tristate-1995]
	Buffer        agronomy.Buffer  // optional
	Acidity       agronomy.Meq     // exchangeable, per 100 g; in NC per 100 cm3, as its reports print it; optional
	Texture       agronomy.Texture // optional
	CEC           agronomy.Meq     // optional
	OrganicMatter agronomy.Percent
	State         string          // two letters; picks a state's own table
	Depth         agronomy.Inches // to be limed; 0: 4 in
	WarmRegion    bool            // see WarmLimeRegion

	Printed *agronomy.PerThousand // fully effective lime that the laboratory itself asks for; nil where it printed none
}

// Need is a lime requirement and how it came about.
type Need struct {
	Rate      agronomy.PerThousand // of lime that is 100 % effective, for the depth of the case
	Low, High agronomy.PerThousand // spread of the published methods, or a third either way
	Method    string
	Target    agronomy.PH // the pH limed for; lower than asked for on organic soil
	Reaches   agronomy.PH // the pH to expect from Rate; under Target only where Why says that Rate was held
	Why       []agronomy.Reason
	Assumed   []agronomy.Reason // what was not given and taken

	Ground     bool // read off a table of ordinary ground limestone, see ValueOf
	BelowTable bool // so sour that no table reaches: a first dressing, and Reaches is not known
}

const (
	lawnDepth  agronomy.Inches = 4   // established sod is sampled 0 to 4 in [tristate-1995]
	shallowest agronomy.Inches = 2   // sod in Kansas and Iowa [ksu-lime-sikora] [iowa-cas-2019]
	deepest    agronomy.Inches = 8   // the deepest table [tristate-1995]
	organicPH  agronomy.PH     = 5.3 // target on organic soil [tristate-1995]
	organicOM                  = 20  // % organic matter, organic above it [tristate-1995]
)

// organic reports whether the soil is limed as muck.
func (c Case) organic() bool { return c.Texture == agronomy.Muck || c.OrganicMatter > organicOM }

// Requirement gives the fully effective lime that brings the soil to its
// target over the depth of the case. It picks the method: a buffer pH by its
// own method (Iowa's table for SMP and Sikora, Oregon's in OR and WA, Kansas's
// in KS; Adams-Evans; Mehlich by North Carolina's equation), an exchangeable
// acidity by Penn State's turf table, else soil pH and texture. On a weakly
// buffered soil, and for an SMP reading of 6.8 or more, pH and texture are asked
// too, and stand alone above the table's readings; Why says so.
//
// PH 3.5 to 9, target 4.8 to 7.2, depth 2 to 8 inches; a figure outside what the
// method covers gives a RangeError.
//
// What the laboratory itself asks for counts before all of it; Why then shows
// both.
func Requirement(c Case) (Need, error) {
	if c.Printed == nil {
		return c.worked()
	}
	ours, err := c.worked()
	if err != nil {
		ours = Need{Target: c.Target, Why: []agronomy.Reason{{Text: "By the methods here: " + err.Error() + "."}}}
	}
	return ours.asPrinted(c, err == nil)
}

// asPrinted puts the laboratory's own amount in the place of the one worked out
// here.
func (n Need) asPrinted(c Case, worked bool) (Need, error) {
	rate := *c.Printed
	if err := within("lime that the laboratory asks for, lb/1000 sq ft,", rate, 0, 1000, "read it off the sheet, with its unit"); err != nil { // [common]
		return Need{}, err
	}
	text := fmt.Sprintf("The laboratory itself asks for %s lb/1000 sq ft of fully effective lime; that counts before any table.", agronomy.Short(rate))
	if worked {
		text += fmt.Sprintf(" By the method here it would be %s.", agronomy.Short(n.Rate))
	}
	n.Low, n.High = min(rate, n.Low), max(rate, n.High)
	if !worked {
		n.Low, n.High = rate, rate
	}
	n.Rate, n.Method, n.Reaches = rate, "the laboratory's own", max(c.PH, n.Target)
	if rate == 0 {
		n.Reaches = c.PH
	}
	n.Why = append(n.Why, agronomy.Reason{Text: text})
	return n, nil
}

// worked is the requirement by the methods here.
func (c Case) worked() (Need, error) {
	c, settled, err := c.settle()
	if err != nil {
		return Need{}, err
	}
	if err := within("target pH", c.Target, 4.8, 7.2, "choose a target that suits the grass, 6.0 to 6.5 for most"); err != nil { // [osu-em9585] upper end; carpetgrass, lower
		return Need{}, err
	}
	why := settled.why
	if c.PH >= c.LimeBelow {
		text := fmt.Sprintf("pH %s is not under %s, where liming begins for a target of %s: no lime.", agronomy.Short(c.PH), agronomy.Short(c.LimeBelow), agronomy.Short(c.Target))
		source := "tristate-1995"
		if c.PH >= c.Target {
			text, source = fmt.Sprintf("pH %s is already at the target of %s: no lime.", agronomy.Short(c.PH), agronomy.Short(c.Target)), ""
		}
		return Need{Method: "none needed", Target: c.Target, Reaches: c.PH, Why: append(why, agronomy.Reason{Text: text, Source: source}), Assumed: settled.assumed}, nil
	}
	m, err := limeMethodFor(c)
	if below := (*RangeError)(nil); errors.As(err, &below) && below.tooSour() {
		return c.firstDressing(err, why, settled.assumed), nil
	}
	if err != nil {
		return Need{}, err
	}
	if err := m.reach(c.Target); err != nil {
		return Need{}, err
	}
	need := m.need(c.Target)
	low, high := m.spread(c.Target)
	why = append(append(why, m.why(c.Target)...), m.notes...)
	if need > m.most {
		why = append(why, agronomy.Reason{Text: fmt.Sprintf("Held to %s lb/1000 sq ft, the most to give on such evidence; retest before more.", agronomy.Short(m.most)), Source: "tristate-2020"})
		need = m.most
	}
	reaches := c.PH
	if need > 0 {
		reaches = m.reached(need, c.Target)
	}
	return Need{
		Rate: need, Low: min(low, need), High: max(high, need), Method: m.name,
		Target: c.Target, Reaches: reaches, Why: why, Assumed: append(settled.assumed, m.assumed...), Ground: m.ground,
	}, nil
}

// tooSour tells a reading that lies on the sour side of what a method covers.
func (e *RangeError) tooSour() bool {
	sour := strings.HasPrefix(e.What, "soil pH") || strings.HasPrefix(e.What, "buffer pH")
	return sour && e.Value < e.Low || strings.Contains(e.What, "acidity") && e.Value > e.High
}

// firstDressing is what is safe on a soil too sour for the method: one dressing,
// or less where pH and texture ask for less from the lowest pH that they cover.
func (c Case) firstDressing(err error, why, assumed []agronomy.Reason) Need {
	rate := CapTurf * GroundActs
	if class, _ := c.textureOf(); len(usdaSteps(class, c.WarmRegion)) > 0 {
		lowest := c
		lowest.PH = max(c.PH, usdaKnots(class, c.WarmRegion)[0].ph)
		if m, err := byTexture(lowest); err == nil && c.Target <= m.top {
			rate = min(rate, m.need(c.Target))
		}
	}
	return Need{Rate: rate, Low: rate, High: rate, Method: "a first dressing", Target: c.Target, Reaches: c.PH, BelowTable: true, Ground: true, Assumed: assumed,
		Why: append(why, agronomy.Reason{Text: "The tables do not reach so acid a soil: " + err.Error() + "."},
			agronomy.Reason{Text: "One dressing of at most 50 lb/1000 sq ft of ordinary ground limestone is safe and falls short of what such a soil wants; ask the laboratory for a buffer pH, or for its own lime figure, before more.", Source: "vt-452-717, common"})}
}

// settled holds what was worked out or taken before any method was asked.
type settled struct{ why, assumed []agronomy.Reason }

// settle checks the case and fills in depth, organic target and trigger.
func (c Case) settle() (Case, settled, error) {
	var s settled
	if err := within("soil pH", c.PH, 3.5, 9, "check the figure; a lawn's soil lies between, measured in water"); err != nil { // [usda-1957]; [common] upper end
		return c, s, err
	}
	for _, share := range []struct {
		what  string
		value float64
	}{{"CEC", float64(c.CEC)}, {"organic matter", float64(c.OrganicMatter)}, {"acidity", float64(c.Acidity)}} {
		if err := within(share.what, share.value, 0, 200, "check the figure on the report"); err != nil { // [common]
			return c, s, err
		}
	}
	if c.Depth == 0 {
		c.Depth = lawnDepth
		s.assumed = append(s.assumed, agronomy.Reason{Text: "No depth given: 4 in is taken, the depth for an established lawn.", Source: "tristate-1995"})
	}
	if err := within("depth of liming, in,", c.Depth, shallowest, deepest, "lime the sampled depth, 4 in on a lawn"); err != nil {
		return c, s, err
	}
	if c.organic() && c.Target > organicPH {
		s.why = append(s.why, agronomy.Reason{Text: fmt.Sprintf("Organic soil is limed to %s only, not to %s.", agronomy.Short(organicPH), agronomy.Short(c.Target)), Source: "tristate-1995"})
		c.Target = organicPH
		if c.LimeBelow > 0 {
			c.LimeBelow = min(c.LimeBelow, c.Target-agronomy.Shortfall)
		}
	}
	if c.LimeBelow == 0 {
		c.LimeBelow = c.Target - agronomy.Shortfall
	}
	c.LimeBelow = min(c.LimeBelow, c.Target)
	return c, s, nil
}
