package feed

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"swardbook/schedule"
	"swardbook/schedule/plan"
	"swardbook/schedule/sitefile"
)

// Sizes read of a file; a byte more is refused by whoever reads the text.
const (
	mostText     = 1<<20 + 1 // [sitefile.Load] takes 1 MiB
	mostBook     = 4<<20 + 1 // [sitefile.LoadRecord] takes 4 MiB
	mostCalendar = 8<<20 + 1 // as much as a calendar may have
)

// inputs are the bytes of a site's files, which say all that its program says.
type inputs struct {
	text, normals []byte
	normalsName   string // "" none
	book          []byte // the record book; nil: none
	sum           [sha256.Size]byte
}

func (in *inputs) seal() {
	sum := sha256.New()
	for _, part := range [][]byte{in.text, in.normals, in.book} {
		fmt.Fprintf(sum, "%d %t\n", len(part), part == nil)
		sum.Write(part)
	}
	copy(in.sum[:], sum.Sum(nil))
}

// reading is what the files of one site said when they were read.
type reading struct {
	inputs
	stamp    stamp
	site     *schedule.Site
	done     []schedule.Done
	program  *schedule.Program // nil when there are errors, or before it is planned
	problems []schedule.Problem
	private  bool            // has a secret, or may have one
	fault    *schedule.Fault // of the planner, when it panicked
}

// alone gives the bytes with nothing else that memory would be kept for.
func (in *inputs) alone() *inputs {
	return &inputs{bytes.Clone(in.text), bytes.Clone(in.normals), in.normalsName, bytes.Clone(in.book), in.sum}
}

// reading makes sense of the bytes once more.
func (in *inputs) reading(name string) *reading {
	r := &reading{inputs: *in}
	r.parse(name, func(string) ([]byte, error) { return in.normals, nil })
	return r
}

// load reads the files of a site. What goes wrong is among the problems.
func load(root *os.Root, name string, now time.Time) *reading {
	r := &reading{}
	file := siteFile(name)
	var err error
	if r.text, err = readAtMost(root, file, mostText); err != nil {
		r.fail(file, "could not be read: "+bare(err).Error())
		r.stamp = stampOf(root, name, "", now)
		r.private = true // nobody knows
		return r
	}
	switch r.book, err = readAtMost(root, recordBook(name), mostBook); {
	case errors.Is(err, fs.ErrNotExist):
		r.book = nil
	case err != nil:
		r.fail(recordBook(name), "could not be read: "+bare(err).Error())
	}
	r.parse(name, func(n string) (data []byte, err error) {
		r.normalsName = n
		r.normals, err = readAtMost(root, n, mostCalendar)
		return r.normals, err
	})
	// The stamp is taken last, so that a file which changed while it was read
	// is young by the stamp and read again.
	r.stamp = stampOf(root, name, r.normalsName, now)
	r.seal()
	return r
}

// parse makes site and record of the bytes.
func (r *reading) parse(name string, normals func(string) ([]byte, error)) {
	var ps []schedule.Problem
	r.private = mayHoldSecret(r.text)
	r.site, ps = sitefile.Load(siteFile(name), r.text, func(n string) (io.ReadCloser, error) {
		data, err := normals(n)
		return io.NopCloser(bytes.NewReader(data)), err
	})
	r.problems = append(r.problems, ps...)
	if r.book != nil {
		r.done, ps = sitefile.LoadRecord(recordBook(name), r.book, r.site)
		r.problems = append(r.problems, ps...)
	}
	if r.usable() {
		r.private = r.site.Calendar.Secret != ""
	}
}

// usable tells whether the files can be planned by.
func (r *reading) usable() bool { return r.site != nil && !schedule.Fatal(r.problems) }

// plan makes the program, or adds to the problems why there is none.
func (r *reading) plan(name string, today schedule.Date, planner schedule.Planner) {
	if !r.usable() {
		return
	}
	err := schedule.Guarded(func() (err error) {
		last, err := plan.Through(r.site, today)
		if err == nil {
			r.program, err = planner(r.site, r.done, last)
		}
		return err
	})
	if err != nil {
		r.program = nil
		r.fail(siteFile(name), err.Error())
		r.fault, _ = errors.AsType[*schedule.Fault](err)
	}
}

// read loads a site and plans it.
func read(root *os.Root, name string, now time.Time, planner schedule.Planner) *reading {
	r := load(root, name, now)
	r.plan(name, day(now), planner)
	return r
}

// mayHoldSecret tells whether a site file may give a secret, without reading
// it as what it is.
func mayHoldSecret(text []byte) bool {
	return bytes.Contains(text, []byte("secret")) && bytes.Contains(withoutComments(text), []byte("secret"))
}

func (r *reading) fail(file, message string) {
	r.problems = append(r.problems, schedule.Problem{File: file, Message: message})
}

// prefix is the first part of the site's path.
func (r *reading) prefix(name string) string {
	if r.site != nil && r.site.Calendar.Secret != "" {
		return r.site.Calendar.Secret
	}
	return name
}

// withoutComments leaves out what follows a # on a line. It may cut a text
// that holds one; it serves to look for a word.
func withoutComments(text []byte) []byte {
	var out []byte
	for line := range bytes.Lines(text) {
		before, _, _ := bytes.Cut(line, []byte("#"))
		out = append(append(out, before...), '\n')
	}
	return out
}

func siteFile(name string) string   { return name + ".toml" }
func recordBook(name string) string { return name + ".record.csv" }

// siteNames lists the sites of a folder: its *.toml files, sorted. Files whose
// names begin with a dot are not ours.
func siteNames(root *os.Root) ([]string, error) {
	if root == nil {
		return nil, nil
	}
	entries, err := fs.ReadDir(root.FS(), ".")
	if err != nil {
		return nil, err
	}
	var out []string
	for _, e := range entries {
		name, ok := strings.CutSuffix(e.Name(), ".toml")
		if ok && !strings.HasPrefix(name, ".") && !e.IsDir() {
			out = append(out, name)
		}
	}
	return out, nil
}

// nameable tells whether a site's name may stand in an address and name a
// folder on every system.
func nameable(name string) error {
	bad := strings.IndexFunc(name, func(c rune) bool {
		return unicode.IsControl(c) || c == utf8.RuneError || strings.ContainsRune(`\/:*?"<>|`, c)
	})
	switch {
	case bad >= 0:
		return fmt.Errorf("the file name holds a character that cannot stand in an address; rename it")
	case name == "" || len(name) > 100:
		return fmt.Errorf("the file name is empty or longer than 100 bytes; rename it")
	case name == "index.html":
		return fmt.Errorf("index.html is the list of all sites; rename the file")
	}
	return nil
}

// readAtMost reads an ordinary file, or its first n bytes.
func readAtMost(root *os.Root, name string, n int64) ([]byte, error) {
	switch info, err := root.Stat(name); {
	case err != nil:
		return nil, err
	case !info.Mode().IsRegular(): // a pipe would never end
		return nil, fmt.Errorf("it is no ordinary file")
	}
	f, err := root.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, n))
}

// bare leaves the path out of a file error, as messages name the file already.
func bare(err error) error {
	if p, ok := errors.AsType[*fs.PathError](err); ok {
		return p.Err
	}
	return err
}
