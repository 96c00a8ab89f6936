package main

import (
	_ "embed"
	"fmt"
	"slices"
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
    swardbook sources psu-turf-lime
    swardbook sources "Penn State AASL"

Lists every reference, where it is used, and how far it was checked: against
the text itself, in part, or not at all (from memory). Common practice has no
published source. Laws are listed with the date of the text that was read.

KEY is the key that the code and JSON name a source by, or the words beside a
figure, such as "Penn State AASL", which may mean several.

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
				return misuse("%q is one argument too many: give [KEY]", args[1])
			}
			all := sources()
			if *state != "" {
				all = slices.DeleteFunc(all, func(r text.Source) bool { return r.State != strings.ToUpper(*state) })
				if len(all) == 0 {
					return misuse("--state: no law of %q is held here; give a two-letter code, and ask where none is found", *state)
				}
			}
			if len(args) == 1 {
				var keys []string
				for _, r := range all {
					keys = append(keys, r.Key)
				}
				all = sourcesNamed(all, args[0])
				if len(all) == 0 {
					if near := agronomy.NearestName(args[0], keys); near != "" {
						return misuse("no source %q; near it: %s", args[0], near)
					}
					return misuse("no source %q; see swardbook sources", args[0])
				}
			}
			return s.tabled(out, sourcesShown{1, all},
				func() text.Table { return text.SourceTable(all) },
				func(st text.Style) string { return text.Sources(all, st) })
		}
	},
}

// sourcesNamed finds sources by key, else by the words that a working names them by,
// else by words of their citation.
func sourcesNamed(all []text.Source, name string) []text.Source {
	for _, is := range []func(text.Source) bool{
		func(r text.Source) bool { return r.Key == name },
		func(r text.Source) bool { return strings.EqualFold(word.ShortSources(r.Key), name) },
		func(r text.Source) bool {
			return len(name) > 3 && strings.Contains(strings.ToLower(r.Cite), strings.ToLower(name))
		},
	} {
		var found []text.Source
		for _, r := range all {
			if is(r) {
				found = append(found, r)
			}
		}
		if len(found) > 0 {
			return found
		}
	}
	return nil
}

type sourcesShown struct {
	Format  int           `json:"format"`
	Sources []text.Source `json:"sources"`
}

// sources lists the references of the figures, then the laws.
func sources() []text.Source {
	var out []text.Source
	for _, r := range word.References() {
		out = append(out, text.Source{Key: r.Key, Cite: r.Cite, Where: r.Where, Checked: r.Checked(), Used: usedFor(r.Key)})
	}
	for _, r := range law.All() {
		checked := "the provision was read"
		switch r.How {
		case law.InPart:
			checked = "read in part"
		case law.FromMemory:
			checked = "from memory, not checked"
		}
		out = append(out, text.Source{Key: r.ID, State: r.State, Cite: r.Citation + ", " + r.Agency, Used: []string{"schedule/law, " + r.Kind.String()},
			Checked: fmt.Sprintf("%s, as of %s; %s confidence", checked, r.AsOf, r.Confidence)})
	}
	return out
}

// used.txt says for each source which parts of the code name it beside a
// figure: a line a key. A test writes it from the code, and fails when it is
// no longer true.
//
//go:embed used.txt
var used string

// usedFor lists what a source is used for.
func usedFor(key string) []string {
	for line := range strings.Lines(used) {
		if k, parts, ok := strings.Cut(strings.TrimSpace(line), ": "); ok && k == key {
			return strings.Split(parts, ", ")
		}
	}
	return []string{}
}
