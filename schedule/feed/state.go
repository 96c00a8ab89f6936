package feed

import (
	"container/list"
	"sync"
	"time"

	"swardbook/schedule/book"
)

// keep stores a calendar for the next update and the next run, and gives the
// time of its last change. The caller has taken the site.
func (f *Feed) keep(s *site, m file, private bool, now time.Time) time.Time {
	name := s.name + "/" + m.path
	was, there := s.kept[m.path]
	if !there && f.o.State != nil {
		if body, err := readAtMost(f.o.State, name, mostCalendar); err == nil {
			if info, err := f.o.State.Stat(name); err == nil {
				was, there = kept{body, info.ModTime()}, true
			}
		}
	}
	k := kept{m.body, now.Truncate(time.Second)}
	switch {
	case there && string(was.body) == string(m.body):
		k.modified = was.modified
	case there && !k.modified.After(was.modified): // twice within a second
		k.modified = was.modified.Add(time.Second)
	}
	if f.o.State != nil {
		err := f.store(s, name, k, private)
		if err == nil {
			delete(s.kept, m.path)
			return k.modified
		}
		if !s.warned {
			s.warned = true
			f.o.Log.Warn("calendars cannot be kept; after a restart, changes made until then may not reach every phone",
				"site", s.logName(), "error", bare(err).Error())
		}
	}
	s.kept[m.path] = k
	return k.modified
}

// store writes a calendar into the state.
func (f *Feed) store(s *site, name string, k kept, private bool) error {
	if !s.swept {
		s.swept = true
		for _, dir := range []string{s.name, s.name + "/person", s.name + "/area"} {
			if err := book.Sweep(f.o.State, dir); err != nil {
				return err
			}
		}
	}
	replace := book.Replace
	if private {
		replace = book.ReplacePrivate
		if err := f.o.State.MkdirAll(s.name, 0o700); err != nil {
			return err
		}
		if err := f.o.State.Chmod(s.name, 0o700); err != nil {
			return err
		}
	}
	changed, err := replace(f.o.State, name, k.body)
	if err == nil && changed {
		err = f.o.State.Chtimes(name, k.modified, k.modified)
	}
	return err
}

// mostCached is the size of all bodies that are kept ready; those that nobody
// has asked for of late are dropped, and made again when they are asked for.
const mostCached = 48 << 20 // [common]

// cache knows which bodies are in memory, and drops some when they become too
// many: round by round those that were not used since the last round.
type cache struct {
	mu   sync.Mutex
	size int
	ring list.List // of *cachedBody
}

type cachedBody struct {
	site *site
	path string
	r    *resource
	size int
}

// add takes a body in, and gives those that must go for it.
func (c *cache) add(s *site, path string, r *resource) (gone []*cachedBody) {
	b := &cachedBody{s, path, r, len(r.body) + len(r.body)/3} // with its compressed form
	c.mu.Lock()
	defer c.mu.Unlock()
	c.size += b.size
	for c.size > mostCached && c.ring.Len() > 0 {
		first := c.ring.Front()
		if old := first.Value.(*cachedBody); old.r.used.Swap(false) {
			c.ring.MoveToBack(first)
		} else {
			c.ring.Remove(first)
			c.size -= old.size
			gone = append(gone, old)
		}
	}
	c.ring.PushBack(b)
	return gone
}
