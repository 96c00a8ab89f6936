package main

import (
	"cmp"
	"crypto/sha256"
	"fmt"
	"io"
	"os"
	"runtime/debug"
	"strconv"
	"strings"

	"swardbook/cmd/swardbook/flag"
	"swardbook/cmd/swardbook/terminal"
	"swardbook/schedule/feed"
)

var publishCommand = command{
	name: "publish", args: "[DIR]",
	what: "the same as static files",
	help: `    swardbook publish sites -o public --base https://example.org/lawns
    swardbook publish sites -o public --shard 3/40
    swardbook publish -o public --ask --planner planner

Writes for every site file of the folder what serve would serve, as plain files
for any web server or object store. A site whose files, day and program are as
they were the last time takes almost no time; files with nothing to change are
not touched, and none is deleted. A site that cannot be published never stops
the others: its files stay as they were, it is named at the end, and the exit
status is 3.

A site with calendar.secret is written for you alone, into a folder named by the
secret, and DIR can no longer be listed by others. For a web server that runs as
somebody else, open that one folder (chmod -R go+rX); it then stays open.

Publish into the same folder every time: its calendars are read first, so that
changes reach phones as changes.

With --ask the folder also holds the ask page (ask/), with which anybody makes a
program of their own: it plans in the reader's browser, and what is typed stays
there. The planner for it is made once for each release of the source:
go run ./cmd/askpage -o planner

    -o, --output DIR    where to write
        --base URL      the public address of that folder, for links, to
                        subscribe, QR codes
        --shard K/N     part K of N of the site files, for many machines at work
                        on one folder; no list of all sites is written
        --jobs N        sites at once (default: one for each processor)
        --ask           the ask page too; without DIR, it alone
        --planner DIR   the planner that goes with it
        --no-color      no colour
`,
	setup: func(fs *flag.Set) func(*session, []string) error {
		out := fs.StringP("output", "o", "", "")
		base := fs.String("base", "", "")
		shard := fs.String("shard", "", "")
		jobs := fs.Int("jobs", 0, "")
		asks := fs.Bool("ask", false, "")
		planner := fs.String("planner", "", "")
		return func(s *session, args []string) error {
			switch {
			case *asks && *planner == "":
				return misuse("--ask needs --planner with the folder of the planner; make it with: go run ./cmd/askpage -o planner")
			case *planner != "" && !*asks:
				return misuse("--planner goes with --ask")
			case *asks && (*out == "" || *out == "-"):
				return misuse("-o is missing: name the folder to write to")
			case *asks && len(args) == 0:
				return s.publishAsk(*out, *planner)
			}
			dir, err := one(args, "DIR")
			if err != nil {
				return err
			}
			switch {
			case *out == "" || *out == "-":
				return misuse("-o is missing: name the folder to write to")
			case samePath(dir, *out):
				return misuse("-o: %s holds the site files; choose another folder", *out)
			case *jobs < 0 || *jobs > 1000:
				return misuse("--jobs: give 1 to 1000")
			}
			o := feed.Publishing{Plan: s.planner, Jobs: *jobs, Now: s.now()}
			if o.Base, err = baseFlag(*base); err != nil {
				return err
			}
			if o.Shard, err = shardFlag(*shard); err != nil {
				return err
			}
			if *asks {
				if err := s.publishAsk(*out, *planner); err != nil {
					return err
				}
			}
			return s.publish(dir, *out, o)
		}
	},
}

func shardFlag(given string) (feed.Shard, error) {
	if given == "" {
		return feed.Shard{}, nil
	}
	k, n, _ := strings.Cut(given, "/")
	kk, err1 := strconv.Atoi(k)
	nn, err2 := strconv.Atoi(n)
	if err1 != nil || err2 != nil || kk < 1 || kk > nn {
		return feed.Shard{}, misuse("--shard: %q is no part of a whole; write 3/40 for the third part of 40", given)
	}
	return feed.Shard{K: kk, N: nn}, nil
}

func (s *session) publish(dir, out string, o feed.Publishing) error {
	var err error
	if o.Sites, err = os.OpenRoot(dir); err != nil {
		return fmt.Errorf("could not open %s: %w", dir, bare(err))
	}
	defer o.Sites.Close()
	if err := os.MkdirAll(out, 0o777); err != nil {
		return fmt.Errorf("could not make %s: %w", out, bare(err))
	}
	if o.Out, err = os.OpenRoot(out); err != nil {
		return fmt.Errorf("could not open %s: %w", out, bare(err))
	}
	defer o.Out.Close()
	if _, ok := terminal.Width(s.stderr); ok {
		o.Progress = func(done, of int) {
			end := ""
			if done == of {
				end = "\n"
			}
			fmt.Fprintf(s.stderr, "\r%d of %d sites%s", done, of, end)
		}
	}
	defer collectRarely()()
	o.Version = thisProgram()
	p, err := feed.Publish(s.ctx, o)
	if p == nil {
		return err
	}
	told := s.tellPublished(out, o, p)
	if err != nil && told != nil {
		s.say("%s", told)
	}
	return cmp.Or(err, told)
}

// mostMemory is the memory up to which a run collects garbage rarely; near it, garbage is
// collected as often as needed to stay below. With the program itself the process stays
// under 100 MB.
const mostMemory = 80 << 20 // [common]

// collectRarely lets the memory grow far before garbage is collected, as nearly all that
// a site takes is garbage soon after. It gives a function that restores the former
// settings.
func collectRarely() func() {
	percent := debug.SetGCPercent(1000)
	limit := debug.SetMemoryLimit(-1)
	debug.SetMemoryLimit(min(limit, mostMemory))
	return func() {
		debug.SetGCPercent(percent)
		debug.SetMemoryLimit(limit)
	}
}

// thisProgram tells one build of the program from another, by its content; ""
// when that cannot be read.
func thisProgram() string {
	name, err := os.Executable()
	if err != nil {
		return ""
	}
	f, err := os.Open(name)
	if err != nil {
		return ""
	}
	defer f.Close()
	sum := sha256.New()
	if _, err := io.Copy(sum, f); err != nil {
		return ""
	}
	return fmt.Sprintf("%x", sum.Sum(nil))
}

func (s *session) tellPublished(out string, o feed.Publishing, p *feed.Published) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %d sites; %d files written, %d unchanged\n", out, p.Sites-len(p.Failed), p.Wrote, p.Same)
	if o.Shard.N > 1 {
		b.WriteString("This is one part, so no list of all sites was written.\n")
	}
	if len(p.Old) > 0 {
		b.WriteString("No site has these any more; remove them if they are not wanted:\n")
		for _, name := range p.Old {
			fmt.Fprintf(&b, "  %s\n", name)
		}
	}
	if p.OldUnchecked != "" {
		fmt.Fprintf(&b, "Folders of sites that are gone were not looked for: %s.\n", p.OldUnchecked)
	}
	if err := s.print(b.String()); err != nil {
		return err
	}
	if len(p.Failed) == 0 {
		return nil
	}
	names := make([]string, len(p.Failed))
	for i, f := range p.Failed {
		s.tell(f.Problems)
		if f.Trace != "" {
			io.WriteString(s.stderr, f.Trace)
		}
		names[i] = f.Name
	}
	return siteError(fmt.Errorf("not published, and left as they were: %s", strings.Join(names, ", ")))
}
