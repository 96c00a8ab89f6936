package page

import (
	"fmt"
	"strings"

	"swardbook/schedule/lesson"
)

// LessonMarkdown is [Lesson] as Markdown. Room to answer is ruled lines.
func LessonMarkdown(sets []*lesson.Lesson) ([]byte, error) {
	if len(sets) == 0 {
		return nil, lesson.ErrNothing
	}
	var b strings.Builder
	put := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n\n", args...) }
	for _, l := range sets {
		put("# %s", escape(l.Title))
		put("Worksheet. %s", escape(underTitle(l)))
		put("Name: ______________________ Date: ______________")
		for _, p := range l.Pages {
			for _, t := range p.Topics {
				put("## %s", escape(t.Title))
				for _, g := range t.Given {
					putGiven(&b, g)
				}
				for _, q := range t.Questions {
					put("**%d.** %s", q.N, escape(q.Text))
					for range 3 {
						put("&nbsp;")
						put("---")
					}
				}
			}
		}
	}
	return []byte(strings.TrimRight(b.String(), "\n") + "\n"), nil
}

// LessonKeyMarkdown is [LessonKey] as Markdown.
func LessonKeyMarkdown(sets []*lesson.Lesson) ([]byte, error) {
	v, err := newKey(sets)
	if err != nil {
		return nil, err
	}
	var b strings.Builder
	put := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n\n", args...) }
	put("# Key: %s", escape(v.Lessons[0].Title))
	put("%s", escape(v.Lessons[0].Sub))
	for _, a := range v.Key {
		put("## %d. %s", a.N, escape(a.Title))
		put("**%s**", escape(a.Results))
		for i, s := range a.Steps {
			fmt.Fprintf(&b, "%d. %s\n", i+1, s.markdown())
		}
		b.WriteByte('\n')
	}
	for _, t := range v.Tables {
		putGiven(&b, t)
	}
	put("## Sources")
	for _, s := range v.Sources {
		fmt.Fprintf(&b, "%d. %s *%s*\n", s.N, escape(s.Cite), s.Checked)
	}
	return []byte(b.String()), nil
}

// putGiven writes a table, rules, or both.
func putGiven(b *strings.Builder, g lesson.Given) {
	fmt.Fprintf(b, "*%s*\n\n", escape(g.Title))
	row := func(cells []string) {
		b.WriteByte('|')
		for _, c := range cells {
			b.WriteString(" " + strings.ReplaceAll(escape(c), "|", `\|`) + " |")
		}
		b.WriteByte('\n')
	}
	if len(g.Rows) > 0 {
		row(g.Head)
		b.WriteString(strings.Repeat("| --- ", len(g.Head)) + "|\n")
		for _, r := range g.Rows {
			row(r)
		}
		b.WriteByte('\n')
	}
	for _, r := range g.Rules {
		b.WriteString("- " + escape(r) + "\n")
	}
	if len(g.Rules) > 0 {
		b.WriteByte('\n')
	}
}

// markdown writes a sentence with the numbers of its sources.
func (c cited) markdown() string {
	out := escape(c.Text)
	for _, r := range c.Refs {
		if r.N > 0 {
			out += fmt.Sprintf(" \\[%d\\]", r.N)
		} else {
			out += " (" + escape(r.Text) + ")"
		}
	}
	return out
}

// escapes keeps the characters of a text from being read as Markdown or HTML.
var escapes = strings.NewReplacer(`\`, `\\`, "*", `\*`, "_", `\_`, "`", "\\`", "<", "&lt;", "[", `\[`, "]", `\]`, "#", `\#`, "\n", " ")

func escape(s string) string { return escapes.Replace(s) }
