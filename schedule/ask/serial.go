package ask

import (
	"fmt"
	"slices"
	"strings"
	"sync"
	"unicode/utf8"

	"swardbook/schedule/sitefile"
)

// How answers stand in a code before they are deflated: a mark for the key, then the
// value up to the next mark. Marks begin with a control character, which no value holds.
// A name in a key (of an area, a material, a line of the record book) is the same as in
// the answer before, unless it stands before the mark, after a nameMark.
const (
	nameMark  = 0x1f
	pages     = 3
	firstPage = nameMark - pages // keys below this number have a mark of one byte
	pageSize  = 0x7f - ' '
)

func mark(number int) []byte {
	if number < firstPage {
		return []byte{byte(number)}
	}
	number -= firstPage
	return []byte{byte(firstPage + number/pageSize), byte(' ' + number%pageSize)}
}

// patterns are the keys of the table by their parts.
var patterns = sync.OnceValue(func() [][]string {
	out := make([][]string, len(table))
	for i, key := range table {
		out[i] = strings.Split(key, ".")
	}
	return out
})

// numberOf finds the number of a key, -1 if no address carries it, and the names in it.
func numberOf(parts []string) (number int, names []string) {
	for i, pattern := range patterns() {
		names = names[:0]
		fits := len(pattern) == len(parts)
		for j := 0; fits && j < len(parts); j++ {
			if pattern[j] == "*" {
				names = append(names, parts[j])
			} else {
				fits = pattern[j] == parts[j]
			}
		}
		if fits {
			return i, names
		}
	}
	return -1, nil
}

// same counts the first names of a key that the key before it has in the same tables.
func same(a, b []string, aNames, bNames []string) int {
	n := 0
	for i := range min(len(a), len(b)) {
		switch {
		case a[i] != b[i]:
			return n
		case a[i] != "*":
		case aNames[n] != bNames[n]:
			return n
		default:
			n++
		}
	}
	return n
}

// serial gives the answers but the id in their one form, or says which of them no
// address carries.
func (a Answers) serial() ([]byte, error) {
	a = a.Tidy().Set("id", "")
	if err := a.few(); err != nil {
		return nil, err
	}
	for _, one := range a {
		if err := carried(one); err != nil {
			return nil, err
		}
	}
	return pack(nil, a)
}

// pack adds answers to a serial.
func pack(out []byte, a []Answer) ([]byte, error) {
	var before, beforeNames []string
	for _, one := range a {
		parts, _ := sitefile.SplitPath(one.Key)
		number, names := numberOf(parts)
		if number < 0 {
			return nil, fmt.Errorf("%s: an address does not carry this key", one.Key)
		}
		pattern := patterns()[number]
		for _, name := range names[same(before, pattern, beforeNames, names):] {
			out = append(append(out, nameMark), name...)
		}
		out = append(append(out, mark(number)...), one.Value...)
		before, beforeNames = pattern, names
	}
	return out, nil
}

// few refuses more answers than are planned quickly.
func (a Answers) few() error {
	for _, l := range []struct {
		what       string
		have, most int
	}{{"answers", len(a), maxAnswers}, {"areas", len(a.Names("area")), maxAreas}, {"lines of the record book", len(a.Names("record")), maxLines}} {
		if l.have > l.most {
			return fmt.Errorf("%d %s are more than the %d that an address carries: keep a site file", l.have, l.what, l.most)
		}
	}
	return nil
}

// parse takes a serial apart.
func parse(plain []byte) (Answers, error) {
	if !utf8.Valid(plain) {
		return nil, errCode
	}
	var out Answers
	var before, beforeNames, names []string
	for at := 0; at < len(plain); {
		c := plain[at]
		number := int(c)
		at++
		if c >= firstPage && c < nameMark {
			if at == len(plain) || plain[at] < ' ' || plain[at] > '~' {
				return nil, errCode
			}
			number = firstPage + int(c-firstPage)*pageSize + int(plain[at]-' ')
			at++
		}
		end := at
		for end < len(plain) && plain[end] > nameMark {
			end++
		}
		text := string(plain[at:end])
		at = end
		if c == nameMark {
			names = append(names, text)
			continue
		}
		if c > nameMark || number >= len(table) || len(out) == maxAnswers {
			return nil, errCode
		}
		pattern := patterns()[number]
		all, ok := inherit(before, pattern, beforeNames, names)
		if !ok {
			return nil, errCode
		}
		parts := slices.Clone(pattern)
		for i, n := 0, 0; i < len(parts); i++ {
			if parts[i] == "*" {
				parts[i] = all[n]
				n++
			}
		}
		out = append(out, Answer{Key: sitefile.JoinPath(parts...), Value: text})
		before, beforeNames, names = pattern, all, nil
	}
	if len(names) > 0 {
		return nil, errCode
	}
	return out, nil
}

// inherit gives all the names of a key of which the last are given.
func inherit(before, pattern, beforeNames, given []string) (all []string, ok bool) {
	stars := 0
	for _, part := range pattern {
		if part == "*" {
			stars++
		}
	}
	old := stars - len(given)
	if old < 0 || old > same(before, pattern, beforeNames, beforeNames) {
		return nil, false
	}
	return append(slices.Clone(beforeNames[:old]), given...), true
}
