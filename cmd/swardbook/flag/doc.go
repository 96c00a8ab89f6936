// Package flag reads the command line of one command: what every flag that
// several commands share means, and what is wrong with it.
//
// It takes a [Set], the flags that a command defines, and the words that follow
// the command's name. It gives values that are checked: where a result goes and
// in what form ([Output]), which part of a program is asked for ([Choice]), a
// day ([Day], [Today]), a key of the site file and the values to try for it
// ([ParseVary]). What is wrong is a [Misuse], in words for the person at the
// keyboard, with the nearest name that is known.
//
// It leaves out the commands and their help, the figures of package
// swardbook/cmd/swardbook/figure, exit codes, files and the clock: a day that
// was not given is asked from a clock that the caller hands over.
//
// A command defines its flags first, then parses, then uses what it was given:
//
//	fs := flag.New("program")
//	out := flag.NewOutput(fs, "text", "json")
//	today := flag.Today(fs)
//	if err := flag.Parse(fs, words); err != nil {
//		return err // flag.ErrHelp, or a flag.Misuse
//	}
//	if err := out.Check(); err != nil {
//		return err
//	}
//	day, err := today(time.Now)
package flag
