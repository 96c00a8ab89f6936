package flag

import (
	"slices"
	"strings"
)

// Output is where a result goes, and in what form.
type Output struct {
	File   string // "" and "-" are standard output
	Format string
	forms  []string
}

// NewOutput defines -o, and --format if there is more than one form. The first
// form is the default.
func NewOutput(fs *Set, forms ...string) *Output {
	o := &Output{forms: forms}
	fs.StringVarP(&o.File, "output", "o", "", "")
	if len(forms) > 1 {
		fs.StringVar(&o.Format, "format", forms[0], "")
	} else {
		o.Format = forms[0]
	}
	return o
}

// Check says whether the form is one of those there are.
func (o *Output) Check() error {
	if !slices.Contains(o.forms, o.Format) {
		return Wrong("--format: %q is not one of %s", o.Format, strings.Join(o.forms, ", "))
	}
	return nil
}
