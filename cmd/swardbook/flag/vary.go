package flag

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"swardbook/schedule"
)

// mostValues is the most programs that one comparison makes.
const mostValues = 50

// ParseVary reads "KEY=A,B,C" or "KEY=FROM..TO/STEP".
func ParseVary(text string) (key string, values []string, err error) {
	key, list, found := strings.Cut(text, "=")
	key, list = strings.TrimSpace(key), strings.TrimSpace(list)
	if !found || key == "" || list == "" {
		return "", nil, fmt.Errorf("%q is not of the form KEY=A,B,C or KEY=FROM..TO/STEP", text)
	}
	from, rest, isRange := strings.Cut(list, "..")
	if isRange {
		to, step, stepped := strings.Cut(rest, "/")
		if !stepped {
			return "", nil, fmt.Errorf("a run of values needs its step, like %s..%s/0.5", from, to)
		}
		values, err = steps(strings.TrimSpace(from), strings.TrimSpace(to), strings.TrimSpace(step))
		return key, values, err
	}
	if list[0] == '[' || list[0] == '{' {
		return key, []string{list}, nil
	}
	for v := range strings.SplitSeq(list, ",") {
		if v = strings.TrimSpace(v); v == "" {
			return "", nil, fmt.Errorf("%q has an empty value", list)
		}
		values = append(values, v)
	}
	if len(values) > mostValues {
		return "", nil, fmt.Errorf("%d values are more than the %d that are compared", len(values), mostValues)
	}
	return key, values, nil
}

// steps gives the values of a run: of dates by days, or of numbers, with a
// unit after both ends or after the last.
func steps(from, to, step string) ([]string, error) {
	if a, err := schedule.ParseDate(from); err == nil {
		b, err := schedule.ParseDate(to)
		if err != nil {
			return nil, err
		}
		n, err := strconv.Atoi(strings.TrimSpace(strings.TrimSuffix(strings.TrimSuffix(step, "days"), "d")))
		if err != nil || n < 1 {
			return nil, fmt.Errorf("%q is no number of days", step)
		}
		if b.Before(a) || b.DaysFrom(a)/n >= mostValues {
			return nil, tooMany(from, to, step)
		}
		var out []string
		for d := a; !d.After(b); d = d.AddDays(n) {
			out = append(out, d.String())
		}
		return out, nil
	}
	a, _, err1 := split(from)
	b, unit, err2 := split(to)
	by, _, err3 := split(step)
	if err1 != nil || err2 != nil || err3 != nil {
		return nil, fmt.Errorf("%s..%s/%s: give numbers, or dates and a step in days", from, to, step)
	}
	n := math.Floor((b-a)/by + 1e-9)
	if !(by > 0) || !(n >= 0) || n >= mostValues {
		return nil, tooMany(from, to, step)
	}
	decimals := max(decimalsOf(from), decimalsOf(step))
	var out []string
	for i := range int(n) + 1 {
		out = append(out, strings.TrimSpace(strconv.FormatFloat(a+float64(i)*by, 'f', decimals, 64)+" "+unit))
	}
	return out, nil
}

func tooMany(from, to, step string) error {
	return fmt.Errorf("%s..%s/%s: the run must go up, in 1 to %d values", from, to, step, mostValues)
}

// split parts "2600 sq ft" into its number and its unit.
func split(s string) (float64, string, error) {
	end := 0
	for end < len(s) && (s[end] >= '0' && s[end] <= '9' || s[end] == '.' || s[end] == '-' && end == 0) {
		end++
	}
	v, err := strconv.ParseFloat(s[:end], 64)
	return v, strings.TrimSpace(s[end:]), err
}

func decimalsOf(s string) int {
	_, after, _ := strings.Cut(s, ".")
	n := 0
	for n < len(after) && after[n] >= '0' && after[n] <= '9' {
		n++
	}
	return n
}
