package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"swardbook/schedule"
	"swardbook/schedule/plan"
	"swardbook/schedule/sitefile"
)

// mostBytes and mostBook are how many bytes are read of a file: one more than its reader
// accepts, so that it refuses a larger file.
const (
	mostBytes = 1<<20 + 1
	mostBook  = 4<<20 + 1 // of a record book
)

// loaded is a site file with its record book, both read.
type loaded struct {
	file     string // the site file's name
	record   string // the record book's name, whether or not it is there
	text     []byte
	book     []byte // nil: no record book
	site     *schedule.Site
	done     []schedule.Done
	problems []schedule.Problem
}

// inputs are the files that no output may overwrite.
func (l *loaded) inputs() []string { return []string{l.file, l.record} }

// read reads the site file and the record book beside it, and gives their
// problems; the error is for what could not be read at all.
func (s *session) read(file string) (*loaded, error) {
	l := &loaded{file: file, record: recordBeside(file)}
	var err error
	if l.text, err = s.readFile(file); err != nil {
		return nil, err
	}
	l.site, l.problems = sitefile.Load(file, l.text, opener(folderOf(file)))
	if l.record == "" {
		return l, nil
	}
	switch l.book, err = s.readUpTo(l.record, mostBook); {
	case errors.Is(err, fs.ErrNotExist):
	case err != nil:
		return nil, err
	default:
		var ps []schedule.Problem
		l.done, ps = sitefile.LoadRecord(l.record, l.book, l.site)
		l.problems = append(l.problems, ps...)
	}
	return l, nil
}

// program plans a site as of a day: without a last day of its own it reaches to the
// end of the season that follows. A panic of the planner ends as an error that names the
// site.
func (s *session) program(file string, site *schedule.Site, done []schedule.Done, today schedule.Date) (p *schedule.Program, err error) {
	err = schedule.Guarded(func() (err error) {
		last, err := plan.Through(site, today)
		if err != nil {
			return err
		}
		p, err = s.planner(site, done, last)
		return err
	})
	if fault, ok := errors.AsType[*schedule.Fault](err); ok {
		io.WriteString(s.stderr, fault.Trace)
	}
	if err != nil {
		return nil, siteError(fmt.Errorf("%s: %w", file, err))
	}
	return p, nil
}

// plan reads a site and makes its program. Problems go to stderr; errors among
// them end the command.
func (s *session) plan(file string, today schedule.Date) (*loaded, *schedule.Program, error) {
	l, err := s.read(file)
	if err != nil {
		return nil, nil, err
	}
	s.tell(l.problems)
	if schedule.Fatal(l.problems) {
		return nil, nil, exit{code: exitSite}
	}
	p, err := s.program(file, l.site, l.done, today)
	if err != nil {
		return nil, nil, err
	}
	return l, p, nil
}

// tell writes problems to stderr, each with its hint.
func (s *session) tell(ps []schedule.Problem) { io.WriteString(s.stderr, problemText(ps)) }

func problemText(ps []schedule.Problem) string {
	var b strings.Builder
	for _, p := range ps {
		b.WriteString(p.Error() + "\n")
		if p.Hint != "" {
			b.WriteString("  hint: " + p.Hint + "\n")
		}
	}
	return b.String()
}

// readFile reads a site file or a record book.
func (s *session) readFile(name string) ([]byte, error) { return s.readUpTo(name, mostBytes) }

// readUpTo reads a file, or standard input for "-", but never without end.
func (s *session) readUpTo(name string, most int64) ([]byte, error) {
	if name == "-" {
		data, err := io.ReadAll(io.LimitReader(s.stdin, most))
		if err != nil {
			return nil, fmt.Errorf("could not read standard input: %w", err)
		}
		return data, nil
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, fmt.Errorf("could not read %s: %w", name, bare(err))
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return nil, fmt.Errorf("could not read %s: it is a folder, not a file", name)
	}
	data, err := io.ReadAll(io.LimitReader(f, most))
	if err != nil {
		return nil, fmt.Errorf("could not read %s: %w", name, bare(err))
	}
	return data, nil
}

// folderOf is where a site file's own files are looked for.
func folderOf(file string) string { return filepath.Dir(file) }

// opener opens the station file that a site file names, in its own folder and
// nowhere else.
func opener(dir string) func(string) (io.ReadCloser, error) {
	return func(name string) (io.ReadCloser, error) { return os.OpenInRoot(dir, name) }
}

// recordBeside names the record book of a site file; "" for standard input.
func recordBeside(file string) string {
	if file == "-" {
		return ""
	}
	return strings.TrimSuffix(file, ".toml") + ".record.csv"
}

// one asks for exactly one argument.
func one(args []string, what string) (string, error) {
	if err := exactly(args, what); err != nil {
		return "", err
	}
	return args[0], nil
}

// exactly asks for the arguments named in what, "FILE JOB".
func exactly(args []string, what string) error {
	names := strings.Fields(what)
	switch {
	case len(args) < len(names) && len(names) == 1:
		return misuse("%s is missing", what)
	case len(args) < len(names):
		return misuse("%s is missing: give %s", names[len(args)], what)
	case len(args) > len(names):
		return misuse("%q is one argument too many", args[len(names)])
	}
	return nil
}
