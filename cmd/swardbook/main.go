// Swardbook turns a site file about a lawn into a dated program.
package main

import (
	"context"
	"os"
	"os/signal"
	"syscall"
	"time"
)

func main() { os.Exit(mainCode()) }

// finish is how long a command has after a signal: to let requests under way
// end, or a file that it is writing. [common]
const finish = 500 * time.Millisecond

// mainCode runs the command and gives its exit status. A signal ends it also
// where it cannot look up from its work, as in planning or in reading a pipe
// that nobody writes to: files are written all or nothing, so that leaves none
// half written. The status then is 128 and the signal's number, as shells have
// it; a command that ends well after the signal keeps its own.
func mainCode() int {
	signals := make(chan os.Signal, 1)
	signal.Notify(signals, os.Interrupt, syscall.SIGTERM)
	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	ended := make(chan int, 1)
	go func() { ended <- run(ctx, os.Args[1:], os.Stdin, os.Stdout, os.Stderr, os.Getenv, time.Now) }()
	select {
	case code := <-ended:
		return code
	case s := <-signals:
		signal.Reset() // a second one ends it at once
		stop()
		select {
		case code := <-ended:
			if code == exitDone {
				return code
			}
		case <-time.After(finish):
		}
		number, _ := s.(syscall.Signal) // which all are
		return 128 + int(number)
	}
}
