package main

import (
	"strconv"
	"strings"

	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule"
	"swardbook/schedule/lesson"
	"swardbook/schedule/page"
)

var lessonCommand = command{
	name: "lesson", args: "FILE",
	what: "a class worksheet, or its key with the working",
	help: `    swardbook lesson lawn.toml -o worksheet.html
    swardbook lesson lawn.toml --key -o key.html
    swardbook lesson lawn.toml --set 1..30 -o worksheets.html
    swardbook lesson lawn.toml --set 1..30 --key -o key.html

Writes a worksheet for fifty minutes: from the soil report of one area to dates,
about eight questions on three printed pages. Every rule and table that the key
uses is on it. With --key it writes the key: the taught steps, each with its
source.

--set gives each student other numbers: set 7 has the same ones whenever it is
written. Of several sets the worksheets follow each other in one file, and the
key works the first and lists the results of all.

        --key           the answers with their working
        --set N|N..M    numbers of its own for each set, 1 to 30
        --long          every question, not about eight
        --area ID       the area (default: the first with a soil report)
        --today DATE    as of DATE (default: today)
        --format FORM   html or markdown
    -o, --output FILE   write to FILE
        --no-color      no colour in what is said
`,
	setup: func(fs *flag.Set) func(*session, []string) error {
		out := flag.NewOutput(fs, "html", "markdown")
		today := flag.Today(fs)
		area := fs.String("area", "", "")
		key := fs.Bool("key", false, "")
		long := fs.Bool("long", false, "")
		set := fs.String("set", "", "")
		return func(s *session, args []string) error {
			file, err := one(args, "FILE")
			if err != nil {
				return err
			}
			if err := out.Check(); err != nil {
				return err
			}
			from, to, err := setsOf(*set)
			if err != nil {
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
			var sets []*lesson.Lesson
			for n := from; n <= to; n++ {
				made, err := lesson.SetOf(p, lesson.Options{Area: *area, Set: n, Long: *long}, func(site *schedule.Site) (*schedule.Program, error) {
					return s.program(file, site, l.done, day)
				})
				if err != nil {
					return err
				}
				sets = append(sets, made)
			}
			data, err := writerOf(*key, out.Format)(sets)
			if err != nil {
				return err
			}
			return s.write(out.File, data, l.inputs()...)
		}
	},
}

// setsOf reads "7" or "1..30"; "" is the numbers of the file, set 0.
func setsOf(text string) (from, to int, err error) {
	if text == "" {
		return 0, 0, nil
	}
	a, b, isRange := strings.Cut(text, "..")
	if !isRange {
		b = a
	}
	from, errFrom := strconv.Atoi(a)
	to, errTo := strconv.Atoi(b)
	if errFrom != nil || errTo != nil || from < 1 || to > lesson.MostSets || from > to {
		return 0, 0, misuse("--set %q: give a number from 1 to %d, or a range such as 1..%d", text, lesson.MostSets, lesson.MostSets)
	}
	return from, to, nil
}

// writerOf gives the function that writes worksheets, or their key, in a format.
func writerOf(key bool, format string) func([]*lesson.Lesson) ([]byte, error) {
	switch {
	case key && format == "markdown":
		return page.LessonKeyMarkdown
	case key:
		return page.LessonKey
	case format == "markdown":
		return page.LessonMarkdown
	}
	return page.Lesson
}
