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
	Through   Date // last day
	Metric    bool // how amounts are shown
	Place     climate.Place
	County    string       // for local law; "" not known
	Water     climate.Feet // distance to the nearest open water; 0 not given
	Crew      Crew
	Areas     []Area // in the order of the file
	Materials []material.Material
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
	Soil        *agronomy.Report  // nil without a report
	Assumed     []agronomy.Reason // defaults the file left to us
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
	Missed    bool
	By, Note  string
}
