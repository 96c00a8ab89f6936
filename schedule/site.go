package schedule

import (
	"reflect"
	"time"

	"swardbook/agronomy"
	"swardbook/agronomy/lime"
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
	Counted   map[string]Date // of a material, by its id: when its packs were counted; default Start
	Local     law.Local
	Sprayer   Sprayer
	Spreader  Spreader
	Calendar  Calendar
	Assumed   []agronomy.Reason // defaults the file left to us

	worked workedOut
}

// workedOut is a year with the place that it is of.
type workedOut struct {
	place climate.Place
	year  *climate.Year
}

// Year gives the year of the site's place: the one that is kept, if it is still of this
// place, else it is worked out. What a place points to, such as its elevation, must be
// replaced and not written to.
func (s *Site) Year() (*climate.Year, error) {
	if w := &s.worked; w.year != nil && reflect.DeepEqual(w.place, s.Place) {
		return w.year, nil
	}
	return s.Place.Year()
}

// KeepYear keeps the year of the site's place for [Site.Year].
func (s *Site) KeepYear(y *climate.Year) { s.worked = workedOut{s.Place, y} }

// Area is one piece of turf with one grass, one soil report, one treatment.
type Area struct {
	ID          string
	Name        string
	Size        agronomy.SquareFeet
	Stand       agronomy.Stand // one grass or a mixture
	Seeded      Date           // unset: established
	Overseed    Date           // when thin turf was or will be sown over; unset: not
	Dormant     bool           // sow after growth has stopped, to sprout in spring
	Texture     agronomy.Texture
	Care        nutrient.Care
	Clippings   bool // returned
	Sprinkler   agronomy.InchesPerHour
	SolubleOnly bool // no slow-release material
	Cored       bool // cored before lime, so that a larger dressing may go down
	Sampled     Date
	Received    Date              // when the answer came; unset: two weeks after the sample
	Soil        *agronomy.Report  // the report in force; in a site as it was read, the first; nil without one
	Reports     []SoilReport      // all, by sampling day, where there are several
	Assumed     []agronomy.Reason // defaults the file left to us
}

// SoilReport is one report of an area, with its days.
type SoilReport struct {
	Sampled, Received Date
	Soil              *agronomy.Report
}

// AnswerDays is how long a laboratory takes, where nobody says.
const AnswerDays = 14 // [common]

// Answer gives the day from which a report is known.
func (r SoilReport) Answer() Date {
	if !r.Received.IsZero() || r.Sampled.IsZero() {
		return r.Received
	}
	return r.Sampled.AddDays(AnswerDays)
}

// Awaited warns of reports that are in the site file though the day on which their
// answer is expected is still to come: nobody has said when it came.
func (s *Site) Awaited(today Date) (out []Problem) {
	for i := range s.Areas {
		a := &s.Areas[i]
		for _, r := range a.AllReports() {
			if r.Soil == nil || !r.Received.IsZero() || today.Before(r.Sampled) || !today.Before(r.Answer()) {
				continue
			}
			table := "area." + a.ID + ".soil"
			if len(a.Reports) > 0 {
				table += "." + r.Sampled.String()
			}
			out = append(out, Problem{Key: table, Warning: true,
				Message: a.Name + ": the report of the sample of " + r.Sampled.Short() + " is expected on " + r.Answer().Short() + ", two weeks after it, and nothing is planned by it before",
				Hint:    "if the answer is here, write under [" + table + "] received = " + today.String()})
		}
	}
	return out
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

// Report gives the area's soil report, with the site file's texture where the
// report has none; false without a report.
func (a *Area) Report() (agronomy.Report, bool) {
	if a.Soil == nil {
		return agronomy.Report{Texture: a.Texture}, false
	}
	r := *a.Soil
	if r.Texture == "" {
		r.Texture = a.Texture
	}
	return r, true
}

// LimeValue gives how much of a lime acts in an area: by the rule of its state, and
// as ordinary ground limestone where the requirement was read off a table of it.
func (s *Site) LimeValue(a *Area, m material.Material) lime.Value {
	need, _ := lime.Requirement(s.LimeCase(a)) // without one there is no table either
	return lime.ValueOf(m, s.Place.State, need.Ground)
}

// EffectiveLime gives the fully effective lime that a dose brings to an area.
func (s *Site) EffectiveLime(a *Area, d material.Dose) agronomy.PerThousand {
	if !limes(d.Material) {
		return 0
	}
	return d.Rate * agronomy.PerThousand(s.LimeValue(a, d.Material).Full) / 100
}

// LimeCase gathers what the lime requirement of an area depends on.
func (s *Site) LimeCase(a *Area) lime.Case {
	r, _ := a.Report()
	target, low, _ := a.Stand.TargetPH()
	lc := lime.Case{
		PH: r.PH, Target: target, LimeBelow: low,
		Buffer: r.Buffer, Acidity: r.Acidity, Texture: r.Texture,
		CEC: r.CEC, OrganicMatter: r.OrganicMatter,
		State: s.Place.State, Depth: r.Depth,
		WarmRegion: lime.WarmLimeRegion(s.Place.State),
		Printed:    r.Printed.Lime,
	}
	if r.TargetPH > 0 {
		lc.Target, lc.LimeBelow = r.TargetPH, 0
	}
	return lc
}
