package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// asPrinted comes before the README's own lines in the shell, and changes a few commands.
// go runs in the clone, but go test runs nothing, as this test is one of those. serve
// ends once it serves. Of the two programs that fetch and list a calendar, which
// .ci/subscribe/run runs as printed, the one fetches nothing and the other lists the
// program's jobs by day and name.
const asPrinted = `
go() { case $1 in test) echo tested ;; *) (cd "$CLONE" && command go "$@") ;; esac; }
swardbook() {
	[ "$1" = serve ] || { command swardbook "$@"; return; }
	command swardbook "$@" --addr 127.0.0.1:0 >serve.log 2>&1 &
	until grep 'serving sites' serve.log; do kill -0 $! || return; sleep 0.05; done
	kill -TERM $!
	wait $! || [ $? = 143 ] # it may have been in the middle of planning
}
vdirsyncer() { [ "$*" = sync ]; }
khal() { command swardbook program sites/garden.toml --today 2026-09-12 --format csv | sed -n 's/^\([0-9-]*\),[^,]*,[^,]*,"\([^"]*\)".*/\1 \2/p; t
	s/^\([0-9-]*\),[^,]*,[^,]*,\([^,]*\).*/\1 \2/p' | LC_ALL=C sort; }
`

// The README is true to the letter: every block is typed into one shell, as
// printed and in order, in a folder that holds the examples. A block of TOML
// becomes the file that its first line names. Each command ends well, and prints
// the lines shown below it and no others, but where a line "…" stands; what an
// indented block prints is not shown.
func TestReadme(t *testing.T) {
	if _, err := exec.LookPath("sh"); err != nil {
		t.Fatal(err)
	}
	const mark = "\x1e"
	var script strings.Builder
	var typed []typedLine
	for _, b := range readmeBlocks(t, string(readFile(t, "../../README.md"))) {
		switch b.kind {
		case "toml":
			name, ok := strings.CutPrefix(b.lines[0], "# ")
			if !ok {
				t.Fatalf("README.md:%d: the first line of this block names no file", b.at)
			}
			fmt.Fprintf(&script, "cat >%s <<'END'\n%s\nEND\n", name, strings.Join(b.lines, "\n"))
		case "console", "":
			for i, line := range b.lines {
				command, ok := strings.CutPrefix(line, "$ ")
				if b.kind == "" {
					command, ok = line, true
				}
				switch {
				case ok:
					typed = append(typed, typedLine{at: b.at + i, command: command, silent: b.kind == ""})
					fmt.Fprintf(&script, "printf '%s'\n{ %s\n} 2>&1\necho '%s'$?\n", mark, command, mark)
				case i == 0:
					t.Fatalf("README.md:%d: this block does not begin with a command", b.at)
				default:
					last := &typed[len(typed)-1]
					last.shown = append(last.shown, line)
				}
			}
		default:
			t.Fatalf("README.md:%d: a block of %q, which this test cannot run", b.at, b.kind)
		}
	}
	if len(typed) < 20 {
		t.Fatalf("%d commands found", len(typed))
	}

	clone, err := filepath.Abs("../..")
	if err != nil {
		t.Fatal(err)
	}
	modules, err := exec.Command("go", "env", "GOMODCACHE").Output()
	if err != nil {
		t.Fatal(err)
	}
	dir, home := t.TempDir(), t.TempDir()
	if err := os.CopyFS(filepath.Join(dir, "examples"), os.DirFS("../../examples")); err != nil {
		t.Fatal(err)
	}
	shell := exec.Command("sh", "-c", asPrinted+script.String())
	shell.Dir = dir
	shell.Env = append(os.Environ(), "CLONE="+clone, "GOPATH="+home, "GOMODCACHE="+strings.TrimSpace(string(modules)), "TZ=UTC", "NO_COLOR=1", "PATH="+withoutSwardbook())
	var talk bytes.Buffer
	shell.Stderr = &talk
	out, err := shell.Output()
	if err != nil {
		t.Fatalf("%v: %s", err, talk.String())
	}
	parts := strings.Split(string(out), mark)[1:]
	if len(parts) != 2*len(typed) {
		t.Fatalf("%d parts printed by %d commands: %s", len(parts), len(typed), talk.String())
	}
	for i, line := range typed {
		if status := strings.TrimSpace(parts[2*i+1]); status != "0" {
			t.Errorf("README.md:%d: %s: exit status %s:\n%s", line.at, line.command, status, parts[2*i])
		} else if wrong := line.differs(parts[2*i]); wrong != "" {
			t.Errorf("README.md:%d: %s: %s:\n%s", line.at, line.command, wrong, parts[2*i])
		}
	}
}

// typedLine is a command of the README, and what is shown below it.
type typedLine struct {
	at      int
	command string
	shown   []string
	silent  bool // what it prints is not shown at all
}

// differs says where the output is not what is shown, "" if it is.
func (l typedLine) differs(output string) string {
	if l.silent {
		return ""
	}
	printed := strings.Split(output, "\n")
	printed = printed[:len(printed)-1] // the last line ends too
	left := false                      // something is left out here
	for _, want := range l.shown {
		if want == "…" {
			left = true
			continue
		}
		i := slices.Index(printed, want)
		if i < 0 || i > 0 && !left {
			return fmt.Sprintf("does not print here %q", want)
		}
		printed, left = printed[i+1:], false
	}
	if len(printed) > 0 && !left {
		return fmt.Sprintf("also prints %q", printed[0])
	}
	return ""
}

// The comparison sees what is missing, out of order, left out or too much.
func TestReadmeLineDiffers(t *testing.T) {
	for _, c := range []struct {
		shown, printed string
		same           bool
	}{
		{"", "", true},
		{"", "a\n", false},
		{"a", "a\n", true},
		{"a", "a", false},
		{"a", "a\nb\n", false},
		{"a\n…", "a\nb\n", true},
		{"b", "a\nb\n", false},
		{"…\nb", "a\nb\n", true},
		{"a\nc", "a\nb\nc\n", false},
		{"a\n…\nc", "a\nb\nc\n", true},
		{"c\n…\na", "a\nb\nc\n", false},
		{"…", "a\nb\n", true},
	} {
		var l typedLine
		if c.shown != "" {
			l.shown = strings.Split(c.shown, "\n")
		}
		if got := l.differs(c.printed); (got == "") != c.same {
			t.Errorf("shown %q, printed %q: %q", c.shown, c.printed, got)
		}
	}
}

// block is a block of code in a text of Markdown: fenced, with its kind, or
// indented.
type block struct {
	at    int // the number of its first line
	kind  string
	lines []string
}

// readmeBlocks finds the blocks of code.
func readmeBlocks(t *testing.T, text string) []block {
	var out []block
	fenced, indented, blank := false, false, true
	for i, line := range strings.Split(text, "\n") {
		kind, fence := strings.CutPrefix(line, "```")
		code, four := strings.CutPrefix(line, "    ")
		switch {
		case fence && fenced:
			fenced = false
		case fence:
			fenced = true
			out = append(out, block{at: i + 2, kind: kind})
		case fenced, four && indented:
			if !fenced {
				line = code
			}
			last := &out[len(out)-1]
			last.lines = append(last.lines, line)
		case four && blank:
			indented = true
			out = append(out, block{at: i + 1, lines: []string{code}})
		default:
			indented = false
			if strings.HasPrefix(line, "$ ") || strings.HasPrefix(line, "~~~") {
				t.Errorf("README.md:%d: outside a block: %s", i+1, line)
			}
		}
		blank = line == ""
	}
	for _, b := range out {
		if len(b.lines) == 0 {
			t.Fatalf("README.md:%d: an empty block", b.at)
		}
	}
	return out
}

// withoutSwardbook is the path on which the scripts find this test as the
// command, without that folder: the README installs its own.
func withoutSwardbook() string {
	own, _ := exec.LookPath("swardbook")
	parts := filepath.SplitList(os.Getenv("PATH"))
	parts = slices.DeleteFunc(parts, func(dir string) bool { return dir == filepath.Dir(own) })
	return strings.Join(parts, string(filepath.ListSeparator))
}

func readFile(t *testing.T, name string) []byte {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return data
}
