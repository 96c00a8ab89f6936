package book

import (
	"strings"

	"swardbook/schedule"
	"swardbook/schedule/sitefile"
)

// Fill writes a whole record book anew so that every line stands by itself: what a short
// line leaves open is filled in as the program now understands it. With taken, the book
// also gets a line, marked as taken, for every job that the program as of today takes as
// done although nobody recorded it. Lines that count for nothing become remarks. Fill gives
// the text, and how many lines were filled and added.
func Fill(text []byte, p *schedule.Program, done []schedule.Done, taken bool) (out []byte, filled, added int) {
	whole, onRecord := map[int]string{}, map[string]bool{}
	for _, c := range p.Cases {
		for _, d := range c.Down {
			if d.Presumed == nil {
				onRecord[schedule.JobID(d.AreaID, d.Kind, d.Season, d.N)] = true
			}
			if d.Presumed == nil && (d.NotDone || !d.Kind.Spreads() || d.Dose.Rate > 0) {
				whole[d.Line] = sitefile.WholeLine(d, p.Site, c.Area)
			}
		}
	}
	short := map[int]bool{}
	for _, w := range sitefile.Short("", done) {
		short[w.Line] = true
	}
	var b strings.Builder
	b.WriteString(sitefile.Header)
	n := 0
	for line := range strings.Lines(strings.TrimPrefix(string(text), "\xef\xbb\xbf")) {
		n++
		switch w, known := whole[n]; {
		case known:
			b.WriteString(w)
			if short[n] {
				filled++
			}
		case strings.HasPrefix(strings.TrimSpace(line), "#") || strings.TrimSpace(line) == "":
			b.WriteString(line)
		case isHeader(line):
		default:
			b.WriteString("# counts for nothing: " + strings.TrimRight(line, "\r\n") + "\n")
		}
	}
	if taken {
		for i := range p.Entries {
			e := &p.Entries[i]
			c := p.CaseOf(e.Area)
			if e.State != schedule.Taken || c == nil || onRecord[e.ID] {
				continue
			}
			_, k, season, number, _ := p.Kinds().JobName(e.ID) // an id from a program is always well formed
			d := schedule.Down{Done: schedule.Done{Date: e.Date}, AreaID: e.Area, Kind: k, Season: season, N: number, Dose: e.Dose, Taken: true}
			if e.Rate > 0 {
				d.Of = e.Rate.Over(c.Area.Size)
			}
			b.WriteString(sitefile.WholeLine(d, p.Site, c.Area))
			added++
		}
	}
	return []byte(b.String()), filled, added
}

func isHeader(line string) bool {
	line = strings.ToLower(line)
	return strings.Contains(line, "date") && (strings.Contains(line, "kind") || strings.Contains(line, "job"))
}
