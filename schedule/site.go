package schedule

import (
	"time"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
	"swardbook/climate"
	"swardbook/schedule/law"
)

// Site is one place looked after, as its site file describes it.
type Site struct {
	ID        string // names the site in calendar ids
	Title     string
	Start     Date // first day the program may use
	Through   Date // last day; unset: the site goes on by itself, season after season
	Metric    bool // how amounts are shown
	Place     climate.Place
	County    string       // for local law; "" not known
	Water     climate.Feet // distance to the nearest open water; 0 not given
	Crew      Crew
	Areas     []Area // in the order of the file
	Materials []material.Material
	Counted   map[string]Date // by material: when its packs were counted; default Start
	Local     law.Local
	Sprayer   Sprayer
	Spreader  Spreader
	Calendar  Calendar
	Assumed   []agronomy.Reason // defaults the file left to us
}

// Area is one piece of turf with one grass, one soil report, one treatment.
type Area struct {
	ID          string
	Name        string
	Size        agronomy.SquareFeet
	Stand       agronomy.Stand // one grass or a mixture
	Seeded      Date           // unset: established
	Dormant     bool           // sow after growth has stopped, to sprout in spring
	Texture     agronomy.Texture
	Care        nutrient.Care
	Clippings   bool // returned
	Sprinkler   agronomy.InchesPerHour
	SolubleOnly bool // no slow-release material
	Cored       bool // cored before lime, so that a larger dressing may go down
	Sampled     Date
	Received    Date              // when the answer came; unset: two weeks after the sample
	Soil        *agronomy.Report  // the report in force, in a site as read the first; nil without one
	Reports     []SoilReport      // all, by sampling day, where there are several
	Assumed     []agronomy.Reason // defaults the file left to us
}

// SoilReport is one report of an area, with its days.
type SoilReport struct {
	Sampled, Received Date
	Soil              *agronomy.Report
}

// answerDays is how long a laboratory takes, where nobody says.
const answerDays = 14 // [common]

// Answer gives the day from which a report is known.
func (r SoilReport) Answer() Date {
	if !r.Received.IsZero() || r.Sampled.IsZero() {
		return r.Received
	}
	return r.Sampled.AddDays(answerDays)
}

// AllReports gives the reports of an area by sampling day.
func (a *Area) AllReports() []SoilReport {
	if len(a.Reports) == 0 && a.Soil != nil {
		return []SoilReport{{a.Sampled, a.Received, a.Soil}}
	}
	return a.Reports
}

// Sprayer is the tank that liquids go down with; zero when not given.
type Sprayer struct {
	Tank   agronomy.Gallons
	Covers agronomy.SquareFeet // per gallon
}

// Spreader is the machine that granules go down with; zero when not given.
type Spreader struct{ Width climate.Feet }

// Calendar is what the site asks of its calendar.
type Calendar struct {
	Remind []time.Duration // from the day's start; at most two
	Link   string          // last line of each description
	Secret string          // unguessable part of the feed's path; "" none
}

// Done is one line of the record book.
type Done struct {
	Line      int
	Date      Date
	Area      string
	Job       string // job id or kind
	Material  string // material id, "" as planned
	Weight    agronomy.Pounds
	Volume    agronomy.Gallons
	Packs     float64
	Share     float64 // of the planned amount; 1 as planned
	AsPlanned bool
	Content   *material.Material // what the bag held, where the line says so itself
	Of        agronomy.Pounds    // the dose first planned; 0 not said
	Taken     bool               // nobody recorded it: taken as done
	Missed    bool
	By, Note  string
}
