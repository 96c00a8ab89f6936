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
	compile := exec.Command("go", "build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-o", wasm, "swardbook/cmd/askpage")
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
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return fmt.Errorf("asking for the toolchain's folder: %w", err)
	}
	runtime, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", door.RuntimeFile))
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
