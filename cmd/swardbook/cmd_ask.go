package main

import (
	"fmt"
	"log/slog"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"

	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule/book"
	"swardbook/schedule/door"
	"swardbook/schedule/feed"
)

var askCommand = command{
	name: "ask", args: "[FILE]",
	what: "the questions in a browser; writes or changes a site file",
	help: `    swardbook ask lawn.toml

Opens a page in your browser that asks for the place, the grass and the numbers
off the lab's sheet, writes them to FILE (default: lawn.toml), and shows the
program. If FILE is there, its answers stand in the page already; what you
change is changed in it, and comments and all the rest stay as they are. A line
of the record book that you change is struck out and stands anew at its end.

The page answers this machine alone, under an address that is new each time, and
nothing leaves the machine. Ctrl-C ends it.

        --no-open         do not open a browser; the address is printed anyway
        --addr HOST:PORT  where to answer (default 127.0.0.1, a free port); this
                          machine's own addresses only
        --no-color        no colour
`,
	setup: func(fs *flag.Set) func(*session, []string) error {
		closed := fs.Bool("no-open", false, "")
		addr := fs.String("addr", "127.0.0.1:0", "")
		return func(s *session, args []string) error {
			if len(args) == 0 {
				args = []string{"lawn.toml"}
			}
			file, err := one(args, "FILE")
			if err != nil {
				return err
			}
			return s.ask(file, *addr, !*closed)
		}
	},
}

func (s *session) ask(file, addr string, open bool) error {
	if !strings.HasSuffix(file, ".toml") {
		return misuse("%s: a site file is named like lawn.toml", file)
	}
	return inFolder(file, func(root *os.Root, name string) error {
		l, err := net.Listen("tcp", addr)
		if err != nil {
			return fmt.Errorf("could not listen: %w", err)
		}
		defer l.Close()
		here := l.Addr().(*net.TCPAddr)
		if !here.IP.IsLoopback() {
			return misuse("--addr: %s can be reached from other machines; use 127.0.0.1", addr)
		}
		asked, problems, err := feed.NewLocal(feed.LocalOptions{Root: root, Site: strings.TrimSuffix(name, ".toml"), File: file,
			Host: here.String(), Plan: s.planner, Now: s.now, Log: slog.New(slog.NewTextHandler(s.stderr, nil))})
		if err != nil {
			return err
		}
		if len(problems) > 0 {
			s.tell(problems)
			return exit{code: exitSite}
		}
		at := "http://" + here.String() + asked.Path()
		if err := s.print(at + "\n"); err != nil {
			return err
		}
		s.say("asking for %s at that address; Ctrl-C ends it", file)
		if open {
			if err := browse(at); err != nil {
				s.say("no browser could be opened (%s); open the address yourself", err)
			}
		}
		return feed.ServeLocal(s.ctx, l, asked)
	})
}

// browse opens an address in the browser of whoever runs this.
func browse(at string) error {
	name, args := "xdg-open", []string{at}
	switch runtime.GOOS {
	case "darwin":
		name = "open"
	case "windows":
		name, args = "rundll32", []string{"url.dll,FileProtocolHandler", at}
	}
	c := exec.Command(name, args...)
	if err := c.Start(); err != nil {
		return err
	}
	go c.Wait()
	return nil
}

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
