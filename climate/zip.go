package climate

import (
	_ "embed"
	"fmt"
	"math"
	"slices"
	"strings"
)

// packedZIPs are the US ZIP codes with the place, county and position of each,
// read in place without unpacking. data/README.md describes the layout.
//
//go:embed data/zips.bin
var packedZIPs string

// ZIPCredit is the credit line that the terms of the ZIP data ask for.
const ZIPCredit = "ZIP codes: GeoNames, CC BY 4.0" // [geonames]

// ZIP is the place a US ZIP code stands for. State and County are "" for
// military mail.
type ZIP struct {
	Code, Place         string
	State, County       string // postal code; name without the word "County"
	Latitude, Longitude float64
}

// String writes the place: "44109, Cleveland OH".
func (z ZIP) String() string { return z.Code + ", " + z.Place + " " + z.State }

// Sizes of the parts of packedZIPs.
const (
	zipHeader    = 16
	zipPrefixes  = 1001 * 2 // for each three leading digits, the number of the first ZIP
	zipSize      = 8        // latitude, longitude, county, place
	countySize   = 4        // state, name
	namesPerStep = 16
)

func packed16(at int) int { return int(packedZIPs[at]) | int(packedZIPs[at+1])<<8 }
func packed32(at int) int { return packed16(at) | packed16(at+2)<<16 }

// zipParts is the number of ZIP codes in packedZIPs, and where each of its parts begins.
func zipParts() (n, last, records, counties, steps, text int) {
	n = packed32(0)
	last = zipHeader + zipPrefixes
	records = last + n
	counties = records + n*zipSize
	steps = counties + packed32(4)*countySize
	text = steps + (packed32(8)+namesPerStep-1)/namesPerStep*4
	return
}

// FindZIP finds the place of a five-digit ZIP code; the four digits that may
// follow after a hyphen are left aside. The error is a [PlaceError].
func FindZIP(code string) (ZIP, error) {
	code = strings.TrimSpace(code)
	five, plus, long := strings.Cut(code, "-")
	if !digits(five, 5) || long && !digits(plus, 4) {
		return ZIP{}, PlaceError{"zip", fmt.Sprintf("%q is no ZIP code", code), `write its five digits in quotes, leading zeros included, such as "44109"`}
	}
	number := 0
	for _, c := range five {
		number = number*10 + int(c-'0')
	}
	prefix, rest := number/100, byte(number%100)
	_, last, _, _, _, _ := zipParts()
	from, to := packed16(zipHeader+2*prefix), packed16(zipHeader+2*prefix+2)
	for i := from; i < to; i++ {
		if packedZIPs[last+i] == rest {
			return zipAt(i, five), nil
		}
	}
	if from == to {
		return ZIP{}, PlaceError{"zip", fmt.Sprintf("no ZIP code known here begins with %s", five[:3]), "the list covers the 50 states and DC; elsewhere " + giveNormals}
	}
	return ZIP{}, PlaceError{"zip", fmt.Sprintf("there is no ZIP code %s", five), "check the digits, or give latitude and longitude"}
}

func digits(s string, n int) bool {
	return len(s) == n && strings.Trim(s, "0123456789") == ""
}

// zipAt reads the i-th ZIP.
func zipAt(i int, code string) ZIP {
	_, _, records, counties, _, _ := zipParts()
	r := records + i*zipSize
	c := counties + packed16(r+4)*countySize
	return ZIP{Code: code, Place: zipName(packed16(r + 6)), State: strings.TrimSpace(packedZIPs[c : c+2]), County: zipName(packed16(c + 2)),
		Latitude: float64(packed16(r))/100 - 90, Longitude: float64(packed16(r+2))/100 - 180}
}

// zipName reads the i-th of the names of places and counties.
func zipName(i int) string {
	_, _, _, _, steps, text := zipParts()
	rest := packedZIPs[text+packed32(steps+i/namesPerStep*4):]
	for range i % namesPerStep {
		_, rest, _ = strings.Cut(rest, "\n")
	}
	name, _, _ := strings.Cut(rest, "\n")
	return name
}

// NearestZIP is the ZIP whose position is nearest, and how far away that is in
// kilometres. Military mail, which lies in no state, is left out.
func NearestZIP(lat, lon float64) (ZIP, float64) {
	n, last, records, _, _, _ := zipParts()
	best, least := -1, math.Inf(1)
	east := math.Cos(lat * math.Pi / 180)
	for i := range n {
		r := records + i*zipSize
		dy := float64(packed16(r))/100 - 90 - lat
		dx := math.Remainder(float64(packed16(r+2))/100-180-lon, 360) * east
		if d := dx*dx + dy*dy; d < least && zipHasState(r) {
			best, least = i, d
		}
	}
	prefix := 0
	for packed16(zipHeader+2*prefix+2) <= best {
		prefix++
	}
	z := zipAt(best, fmt.Sprintf("%03d%02d", prefix, packedZIPs[last+best]))
	return z, distanceBetween(lat, lon, z.Latitude, z.Longitude)
}

// Counties are the counties of a state that have a ZIP code, in order; none for a
// territory.
func Counties(state string) []string {
	_, _, _, counties, _, _ := zipParts()
	var out []string
	for i := range packed32(4) {
		c := counties + i*countySize
		if packedZIPs[c:c+2] != state {
			continue
		}
		if name := zipName(packed16(c + 2)); name != "" {
			out = append(out, name)
		}
	}
	slices.Sort(out)
	return out
}

func zipHasState(record int) bool {
	_, _, _, counties, _, _ := zipParts()
	return packedZIPs[counties+packed16(record+4)*countySize] != ' '
}
