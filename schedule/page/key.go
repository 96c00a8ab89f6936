package page

import "html/template"

// keyMark explains one mark of a drawing.
type keyMark struct {
	SVG  template.HTML
	Text string
}

const (
	fromHere = `<svg viewBox="0 0 16 16" aria-hidden="true">`
	fromWide = `<svg class="two" viewBox="0 0 28 16" aria-hidden="true">`
)

var keyMarks = []struct {
	of   marks
	text string
	svg  string
}{
	{due, "due or next", fromHere + `<path class="due" d="M3 3H13V13H3Z"/></svg>`},
	{chosen, "chosen day", fromHere + `<path class="mark" d="M4.5 4.5H11.5V11.5H4.5Z"/></svg>`},
	{taken, "past, taken as done", fromHere + `<path class="taken" d="M4.5 4.5H11.5V11.5H4.5Z"/></svg>`},
	{done, "done", fromHere + `<path class="done" d="M4 8a4 4 0 1 0 8 0a4 4 0 1 0-8 0Z"/></svg>`},
	{missed, "missed", fromHere + `<path class="cross" d="M4.5 4.5l7 7m0-7l-7 7"/></svg>`},
	{fenced, "window, to its last safe day", fromWide + `<path class="win" d="M1 5v6M1 8H26"/><path class="stop" d="M26 3v10"/></svg>`},
	{bare, "window", fromWide + `<path class="win" d="M1 5v6M1 8H27"/></svg>`},
}

// key explains the marks that a drawing uses, and no others.
func key(used marks, secondGrowth, freezes bool) []keyMark {
	var out []keyMark
	for _, k := range keyMarks {
		if used&k.of != 0 {
			out = append(out, keyMark{template.HTML(k.svg), k.text})
		}
	}
	if freezes {
		out = append(out, keyMark{fromWide + `<path class="ink" d="M2 5v6M26 5v6M2 8H26"/><path class="thick" d="M13 4v8"/></svg>`, "freezes: middle, 8 years in 10"})
	}
	if secondGrowth {
		out = append(out, keyMark{fromWide + `<path class="growth2" d="M1 13C8 13 9 3 14 3S20 13 27 13"/></svg>`, "growth of the warm-season grass"})
	}
	return out
}
