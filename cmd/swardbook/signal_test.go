package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"swardbook/schedule/sitefile"
)

// A signal ends every command within a second, with the exit status that shells
// know, and leaves no file behind that is half written: while it reads standard
// input that nobody writes to, and while it plans.
func TestSignals(t *testing.T) {
	dir := t.TempDir()
	if err := copyInto(dir, "testdata/site"); err != nil {
		t.Fatal(err)
	}
	busySites(t, filepath.Join(dir, "busy"))
	for _, c := range []struct {
		name string
		args []string
	}{
		{"reading standard input", []string{"program", "-", "-o", "out"}},
		{"planning", []string{"publish", "busy", "-o", "public", "--jobs", "1"}},
	} {
		for signal, status := range map[os.Signal]int{os.Interrupt: 130, syscall.SIGTERM: 143} {
			t.Run(fmt.Sprint(c.name, " ", status), func(t *testing.T) {
				took, code, talk := signalled(t, dir, signal, c.args)
				if code != status {
					t.Errorf("exit status %d, want %d: %s", code, status, talk)
				}
				if took > 5*time.Second { // half a second by design; a busy machine adds to it, and work left to run takes longer
					t.Errorf("ended %v after the signal", took)
				}
				if _, err := os.Stat(filepath.Join(dir, "out")); err == nil {
					t.Error("an output was begun")
				}
			})
		}
	}
}

// busySites fills a folder with thirty sites that each take a second or so to
// plan: many areas that want the same days, and a book of as many days as it may
// have. However fast the machine, the signal finds it planning.
func busySites(t *testing.T, dir string) {
	t.Helper()
	text, err := os.ReadFile("testdata/site/fern.toml")
	if err != nil {
		t.Fatal(err)
	}
	head, rest, ok := strings.Cut(string(text), "[area.west]")
	if !ok {
		t.Fatal("the site has no area west")
	}
	west, tail, ok := strings.Cut(rest, "[material.")
	if !ok {
		t.Fatal("the site has no material")
	}
	site, book := strings.NewReplacer(`days = ["sat", "wed"]`, "days = [\"sat\", \"wed\"]\njobs_per_day = 2", "west = \"tovi\"\n", "").Replace(head), sitefile.ShortHeader
	for i := range 12 {
		site += fmt.Sprintf("[area.west%d]", i) + strings.NewReplacer("[area.west", fmt.Sprintf("[area.west%d", i), "West strip", fmt.Sprintf("West strip %d", i)).Replace(west)
	}
	day := time.Date(2026, 9, 23, 0, 0, 0, 0, time.UTC)
	for i := range 300 {
		book += fmt.Sprintf("%s,east,east/lime/%d,limestone,1 oz,,\n", day.AddDate(0, 0, i).Format(time.DateOnly), i+1)
	}
	if err := os.Mkdir(dir, 0o777); err != nil {
		t.Fatal(err)
	}
	for i := range 30 {
		name := fmt.Sprintf("many%d", i)
		own := strings.Replace(site, `id = "odderwyn-7q2m"`, fmt.Sprintf("id = %q", name), 1)
		for file, data := range map[string]string{name + ".toml": own + "[material." + tail, name + ".record.csv": book} {
			if err := os.WriteFile(filepath.Join(dir, file), []byte(data), 0o666); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// signalled runs a command whose standard input stays open, and gives how soon
// after the signal it ended, and how.
func signalled(t *testing.T, dir string, signal os.Signal, args []string) (took time.Duration, code int, said string) {
	t.Helper()
	c := exec.Command("swardbook", args...)
	c.Dir = dir
	var talk bytes.Buffer
	c.Stderr = &talk
	in, err := c.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	io.WriteString(in, "id = ")
	time.Sleep(2 * time.Second) // by now it reads or plans, also on a busy machine
	ended := make(chan error, 1)
	go func() { ended <- c.Wait() }()
	select {
	case err := <-ended:
		t.Fatalf("ended before the signal: %v: %s", err, talk.String())
	default:
	}
	begin := time.Now()
	c.Process.Signal(signal)
	select {
	case <-ended:
	case <-time.After(20 * time.Second):
		c.Process.Kill()
		<-ended
	}
	return time.Since(begin), c.ProcessState.ExitCode(), talk.String()
}
