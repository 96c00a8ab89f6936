package sitefile

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"swardbook/schedule"
)

// Pair is one key of a site file by its whole path, or one cell of a record book, and
// its value as a person types it: without quotes, a list with ", " between.
type Pair struct{ Key, Value string }

// comma stands between the values of a list in a Pair.
const comma = ", "

// Pairs gives the values of a site file one by one, in the order of the file, whether
// or not they make sense: that is for [Load] to say. [Compose] goes the other way. What
// no pair can hold, such as a table inside a list, comes back as a problem, and so
// does a text that is no site file at all.
func Pairs(name string, text []byte) ([]Pair, []schedule.Problem) {
	r := &reader{complaints: complaints{file: name}}
	values, ok := r.parse(withoutMark(text))
	if !ok {
		return nil, r.all()
	}
	out := r.pairs(nil, values, "")
	return out, r.all()
}

func (r *reader) pairs(out []Pair, values map[string]any, path string) []Pair {
	for _, name := range r.inOrder(values, path) {
		at := join(path, name)
		if sub, ok := values[name].(map[string]any); ok {
			out = r.pairs(out, sub, at)
			continue
		}
		value, ok := typed(values[name])
		switch {
		case !ok:
			r.report(schedule.Problem{Key: at, Message: "cannot be asked for as one line", Hint: "mend it in the file"})
		case value != "":
			out = append(out, Pair{at, value})
		}
	}
	return out
}

// typed gives a value as a person types it.
func typed(value any) (string, bool) {
	switch v := value.(type) {
	case string:
		return strings.TrimSpace(v), true
	case int64:
		return strconv.FormatInt(v, 10), true
	case float64:
		return strconv.FormatFloat(v, 'f', -1, 64), true
	case bool:
		return strconv.FormatBool(v), true
	case time.Time:
		if v.Location().String() == "date-local" {
			return v.Format(time.DateOnly), true
		}
		return v.Format(time.RFC3339), true
	case []any:
		var parts []string
		for _, one := range v {
			s, ok := typed(one)
			if _, nested := one.([]any); !ok || nested || s == "" || strings.Contains(s, ",") && strings.Contains(s+" ", comma) {
				return "", false
			}
			parts = append(parts, s)
		}
		return strings.Join(parts, comma), true
	}
	return "", false
}

// Compose writes a site file from pairs: in the order of the starter file, each value in
// the type of its key if it can be read as one, else as text in quotes, so that [Load]
// says what is wrong with it. Pairs without a value are passed over; those of a key
// that takes a list add up. What cannot stand in a file beside the others, such as
// a second value for one key, comes back as a problem.
func Compose(pairs []Pair) ([]byte, []schedule.Problem) {
	root := &branch{node: tree()}
	var wrong []schedule.Problem
	for _, p := range pairs {
		value := strings.ToValidUTF8(strings.TrimSpace(p.Value), "\ufffd")
		if value == "" {
			continue
		}
		parts, ok := SplitPath(p.Key)
		if !ok {
			wrong = append(wrong, schedule.Problem{Key: printable(p.Key), Message: "is no key of a site file", Hint: "keys look like place.zip or area.east.soil.ph"})
			continue
		}
		if message, hint := root.put(parts, value); message != "" {
			wrong = append(wrong, schedule.Problem{Key: p.Key, Message: message, Hint: hint})
		}
	}
	var b strings.Builder
	root.write(&b, "")
	return []byte(b.String()), wrong
}

// SplitPath splits a path at its dots, and removes the quotes around its parts.
func SplitPath(path string) (parts []string, ok bool) {
	if !utf8.ValidString(path) || len(path) > 400 {
		return nil, false
	}
	for more := true; more; {
		name := path
		at := firstDot(path)
		if more = at >= 0; more {
			name, path = path[:at], path[at+1:]
		}
		if strings.HasPrefix(name, `"`) {
			plain, err := strconv.Unquote(name)
			if err != nil {
				return nil, false
			}
			name = plain
		} else if name == "" || strings.ContainsFunc(name, func(c rune) bool { return c >= utf8.RuneSelf || !isBare(byte(c)) }) {
			return nil, false
		}
		if strings.ContainsFunc(name, Unsightly) {
			return nil, false
		}
		parts = append(parts, name)
	}
	return parts, len(parts) < maxDepth
}

// branch is a table or a value on its way into a file.
type branch struct {
	name  string
	node  *node // nil: a key that is not known
	value string
	below []*branch
}

func (b *branch) put(parts []string, value string) (message, hint string) {
	for i, name := range parts {
		if b.value != "" {
			return "stands below a key that has a value itself", "remove one of the two"
		}
		at := slices.IndexFunc(b.below, func(c *branch) bool { return c.name == name })
		if at < 0 {
			next := &branch{name: name}
			if b.node != nil {
				next.node = b.node.under(name)
			}
			b.below = append(b.below, next)
			at = len(b.below) - 1
		}
		if b = b.below[at]; i < len(parts)-1 {
			continue
		}
		switch list := b.node != nil && b.node.takes&(asTexts|asMonths) != 0; {
		case len(b.below) > 0:
			return "is a table with keys of its own", "remove one of the two"
		case b.value != "" && list:
			b.value += comma + value
		case b.value != "":
			return fmt.Sprintf("is given twice, as %q and as %q", b.value, value), "keep one of the two"
		default:
			b.value = value
		}
	}
	return "", ""
}

// inline tells whether a table is written in braces on the line of its key.
func (b *branch) inline() bool {
	return b.node != nil && (b.node.example != "" || b.node.takes != asTable)
}

// rank is the place of a name in the list of keys of its table. Names that the writer chose
// rank alike, and so keep the order in which they came.
func (b *branch) rank(name string) int {
	if b.node != nil {
		if i := slices.Index(b.node.names, name); i >= 0 {
			return i
		}
		return len(b.node.names)
	}
	return 0
}

func (b *branch) write(to *strings.Builder, path string) {
	slices.SortStableFunc(b.below, func(x, y *branch) int { return b.rank(x.name) - b.rank(y.name) })
	var tables []*branch
	begun := path == ""
	for _, c := range b.below {
		if c.value == "" && !c.inline() {
			tables = append(tables, c)
			continue
		}
		if !begun {
			fmt.Fprintf(to, "\n[%s]\n", path)
			begun = true
		}
		fmt.Fprintf(to, "%s = %s\n", join("", c.name), c.literal())
	}
	for _, c := range tables {
		c.write(to, join(path, c.name))
	}
}

// literal gives the value, or the table of values, as TOML.
func (b *branch) literal() string {
	if b.value != "" {
		if b.node == nil {
			return quoted(b.value)
		}
		return b.node.literal(b.value)
	}
	slices.SortStableFunc(b.below, func(x, y *branch) int { return b.rank(x.name) - b.rank(y.name) })
	var parts []string
	for _, c := range b.below {
		parts = append(parts, join("", c.name)+" = "+c.literal())
	}
	return "{ " + strings.Join(parts, comma) + " }"
}

// literal writes a value as TOML in a type that its key takes, or as text if it fits none.
func (n *node) literal(value string) string {
	plainText := n.takes&(asText|asQuantity) != 0
	switch {
	case n.takes&asMonths != 0 || n.takes&asTexts != 0 && (!plainText || strings.Contains(value, comma)):
		var parts []string
		sep := ","
		if plainText {
			sep = comma
		}
		for s := range strings.SplitSeq(value, sep) {
			s = strings.TrimSpace(s)
			if x, ok := number(s); ok && n.takes&asMonths != 0 {
				parts = append(parts, x)
			} else {
				parts = append(parts, quoted(s))
			}
		}
		return "[" + strings.Join(parts, comma) + "]"
	case plainText:
	case n.takes&asDate != 0:
		if d, err := schedule.ParseDate(value); err == nil {
			return d.String()
		}
	case n.takes&asFlag != 0 && (value == "true" || value == "false"):
		return value
	case n.takes&(asNumber|asWhole) != 0:
		if x, ok := number(value); ok {
			return x
		}
	}
	return quoted(value)
}

// number gives a plain number in its shortest exact form.
func number(s string) (string, bool) {
	v, err := strconv.ParseFloat(s, 64)
	if message, _ := finite(v); err != nil || message != "" || strings.ContainsAny(s, "_xXpP") {
		return "", false
	}
	text := strconv.FormatFloat(v, 'f', -1, 64)
	if text == "-0" {
		text = "0"
	}
	return text, len(text) <= 18 // a longer number makes no sense for a lawn, and may overflow
}

// quoted writes a text as TOML does on one line.
func quoted(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, c := range s {
		switch {
		case c == '"' || c == '\\':
			b.WriteRune('\\')
			b.WriteRune(c)
		case Unsightly(c):
			fmt.Fprintf(&b, `\u%04X`, c)
		default:
			b.WriteRune(c)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// JoinPath makes a path of names, in quotes where they need them.
func JoinPath(names ...string) (path string) {
	for _, name := range names {
		path = join(path, name)
	}
	return path
}
