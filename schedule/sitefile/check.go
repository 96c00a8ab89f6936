package sitefile

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"
	"unicode"

	"swardbook/schedule"
)

// refused takes the place of a value that was reported as wrong: its key counts as given,
// and nothing reads the value.
type refused struct{}

// check compares the keys and the types of a table's values with the list of
// keys, and puts refused in the place of what does not fit.
func (r *reader) check(values map[string]any, n *node, path string) {
	for _, name := range r.inOrder(values, path) {
		at := join(path, name)
		below := n.under(name)
		if below == nil {
			r.unknown(at, name, path, n)
			continue
		}
		if message, hint := fits(values[name], below, at); message != "" {
			r.report(schedule.Problem{Key: at, Message: message, Hint: hint})
			values[name] = refused{}
		} else if sub, ok := values[name].(map[string]any); ok {
			r.check(sub, below, at)
		}
	}
}

// inOrder gives the names in a table in the order of the file.
func (r *reader) inOrder(values map[string]any, path string) []string {
	type placed struct {
		name  string
		order int
	}
	all := make([]placed, 0, len(values))
	for name := range values {
		all = append(all, placed{name, r.spot(join(path, name)).order})
	}
	slices.SortFunc(all, func(a, b placed) int { return cmp.Or(cmp.Compare(a.order, b.order), cmp.Compare(a.name, b.name)) })
	names := make([]string, len(all))
	for i, p := range all {
		names[i] = p.name
	}
	return names
}

// unknown reports a key that is not in the list, with the nearest that is, or
// with the table where a key of that name belongs.
func (r *reader) unknown(at, name, path string, n *node) {
	where := "here"
	if path != "" {
		where = "in [" + path + "]"
	}
	p := schedule.Problem{Key: at, Message: "unknown key " + where}
	var homes []string
	for _, k := range allKeys() {
		if before, found := strings.CutSuffix(k.pattern, "."+name); found {
			homes = append(homes, "["+strings.ReplaceAll(before, "*", "NAME")+"]")
		} else if k.pattern == name {
			homes = append(homes, "the head of the file, before any table")
		}
	}
	switch {
	case len(homes) > 0:
		p.Hint = "this key belongs in " + strings.Join(homes, " or ")
	case len(n.names) == 0:
		p.Hint = "nothing stands below " + path
	default:
		p.Hint = suggest(name, n.names)
	}
	r.report(p)
}

// fits says what is wrong with a value at a key, "" for nothing.
func fits(value any, n *node, at string) (message, hint string) {
	switch v := value.(type) {
	case map[string]any:
		if n.takes&asTable != 0 {
			return "", ""
		}
		return wants(n, "is a table")
	case []map[string]any:
		if n.takes&asTable != 0 {
			hint = fmt.Sprintf("write [%s] instead of [[%s]]", at, at)
			if n.below["*"] != nil {
				hint = fmt.Sprintf("write [%s.NAME] with a name of your own instead of [[%s]]", at, at)
			}
			return "double brackets make a list, and tables here have names", hint
		}
		return wants(n, "is a list of tables")
	case string:
		if n.takes&(asText|asQuantity) != 0 {
			return oneLine(v)
		}
		if _, err := schedule.ParseDate(v); n.takes&asDate != 0 && err == nil {
			return "", ""
		}
		return wants(n, "is text")
	case int64:
		if n.takes&(asNumber|asWhole) != 0 {
			return "", ""
		}
		return wants(n, "is a plain number")
	case float64:
		if n.takes&asNumber != 0 {
			return finite(v)
		}
		return wants(n, "is a plain number")
	case bool:
		if n.takes&asFlag != 0 {
			return "", ""
		}
		return wants(n, "is true or false")
	case time.Time:
		if n.takes&asDate != 0 {
			if v.Location().String() != "date-local" {
				return "a day alone is wanted, without a time of day", "write it as 2026-09-12"
			}
			return "", ""
		}
		return wants(n, "is a day")
	case []any:
		return fitsList(v, n)
	}
	return wants(n, "has a type that is not known here")
}

func fitsList(list []any, n *node) (message, hint string) {
	if n.takes&(asTexts|asMonths) == 0 {
		return wants(n, "is a list")
	}
	if len(list) > 100 {
		return fmt.Sprintf("a list of %d is too long", len(list)), "at most 100"
	}
	for i, v := range list {
		switch v := v.(type) {
		case string:
			if n.takes&asTexts == 0 {
				return wants(n, fmt.Sprintf("has text as value %d", i+1))
			}
			if message, hint = oneLine(v); message != "" {
				return fmt.Sprintf("value %d: %s", i+1, message), hint
			}
		case int64, float64:
			if n.takes&asMonths == 0 {
				return wants(n, fmt.Sprintf("has a plain number as value %d", i+1))
			}
			if f, ok := v.(float64); ok {
				if message, hint = finite(f); message != "" {
					return fmt.Sprintf("value %d: %s", i+1, message), hint
				}
			}
		default:
			return wants(n, fmt.Sprintf("has a wrong type as value %d", i+1))
		}
	}
	return "", ""
}

// wants says that a value has the wrong type: what it is, what is wanted, an example.
func wants(n *node, is string) (message, hint string) {
	var kinds []string
	for _, s := range []struct {
		shape
		words string
	}{{asTable, "a table"}, {asText, "text in quotes"}, {asQuantity, "a number with its unit in quotes"}, {asNumber, "a plain number"}, {asWhole, "a whole number"},
		{asFlag, "true or false"}, {asDate, "a day"}, {asTexts, "a list of texts in brackets"}, {asMonths, "a list of twelve numbers in brackets"}} {
		if n.takes&s.shape != 0 {
			kinds = append(kinds, s.words)
		}
	}
	message = is + " where " + strings.Join(kinds, " or ") + " is wanted"
	name := n.pattern[strings.LastIndexByte(n.pattern, '.')+1:]
	switch {
	case n.example == "":
		hint = "begin the table with its name in brackets, as in [" + strings.ReplaceAll(n.pattern, "*", "NAME") + "]"
	case name == "*":
		hint = "like " + n.example
	default:
		hint = "like " + name + " = " + n.example
	}
	return message, hint
}

// oneLine says what is wrong with a text of one line.
func oneLine(s string) (message, hint string) {
	if strings.TrimSpace(s) == "" {
		return "is empty", "give a value, or remove the key"
	}
	count := 0
	for _, c := range s {
		count++
		if unicode.Is(unicode.Bidi_Control, c) {
			return fmt.Sprintf("holds the invisible character U+%04X, which turns the direction of the text", c), "type the text anew; it came with a copy"
		}
		if Unsightly(c) {
			return "holds a line break or another control character", "keep the text on one line, without tabs"
		}
	}
	if count > maxText {
		return fmt.Sprintf("is %d characters long", count), fmt.Sprintf("keep it to %d", maxText)
	}
	return "", ""
}

func finite(v float64) (message, hint string) {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "is not a finite number", "write a plain number such as 7.4"
	}
	return "", ""
}
