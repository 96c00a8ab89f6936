package climate

import (
	"math"
	"slices"
)

// neighbour is a weather station seen from a place.
type neighbour struct {
	station
	distance  float64 // km
	dx, dy    float64 // degrees east, shrunk to the length of a degree north; degrees north
	elevation float64 // km above the sea
}

// neighbours is how many stations a place is worked out from. [model] section 3b
const neighbours = 20 // [model] section 3b

const earthRadius = 6371.0 // km

const radian = math.Pi / 180

// distanceBetween is the great-circle distance of two places in kilometres.
func distanceBetween(lat1, lon1, lat2, lon2 float64) float64 {
	return fromHaversine(haversine(lat1, lat2, lon2-lon1))
}

// haversine is the haversine of the angle between two places whose longitudes differ by
// dlon degrees. It grows with their distance, and is cheaper to work out.
func haversine(lat1, lat2, dlon float64) float64 {
	return square(math.Sin((lat2-lat1)*radian/2)) + math.Cos(lat1*radian)*math.Cos(lat2*radian)*square(math.Sin(dlon*radian/2))
}

func fromHaversine(h float64) float64 { return 2 * earthRadius * math.Asin(math.Sqrt(min(h, 1))) }

// nearestStations finds the stations nearest to a place, the nearest first,
// without the record numbered `without`. The records are sorted by latitude: the search
// walks from the place's latitude to the north and the south at once, and ends where the
// difference in latitude alone is more than the distance of the farthest station kept.
func nearestStations(lat, lon float64, without int) []neighbour {
	near := make([]neighbour, 0, neighbours+1) // distance holds the haversine until the end
	shrink := math.Cos(lat * radian)
	farthest, reach := math.Inf(1), 360.0 // haversine of the farthest station kept; degrees of longitude that are always farther
	north := firstAtOrNorth(lat)
	south := north - 1
	for north < stationCount() || south >= 0 {
		i := south
		if south < 0 || north < stationCount() && stationAt(north).latitude()-lat <= lat-stationAt(south).latitude() {
			i = north
			north++
		} else {
			south--
		}
		s := stationAt(i)
		dx, dy := s.longitude()-lon, s.latitude()-lat
		if square(math.Sin(dy*radian/2)) > farthest {
			break
		}
		if math.Abs(dx) > reach || i == without {
			continue
		}
		h := haversine(lat, s.latitude(), dx)
		if h >= farthest {
			continue
		}
		at, _ := slices.BinarySearchFunc(near, h, func(n neighbour, h float64) int {
			if n.distance <= h {
				return -1
			}
			return 1
		})
		near = slices.Insert(near, at, neighbour{s, h, dx * shrink, dy, s.kilometers()})
		if near = near[:min(len(near), neighbours)]; len(near) == neighbours {
			farthest = near[neighbours-1].distance
			reach = 2 * math.Asin(math.Sqrt(min(farthest/(shrink*leastShrink), 1))) / radian
		}
	}
	for i := range near {
		near[i].distance = fromHaversine(near[i].distance)
	}
	return near
}

// leastShrink is less than the cosine of any station's latitude.
const leastShrink = 0.65 // [ncei-normals] stations used: 49 degrees north and less

// firstAtOrNorth is the number of the first station not south of a latitude.
func firstAtOrNorth(lat float64) int {
	low, high := 0, stationCount()
	for low < high {
		if mid := (low + high) / 2; stationAt(mid).latitude() < lat {
			low = mid + 1
		} else {
			high = mid
		}
	}
	return low
}

// usualElevation is the height, in km, of the country around a place, from
// the stations there. [model] section 3b
func usualElevation(near []neighbour) float64 {
	sum, weights := 0.0, 0.0
	for _, n := range near {
		w := 1 / (square(n.distance/10) + 0.05) // [model] section 3b
		sum += w * n.elevation
		weights += w
	}
	return sum / weights
}

// weight is how much a station counts: the less, the farther it is from the place and from
// its height. `even` keeps a very near station from outweighing the others.
// [model] section 3b
func (n neighbour) weight(elevation, even float64) float64 {
	return 1 / (square(n.distance/25) + square((n.elevation-elevation)/0.15) + even) // [model] section 3b
}

func square(x float64) float64 { return x * x }

// Change of the monthly means with height, °F per km. [model] section 3b
var (
	highLapse = [12]float64{-8.4, -10.4, -12.0, -12.5, -12.0, -11.5, -11.3, -11.2, -11.1, -10.7, -9.9, -8.4} // [model] section 3b
	lowLapse  = [12]float64{-7.2, -8.8, -9.4, -9.5, -9.7, -9.8, -9.5, -9.3, -8.8, -7.9, -7.3, -7.3}          // [model] section 3b
)

// monthsAt works out the twelve monthly means of the highs and lows at a
// place and height, each month by itself: the stations' values, brought to the
// height by the lapse, are fitted by a plane in dx, dy and dz, held level by a
// ridge. The fit is linear in the values, so the share of each station in the result is
// the same for every month, and worked out once. [model] section 3b
func monthsAt(near []neighbour, elevation float64) (highs, lows [12]Fahrenheit) {
	shares := planeShares(near, elevation)
	for i, n := range near {
		dz := n.elevation - elevation
		for m := range 12 {
			highs[m] += Fahrenheit(shares[i] * (n.high(m) - highLapse[m]*dz))
			lows[m] += Fahrenheit(shares[i] * (n.low(m) - lowLapse[m]*dz))
		}
	}
	return highs, lows
}

// planeShares is the share of each station in the fitted plane's value at the
// place: with weights w and basis rows b = (1, dx, dy, dz), the solution u of
// (B'WB + ridge) u = e1 gives w b·u.
func planeShares(near []neighbour, elevation float64) []float64 {
	ridge := [4]float64{0, 0.3, 0.3, 0.02} // [model] section 3b
	var a [4][5]float64
	a[0][4] = 1
	weights := make([]float64, len(near))
	sum := 0.0
	basis := func(n neighbour) [4]float64 { return [4]float64{1, n.dx, n.dy, n.elevation - elevation} }
	for i, n := range near {
		weights[i] = n.weight(elevation, 0.02) // [model] section 3b
		sum += weights[i]
		b := basis(n)
		for j := range 4 {
			for k := range 4 {
				a[j][k] += weights[i] * b[j] * b[k]
			}
		}
	}
	for j := range 4 {
		a[j][j] += sum * ridge[j]
	}
	for p := range 4 { // elimination; positive definite
		for j := range 4 {
			if j == p {
				continue
			}
			f := a[j][p] / a[p][p]
			for k := p; k < 5; k++ {
				a[j][k] -= f * a[p][k]
			}
		}
	}
	for i, n := range near {
		b := basis(n)
		value := 0.0
		for j := range 4 {
			value += b[j] * a[j][4] / a[j][j]
		}
		weights[i] *= value
	}
	return weights
}

// beyondRule is by how many days the medians published around the place come after those
// of the freeze rule: the mean over the stations, drawn toward 0 where few publish one.
// [model] section 3b
func beyondRule(near []neighbour, elevation float64, spring bool) float64 {
	sum, weights, most := 0.0, 0.0, 0.0
	for _, n := range near {
		w := n.weight(elevation, 0.02) // [model] section 3b
		most = max(most, w)
		if days, ok := n.beyondRule(spring); ok {
			sum += w * days
			weights += w
		}
	}
	if weights == 0 {
		return 0
	}
	return sum / weights * weights / (weights + 0.5*most) // [model] section 3b
}

// observedFreeze is the mean published median of the nearest dozen stations,
// and whether half of them publish one, so that the place freezes in most
// years. [model] section 4
func observedFreeze(near []neighbour, elevation float64, spring bool) (day float64, any, half bool) {
	dozen := near[:min(len(near), 12)] // [model] section 4
	sum, weights, publish := 0.0, 0.0, 0
	for _, n := range dozen {
		if day, ok := n.published(spring); ok {
			w := n.weight(elevation, 0.05) // [model] section 4
			sum += w * day
			weights += w
			publish++
		}
	}
	return sum / weights, publish > 0, publish > 0 && 2*publish >= len(dozen)
}
