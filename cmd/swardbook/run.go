package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"runtime/debug"
	"strings"
	"time"

	"swardbook/agronomy"
	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule"
	"swardbook/schedule/plan"
)

// command is one word of the command line. setup defines its flags and gives
// what runs with the arguments that are left.
type command struct {
	name  string
	args  string // as in the usage line
	what  string // one line for the list of commands
	help  string // the rest of its help, written by hand; every flag is in it
	setup func(*flag.Set) func(*session, []string) error
}

// commands are all commands, in the order in which a person needs them.
func commands() []command {
	return []command{
		askCommand, newCommand, checkCommand, soilCommand, programCommand, whyCommand, calendarCommand,
		sheetCommand, rosterCommand, materialsCommand, ledgerCommand, recordCommand, compareCommand,
		lessonCommand, climateCommand, figureCommand, serveCommand, publishCommand, sourcesCommand,
	}
}

// session is the world as a command sees it. Nothing below run touches the
// process, the environment or the clock in any other way.
type session struct {
	ctx            context.Context
	stdin          io.Reader
	stdout, stderr io.Writer
	env            func(string) string
	now            func() time.Time
	planner        schedule.Planner
	noColor        bool
}

// say writes one line of talk.
func (s *session) say(format string, args ...any) {
	fmt.Fprintf(s.stderr, "swardbook: "+format+"\n", args...)
}

// run runs one command and gives its exit code.
func run(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer, env func(string) string, now func() time.Time) int {
	s := &session{ctx: ctx, stdin: stdin, stdout: stdout, stderr: stderr, env: env, now: now, planner: plan.Program}
	return s.run(args)
}

func (s *session) run(args []string) int {
	err := s.dispatch(args)
	if err == nil {
		return exitDone
	}
	e := exitOf(err)
	if e.err != nil {
		for line := range strings.SplitSeq(e.err.Error(), "\n") {
			s.say("%s", line)
		}
	}
	return e.code
}

func (s *session) dispatch(args []string) error {
	if len(args) == 0 {
		io.WriteString(s.stderr, shortHelp)
		return exit{code: exitUse}
	}
	name, rest := args[0], args[1:]
	switch name {
	case "-h", "--help", "help":
		if len(rest) > 0 {
			c, err := find(rest[0])
			if err != nil {
				return err
			}
			return s.print(c.usage())
		}
		return s.print(fullHelp())
	case "--version", "version":
		return s.print(version() + "\n")
	}
	c, err := find(name)
	if err != nil {
		return err
	}
	fs := flag.New(c.name)
	fs.BoolVar(&s.noColor, "no-color", false, "")
	work := c.setup(fs)
	switch err := flag.Parse(fs, rest); {
	case errors.Is(err, flag.ErrHelp):
		return s.print(c.usage())
	case err != nil:
		return err
	}
	return work(s, fs.Args())
}

// print writes a result that is not a file.
func (s *session) print(text string) error {
	if _, err := io.WriteString(s.stdout, text); err != nil {
		return fmt.Errorf("could not write: %w", err)
	}
	return nil
}

// find looks a command up by its name.
func find(name string) (command, error) {
	var names []string
	for _, c := range commands() {
		if c.name == name {
			return c, nil
		}
		names = append(names, c.name)
	}
	if strings.HasPrefix(name, "-") {
		return command{}, misuse("%s comes before any command; see swardbook --help", name)
	}
	if near := agronomy.NearestName(name, names); near != "" {
		return command{}, misuse("no command %q; did you mean %s?", name, near)
	}
	return command{}, misuse("no command %q; see swardbook --help", name)
}

func version() string {
	v := "unknown"
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" {
		v = info.Main.Version
	}
	return "swardbook " + v
}

const shortHelp = `swardbook makes a dated lawn program from one site file.

    swardbook ask lawn.toml         a few questions in a browser, and the program
    swardbook new -o lawn.toml      write a site file to fill in
    swardbook program lawn.toml     the program

All commands: swardbook --help
`

// fullHelp lists the commands, an example first.
func fullHelp() string {
	var b strings.Builder
	b.WriteString(`swardbook makes a dated lawn program from one site file: what to put down,
where, how much, when, why, and until which day.

    swardbook new -o lawn.toml
    swardbook check lawn.toml
    swardbook program lawn.toml
    swardbook why lawn.toml front/lime/1
    swardbook calendar lawn.toml -o lawn.ics

Commands:
`)
	for _, c := range commands() {
		fmt.Fprintf(&b, "    %-10s %s\n", c.name, c.what)
	}
	b.WriteString(`
swardbook COMMAND --help tells more. Every command takes --no-color; those with
a result take -o FILE to write it to a file (- is standard output).

The record book, NAME.record.csv beside NAME.toml, is read if it is there.

Exit status: 0 done; 1 could not read or write; 2 wrong use; 3 the site file or
the record book has errors; 4 with --strict: something was left out, or with
compare --exit-code: the programs differ.
`)
	return b.String()
}

// usage is the help of one command.
func (c command) usage() string {
	return "usage: swardbook " + strings.TrimRight(c.name+" "+c.args, " ") + "\n\n" + c.help
}
