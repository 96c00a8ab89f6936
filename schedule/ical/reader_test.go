package ical

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
	"unicode"
	"unicode/utf8"
)

// A second reader, written from RFC 5545 alone and sharing nothing with the
// code under test: it unfolds with a regular expression and builds a tree.

type node struct {
	name  string
	props []prop
	subs  []*node
}

type prop struct{ name, params, value string }

var (
	foldRE = regexp.MustCompile("\r\n[ \t]")
	lineRE = regexp.MustCompile(`^([A-Z0-9-]+)((?:;[A-Z-]+=[A-Za-z0-9-]+)*):(.*)$`)
	escRE  = regexp.MustCompile(`\\[\\;,nN]`)
)

// tree reads a whole file, or says what is wrong with its grammar.
func tree(text []byte) (*node, error) {
	root := &node{}
	stack := []*node{root}
	for i, line := range strings.Split(foldRE.ReplaceAllString(string(text), ""), "\r\n") {
		if line == "" {
			continue
		}
		m := lineRE.FindStringSubmatch(line)
		if m == nil {
			return nil, fmt.Errorf("content line %d has no name and value: %.40q", i+1, line)
		}
		top := stack[len(stack)-1]
		switch m[1] {
		case "BEGIN":
			n := &node{name: m[3]}
			top.subs = append(top.subs, n)
			stack = append(stack, n)
		case "END":
			if top.name != m[3] || top == root {
				return nil, fmt.Errorf("content line %d ends %q inside %q", i+1, m[3], top.name)
			}
			stack = stack[:len(stack)-1]
		default:
			top.props = append(top.props, prop{m[1], m[2], m[3]})
		}
	}
	if len(stack) != 1 || len(root.subs) != 1 || root.subs[0].name != "VCALENDAR" {
		return nil, fmt.Errorf("not exactly one whole VCALENDAR")
	}
	return root.subs[0], nil
}

func parse(t testing.TB, text []byte) *node {
	t.Helper()
	n, err := tree(text)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

func (n *node) names() (all []string) {
	for _, p := range n.props {
		all = append(all, p.name+p.params)
	}
	return all
}

// text gives the value of the first property of a name, without escapes.
func (n *node) text(name string) string {
	for _, p := range n.props {
		if p.name == name {
			return escRE.ReplaceAllStringFunc(p.value, func(s string) string {
				if s == `\n` || s == `\N` {
					return "\n"
				}
				return s[1:]
			})
		}
	}
	return ""
}

func (n *node) number(t testing.TB, name string) int {
	t.Helper()
	i, err := strconv.Atoi(n.text(name))
	if err != nil {
		t.Fatal(err)
	}
	return i
}

// shown is everything a reader sees of an event, alarms included.
func (n *node) shown() string {
	var b strings.Builder
	for _, p := range n.props {
		if !slices.Contains([]string{"DTSTAMP", "LAST-MODIFIED", "SEQUENCE"}, p.name) {
			fmt.Fprintln(&b, p)
		}
	}
	for _, s := range n.subs {
		fmt.Fprintln(&b, s.name, s.shown())
	}
	return b.String()
}

func byUID(cal *node) map[string]*node {
	m := map[string]*node{}
	for _, e := range cal.subs {
		m[e.text("UID")] = e
	}
	return m
}

// Orders of properties that are part of the format; "?" marks an optional one.
var (
	calendarOrder = []string{"VERSION", "PRODID", "CALSCALE", "X-WR-RELCALID", "NAME", "X-WR-CALNAME", "X-WR-CALDESC",
		"REFRESH-INTERVAL;VALUE=DURATION", "X-PUBLISHED-TTL", "COLOR", "?SOURCE;VALUE=URI"}
	eventOrder = []string{"UID", "DTSTAMP", "LAST-MODIFIED", "SEQUENCE", "DTSTART;VALUE=DATE", "DTEND;VALUE=DATE", "SUMMARY",
		"?DESCRIPTION", "?LOCATION", "?CATEGORIES", "STATUS", "TRANSP", "X-MICROSOFT-CDO-BUSYSTATUS", "?URL"}
	alarmOrder = []string{"ACTION", "DESCRIPTION", "TRIGGER"}
)

// inOrder tells whether the properties are those of the order, and no others.
func inOrder(names, order []string) bool {
	for _, want := range order {
		name, optional := strings.CutPrefix(want, "?")
		switch {
		case len(names) > 0 && names[0] == name:
			names = names[1:]
		case !optional:
			return false
		}
	}
	return len(names) == 0
}

// faults checks a file against the rules of its form. It is proved able to
// fail by [TestFaults].
func faults(text []byte) (out []string) {
	bad := func(form string, args ...any) { out = append(out, fmt.Sprintf(form, args...)) }
	if !utf8.Valid(text) || strings.ContainsAny(string(text), "\u2028\u2029\u0085\uFEFF\uFFFD") {
		bad("characters that some readers choke on")
	}
	if !strings.HasSuffix(string(text), "\r\n") {
		bad("does not end in CRLF")
	}
	for i, line := range strings.Split(strings.TrimSuffix(string(text), "\r\n"), "\r\n") {
		switch tail := line[len(strings.TrimRight(line, `\`)):]; {
		case len(line) > 75:
			bad("line %d has %d octets", i+1, len(line))
		case strings.TrimRight(line, " \t") != line || line == "":
			bad("line %d is empty or ends in a blank", i+1)
		case len(tail)%2 == 1:
			bad("line %d ends inside an escape", i+1)
		case !utf8.ValidString(line):
			bad("line %d ends inside a character", i+1)
		case strings.ContainsFunc(line, unicode.IsControl):
			bad("line %d holds a control character", i+1)
		}
	}
	cal, err := tree(text)
	if err != nil {
		bad("%v", err)
		return out
	}
	if !inOrder(cal.names(), calendarOrder) {
		bad("calendar properties are %v", cal.names())
	}
	if cal.text("VERSION") != "2.0" || cal.text("NAME") != cal.text("X-WR-CALNAME") || utf8.RuneCountInString(cal.text("NAME")) > 40 {
		bad("version or name")
	}
	for _, p := range cal.props {
		if strings.Contains(p.value, `\`) {
			bad("%s needs an escape", p.name)
		}
	}
	if len(cal.subs) == 0 {
		bad("no events")
	}
	seen, last := map[string]bool{}, ""
	for _, e := range cal.subs {
		uid := e.text("UID")
		bad := func(form string, args ...any) { bad(uid+": "+form, args...) }
		if seen[uid] {
			bad("used twice")
		}
		seen[uid] = true
		if key := e.text("DTSTART") + uid; key < last {
			bad("out of order")
		} else {
			last = key
		}
		if e.name != "VEVENT" || !inOrder(e.names(), eventOrder) {
			bad("%s with %v", e.name, e.names())
		}
		start, err1 := time.Parse("20060102", e.text("DTSTART"))
		end, err2 := time.Parse("20060102", e.text("DTEND"))
		if err1 != nil || err2 != nil || !end.Equal(start.AddDate(0, 0, 1)) {
			bad("days %s to %s", e.text("DTSTART"), e.text("DTEND"))
		}
		if _, err := time.Parse("20060102T150405Z", e.text("DTSTAMP")); err != nil || e.text("DTSTAMP") != e.text("LAST-MODIFIED") {
			bad("stamps %s and %s", e.text("DTSTAMP"), e.text("LAST-MODIFIED"))
		}
		if n, err := strconv.Atoi(e.text("SEQUENCE")); err != nil || n < 0 {
			bad("sequence %s", e.text("SEQUENCE"))
		}
		cancelled := e.text("STATUS") == "CANCELLED"
		if !cancelled && e.text("STATUS") != "CONFIRMED" || e.text("TRANSP") != "TRANSPARENT" || e.text("X-MICROSOFT-CDO-BUSYSTATUS") != "FREE" {
			bad("status %s, %s", e.text("STATUS"), e.text("TRANSP"))
		}
		if cancelled && (len(e.subs) > 0 || !strings.HasPrefix(e.text("SUMMARY"), "Cancelled: ") || !strings.HasPrefix(e.text("DESCRIPTION"), "Do not do this job") && !strings.Contains(e.text("DESCRIPTION"), ": no longer in this calendar.")) {
			bad("is cancelled without saying so")
		}
		for _, p := range e.props {
			plain := escRE.ReplaceAllString(p.value, "")
			if p.name != "URL" && p.name != "CATEGORIES" && strings.ContainsAny(plain, `\;,`) {
				bad("%s has a bare character", p.name)
			}
			if p.value == "" || p.name != "URL" && strings.ContainsAny(p.value, "<>") {
				bad("%s is empty or has angle brackets", p.name)
			}
		}
		if strings.Contains(e.text("SUMMARY")+e.text("LOCATION"), "\n") {
			bad("summary or location has two lines")
		}
		d := e.text("DESCRIPTION")
		if utf8.RuneCountInString(d) > 4000 || strings.TrimSpace(d) != d || strings.Contains(d, "\n\n\n") || strings.Contains(d, " \n") {
			bad("description too long or ragged")
		}
		if link := e.text("URL"); link != "" && !strings.HasSuffix(d, "\n"+link) {
			bad("the link is not the last line")
		}
		if len(e.subs) > 2 {
			bad("%d alarms", len(e.subs))
		}
		for _, a := range e.subs {
			if a.name != "VALARM" || !inOrder(a.names(), alarmOrder) || a.text("ACTION") != "DISPLAY" || a.text("DESCRIPTION") != e.text("SUMMARY") ||
				!regexp.MustCompile(`^-?PT(\d+H)?(\d+M)?(\d+S)?$`).MatchString(a.text("TRIGGER")) {
				bad("alarm %v", a)
			}
		}
	}
	return out
}

// TestFaults proves that each rule of the checker can fail.
func TestFaults(t *testing.T) {
	good, err := Write(autumn(), Options{Address: "https://example.org/odderwyn.ics"}, autumn().Start.Time())
	if err != nil {
		t.Fatal(err)
	}
	if f := faults(good); len(f) > 0 {
		t.Fatal(f)
	}
	for _, m := range [][2]string{
		{"\r\n", "\n"}, {"TRANSP:TRANSPARENT\r\n", ""}, {"VALUE=DATE:20260920", "VALUE=DATE:20260919"},
		{"SEQUENCE:3522240", "SEQUENCE:-1"}, {"STATUS:CONFIRMED", "STATUS:CANCELLED"}, {"STATUS:CONFIRMED", "STATUS:OK"},
		{"LAST-MODIFIED:20260912", "LAST-MODIFIED:20260913"}, {"END:VEVENT\r\n", ""}, {"END:VCALENDAR\r\n", ""},
		{"COLOR:olivedrab", "COLOR:olivedrab "}, {"NAME:Odder", "NAME:Ogder"}, {"12 cores\\,", "12 cores,"},
		{"12 cores", "12 <b>cores"}, {"DESCRIPTION:Lime", "DESCRIPTION:Chalk"}, {"TRIGGER:-PT15H", "TRIGGER:-P15H"},
		{"SUMMARY:Lime east lawn", "SUMMARY:Lime\\neast lawn"}, {"VERSION:2.0\r\n", ""}, {"cores", "c\x01ores"}, {"cores", "c\uFFFDores"},
		{"UID:odderwyn-7q2m.west.nitrogen.1@", "UID:odderwyn-7q2m.east.lime.1@"}, {"DTSTART;VALUE=DATE", "DTSTART"},
		{"LOCATION:East lawn", "LOCATION:East lawn\r\n "}, {"LOCATION:East lawn", "LOCATION:" + strings.Repeat("East", 20)},
		{"SUMMARY:Lime", "SUMMARY:\\\r\n \\Lime"}, {"½", "\xc2\r\n \xbd"},
	} {
		broken := strings.Replace(string(good), m[0], m[1], 1)
		if broken == string(good) {
			t.Errorf("%q does not occur", m[0])
		} else if len(faults([]byte(broken))) == 0 {
			t.Errorf("%q for %q goes unseen", m[1], m[0])
		}
	}
}
