package door

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"embed"
	"errors"
	"fmt"
	"io"
	"slices"

	"swardbook/schedule"
)

//go:embed static
var scripts embed.FS

// Planner is what cmd/askpage makes: the planner for the browser, packed, and the
// script of the Go toolchain that runs it.
type Planner struct{ Packed, Runtime []byte }

// The names of the two in their folder, and beside the page.
const (
	PlannerFile = "planner.bin"
	RuntimeFile = "wasm_exec.js"
)

// File is one file of the page, as it is published.
type File struct {
	Name string
	Data []byte
}

// maxPlanner bounds what is unpacked to look at a planner: bytes.
const maxPlanner = 100 << 20

// Static gives the ask page as files for any web server: nothing answers there, so the
// page brings its planner along.
func Static(p Planner) ([]File, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	index, err := Door{Planner: true}.Begin(schedule.Date{})
	if err != nil {
		return nil, err
	}
	ask, err := scripts.ReadFile("static/ask.js")
	if err != nil {
		return nil, err
	}
	worker, err := scripts.ReadFile("static/sw.js")
	if err != nil {
		return nil, err
	}
	files := []File{{"index.html", index}, {"ask.js", ask}, {RuntimeFile, p.Runtime}, {PlannerFile, p.Packed}}
	sum := sha256.New()
	for _, f := range files {
		fmt.Fprintf(sum, "%s %d\n", f.Name, len(f.Data))
		sum.Write(f.Data)
	}
	worker = bytes.Replace(worker, []byte("BUILD"), fmt.Appendf(nil, "swardbook-ask-%x", sum.Sum(nil)[:8]), 1)
	return slices.Insert(files, 1, File{"sw.js", worker}), nil
}

// check refuses what is no planner.
func (p Planner) check() error {
	z, err := gzip.NewReader(bytes.NewReader(p.Packed))
	if err != nil {
		return errors.New(PlannerFile + " is no packed planner")
	}
	wasm, err := io.ReadAll(io.LimitReader(z, maxPlanner))
	switch {
	case err != nil || !bytes.HasPrefix(wasm, []byte("\x00asm")):
		return errors.New(PlannerFile + " is no packed planner")
	case !bytes.Contains(wasm, []byte(Mark)):
		return fmt.Errorf("%s is of another release than this program (%s)", PlannerFile, Mark)
	case !bytes.Contains(p.Runtime, []byte("globalThis.Go")):
		return errors.New(RuntimeFile + " is not the script that runs it")
	}
	return nil
}
