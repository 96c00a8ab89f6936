package law

import (
	"slices"
	"strings"
	"testing"
	"time"
)

func day(m time.Month, d int) MonthDay { return MonthDay{m, d} }

// dose8 is a common autumn dose: 0.8 lb N, 0.6 soluble.
var dose8 = Question{N: 0.8, SolubleN: 0.6, SlowShare: 0.25, WaterFeet: Unknown, ReportAgeMonths: Unknown}

func with(base Question, change func(*Question)) Question {
	change(&base)
	return base
}

// Published readings of the laws, picked where summaries differ or edges are easily lost.
func TestPublishedCases(t *testing.T) {
	phosphate := Question{P2O5: 0.2, SlowShare: Unknown, WaterFeet: Unknown, ReportAgeMonths: Unknown, P2O5Percent: 46, Date: day(time.May, 10)}
	potash := Question{K2O: 1, SlowShare: Unknown, WaterFeet: Unknown, ReportAgeMonths: Unknown}
	for name, c := range map[string]struct {
		q       Question
		want    Verdict
		decides string // a rule among the deciding
	}{
		// Maryland: before March 1, after November 15: both days open. [Md. Code, Agric. § 8-803.5]
		"MD home 15 Nov": {with(dose8, func(q *Question) { q.State, q.Date = "MD", day(time.November, 15) }), Yes, "md-n-blackout-home"},
		"MD home 16 Nov": {with(dose8, func(q *Question) { q.State, q.Date = "MD", day(time.November, 16) }), No, "md-n-blackout-home"},
		"MD home 20 Nov": {with(dose8, func(q *Question) { q.State, q.Date = "MD", day(time.November, 20) }), No, "md-n-blackout-home"},
		"MD home 29 Feb": {with(dose8, func(q *Question) { q.State, q.Date = "MD", day(time.February, 29) }), No, "md-n-blackout-home"},
		"MD home 1 Mar":  {with(dose8, func(q *Question) { q.State, q.Date = "MD", day(time.March, 1) }), Yes, ""},
		// Paid work in Maryland: half a pound in late November, nothing from December 1.
		"MD paid half a pound 20 Nov": {with(dose8, func(q *Question) {
			q.State, q.Who, q.Date, q.N, q.SolubleN = "MD", Paid, day(time.November, 20), 0.5, 0.4
		}), Yes, "md-n-cap-per-application-pro"},
		"MD paid 0.8 lb 20 Nov": {with(dose8, func(q *Question) { q.State, q.Who, q.Date = "MD", Paid, day(time.November, 20) }), No, "md-n-cap-per-application-pro"},
		"MD paid 1 Dec": {with(dose8, func(q *Question) {
			q.State, q.Who, q.Date, q.N, q.SolubleN = "MD", Paid, day(time.December, 1), 0.4, 0.3
		}), No, "md-n-blackout-pro"},
		// The row is enforced although its confidence is low.
		"MD paid phosphorus December": {with(phosphate, func(q *Question) {
			q.State, q.Who, q.Date, q.Report, q.ReportAgeMonths = "MD", Paid, day(time.December, 5), Low, 3
		}), No, "md-p-blackout-pro"},
		"MD potash in January": {with(potash, func(q *Question) { q.State, q.Date = "MD", day(time.January, 10) }), Yes, ""},
		"MD urea 0.7":          {with(dose8, func(q *Question) { q.State, q.Date, q.N, q.SolubleN, q.SlowShare = "MD", day(time.May, 1), 0.7, 0.7, 0 }), Yes, ""},
		"MD urea 0.71": {with(dose8, func(q *Question) {
			q.State, q.Date, q.N, q.SolubleN, q.SlowShare = "MD", day(time.May, 1), 0.71, 0.71, 0
		}), No, "md-n-soluble-cap-per-application"},
		"MD fine fescue year":         {with(dose8, func(q *Question) { q.State, q.Date, q.Grass, q.YearN = "MD", day(time.October, 1), "fine fescue", 0.7 }), No, "md-n-annual-cap"},
		"MD tall fescue year":         {with(dose8, func(q *Question) { q.State, q.Date, q.Grass, q.YearN = "MD", day(time.October, 1), "tall fescue", 0.7 }), Yes, "md-n-annual-cap"},
		"NJ home 15 Nov":              {with(dose8, func(q *Question) { q.State, q.Date = "NJ", day(time.November, 15) }), Yes, ""},
		"NJ home 16 Nov":              {with(dose8, func(q *Question) { q.State, q.Date = "NJ", day(time.November, 16) }), No, "nj-n-blackout-home"},
		"NJ paid 1 Dec":               {with(dose8, func(q *Question) { q.State, q.Who, q.Date, q.Certified = "NJ", Paid, day(time.December, 1), true }), Yes, ""},
		"NJ paid 2 Dec":               {with(dose8, func(q *Question) { q.State, q.Who, q.Date = "NJ", Paid, day(time.December, 2) }), No, "nj-n-blackout-pro"},
		"NY 30 Nov":                   {with(potash, func(q *Question) { q.State, q.Date = "NY", day(time.November, 30) }), Yes, ""},
		"NY potash 1 Dec":             {with(potash, func(q *Question) { q.State, q.Date = "NY", day(time.December, 1) }), No, "ny-k-blackout"},
		"NY 1 Apr":                    {with(dose8, func(q *Question) { q.State, q.Date = "NY", day(time.April, 1) }), No, "ny-n-blackout"},
		"NY 2 Apr":                    {with(dose8, func(q *Question) { q.State, q.Date = "NY", day(time.April, 2) }), Yes, "ny-n-blackout"},
		"NY repair needs a report":    {with(phosphate, func(q *Question) { q.State, q.Turf = "NY", Repair }), No, "ny-p-soil-test-required"},
		"NY new lawn":                 {with(phosphate, func(q *Question) { q.State, q.Turf = "NY", New }), Yes, "ny-p-soil-test-required"},
		"DC paid 14 Nov":              {with(dose8, func(q *Question) { q.State, q.Who, q.Date = "DC", Paid, day(time.November, 14) }), Yes, ""},
		"DC paid 15 Nov":              {with(dose8, func(q *Question) { q.State, q.Who, q.Date = "DC", Paid, day(time.November, 15) }), No, "dc-n-blackout-pro"},
		"DC paid 1 Mar":               {with(dose8, func(q *Question) { q.State, q.Who, q.Date = "DC", Paid, day(time.March, 1) }), No, "dc-n-blackout-pro"},
		"DC paid 2 Mar":               {with(dose8, func(q *Question) { q.State, q.Who, q.Date = "DC", Paid, day(time.March, 2) }), Yes, ""},
		"DC resident is only asked":   {with(dose8, func(q *Question) { q.State, q.Date = "DC", day(time.December, 20) }), MustAsk, ""},
		"PA winter half pound":        {with(dose8, func(q *Question) { q.State, q.Date, q.N, q.SolubleN = "PA", day(time.December, 16), 0.5, 0.375 }), Yes, "pa-n-cap-per-application-2"},
		"PA winter over half a pound": {with(dose8, func(q *Question) { q.State, q.Date, q.N, q.SolubleN = "PA", day(time.December, 16), 0.51, 0.38 }), No, "pa-n-cap-per-application-2"},
		"PA 15 Dec":                   {with(dose8, func(q *Question) { q.State, q.Date = "PA", day(time.December, 15) }), Yes, ""},
		"PA phosphorus, report":       {with(phosphate, func(q *Question) { q.State, q.Report, q.ReportAgeMonths = "PA", Low, 2 }), MustAsk, "pa-p-soil-test-required"},
		"PA phosphorus, no report":    {with(phosphate, func(q *Question) { q.State = "PA" }), MustAsk, "pa-p-soil-test-required"},
		// The act's pounds of phosphorus are read as P2O5, the smaller amount.
		"PA organic 0.25 lb":        {with(phosphate, func(q *Question) { q.State, q.Organic, q.P2O5 = "PA", true, 0.25 }), Yes, "pa-p-cap-per-application"},
		"PA organic 0.3 lb":         {with(phosphate, func(q *Question) { q.State, q.Organic, q.P2O5 = "PA", true, 0.3 }), No, "pa-p-cap-per-application"},
		"VT 15 Oct":                 {with(dose8, func(q *Question) { q.State, q.Date = "VT", day(time.October, 15) }), Yes, ""},
		"VT 16 Oct":                 {with(dose8, func(q *Question) { q.State, q.Date = "VT", day(time.October, 16) }), No, "vt-n-blackout"},
		"VT 31 Mar potash":          {with(potash, func(q *Question) { q.State, q.Date = "VT", day(time.March, 31) }), No, "vt-k-blackout"},
		"VT urea":                   {with(dose8, func(q *Question) { q.State, q.Date, q.SolubleN, q.SlowShare = "VT", day(time.May, 1), 0.8, 0 }), No, "vt-slow-release-fraction"},
		"VT report of 18 months":    {with(phosphate, func(q *Question) { q.State, q.Report, q.ReportAgeMonths = "VT", Low, 18 }), Yes, "vt-p-soil-test-required"},
		"VT report of 19 months":    {with(phosphate, func(q *Question) { q.State, q.Report, q.ReportAgeMonths = "VT", Low, 19 }), No, "vt-p-soil-test-required"},
		"CT report of 24 months":    {with(phosphate, func(q *Question) { q.State, q.Report, q.ReportAgeMonths = "CT", Low, 24 }), Yes, "ct-p-soil-test-required"},
		"CT report of 25 months":    {with(phosphate, func(q *Question) { q.State, q.Report, q.ReportAgeMonths = "CT", Low, 25 }), No, "ct-p-soil-test-required"},
		"CT nitrogen in December":   {with(dose8, func(q *Question) { q.State, q.Date = "CT", day(time.December, 20) }), Yes, ""},
		"CT phosphorus 15 Mar":      {with(phosphate, func(q *Question) { q.State, q.Turf, q.Date = "CT", New, day(time.March, 15) }), No, "ct-p-blackout"},
		"CT phosphorus 16 Mar":      {with(phosphate, func(q *Question) { q.State, q.Turf, q.Date = "CT", New, day(time.March, 16) }), Yes, ""},
		"MA 1 Mar":                  {with(dose8, func(q *Question) { q.State, q.Date = "MA", day(time.March, 1) }), No, "ma-n-blackout"},
		"MA 2 Mar":                  {with(dose8, func(q *Question) { q.State, q.Date = "MA", day(time.March, 2) }), Yes, ""},
		"MA 50 ft from water":       {with(dose8, func(q *Question) { q.State, q.Date, q.WaterFeet = "MA", day(time.May, 1), 50 }), MustAsk, "ma-setback-water-ft"},
		"MN established, high soil": {with(phosphate, func(q *Question) { q.State, q.Report, q.ReportAgeMonths = "MN", Enough, 2 }), No, "mn-p-soil-test-required"},
		"WI nitrogen, frozen":       {with(dose8, func(q *Question) { q.State, q.Date, q.Ground = "WI", day(time.December, 1), Frozen }), No, "wi-frozen-ground"},
		"WA nitrogen, frozen":       {with(dose8, func(q *Question) { q.State, q.Date, q.Ground = "WA", day(time.December, 1), Frozen }), Yes, ""},
		"NH dormant":                {with(dose8, func(q *Question) { q.State, q.Date, q.Ground = "NH", day(time.November, 20), Dormant }), No, "nh-frozen-ground"},
		"MI 10 ft, drop spreader":   {with(dose8, func(q *Question) { q.State, q.Date, q.WaterFeet, q.GentleSpreader = "MI", day(time.May, 1), 10, true }), Yes, "mi-setback-water-ft"},
		"MI 10 ft, plain spreader":  {with(dose8, func(q *Question) { q.State, q.Date, q.WaterFeet = "MI", day(time.May, 1), 10 }), No, "mi-setback-water-ft"},
		"DE home in January":        {with(dose8, func(q *Question) { q.State, q.Date = "DE", day(time.January, 5) }), MustAsk, ""},
		"DE paid in January":        {with(dose8, func(q *Question) { q.State, q.Who, q.Date = "DE", Paid, day(time.January, 5) }), No, "de-n-blackout-pro"},
		"VA report":                 {with(phosphate, func(q *Question) { q.State, q.Report, q.ReportAgeMonths = "VA", Low, 2 }), MustAsk, "va-p-soil-test-required"},
		"VA paid 0.95 lb":           {with(dose8, func(q *Question) { q.State, q.Who, q.Date, q.N = "VA", Paid, day(time.May, 1), 0.95 }), MustAsk, "va-n-cap-per-application-pro"},
		"OH has one region":         {with(dose8, func(q *Question) { q.State, q.Date, q.Ground = "OH", day(time.January, 5), Frozen }), MustAsk, ""},
		"FL leaves use to counties": {with(dose8, func(q *Question) { q.State, q.Date = "FL", day(time.July, 5) }), MustAsk, ""},
		"FL over a pound":           {with(dose8, func(q *Question) { q.State, q.Date, q.N = "FL", day(time.May, 5), 1.1 }), No, "fl-n-cap-per-application"},
		"TX: none found":            {with(dose8, func(q *Question) { q.State, q.Date = "TX", day(time.May, 1) }), MustAsk, ""},
		"PR: none found":            {with(dose8, func(q *Question) { q.State, q.Date = "PR", day(time.May, 1) }), MustAsk, ""},
	} {
		a, err := Ask(c.q)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if a.Verdict != c.want {
			t.Errorf("%s: %s, want %s; %v", name, a.Verdict, c.want, a.Deciding)
		}
		if c.decides != "" && !slices.ContainsFunc(a.Deciding, func(f Finding) bool { return f.Rule.ID == c.decides }) {
			t.Errorf("%s: %s is not among the deciding rules %v", name, c.decides, a.Deciding)
		}
	}
}

// The figures a planner sizes by, state by state, written a second time by hand
// so that a slip in the table shows. N and P spans, N cap, soluble cap, yearly
// cap, slow share, distance with any and with the gentler spreader.
func TestFiguresByState(t *testing.T) {
	for _, c := range []struct {
		state, who                   string
		n, p, k                      string
		dose, soluble, year, slow    float64
		pDose, pYear, plain, gentler float64
		months                       int
	}{
		{"CT", "home", "", "12-01/03-15", "", 0, 0, 0, 0, 0, 0, 20, 15, 24},
		{"DC", "home", "", "", "", 0, 0, 0, 0, 0, 0, 0, 0, 0},
		{"DC", "paid", "11-15/03-01", "11-15/03-01", "11-15/03-01", 0.9, 0.7, 0, 0.2, 0.25, 0.5, 15, 10, 36},
		{"DE", "paid", "12-07/02-15", "12-07/02-15", "", 0, 0, 0, 0, 0, 0, 0, 0, 0},
		{"FL", "home", "", "", "", 1.0, 0.7, 0, 0, 0.25, 0.5, 0, 0, 0},
		{"IL", "home", "", "", "", 0, 0, 0, 0, 0, 0, 0, 0, 0},
		{"IL", "paid", "", "", "", 0, 0, 0, 0, 0, 0, 15, 3, 36},
		{"MA", "home", "12-01/03-01", "12-01/03-01", "12-01/03-01", 0, 0, 0, 0, 0, 0, 0, 0, 36},
		{"MD", "home", "11-16/02-29", "11-16/02-29", "", 0.9, 0.7, 2.7, 0.2, 0, 0, 15, 10, 36},
		{"MD", "paid", "12-01/02-29", "11-16/02-29", "", 0.9, 0.7, 2.7, 0.2, 0, 0, 15, 10, 36},
		{"ME", "home", "", "", "", 0, 0, 0, 0, 0, 0, 0, 0, 0},
		{"MI", "home", "", "", "", 0, 0, 0, 0, 0, 0, 15, 3, 36},
		{"MN", "home", "", "", "", 0, 0, 0, 0, 0, 0, 0, 0, 36},
		{"NH", "home", "", "", "", 0.9, 0.7, 3.25, 0, 0, 0, 25, 25, 0},
		{"NJ", "home", "11-16/02-29", "11-16/02-29", "", 0.9, 0.7, 3.2, 0.2, 0, 0, 25, 10, 36},
		{"NJ", "paid", "12-02/02-29", "12-02/02-29", "", 0, 0, 0, 0, 0, 0, 10, 10, 36},
		{"NY", "home", "12-01/04-01", "12-01/04-01", "12-01/04-01", 0, 0, 0, 0, 0, 0, 20, 3, 0},
		{"OH", "home", "", "", "", 0, 0, 0, 0, 0, 0, 0, 0, 0},
		{"PA", "home", "", "", "", 0.9, 0.7, 0, 0.2, 0, 0, 15, 15, 0},
		{"VA", "home", "", "", "", 0, 0, 0, 0, 0, 0, 0, 0, 0},
		{"VA", "paid", "", "", "", 0, 0, 0, 0, 0, 0, 0, 0, 0}, // its figures are of low confidence
		{"VT", "home", "10-16/03-31", "10-16/03-31", "10-16/03-31", 0, 0, 0, 0.15, 0, 0, 25, 25, 18},
		{"WA", "home", "", "", "", 0, 0, 0, 0, 0, 0, 0, 0, 36},
		{"WI", "home", "", "", "", 0, 0, 0, 0, 0, 0, 0, 0, 36},
		{"WV", "home", "", "", "", 0, 0, 0, 0, 0, 0, 0, 0, 0},
		{"TX", "home", "", "", "", 0, 0, 0, 0, 0, 0, 0, 0, 0},
	} {
		q := Question{State: c.state, Date: day(time.July, 1), SlowShare: 0.5, Grass: "tall fescue", P2O5Percent: 20}
		if c.who == "paid" {
			q.Who = Paid
		}
		_, rules, err := For(c.state, "", q.Who)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range []struct {
			n    Nutrient
			want string
		}{{Nitrogen, c.n}, {Phosphorus, c.p}, {Potassium, c.k}} {
			var got []string
			for _, span := range rules.Closed(s.n) {
				got = append(got, iso(span.Span))
			}
			if strings.Join(got, " ") != s.want {
				t.Errorf("%s %s: %s closed %v, want %q", c.state, c.who, s.n, got, s.want)
			}
		}
		for _, l := range []struct {
			name string
			of   func(Question) (Limit, bool)
			want float64
		}{{"N dose", rules.NCap, c.dose}, {"soluble", rules.SolubleCap, c.soluble}, {"N year", rules.AnnualNCap, c.year},
			{"P dose", rules.PCap, c.pDose}, {"P year", rules.PAnnualCap, c.pYear}, {"slow share", rules.SlowShareMin, c.slow}} {
			got, ok := l.of(q)
			if got.Value != l.want || ok != (l.want > 0) {
				t.Errorf("%s %s: %s %v %v, want %v", c.state, c.who, l.name, got.Value, ok, l.want)
			}
		}
		if d := rules.Setback(Nitrogen|Phosphorus, q); d.Plain != c.plain || d.Gentle != c.gentler {
			t.Errorf("%s %s: distance %v/%v, want %v/%v", c.state, c.who, d.Plain, d.Gentle, c.plain, c.gentler)
		}
		months := 0
		for _, r := range rules {
			months = max(months, r.ReportMonths)
		}
		if months != c.months {
			t.Errorf("%s %s: report counts %d months, want %d", c.state, c.who, months, c.months)
		}
	}
}

func iso(s Span) string {
	at := func(m MonthDay) string {
		return time.Date(2024, m.Month, m.Day, 0, 0, 0, 0, time.UTC).Format("01-02")
	}
	return at(s.From) + "/" + at(s.To)
}
