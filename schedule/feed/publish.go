package feed

import (
	"context"
	"errors"
	"fmt"
	"hash/fnv"
	"io/fs"
	"os"
	"path"
	"runtime"
	"slices"
	"strings"
	"sync"
	"time"

	"swardbook/schedule"
	"swardbook/schedule/book"
	"swardbook/schedule/plan"
)

// Publishing says what to publish, and where.
type Publishing struct {
	Sites, Out *os.Root
	Base       string           // public address of Out, from [ParseBase]; "" not known
	Plan       schedule.Planner // nil: [plan.Program]
	Version    string           // of the program; what another version published is made anew; "" everything is
	Turn       time.Duration    // the most that one site may take; 0: half a minute
	Shard      Shard            // the part of the folder to publish; zero is all of it
	Jobs       int              // sites at once; 0: as many as there are processors
	Now        time.Time
	Progress   func(done, of int) // called now and then from one goroutine; nil: no one asks
}

// Shard is one part of a folder that several machines share: part K of N, from
// 1 to N. The zero value is the whole.
type Shard struct{ K, N int }

// Has tells whether a site belongs to the part. It depends on the site's name
// alone, so that a site stays where it is when others come and go.
func (s Shard) Has(name string) bool {
	if s.N <= 1 {
		return true
	}
	h := fnv.New64a()
	h.Write([]byte(name))
	return int(h.Sum64()%uint64(s.N)) == s.K-1
}

// Published is what [Publish] did.
type Published struct {
	Sites        int // tried
	Wrote, Same  int // files
	Failed       []Failure
	Old          []string // files and folders of Out that no site has now
	OldUnchecked string   // why folders of other sites were not looked for; "" they were
}

// Failure is one site that could not be published; its files in Out are as
// they were.
type Failure struct {
	Name     string
	Problems []schedule.Problem
	Trace    string // where the program panicked; "" it did not
}

// Publish writes the tree of every site of the folder as plain files. What is
// there already with the same bytes is not touched. Nothing is deleted but the calendar of
// a person or an area that has left the site, 60 days after it said so. One site that fails never stops the others. The error is for what stops them all,
// a context that ended among it.
//
// Out is also the memory of the calendars: the file that is there is updated,
// so that subscribed phones see changes as changes. Publish into the same Out
// again.
func Publish(ctx context.Context, o Publishing) (*Published, error) {
	names, err := siteNames(o.Sites)
	if err != nil {
		return nil, fmt.Errorf("could not read the folder of sites: %w", bare(err))
	}
	slices.Sort(names)
	names = slices.DeleteFunc(names, func(n string) bool { return !o.Shard.Has(n) })
	if o.Plan == nil {
		o.Plan = plan.Program
	}
	jobs := o.Jobs
	if jobs <= 0 {
		jobs = runtime.GOMAXPROCS(0)
	}
	if err := book.Sweep(o.Out, "."); err != nil {
		return nil, fmt.Errorf("could not remove what an earlier run left: %w", bare(err))
	}
	p := &publisher{o: o, done: Published{Sites: len(names)}, prefixes: map[string]string{}}
	next := make(chan string)
	var work sync.WaitGroup
	for range jobs {
		work.Go(func() {
			var turns lane
			defer turns.leave()
			for name := range next {
				p.site(&turns, name)
			}
		})
	}
	for i, name := range names {
		if o.Progress != nil && i%50 == 0 {
			o.Progress(i, len(names))
		}
		select {
		case next <- name:
			continue
		case <-ctx.Done():
		}
		break
	}
	close(next)
	work.Wait()
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	if o.Progress != nil {
		o.Progress(len(names), len(names))
	}
	p.lookForOld()
	slices.SortFunc(p.done.Failed, func(a, b Failure) int { return strings.Compare(a.Name, b.Name) })
	slices.Sort(p.done.Old)
	if o.Shard.N <= 1 {
		err = p.index()
	}
	return &p.done, err
}

// publisher is one run of Publish.
type publisher struct {
	o Publishing

	mu       sync.Mutex
	done     Published
	lines    []indexLine
	prefixes map[string]string // the site at each first part of the path
	unknown  bool              // the first part of a site that failed is not known
}

// site publishes one site, or notes why it could not.
func (p *publisher) site(turns *lane, name string) {
	var line *indexLine
	err := schedule.Guarded(func() (err error) {
		line, err = p.write(turns, name)
		return err
	})
	p.mu.Lock()
	defer p.mu.Unlock()
	if line != nil {
		p.lines = append(p.lines, *line)
	}
	if err != nil {
		f, ok := errors.AsType[*failed](err)
		if !ok {
			f = &failed{problems: []schedule.Problem{{File: siteFile(name), Message: err.Error()}}}
			f.fault, _ = errors.AsType[*schedule.Fault](err)
		}
		failure := Failure{Name: name, Problems: f.problems}
		if f.fault != nil {
			failure.Trace = f.fault.Trace
		}
		p.done.Failed = append(p.done.Failed, failure)
	}
}

// failed is the error of a site whose files have problems.
type failed struct {
	problems []schedule.Problem
	fault    *schedule.Fault // nil: the files are at fault
}

func (f *failed) Error() string { return fmt.Sprint(len(f.problems), " problems") }

// oldParts lists calendars of persons and areas that the site no longer has.
func oldParts(folder *os.Root, known map[string]bool) []string {
	var out []string
	for _, part := range []string{"person", "area"} {
		for _, e := range entries(folder, part) {
			if file := part + "/" + e.Name(); !known[file] {
				out = append(out, file)
			}
		}
	}
	return out
}

func entries(folder *os.Root, dir string) []fs.DirEntry {
	d, err := folder.Open(dir)
	if err != nil {
		return nil
	}
	defer d.Close()
	all, _ := d.ReadDir(-1) // what cannot be listed is not called old
	return all
}

// index writes the list of sites.
func (p *publisher) index() error {
	body, err := indexOf(p.lines, 0, false)
	if err != nil {
		return err
	}
	changed, err := book.Replace(p.o.Out, landingFile, body)
	if err != nil {
		return fmt.Errorf("could not write %s: %w", landingFile, bare(err))
	}
	if changed {
		p.done.Wrote++
	} else {
		p.done.Same++
	}
	return nil
}

// lookForOld lists the folders of sites that are gone, or stand elsewhere now.
func (p *publisher) lookForOld() {
	switch {
	case p.o.Shard.N > 1:
		p.done.OldUnchecked = "this is one part of the folder, and the others are not known here"
		return
	case p.unknown:
		p.done.OldUnchecked = "a site that failed may have a secret, so its folder is not known"
		return
	}
	for _, e := range entries(p.o.Out, ".") {
		if _, current := p.prefixes[e.Name()]; current || !e.IsDir() {
			continue
		}
		if _, err := p.o.Out.Stat(path.Join(e.Name(), calendarFile)); err == nil {
			p.done.Old = append(p.done.Old, e.Name()+"/")
		}
	}
}
