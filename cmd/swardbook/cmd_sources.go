package main

import (
	"cmp"
	_ "embed"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"swardbook/agronomy"
	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule/law"
	"swardbook/schedule/text"
	"swardbook/schedule/word"
)

var sourcesCommand = command{
	name: "sources", args: "[KEY]",
	what: "the references behind the figures",
	help: `    swardbook sources
    swardbook sources "Penn State AASL"
    swardbook sources psu-turf-lime
    swardbook sources "Penn State AASL"

Lists every reference by author or institution, year, title and number, how far
it was checked (against the text itself, in part, or from memory), where the
code names it, and last the address where it was read. The forty on which most
figures and rules rest come first, then the others, then the laws with the date
of the text that was read. Common practice has no published source.

KEY is the short name in brackets behind a figure, words of the reference, or
the key that the code and JSON name it by.

        --state CODE    the laws of one state only
        --format FORM   text, json, csv or markdown
    -o, --output FILE   write to FILE
        --no-color      no colour
`,
	setup: func(fs *flag.Set) func(*session, []string) error {
		out := flag.NewOutput(fs, "text", "json", "csv", "markdown")
		state := fs.String("state", "", "")
		return func(s *session, args []string) error {
			if err := out.Check(); err != nil {
				return err
			}
			if len(args) > 1 {
				return misuse("%q is one argument too many: give [KEY], several words in quotation marks", args[1])
			}
			groups := sources()
			if *state != "" {
				for i := range groups {
					groups[i].Sources = slices.DeleteFunc(groups[i].Sources, func(r text.Source) bool { return r.State != strings.ToUpper(*state) })
				}
			}
			all := inGroups(groups)
			if len(all) == 0 {
				return misuse("--state: no law of %q is held here; give a two-letter code, and ask where none is found", *state)
			}
			if len(args) == 1 {
				found, err := findSources(all, args[0])
				if err != nil {
					return err
				}
				all = found
			}
			if len(args) == 1 || *state != "" {
				groups = []text.SourceGroup{{Sources: all}}
			}
			return s.tabled(out, sourcesShown{1, all},
				func() text.Table { return text.SourceTable(all) },
				func(st text.Style) string { return text.Sources(groups, st) })
		}
	},
}

type sourcesShown struct {
	Format  int           `json:"format"`
	Sources []text.Source `json:"sources"`
}

// deciding is how many sources, those on which most rests, stand first in the list.
const deciding = 40

// sources lists the references of the figures, those first on which most rest,
// then the laws.
func sources() []text.SourceGroup {
	var published, own, laws []text.Source
	figures, common := 0, 0
	for _, r := range word.References() {
		n, parts := usedFor(r.Key)
		shown := text.Source{Key: r.Key, Tag: r.Short(), Cite: r.Cite(), Where: r.Where, Checked: r.Checked(), Used: parts, Figures: n,
			By: r.By, Title: r.Title, Year: r.Year, In: r.In, Note: r.Note}
		if r.By == "" || r.Key == "atomic-weights" { // without an author, or a table of constants
			own = append(own, shown)
			if r.Key == "common" {
				common = n
			}
			continue
		}
		published = append(published, shown)
		figures += n
	}
	slices.SortStableFunc(published, func(a, b text.Source) int { return cmp.Compare(b.Figures, a.Figures) })
	first, others := published[:min(deciding, len(published))], published[min(deciding, len(published)):]
	byKey := func(a, b text.Source) int { return cmp.Compare(a.Key, b.Key) }
	slices.SortFunc(others, byKey)
	for _, r := range law.All() {
		checked := "the provision was read"
		switch r.How {
		case law.InPart:
			checked = "read in part"
		case law.FromMemory:
			checked = "from memory, not checked"
		}
		laws = append(laws, text.Source{Key: r.ID, Tag: r.Citation, State: r.State, Cite: r.Citation + ", " + r.Agency,
			Used:    []string{"schedule/law, " + r.Kind.String()},
			Checked: fmt.Sprintf("%s, as of %s; %s confidence", checked, r.Dated(), r.Confidence),
			By:      r.Agency, Title: r.Citation, Figures: 1})
	}
	return []text.SourceGroup{
		{Head: fmt.Sprintf("The %d that decide most", deciding), Sources: first,
			Words: fmt.Sprintf("%d published sources are named at %d places in the code, each beside a figure or a rule; at %d it says common practice, which has no published source. The %d named most often come first; then the others, and the law.", len(published), figures, common, deciding)},
		{Head: "The others", Sources: others},
		{Head: "Units, custom and our own", Sources: own},
		{Head: "Laws", Sources: laws},
	}
}

func inGroups(groups []text.SourceGroup) []text.Source {
	var out []text.Source
	for _, g := range groups {
		out = append(out, g.Sources...)
	}
	return out
}

// findSources finds the source of a key; else those of a short name, with the
// year or without; else those whose reference holds all the words.
func findSources(all []text.Source, asked string) ([]text.Source, error) {
	words := strings.Fields(strings.ToLower(asked))
	name := strings.Join(words, " ")
	var names []string
	for _, is := range []func(text.Source) bool{
		func(r text.Source) bool { return strings.ToLower(r.Key) == name },
		func(r text.Source) bool {
			tag := strings.ToLower(r.Tag)
			return tag == name || r.Year != "" && tag == name+" "+r.Year
		},
		func(r text.Source) bool {
			cite := strings.ToLower(r.Tag + " " + r.Cite)
			return len(words) > 0 && !slices.ContainsFunc(words, func(w string) bool { return !strings.Contains(cite, w) })
		},
	} {
		var found []text.Source
		for _, r := range all {
			if is(r) {
				found = append(found, r)
			}
		}
		if len(found) > 0 {
			return found, nil
		}
	}
	for _, r := range all {
		names = append(names, r.Key, r.Tag)
	}
	if near := agronomy.NearestName(asked, names); near != "" {
		return nil, misuse("no source %q; near it: %s", asked, near)
	}
	return nil, misuse("no source %q; see swardbook sources", asked)
}

// used.txt says for each source how many lines of the code name it beside a
// figure or a rule, and in which parts: a line a key. A test writes it from the
// code, and fails when it is no longer true.
//
//go:embed used.txt
var used string

// usedFor tells how often a source is named, and where.
func usedFor(key string) (int, []string) {
	for line := range strings.Lines(used) {
		rest, ok := strings.CutPrefix(strings.TrimSpace(line), key+" ")
		if !ok {
			continue
		}
		count, parts, _ := strings.Cut(rest, ": ")
		n, _ := strconv.Atoi(count)
		return n, strings.Split(parts, ", ")
	}
	return 0, []string{}
}
