package feed

import (
	"os"
	"time"
)

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
