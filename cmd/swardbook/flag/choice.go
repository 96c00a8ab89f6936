package flag

import (
	"slices"
	"strings"

	"swardbook/agronomy"
	"swardbook/schedule"
)

// Choice is the part of a program that is asked for.
type Choice struct {
	Area, Person string // ids; "" is all
	kinds        []string
}

// NewChoice defines --area, --for and --kind.
func NewChoice(fs *Set) *Choice {
	c := &Choice{}
	fs.StringVar(&c.Area, "area", "", "")
	fs.StringVar(&c.Person, "for", "", "")
	fs.StringSliceVar(&c.kinds, "kind", nil, "")
	return c
}

// Kinds gives the kinds of job asked for; none is all.
func (c *Choice) Kinds() ([]schedule.Kind, error) {
	var out []schedule.Kind
	for _, n := range c.kinds {
		k, ok := schedule.KindNamed(n)
		if !ok {
			return nil, Wrong("--kind: unknown kind %q; known: %s", n, strings.Join(plain(schedule.Kinds()), ", "))
		}
		out = append(out, k)
	}
	return out, nil
}

func plain(kinds []schedule.Kind) []string {
	out := make([]string, len(kinds))
	for i, k := range kinds {
		out[i] = k.String()
	}
	return out
}

// Apply checks the names against the site and cuts the program.
func (c *Choice) Apply(p *schedule.Program) (*schedule.Program, error) {
	kinds, err := c.Kinds()
	if err != nil {
		return nil, err
	}
	if err := KnownArea(p.Site, c.Area); err != nil {
		return nil, err
	}
	if err := KnownPerson(p.Site, c.Person); err != nil {
		return nil, err
	}
	if c.Area == "" && c.Person == "" && kinds == nil {
		return p, nil
	}
	return p.Filter(c.Area, c.Person, kinds), nil
}

// KnownArea says whether --area names an area of the site; "" names none.
func KnownArea(s *schedule.Site, id string) error {
	var ids []string
	for _, a := range s.Areas {
		ids = append(ids, a.ID)
	}
	return known("--area", "area", id, ids)
}

// KnownPerson says whether --for names a person of the site; "" names none.
func KnownPerson(s *schedule.Site, id string) error {
	var ids []string
	for _, p := range s.Crew.People {
		ids = append(ids, p.ID)
	}
	return known("--for", "person", id, ids)
}

func known(flag, what, id string, ids []string) error {
	switch near := agronomy.NearestName(id, ids); {
	case id == "" || slices.Contains(ids, id):
		return nil
	case len(ids) == 0:
		return Wrong("%s: the site file names no %s", flag, what)
	case near == "":
		return Wrong("%s: unknown %s %q", flag, what, id)
	default:
		return Wrong("%s: unknown %s %q; known: %s", flag, what, id, near)
	}
}
