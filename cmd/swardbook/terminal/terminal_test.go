package terminal

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
)

// A file and memory are no terminals.
func TestWidth(t *testing.T) {
	file, err := os.Create(filepath.Join(t.TempDir(), "out"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	if columns, ok := Width(file); ok || columns != 0 {
		t.Errorf("a file: %d columns, a terminal: %v", columns, ok)
	}
	if _, ok := Width(&bytes.Buffer{}); ok {
		t.Error("memory is taken for a terminal")
	}
}
