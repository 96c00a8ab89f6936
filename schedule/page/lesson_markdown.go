package page

import (
	"fmt"
	"strings"

	"swardbook/schedule"
)

// LessonMarkdown is [Lesson] as Markdown. Room to answer is ruled lines.
func LessonMarkdown(p *schedule.Program, key bool, o Options) ([]byte, error) {
	v, err := newLesson(p, key, o)
	if err != nil {
		return nil, err
	}
	var b strings.Builder
	put := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n\n", args...) }
	put("# %s", escape(v.Title))
	put("%s", v.Span)
	if !key {
		put("Name: ______________________ Date: ______________")
	}
	for _, c := range v.Chapters {
		put("## %s", escape(c.Name))
		put("%s", escape(c.Sub))
		for i, p := range c.Parts {
			put("### %d. %s", i+1, p.Title)
			for _, s := range p.Say {
				put("%s", escape(s))
			}
			for _, t := range p.Tables {
				putTable(&b, t)
			}
			for _, q := range p.Questions {
				put("**Question %d.** %s", q.N, escape(q.Text))
				if key {
					for i, a := range q.Answer {
						fmt.Fprintf(&b, "%d. %s\n", i+1, a.markdown())
					}
					b.WriteByte('\n')
					continue
				}
				for range q.Room {
					put("&nbsp;")
					put("---")
				}
			}
		}
	}
	put("## Sources")
	for _, s := range v.Sources {
		where := ""
		if s.Where != "" {
			where = " " + escape(s.Where) + "."
		}
		fmt.Fprintf(&b, "%d. %s%s *%s*\n", s.N, escape(s.Cite), where, s.Checked)
	}
	return []byte(b.String()), nil
}

func putTable(b *strings.Builder, t table) {
	fmt.Fprintf(b, "*%s*\n\n", escape(t.Caption))
	row := func(cells []string) {
		b.WriteByte('|')
		for _, c := range cells {
			b.WriteString(" " + strings.ReplaceAll(escape(c), "|", `\|`) + " |")
		}
		b.WriteByte('\n')
	}
	row(t.Head)
	b.WriteString(strings.Repeat("| --- ", len(t.Head)) + "|\n")
	for _, r := range t.Rows {
		row(r)
	}
	b.WriteByte('\n')
	if t.Note.Text != "" {
		b.WriteString(t.Note.markdown() + "\n\n")
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

// escape keeps the signs of a text from being read as Markdown or HTML.
var escapes = strings.NewReplacer(`\`, `\\`, "*", `\*`, "_", `\_`, "`", "\\`", "<", "&lt;", "[", `\[`, "]", `\]`, "#", `\#`, "\n", " ")

func escape(s string) string { return escapes.Replace(s) }
