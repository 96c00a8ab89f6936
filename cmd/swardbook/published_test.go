package main

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"swardbook/schedule/door"
)

// What tells one build of the program from another is its content: SHA-256, as sha256sum
// prints it.
func TestThisProgramIsKnownByItsContent(t *testing.T) {
	name, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	if got, want := thisProgram(), fmt.Sprintf("%x", sha256.Sum256(must(os.ReadFile(name)))); got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// The ask page is published with its planner, and says how many files it has and how
// large they are together; a second time they are left as they are.
func TestAskPageIsPublished(t *testing.T) {
	dir := t.TempDir()
	var packed bytes.Buffer
	z := gzip.NewWriter(&packed)
	fmt.Fprint(z, "\x00asm"+door.Mark)
	z.Close()
	for name, data := range map[string][]byte{door.PlannerFile: packed.Bytes(), door.RuntimeFile: []byte("globalThis.Go = class {}")} {
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	public := filepath.Join(dir, "public")
	for _, counts := range []string{"5 files written, 0 unchanged", "0 files written, 5 unchanged"} {
		out, talk, code := sward("publish", "-o", public, "--ask", "--planner", dir)
		size := int64(0)
		files, err := os.ReadDir(filepath.Join(public, askFolder))
		for _, f := range files {
			info, err := f.Info()
			if err != nil {
				t.Fatal(err)
			}
			size += info.Size()
		}
		want := fmt.Sprintf("%s: the ask page, %s; %.1f MB\n", filepath.Join(public, askFolder), counts, float64(size)/1_000_000)
		if code != 0 || err != nil || size < 1000 || !strings.Contains(out, want) {
			t.Errorf("%d %s%s (%v), want %q", code, out, talk, err, want)
		}
	}
}
