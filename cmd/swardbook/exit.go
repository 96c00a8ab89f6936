package main

import (
	"errors"
	"fmt"

	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule"
)

// Exit codes.
const (
	exitDone    = 0
	exitIO      = 1 // could not read or write
	exitUse     = 2 // wrong use of the command line
	exitSite    = 3 // the site file or record book has errors
	exitDiffers = 4 // --strict: something was left out; compare --exit-code: they differ
)

// exit is an error that carries its exit code. A nil err has been told
// already.
type exit struct {
	code int
	err  error
}

func (e exit) Error() string {
	if e.err == nil {
		return ""
	}
	return e.err.Error()
}

func (e exit) Unwrap() error { return e.err }

// exitOf gives an error its exit code.
func exitOf(err error) exit {
	if e, ok := errors.AsType[exit](err); ok {
		return e
	}
	if _, ok := errors.AsType[flag.Misuse](err); ok {
		return exit{exitUse, err}
	}
	return exit{exitIO, err}
}

// misuse is a wrong use of the command line.
func misuse(format string, args ...any) error { return flag.Wrong(format, args...) }

// siteError is an error in what the site file or record book says.
func siteError(err error) error { return exit{exitSite, err} }

// strictly turns left-out jobs into exit code 4, if asked.
func strictly(strict bool, p *schedule.Program) error {
	if !strict || len(p.LeftOut) == 0 {
		return nil
	}
	what := "1 job was left out"
	if n := len(p.LeftOut); n > 1 {
		what = fmt.Sprintf("%d jobs were left out", n)
	}
	return exit{exitDiffers, fmt.Errorf("%s", what)}
}
