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
	N        int      // 1, 2, … within kind and area
	Area     *Area    // nil for the site as a whole
	Windows  []Window // in order of time; none: see Left
	Dose     material.Dose
	Title    string
	Summary  string
	WaterIn  material.WaterIn
	Steps    []string
	IfRain   string
	Cautions []string
	Because  string // the whole working in one sentence
	Why      []Reason
	Tilled   bool // worked into a seedbed
	Again    bool // lime on top of lime that the soil report does not know of

	// A job on record, or taken as done, has its day already.
	On    Date
	State State
	Note  string
	bound []string // what bound the day when it was planned
}

// ID names the job in the program: "east/lime/1", "site/last-safe/1".
func (j *Job) ID() string { return jobID(j.areaID(), j.Kind, j.N) }

func jobID(area string, k Kind, n int) string {
	return area + "/" + k.String() + "/" + strconv.Itoa(n)
}

func (j *Job) areaID() string {
	if j.Area == nil {
		return "site"
	}
	return j.Area.ID
}

// spreads tells whether anything goes down.
func (j *Job) spreads() bool { return j.Dose.Rate > 0 }

// ahead tells whether something is still to go down: what is down already
// cannot wait for anything.
func (j *Job) ahead() bool { return j.spreads() && j.On.IsZero() }

// things gives what the job counts as for spacing.
func (j *Job) things() nutrient.Things {
	own := j.Kind.of().Things
	switch {
	case !j.Kind.Spreads():
		return own
	case !j.spreads():
		return 0
	}
	all := nutrient.ThingsOf(j.Dose.Material)
	if j.Dose.K2O < smallK {
		all &^= nutrient.PotassiumDown &^ own
	}
	if j.Dose.P2O5 < smallP {
		all &^= nutrient.PhosphorusDown &^ own
	}
	return all
}

// The potassium and phosphorus below which a dose that is meant for something
// else need not keep its distance from the next.
const (
	smallK agronomy.PerThousand = 0.5  // [cornell-k] less need not even be watered in on a lawn
	smallP agronomy.PerThousand = 0.25 // [common]
)

// proposal is what one rule has to say about one area.
type proposal struct {
	jobs    []Job
	left    []LeftOut
	needs   []Need // of the area
	assumed []string
	shed    []string  // what the lime on hand will do
	yearly  []yearlyN // of the area
	starter bool      // the feedings of the area count on a starter
}

func (p *proposal) add(q proposal) {
	p.jobs = append(p.jobs, q.jobs...)
	p.left = append(p.left, q.left...)
	p.needs = append(p.needs, q.needs...)
	p.assumed = append(p.assumed, q.assumed...)
	p.shed = append(p.shed, q.shed...)
}

// leave leaves a job of an area out.
func (p *proposal) leave(a *Area, k Kind, n int, reason, source string) {
	p.left = append(p.left, LeftOut{ID: jobID(a.ID, k, n), Kind: k, Area: a.ID, Reason: reason, Source: source})
}
