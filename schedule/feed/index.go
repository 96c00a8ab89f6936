package feed

import (
	"cmp"
	"log/slog"
	"maps"
	"net/url"
	"slices"
	"strings"

	"swardbook/schedule"
)

// indexPage lists the sites that are not private.
type indexPage struct {
	head
	Sites  []indexLine
	Unread int // sites that are not listed yet
	Ask    bool
}

type indexLine struct{ Path, Title, Note string }

const brokenNote = "its files have errors"

func newIndexLine(prefix, title, note string) indexLine {
	return indexLine{url.PathEscape(prefix) + "/", title, note}
}

func indexOf(lines []indexLine, unread int, ask bool) ([]byte, error) {
	slices.SortFunc(lines, func(a, b indexLine) int {
		return cmp.Or(strings.Compare(strings.ToLower(a.Title), strings.ToLower(b.Title)), strings.Compare(a.Path, b.Path))
	})
	return render("index.html", indexPage{newHead("Lawn programs"), lines, unread, ask})
}

// unreadyPage stands in for a site that never had a program.
type unreadyPage struct {
	head
	Problems []schedule.Problem
}

func unready(name string, problems []schedule.Problem) ([]byte, error) {
	return render("unready.html", unreadyPage{newHead(name), problems})
}

// list makes the table of paths and the index page. The feed is locked.
func (f *Feed) list() error {
	table := make(map[string]*site, len(f.sites))
	var lines []indexLine
	unread := 0
	for _, s := range inOrder(f.sites) {
		n := s.shown.Load()
		switch {
		case n == nil: // it stands under its name, unless it has a secret
			unread++
			if table[s.name] == nil {
				table[s.name] = s
			}
			continue
		case n.hidden(s):
			continue
		case table[n.prefix] != nil:
			f.say(slog.LevelError, s.name, "the site is not served: another has the same address", "other", table[n.prefix].logName())
			continue
		}
		table[n.prefix] = s
		if !n.private {
			lines = append(lines, newIndexLine(n.prefix, n.title, n.note))
		}
	}
	body, err := indexOf(lines, unread, f.o.Ask)
	if err != nil {
		return err
	}
	f.table.Store(&table)
	var was *mark
	if r := f.index.Load(); r != nil {
		was = &r.mark
	}
	f.index.Store(newResource(file{landingFile, htmlType, body}, was, f.o.Now(), false))
	return nil
}

// hidden tells whether a site may have a secret that is not known yet.
func (n *shown) hidden(s *site) bool { return n.from == nil && n.private && n.prefix == s.name }

// inOrder gives the sites in the order of their names, so that of two with one
// address it is always the same that is served.
func inOrder(sites map[string]*site) []*site {
	out := make([]*site, 0, len(sites))
	for _, name := range slices.Sorted(maps.Keys(sites)) {
		out = append(out, sites[name])
	}
	return out
}
