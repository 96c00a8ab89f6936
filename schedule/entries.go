package schedule

import (
	"slices"
	"strconv"
	"strings"
)

// OwnIDs gives what is left out numbers of its own, after those of the jobs.
func (p *Program) OwnIDs() {
	if len(p.LeftOut) == 0 {
		return
	}
	taken, last := make(map[string]bool, len(p.Entries)+len(p.LeftOut)), map[string]int{}
	mark := func(id string) {
		taken[id] = true
		if i := strings.LastIndexByte(id, '-'); i >= 0 {
			n, _ := strconv.Atoi(id[i+1:])
			last[id[:i]] = max(last[id[:i]], n)
		}
	}
	for _, e := range p.Entries {
		mark(e.ID)
	}
	for i := range p.LeftOut {
		l := &p.LeftOut[i]
		if taken[l.ID] {
			of := l.ID[:strings.LastIndexByte(l.ID, '-')]
			l.ID = of + "-" + strconv.Itoa(last[of]+1)
		}
		mark(l.ID)
	}
}

// NextJobs tells each entry which job comes next in its area.
func (p *Program) NextJobs() {
	next := map[string]string{}
	for i := len(p.Entries) - 1; i >= 0; i-- {
		e := &p.Entries[i]
		if e.Area == "" {
			continue
		}
		e.Next = next[e.Area]
		if e.State == Planned {
			next[e.Area] = e.ID
		}
	}
}

// FirstText gives the first reason in words.
func FirstText(rs []Reason) string {
	if len(rs) == 0 {
		return "none fits"
	}
	return rs[0].Text
}

// Unique drops what is said twice.
func Unique(words []string) []string {
	var out []string
	for _, w := range words {
		if !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return out
}
