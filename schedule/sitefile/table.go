package sitefile

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"swardbook/agronomy"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// table is one table of the site file, together with the reader that collects
// what is wrong in it. A value that is absent, or was refused before, reads as
// zero.
type table struct {
	*reader
	path   string
	values map[string]any
}

// given tells whether the file has the key, whatever its value.
func (t table) given(name string) bool { _, ok := t.values[name]; return ok }

// under gives the table below a key; an empty one if there is none.
func (t table) under(name string) table {
	v, _ := t.values[name].(map[string]any)
	return table{t.reader, join(t.path, name), v}
}

// names gives the keys of the table in the order of the file.
func (t table) names() []string { return t.inOrder(t.values, t.path) }

// wrong reports a problem at a key.
func (t table) wrong(name, message, hint string) {
	t.report(schedule.Problem{Key: t.at(name), Message: message, Hint: hint})
}

// doubt reports a suspicious value at a key: a warning.
func (t table) doubt(name, message, hint string) {
	t.report(schedule.Problem{Key: t.at(name), Message: message, Hint: hint, Warning: true})
}

func (t table) at(name string) string {
	if name == "" {
		return t.path
	}
	return join(t.path, name)
}

// refuse reports what a parser said about the value at a key.
func (t table) refuse(name string, err error) {
	if e, ok := errors.AsType[*agronomy.QuantityError](err); ok {
		t.wrong(name, fmt.Sprintf("%q: %s", e.Text, e.Problem), e.Hint)
		return
	}
	message, hint, _ := strings.Cut(err.Error(), "; ")
	t.wrong(name, message, hint)
}

// need reports a key that is missing from a table that the file has.
func (t table) need(name, hint string) {
	if t.values != nil && !t.given(name) {
		t.wrong(name, "is missing", hint)
	}
}

func (t table) text(name string) string {
	s, _ := t.values[name].(string)
	return strings.TrimSpace(s)
}

func (t table) flag(name string) bool { b, _ := t.values[name].(bool); return b }

func (t table) texts(name string) []string {
	list, _ := t.values[name].([]any)
	var out []string
	for _, v := range list {
		if s, ok := v.(string); ok {
			out = append(out, strings.TrimSpace(s))
		}
	}
	return out
}

// number reads a plain number from low to high.
func (t table) number(name string, low, high float64) float64 {
	var x float64
	switch v := t.values[name].(type) {
	case int64:
		x = float64(v)
	case float64:
		x = v
	default:
		return 0
	}
	if x >= low && x <= high {
		return x
	}
	hint := "give a value from " + written(low) + " to " + written(high)
	for _, shift := range []float64{10, 100} {
		if x > high && x/shift >= low && x/shift <= high {
			hint = "did you mean " + written(x/shift) + "? " + hint
			break
		}
	}
	t.wrong(name, written(x)+" is outside "+written(low)+" to "+written(high), hint)
	return 0
}

// written gives a number as people write it, or in scientific notation if it is huge.
func written(x float64) string {
	if math.Abs(x) >= 1e9 {
		return fmt.Sprintf("%.6g", x)
	}
	return word.Number(x, 6)
}

// Years believed in a date. [common]
const firstYear, lastYear = 1990, 2100

func (t table) date(name string) schedule.Date {
	var d schedule.Date
	switch v := t.values[name].(type) {
	case time.Time:
		d = schedule.Date{Year: v.Year(), Month: v.Month(), Day: v.Day()}
	case string:
		d, _ = schedule.ParseDate(v) // check has found that it is a day
	default:
		return d
	}
	if d.Year < firstYear || d.Year > lastYear {
		t.wrong(name, fmt.Sprintf("the year %d is not believable", d.Year), fmt.Sprintf("give a day from %d to %d", firstYear, lastYear))
		return schedule.Date{}
	}
	return d
}

// quantity reads a text with the parser of its kind of quantity.
func quantity[Q any](t table, name string, parse func(string) (Q, error)) Q {
	var none Q
	s := t.text(name)
	if s == "" {
		return none
	}
	q, err := parse(s)
	if err != nil {
		t.refuse(name, err)
		return none
	}
	return q
}

// choice reads a word that must be one of those known; "" when not given.
func choice[W ~string](t table, name string, known ...W) W {
	s := W(strings.ToLower(t.text(name)))
	if s == "" || slices.Contains(known, s) {
		return s
	}
	t.wrong(name, fmt.Sprintf("unknown value %q", t.text(name)), "known: "+list(known))
	return ""
}

func list[W ~string](words []W) string {
	var out []string
	for _, w := range words {
		out = append(out, string(w))
	}
	return strings.Join(out, ", ")
}

// suggest is a hint for a word that is not known: the nearest that is, or all
// of them.
func suggest(got string, known []string) string {
	near := agronomy.NearestName(got, known)
	switch {
	case near == "":
		return "known: " + strings.Join(known, ", ")
	case strings.Contains(near, ", "):
		return "known: " + near
	}
	return "did you mean " + near + "?"
}

// isID says what is wrong with a name that goes into ids, "" for nothing.
func isID(s string) (message, hint string) {
	hint = "use up to 40 letters, digits and hyphens"
	if s == "" || len(s) > 40 {
		return fmt.Sprintf("the id %q has %d letters", s, len(s)), hint
	}
	for i := range len(s) {
		if c := s[i]; !isBare(c) || c == '_' {
			return fmt.Sprintf("%q cannot be an id", s), hint
		}
	}
	return "", ""
}
