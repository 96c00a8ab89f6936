package nutrient

// Florida is one of the three parts of the state for which its table and its calendars
// have figures of their own.
type Florida int

// The parts of Florida; 0 is not known.
const (
	NorthFlorida Florida = iota + 1
	CentralFlorida
	SouthFlorida
)

// String names the part: "north".
func (f Florida) String() string {
	return [...]string{"not known", "north", "central", "south"}[f]
}

// FloridaPart tells the part of Florida of a place, the same for the year's nitrogen and
// for the calendar: by latitude where it is known, else by its hardiness half-zone, "9a".
// The parts meet at Ocala and on a line from Vero Beach to Tampa, from memory of the paper
// that the table is taken from; the places of zone 9a lie north of it about latitude 30.1,
// of 9b about 28.8, of 10a and warmer about 27.6 and south of it.
func FloridaPart(hardiness string, latitude *float64) Florida {
	if latitude != nil {
		switch {
		case *latitude >= 29.2: // [common] from memory: Ocala
			return NorthFlorida
		case *latitude >= 27.8: // [common] from memory: Vero Beach to Tampa
			return CentralFlorida
		}
		return SouthFlorida
	}
	switch hardiness {
	case "":
		return 0
	case "9b": // [common] by our own means of the stations of a zone
		return CentralFlorida
	case "10a", "10b", "11a", "11b", "12a", "12b", "13a", "13b": // [common]
		return SouthFlorida
	}
	return NorthFlorida
}
