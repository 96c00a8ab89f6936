package feed

import (
	"context"
	"errors"
	"log/slog"
	"net"
	"net/http"
	"sync"
	"time"
)

// Limits of a server. A client that is slower or asks for more is cut off.
const (
	mostConnections = 512              // at once; more wait their turn // [common]
	mostHeader      = 16 << 10         // bytes // [common]
	headerTime      = 5 * time.Second  // until the whole header is there // [common]
	bodyTime        = 10 * time.Second // until the whole request is there // [common]
	answerTime      = 60 * time.Second // until the answer is taken, for slow lines // [common]
	idleTime        = 30 * time.Second // between two requests // [common]
	stopTime        = 10 * time.Second // for requests under way when the server stops // [common]
	stopSoon        = time.Second / 4  // the same where nobody else waits // [common]
)

// Serve answers requests on the listener until the context ends, then lets
// requests under way finish. It returns nil after such a stop.
func Serve(ctx context.Context, l net.Listener, h http.Handler, log *slog.Logger) error {
	return serve(ctx, l, h, log, stopTime)
}

func serve(ctx context.Context, l net.Listener, h http.Handler, log *slog.Logger, stop time.Duration) error {
	server := &http.Server{
		Handler:           h,
		MaxHeaderBytes:    mostHeader,
		ReadHeaderTimeout: headerTime,
		ReadTimeout:       bodyTime,
		WriteTimeout:      answerTime,
		IdleTimeout:       idleTime,
		ConnContext:       withPlaced,
		ErrorLog:          slog.NewLogLogger(log.Handler(), slog.LevelDebug),
	}
	stopped := make(chan error, 1)
	done := make(chan struct{})
	go func() {
		select {
		case <-ctx.Done():
		case <-done:
		}
		end, cancel := context.WithTimeout(context.Background(), stop)
		defer cancel()
		stopped <- server.Shutdown(end)
	}()
	err := server.Serve(&limited{Listener: l, places: make(chan struct{}, mostConnections), closed: make(chan struct{})})
	close(done)
	if late := <-stopped; errors.Is(err, http.ErrServerClosed) {
		if late != nil {
			server.Close()
		}
		return nil
	}
	return err
}

// limited accepts a connection only when there is a place for it.
type limited struct {
	net.Listener
	places chan struct{}
	closed chan struct{}
	once   sync.Once
}

func (l *limited) Accept() (net.Conn, error) {
	select {
	case l.places <- struct{}{}:
	case <-l.closed:
		return nil, net.ErrClosed
	}
	c, err := l.Listener.Accept()
	if err != nil {
		<-l.places
		return nil, err
	}
	return &placed{Conn: c, leave: sync.OnceFunc(func() { <-l.places })}, nil
}

func (l *limited) Close() error {
	l.once.Do(func() { close(l.closed) })
	return l.Listener.Close()
}

// placed is a connection that gives its place back, and that sends the start
// of an answer together with the rest. The server's own buffer would send them
// one after the other, which for a small file costs as much again.
//
// Its fields are used by the goroutine that answers, and by no other.
type placed struct {
	net.Conn
	leave func()

	due  int    // bytes of a body that are sure to follow, less what was written since
	held []byte // written, but not sent yet
}

// expect says that a body of n bytes is written next, in whole, after a header
// that may still be unsent.
func (p *placed) expect(n int) { p.due = n }

// Write sends b, or holds it while more is sure to follow: header and body
// together are longer than the body, so until as many bytes as the body has
// were written, the end was not among them.
func (p *placed) Write(b []byte) (int, error) {
	if p.due -= len(b); p.due > 0 && len(p.held)+len(b) <= mostHeld {
		p.held = append(p.held, b...)
		return len(b), nil
	}
	if len(p.held) == 0 {
		return p.Conn.Write(b)
	}
	both := net.Buffers{p.held, b}
	held := int64(len(p.held))
	n, err := both.WriteTo(p.Conn)
	p.held = p.held[:0]
	return int(max(0, n-held)), err
}

// mostHeld is more than the server's buffer, which is what comes first.
const mostHeld = 8 << 10

func (p *placed) Close() error {
	p.leave()
	return p.Conn.Close()
}

// placedKey finds the connection of a request.
type placedKey struct{}

func withPlaced(ctx context.Context, c net.Conn) context.Context {
	return context.WithValue(ctx, placedKey{}, c)
}
