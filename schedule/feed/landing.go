package feed

import (
	"bytes"
	"cmp"
	"embed"
	"fmt"
	"html/template"
	"log/slog"
	"maps"
	"net/url"
	"slices"
	"strings"
	"sync"

	"swardbook/schedule"
	"swardbook/schedule/page"
)

//go:embed *.html feed.css
var files embed.FS

var templates = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("").ParseFS(files, "*.html"))
})

// head is what stands at the top of every page of the feed.
type head struct {
	Title string
	Style template.CSS
}

// style is the look of all pages, and what the feed's own have beside it.
var style = sync.OnceValue(func() string {
	own, err := files.ReadFile("feed.css")
	if err != nil {
		panic(err) // embedded: cannot be missing
	}
	return page.Style() + string(own)
})

func newHead(title string) head { return head{title, template.CSS(style())} }

// usualPage is about what a page takes, most of it the style; more only costs time.
const usualPage = 30 << 10

func render(name string, view any) ([]byte, error) {
	var b bytes.Buffer
	b.Grow(usualPage)
	if err := templates().ExecuteTemplate(&b, name, view); err != nil {
		return nil, fmt.Errorf("writing %s: %w", name, err)
	}
	return b.Bytes(), nil
}

// landing is the page from which a site is subscribed to.
type landing struct {
	head
	Span, Today string
	Warning     string // the newest files have errors
	Problems    []schedule.Problem
	When        spoken    // what there is to do first
	Due         []jobView // from their day to the end of their window
	Then        spoken    // what comes after jobs that are due
	Next        []jobView // all of the next day with work
	Past        []jobView // nothing was written down while there was time
	Earlier     int       // more of those
	Whole       link
	People      []link
	Areas       []link
	Home        string     // public address of this page; "" not known
	Code        *page.Code // of that address
	Private     bool
	Record      bool
	LastSafe    string
}

// link is one calendar to subscribe to.
type link struct {
	Name, Path string
	Webcal     template.URL // opens the subscribe dialog of many clients
	Web        string       // the same to paste; "" without a base
	Why        string       // why there is no such calendar; "" there is
}

func (t *tree) link(name, path string) link {
	k := link{Name: name, Path: path, Web: t.address(path)}
	if _, rest, ok := strings.Cut(k.Web, "://"); ok {
		k.Webcal = template.URL("webcal://" + rest) // webcals has no client on phones
	}
	return k
}

// warning says that the program is older than the files; "" it is not.
func (t *tree) warning() string {
	if schedule.Fatal(t.problems) {
		return "The newest site file or record book has errors, so this is still the program from before."
	}
	return ""
}

// landing fills in the page; why says of some calendars why there are none.
func (t *tree) landing(p *schedule.Program, why map[string]string) *landing {
	today := day(t.now)
	l := &landing{head: newHead(p.Title), Span: p.Start.Short() + " to " + p.Through.Short(), Today: today.Words(),
		Warning: t.warning(), Whole: t.link(p.Title, calendarFile), Home: t.address(""), Record: t.record,
		Private: p.Site.Calendar.Secret != "", Problems: t.problems}
	for _, k := range t.parts(p)[1:] {
		one := t.link(k.name, k.path)
		if w := why[k.path]; w != "" {
			one = link{Name: k.name, Why: w}
		}
		if k.o.Person != "" {
			l.People = append(l.People, one)
		} else {
			l.Areas = append(l.Areas, one)
		}
	}
	l.tell(t.today(p).Around(today), today, t.record)
	return l
}

func (l *landing) write() ([]byte, error) {
	if l.Home != "" {
		c, err := page.NewCode(l.Home)
		if err != nil {
			return nil, err
		}
		l.Code = c
	}
	l.Problems = slices.DeleteFunc(slices.Clone(l.Problems), func(p schedule.Problem) bool { return p.Warning })
	if len(l.Areas) == 1 {
		l.Areas = nil // the same as the whole
	}
	return render("landing.html", l)
}

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
