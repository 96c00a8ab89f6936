package main

import (
	"fmt"
	"strings"
)

const shortHelp = `swardbook makes a dated lawn program from one site file.

    swardbook new -o lawn.toml      write a site file to fill in
    swardbook program lawn.toml     the program

All commands: swardbook --help
`

// fullHelp lists the commands, an example first.
func fullHelp() string {
	var b strings.Builder
	b.WriteString(`swardbook makes a dated lawn program from one site file: what to put down,
where, how much, when, why, and until which day.

    swardbook new -o lawn.toml
    swardbook check lawn.toml
    swardbook program lawn.toml
    swardbook why lawn.toml front/lime/1
    swardbook calendar lawn.toml -o lawn.ics

Commands:
`)
	for _, c := range commands() {
		fmt.Fprintf(&b, "    %-10s %s\n", c.name, c.what)
	}
	b.WriteString(`
swardbook COMMAND --help tells more. Every command takes --no-color; those with
a result take -o FILE to write it to a file (- is standard output).

The record book, NAME.record.csv beside NAME.toml, is read if it is there.

Exit status: 0 done; 1 could not read or write; 2 wrong use; 3 the site file or
the record book has errors; 4 with --strict: something was left out, or with
compare --exit-code: the programs differ.
`)
	return b.String()
}

// usage is the help of one command.
func (c command) usage() string {
	return "usage: swardbook " + strings.TrimRight(c.name+" "+c.args, " ") + "\n\n" + c.help
}
