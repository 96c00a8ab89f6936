package schedule

import (
	"strconv"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
)

// Window is a run of days on which a job may be done, with the best day.
type Window struct {
	Span
	Ideal         Date
	Opens, Closes string // the named events, in words
	Carried       string // why an earlier window does not do; "" for the first
	Last          Date   // last safe day, also where the program ends before it
}

// Job is one thing to do once in one area, before it has a day.
type Job struct {
	Kind     Kind
	Season   int      // the season it belongs to, named by the year it begins
	N        int      // its place among those of its kind, area and season: 1, 2, …
	Area     *Area    // nil for the site as a whole
	Windows  []Window // in order of time; a job without any is left out
	Dose     material.Dose
	Title    string
	Summary  string
	WaterIn  material.WaterIn
	Steps    []string
	IfRain   string
	Cautions []string
	Because  string // the whole working in one sentence
	Why      []Reason
	Tilled   bool   // worked into a seedbed
	Bare     string // why a starter brings no phosphorus
	Again    bool   // lime on top of lime that the soil report does not know of

	// A job on record, or taken as done, has its day already.
	On     Date
	State  State
	Note   string
	Closed Date     // see [Entry]
	By     string   // who did it, as the record book says
	Bound  []string // what bound the day when it was planned
	Rest   bool     // what is left of a job done in part
	Begun  *Job     // see [Entry]
	Part   float64  // of a sowing: the part of the seed that it is about; 0: all of it
}

// idealDay is what an entry says of its day when nothing kept it from the best one.
const idealDay = "the ideal day"

// ID names the job in the program: "east/lime/2026-1", "site/last-safe/2026-1".
func (j *Job) ID() string { return JobID(j.AreaID(), j.Kind, j.Season, j.N) }

// JobID names the n-th job of a kind in the season of an area.
func JobID(area string, k Kind, season, n int) string {
	return area + "/" + k.String() + "/" + strconv.Itoa(season) + "-" + strconv.Itoa(n)
}

// UID names a job for calendars: by site, area, kind and season, never by date or
// title, so that a moved job moves.
func UID(site, area string, k Kind, season, n int) string {
	return site + "." + area + "." + k.String() + "." + strconv.Itoa(n) + "." + strconv.Itoa(season) + "@swardbook"
}

// AreaID names the job's area; "site" for the site as a whole.
func (j *Job) AreaID() string {
	if j.Area == nil {
		return "site"
	}
	return j.Area.ID
}

// Spreads tells whether the job has a dose to put down.
func (j *Job) Spreads() bool { return j.Dose.Rate > 0 }

// Ahead tells whether the job has a dose that is not down yet; only such a job can be
// made to wait.
func (j *Job) Ahead() bool { return j.Spreads() && j.On.IsZero() }

// OnlyNitrogen tells a starter that brings no phosphorus, for which no bag of starter is
// needed.
func (j *Job) OnlyNitrogen() bool {
	return j.Kind == Starter && j.Spreads() && j.Dose.P2O5 == 0
}

// Things gives what the job counts as for spacing: what its material counts as, less
// small amounts of potassium and phosphorus that are not what it is for.
func (j *Job) Things() nutrient.Things {
	own := j.Kind.Of().Things
	switch {
	case !j.Kind.Spreads():
		return own
	case !j.Spreads():
		return 0
	}
	all := nutrient.ThingsOf(j.Dose.Material)
	if j.Dose.K2O < SmallK {
		all &^= nutrient.PotassiumDown &^ own
	}
	if j.Dose.P2O5 < SmallP {
		all &^= nutrient.PhosphorusDown &^ own
	}
	return all
}

// The potassium and phosphorus below which a dose that is meant for something
// else need not keep its distance from the next.
const (
	SmallK agronomy.PerThousand = 0.5  // [cornell-k] less need not even be watered in on a lawn
	SmallP agronomy.PerThousand = 0.25 // [common]
)

// Proposal is what one rule has to say about one area.
type Proposal struct {
	Jobs    []Job
	Left    []LeftOut
	Needs   []Need // of the area
	Assumed []string
	Shed    []string  // what the lime on hand will do
	Yearly  []YearlyN // of the area
	Starter bool      // the feedings of the area count on a starter
}

// Add joins what another rule has to say about the same area. Yearly and Starter are
// set once for all rules.
func (p *Proposal) Add(q Proposal) {
	p.Jobs = append(p.Jobs, q.Jobs...)
	p.Left = append(p.Left, q.Left...)
	p.Needs = append(p.Needs, q.Needs...)
	p.Assumed = append(p.Assumed, q.Assumed...)
	p.Shed = append(p.Shed, q.Shed...)
}

// Leave leaves a job of an area out.
func (p *Proposal) Leave(a *Area, k Kind, n int, reason, source string) {
	p.Left = append(p.Left, LeftOut{N: n, Kind: k, Area: a.ID, Reason: reason, Source: source})
}

// TitleLength is what a phone shows of a title.
const TitleLength = 40

// YearlyN is the nitrogen wanted in one turf year.
type YearlyN struct {
	Year  int
	Total agronomy.PerThousand
}
