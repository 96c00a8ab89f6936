package figure

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"swardbook/agronomy"
	"swardbook/climate"
	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule"
	"swardbook/schedule/law"
)

var lawFigure = Figure{
	Name:    "law",
	What:    "whether the law of a state allows one application on one day",
	Example: `--state MD --date 2026-11-20 --nitrogen 0.8 --soluble 0.6`,
	Help: `Answers yes, no or ask, with the rules that decide. It is no legal advice.
        --state CODE          US state, DC or territory
        --county NAME         its county, for local rules
        --date DATE           the day (else closed dates become conditions)
        --nitrogen R          nitrogen; a plain number is lb/1000 sq ft
        --soluble R           of that quick
        --slow X              or the slow share of it, 0 to 1
        --phosphate R         P2O5
        --potash R            K2O
        --p2o5-percent X      P2O5 on the bag, percent
        --turf NAME           established, new or repair
        --report NAME         what a soil report says of phosphorus: low, enough
        --report-age MONTHS   how old it is
        --water FT            distance to open water, feet or with a unit
        --water-kind NAME     drinking-supply (public), great-pond (Maine),
                              large (protected shoreland, New Hampshire), other
        --drop-spreader       a drop spreader, a deflector, a targeted spray
        --ground NAMES        frozen, snow, saturated, dormant
        --grass NAME          for yearly amounts by grass
        --year-n R            nitrogen of the year besides
        --year-p2o5 R         phosphate of the year besides
        --organic --enhanced --liquid   what the material is
        --paid                for paid or professional applicators
        --certified           with the certificate that a rule asks for
`,
	setup: func(fs *flag.Set) func(*asked) (Answer, error) {
		texts(fs, "state", "county", "date", "water-kind", "nitrogen", "soluble", "slow", "phosphate", "potash", "p2o5-percent", "turf", "report", "report-age", "water", "ground", "grass", "year-n", "year-p2o5")
		for _, n := range []string{"drop-spreader", "organic", "enhanced", "liquid", "paid", "certified"} {
			fs.Bool(n, false, "")
		}
		return lawAnswer
	},
}

func lawAnswer(q *asked) (Answer, error) {
	q.need("state")
	orUnknown := func(name string, v float64) float64 {
		if q.given(name) {
			return v
		}
		return law.Unknown
	}
	ask := law.Question{
		State: strings.ToUpper(q.text("state")), County: county(q),
		Certified: q.yes("certified"), Water: waterKind(q),
		N: float64(q.rate("nitrogen")), P2O5: float64(q.rate("phosphate")), K2O: float64(q.rate("potash")),
		SolubleN: orUnknown("soluble", float64(q.rate("soluble"))), SlowShare: orUnknown("slow", q.number("slow", 0, 1)),
		P2O5Percent: q.number("p2o5-percent", 0, 100), ReportAgeMonths: int(orUnknown("report-age", q.number("report-age", 0, 1200))),
		WaterFeet: orUnknown("water", float64(feet(q))), GentleSpreader: q.yes("drop-spreader"), Ground: ground(q),
		Organic: q.yes("organic"), Enhanced: q.yes("enhanced"), Liquid: q.yes("liquid"),
		YearN: float64(q.rate("year-n")), YearP2O5: float64(q.rate("year-p2o5")), Grass: strings.ToLower(q.text("grass")),
	}
	if q.yes("paid") {
		ask.Who = law.Paid
	}
	ask.Turf = law.Turf(max(0, slices.Index([]string{"established", "new", "repair"}, oneOf(q, "turf", "established", "new", "repair"))))
	ask.Report = law.Report(1 + slices.Index([]string{"low", "enough"}, oneOf(q, "report", "low", "enough")))
	if q.given("date") {
		d, err := schedule.ParseDate(q.text("date"))
		if err != nil {
			q.wrong("date", err)
		}
		ask.Date = law.MonthDay{Month: d.Month, Day: d.Day}
	}
	if q.err != nil {
		return Answer{}, q.err
	}
	found, err := law.Ask(ask)
	if err != nil {
		return Answer{}, err
	}
	a := Answer{Text: "allowed: " + found.Verdict.String(), Values: map[string]any{"allowed": found.Verdict.String(),
		"deciding": findingsShown(found.Deciding), "also": findingsShown(found.Also), "conditions": findingsShown(found.Conditions), "notes": append([]string{}, found.Notes...)}}
	for _, part := range []struct {
		title string
		all   []law.Finding
	}{{"Decided by: ", found.Deciding}, {"Also looked at: ", found.Also}, {"On the day: ", found.Conditions}} {
		for _, f := range part.all {
			a.More = append(a.More, part.title+f.String())
		}
	}
	a.More = append(a.More, found.Notes...)
	return a, nil
}

// county is the name as the list of the state has it.
func county(q *asked) string {
	if !q.given("county") {
		return ""
	}
	name, state := q.text("county"), strings.ToUpper(q.text("state"))
	all := climate.Counties(state)
	if i := slices.IndexFunc(all, func(c string) bool { return law.SameCounty(c, name) }); i >= 0 {
		return all[i]
	}
	if len(all) > 0 {
		problem := fmt.Sprintf("%s has no county %q", state, name)
		if near := agronomy.NearestName(name, all); near != "" {
			problem += "; known: " + near
		}
		q.wrong("county", errors.New(problem))
	}
	return name
}

// waterKind reads what kind of water is near.
func waterKind(q *asked) law.WaterKind {
	names := []string{"drinking-supply", "great-pond", "large", "other"}
	if i := slices.Index(names, oneOf(q, "water-kind", names...)); i >= 0 {
		return law.DrinkingSupply << i
	}
	return 0
}

func feet(q *asked) agronomy.Feet {
	return quantityOf(q, "water", func(t string) (agronomy.Feet, error) {
		if f, err := agronomy.ParseLength(t + " ft"); err == nil {
			return f, nil
		}
		return agronomy.ParseLength(t)
	})
}

func ground(q *asked) law.GroundIs {
	states := law.Open
	if !q.given("ground") {
		return states
	}
	for name := range strings.SplitSeq(q.text("ground"), ",") {
		switch strings.TrimSpace(strings.ToLower(name)) {
		case "frozen":
			states |= law.Frozen
		case "snow":
			states |= law.Snow
		case "saturated":
			states |= law.Saturated
		case "dormant":
			states |= law.Dormant
		case "open":
		default:
			q.wrong("ground", fmt.Errorf("unknown %q; known: open, frozen, snow, saturated, dormant", name))
		}
	}
	return states
}

type findingShown struct {
	Rule       string `json:"rule"`
	Text       string `json:"text"`
	Citation   string `json:"citation"`
	AsOf       string `json:"as_of"`
	Read       string `json:"read"`
	Confidence string `json:"confidence"`
}

func findingsShown(all []law.Finding) []findingShown {
	out := []findingShown{}
	for _, f := range all {
		out = append(out, findingShown{f.Rule.ID, f.Text, f.Rule.Citation, f.Rule.AsOf, f.Rule.How.String(), f.Rule.Confidence.String()})
	}
	return out
}
