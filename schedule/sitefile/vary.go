package sitefile

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/BurntSushi/toml"

	"swardbook/agronomy"
	"swardbook/schedule"
)

// With gives the text of a site file with one key set to another value, and
// the key's whole path. The key may be shortened to its last parts where only
// one key of the file ends so: "hardiness" for place.hardiness. The value is
// as a person writes it, without quotes. A key that the file does not hold yet
// must be given in full.
//
// What the new file says is not checked: [Load] does that.
func With(text []byte, key, value string) (changed []byte, path string, err error) {
	s := string(withoutMark(text))
	path, err = resolve(s, key)
	if err != nil {
		return nil, "", err
	}
	n := nodeAt(path)
	if n == nil || n.takes&^asTable == 0 && n.example == "" {
		return nil, "", unknownKey(key)
	}
	literal, err := literal(n, value)
	if err != nil {
		return nil, "", fmt.Errorf("%s: %w", path, err)
	}
	table, name := "", path
	if i := lastDot(path); i >= 0 {
		table, name = path[:i], path[i+1:]
	}
	l := &lines{text: s, line: 1, spots: map[string]spot{}, want: path, table: table}
	l.scan()
	line := name + " = " + literal + "\n"
	switch {
	case l.to > 0:
		return []byte(s[:l.from] + literal + s[l.to:]), path, nil
	case table == "":
		return []byte(line + s), path, nil
	case l.head > 0:
		if l.head < len(s) {
			return []byte(s[:l.head] + "\n" + strings.TrimSuffix(line, "\n") + s[l.head:]), path, nil
		}
		return []byte(s + "\n" + line), path, nil
	}
	return []byte(strings.TrimRight(s, "\n") + "\n\n[" + table + "]\n" + line), path, nil
}

// Without gives the text of a site file without one key, named by its whole
// path; the text as it is if the key does not stand on a line of its own.
func Without(text []byte, path string) []byte {
	s := string(text)
	l := &lines{text: s, line: 1, spots: map[string]spot{}, want: path}
	l.scan()
	from := strings.LastIndexByte(s[:l.from], '\n') + 1
	name, _, _ := strings.Cut(s[from:l.from], "=")
	if l.to == 0 || strings.TrimSpace(name) != path[lastDot(path)+1:] {
		return text
	}
	to := len(s)
	if n := strings.IndexByte(s[l.to:], '\n'); n >= 0 {
		to = l.to + n + 1
	}
	return []byte(s[:from] + s[to:])
}

// Beside lists the other keys that a site file gives in the table of the key at path, in
// the order of the file.
func Beside(text []byte, path string) []string {
	table := path[:max(lastDot(path), 0)]
	spots := scan(string(text)).spots
	var out []string
	for other := range spots {
		if at := lastDot(other); other != path && at >= 0 && other[:at] == table {
			out = append(out, other)
		}
	}
	slices.SortFunc(out, func(a, b string) int { return spots[a].order - spots[b].order })
	return out
}

// quotedName finds a name that stands in quotes without needing them.
var quotedName = regexp.MustCompile(`"([A-Za-z0-9_-]+)"`)

// resolve finds the one key that a short name means.
func resolve(text, key string) (string, error) {
	key = quotedName.ReplaceAllString(key, "$1")
	spots := scan(text).spots
	if _, ok := spots[key]; ok {
		return key, nil
	}
	var fit []string
	for path := range spots {
		if strings.HasSuffix(path, "."+key) {
			fit = append(fit, path)
		}
	}
	slices.Sort(fit)
	switch {
	case len(fit) == 1:
		return fit[0], nil
	case len(fit) > 1:
		return "", fmt.Errorf("%q fits several keys: %s", key, strings.Join(fit, ", "))
	case nodeAt(key) == nil:
		return "", unknownKey(key)
	}
	return key, nil
}

func unknownKey(key string) error {
	if near := agronomy.NearestName(key, Keys()); near != "" {
		return fmt.Errorf("unknown key %q; near it: %s", key, near)
	}
	return fmt.Errorf("unknown key %q; write it in full, like place.hardiness or area.NAME.soil.ph", key)
}

// nodeAt finds a key in the list of keys by its path.
func nodeAt(path string) *node {
	n := tree()
	for path != "" {
		name := path
		if i := firstDot(path); i >= 0 {
			name, path = path[:i], path[i+1:]
		} else {
			path = ""
		}
		if n = n.under(name); n == nil {
			return nil
		}
	}
	return n
}

// literal writes a value as TOML, in the type that its key takes.
func literal(n *node, value string) (string, error) {
	value = strings.TrimSpace(value)
	if message, _ := oneLine(value); message != "" || value == "" {
		return "", fmt.Errorf("%q is no value", value)
	}
	switch {
	case n.takes&asDate != 0:
		d, err := schedule.ParseDate(value)
		return d.String(), err
	case n.takes&asFlag != 0:
		if value != "true" && value != "false" {
			return "", fmt.Errorf("%q is neither true nor false", value)
		}
		return value, nil
	case n.takes&(asNumber|asWhole) != 0 && n.takes&(asText|asQuantity) == 0:
		v, err := strconv.ParseFloat(value, 64)
		switch message, _ := finite(v); {
		case err != nil || message != "" || strings.ContainsAny(value, "_xXpP"):
			return "", fmt.Errorf("%q is not a number; write it like 7.4", value)
		case n.takes&asNumber == 0 && v != math.Trunc(v):
			return "", fmt.Errorf("%q is not a whole number", value)
		}
		return strconv.FormatFloat(v, 'f', -1, 64), nil
	case value[0] == '[' || value[0] == '{', n.takes&(asText|asQuantity) == 0:
		if _, err := toml.Decode("x = "+value+"\n", &struct{ X any }{}); err != nil {
			return "", fmt.Errorf("%q cannot be read; %s", value, asWritten(n))
		}
		return value, nil
	}
	return strconv.Quote(value), nil
}

// asWritten says how the value of a list or a table is written.
func asWritten(n *node) string {
	if n.takes&asTable != 0 {
		return `a table is written in braces, like { method = "smp", ph = 6.4 }, and text in double quotes`
	}
	return `a list is written in brackets, like ["sat", "wed"], and text in double quotes`
}

// firstDot and lastDot find the dots between the parts of a path, passing over
// those in quotes.
func firstDot(path string) int {
	quoted := false
	for i := range len(path) {
		switch {
		case path[i] == '"':
			quoted = !quoted
		case path[i] == '.' && !quoted:
			return i
		}
	}
	return -1
}

func lastDot(path string) int {
	last, at := -1, 0
	for {
		i := firstDot(path[at:])
		if i < 0 {
			return last
		}
		last = at + i
		at = last + 1
	}
}
