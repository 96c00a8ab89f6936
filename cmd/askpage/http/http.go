// Package http stands in for net/http when the planner is built for a browser. The
// library that writes calendars can also fetch one, and so brings a web client with all
// its ciphers into the program. The planner fetches nothing, and without that client it
// is half a megabyte smaller, packed. This package declares only what the calendar
// library uses: with a version that uses more, the planner does not build.
package http

import (
	"context"
	"errors"
	"io"
)

type (
	// Client sends nothing.
	Client struct{}
	// Request asks for nothing.
	Request struct{}
	// Response answers nothing.
	Response struct{ Body io.ReadCloser }
)

// DefaultClient is the only client.
var DefaultClient = &Client{}

var errNothing = errors.New("the planner fetches nothing")

// Do fails.
func (*Client) Do(*Request) (*Response, error) { return nil, errNothing }

// NewRequestWithContext fails.
func NewRequestWithContext(context.Context, string, string, io.Reader) (*Request, error) {
	return nil, errNothing
}
