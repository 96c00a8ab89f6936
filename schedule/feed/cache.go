package feed

import (
	"container/list"
	"sync"
)

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
