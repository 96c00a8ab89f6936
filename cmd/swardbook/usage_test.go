package main

import (
	"strings"
	"testing"
	"unicode/utf8"

	"swardbook/cmd/swardbook/figure"
	"swardbook/cmd/swardbook/flag"
)

// Every flag that a command defines stands in its help, and the help fits a
// screen.
func TestHelpNamesEveryFlag(t *testing.T) {
	check := func(name, help string, fs *flag.Set, lines int) {
		fs.VisitAll(func(f *flag.Flag) {
			if !strings.Contains(help, "--"+f.Name+" ") && !strings.Contains(help, "--"+f.Name+"\n") {
				t.Errorf("%s: the help does not name --%s", name, f.Name)
			}
			if f.Shorthand != "" && !strings.Contains(help, "-"+f.Shorthand+", ") {
				t.Errorf("%s: the help does not name -%s", name, f.Shorthand)
			}
		})
		if n := strings.Count(help, "\n"); n > lines {
			t.Errorf("%s: the help has %d lines, more than %d", name, n, lines)
		}
		for line := range strings.Lines(help) {
			// an example may be longer: it is one line for the shell
			if utf8.RuneCountInString(line) > 81 && !strings.HasPrefix(line, "    swardbook ") {
				t.Errorf("%s: too long: %s", name, line)
			}
			if strings.ContainsAny(line, "<>\t") {
				t.Errorf("%s: a sign that is not for people: %s", name, line)
			}
		}
	}
	for _, c := range commands() {
		fs := flag.New(c.name)
		fs.Bool("no-color", false, "")
		c.setup(fs)
		check(c.name, c.usage(), fs, 40)
	}
	for _, f := range figure.All() {
		fs := flag.New(f.Name)
		fs.Bool("no-color", false, "")
		flag.NewOutput(fs, "text", "json")
		f.Define(fs)
		check("figure "+f.Name, figureUsage(f), fs, 40)
	}
	check("help", fullHelp(), flag.New(""), 45)
}

// The full help names every command; a misspelt one gets the nearest.
func TestCommandNames(t *testing.T) {
	for _, c := range commands() {
		if !strings.Contains(fullHelp(), "\n    "+c.name+" ") {
			t.Errorf("the help does not list %s", c.name)
		}
		if out, talk, code := sward(c.name, "--help"); code != 0 || talk != "" || !strings.HasPrefix(out, "usage: swardbook "+c.name) {
			t.Errorf("%s --help: code %d, stderr %q, stdout %q", c.name, code, talk, out)
		}
		if out, _, code := sward(c.name, "--no-such-flag"); code != exitUse || out != "" {
			t.Errorf("%s --no-such-flag: code %d, stdout %q", c.name, code, out)
		}
	}
	if _, talk, code := sward("progam", "x.toml"); code != exitUse || talk != "swardbook: no command \"progam\"; did you mean program?\n" {
		t.Errorf("code %d, %q", code, talk)
	}
}
