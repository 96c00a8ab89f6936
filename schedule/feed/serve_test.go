package feed

import (
	"bufio"
	"bytes"
	"context"
	"fmt"
	"io"
	"log/slog"
	"math/rand/v2"
	"net"
	"net/http"
	"strings"
	"sync/atomic"
	"testing"
	"testing/synctest"
	"time"
)

// pipes is a listener whose connections never leave the process, so that a
// bubble's clock drives their limits.
type pipes struct {
	next chan net.Conn
	gone chan struct{}
}

func newPipes() *pipes { return &pipes{make(chan net.Conn), make(chan struct{})} }

func (p *pipes) Accept() (net.Conn, error) {
	select {
	case c := <-p.next:
		return c, nil
	case <-p.gone:
		return nil, net.ErrClosed
	}
}

func (p *pipes) Close() error   { close(p.gone); return nil }
func (p *pipes) Addr() net.Addr { return &net.TCPAddr{IP: net.IPv4(127, 0, 0, 1), Port: 1} }

func (p *pipes) dial() net.Conn {
	a, b := net.Pipe()
	p.next <- b
	return a
}

func serving(t *testing.T, h http.Handler, during func(*pipes, context.CancelFunc)) {
	synctest.Test(t, func(t *testing.T) {
		ctx, stop := context.WithCancel(t.Context())
		p, ended := newPipes(), make(chan error, 1)
		go func() { ended <- Serve(ctx, p, h, slog.New(slog.DiscardHandler)) }()
		during(p, stop)
		stop()
		if err := <-ended; err != nil {
			t.Error(err)
		}
	})
}

// cutAfter tells when the server closes the connection.
func cutAfter(c net.Conn) time.Duration {
	start := time.Now()
	io.Copy(io.Discard, c)
	return time.Since(start)
}

func TestSlowClientsAreCutOff(t *testing.T) {
	h := http.HandlerFunc(func(w http.ResponseWriter, q *http.Request) { io.Copy(io.Discard, q.Body) })
	serving(t, h, func(p *pipes, _ context.CancelFunc) {
		silent := p.dial()
		if d := cutAfter(silent); d > headerTime {
			t.Errorf("a client that says nothing was cut off after %v", d)
		}
		slow := p.dial()
		go func() {
			for _, c := range "GET / HTTP/1.1\r\nHost: x\r\n" + strings.Repeat("A: b\r\n", 1000) {
				if _, err := slow.Write([]byte(string(c))); err != nil {
					return
				}
				time.Sleep(500 * time.Millisecond)
			}
		}()
		if d := cutAfter(slow); d > headerTime+time.Second {
			t.Errorf("a client that sends its header byte by byte was cut off after %v", d)
		}
		body := p.dial()
		go fmt.Fprint(body, "POST / HTTP/1.1\r\nHost: x\r\nContent-Length: 100\r\n\r\nx")
		if d := cutAfter(body); d > bodyTime+time.Second {
			t.Errorf("a client that keeps its body was cut off after %v", d)
		}
		idle := p.dial()
		go fmt.Fprint(idle, "GET / HTTP/1.1\r\nHost: x\r\n\r\n")
		if d := cutAfter(idle); d > idleTime+time.Second {
			t.Errorf("an idle client was cut off after %v", d)
		}
	})
}

func TestLargeHeadersAreRefused(t *testing.T) {
	h := http.HandlerFunc(func(http.ResponseWriter, *http.Request) { t.Error("the request came through") })
	serving(t, h, func(p *pipes, _ context.CancelFunc) {
		c := p.dial()
		go fmt.Fprintf(c, "GET / HTTP/1.1\r\nHost: x\r\nA: %s\r\n\r\n", strings.Repeat("a", 10*mostHeader))
		r, err := http.ReadResponse(bufio.NewReader(c), nil)
		if err != nil || r.StatusCode != http.StatusRequestHeaderFieldsTooLarge {
			t.Errorf("%v %v", r, err)
		}
		c.Close()
	})
}

func TestConnectionsAreCounted(t *testing.T) {
	h := http.HandlerFunc(func(http.ResponseWriter, *http.Request) {})
	serving(t, h, func(p *pipes, _ context.CancelFunc) {
		var open []net.Conn
		for range mostConnections {
			open = append(open, p.dial())
		}
		more := make(chan net.Conn)
		go func() { more <- p.dial() }()
		synctest.Wait()
		select {
		case <-more:
			t.Error("one connection too many was taken")
		default:
		}
		open[0].Close()
		synctest.Wait()
		select {
		case c := <-more:
			c.Close()
		default:
			t.Error("a free place was not given on")
		}
		for _, c := range open {
			c.Close()
		}
	})
}

func TestGracefulStop(t *testing.T) {
	started, finish := make(chan struct{}), make(chan struct{})
	h := http.HandlerFunc(func(w http.ResponseWriter, q *http.Request) {
		close(started)
		<-finish
		io.WriteString(w, "whole")
	})
	synctest.Test(t, func(t *testing.T) {
		started, finish = make(chan struct{}), make(chan struct{})
		ctx, stop := context.WithCancel(t.Context())
		p, ended := newPipes(), make(chan error, 1)
		go func() { ended <- Serve(ctx, p, h, slog.New(slog.DiscardHandler)) }()
		c := p.dial()
		go fmt.Fprint(c, "GET / HTTP/1.1\r\nHost: x\r\n\r\n")
		<-started
		stop()
		synctest.Wait()
		close(finish)
		r, err := http.ReadResponse(bufio.NewReader(c), nil)
		if err != nil {
			t.Fatal(err)
		}
		if b, _ := io.ReadAll(r.Body); string(b) != "whole" {
			t.Errorf("the request under way got %q", b)
		}
		c.Close()
		if err := <-ended; err != nil {
			t.Error(err)
		}
	})
}

// Answers of every size around the server's buffers arrive whole, one after the
// other on one connection, and none is held back.
func TestAnswersAreSentWhole(t *testing.T) {
	var r atomic.Pointer[resource]
	h := http.HandlerFunc(func(w http.ResponseWriter, q *http.Request) { r.Load().answer(w, q) })
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(t.Context())
	ended := make(chan error, 1)
	go func() { ended <- Serve(ctx, l, h, slog.New(slog.DiscardHandler)) }()
	c, err := net.Dial("tcp", l.Addr().String())
	if err != nil {
		t.Fatal(err)
	}
	c.SetDeadline(time.Now().Add(time.Minute)) // an answer held back ends here
	in := bufio.NewReader(c)
	random := rand.New(rand.NewPCG(3, 4))
	for size := 0; size < 13000; size += 1 + random.IntN(77) {
		body := make([]byte, size)
		for i := range body {
			body[i] = byte(random.Uint32()) // cannot be compressed
		}
		r.Store(newResource(file{"x", plainType, body}, nil, changedAt, false))
		for _, method := range []string{"GET", "HEAD", "GET"} {
			fmt.Fprintf(c, "%s / HTTP/1.1\r\nHost: x\r\n\r\n", method)
			got, err := http.ReadResponse(in, &http.Request{Method: method})
			if err != nil {
				t.Fatal(size, method, err)
			}
			b, err := io.ReadAll(got.Body)
			if err != nil || method == "GET" && !bytes.Equal(b, body) || got.ContentLength != int64(size) {
				t.Fatalf("%s of %d bytes: %d bytes came, %v", method, size, len(b), err)
			}
		}
	}
	c.Close()
	stop()
	if err := <-ended; err != nil {
		t.Error(err)
	}
}
