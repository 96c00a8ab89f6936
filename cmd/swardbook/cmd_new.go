package main

import (
	"crypto/rand"
	"errors"
	"fmt"
	"os"
	"strings"

	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule/book"
	"swardbook/schedule/sitefile"
)

var newCommand = command{
	name: "new", args: "[-o FILE]",
	what: "write a commented starter site file",
	help: `    swardbook new -o lawn.toml

Writes a site file that can be read as it stands, with every key there is and
what it means. Change the place, the area and the soil report to yours, then
run "swardbook check lawn.toml".

    -o, --output FILE   write to FILE; an existing file is never replaced
        --today DATE    first day of the program (default: today)
        --id NAME       id of the site in calendars (default: a fresh one)
        --no-color      no colour
`,
	setup: func(fs *flag.Set) func(*session, []string) error {
		out := flag.NewOutput(fs, "text")
		today := flag.Today(fs)
		id := fs.String("id", "", "")
		return func(s *session, args []string) error {
			if err := exactly(args, ""); err != nil {
				return err
			}
			start, err := today(s.now)
			if err != nil {
				return err
			}
			if *id == "" {
				*id = "lawn-" + strings.ToLower(rand.Text()[:6])
			}
			text := sitefile.Starter(*id, start)
			if _, problems := sitefile.Load("--id", text, opener(".")); len(problems) > 0 {
				return misuse("--id: %s", problems[0].Message)
			}
			if out.File == "" || out.File == "-" {
				return s.print(string(text))
			}
			err = inFolder(out.File, func(root *os.Root, name string) error { return book.Create(root, name, text) })
			if errors.Is(err, os.ErrExist) {
				return fmt.Errorf("%s is there already; choose another name", out.File)
			} else if err != nil {
				return fmt.Errorf("could not write %s: %w", out.File, bare(err))
			}
			return s.print("Wrote " + out.File + ". Fill it in, then: swardbook check " + out.File + "\n")
		}
	},
}
