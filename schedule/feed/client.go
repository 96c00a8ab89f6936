package feed

import (
	"net/http"
	"net/netip"
	"strings"
	"sync"
	"time"
)

// What one address may have worked out: so many at once, then so many a second, or less
// of what takes long. What it has already costs it nothing. // [common]
const (
	clientBurst = 100
	clientRate  = 5 // a second
	clientShare = 4 // one part in so many of a processor's time
	mostClients = 10_000
)

const (
	onePlace   = time.Second / clientRate
	wholeShare = clientBurst * onePlace
)

// clients knows who asked how often of late: when each will have its whole share again.
type clients struct {
	mu    sync.Mutex
	whole map[netip.Prefix]time.Time
}

// take tells whether a client may have one thing more.
func (c *clients) take(who netip.Prefix, now time.Time) bool {
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.whole == nil || len(c.whole) >= mostClients {
		kept := map[netip.Prefix]time.Time{}
		for p, t := range c.whole {
			if t.After(now) && len(kept) < mostClients/2 {
				kept[p] = t
			}
		}
		c.whole = kept
	}
	t := c.whole[who]
	if t.Before(now) {
		t = now
	}
	if t = t.Add(onePlace); t.Sub(now) > wholeShare {
		return false
	}
	c.whole[who] = t
	return true
}

// took charges a client for what took longer than the usual.
func (c *clients) took(who netip.Prefix, d time.Duration) {
	if d = clientShare*d - onePlace; d <= 0 {
		return
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	c.whole[who] = c.whole[who].Add(d)
}

// client tells who sent a request: the nearest address on its way that is not one of the
// proxies trusted. Of an IPv6 address the network counts, as whoever has one has many.
func (f *Feed) client(q *http.Request) netip.Prefix {
	at, _ := netip.ParseAddrPort(q.RemoteAddr)
	who := at.Addr().Unmap()
	way := strings.Split(strings.Join(q.Header["X-Forwarded-For"], ","), ",")
	for i := len(way) - 1; i >= 0 && f.trusts(who); i-- {
		before, err := netip.ParseAddr(strings.TrimSpace(way[i]))
		if err != nil {
			break
		}
		who = before.Unmap()
	}
	bits := 32
	if who.Is6() {
		bits = 64
	}
	p, _ := who.WithZone("").Prefix(bits) // the zero prefix for no address
	return p
}

func (f *Feed) trusts(who netip.Addr) bool {
	for _, p := range f.o.Trust {
		if p.Contains(who) {
			return true
		}
	}
	return false
}
