package main

import (
	"fmt"
	"os"
	"path/filepath"

	"swardbook/schedule/book"
	"swardbook/schedule/door"
)

// askFolder is where the ask page lies in a published folder.
const askFolder = "ask"

// publishAsk writes the ask page beside the sites, for a server that only hands out
// files: the planner of the folder goes with it.
func (s *session) publishAsk(out, folder string) error {
	var p door.Planner
	for name, to := range map[string]*[]byte{door.PlannerFile: &p.Packed, door.RuntimeFile: &p.Runtime} {
		data, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil {
			return fmt.Errorf("could not read the planner: %w; make it with: go run ./cmd/askpage -o %s", bare(err), folder)
		}
		*to = data
	}
	files, err := door.Static(p)
	if err != nil {
		return fmt.Errorf("%s: %w; make it anew with: go run ./cmd/askpage -o %s", folder, err, folder)
	}
	dir := filepath.Join(out, askFolder)
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return fmt.Errorf("could not make %s: %w", dir, bare(err))
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		return fmt.Errorf("could not open %s: %w", dir, bare(err))
	}
	defer root.Close()
	wrote, size := 0, 0
	for _, f := range files {
		changed, err := book.Replace(root, f.Name, f.Data)
		if err != nil {
			return fmt.Errorf("could not write %s: %w", filepath.Join(dir, f.Name), bare(err))
		}
		if changed {
			wrote++
		}
		size += len(f.Data)
	}
	return s.print(fmt.Sprintf("%s: the ask page, %d files written, %d unchanged; %.1f MB\n", dir, wrote, len(files)-wrote, float64(size)/1e6))
}
