package main

import "fmt"

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

// misuse is a wrong use of the command line.
func misuse(format string, args ...any) error {
	return exit{exitUse, fmt.Errorf(format, args...)}
}

// siteError is an error in what the site file or record book says.
func siteError(err error) error { return exit{exitSite, err} }
