package nutrient

import (
	"slices"
	"time"

	"swardbook/agronomy"
)

// Dressing is one dose of a published calendar.
type Dressing struct {
	When      string
	Low, High agronomy.PerThousand
}

// Days is a span of the year, both days in it.
type Days struct {
	FromMonth time.Month
	From      int
	ToMonth   time.Month
	To        int
}

// PublishedCalendar is how one state's advice sets out a year's nitrogen. Where it
// names states and grasses, a program there keeps to its days: In for the season of
// warm-season grass or the spring of cool-season grass.
type PublishedCalendar struct {
	Name      string
	Season    agronomy.Season
	Dressings []Dressing
	States    []string
	Grasses   []string
	Florida   Florida // the part of it; 0 any
	In        Days
	Says      string
	Source    string
}

// Low is the year's nitrogen at the lower end of every dose.
func (p PublishedCalendar) Low() (year agronomy.PerThousand) {
	for _, d := range p.Dressings {
		year += d.Low
	}
	return year
}

// High is the year's nitrogen at the upper end of every dose.
func (p PublishedCalendar) High() (year agronomy.PerThousand) {
	for _, d := range p.Dressings {
		year += d.High
	}
	return year
}

// CalendarFor finds the published calendar that a stand's larger part follows in a
// state; part is that of Florida, taken as north where it is not known.
func CalendarFor(state string, part Florida, s agronomy.Stand) (PublishedCalendar, bool) {
	most := 0
	for i := range s {
		if s.Weight(i) > s.Weight(most) {
			most = i
		}
	}
	for _, c := range publishedCalendars {
		if (slices.Contains(c.States, state) || slices.Contains(c.States, elsewhere)) && slices.Contains(c.Grasses, s[most].Grass.Name) && (c.Florida == 0 || c.Florida == max(part, NorthFlorida)) {
			return c, true
		}
	}
	return PublishedCalendar{}, false
}

// elsewhere stands for every state without a calendar of its own for the grass.
const elsewhere = "*"

// PublishedCalendars are the calendars that a program follows where they hold, the
// nearest first, and those with doses in pounds to set beside a program.
func PublishedCalendars() []PublishedCalendar { return slices.Clone(publishedCalendars) }

var (
	southern  = []string{"bermudagrass", "zoysiagrass"}
	lawnsOfFL = []string{"St. Augustinegrass", "bermudagrass", "zoysiagrass", "bahiagrass", "carpetgrass"}
)

var publishedCalendars = []PublishedCalendar{
	{Name: "North Carolina, tall fescue", Season: agronomy.Cool, Dressings: []Dressing{{"mid September", 1, 1}, {"November", 1, 1}, {"February", 0.5, 1}}, // [nc-tallfescue] [nc-macon]
		States: []string{"NC", "GA"}, Grasses: []string{"tall fescue"}, In: Days{time.February, 1, time.February, 28},
		Says: "in spring a dose in February or none, and nothing after March", Source: "nc-tallfescue, nc-macon"},
	{Name: "Tennessee, tall fescue", Season: agronomy.Cool, States: []string{"TN"}, Grasses: []string{"tall fescue"}, In: Days{time.March, 1, time.March, 31}, // [tn-hozer]
		Says: "in spring about the middle of March, and here nothing after March", Source: "tn-hozer, nc-tallfescue"},
	{Name: "Kansas, cool-season lawns", Season: agronomy.Cool, States: []string{"KS"}, Grasses: []string{"tall fescue", "Kentucky bluegrass", "perennial ryegrass"}, In: Days{time.May, 1, time.May, 31}, // [ksu-eckert]
		Says: "in spring in May, not in March or April", Source: "ksu-eckert"},
	{Name: "Nebraska, bluegrass", Season: agronomy.Cool, Dressings: []Dressing{{"20 Apr to 10 May", 1, 1}, {"early to mid September, slow", 1.5, 2}, {"when growth stops", 0.25, 0.3}}, // [unl-calc] [unl-fall] [unl-fech-2018]
		States: []string{"NE"}, Grasses: []string{"Kentucky bluegrass"}, In: Days{time.April, 20, time.May, 10},
		Says: "in spring from 20 Apr to 10 May", Source: "unl-calc, unl-fall, unl-fech-2018"},
	{Name: "Kansas, bermudagrass", Season: agronomy.Warm, States: []string{"KS", "NE"}, Grasses: []string{"bermudagrass"}, In: Days{time.May, 1, time.August, 15}, // [ksu-warm]
		Says: "from early May, the last dose by 15 Aug", Source: "ksu-warm"},
	{Name: "Kansas, zoysiagrass", Season: agronomy.Warm, States: []string{"KS", "NE"}, Grasses: []string{"zoysiagrass"}, In: Days{time.June, 1, time.July, 20}, // [ksu-warm]
		Says: "in early June and about the middle of July", Source: "ksu-warm"},
	{Name: "Kansas, buffalograss", Season: agronomy.Warm, States: []string{"KS"}, Grasses: []string{"buffalograss"}, In: Days{time.June, 1, time.July, 20}, // [ksu-warm]
		Says: "in early June, a second dose about the middle of July", Source: "ksu-warm"},
	{Name: "Nebraska, buffalograss", Season: agronomy.Warm, States: []string{"NE"}, Grasses: []string{"buffalograss"}, In: Days{time.June, 1, time.July, 31}, // [unl-g2178]
		Says: "in June and July", Source: "unl-g2178"},
	{Name: "Louisiana, centipede", Season: agronomy.Warm, Dressings: []Dressing{{"April", 0.5, 0.5}, {"July", 0.5, 0.5}}, // [lsu-strahan]
		States: []string{"LA"}, Grasses: []string{"centipedegrass"}, In: Days{time.April, 1, time.July, 31},
		Says: "in April and July", Source: "lsu-strahan"},
	{Name: "Louisiana, summer lawns", Season: agronomy.Warm, States: []string{"LA"}, Grasses: []string{"St. Augustinegrass", "bermudagrass", "zoysiagrass"}, In: Days{time.April, 1, time.August, 15}, // [lsu-strahan]
		Says: "the last of the summer by the middle of August", Source: "lsu-strahan"},
	{Name: "North Carolina, centipede", Season: agronomy.Warm, States: []string{elsewhere}, Grasses: []string{"centipedegrass"}, In: Days{time.June, 1, time.August, 31}, // [nc-centipede]
		Says: "none from March to May, the second of two in midsummer", Source: "nc-centipede"},
	{Name: "Georgia, summer lawns", Season: agronomy.Warm, States: []string{"GA", "SC"}, Grasses: southern, In: Days{time.April, 15, time.August, 31}, // [uga-coastal]
		Says: "none from September to November", Source: "uga-coastal"},
	{Name: "north Florida", Season: agronomy.Warm, States: []string{"FL"}, Florida: NorthFlorida, Grasses: lawnsOfFL, In: Days{time.March, 15, time.September, 30}, // [uf-winter]
		Says: "the last in September", Source: "uf-winter"},
	{Name: "central Florida", Season: agronomy.Warm, States: []string{"FL"}, Florida: CentralFlorida, Grasses: lawnsOfFL, In: Days{time.March, 1, time.October, 31}, // [uf-winter]
		Says: "the last in October", Source: "uf-winter"},
	{Name: "Kansas, medium care", Season: agronomy.Cool, Dressings: []Dressing{{"September", 1, 1}, {"November", 1, 1}}, Source: "ksu-eckert"},                                         // [ksu-eckert]
	{Name: "Arizona, Flagstaff", Season: agronomy.Cool, Dressings: []Dressing{{"10 Sep", 1.5, 1.5}, {"10 Oct", 0.75, 0.75}}, Source: "az-1995"},                                        // [az-1995]
	{Name: "Florida, St. Augustine, high care", Season: agronomy.Warm, Dressings: []Dressing{{"March", 1, 1}, {"May", 1, 1}, {"July", 1, 1}, {"September", 1, 1}}, Source: "uf-enh73"}, // [uf-enh73]
}
