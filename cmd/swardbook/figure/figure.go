package figure

import (
	"swardbook/agronomy"
	"swardbook/cmd/swardbook/flag"
)

// Figure is one calculation on its own, for values given by flags.
type Figure struct {
	Name    string
	Args    string // as in the usage line; "" takes no argument
	What    string // one line for the list of figures
	Example string // arguments that give an answer
	Help    string // its flags, written by hand
	setup   func(*flag.Set) func(*asked) (Answer, error)
}

// Answer is what a calculation comes to.
type Answer struct {
	Text   string
	Values map[string]any // for machines: the unit is in the key
	Why    []agronomy.Reason
	More   []string // lines after the answer
}

// All are all figures, in the order in which a person needs them.
func All() []Figure {
	return []Figure{limeFigure, rateFigure, mixFigure, waterFigure, spreaderFigure, growthFigure, convertFigure, lawFigure}
}

// Find looks a figure up by its name.
func Find(name string) (Figure, error) {
	var names []string
	for _, f := range All() {
		if f.Name == name {
			return f, nil
		}
		names = append(names, f.Name)
	}
	return Figure{}, flag.Wrong("no figure %q; known: %s", name, agronomy.NearestName(name, names))
}

// Define adds the figure's flags to a set, which may hold others, and gives what
// works out the answer once the set is parsed. What is wrong is a [flag.Misuse].
func (f Figure) Define(fs *flag.Set) func() (Answer, error) {
	q := &asked{fs: fs, read: map[string]bool{}}
	fs.VisitAll(func(other *flag.Flag) { q.read[other.Name] = true }) // the caller reads them
	work := f.setup(fs)
	return func() (Answer, error) {
		if f.Args == "" && fs.NArg() > 0 {
			return Answer{}, flag.Wrong("%q is one argument too many; see swardbook figure %s --help", fs.Arg(0), f.Name)
		}
		q.args = fs.Args()
		a, err := work(q)
		if q.err != nil { // a flag that could not be read comes first
			err = q.err
		}
		if err == nil {
			err = q.idle()
		}
		if err != nil {
			return Answer{}, flag.Wrong("%w", err)
		}
		return a, nil
	}
}
