package main

import (
	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule/page"
)

var lessonCommand = command{
	name: "lesson", args: "FILE",
	what: "a class worksheet, or its key with the working",
	help: `    swardbook lesson lawn.toml --area east -o worksheet.html
    swardbook lesson lawn.toml --area east --key -o key.html

Writes a worksheet that leads from the soil report to the dated program: what is
given, the tables each step needs, questions, and ruled room to answer. With
--key it writes every step worked out, with its source, in place of the room.

        --key           the answers with their working
        --today DATE    as of DATE (default: today)
        --area ID       one area (default: all, one after the other)
        --format FORM   html or markdown
    -o, --output FILE   write to FILE
        --no-color      no colour in what is said
`,
	setup: func(fs *flag.Set) func(*session, []string) error {
		out := flag.NewOutput(fs, "html", "markdown")
		today := flag.Today(fs)
		area := fs.String("area", "", "")
		key := fs.Bool("key", false, "")
		return func(s *session, args []string) error {
			file, err := one(args, "FILE")
			if err != nil {
				return err
			}
			if err := out.Check(); err != nil {
				return err
			}
			day, err := today(s.now)
			if err != nil {
				return err
			}
			l, p, err := s.plan(file, day)
			if err != nil {
				return err
			}
			if err := flag.KnownArea(p.Site, *area); err != nil {
				return err
			}
			write := page.Lesson
			if out.Format == "markdown" {
				write = page.LessonMarkdown
			}
			data, err := write(p, *key, page.Options{Area: *area})
			if err != nil {
				return err
			}
			return s.write(out.File, data, l.inputs()...)
		}
	},
}
