// Package http stands in for that of the Go library when the planner is built for a
// browser. The library that carries calendars can also fetch one, and draws a web client
// with all its ciphers into the program; the planner fetches nothing, and is half a
// megabyte lighter without, packed. It holds what that library names, and no more: with
// a version that names something else the planner does not build.
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
