package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"swardbook/schedule"
)

// What is no terminal gets no colour, and COLUMNS says how wide.
func TestStyle(t *testing.T) {
	file, err := os.Create(filepath.Join(t.TempDir(), "out"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	columns := map[string]string{"COLUMNS": "100"}
	for _, s := range []*session{{stdout: &bytes.Buffer{}}, {stdout: file}} {
		s.env = func(name string) string { return columns[name] }
		st := s.style("", schedule.Date{})
		if st.Colour || st.Width != 100 {
			t.Errorf("%T: %+v", s.stdout, st)
		}
	}
	if _, ok := terminalWidth(file); ok {
		t.Error("a file is taken for a terminal")
	}
}

func BenchmarkProgram(b *testing.B) {
	for b.Loop() {
		if _, talk, code := sward("program", "testdata/site/fern.toml"); code != 0 {
			b.Fatal(talk)
		}
	}
}
