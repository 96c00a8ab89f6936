package main

import (
	"context"
	"flag"
	"io"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"swardbook/cmd/swardbook/figure"
)

var update = flag.Bool("update", false, "rewrite what the scripts expect")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"swardbook": main})
}

// Every script runs commands as a person would and says what must come out.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireExplicitExec: true,
		UpdateScripts:       *update,
		Cmds:                map[string]func(*testscript.TestScript, bool, []string){"exits": exits},
		Setup: func(e *testscript.Env) error {
			e.Setenv("TZ", "UTC")
			return copyInto(e.WorkDir, "testdata/site")
		},
	})
}

// exits runs a command that must end with the code given.
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits N command args")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	err = ts.Exec(args[1], args[2:]...)
	got := 0
	if e, ok := err.(interface{ ExitCode() int }); ok {
		got = e.ExitCode()
	} else if err != nil {
		ts.Fatalf("could not run: %v", err)
	}
	if got != want {
		ts.Fatalf("exit code %d, want %d", got, want)
	}
}

// copyInto puts the site files that the scripts share into a script's folder.
func copyInto(dir, from string) error {
	files, err := os.ReadDir(from)
	if err != nil {
		return err
	}
	for _, f := range files {
		data, err := os.ReadFile(from + "/" + f.Name())
		if err != nil {
			return err
		}
		if err := os.WriteFile(dir+"/"+f.Name(), data, 0o666); err != nil {
			return err
		}
	}
	return nil
}

// sward runs one command in this process, on a fixed day.
func sward(args ...string) (stdout, stderr string, code int) {
	var out, talk strings.Builder
	noon := func() time.Time { return time.Date(2026, 9, 12, 12, 0, 0, 0, time.UTC) }
	code = run(context.Background(), args, strings.NewReader(""), &out, &talk, func(string) string { return "" }, noon)
	return out.String(), talk.String(), code
}

// Each example of a figure gives an answer, as text and as JSON.
func TestFigureExamples(t *testing.T) {
	for _, f := range figure.All() {
		args := append([]string{"figure", f.Name}, words(t, f.Example)...)
		for _, more := range [][]string{nil, {"--format", "json"}} {
			out, talk, code := sward(append(args, more...)...)
			if code != 0 || talk != "" || out == "" {
				t.Errorf("%v %v: code %d, stderr %q", args, more, code, talk)
			}
		}
	}
}

// words splits an example as a shell does, double quotes only.
func words(t *testing.T, line string) []string {
	var out []string
	for i, part := range strings.Split(line, `"`) {
		if i%2 == 1 {
			out = append(out, part)
		} else {
			out = append(out, strings.Fields(part)...)
		}
	}
	return out
}

// A reader that fails in the middle is an error, not an empty site.
func TestBrokenInput(t *testing.T) {
	var talk strings.Builder
	code := run(t.Context(), []string{"program", "-"}, io.MultiReader(strings.NewReader("id"), broken{}), io.Discard, &talk, os.Getenv, time.Now)
	if code != exitIO || !strings.Contains(talk.String(), "could not read standard input") {
		t.Errorf("code %d, stderr %q", code, talk.String())
	}
}

type broken struct{}

func (broken) Read([]byte) (int, error) { return 0, io.ErrUnexpectedEOF }

// A result that cannot be written is an error.
func TestBrokenOutput(t *testing.T) {
	var talk strings.Builder
	code := run(t.Context(), []string{"figure"}, strings.NewReader(""), shut{}, &talk, os.Getenv, time.Now)
	if code != exitIO || !strings.Contains(talk.String(), "could not write") {
		t.Errorf("code %d, stderr %q", code, talk.String())
	}
}

type shut struct{}

func (shut) Write([]byte) (int, error) { return 0, io.ErrClosedPipe }
