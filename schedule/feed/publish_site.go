package feed

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"slices"

	"swardbook/schedule/book"
)

// write publishes one site. The line is for the list of all sites, and may come
// with an error.
func (p *publisher) write(turns *lane, name string) (*indexLine, error) {
	if err := nameable(name); err != nil {
		return nil, err
	}
	if prefix, was, private := p.unchanged(name); was != nil {
		return p.keep(prefix, name, was, private)
	}
	got, err := bounded(p.o.Turn, turns.run, func() (pressed, error) { return p.press(name), nil })
	if err != nil {
		turns.leave() // the turn may never end
		return nil, err
	}
	r := got.reading
	prefix := r.prefix(name)
	if r.program == nil && r.private && prefix == name {
		p.mu.Lock()
		p.unknown = true
		p.mu.Unlock()
	} else if err := p.claim(prefix, name); err != nil {
		return nil, err
	}
	var line *indexLine
	if r.program == nil {
		if _, err := p.o.Out.Stat(prefix + "/" + landingFile); err == nil && !r.private {
			l := newIndexLine(prefix, name, brokenNote) // its last good pages are there
			line = &l
		}
		return line, &failed{r.problems, r.fault}
	}
	made, err := got.files, got.err
	if err != nil {
		return nil, err
	}
	private, err := p.closed(prefix, r.private)
	if err != nil {
		return nil, err
	}
	folder, err := p.folder(prefix, private)
	if err != nil {
		return nil, err
	}
	defer folder.Close()
	over := slices.DeleteFunc(slices.Clone(made), func(m file) bool { return m.body != nil })
	made = slices.DeleteFunc(made, func(m file) bool { return m.body == nil })
	known := map[string]bool{}
	files := make([]book.File, len(made))
	for i, m := range made {
		known[m.path] = true
		files[i] = book.File{Name: m.path, Data: m.body}
	}
	for _, m := range over {
		if err := folder.Remove(m.path); err != nil {
			return nil, unwritten(err)
		}
	}
	wrote, err := book.ReplaceAll(folder, files, private)
	if err == nil {
		old := oldParts(folder, known)
		p.count(wrote, len(made)-wrote, prefix, old)
		if p.o.Version != "" {
			err = p.leave(folder, r, made, old, private)
		}
	}
	if err != nil {
		return nil, unwritten(err)
	}
	if !r.private {
		l := newIndexLine(prefix, r.program.Title, "")
		line = &l
	}
	return line, nil
}

// pressed is the result of planning a site and making its files.
type pressed struct {
	reading *reading
	files   []file
	err     error // of the files
}

// press reads and plans a site and makes its files, but writes none.
func (p *publisher) press(name string) (out pressed) {
	out.reading = read(p.o.Sites, name, p.o.Now, p.o.Plan)
	if out.reading.program == nil {
		return out
	}
	prefix := out.reading.prefix(name)
	t := &tree{base: p.o.Base, prefix: prefix, now: p.o.Now}
	folder, err := p.o.Out.OpenRoot(prefix)
	if err != nil {
		t.old = func(string) ([]byte, error) { return nil, err }
		out.files, out.err = t.files(out.reading.program)
		return out
	}
	defer folder.Close()
	t.old = func(path string) ([]byte, error) { return readAtMost(folder, path, mostCalendar) }
	var parts []string
	for _, k := range t.parts(out.reading.program) {
		parts = append(parts, k.path)
	}
	t.left = left(folder, ".", parts)
	out.files, out.err = t.files(out.reading.program)
	return out
}

// keep leaves a site as it is.
func (p *publisher) keep(prefix, name string, was *imprint, private bool) (*indexLine, error) {
	if err := p.claim(prefix, name); err != nil {
		return nil, err
	}
	p.count(0, len(was.Files), prefix, slices.DeleteFunc(was.Old, func(file string) bool {
		_, err := p.o.Out.Stat(prefix + "/" + file)
		return err != nil
	}))
	if private {
		return nil, nil
	}
	l := newIndexLine(prefix, was.Title, "")
	return &l, nil
}

func (p *publisher) count(wrote, same int, prefix string, old []string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.done.Wrote += wrote
	p.done.Same += same
	for _, file := range old {
		p.done.Old = append(p.done.Old, prefix+"/"+file)
	}
}

// folder opens the folder of a site, made if it is missing, and removes from it
// what a killed run left among the files.
func (p *publisher) folder(prefix string, private bool) (*os.Root, error) {
	mode := fs.FileMode(0o777) // less what the user's mask takes
	if private {
		mode = 0o700
	}
	made := p.o.Out.Mkdir(prefix, mode)
	if made != nil && !errors.Is(made, fs.ErrExist) {
		return nil, unwritten(made)
	}
	folder, err := p.o.Out.OpenRoot(prefix)
	if err != nil {
		return nil, unwritten(err)
	}
	if made == nil { // a new folder holds nothing
		return folder, nil
	}
	for _, dir := range []string{".", "person", "area"} {
		if err := book.Sweep(folder, dir); err != nil {
			folder.Close()
			return nil, fmt.Errorf("could not remove what an earlier run left: %w", bare(err))
		}
	}
	return folder, nil
}

// closed tells whether the files of a site are made for their owner alone: it
// has a secret, and nobody has opened its folder since. As the folder bears the
// secret as its name, the folder above must not be listed by others.
func (p *publisher) closed(prefix string, private bool) (bool, error) {
	if !private {
		return false, nil
	}
	const list = 0o044
	if info, err := p.o.Out.Stat("."); err != nil {
		return true, err
	} else if mode := info.Mode().Perm(); mode&list != 0 {
		if err := p.o.Out.Chmod(".", mode&^list); err != nil {
			return true, fmt.Errorf("the folder could not be closed to others, who would read the secret there: %w", bare(err))
		}
	}
	info, err := p.o.Out.Stat(prefix)
	return err != nil || info.Mode().Perm()&0o077 == 0, nil
}

// unwritten says which file of a site could not be written.
func unwritten(err error) error {
	if e, ok := errors.AsType[*fs.PathError](err); ok {
		return fmt.Errorf("could not write %s: %w", path.Base(e.Path), e.Err)
	}
	return err
}

// claim takes the first part of the path for a site.
func (p *publisher) claim(prefix, name string) error {
	p.mu.Lock()
	defer p.mu.Unlock()
	if other, taken := p.prefixes[prefix]; taken {
		return fmt.Errorf("%s has the same address; give one of them another name or secret", siteFile(other))
	}
	p.prefixes[prefix] = name
	return nil
}
