package figure

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"swardbook/agronomy"
	"swardbook/cmd/swardbook/flag"
)

// asked are the flags of a figure as they are read; the first that cannot be
// read is kept.
type asked struct {
	fs   *flag.Set
	args []string
	err  error
	read map[string]bool
}

func (q *asked) given(flag string) bool {
	q.read[flag] = true
	return q.fs.Changed(flag)
}

func (q *asked) text(flag string) string {
	q.read[flag] = true
	v, _ := q.fs.GetString(flag)
	return v
}

func (q *asked) yes(flag string) bool {
	q.read[flag] = true
	v, _ := q.fs.GetBool(flag)
	return v
}

// idle notes that a flag was given which has no part in the answer.
func (q *asked) idle() (err error) {
	q.fs.Visit(func(f *flag.Flag) {
		if err == nil && !q.read[f.Name] {
			err = fmt.Errorf("--%s has no part in this answer; leave it out", f.Name)
		}
	})
	return err
}

// wrong notes what is wrong with a flag.
func (q *asked) wrong(flag string, err error) {
	if q.err == nil {
		q.err = fmt.Errorf("--%s: %w", flag, err)
	}
}

// need asks for a flag that has no default.
func (q *asked) need(flags ...string) {
	for _, f := range flags {
		if !q.given(f) && q.err == nil {
			q.err = fmt.Errorf("--%s is missing", f)
		}
	}
}

// quantityOf reads a flag with a unit; a flag that was not given is 0.
func quantityOf[T any](q *asked, flag string, parse func(string) (T, error)) (v T) {
	if !q.given(flag) {
		return v
	}
	v, err := parse(q.text(flag))
	if err != nil {
		q.wrong(flag, err)
	}
	return v
}

// rate reads a rate; a plain number is lb per 1,000 sq ft.
func (q *asked) rate(flag string) agronomy.PerThousand {
	return quantityOf(q, flag, func(t string) (agronomy.PerThousand, error) {
		if _, err := strconv.ParseFloat(t, 64); err == nil {
			t += " lb/1000 sq ft"
		}
		return agronomy.ParseRate(t)
	})
}

// number reads a plain number from low to high; a flag that was not given is 0.
func (q *asked) number(flag string, low, high float64) float64 {
	if !q.given(flag) {
		return 0
	}
	v, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(q.text(flag), "%")), 64)
	if err != nil || !(v >= low && v <= high) {
		q.wrong(flag, fmt.Errorf("%q is not a number from %g to %g", q.text(flag), low, high))
	}
	return v
}

// oneOf reads a word; a flag that was not given is "".
func oneOf[T ~string](q *asked, flag string, words ...T) T {
	v := T(strings.ToLower(q.text(flag)))
	if q.given(flag) && !slices.Contains(words, v) {
		near := agronomy.NearestName(string(v), plain(words))
		if near == "" {
			near = strings.Join(plain(words), ", ")
		}
		q.wrong(flag, fmt.Errorf("unknown %q; known: %s", q.text(flag), near))
	}
	return v
}

func plain[T ~string](words []T) []string {
	out := make([]string, len(words))
	for i, w := range words {
		out[i] = string(w)
	}
	return out
}

// texts defines text flags.
func texts(fs *flag.Set, names ...string) {
	for _, n := range names {
		fs.String(n, "", "")
	}
}
