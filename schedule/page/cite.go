package page

import (
	"slices"

	"swardbook/schedule"
	"swardbook/schedule/word"
)

// citations numbers the sources of one page in the order in which they are
// first named.
type citations struct {
	number map[string]int
	known  map[string][]ref // what keys were turned into
	list   []source
	front  int
}

// sources is the list of a page: those of its front, and those that only its
// workings name.
type sources struct{ Front, Behind []source }

// source is one entry of the list at the end of a page.
type source struct {
	N                    int
	Cite, Where, Checked string
}

// ref is one mention of a source in the text: its number, or the words of a
// citation that is no entry of the list, such as a law's.
type ref struct {
	N    int
	Text string
}

// cited is a sentence with its sources.
type cited struct {
	Text string
	Refs []ref
}

func newCitations() *citations {
	return &citations{number: map[string]int{}, known: map[string][]ref{}}
}

// refs turns the keys of a reason into mentions.
func (c *citations) refs(keys string) []ref {
	out, known := c.known[keys]
	if known {
		return out
	}
	for _, r := range word.Cited(keys) {
		if r.How == "" { // no entry of the references: a law, in words
			out = append(out, ref{Text: r.Cite()})
			continue
		}
		if c.number[r.Key] == 0 {
			c.list = append(c.list, source{len(c.list) + 1, r.Cite(), r.Where, r.Checked()})
			c.number[r.Key] = len(c.list)
		}
		if n := (ref{N: c.number[r.Key]}); !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	c.known[keys] = out
	return out
}

// frontEnds is called between the front of a page and its workings: sources first cited
// from then on are listed apart.
func (c *citations) frontEnds() { c.front = len(c.list) }

func (c *citations) sources() sources { return sources{c.list[:c.front], c.list[c.front:]} }

func (c *citations) reasons(rs []schedule.Reason) []cited {
	var out []cited
	for _, r := range rs {
		if r.Text != "" {
			out = append(out, cited{r.Text, c.refs(r.Source)})
		}
	}
	return out
}
