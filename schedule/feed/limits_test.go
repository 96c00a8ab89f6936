package feed

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/http"
	"net/netip"
	"runtime"
	"strings"
	"sync"
	"testing"
	"testing/synctest"
	"time"

	"swardbook/schedule"
	"swardbook/schedule/plan"
)

// within a second of what is wanted, and never before it.
func lasts(t *testing.T, what string, got, want time.Duration) {
	t.Helper()
	if got < want || got >= want+time.Second {
		t.Errorf("%s: after %v, want %v", what, got, want)
	}
}

// The limits of the server as figures: 5 s for a header, 10 s for a request, 30 s
// between two, 60 s for an answer. // common practice, no source
func TestHowLongTheServerWaits(t *testing.T) {
	wrote := make(chan time.Duration, 1)
	h := http.HandlerFunc(func(w http.ResponseWriter, q *http.Request) {
		if q.URL.Path != "/endless" {
			io.Copy(io.Discard, q.Body)
			return
		}
		from := time.Now()
		for part := make([]byte, 1<<16); ; {
			if _, err := w.Write(part); err != nil {
				wrote <- time.Since(from)
				return
			}
		}
	})
	serving(t, h, func(p *pipes, _ context.CancelFunc) {
		lasts(t, "nothing said", cutAfter(p.dial()), 5*time.Second)
		body := p.dial()
		go fmt.Fprint(body, "POST / HTTP/1.1\r\nHost: x\r\nContent-Length: 100\r\n\r\nx")
		lasts(t, "no body", cutAfter(body), 10*time.Second)
		idle := p.dial()
		go fmt.Fprint(idle, "GET / HTTP/1.1\r\nHost: x\r\n\r\n")
		lasts(t, "no second request", cutAfter(idle), 30*time.Second)
		wrote = make(chan time.Duration, 1) // of this bubble
		deaf := p.dial()
		fmt.Fprint(deaf, "GET /endless HTTP/1.1\r\nHost: x\r\n\r\n")
		lasts(t, "an answer that nobody takes", <-wrote, 60*time.Second)
		deaf.Close()
	})
}

// A header of up to 16 KiB is read; the library adds 4 KiB of its own.
func TestHeaderSize(t *testing.T) {
	h := http.HandlerFunc(func(http.ResponseWriter, *http.Request) {})
	for size, want := range map[int]int{15 << 10: 200, 21 << 10: http.StatusRequestHeaderFieldsTooLarge} {
		serving(t, h, func(p *pipes, _ context.CancelFunc) {
			c := p.dial()
			go fmt.Fprintf(c, "GET / HTTP/1.1\r\nHost: x\r\nA: %s\r\n\r\n", strings.Repeat("a", size))
			var status string
			b := make([]byte, 12)
			if n, _ := io.ReadFull(c, b); n == len(b) {
				status = string(b[9:])
			}
			if status != fmt.Sprint(want) {
				t.Errorf("%d bytes: %s, want %d", size, status, want)
			}
			c.Close()
		})
	}
}

// A server whose 512 places are all taken by requests that hang stops all the same,
// after the 10 s that requests under way are given; that of one person after a quarter
// of a second.
func TestStopWhenFull(t *testing.T) {
	for _, c := range []struct {
		places, more int
		serve        func(context.Context, net.Listener, http.Handler) error
		want         time.Duration
	}{
		{512, 1, func(ctx context.Context, l net.Listener, h http.Handler) error {
			return Serve(ctx, l, h, slog.New(slog.DiscardHandler))
		}, 10 * time.Second},
		{3, 0, func(ctx context.Context, l net.Listener, h http.Handler) error {
			return ServeLocal(ctx, l, &Local{o: LocalOptions{Log: slog.New(slog.DiscardHandler), Host: "x", Root: nil}, word: "w", cross: http.NewCrossOriginProtection()})
		}, 250 * time.Millisecond},
	} {
		synctest.Test(t, func(t *testing.T) {
			release := make(chan struct{})
			h := http.HandlerFunc(func(http.ResponseWriter, *http.Request) { <-release })
			ctx, stop := context.WithCancel(t.Context())
			p, ended := newPipes(), make(chan error, 1)
			go func() { ended <- c.serve(ctx, p, h) }()
			var open []net.Conn
			for range c.places {
				conn := p.dial()
				fmt.Fprint(conn, "GET / HTTP/1.1\r\nHost: x\r\n")
				if c.more > 0 {
					fmt.Fprint(conn, "\r\n")
				}
				open = append(open, conn)
			}
			over := make(chan struct{})
			if c.more > 0 {
				go func() {
					select {
					case p.next <- nil:
						t.Error("one connection too many was taken")
					case <-over:
					}
				}()
			}
			synctest.Wait()
			from := time.Now()
			stop()
			err := <-ended
			if took := time.Since(from); err != nil || took != c.want {
				t.Errorf("%d places: stopped after %v, want %v: %v", c.places, took, c.want, err)
			}
			close(over)
			close(release)
			for _, conn := range open {
				conn.Close()
			}
		})
	}
}

// heard keeps what a connection was given, and breaks off when told to.
type heard struct {
	net.Conn
	got   bytes.Buffer
	limit int // bytes that go through; 0 all
}

func (h *heard) Write(b []byte) (int, error) {
	if h.limit > 0 && h.got.Len()+len(b) > h.limit {
		n, _ := h.got.Write(b[:h.limit-h.got.Len()])
		return n, io.ErrClosedPipe
	}
	return h.got.Write(b)
}

// What is written is held only while more is sure to follow and it is short, and the
// count is of the bytes that were given.
func TestHeaderAndBodyAreSentTogether(t *testing.T) {
	head, whole := bytes.Repeat([]byte("h"), 300), bytes.Repeat([]byte("b"), 5000)
	c := &heard{}
	p := &placed{Conn: c}
	p.expect(len(whole))
	if n, err := p.Write(head); n != 300 || err != nil || c.got.Len() != 0 {
		t.Errorf("the header: %d %v, %d sent", n, err, c.got.Len())
	}
	if n, err := p.Write(whole); n != 5000 || err != nil || c.got.String() != string(head)+string(whole) {
		t.Errorf("the body: %d %v, %d sent", n, err, c.got.Len())
	}
	if n, err := p.Write(head); n != 300 || err != nil || c.got.Len() != 5600 { // nothing is expected any more
		t.Errorf("the next header: %d %v, %d sent", n, err, c.got.Len())
	}
	p.expect(100_000)
	if n, _ := p.Write(make([]byte, 9000)); n != 9000 || c.got.Len() != 14600 {
		t.Errorf("9,000 bytes of many: %d, %d sent", n, c.got.Len())
	}
	for _, limit := range []int{200, 300, 1300} { // the other end goes away
		c = &heard{limit: limit}
		p = &placed{Conn: c}
		p.expect(len(whole))
		p.Write(head)
		if n, err := p.Write(whole); n != max(0, limit-300) || err == nil {
			t.Errorf("broken off at %d: %d %v", limit, n, err)
		}
	}
}

// Programs are made two at a time for each processor; one that takes over half a second
// makes room; after half a minute it is given up; whoever wants the same site meanwhile
// is sent away after ten seconds. // common practice, no source
func TestHowLongATurnTakes(t *testing.T) {
	turns := 2 * runtime.GOMAXPROCS(0)
	for _, c := range []struct {
		busy int
		want time.Duration
	}{{turns - 1, 0}, {turns, 500 * time.Millisecond}, {2*turns - 1, 500 * time.Millisecond}, {2 * turns, time.Second}} {
		synctest.Test(t, func(t *testing.T) {
			w := newWorld(t)
			over := make(chan struct{})
			defer close(over)
			w.plan = func(s *schedule.Site, book []schedule.Done, last schedule.Date) (*schedule.Program, error) {
				if s.Title != "Oxlo green" {
					<-over
				}
				return plan.Program(s, book, last)
			}
			w.put("mill.toml", lawn)
			for i := range c.busy {
				w.put(fmt.Sprint("bad", i, ".toml"), named(fmt.Sprint("bad", i)))
			}
			w.begin()
			var asked sync.WaitGroup
			ask := func(site string, after time.Duration, again string) {
				asked.Go(func() {
					from := time.Now()
					r := w.get("/" + site + "/program.ics")
					if took := time.Since(from); r.StatusCode != 503 || took < after || took >= after+time.Second+c.want || r.Header.Get("Retry-After") != again {
						t.Errorf("%s: %d after %v, want %v; come again after %s s, want %s", site, r.StatusCode, took, after, r.Header.Get("Retry-After"), again)
					}
				})
			}
			for i := range c.busy {
				ask(fmt.Sprint("bad", i), 30*time.Second, "600") // RFC 9110, section 10.2.3: seconds
				synctest.Wait()
			}
			from := time.Now()
			w.page("/mill/program.ics")
			if took := time.Since(from); took != c.want {
				t.Errorf("with %d turns taken of %d: %v, want %v", c.busy, turns, took, c.want)
			}
			ask("bad0", 10*time.Second, "10")
			asked.Wait()
		})
	}
}

// Of links, as many are worked out at once as there are processors. Whoever finds no
// turn is sent away after 2 s, whoever's turn has no end after 10 s, and that one keeps
// its place until it is over.
func TestHowLongALinkTakes(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		over := make(chan struct{})
		w := opened(t, func(o *Options) {
			o.Plan = func(s *schedule.Site, d []schedule.Done, last schedule.Date) (*schedule.Program, error) {
				<-over
				return plan.Program(s, d, last)
			}
		})
		code := codeOf(t, homeLawn)
		var asked sync.WaitGroup
		ask := func(after time.Duration) {
			asked.Go(func() {
				from := time.Now()
				r := w.ask("GET", "/p/"+code+".ics", "")
				if took := time.Since(from); r.StatusCode != 503 || took != after || r.Header.Get("Retry-After") != "10" {
					t.Errorf("%d after %v, want %v; come again after %s s", r.StatusCode, took, after, r.Header.Get("Retry-After"))
				}
			})
			synctest.Wait()
		}
		for range runtime.GOMAXPROCS(0) {
			ask(10 * time.Second)
		}
		ask(2 * time.Second)
		asked.Wait()
		ask(2 * time.Second) // those that were given up are still being worked out
		asked.Wait()
		close(over)
		synctest.Wait()
		if r := w.ask("GET", "/p/"+code+".ics", ""); r.StatusCode != 200 {
			t.Errorf("after all that: %d", r.StatusCode)
		}
	})
}

// One address may ask for 100 things at once, then for five a second, and for fewer that
// take longer than the 50 ms which that comes to at a quarter of a processor.
func TestShareOfAClient(t *testing.T) {
	who := netip.MustParsePrefix("192.0.2.1/32")
	now := time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC)
	for _, c := range []struct {
		what    string
		spent   time.Duration // by each
		first   int           // at once
		later   time.Duration
		then    int
		address netip.Prefix
	}{
		{"nothing spent", 0, 100, 0, 0, who},
		{"a moment later", 0, 100, 199 * time.Millisecond, 0, who},
		{"a fifth of a second later", 0, 100, 200 * time.Millisecond, 1, who},
		{"a second later", 0, 100, time.Second, 5, who},
		{"20 s later", 0, 100, 20 * time.Second, 100, who},
		{"an hour later", 0, 100, time.Hour, 100, who},
		{"50 ms each", 50 * time.Millisecond, 100, 0, 0, who},
		{"100 ms each", 100 * time.Millisecond, 50, 0, 0, who},     // 0.4 s of the 20 s each
		{"a second each", time.Second, 5, 4 * time.Second, 1, who}, // 4 s each
		{"another address", 0, 100, 0, 100, netip.MustParsePrefix("192.0.2.2/32")},
	} {
		var all clients
		run := func(who netip.Prefix, now time.Time) (n int) {
			for n < 1000 && all.take(who, now) {
				all.took(who, c.spent)
				n++
			}
			return n
		}
		if first, then := run(who, now), run(c.address, now.Add(c.later)); first != c.first || then != c.then {
			t.Errorf("%s: %d, then %d; want %d, then %d", c.what, first, then, c.first, c.then)
		}
	}
	var all clients
	for i := range 10_000 {
		all.take(netip.PrefixFrom(netip.AddrFrom4([4]byte{10, 0, byte(i >> 8), byte(i)}), 32), now)
	}
	if len(all.whole) != 10_000 {
		t.Errorf("%d addresses of 10,000 are remembered", len(all.whole))
	}
	if all.take(who, now); len(all.whole) != 5001 {
		t.Errorf("when there are more, %d", len(all.whole))
	}
	for i := range 4999 {
		all.take(netip.PrefixFrom(netip.AddrFrom4([4]byte{11, 0, byte(i >> 8), byte(i)}), 32), now)
	}
	if all.take(netip.MustParsePrefix("192.0.2.3/32"), now.Add(time.Second)); len(all.whole) != 1 {
		t.Errorf("%d are remembered that have their whole share again", len(all.whole)-1)
	}
	if r := opened(t); true {
		code := codeOf(t, homeLawn)
		for range 100 {
			r.ask("GET", "/p/"+code+"/site.toml", "")
		}
		if r := r.ask("GET", "/p/"+code+"/site.toml", ""); r.StatusCode != 429 || r.Header.Get("Retry-After") != "20" { // when all 100 are free again
			t.Errorf("the 101st: %d, come again after %s s", r.StatusCode, r.Header.Get("Retry-After"))
		}
	}
}

// The address that counts is the nearest that is no trusted proxy; of IPv6 its network.
func TestWhoAsked(t *testing.T) {
	f := &Feed{o: Options{Trust: []netip.Prefix{netip.MustParsePrefix("192.0.2.0/24"), netip.MustParsePrefix("2001:db8:ffff::/48")}}}
	for _, c := range []struct {
		remote string
		way    []string
		want   string
	}{
		{"203.0.113.5:1234", nil, "203.0.113.5/32"},
		{"[::ffff:203.0.113.5]:1234", nil, "203.0.113.5/32"},
		{"[2001:db8:1:2:3:4:5:6]:1234", nil, "2001:db8:1:2::/64"},
		{"[fe80::1%eth0]:1234", nil, "fe80::/64"},
		{"203.0.113.5:1234", []string{"198.51.100.1"}, "203.0.113.5/32"},
		{"192.0.2.7:1234", []string{"198.51.100.1"}, "198.51.100.1/32"},
		{"192.0.2.7:1234", []string{"198.51.100.1, 198.51.100.2"}, "198.51.100.2/32"},
		{"192.0.2.7:1234", []string{"198.51.100.1", "198.51.100.2"}, "198.51.100.2/32"},
		{"192.0.2.7:1234", []string{"198.51.100.1, 192.0.2.8"}, "198.51.100.1/32"},
		{"192.0.2.7:1234", []string{"192.0.2.9, 192.0.2.8"}, "192.0.2.9/32"},
		{"192.0.2.7:1234", []string{"198.51.100.1, nobody"}, "192.0.2.7/32"},
		{"192.0.2.7:1234", nil, "192.0.2.7/32"},
		{"[2001:db8:ffff::1]:1", []string{"::ffff:198.51.100.1"}, "198.51.100.1/32"},
		{"192.0.2.7:1", []string{"2001:db8:1:2::9"}, "2001:db8:1:2::/64"},
		{"", nil, "invalid Prefix"},
	} {
		q := &http.Request{RemoteAddr: c.remote, Header: http.Header{}}
		if c.way != nil {
			q.Header["X-Forwarded-For"] = c.way
		}
		if got := f.client(q).String(); got != c.want {
			t.Errorf("%s by %q: %s, want %s", c.remote, c.way, got, c.want)
		}
	}
}

// A text of 1 MiB, a record book of 4 MiB, a form of 8 KiB and answers of 64 KiB are
// taken; a byte more is not.
func TestSizes(t *testing.T) {
	for _, more := range []int{0, 1} {
		w := newWorld(t)
		w.record = true
		text := lawn + "#"
		w.put("mill.toml", text+strings.Repeat("x", 1<<20-len(text)+more))
		w.put("book.toml", named("book"))
		book := record + "2026-09-14,east,east/lime/1,,half,ines,\n"
		w.put("book.record.csv", book+strings.Repeat("\n", 4<<20-len(book)+more))
		w.start()
		for _, site := range []string{"mill", "book"} {
			if got, want := w.get("/"+site+"/").StatusCode, 200+303*more; got != want {
				t.Errorf("%s with %d bytes too many: %d, want %d", site, more, got, want)
			}
		}
		w = recording(t)
		v := w.open("east/lime/2026-1")
		v.Set("unknown", "")
		v.Set("unknown", strings.Repeat("x", 8<<10-len(v.Encode())+more))
		if got, want := w.post(v).StatusCode, 200+213*more; got != want {
			t.Errorf("a form with %d bytes too many: %d, want %d", more, got, want)
		}
		w = opened(t)
		if r := w.ask("POST", "/ask", strings.Repeat("&", 64<<10+more), "Content-Type", formKind); r.StatusCode != 200+213*more {
			t.Errorf("answers with %d bytes too many: %s", more, r.Status)
		}
	}
	dir := newWorld(t)
	dir.put("x", "0123456789")
	for n, want := range map[int64]string{9: "012345678", 10: "0123456789", 11: "0123456789"} {
		if got, err := readAtMost(dir.root, "x", n); string(got) != want || err != nil {
			t.Errorf("%d bytes of ten: %q %v", n, got, err)
		}
	}
	if _, err := readAtMost(dir.root, ".", 9); err == nil || errors.Is(err, io.EOF) {
		t.Errorf("a folder: %v", err)
	}
}
