package text

import (
	"fmt"
	"math"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
	scword "swardbook/schedule/word"
)

// Ledger writes the nutrients down and planned in each area against the
// limits.
func Ledger(title string, l schedule.Ledger, m scword.Measure, style Style) string {
	s := newSheet(style)
	s.head(title)
	s.para(0, "All amounts in "+rateUnit(m)+".")
	for _, a := range l.Areas {
		s.head(a.Name)
		s.para(2, a.Verdict)
		down, taken := s.lines("Down", a, schedule.OnRecord, m), s.lines("Taken as done", a, schedule.TakenAsDone, m)
		if planned := s.lines("Planned", a, schedule.ToCome, m); !down && !taken && !planned {
			s.para(2, "Nothing is down or planned.")
		}
		if len(a.Limits) > 0 {
			s.gap()
			t := Table{Columns: columns("Limit", "#at most", "#down", "#with plan", "")}
			for _, x := range a.Limits {
				word := "kept"
				if x.Passed {
					word = "passed"
				}
				t.add(limitWords(x), rate(m, x.Limit), rateOrZero(m, x.Down), rateOrZero(m, x.Most), word)
			}
			s.table(0, t)
		}
	}
	if len(l.Notes) > 0 {
		s.head("Not counted")
		for _, n := range l.Notes {
			s.hang(0, "-", scword.Sentence(n))
		}
	}
	return s.String()
}

// lines writes the applications of one state in one area; it reports false when
// there are none.
func (s *sheet) lines(title string, a schedule.AreaLedger, state string, m scword.Measure) bool {
	t := Table{Columns: columns("Date", title, "#N", "#slow", "#P₂O₅", "#K₂O", "#lime", "#N so far", "#to come", "Feeds to")}
	for _, x := range a.Lines {
		if x.State != state {
			continue
		}
		feeds := ""
		if !x.FeedsTo.IsZero() {
			feeds = x.FeedsTo.Short()
		}
		t.add(x.Date.Short(), lineWords(a, x), rate(m, x.N), rate(m, x.SlowN), rate(m, x.P2O5), rate(m, x.K2O), rate(m, x.Lime), rate(m, x.SumN), rate(m, x.Feeding), feeds)
	}
	if len(t.Rows) == 0 {
		return false
	}
	s.gap()
	s.tableWithout(dropEmpty(t), "lime", "slow", "to come", "N so far")
	return true
}

// lineWords names a line of the ledger by its job; what went down without a job is named
// by its material.
func lineWords(a schedule.AreaLedger, x schedule.LedgerLine) string {
	if x.Job != "" {
		return strings.TrimPrefix(x.Job, a.Area+"/")
	}
	return x.Text
}

func limitWords(x schedule.LedgerLimit) string {
	if from := scword.ShortSources(x.Source); from != "" {
		return x.What + " [" + from + "]"
	}
	return x.What
}

// LedgerLines gives every line of a ledger as a table, in the units of its keys.
func LedgerLines(l schedule.Ledger) Table {
	t := Table{Columns: columns("area", "date", "job", "text", "state", "#n_lb_per_1000_sqft", "#slow_n_lb_per_1000_sqft", "#p2o5_lb_per_1000_sqft",
		"#k2o_lb_per_1000_sqft", "#lime_lb_per_1000_sqft", "#sum_n_lb_per_1000_sqft", "#feeding_n_lb_per_1000_sqft", "feeds_to")}
	for _, a := range l.Areas {
		for _, x := range a.Lines {
			t.add(a.Area, x.Date.String(), x.Job, x.Text, x.State, figure(x.N), figure(x.SlowN), figure(x.P2O5), figure(x.K2O), figure(x.Lime),
				figure(x.SumN), figure(x.Feeding), x.FeedsTo.String())
		}
	}
	return t
}

// dropEmpty leaves out the columns that say nothing in any row.
func dropEmpty(t Table) Table {
	out := Table{Rows: make([][]string, len(t.Rows))}
	for i, c := range t.Columns {
		said := false
		for _, r := range t.Rows {
			said = said || strings.TrimSpace(r[i]) != ""
		}
		if !said {
			continue
		}
		out.Columns = append(out.Columns, c)
		for k, r := range t.Rows {
			out.Rows[k] = append(out.Rows[k], r[i])
		}
	}
	return out
}

func rateUnit(m scword.Measure) string {
	if m.Metric {
		return "g/m²"
	}
	return "lb per 1,000 sq ft"
}

// rate writes a rate without its unit, and nothing for none.
func rate(m scword.Measure, r agronomy.PerThousand) string {
	if r == 0 {
		return ""
	}
	return rateOrZero(m, r)
}

func rateOrZero(m scword.Measure, r agronomy.PerThousand) string {
	v := float64(r)
	if m.Metric {
		v = r.GramsPerM2()
	}
	if math.Abs(v) >= 20 {
		return scword.Number(v, 0)
	}
	return places(v, 2)
}

func nutrient(m scword.Measure, r float64, name string) string {
	return m.NutrientRate(agronomy.PerThousand(r), name)
}

// Materials writes what each material is used for, what to buy by when, and
// what it costs; where the site has a budget, spend says what to buy first.
func Materials(title string, all []schedule.Supply, spend *schedule.Spending, m scword.Measure, style Style) string {
	s := newSheet(style)
	s.head(title)
	if len(all) == 0 {
		s.para(0, "The program takes no material.")
		return s.String()
	}
	t := Table{Columns: columns("Material", "#Takes", "Pack", "#Packs", "#On hand", "#Buy", "By", "#Cost", "#Left")}
	cost, unpriced := 0.0, 0
	for _, x := range all {
		takes := m.Weight(x.Pounds)
		if x.Gallons > 0 {
			takes = m.Volume(x.Gallons)
		}
		buy, by, price := "", "", ""
		if x.Buy > 0 {
			buy, by = fmt.Sprint(x.Buy), day(x.By)
			if x.Priced {
				price = places(x.Cost, 2)
				cost += x.Cost
			} else {
				unpriced++
			}
		}
		t.add(x.Name, takes, x.PackSize, some(x.Packs), some(x.OnHand), buy, by, price, some(x.Left))
	}
	s.gap()
	s.tableWithout(dropEmpty(t), "Pack", "Left")
	s.gap()
	switch {
	case cost > 0 && unpriced > 0:
		s.para(0, fmt.Sprintf("Cost: %s, and what has no price in the site file.", places(cost, 2)))
	case cost > 0:
		s.para(0, fmt.Sprintf("Cost: %s.", places(cost, 2)))
	}
	for _, x := range all {
		if x.Note != "" {
			s.hang(0, "-", x.Name+": "+scword.Sentence(x.Note))
		}
	}
	if spend != nil {
		s.spending(*spend)
	}
	s.head("What goes where")
	u := Table{Columns: columns("Date", "Job", "Material", "#Amount", "#Packs")}
	for _, x := range all {
		for _, use := range x.Uses {
			u.add(use.Date.Short(), use.Job, x.Name, m.Weight(use.Pounds), some(use.Packs))
		}
	}
	s.table(2, dropEmpty(u))
	var keep []string
	for _, r := range material.StorageRules() {
		keep = append(keep, r.Text)
	}
	s.gap()
	s.list("What is left over", keep)
	return s.String()
}

func some(packs float64) string {
	if packs == 0 {
		return ""
	}
	if packs < 0.05 { // a little is not nothing
		return scword.Number(packs, 2)
	}
	return scword.Number(packs, 1)
}

// Supplies gives the materials as a table, in the units of its keys.
func Supplies(all []schedule.Supply) Table {
	t := Table{Columns: columns("material", "name", "#amount_lb", "#amount_gal", "#packs", "pack_size", "#on_hand_packs", "#buy_packs", "by", "#cost", "#left_packs", "note")}
	for _, x := range all {
		price := ""
		if x.Priced {
			price = places(x.Cost, 2)
		}
		t.add(x.Material, x.Name, figure(x.Pounds), figure(x.Gallons), figure(x.Packs), x.PackSize, figure(x.OnHand), fmt.Sprint(x.Buy), x.By.String(), price, figure(x.Left), x.Note)
	}
	return t
}

// spending writes in what order to buy, and where the budget ends.
func (s *sheet) spending(x schedule.Spending) {
	s.head("What to buy first")
	if x.Reaches() {
		s.para(2, fmt.Sprintf("The budget of %s covers %s.", places(x.Budget, 2), places(x.Cost, 2)))
	} else {
		s.para(2, fmt.Sprintf("The budget of %s does not cover %s: buy in this order.", places(x.Budget, 2), places(x.Cost, 2)))
	}
	t := Table{Columns: columns("#", "Material", "#Packs", "#Within", "#Cost")}
	for i, o := range x.Order {
		within, cost := "", "no price"
		if o.Priced {
			within, cost = fmt.Sprint(o.Paid), places(o.Cost, 2)
		}
		t.add(fmt.Sprint(i+1), o.Name, fmt.Sprint(o.Packs), within, cost)
	}
	s.table(2, t)
	for _, o := range x.Order {
		if len(o.Waits) > 0 {
			s.hang(2, "-", o.Name+" waits, and with it: "+strings.Join(o.Waits, "; ")+".")
		}
	}
}
