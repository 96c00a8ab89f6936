package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

const root = "../.."

// The packages at the bottom, which most others may import: turf holds what a lawn needs,
// core adds what a program is.
var (
	turf = []string{"climate", "agronomy", "agronomy/soil", "agronomy/material", "agronomy/lime", "agronomy/nutrient"}
	core = slices.Concat(turf, []string{"schedule/law", "schedule/word", "schedule"})
)

// arrows are the packages of this module and which others each may import.
var arrows = map[string][]string{
	"climate":           {},
	"agronomy":          {"climate"},
	"agronomy/soil":     {"climate", "agronomy"},
	"agronomy/material": {"climate", "agronomy"},
	"agronomy/lime":     {"climate", "agronomy", "agronomy/soil", "agronomy/material"},
	"agronomy/nutrient": {"climate", "agronomy", "agronomy/soil", "agronomy/material", "agronomy/lime"},
	"agronomy/check":    turf, // tests only
	"schedule/law":      {},
	"schedule/word":     turf,
	"schedule":          slices.Concat(turf, []string{"schedule/law", "schedule/word"}),
	"schedule/rule":     core,
	"schedule/place":    {},
	"schedule/plan":     slices.Concat(core, []string{"schedule/rule", "schedule/place"}),
	"schedule/sitefile": core,
	"schedule/ask":      slices.Concat(core, []string{"schedule/sitefile"}),
	"schedule/text":     core,
	"schedule/lesson":   core,
	"schedule/page":     slices.Concat(core, []string{"schedule/lesson"}),
	"schedule/ical":     core,
	"schedule/book":     slices.Concat(core, []string{"schedule/rule", "schedule/plan", "schedule/sitefile"}),
	"schedule/door":     slices.Concat(core, []string{"schedule/rule", "schedule/place", "schedule/plan", "schedule/sitefile", "schedule/ask", "schedule/ical", "schedule/page"}),
	"schedule/feed":     slices.Concat(core, []string{"schedule/rule", "schedule/plan", "schedule/sitefile", "schedule/ask", "schedule/door", "schedule/book", "schedule/ical", "schedule/page", "schedule/text"}),

	"cmd/swardbook":          nil, // everything
	"cmd/swardbook/terminal": {},
	"cmd/swardbook/flag":     core,
	"cmd/swardbook/figure":   slices.Concat(core, []string{"cmd/swardbook/flag"}),
	"cmd/hardiness":          {"climate"},
	"cmd/askpage/http":       {},
	"cmd/askpage":            slices.Concat(core, []string{"schedule/plan", "schedule/sitefile", "schedule/ask", "schedule/door", "schedule/page"}),
}

// homes are the third-party modules and the one package each belongs to.
var homes = map[string]string{
	"github.com/arran4/golang-ical":   "schedule/ical",
	"github.com/BurntSushi/toml":      "schedule/sitefile",
	"github.com/spf13/pflag":          "cmd/swardbook/flag",
	"rsc.io/qr":                       "schedule/page",
	"github.com/rogpeppe/go-internal": "", // tests only
}

// pure packages have no clock and no world outside.
var pure = slices.Concat(core, []string{"schedule/rule", "schedule/place", "schedule/plan", "schedule/ask"})

// outside is what pure packages must not import. io, which climate reads
// normals from, opens nothing by itself.
var outside = []string{"os", "net", "log", "syscall", "math/rand", "crypto/rand"}

func TestArrows(t *testing.T) {
	for _, f := range sourceFiles(t) {
		allowed, known := arrows[f.pkg]
		if !known {
			t.Errorf("%s: package %s has no place in the layout", f.path, f.pkg)
			continue
		}
		for _, imp := range f.imports() {
			own, isOwn := strings.CutPrefix(imp, "swardbook/")
			switch {
			case isOwn && f.test && (own == "schedule/sitefile" || own == "schedule/plan"): // tests may plan from a site file
			case isOwn && f.test && own == "agronomy/check": // what the tests of agronomy share
			case isOwn && f.test && f.ast.Name.Name == "plan_test": // plan's tests check that every output shows a kind that is added
			case isOwn && f.pkg != "cmd/swardbook" && own != f.pkg && !slices.Contains(allowed, own):
				t.Errorf("%s imports %s, against the arrows", f.path, own)
			case !isOwn && strings.Contains(strings.Split(imp, "/")[0], "."):
				home, module := homeOf(imp)
				if module == "" {
					t.Errorf("%s imports %s, which is no dependency of this project", f.path, imp)
				} else if home == "" && !f.test || home != "" && home != f.pkg {
					t.Errorf("%s imports %s, whose home is %q", f.path, imp, home)
				}
			case !isOwn && !f.test && slices.Contains(pure, f.pkg) && forbidden(imp):
				t.Errorf("%s imports %s, and package %s is pure", f.path, imp, f.pkg)
			}
		}
		if f.test || !slices.Contains(pure, f.pkg) {
			continue
		}
		ast.Inspect(f.ast, func(n ast.Node) bool {
			s, ok := n.(*ast.SelectorExpr)
			if !ok {
				return true
			}
			if x, ok := s.X.(*ast.Ident); ok && x.Name == "time" && slices.Contains([]string{"Now", "Since", "Until", "Local", "After", "Tick"}, s.Sel.Name) {
				t.Errorf("%s uses time.%s, and package %s is pure", f.path, s.Sel.Name, f.pkg)
			}
			return true
		})
	}
}

func forbidden(imp string) bool {
	for _, o := range outside {
		if imp == o || strings.HasPrefix(imp, o+"/") {
			return true
		}
	}
	return false
}

func homeOf(imp string) (home, module string) {
	for m, h := range homes {
		if imp == m || strings.HasPrefix(imp, m+"/") {
			return h, m
		}
	}
	return "", ""
}

// go.mod asks for nothing directly that has no home.
func TestDirectDependencies(t *testing.T) {
	text, err := os.ReadFile(root + "/go.mod")
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(text)) {
		fields := strings.Fields(line)
		if len(fields) < 2 || !strings.Contains(fields[0], "/") || strings.Contains(line, "// indirect") {
			continue
		}
		if _, module := homeOf(fields[0]); module == "" {
			t.Errorf("go.mod asks for %s, which has no home", fields[0])
		}
	}
}

// mostFiles is how many files of code a folder holds, so that its list can be
// read at a glance: a folder that grows past it has a second subject.
const mostFiles = 25

func TestFoldersStaySmall(t *testing.T) {
	files := map[string]int{}
	for _, f := range sourceFiles(t) {
		if !f.test {
			files[f.pkg]++
		}
	}
	for folder, n := range files {
		if n > mostFiles {
			t.Errorf("%s has %d files of code, more than %d: join what belongs together, or make a package of it", folder, n, mostFiles)
		}
	}
}

// Packages and files are named as chapters, not as drawers.
func TestNames(t *testing.T) {
	drawers := []string{"util", "utils", "common", "helper", "helpers", "types", "misc", "shared"}
	for _, f := range sourceFiles(t) {
		stem := strings.TrimSuffix(strings.TrimSuffix(path.Base(f.path), ".go"), "_test")
		if slices.Contains(drawers, stem) || slices.Contains(drawers, path.Base(f.pkg)) || slices.Contains(drawers, f.ast.Name.Name) {
			t.Errorf("%s: a name that says nothing", f.path)
		}
	}
}

type sourceFile struct {
	path, pkg string
	test      bool
	ast       *ast.File
}

func (f sourceFile) imports() []string {
	var out []string
	for _, i := range f.ast.Imports {
		if p, err := strconv.Unquote(i.Path.Value); err == nil {
			out = append(out, p)
		}
	}
	return out
}

// sourceFiles parses every Go file of the module.
func sourceFiles(t *testing.T) []sourceFile {
	t.Helper()
	var out []sourceFile
	set := token.NewFileSet()
	err := filepath.WalkDir(root, func(p string, d fs.DirEntry, err error) error {
		name := d.Name()
		switch {
		case err != nil:
			return err
		case d.IsDir() && p != root && (strings.HasPrefix(name, ".") || name == "testdata" || name == "node_modules" || name == "examples"):
			return fs.SkipDir
		case d.IsDir() || filepath.Ext(name) != ".go":
			return nil
		}
		rel, err := filepath.Rel(root, p)
		if err != nil {
			return err
		}
		parsed, err := parser.ParseFile(set, p, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		rel = filepath.ToSlash(rel)
		out = append(out, sourceFile{rel, path.Dir(rel), strings.HasSuffix(name, "_test.go"), parsed})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(out) < 50 {
		t.Fatalf("only %d files found", len(out))
	}
	return out
}
