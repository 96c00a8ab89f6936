package schedule

import (
	"cmp"
	"fmt"
	"runtime/debug"
	"slices"
	"strings"
)

// Problem is one thing wrong, or suspicious, in a file a person wrote.
type Problem struct {
	File    string
	Line    int    // 1-based; 0 when the file as a whole is meant
	Key     string // dotted key, or column name; may be empty
	Message string // lower case, no full stop
	Hint    string // the remedy; may be empty
	Warning bool   // suspicious, never fatal
}

// Error gives "file:line: key: message", marked when it is only a warning.
func (p Problem) Error() string {
	var b strings.Builder
	b.WriteString(p.File)
	if p.Line > 0 {
		fmt.Fprintf(&b, ":%d", p.Line)
	}
	b.WriteString(": ")
	if p.Warning {
		b.WriteString("warning: ")
	}
	if p.Key != "" {
		b.WriteString(p.Key + ": ")
	}
	b.WriteString(p.Message)
	return b.String()
}

// SortProblems puts problems in the order of the file and removes doubles.
func SortProblems(ps []Problem) []Problem {
	slices.SortStableFunc(ps, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Line, b.Line),
			cmp.Compare(a.Key, b.Key), cmp.Compare(a.Message, b.Message))
	})
	return slices.Compact(ps)
}

// Fatal tells whether any problem is more than a warning.
func Fatal(ps []Problem) bool {
	return slices.ContainsFunc(ps, func(p Problem) bool { return !p.Warning })
}

// Planner makes the program of a site; plan.Program is the one there is. Whoever
// plans many sites takes it as a value, so that a test can hand in a bad one.
type Planner func(site *Site, book []Done, last Date) (*Program, error)

// Fault is the error of a program that panicked. The fault is the program's
// own; the files only showed it.
type Fault struct {
	What  string // what the panic said
	Trace string // where
}

func (f *Fault) Error() string {
	return "swardbook has a fault that these files show, so they cannot be planned: " + f.What + "; please report it together with them"
}

// Guarded runs f, and makes a [Fault] of a panic in it, so that one site's
// panic ends the turn of that site and no other.
func Guarded(f func() error) (err error) {
	defer func() {
		if v := recover(); v != nil {
			err = &Fault{fmt.Sprint(v), string(debug.Stack())}
		}
	}()
	return f()
}
