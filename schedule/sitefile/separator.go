package sitefile

import (
	"encoding/csv"
	"strings"
)

// commas puts commas between the columns of a record book that a spreadsheet saved with
// semicolons or tabs. Lines keep their numbers, a first line "sep=;" becomes a
// comment, and lines with commas, which `swardbook record` adds to any book, stay as
// they are.
func commas(text []byte) []byte {
	lines := strings.SplitAfter(string(text), "\n")
	first := 0
	for first < len(lines) && (strings.TrimSpace(lines[first]) == "" || strings.HasPrefix(lines[first], "#")) {
		first++
	}
	if first == len(lines) {
		return text
	}
	sep := ','
	if named, ok := strings.CutPrefix(strings.ToLower(strings.TrimRight(lines[first], "\r\n")), "sep="); ok && len(named) == 1 {
		sep = rune(named[0])
		lines[first] = "#" + lines[first]
		first++
	}
	if first < len(lines) && sep == ',' {
		for _, s := range ";\t" {
			if strings.Count(lines[first], string(s)) > strings.Count(lines[first], ",") {
				sep = s
			}
		}
	}
	if first == len(lines) || sep != ';' && sep != '\t' {
		return []byte(strings.Join(lines, ""))
	}
	width := len(cells(lines[first], sep))
	for i := first; i < len(lines); i++ {
		parts := cells(lines[i], sep)
		if strings.HasPrefix(lines[i], "#") || len(parts) < 2 || len(parts) != width && len(cells(lines[i], ',')) == width {
			continue
		}
		var b strings.Builder
		w := csv.NewWriter(&b)
		w.Write(parts) // writing to a strings.Builder cannot fail
		w.Flush()
		lines[i] = b.String()
	}
	return []byte(strings.Join(lines, ""))
}

// cells splits one line. It gives nil where the quotes do not match: that is for the
// reader of the book to report.
func cells(line string, sep rune) []string {
	r := csv.NewReader(strings.NewReader(line))
	r.Comma, r.FieldsPerRecord, r.TrimLeadingSpace = sep, -1, sep != '\t'
	parts, err := r.Read()
	if err != nil {
		return nil
	}
	return parts
}
