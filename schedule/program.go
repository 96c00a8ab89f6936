package schedule

import (
	"slices"
	"strconv"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/agronomy/soil"
)

// Reason is one ground for a decision, with its source key.
type Reason = agronomy.Reason

// State is how far a job has come.
type State string

// The states of a job. A job that is not on record is planned, due or taken
// depending on the reader's day: see [Program.AsOf]. The plan counts what is due
// or taken as down.
const (
	Planned  State = "planned"
	Due      State = "due"  // from its day to the end of its window
	Finished State = "done" // on record, in part or in whole
	Missed   State = "missed"
	Taken    State = "taken" // as done as planned: its window, or a later line of its area, closed without one
)

// Program is the dated jobs of one site, plus those left out, with reasons.
type Program struct {
	Format      int         `json:"format"`
	Title       string      `json:"title"`
	SiteID      string      `json:"site"`
	Start       Date        `json:"start"`
	Through     Date        `json:"through"`
	Place       PlaceShown  `json:"place"`
	Season      Season      `json:"season"`
	Areas       []AreaShown `json:"areas"`
	Entries     []Entry     `json:"entries"`
	LeftOut     []LeftOut   `json:"left_out"`
	InTheShed   []string    `json:"in_the_shed"` // what happens if nothing more is bought
	Assumptions []string    `json:"assumptions"`
	Laws        []LawLine   `json:"laws"`
	LawNotes    []string    `json:"law_notes"`
	Awaited     []string    `json:"awaited,omitzero"` // reports that are in the site file before their day, see [Program.AsOf]
	Metric      bool        `json:"metric,omitzero"`

	Site *Site `json:"-"`

	Table     KindTable `json:"-"` // with which it was planned; nil: the usual ones
	Cases     []*Case   `json:"-"` // behind the areas, for the ledger
	Chapters  []*Case   `json:"-"` // every case that was planned, area by area in order of time
	BookNotes []string  `json:"-"` // of the assumptions, those about lines of the record book

	Later Date `json:"-"` // the first job after the season that [Program.Around] shows

	used map[string]float64 // packs that are down, see [Program.AsOf]
}

// PlaceShown says where the site is and what its climate was read from.
type PlaceShown struct {
	Where       string   `json:"where,omitzero"` // the place as understood by its position
	State       string   `json:"state,omitzero"`
	County      string   `json:"county,omitzero"`
	Hardiness   string   `json:"hardiness,omitzero"`
	ClimateFrom string   `json:"climate_from"`
	Better      []string `json:"better,omitzero"` // what would make it better
}

// Season is the place's year around the program.
type Season struct {
	LastFreeze   Odds     `json:"last_freeze"`
	FirstFreeze  Odds     `json:"first_freeze"`
	SoilBelow50  Date     `json:"soil_below_50f,omitzero"`
	SoilBelow40  Date     `json:"soil_below_40f,omitzero"`
	GrowthEnds   Date     `json:"growth_ends,omitzero"`
	GrowthBegins Date     `json:"growth_begins,omitzero"`
	GroundFreeze Freeze   `json:"ground_freeze"`
	LastSafe     Date     `json:"last_safe,omitzero"`
	Reopens      Date     `json:"reopens,omitzero"`
	SpreadDays   int      `json:"spread_days"`                 // 8 years in 10 lie within ± this of the autumn dates
	Spread40Days int      `json:"spread_40f_days,omitzero"`    // the same of the soil at 40 °F
	SpringDays   int      `json:"spread_spring_days,omitzero"` // and of the beginning of growth
	Words        []string `json:"words"`
}

// Odds are the dates by which an event has come in 1, 5 and 9 years of 10.
type Odds struct {
	P10 Date `json:"p10,omitzero"`
	P50 Date `json:"p50,omitzero"`
	P90 Date `json:"p90,omitzero"`
}

// Freeze is when the top of the soil is expected to freeze.
type Freeze struct {
	Early  Date `json:"early,omitzero"`
	Median Date `json:"median,omitzero"`
}

// AreaShown is what the report of one area means and what follows from it.
type AreaShown struct {
	ID       string              `json:"id"`
	Name     string              `json:"name"`
	Size     agronomy.SquareFeet `json:"size_sqft"`
	Stand    string              `json:"stand"`
	Findings []FindingShown      `json:"findings"`
	Needs    []Need              `json:"needs"`
	Pale     []string            `json:"pale,omitzero"`
	Moved    []string            `json:"moved,omitzero"` // how the readings moved from report to report

	of *Area // of the case that was shown, each of which has its own
}

// FindingShown is one finding in the program.
type FindingShown struct {
	Rank    int        `json:"rank"`
	Reading string     `json:"reading"`
	Value   float64    `json:"value"`
	Unit    string     `json:"unit,omitzero"`
	Level   soil.Level `json:"level"`
	Text    string     `json:"text"`
	Source  string     `json:"source,omitzero"`
	Why     []Reason   `json:"why,omitzero"`
}

// Need is a total wanted for an area over the program, with its working.
type Need struct {
	Kind  Kind                 `json:"kind"`
	Total agronomy.PerThousand `json:"total_lb_per_1000_sqft"`
	Text  string               `json:"text"`
	Why   []Reason             `json:"why"`
}

// Entry is a job with its day.
type Entry struct {
	ID           string               `json:"id"`
	UID          string               `json:"uid"`
	Kind         Kind                 `json:"kind"`
	Season       int                  `json:"season"` // named by the year it begins
	Area         string               `json:"area,omitzero"`
	AreaName     string               `json:"area_name,omitzero"`
	Title        string               `json:"title"`   // under 40 characters, the verb first
	Summary      string               `json:"summary"` // what, how much, where: enough to act on
	Date         Date                 `json:"date"`
	Earliest     Date                 `json:"earliest"`
	Latest       Date                 `json:"latest"`
	Ideal        Date                 `json:"ideal"`
	LastSafe     Date                 `json:"last_safe,omitzero"` // last safe day, which may lie after the program
	Window       string               `json:"window"`             // the named events that open and close it
	Who          string               `json:"who,omitzero"`
	WhoName      string               `json:"who_name,omitzero"`
	Material     string               `json:"material,omitzero"`
	MaterialName string               `json:"material_name,omitzero"`
	ToBuy        bool                 `json:"to_buy,omitzero"`
	Rate         agronomy.PerThousand `json:"rate_lb_per_1000_sqft"`
	Pounds       agronomy.Pounds      `json:"amount_lb"`
	Gallons      agronomy.Gallons     `json:"amount_gal"`
	Packs        float64              `json:"packs"`
	N            agronomy.PerThousand `json:"n_lb_per_1000_sqft"`
	SlowN        agronomy.PerThousand `json:"slow_n_lb_per_1000_sqft"`
	P2O5         agronomy.PerThousand `json:"p2o5_lb_per_1000_sqft"`
	K2O          agronomy.PerThousand `json:"k2o_lb_per_1000_sqft"`
	WaterIn      agronomy.Inches      `json:"water_in_inches"`
	Steps        []string             `json:"steps"`
	IfRain       string               `json:"if_rain,omitzero"`
	Cautions     []string             `json:"cautions"`
	Because      string               `json:"because,omitzero"` // the working in one sentence
	Why          []Reason             `json:"why"`
	BoundBy      []string             `json:"bound_by"`
	Next         string               `json:"next,omitzero"` // what comes next in the same area
	State        State                `json:"state"`
	GoodDay      Date                 `json:"next_good_day,omitzero"` // of a due job: the next day on which it may be done, see [Program.AsOf]
	Note         string               `json:"note,omitzero"`          // what the record book says of it
	Rest         bool                 `json:"rest,omitzero"`          // what is left of a job that was done in part

	Dose   material.Dose `json:"-"`
	Begun  *Entry        `json:"-"` // of what is left of a job: the part on record, which is all of it once the days for the rest are over
	Closed Date          `json:"-"` // of a job taken as done: the day of the line or answer that came after it; before it the job is as open as any
}

// LeftOut is a job that found no day, with the reason.
type LeftOut struct {
	ID        string `json:"id"`
	Kind      Kind   `json:"kind"`
	Area      string `json:"area,omitzero"`
	Reason    string `json:"reason"`
	Source    string `json:"source,omitzero"`
	CarriedTo Date   `json:"carried_to,omitzero"`

	Season int  `json:"season"` // as in [Entry]
	Date   Date `json:"-"`      // about when it would have been: the day on which it was left out
	N      int  `json:"-"`
}

// LawLine is one rule that the program keeps, with where it stands.
type LawLine struct {
	Text     string `json:"text"`
	Citation string `json:"citation"`
	AsOf     string `json:"-"`     // of the text that was read, as printed: "Nov 2021"
	Dated    string `json:"as_of"` // the same for programs: "2021-11"
	Sure     string `json:"sure"`
}

// OwnIDs gives what is left out numbers of its own, after those of the jobs.
func (p *Program) OwnIDs() {
	if len(p.LeftOut) == 0 {
		return
	}
	taken, last := make(map[string]bool, len(p.Entries)+len(p.LeftOut)), map[string]int{}
	mark := func(id string) {
		taken[id] = true
		if i := strings.LastIndexByte(id, '-'); i >= 0 {
			n, _ := strconv.Atoi(id[i+1:])
			last[id[:i]] = max(last[id[:i]], n)
		}
	}
	for _, e := range p.Entries {
		mark(e.ID)
	}
	for i := range p.LeftOut {
		l := &p.LeftOut[i]
		if taken[l.ID] {
			of := l.ID[:strings.LastIndexByte(l.ID, '-')]
			l.ID = of + "-" + strconv.Itoa(last[of]+1)
		}
		mark(l.ID)
	}
}

// NextJobs tells each entry which job comes next in its area.
func (p *Program) NextJobs() {
	next := map[string]string{}
	for i := len(p.Entries) - 1; i >= 0; i-- {
		e := &p.Entries[i]
		if e.Area == "" {
			continue
		}
		e.Next = next[e.Area]
		if e.State == Planned {
			next[e.Area] = e.ID
		}
	}
}

// FirstText gives the first reason in words.
func FirstText(rs []Reason) string {
	if len(rs) == 0 {
		return "none fits"
	}
	return rs[0].Text
}

// Unique drops what is said twice.
func Unique(words []string) []string {
	var out []string
	for _, w := range words {
		if !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return out
}
