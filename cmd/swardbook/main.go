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

// mainCode runs the command and gives its exit status. A signal also ends a command that
// cannot notice it, as while it plans or reads a pipe that nobody writes to. That leaves
// no file half written, as files are written all or nothing. The status is then 128 plus
// the signal's number, as in shells; a command that still ends well after the signal
// keeps its own status.
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
		signal.Reset() // a second signal ends the process at once
		stop()
		select {
		case code := <-ended:
			if code == exitDone {
				return code
			}
		case <-time.After(finish):
		}
		number, _ := s.(syscall.Signal) // all signals are of this type
		return 128 + int(number)
	}
}
