//go:build !js

// Command askpage is the planner of the ask page for a browser (main_js.go): what a
// server would answer, worked out where the page is read. On any other system it makes
// the folder that "swardbook publish --ask" takes the planner from:
//
//	go run ./cmd/askpage -o planner
package main

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"swardbook/schedule/door"
)

func main() {
	out := flag.String("o", "planner", "the folder to make")
	flag.Parse()
	if flag.NArg() > 0 {
		fmt.Fprintln(os.Stderr, "usage: go run ./cmd/askpage -o FOLDER")
		os.Exit(2)
	}
	if err := build(*out); err != nil {
		fmt.Fprintln(os.Stderr, "askpage:", err)
		os.Exit(1)
	}
}

// build compiles this command for the browser and packs it beside the script of the
// same toolchain that runs it. The same source and toolchain give the same bytes.
func build(out string) error {
	if err := os.MkdirAll(out, 0o777); err != nil {
		return err
	}
	temp, err := os.MkdirTemp("", "askpage")
	if err != nil {
		return err
	}
	defer os.RemoveAll(temp)
	wasm := filepath.Join(temp, "askpage.wasm")
	root, err := goAnswers("env", "GOROOT")
	if err != nil {
		return err
	}
	overlay, err := withoutClient(root, temp)
	if err != nil {
		return err
	}
	compile := exec.Command("go", "build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-overlay", overlay, "-o", wasm, "swardbook/cmd/askpage")
	compile.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	compile.Stderr = os.Stderr
	if err := compile.Run(); err != nil {
		return fmt.Errorf("building for the browser: %w; run this in a folder of the source", err)
	}
	plain, err := os.ReadFile(wasm)
	if err != nil {
		return err
	}
	var packed bytes.Buffer
	z, err := gzip.NewWriterLevel(&packed, gzip.BestCompression)
	if err != nil {
		return err
	}
	if _, err := z.Write(plain); err != nil {
		return err
	}
	if err := z.Close(); err != nil {
		return err
	}
	runtime, err := os.ReadFile(filepath.Join(root, "lib", "wasm", door.RuntimeFile))
	if err != nil {
		return err
	}
	for name, data := range map[string][]byte{door.PlannerFile: packed.Bytes(), door.RuntimeFile: runtime} {
		if err := os.WriteFile(filepath.Join(out, name), data, 0o666); err != nil {
			return err
		}
	}
	fmt.Printf("%s: the planner, %.1f MB, %.1f MB packed\n", out, float64(len(plain))/1e6, float64(packed.Len())/1e6)
	return nil
}

// goAnswers runs the go command and gives what it prints.
func goAnswers(args ...string) (string, error) {
	out, err := exec.Command("go", args...).Output()
	if err != nil {
		return "", fmt.Errorf("asking go %s: %w; run this in a folder of the source", strings.Join(args, " "), err)
	}
	return strings.TrimSpace(string(out)), nil
}

// withoutClient writes, for the compiler, that the package of this folder stands in the
// place of the library's web client, and gives the file that says so.
func withoutClient(root, temp string) (string, error) {
	dir, err := goAnswers("list", "-f", "{{.Dir}}", "swardbook/cmd/askpage/http")
	if err != nil {
		return "", err
	}
	library := filepath.Join(root, "src", "net", "http")
	files, err := filepath.Glob(filepath.Join(library, "*.go"))
	if err != nil || len(files) == 0 {
		return "", fmt.Errorf("%s holds no package of the library", library)
	}
	replace := map[string]string{}
	for _, f := range files {
		replace[f] = "" // an empty path hides the file from the compiler
	}
	replace[filepath.Join(library, "http.go")] = filepath.Join(dir, "http.go")
	text, err := json.Marshal(map[string]any{"Replace": replace})
	if err != nil {
		return "", err
	}
	overlay := filepath.Join(temp, "overlay.json")
	return overlay, os.WriteFile(overlay, text, 0o666)
}
