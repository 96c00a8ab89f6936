package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"

	"swardbook/cmd/swardbook/flag"
	"swardbook/cmd/swardbook/terminal"
	"swardbook/schedule"
	"swardbook/schedule/book"
	"swardbook/schedule/text"
)

// write puts a finished result where it belongs: standard output for "" and
// "-", else the file, which is never one of the inputs.
func (s *session) write(out string, data []byte, inputs ...string) error {
	if out == "" || out == "-" {
		return s.print(string(data))
	}
	if err := notInput(out, inputs); err != nil {
		return err
	}
	_, err := replaceFile(out, data)
	return err
}

// tabled writes a result in the form that was asked for: shown as JSON, its
// table, or words.
func (s *session) tabled(out *flag.Output, shown any, table func() text.Table, words func(text.Style) string, inputs ...string) error {
	var data []byte
	switch out.Format {
	case "json":
		var err error
		if data, err = asJSON(shown); err != nil {
			return err
		}
	case "csv":
		data = []byte(table().CSV())
	case "markdown":
		data = []byte(table().Markdown())
	default:
		data = []byte(words(s.style(out.File, schedule.Date{})))
	}
	return s.write(out.File, data, inputs...)
}

// style is how text is shown on where the result goes. Colour is for
// terminals alone, and never when NO_COLOR, TERM=dumb or --no-color says no.
func (s *session) style(out string, today schedule.Date) text.Style {
	st := text.Style{Today: today}
	columns, isTerminal := 0, false
	if out == "" || out == "-" {
		columns, isTerminal = terminal.Width(s.stdout)
	}
	if n, err := strconv.Atoi(s.env("COLUMNS")); err == nil && n > 0 {
		columns = n
	}
	st.Width = columns
	st.Colour = isTerminal && !s.noColor && s.env("NO_COLOR") == "" && s.env("TERM") != "dumb"
	return st
}

// notInput refuses to write over what was read.
func notInput(out string, inputs []string) error {
	target, _ := os.Stat(out)
	for _, in := range inputs {
		if in == "" || in == "-" {
			continue
		}
		same := samePath(in, out)
		if info, err := os.Stat(in); err == nil && target != nil {
			same = same || os.SameFile(info, target)
		}
		if same {
			return misuse("%s is read here, so it is not written over; choose another name for -o", in)
		}
	}
	return nil
}

func samePath(a, b string) bool {
	x, err1 := filepath.Abs(a)
	y, err2 := filepath.Abs(b)
	return err1 == nil && err2 == nil && x == y
}

// replaceFile gives a file new content, all or nothing; see [book.Replace].
// Content that is there already is left alone, and replaceFile reports false.
// A device or a pipe is written to as it is.
func replaceFile(path string, data []byte) (changed bool, err error) {
	switch info, err := os.Stat(path); {
	case err == nil && info.IsDir():
		return false, fmt.Errorf("could not write %s: it is a folder", path)
	case err == nil && !info.Mode().IsRegular():
		return true, os.WriteFile(path, data, 0o666)
	}
	err = inFolder(path, func(root *os.Root, name string) error {
		changed, err = book.Replace(root, name, data)
		return err
	})
	if err != nil {
		return false, fmt.Errorf("could not write %s: %w", path, bare(err))
	}
	return changed, nil
}

// bare leaves the path out of a file error; the message names it already.
func bare(err error) error {
	if p, ok := errors.AsType[*fs.PathError](err); ok {
		return p.Err
	}
	if l, ok := errors.AsType[*os.LinkError](err); ok {
		return l.Err
	}
	return err
}

// asJSON writes a value as indented JSON.
func asJSON(v any) ([]byte, error) {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(v); err != nil {
		return nil, fmt.Errorf("could not write JSON: %w", err)
	}
	return b.Bytes(), nil
}

// appendRecord adds one line to a record book, which it begins if there is
// none; see [book.Append].
func appendRecord(path, line string) error {
	err := inFolder(path, func(root *os.Root, name string) error { return book.Append(root, name, line) })
	if err != nil {
		return fmt.Errorf("could not write %s: %w", path, bare(err))
	}
	return nil
}

// inFolder opens the folder of a file, behind a link if it is one, so that the
// link stays a link.
func inFolder(path string, do func(root *os.Root, name string) error) error {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real
	}
	root, err := os.OpenRoot(filepath.Dir(path))
	if err != nil {
		return err
	}
	defer root.Close()
	return do(root, filepath.Base(path))
}

// strikeRecord strikes lines out of a record book; see [book.Struck].
func strikeRecord(path string, lines []int) error {
	err := inFolder(path, func(root *os.Root, name string) error { return book.Strike(root, name, lines) })
	if err != nil {
		return fmt.Errorf("could not write %s: %w", path, bare(err))
	}
	return nil
}

// rewriteRecord puts a new text in the place of a record book, unless somebody has
// written to it meanwhile.
func rewriteRecord(path string, was, text []byte) error {
	changed := false
	err := inFolder(path, func(root *os.Root, name string) error {
		return book.Edit(root, name, func(now []byte) []byte {
			if changed = !bytes.Equal(now, was); changed {
				return now
			}
			return text
		})
	})
	if err == nil && changed {
		err = errors.New("somebody has written to it meanwhile; try again")
	}
	if err != nil {
		return fmt.Errorf("could not write %s: %w", path, bare(err))
	}
	return nil
}
