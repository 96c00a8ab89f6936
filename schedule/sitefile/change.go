package sitefile

import (
	"bytes"
	"fmt"
	"maps"
	"slices"
	"strings"
)

// Change gives the text of a site file with some values changed, and leaves all the rest
// of it as it is: comments, order, and every value that stays. before holds the values
// that the text has ([Pairs]), after those that it is to have. The error names a key that
// is written in a form which must be changed by hand.
func Change(text []byte, before, after []Pair) ([]byte, error) {
	was, now := valuesOf(before), valuesOf(after)
	e := &editor{text: string(withoutMark(text))}
	for _, p := range before {
		if _, stays := now[p.Key]; !stays {
			e.remove(p.Key)
		}
	}
	for _, p := range before {
		for table := parentOf(p.Key); table != ""; table = parentOf(table) {
			e.closeUp(table, now)
		}
	}
	for _, p := range after {
		if old, there := was[p.Key]; !there || old != p.Value {
			e.set(p.Key, p.Value)
		}
	}
	written, problems := Pairs("", []byte(e.text))
	if got := valuesOf(written); len(problems) > 0 || !maps.Equal(got, now) {
		for _, p := range slices.Concat(after, written) {
			if got[p.Key] != now[p.Key] {
				return nil, fmt.Errorf("%s stands in the file in a form that is better changed by hand", p.Key)
			}
		}
		return nil, fmt.Errorf("the file is written in a form that is better changed by hand")
	}
	return []byte(e.text), nil
}

func valuesOf(pairs []Pair) map[string]string {
	out := map[string]string{}
	for _, p := range pairs {
		out[p.Key] = p.Value
	}
	return out
}

func parentOf(path string) string { return path[:max(lastDot(path), 0)] }

// editor changes the text of a site file key by key.
type editor struct{ text string }

// find gives the bytes of a key's value; to is 0 if it stands nowhere.
func (e *editor) find(path string) (from, to int) {
	l := &lines{text: e.text, line: 1, spots: map[string]spot{}, want: path}
	l.scan()
	return l.from, l.to
}

// lineOf gives the line that holds a byte, with its end.
func (e *editor) lineOf(at int) (from, to int) {
	from = strings.LastIndexByte(e.text[:at], '\n') + 1
	if n := strings.IndexByte(e.text[at:], '\n'); n >= 0 {
		return from, at + n + 1
	}
	return from, len(e.text)
}

// remove takes a key away: with its line, or out of the braces in which it stands, or
// together with the braces if it is the only key in them.
func (e *editor) remove(path string) {
	from, to := e.find(path)
	if to == 0 {
		return
	}
	start := strings.LastIndexAny(e.text[:from], "{,\n") + 1
	if start == 0 || e.text[start-1] == '\n' {
		_, end := e.lineOf(to)
		e.text = e.text[:start] + e.text[end:]
		return
	}
	end := to + len(e.text[to:]) - len(strings.TrimLeft(e.text[to:], " \t"))
	switch {
	case e.text[start-1] == ',':
		e.text = e.text[:start-1] + e.text[to:]
	case end < len(e.text) && e.text[end] == ',':
		e.text = e.text[:start] + e.text[end+1:]
	default:
		e.remove(parentOf(path))
	}
}

// closeUp takes away the header of a table of which nothing is left.
func (e *editor) closeUp(table string, now map[string]string) {
	for key := range now {
		if strings.HasPrefix(key, table+".") {
			return
		}
	}
	l := &lines{text: e.text, line: 1, spots: map[string]spot{}, want: table + ".x", table: table}
	if l.scan(); l.head > 0 {
		from, to := e.lineOf(max(l.head-1, 0))
		e.text = e.text[:from] + e.text[to:]
	}
}

// set gives a key its value: it replaces the value that the key has, else adds the key at
// the end of its table, else adds a new table at the end of the file.
func (e *editor) set(path, value string) {
	literal := quoted(value)
	if n := nodeAt(path); n != nil {
		literal = n.literal(value)
	}
	if from, to := e.find(path); to > 0 {
		e.text = e.text[:from] + literal + e.text[to:]
		return
	}
	table, name := parentOf(path), path[lastDot(path)+1:]
	for ; table != ""; table, name = parentOf(table), table[lastDot(table)+1:]+"."+name {
		if from, to := e.find(table); to > 0 && e.text[from] == '{' { // the table stands in braces on one line
			inside := strings.TrimRight(e.text[from:to-1], " \t")
			if inside != "{" {
				inside += ","
			}
			e.text = e.text[:from] + inside + " " + name + " = " + literal + " }" + e.text[to:]
			return
		}
		if at := e.endOf(table); at > 0 {
			e.insert(at, name+" = "+literal)
			return
		}
		if n := nodeAt(table); n == nil || n.example == "" && n.takes == asTable {
			break
		}
	}
	if table == "" {
		e.insert(e.endOf(""), name+" = "+literal)
		return
	}
	if e.text = strings.TrimRight(e.text, "\n"); e.text != "" {
		e.text += "\n\n"
	}
	e.text += "[" + table + "]\n" + name + " = " + literal + "\n"
}

// endOf gives the byte after the last key of a table, or after its header; 0 if it is not
// there.
func (e *editor) endOf(table string) int {
	l := &lines{text: e.text, line: 1, spots: map[string]spot{}, want: table + ".x", table: table}
	l.scan()
	return max(l.head, l.tail)
}

// insert puts a line into the text at a byte, where another line has ended.
func (e *editor) insert(at int, line string) {
	switch {
	case at == 0:
		e.text = line + "\n" + e.text
	case at < len(e.text):
		e.text = e.text[:at] + "\n" + line + e.text[at:]
	default:
		e.text = strings.TrimRight(e.text, "\n") + "\n" + line + "\n"
	}
}

// CellLines tells on which line of a record book each of its [Cells] begins.
func CellLines(text []byte) (at []int) {
	b := &book{order: shortColumns}
	b.take = func(line int, _ []string) { at = append(at, line) }
	b.open(bytes.Clone(text))
	return at
}
