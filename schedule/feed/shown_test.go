package feed

import (
	"fmt"
	"hash/fnv"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"swardbook/schedule"
	"swardbook/schedule/plan"
)

func dayOf(t *testing.T, s string) schedule.Date {
	t.Helper()
	if s == "" {
		return schedule.Date{}
	}
	d, err := schedule.ParseDate(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// The days counted with the calendar of package time.
func TestHeadings(t *testing.T) {
	between := func(a, b string) int { return int(dayOf(t, b).Time().Sub(dayOf(t, a).Time()).Hours() / 24) }
	for _, c := range []struct{ today, since, next, when, then string }{
		{"2026-09-14", "", "2026-09-15", "2026-09-15 Tue 15 Sep: next, tomorrow", ""},
		{"2026-09-14", "", "2026-09-16", "2026-09-16 Wed 16 Sep: next, in 2 days", ""},
		{"2026-12-31", "", "2027-01-01", "2027-01-01 Fri 1 Jan: next, 2027, tomorrow", ""},
		{"2026-11-20", "", "2027-03-20", fmt.Sprintf("2027-03-20 Sat 20 Mar: next, 2027, in %d days", between("2026-11-20", "2027-03-20")), ""},
		{"2026-09-14", "2026-09-14", "", "2026-09-14 Today: Mon 14 Sep", ""},
		{"2026-09-14", "2026-09-14", "2026-09-20", "2026-09-14 Today: Mon 14 Sep", "2026-09-20 Sun 20 Sep: next, in 6 days"},
		{"2026-09-14", "2026-09-12", "2026-09-15", "2026-09-12 Due now: since Sat 12 Sep", "2026-09-15 Tue 15 Sep: next, tomorrow"},
		{"2026-09-14", "2026-09-12", "", "2026-09-12 Due now: since Sat 12 Sep", ""},
		{"2026-09-14", "", "", " Nothing to do: nothing more is planned until Sat 11 Sep 2027", ""},
	} {
		when, then := heading(dayOf(t, c.today), dayOf(t, c.since), dayOf(t, c.next), dayOf(t, "2027-09-11"))
		words := func(s spoken) string {
			if s == (spoken{}) {
				return ""
			}
			return s.ISO + " " + s.Large + ": " + s.Small
		}
		if words(when) != c.when || words(then) != c.then {
			t.Errorf("%v: %q, %q", c, words(when), words(then))
		}
	}
}

// What there is to do, by state and day, of a program made by hand: due from its day to
// the end of its window; next, all of one day; of the past only what nobody wrote down,
// the twelve newest.
func TestJobsByTheirStanding(t *testing.T) {
	today := dayOf(t, "2026-09-14")
	p := &schedule.Program{Site: &schedule.Site{}, Through: dayOf(t, "2027-09-11")}
	entry := func(id string, k schedule.Kind, on int, state schedule.State) *schedule.Entry {
		p.Entries = append(p.Entries, schedule.Entry{ID: id, Kind: k, State: state, AreaName: "Lawn", Date: today.AddDays(on), Earliest: today.AddDays(on - 3), Latest: today.AddDays(on + 5)})
		return &p.Entries[len(p.Entries)-1]
	}
	for i := range 15 {
		entry(fmt.Sprint("past", i), schedule.Nitrogen, -40+i, schedule.Planned)
	}
	entry("done", schedule.Lime, -20, schedule.Finished)
	entry("missed", schedule.Lime, -20, schedule.Missed)
	entry("rest", schedule.Lime, -20, schedule.Planned).Rest = true
	entry("last day", schedule.Lime, -5, schedule.Planned)
	due := entry("due", schedule.Potassium, -1, schedule.Planned)
	due.GoodDay = today.AddDays(2)
	entry("today", schedule.SoilTest, 0, schedule.Planned).GoodDay = today
	entry("told", schedule.LastSafe, 1, schedule.Planned)
	entry("next", schedule.Lime, 2, schedule.Planned)
	e := entry("same day", schedule.Nitrogen, 2, schedule.Planned)
	e.Pounds, e.WhoName, e.LastSafe = 12, "Ines", dayOf(t, "2026-10-03")
	entry("later", schedule.Lime, 4, schedule.Planned)
	names := func(all []jobView) (out string) {
		for _, v := range all {
			out += v.Name + "; " + v.Day + "; " + v.Amount + v.Due + v.Standing + v.LastSafe + v.Who + "\n"
		}
		return out
	}
	l := &landing{}
	l.tell(p, today, true)
	if want := "Lime, Lawn; Wed 9 Sep 2026; due until Mon 14 Sep 2026\n" +
		"Potassium, Lawn; Sun 13 Sep 2026; due until Fri 18 Sep 2026; next good day Wed 16 Sep\n" +
		"Soil sample, Lawn; Mon 14 Sep 2026; due until Sat 19 Sep 2026; today is a good day\n"; names(l.Due) != want {
		t.Errorf("due: %s", names(l.Due))
	}
	if want := "Lime, Lawn; Wed 16 Sep 2026; \nFeed, Lawn; Wed 16 Sep 2026; 12 lbSat 3 Oct 2026Ines\n"; names(l.Next) != want {
		t.Errorf("next: %s", names(l.Next))
	}
	if len(l.Past) != 12 || l.Earlier != 3 || l.Past[0].Day != today.AddDays(-37).Words() || l.Past[11].Standing != "taken as done" {
		t.Errorf("past: %s and %d earlier", names(l.Past), l.Earlier)
	}
	if l.When.Small != "since Wed 9 Sep" || l.Then.Large != "Wed 16 Sep" || l.LastSafe != "" {
		t.Errorf("%v %v %q", l.When, l.Then, l.LastSafe)
	}
	// To be recorded is what can have been done: its window has begun.
	now, later := choice(p, today)
	var ids []string
	for _, v := range slices.Concat(now, later) {
		ids = append(ids, strings.TrimPrefix(v.Record, "done?job="))
	}
	want := "[last+day due today next same+day rest missed done past14 past13 past12 past11 past10 past9 past8 past7 past6 past5 past4 past3 past2 past1 past0 later]"
	if fmt.Sprint(ids) != want || len(later) != 1 {
		t.Errorf("%v, want %s", ids, want)
	}
	if v := jobOf(p, &p.Entries[len(p.Entries)-1], today, true); v.Record != "" {
		t.Errorf("ahead of its window: %q", v.Record)
	}
	if v := jobOf(p, &p.Entries[0], today, false); v.Record != "" {
		t.Errorf("where nothing is recorded: %q", v.Record)
	}
	wet := schedule.Entry{Kind: schedule.Iron, Gallons: 2, Pounds: 3}
	if v := jobOf(p, &wet, today, false); !strings.HasPrefix(v.Amount, "2 gal") {
		t.Errorf("a liquid: %q", v.Amount)
	}
	for on, want := range map[int]string{0: "Mon 14 Sep 2026", 1: "", -1: "Mon 14 Sep 2026"} {
		q := *p
		q.Season.LastSafe = today
		l := &landing{}
		if l.tell(&q, today.AddDays(on), false); l.LastSafe != want {
			t.Errorf("last safe day, seen %d days later: %q", on, l.LastSafe)
		}
	}
	if l := (&landing{}); true {
		p.Entries = p.Entries[:12]
		if l.tell(p, today, false); len(l.Past) != 12 || l.Earlier != 0 {
			t.Errorf("twelve past: %d and %d earlier", len(l.Past), l.Earlier)
		}
	}
}

// One area has no calendar of its own, as it is the whole.
func TestCalendarsOffered(t *testing.T) {
	w := newWorld(t)
	w.put("mill.toml", lawn)
	one, _, _ := strings.Cut(lawn, "[area.west]")
	w.put("one.toml", one+lawn[strings.Index(lawn, "[material"):])
	w.start()
	wants(t, "two areas", w.page("/mill/"), "One area only", `href="area/east.ics"`, `href="area/west.ics"`, "webcal://example.org/lawns/mill/area/west.ics",
		"One person’s jobs only", `href="person/ines.ics"`, `href="person/oskar.ics"`)
	lacks(t, "one area", w.page("/one/"), "One area only", "area/east.ics")
	lacks(t, "a page for all", w.page("/mill/"), "whoever has this address", "newest site file")
	wants(t, "one area", w.page("/one/"), "One person’s jobs only", `href="person/ines.ics"`)
	// What its problems are is told, and what only gives to think is not.
	w.put("mill.toml", strings.Replace(strings.Replace(lawn, "phosphorus = \"14 ppm\"", "phosphorus = \"900 ppm\"", 1), `"clay loam"`, `"mud"`, 1))
	w.refresh()
	page := w.page("/mill/")
	wants(t, "the page", page, "mud")
	lacks(t, "the page", page, "900")
	// Somebody who has nothing to do has a calendar of the site's days, into which jobs may come.
	w.put("one.toml", strings.Replace(w.file("one.toml"), `oskar = "Oskar"`, "oskar = \"Oskar\"\nida = \"Ida\"", 1))
	w.refresh()
	wants(t, "the page", w.page("/one/"), `href="person/ida.ics"`)
	if text := w.page("/one/person/ida.ics"); strings.Count(text, "UID:") == 0 || strings.Count(text, "UID:") != strings.Count(text, "UID:oxlo-green-4h2k.site.") {
		t.Error(text)
	}
}

func (w *world) file(name string) string {
	w.t.Helper()
	b, err := os.ReadFile(filepath.Join(w.dir, name))
	if err != nil {
		w.t.Fatal(err)
	}
	return string(b)
}

// The index lists by title, whatever its letters, then by address, and tells what is not
// read yet.
func TestIndexOrder(t *testing.T) {
	w := newWorld(t)
	for name, title := range map[string]string{"c": "beta", "b": "Alpha", "a": "Gamma", "e": "alpha"} {
		w.put(name+".toml", strings.NewReplacer("Oxlo green", title, "oxlo-green-4h2k", name+"-0000").Replace(lawn))
	}
	w.begin()
	unread := w.page("/")
	wants(t, "the index before", unread, "the files of 4 sites are still to be read")
	lacks(t, "the index before", unread, "Alpha", "No site is listed")
	w.refresh()
	var at []int
	page := w.page("/")
	for _, part := range []string{`<a href="b/">Alpha</a>`, `<a href="e/">alpha</a>`, `<a href="c/">beta</a>`, `<a href="a/">Gamma</a>`} {
		at = append(at, strings.Index(page, part))
	}
	if !slices.IsSorted(at) || at[0] < 0 || strings.Contains(page, "still to be read") || strings.Contains(page, `href="ask"`) {
		t.Errorf("%v in %s", at, page)
	}
	// Without a change it keeps its tag and its time.
	was := w.get("/").Header
	w.pass(time.Hour)
	w.refresh()
	w.put("c.toml", strings.Replace(w.file("c.toml"), "2600", "2700", 1))
	w.refresh()
	if is := w.get("/").Header; is.Get("Last-Modified") != was.Get("Last-Modified") || is.Get("Etag") != was.Get("Etag") {
		t.Error("the index changed with a lawn")
	}
	empty := newWorld(t)
	empty.start()
	wants(t, "an empty index", empty.page("/"), "No site is listed here.")
}

// One line a request, and nothing in it that is a secret.
func TestAccessLog(t *testing.T) {
	const secret = "heron-under-willow-4711"
	w := recording(t)
	w.put("quiet.toml", named("quiet")+"[calendar]\nsecret = \""+secret+"\"\n")
	w.refresh()
	size := fmt.Sprint(len(w.page("/mill/program.json")))
	slow := false
	w.feed.o.Now = func() time.Time {
		if slow {
			w.pass(3 * time.Second)
		}
		return w.now()
	}
	for _, c := range []struct{ method, path, want string }{
		{"GET", "/", "method=GET site=\"\" what=index status=200"},
		{"HEAD", "/", "method=HEAD site=\"\" what=index status=200 bytes=0 "},
		{"GET", "/mill/", "site=mill what=landing status=200"},
		{"GET", "/mill/program.json", "site=mill what=program.json status=200 bytes=" + size},
		{"GET", "/mill/person/ines.ics", "site=mill what=person/ines.ics status=200"},
		{"GET", "/mill/done", "site=mill what=done status=200"},
		{"GET", "/mill", "site=mill what=\"\" status=301"},
		{"GET", "/mill/nothing", "site=mill what=unknown status=404 bytes=10"}, // "not found\n"
		{"GET", "/nobody/x", "site=\"\" what=unknown status=404 bytes=10"},
		{"GET", "/" + secret + "/", "site=private what=landing status=200"},
		{"BREW", "/mill/", "method=other site=mill what=landing status=405"},
		{"POST", "/mill/", "method=POST"}, {"PUT", "/mill/", "method=PUT"}, {"DELETE", "/mill/", "method=DELETE"}, {"OPTIONS", "/mill/", "method=OPTIONS"},
	} {
		before := len(w.logged())
		w.ask(c.method, c.path, "")
		if got := w.logged()[before:]; !strings.Contains(got, c.want) || strings.Count(got, "msg=request") != 1 || !strings.HasSuffix(got, "took=0s\n") {
			t.Errorf("%s %s: %s", c.method, c.path, got)
		}
	}
	before := len(w.logged())
	slow = true
	w.get("/nobody/")
	if got := w.logged()[before:]; !strings.HasSuffix(got, "took=3s\n") {
		t.Error(got)
	}
	lacks(t, "the log", w.logged(), secret)
}

// What happens to the sites is logged once, with the site's name.
func TestLog(t *testing.T) {
	w := recording(t)
	wants(t, "the log", w.logged(), fmt.Sprintf("msg=planned site=mill jobs=%d\n", len(programOf(w, "mill").Entries)))
	w.post(with(with(w.open("east/lime/2026-1"), "what", "part"), "amount", "half"))
	wants(t, "the log", w.logged(), `level=INFO msg=recorded site=mill job=east/lime/2026-1 changes="`)
	w.put("bad:name.toml", lawn)
	os.Chmod(filepath.Join(w.dir, "mill.toml"), 0o600)
	w.put("quiet.toml", named("quiet")+"[calendar]\nsecret = \"heron-under-willow-4711\"\n")
	os.Chmod(filepath.Join(w.dir, "quiet.toml"), 0o600)
	for range 3 {
		w.refresh()
	}
	if n := strings.Count(w.logged(), "the site is not served"); n != 1 {
		t.Errorf("said %d times", n)
	}
	lacks(t, "the log", w.logged(), "chmod 600")
	os.Remove(filepath.Join(w.dir, "quiet.toml"))
	w.refresh()
	lacks(t, "the log", w.logged(), "is gone")
	w.refresh()
	wants(t, "the log", w.logged(), `msg="the site file is gone" site=quiet`)
	os.Remove(filepath.Join(w.dir, "bad:name.toml"))
	if err := os.WriteFile(filepath.Join(w.dir, "mill.toml"), []byte("id = 3\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	w.refresh()
	wants(t, "the log", w.logged(), `level=ERROR msg="the files have errors; the last good program is served on" site=mill problems="[`)
	w.put("new.toml", "id = 3\n")
	w.refresh()
	wants(t, "the log", w.logged(), `level=ERROR msg="the files have errors; there is no program to serve" site=new problems="[`)
	var many []schedule.Problem
	for i := range 12 {
		many = append(many, schedule.Problem{File: "x", Message: fmt.Sprint(i)}, schedule.Problem{File: "x", Message: "only a warning", Warning: true})
	}
	if got := texts(many); len(got) != 10 || got[9] != "x: 9" {
		t.Errorf("%q", got)
	}
}

// Names and paths at the edges of what is allowed.
func TestNames(t *testing.T) {
	for name, good := range map[string]bool{
		"mill": true, "a b": true, "ä": true, strings.Repeat("x", 100): true, "mill.old": true, "index.htm": true,
		"": false, strings.Repeat("x", 101): false, "index.html": false, "a/b": false, `a\b`: false, "a:b": false, "a*": false, "a?": false, `a"`: false,
		"a<": false, "a>": false, "a|": false, "a\n": false, "a\x7f": false, "a\xff": false,
	} {
		if err := nameable(name); (err == nil) != good {
			t.Errorf("%q: %v", name, err)
		}
	}
	for path, want := range map[string]string{
		"person/ines.ics": "person ines", "area/east.ics": "area east", "area/a-b_1.ics": "area a-b_1",
		"person/.ics": "", "person/ines": "", "person/in.es.ics": "", "person/a/b.ics": "", `person/a\b.ics`: "", "other/x.ics": "", "x.ics": "", "person": "", "": "",
		"Person/x.ics": "", "person/x.ICS": "",
	} {
		o, ok := partOf(path)
		got := ""
		switch {
		case o.Person != "":
			got = "person " + o.Person
		case o.Area != "":
			got = "area " + o.Area
		}
		if got != want || ok != (want != "") || o.Person != "" && o.Area != "" {
			t.Errorf("%q: %q %v", path, got, ok)
		}
	}
	for rest, want := range map[string]string{
		"CODE": "index.html", "CODE.ics": "program.ics", "CODE/sheet": "program.html", "CODE/site.toml": "site.toml", "CODE/site.record.csv": "site.record.csv",
		"CODE/ask": "ask", "CODE/person/mo.ics": "person/mo.ics", "CODE/area/lawn.ics": "area/lawn.ics",
	} {
		code, path := linked(rest)
		if code != "CODE" || path != want || within(code, path) != rest {
			t.Errorf("%q: %q %q, and back %q", rest, code, path, within(code, path))
		}
	}
	for _, rest := range []string{"CODE/", "CODE/program.ics", "CODE/other/x.ics", "CODE/person/x", "CODE/person/a/b.ics", "CODE/index.html", "CODE/ask/"} {
		if code, path := linked(rest); path != "" {
			t.Errorf("%q: %q %q", rest, code, path)
		}
	}
	for n, good := range map[int]bool{150: true, 151: false} {
		s := "https://example.org/" + strings.Repeat("x", n-20)
		if got, err := ParseBase(s); (err == nil) != good || good && got != s {
			t.Errorf("%d characters: %q %v", n, got, err)
		}
	}
	for text, want := range map[string]bool{
		"": false, "secret = 3": true, "# secret": false, "a = 1 # secret": false, "# no\nsecret = 1": true, "[calendar]\n  secret=\"x\" # y": true, "# secret\r\na = 1": false,
	} {
		if got := mayHoldSecret([]byte(text)); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}

// A site's part hangs on its name, by the hash FNV-1a of 64 bits (Fowler, Noll, Vo;
// RFC 9923), worked out here by its definition.
func TestPartOfASite(t *testing.T) {
	total := 0
	for i := range 300 {
		name := fmt.Sprint("site-", i)
		h := uint64(14695981039346656037)
		for _, b := range []byte(name) {
			h = (h ^ uint64(b)) * 1099511628211
		}
		in := 0
		for k := 1; k <= 7; k++ {
			if (Shard{k, 7}).Has(name) {
				in++
				if uint64(k-1) != h%7 {
					t.Errorf("%s is in part %d, not %d", name, k, h%7+1)
				}
			}
		}
		total += in
		if !(Shard{}).Has(name) || !(Shard{1, 1}).Has(name) || (Shard{0, 7}).Has(name) || (Shard{8, 7}).Has(name) {
			t.Errorf("%s: the whole does not have it, or a part that there is not", name)
		}
	}
	if total != 300 || fnv.New64a().Sum64() != 14695981039346656037 {
		t.Errorf("%d sites of 300", total)
	}
}

// How far publishing has come is told at the start, at the end, and every fifty sites.
func TestProgress(t *testing.T) {
	p := newPress(t)
	for i := range 120 {
		p.put(fmt.Sprintf("s%03d.toml", i), "id = 3\n")
	}
	var told []int
	p.o.Progress = func(done, of int) {
		if told = append(told, done); of != 120 {
			t.Errorf("of %d", of)
		}
	}
	if done := p.publish(); done.Sites != 120 || len(done.Failed) != 120 || fmt.Sprint(told) != "[0 50 100 120]" || !slices.IsSortedFunc(done.Failed, func(a, b Failure) int { return strings.Compare(a.Name, b.Name) }) {
		t.Errorf("%+v: %v", done, told)
	}
}

// Of two sites with one address the first by name has it, published or served, also where
// the order of the files is another: "a-b.toml" comes before "a.toml".
func TestFirstByName(t *testing.T) {
	p := newPress(t)
	p.o.Jobs = 1
	secret := "[calendar]\nsecret = \"heron-under-willow-4711\"\n"
	p.put("a-b.toml", named("a-b")+secret)
	p.put("a.toml", named("a")+secret)
	if done := p.publish(); len(done.Failed) != 1 || done.Failed[0].Name != "a-b" || !strings.Contains(done.Failed[0].Problems[0].Message, "a.toml has the same address") {
		t.Errorf("%+v", done.Failed)
	}
	p.start()
	wants(t, "the page", p.page("/heron-under-willow-4711/"), "<h1>Site a</h1>")
	wants(t, "the log", p.logged(), `site=a-b other=a`)
}

// Without a version everything is made anew, and nothing is written down for the next time.
func TestPublishWithoutVersion(t *testing.T) {
	p, plans := counted(t)
	p.o.Version = ""
	p.put("mill.toml", lawn)
	p.publish()
	if done := p.publish(); plans.Load() != 2 || done.Wrote != 0 || done.Same != 9 { // the site's eight and the index
		t.Errorf("%d plans, %+v", plans.Load(), done)
	}
	if _, err := os.Stat(filepath.Join(p.out, "mill", imprintFile)); err == nil {
		t.Error("an imprint of no version")
	}
	p.o.Version = "1"
	p.publish()
	if p.publish(); plans.Load() != 3 {
		t.Errorf("%d plans", plans.Load())
	}
}

// A file younger than two seconds may change again under the same stamp.
func TestStamps(t *testing.T) {
	w := newWorld(t)
	w.put("a.toml", "x")
	for age, young := range map[time.Duration]bool{0: true, 1999 * time.Millisecond: true, 2 * time.Second: false, time.Hour: false} {
		at := w.at.Add(-age)
		if err := os.Chtimes(filepath.Join(w.dir, "a.toml"), at, at); err != nil {
			t.Fatal(err)
		}
		s := stampOf(w.root, "a", "", w.at)
		if s.young != young || s.same(s) == young || !s.site.there || s.site.size != 1 || s.record.there || s.normals.there {
			t.Errorf("%v old: %+v", age, s)
		}
	}
	was := stampOf(w.root, "a", "n.csv", w.at.Add(time.Hour))
	for _, name := range []string{"a.toml", "a.record.csv", "n.csv"} {
		w.put(name, "other")
		at := w.at.Add(-time.Hour)
		os.Chtimes(filepath.Join(w.dir, name), at, at)
		is := stampOf(w.root, "a", "n.csv", w.at.Add(time.Hour))
		if was.same(is) || !is.same(is) {
			t.Errorf("%s changed: %+v", name, is)
		}
		was = is
	}
	if other := stampOf(w.root, "a", "", w.at.Add(time.Hour)); was.same(other) {
		t.Error("without its normals it is the same")
	}
}

// The time of a link's files is the first moment of the day anywhere, which is in the zone
// 14 hours ahead of UTC, whatever the server's clock shows within the day.
func TestTimeOfALink(t *testing.T) {
	w := opened(t)
	code := codeOf(t, homeLawn)
	for _, path := range []string{"", ".ics", "/sheet", "/site.toml"} {
		if got := w.ask("GET", "/p/"+code+path, "").Header.Get("Last-Modified"); got != "Sun, 13 Sep 2026 10:00:00 GMT" {
			t.Errorf("%q changed %s", path, got)
		}
	}
	for path, want := range map[string]string{"": "index.html", ".ics": "program.ics", "/sheet": "program.html", "/ask": "ask", "/area/lawn.ics": "area", "/x": "unknown"} {
		before := len(w.logged())
		w.ask("GET", "/p/"+code+path, "")
		if got := w.logged()[before:]; !strings.Contains(got, "site=link what="+want+" ") {
			t.Errorf("%q: %s", path, got)
		}
	}
}

// Who may record: at the public address, on this machine, at a number.
func TestWhereOneMayRecord(t *testing.T) {
	f := &Feed{o: Options{Base: base}}
	for host, want := range map[string]bool{
		"example.org": true, "EXAMPLE.ORG": true, "example.org:80": false, "sub.example.org": false, "": false,
		"localhost": true, "LocalHost:8080": true, "localhost.example": false, "127.0.0.1": true, "127.0.0.1:80": true, "[::1]": true, "[::1]:80": true, "::1": true,
		"127.0.0.1.example": false,
	} {
		if got := f.mayRecord(host); got != want {
			t.Errorf("%q: %v", host, got)
		}
	}
	if f := (&Feed{}); f.mayRecord("example.org") || f.mayRecord("") || !f.mayRecord("192.0.2.1:1") {
		t.Error("without a base")
	}
	s := &schedule.Site{}
	if !knows(s, "anybody") || !knows(s, "") {
		t.Error("a site that names nobody knows everybody")
	}
	s.Crew.People = []schedule.Person{{ID: "ines"}}
	if !knows(s, "ines") || !knows(s, "") || knows(s, "oskar") {
		t.Error("a site that names somebody")
	}
}

// What is wrong with a line is said once, with its key and its remedy.
func TestWrongLines(t *testing.T) {
	w := recording(t)
	for _, c := range []struct{ key, value, wants, lacks string }{
		{"amount", "90000 lb", ".</li>", "()"},
		{"by", "nobody", "nobody of that name.</li>", "()"},
		{"amount", "a lot", "Amount: ", "()"},
	} {
		r := w.post(with(w.open("east/lime/2026-1"), c.key, c.value))
		page := bodyOf(t, r)
		if r.StatusCode != 422 || !strings.Contains(page, c.wants) || strings.Contains(page, c.lacks) {
			_, page, _ = strings.Cut(page, `role="alert"`)
			t.Errorf("%s %s: %d %.600s", c.key, c.value, r.StatusCode, page)
		}
	}
	r := w.post(with(w.open("east/lime/2026-1"), "date", "14.9."))
	wants(t, "the page", bodyOf(t, r), "write it as 2026-09-14.")
	// What was typed comes back, and nobody is named by us in its place.
	v := with(with(with(w.open("east/lime/2026-1"), "amount", "7 lb"), "note", "wind & rain"), "what", "missed")
	page := bodyOf(t, w.post(v))
	wants(t, "the page", page, `value="7 lb"`, `value="wind &amp; rain"`, `value="missed" checked`, `value="2026-09-14"`)
	lacks(t, "the page", page, `value="done" required checked`, "It is right as it stands")
	// A form that the planner refuses is told to the person, and not written.
	w.feed.o.Plan = func(s *schedule.Site, book []schedule.Done, last schedule.Date) (*schedule.Program, error) {
		if len(book) > 0 {
			return nil, fmt.Errorf("the line does not fit")
		}
		return plan.Program(s, book, last)
	}
	r = w.post(w.open("east/lime/2026-1"))
	if page := bodyOf(t, r); r.StatusCode != 422 || !strings.Contains(page, "The line does not fit.") || w.book() != "" {
		t.Errorf("%d, book %q", r.StatusCode, w.book())
	}
}
