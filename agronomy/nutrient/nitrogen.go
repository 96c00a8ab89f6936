package nutrient

import (
	"fmt"

	"swardbook/agronomy"
	"swardbook/agronomy/soil"
)

// Care is how much is asked of a lawn, which sets its yearly nitrogen.
type Care string

// The levels of care.
const (
	LowCare    Care = "low"
	MediumCare Care = "medium"
	HighCare   Care = "high"
)

func (c Care) index() int {
	switch c {
	case LowCare:
		return 0
	case HighCare:
		return 2
	}
	return 1
}

// NitrogenCase is all that a year's nitrogen depends on. Zero values of Care,
// Florida, OrganicMatter and Age are not known.
type NitrogenCase struct {
	Stand             agronomy.Stand
	Care              Care
	State             string
	Florida           Florida // the part of it, where the state is Florida
	ClippingsReturned bool
	OrganicMatter     agronomy.Percent
	Age               float64 // years since seeding; 0 an established stand of unknown age
	New               bool    // in its first year

	Printed *agronomy.PerThousand // what the laboratory itself asks for in a year; nil where it printed none
}

// NitrogenNeed is a year's nitrogen.
type NitrogenNeed struct {
	Year    agronomy.PerThousand
	Why     []agronomy.Reason
	Assumed []agronomy.Reason
}

// A stand younger than youngYears still thickens; one older than oldYears with
// its clippings left feeds itself in part; a rich soil too.
const (
	youngYears = 2.0                       // [common]
	oldYears   = 15.0                      // [common] from memory: 10 to 15 years
	coolYear   = agronomy.PerThousand(4.0) // [ksu-eckert] no need to pass it on cool-season lawns
)

// NitrogenYear gives the nitrogen for twelve months. A grass without a figure
// is an error that names it.
func NitrogenYear(c NitrogenCase) (NitrogenNeed, error) {
	var n NitrogenNeed
	care := c.Care
	if care == "" {
		care = MediumCare
		n.Assumed = append(n.Assumed, agronomy.Reason{Text: "No level of care is given; medium is taken.", Source: "common"})
	}
	if c.OrganicMatter > soil.RichSoil && care != LowCare {
		care = map[Care]Care{MediumCare: LowCare, HighCare: MediumCare}[care]
		n.Why = append(n.Why, agronomy.Reason{Text: fmt.Sprintf("Organic matter of %s %% feeds the grass: one level of care less, %s (from memory).", agronomy.Figure(c.OrganicMatter), care), Source: "common"})
	}
	if (c.New || c.Age > 0 && c.Age < youngYears) && care == LowCare && !modest(c.Stand) {
		care = MediumCare
		n.Why = append(n.Why, agronomy.Reason{Text: "A stand under two years old is still thickening: medium care.", Source: "common"})
	}
	florida := c.State == "FL"
	tabled := florida // every grass is in Florida's table
	ceiling, ceilingOf := agronomy.PerThousand(0), ""
	for i, sh := range c.Stand {
		pounds, why, assumed, err := grassYear(sh.Grass, care, florida, c.Florida)
		if err != nil {
			return n, err
		}
		tabled = tabled && sh.Grass.Florida[0][1] > 0
		n.Why, n.Assumed = append(n.Why, why), append(n.Assumed, assumed...)
		n.Year += pounds * agronomy.PerThousand(c.Stand.Weight(i))
		if sh.Grass.Ceiling && (ceilingOf == "" || sh.Grass.N[2] < ceiling) {
			ceiling, ceilingOf = sh.Grass.N[2], sh.Grass.Name
		}
	}
	if len(c.Stand) > 1 {
		n.Why = append(n.Why, agronomy.Reason{Text: fmt.Sprintf("weighted by share: %.2f lb N", float64(n.Year)), Source: "common"})
		if ceilingOf != "" && n.Year > ceiling {
			n.Year = ceiling
			n.Why = append(n.Why, agronomy.Reason{Text: fmt.Sprintf("held to the %.1f lb that %s tolerates", float64(ceiling), ceilingOf), Source: "common"})
		}
	}
	n.clippings(c, tabled)
	n.besideCalendar(c)
	if c.Printed != nil {
		n.Why = append(n.Why, agronomy.Reason{Text: fmt.Sprintf("The laboratory itself asks for %s lb N a year; that counts before the %s lb of this working.", agronomy.Figure(*c.Printed), agronomy.Figures(n.Year, 2))})
		n.Year = *c.Printed
	}
	if c.Stand.Season() == agronomy.Cool && n.Year > coolYear {
		n.Year = coolYear
		n.Why = append(n.Why, agronomy.Reason{Text: "Cool-season lawns need no more than 4 lb N a year.", Source: "ksu-eckert"})
	}
	return n, nil
}

// besideCalendar sets the doses of the state's published calendar, where it prints
// them, beside the year's amount; they choose nothing.
func (n *NitrogenNeed) besideCalendar(c NitrogenCase) {
	p, ok := CalendarFor(c.State, 0, c.Stand) // no calendar with doses is of one region of Florida
	if !ok || len(p.Dressings) == 0 {
		return
	}
	doses := agronomy.Figure(p.Low())
	if p.High() > p.Low() {
		doses += " to " + agronomy.Figure(p.High())
	}
	n.Why = append(n.Why, agronomy.Reason{Text: fmt.Sprintf("The calendar of %s adds up to %s lb N a year; this program gives %s lb.", p.Name, doses, agronomy.Figures(n.Year, 2)), Source: p.Source})
}

// clippings takes the credit for clippings left on the lawn, once. Florida's
// table has it in already, for the grasses that it names.
func (n *NitrogenNeed) clippings(c NitrogenCase, tabled bool) {
	before := n.Year
	switch {
	case tabled && c.ClippingsReturned:
		n.Why = append(n.Why, agronomy.Reason{Text: "Florida's table takes it that clippings are left: no further credit.", Source: "uf-fyn"})
	case tabled:
		n.Year = before / (1 - clippingsCredit)
		n.Why = append(n.Why, agronomy.Reason{Text: fmt.Sprintf("Clippings are removed, and the table counts them: %.2f ÷ 0.75 = %.2f lb N", float64(before), float64(n.Year)), Source: "uf-fyn, common"})
	case c.ClippingsReturned && c.Age > oldYears:
		n.Year = ClippingsCredit(before, 0.5) // [uconn-clippings]
		n.Why = append(n.Why, agronomy.Reason{Text: fmt.Sprintf("Over %.0f years old with clippings left, a lawn needs about half: %.2f × 0.5 = %.2f lb N. Connecticut found that leaving them can halve the need.", oldYears, float64(before), float64(n.Year)), Source: "uconn-clippings, common"})
	case c.ClippingsReturned:
		n.Year = ClippingsCredit(before, clippingsCredit)
		n.Why = append(n.Why, agronomy.Reason{Text: fmt.Sprintf("Clippings left on the lawn give back about a quarter: %.2f × 0.75 = %.2f lb N. Published shares run from a quarter to a half.", float64(before), float64(n.Year)), Source: "uconn-clippings, common"})
	}
}

// clippingsCredit is the share of a year's nitrogen that clippings give back.
const clippingsCredit = 0.25 // [common] Connecticut: up to 0.5 [uconn-clippings]

// ClippingsCredit takes the clippings' share off a year's need that was stated
// for clippings carried off.
func ClippingsCredit(removed agronomy.PerThousand, share float64) agronomy.PerThousand {
	return removed * agronomy.PerThousand(1-share)
}

// grassYear is one grass's yearly amount, clippings carried off except in
// Florida.
func grassYear(g agronomy.Grass, care Care, florida bool, part Florida) (agronomy.PerThousand, agronomy.Reason, []agronomy.Reason, error) {
	if !g.HasN() {
		return 0, agronomy.Reason{}, nil, fmt.Errorf("%s: there is no yearly figure of nitrogen for this grass; ask the state's extension office for one", g.Name)
	}
	if florida && g.Florida[0][1] > 0 {
		var assumed []agronomy.Reason
		if part == 0 {
			part = NorthFlorida
			assumed = []agronomy.Reason{{Text: "No hardiness zone is given; the amounts for north Florida are taken.", Source: "common"}}
		}
		r := g.Florida[part-1]
		n := r[0] + (r[1]-r[0])*agronomy.PerThousand(care.index())/2 // [common] low end, middle, high end
		return n, agronomy.Reason{Text: fmt.Sprintf("%s in %s Florida: %s to %s lb N a year; %s care %s. The guide itself prefers the low end.", g.Name, part, agronomy.Figure(r[0]), agronomy.Figure(r[1]), care, agronomy.Figure(n)), Source: "uf-fyn"}, assumed, nil
	}
	n := g.N[care.index()]
	text := g.Name + ", " + string(care) + " care: " + agronomy.Figure(n) + " lb N/1000 sq ft a year"
	if g.Published[1] > 0 {
		text += " (published: " + agronomy.Figure(g.Published[0]) + " to " + agronomy.Figure(g.Published[1]) + " lb)"
	}
	return n, agronomy.Reason{Text: text, Source: g.NSource}, nil, nil
}
