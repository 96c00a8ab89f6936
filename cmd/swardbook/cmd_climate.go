package main

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"strconv"
	"strings"

	"swardbook/climate"
	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule"
	"swardbook/schedule/sitefile"
	"swardbook/schedule/text"
)

var climateCommand = command{
	name: "climate", args: "FILE | ZIP | LATITUDE,LONGITUDE | STATE ZONE",
	what: "the place's year: freezes, soil, growth, frozen ground",
	help: `    swardbook climate lawn.toml
    swardbook climate 44109
    swardbook climate 41.5,-81.7
    swardbook climate OH 6a

Writes the year of a place: when the last and the first freeze come, when the
soil passes the marks that matter, when growth begins and ends, and when the
ground freezes, each with its spread over the years, and a small drawing.

ZIP is a US ZIP code; LATITUDE and LONGITUDE are degrees, south and west
negative. Either takes the climate from the nearest weather stations. STATE is
the postal code of a US state, ZONE a plant hardiness half-zone: less exact.

        --metric        °C in the table of days, in the drawing and in CSV
        --format FORM   text, json, csv (365 days) or markdown (the dates)
    -o, --output FILE   write to FILE
        --no-color      no colour
`,
	setup: func(flags *flag.Set) func(*session, []string) error {
		out := flag.NewOutput(flags, "text", "json", "csv", "markdown")
		metric := flags.Bool("metric", false, "")
		return func(s *session, args []string) error {
			if err := out.Check(); err != nil {
				return err
			}
			in, err := s.placeOf(args)
			if err != nil {
				return err
			}
			in.metric = in.metric || *metric
			data, err := s.climateAs(in, out)
			if err != nil {
				return err
			}
			return s.write(out.File, data, in.file)
		}
	},
}

// placed is a place with its year, and how to show it.
type placed struct {
	title, file string
	metric      bool
	place       climate.Place
	year        *climate.Year
}

func (s *session) placeOf(args []string) (*placed, error) {
	switch len(args) {
	case 0:
		return nil, misuse("FILE or a place is missing: swardbook climate 44109, or OH 6a")
	case 1:
		text, err := s.readFile(args[0])
		if errors.Is(err, fs.ErrNotExist) {
			if p, ok := namedPlace(args[0]); ok {
				return placeAlone(p, "")
			}
			if zone, bad := climate.ParseZone(args[0]); bad == nil {
				return nil, misuse("a half-zone needs its state, as in: swardbook climate OH %s", zone)
			}
			if len(args[0]) == 2 {
				return nil, misuse("a state needs its half-zone, as in: swardbook climate %s 6a", strings.ToUpper(args[0]))
			}
		}
		if err != nil {
			return nil, err
		}
		site, problems := sitefile.Load(args[0], text, opener(folderOf(args[0])))
		s.tell(problems)
		if site == nil {
			return nil, exit{code: exitSite}
		}
		y, err := site.Year()
		if err != nil {
			return nil, siteError(fmt.Errorf("%s: %w", args[0], err))
		}
		return &placed{site.Title, args[0], site.Metric, site.Place, y}, nil
	case 2:
		p := climate.Place{State: strings.ToUpper(args[0]), Hardiness: strings.ToLower(args[1])}
		return placeAlone(p, p.State+", hardiness zone "+p.Hardiness)
	}
	return nil, misuse("%q is one argument too many: give FILE, ZIP, or STATE ZONE", args[2])
}

// namedPlace reads "44109" or "41.5,-81.7".
func namedPlace(arg string) (p climate.Place, ok bool) {
	if len(arg) == 5 && strings.Trim(arg, "0123456789") == "" {
		return climate.Place{ZIP: arg}, true
	}
	north, east, _ := strings.Cut(arg, ",")
	lat, err := strconv.ParseFloat(strings.TrimSpace(north), 64)
	lon, err2 := strconv.ParseFloat(strings.TrimSpace(east), 64)
	return climate.Place{Latitude: &lat, Longitude: &lon}, err == nil && err2 == nil
}

// placeAlone is a place named on the command line.
func placeAlone(p climate.Place, title string) (*placed, error) {
	y, err := p.Year()
	if err != nil {
		return nil, misuse("%s", err)
	}
	if title == "" {
		title = y.Where
		if p.ZIP == "" {
			z, km := climate.NearestZIP(*p.Latitude, *p.Longitude)
			title += fmt.Sprintf(", %.0f km from ZIP %s", km, z)
		} else if z, err := climate.FindZIP(p.ZIP); err == nil {
			p.State = z.State
		}
	}
	return &placed{title: title, place: p, year: y}, nil
}

type climateShown struct {
	Format int                 `json:"format"`
	Title  string              `json:"title"`
	Place  schedule.PlaceShown `json:"place"`
	Notes  []string            `json:"notes"`
	Events []eventShown        `json:"events"`
	Sowing []sowingShown       `json:"sowing"`
	Days   []dayShown          `json:"days"`
}

type eventShown struct {
	Name   string  `json:"name"`
	Text   string  `json:"text"`
	Never  bool    `json:"never,omitzero"`
	Day    int     `json:"day,omitzero"` // of a 365-day year
	Date   string  `json:"date,omitzero"`
	Early  string  `json:"early,omitzero"` // one year in ten comes before it
	Late   string  `json:"late,omitzero"`  // one year in ten comes after it
	Spread float64 `json:"sd_days,omitzero"`
}

type sowingShown struct {
	Name   string  `json:"name"`
	Text   string  `json:"text"` // its rule, or why there is no such time
	First  string  `json:"first,omitzero"`
	Best   string  `json:"best_from,omitzero"`
	Last   string  `json:"last,omitzero"`
	Spread float64 `json:"sd_days,omitzero"`     // of the last day
	Freeze float64 `json:"freeze_odds,omitzero"` // 0 to 1, within six weeks of the last day
}

type dayShown struct {
	Date       string  `json:"date"`
	Mean       float64 `json:"mean_f"`
	High       float64 `json:"high_f"`
	Low        float64 `json:"low_f"`
	Soil2      float64 `json:"soil_2in_f"`
	Soil4      float64 `json:"soil_4in_f"`
	Cool       float64 `json:"growth_cool"`
	Warm       float64 `json:"growth_warm"`
	DegreeDays float64 `json:"degree_days_50f"`
}

func (s *session) climateAs(in *placed, out *flag.Output) ([]byte, error) {
	y := in.year
	switch out.Format {
	case "csv":
		return []byte(text.Days(y, in.metric).CSV()), nil
	case "markdown":
		sowing, _ := text.Sowing(y, in.metric)
		return []byte("# " + text.Escape(in.title) + "\n\n" + text.Dates(y, in.metric).Markdown() + "\n" + sowing.Markdown()), nil
	case "json":
		return asJSON(climateJSON(in))
	}
	return []byte(text.Climate(in.title, y, in.metric, s.style(out.File, schedule.Date{}))), nil
}

func climateJSON(in *placed) climateShown {
	y := in.year
	shown := climateShown{Format: 1, Title: in.title, Notes: append([]string{}, y.Notes...),
		Place: schedule.PlaceShown{Where: y.Where, State: in.place.State, Hardiness: y.Zone, ClimateFrom: y.From, Better: y.Better}}
	for _, e := range y.Events() {
		w := e.When
		ev := eventShown{Name: e.Name, Text: w.Words, Never: w.Never}
		if !w.Never {
			ev.Day, ev.Date = int(w.Day()), isoDay(w.Day())
		}
		if !w.Never && !w.Quantile {
			ev.Early, ev.Late, ev.Spread = isoDay(w.EarlyDay()), isoDay(w.LateDay()), rounded(w.SD, 1)
		}
		shown.Events = append(shown.Events, ev)
	}
	cool, warm := y.SeedWindow(climate.Cool), y.SeedWindow(climate.Warm)
	for _, sow := range []struct {
		name string
		climate.SowWindow
	}{{"cool_autumn", cool.Main}, {"cool_spring", cool.Spring}, {"cool_dormant", cool.Dormant}, {"warm", warm.Main}} {
		sw := sowingShown{Name: sow.name, Text: sow.Words}
		if sow.OK && !sow.AllYear {
			sw.First, sw.Best, sw.Last = isoDay(sow.Open.Day()), isoDay(sow.Best.Day()), isoDay(sow.Close.Day())
			sw.Spread, sw.Freeze = rounded(sow.Close.SD, 1), rounded(sow.FreezeOdds, 2)
		}
		shown.Sowing = append(shown.Sowing, sw)
	}
	for _, r := range y.Table() {
		shown.Days = append(shown.Days, dayShown{isoDay(r.Day), rounded(float64(r.Mean), 1), rounded(float64(r.High), 1), rounded(float64(r.Low), 1),
			rounded(float64(r.Soil2), 1), rounded(float64(r.Soil4), 1), rounded(r.GrowthCool, 3), rounded(r.GrowthWarm, 3), rounded(r.DegreeDays50, 0)})
	}
	return shown
}

// isoDay writes a day as "10-14".
func isoDay(day climate.Day) string {
	return fmt.Sprintf("%02d-%02d", int(day.Month()), day.Date())
}

func rounded(v float64, decimals int) float64 {
	scale := math.Pow10(decimals)
	return math.Round(v*scale) / scale
}
