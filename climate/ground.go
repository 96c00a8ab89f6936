package climate

// GroundKind says how often the top of the soil freezes.
type GroundKind int

const (
	GroundNever       GroundKind = iota // no frozen-ground limit
	GroundSomeWinters                   // freezes in some winters
	GroundMostWinters                   // freezes in most winters
)

// String writes the kind for people.
func (k GroundKind) String() string {
	switch k {
	case GroundSomeWinters:
		return "the ground freezes in some winters only"
	case GroundMostWinters:
		return "the ground freezes in most winters"
	}
	return "the ground does not freeze"
}

// Ground is the freezing of the top 2 in (5 cm) of the soil. Where the ground
// never freezes all four dates are Never, and growth closes the season
// instead: see [Year.GrowthEnds].
type Ground struct {
	Kind     GroundKind
	Early    When // frozen by then in an early year
	Median   When // frozen by then in half of the years; uncertain by weeks
	LastSafe When // last day on which anything may be put down before the ground freezes
	Reopens  When // first day after winter on which the ground is open again
}

// fiveCentimeters is the depth at which frozen ground was observed.
const fiveCentimeters Inches = 5 / 2.54 // [model] section 6

// Ground works out when the soil freezes, from the conduction curve at 5 cm.
// It is a climate date: it does not replace a look at the ground.
func (y *Year) Ground() Ground {
	x := y.soil(fiveCentimeters)
	var g Ground
	switch coldest := x.min(); {
	case coldest >= 40: // [model] section 6
		never := When{Never: true, Words: GroundNever.String()}
		return Ground{GroundNever, never, never, never, never}
	case coldest >= 32: // [model] section 6
		g.Kind = GroundSomeWinters
	default:
		g.Kind = GroundMostWinters
	}
	through := func(level float64, words string) When {
		d, how := x.falls(level)
		w := y.autumn(d, how, "", Fahrenheit(level))
		w.Words = words
		if w.Never {
			w.Words += ": not in a normal winter"
		}
		return w
	}
	g.Early = through(36, "ground frozen in an early year")                               // [model] section 6, 7: one year in 16 in Minnesota, up to one in five elsewhere
	g.Median = through(33, "ground frozen in half of the years; uncertain by some weeks") // [model] section 6
	if !g.Median.Never {
		g.Median.SD = y.errors.frozen // [model] section 7
	}
	g.Early.Quantile, g.Median.Quantile = true, true
	g.LastSafe = through(40, "").moved(-7, "last safe day before the ground freezes") // [model] section 6
	d, how := x.rises(40)                                                             // [common] the same level as in autumn
	g.Reopens = y.spring(d, how, "", 40)
	g.Reopens.Words = "ground open again"
	return g
}
