package page

import (
	"slices"
	"strings"

	"swardbook/schedule"
)

// workingsView is how the figures and days of one area came about.
type workingsView struct {
	Title string
	Parts []working
}

// working is the way to one figure or one day.
type working struct {
	Anchor, Title string
	Steps         []cited
	Also          string // another working of the area that belongs to it
	Window, Day   string
}

// workings gathers the way to every finding, need and job, area by area. A step that an
// earlier working of the area has is not repeated: the later working names the earlier
// one.
func workings(p *schedule.Program, cite *citations) []workingsView {
	var out []workingsView
	for _, a := range p.Areas {
		v := workingsView{Title: a.Name}
		said := map[schedule.Reason]string{}
		part := func(w working, why []schedule.Reason) {
			var also []string
			for _, r := range why {
				if r.Text == "" {
					continue
				}
				if in, ok := said[r]; ok {
					if in != w.Title && !slices.Contains(also, in) {
						also = append(also, in)
					}
					continue
				}
				said[r] = w.Title
				w.Steps = append(w.Steps, cited{r.Text, cite.refs(r.Source)})
			}
			w.Also = quoted(also)
			if len(w.Steps) > 0 || w.Also != "" || w.Day != "" {
				v.Parts = append(v.Parts, w)
			}
		}
		for _, f := range a.Findings {
			part(working{Anchor: anchor("found-", a.ID+"-"+f.Reading), Title: "Finding: " + readingWords(f.Reading)}, f.Why)
		}
		for _, n := range a.Needs {
			part(working{Anchor: anchor("need-", a.ID+"-"+n.Kind.String()), Title: "Need: " + n.Kind.Noun()}, n.Why)
		}
		for i := range p.Entries {
			if e := &p.Entries[i]; e.Area == a.ID {
				part(dayOf(p, e), e.Why)
			}
		}
		out = append(out, v)
	}
	whole := workingsView{Title: "The whole site"}
	for i := range p.Entries {
		e := &p.Entries[i]
		if slices.ContainsFunc(p.Areas, func(a schedule.AreaShown) bool { return a.ID == e.Area }) {
			continue
		}
		w := dayOf(p, e)
		w.Steps = cite.reasons(e.Why)
		whole.Parts = append(whole.Parts, w)
	}
	if len(whole.Parts) > 0 {
		out = append(out, whole)
	}
	return out
}

func dayOf(p *schedule.Program, e *schedule.Entry) working {
	return working{Anchor: anchor("why-", e.ID), Title: e.Title + ", " + e.Date.Short(),
		Window: strings.TrimSuffix(e.Window, "."), Day: strings.TrimSuffix(named(p, strings.Join(e.BoundBy, "; ")), ".")}
}

// quoted joins titles as a sentence does.
func quoted(titles []string) string {
	switch n := len(titles); n {
	case 0:
		return ""
	case 1:
		return "“" + titles[0] + "”"
	default:
		return "“" + strings.Join(titles[:n-1], "”, “") + "” and “" + titles[n-1] + "”"
	}
}
