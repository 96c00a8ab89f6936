package schedule

import (
	"cmp"
	"fmt"
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
