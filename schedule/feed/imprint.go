package feed

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"time"

	"swardbook/schedule/book"
)

// imprintFile stands beside the published files of a site and tells nothing
// that they do not tell.
const imprintFile = ".published"

// imprint tells what the published files of a site were made of, and how they were left.
// As long as neither has changed, there is nothing to publish.
type imprint struct {
	Of      string    `json:"of"` // a hash of the site's files, the day, the version and the base
	Normals string    `json:"normals,omitempty"`
	Title   string    `json:"title"`
	Files   []printed `json:"files"`
	Old     []string  `json:"old,omitempty"` // calendars that the site no longer has
}

// printed is a published file as it was left.
type printed struct {
	Path string `json:"path"`
	Size int64  `json:"size"`
	Time int64  `json:"time"` // nanoseconds since 1970
}

// of gives the hash of what a site's files are to be made of.
func (p *publisher) of(in *inputs) string {
	sum := sha256.Sum256(fmt.Appendf(nil, "%x\n%s\n%s\n%s\n", in.sum, day(p.o.Now), p.o.Version, p.o.Base))
	return hex.EncodeToString(sum[:])
}

// unchanged gives the imprint of a site for which there is nothing to do, and
// nil for all others. It reads the site's files, as their times prove nothing,
// but plans nothing.
func (p *publisher) unchanged(name string) (prefix string, was *imprint, private bool) {
	if p.o.Version == "" {
		return "", nil, false
	}
	var in inputs
	var err error
	if in.text, err = readAtMost(p.o.Sites, siteFile(name), mostText); err != nil {
		return "", nil, false
	}
	if mayHoldSecret(in.text) {
		r := load(p.o.Sites, name, p.o.Now)
		if prefix, private = r.prefix(name), r.private; !r.usable() {
			return "", nil, false
		}
		in = r.inputs
		was = p.imprint(prefix)
	} else if was = p.imprint(name); was != nil {
		prefix = name
		if in.book, err = readAtMost(p.o.Sites, recordBook(name), mostBook); errors.Is(err, fs.ErrNotExist) {
			in.book, err = nil, nil
		}
		if err == nil && was.Normals != "" {
			in.normals, err = readAtMost(p.o.Sites, was.Normals, mostCalendar)
		}
		if err != nil {
			return "", nil, false
		}
		in.seal()
	}
	if was == nil || was.Of != p.of(&in) || !p.asLeft(prefix, was.Files) {
		return "", nil, false
	}
	return prefix, was, private
}

func (p *publisher) imprint(prefix string) *imprint {
	data, err := readAtMost(p.o.Out, prefix+"/"+imprintFile, mostText)
	if err != nil {
		return nil
	}
	is := &imprint{}
	if json.Unmarshal(data, is) != nil {
		return nil // cut short by a power cut: made anew
	}
	return is
}

// asLeft tells whether nobody has touched the published files.
func (p *publisher) asLeft(prefix string, files []printed) bool {
	folder, err := p.o.Out.OpenRoot(prefix)
	if err != nil {
		return false
	}
	defer folder.Close()
	for _, f := range files {
		info, err := folder.Lstat(f.Path)
		if err != nil || !info.Mode().IsRegular() || info.Size() != f.Size || info.ModTime().UnixNano() != f.Time {
			return false
		}
	}
	return true
}

// leave writes down how the files of a site were left.
func (p *publisher) leave(folder *os.Root, r *reading, made []file, old []string, private bool) error {
	is := &imprint{Of: p.of(&r.inputs), Normals: r.normalsName, Title: r.program.Title, Old: old}
	for _, m := range made {
		info, err := folder.Lstat(m.path)
		if err != nil {
			return err
		}
		is.Files = append(is.Files, printed{m.path, info.Size(), info.ModTime().UnixNano()})
	}
	data, err := json.Marshal(is)
	if err != nil {
		return err
	}
	_, err = book.ReplaceAll(folder, []book.File{{Name: imprintFile, Data: data}}, private)
	return err
}

// stamp tells whether the files of a site may have changed, without reading
// them.
type stamp struct {
	site, record, normals fileStamp
	normalsName           string
	young                 bool // a file is so new that another change might not show
}

type fileStamp struct {
	there bool
	size  int64
	time  time.Time
}

// youth is how long the time stamp of a file may stay the same although the
// file changes again: file systems keep time in steps of up to two seconds.
const youth = 2 * time.Second // [common]

func stampOf(root *os.Root, name, normals string, now time.Time) stamp {
	s := stamp{normalsName: normals}
	look := func(file string) fileStamp {
		info, err := root.Stat(file)
		if err != nil {
			return fileStamp{}
		}
		s.young = s.young || now.Sub(info.ModTime()) < youth
		return fileStamp{true, info.Size(), info.ModTime()}
	}
	s.site, s.record = look(siteFile(name)), look(recordBook(name))
	if normals != "" {
		s.normals = look(normals)
	}
	return s
}

// same tells whether nothing can have changed between two stamps.
func (s stamp) same(t stamp) bool {
	return !s.young && s.site == t.site && s.record == t.record && s.normals == t.normals && s.normalsName == t.normalsName
}
