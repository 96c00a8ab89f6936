package climate

import (
	"fmt"
	"strconv"
	"strings"
)

// Zone is a half-zone of the USDA plant hardiness map, 1a to 13b: a band of
// 5 °F of the average yearly lowest temperature.
type Zone int

// The coldest and the warmest half-zone of the map.
const (
	Zone1a  Zone = 0
	Zone13b Zone = 25
)

// ParseZone reads a half-zone such as "6a"; letters may be capitals. The error
// says what is missing or which zones there are.
func ParseZone(s string) (Zone, error) {
	t := strings.ToLower(strings.TrimSpace(s))
	digits := strings.TrimRight(t, "ab")
	n, err := strconv.Atoi(digits)
	if err != nil || digits == "" || digits[0] == '+' || digits[0] == '-' || digits[0] == '0' || len(t)-len(digits) > 1 {
		return 0, fmt.Errorf("hardiness zone %q is not a half-zone; write one such as 6a, from 1a to 13b", s)
	}
	if n < 1 || n > 13 {
		return 0, fmt.Errorf("hardiness zone %q is off the map; zones go from 1a to 13b", s)
	}
	if len(t) == len(digits) {
		return 0, fmt.Errorf("hardiness zone %q lacks its half; write %da for the colder or %db for the warmer half", s, n, n)
	}
	return Zone(2*(n-1) + int(t[len(t)-1]-'a')), nil
}

// String writes the half-zone as the map does: "6a".
func (z Zone) String() string { return strconv.Itoa(int(z)/2+1) + string("ab"[int(z)%2]) }

// Bounds returns the lower and upper bound of the zone: the average of the
// lowest temperature of each year lies between them.
func (z Zone) Bounds() (lowest, highest Fahrenheit) {
	lowest = -60 + 5*Fahrenheit(z) // [usda-zones] 1a is -60 to -55 °F, 5 °F a half-zone
	return lowest, lowest + 5
}

// middle is the middle of the band in units of 10 °F, the z of [model] section 3.
func (z Zone) middle() float64 {
	lowest, _ := z.Bounds()
	return float64(lowest+2.5) / 10
}
