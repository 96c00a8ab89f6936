package flag

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/pflag"
)

// Set holds the flags of one command.
type Set = pflag.FlagSet

// Flag is one flag of a set, for code that visits them all.
type Flag = pflag.Flag

// ErrHelp says that help was asked for.
var ErrHelp = pflag.ErrHelp

// New makes an empty set for a command, or for a figure: "figure lime". A set
// prints nothing by itself.
func New(name string) *Set {
	fs := pflag.NewFlagSet(name, pflag.ContinueOnError)
	fs.Usage = func() {}
	fs.SetOutput(io.Discard)
	return fs
}

// Parse reads the words after the command's name. The error is [ErrHelp] or a
// [Misuse].
func Parse(fs *Set, words []string) error {
	switch err := fs.Parse(words); {
	case errors.Is(err, ErrHelp):
		return err
	case err != nil:
		return Wrong("%s; see swardbook %s --help", lowerFirst(err.Error()), fs.Name())
	}
	if name := empty(fs); name != "" {
		return Wrong("--%s: the value is empty; give one, or leave the flag out", name)
	}
	return nil
}

// empty names a flag that was given an empty value, as a script does whose
// variable is not set. Only a note may be empty.
func empty(fs *Set) (name string) {
	fs.Visit(func(f *Flag) {
		if f.Value.Type() == "string" && f.Value.String() == "" && f.Name != "note" {
			name = f.Name
		}
	})
	return name
}

// Misuse is a wrong use of the command line.
type Misuse struct{ err error }

func (m Misuse) Error() string { return m.err.Error() }

// Unwrap gives the cause, if there is one.
func (m Misuse) Unwrap() error { return errors.Unwrap(m.err) }

// Wrong makes a [Misuse].
func Wrong(format string, args ...any) error { return Misuse{fmt.Errorf(format, args...)} }

func lowerFirst(t string) string {
	if t == "" {
		return t
	}
	return strings.ToLower(t[:1]) + t[1:]
}
