package page

import (
	"strings"
	"testing"

	"swardbook/schedule"
	"swardbook/schedule/plan"
	"swardbook/schedule/sitefile"
)

const twoFeedings = `id = "odder-2x7k"
title = "Odder green"
start = 2026-08-25
[place]
state = "IN"
hardiness = "6a"
[area.green]
size = "4000 sq ft"
grass = "Kentucky bluegrass"
care = "high"
`

// Two feedings that nobody wrote down are not both to be spread in the days that are
// left: thirty days lie between them. The sheet says which is left out.
func TestSheetLeavesOutWhatHasNoGoodDay(t *testing.T) {
	site, problems := sitefile.Load("site.toml", []byte(twoFeedings), nil)
	if schedule.Fatal(problems) {
		t.Fatal(problems)
	}
	p, err := plan.Program(site, nil, schedule.Date{})
	if err != nil {
		t.Fatal(err)
	}
	today := schedule.Date{Year: 2026, Month: 10, Day: 1}
	due, lost := 0, ""
	for _, e := range p.AsOf(today).Entries {
		switch {
		case e.State != schedule.Due:
		case e.GoodDay.IsZero():
			lost = e.Date.DayMonth()
		default:
			due++
		}
	}
	if due == 0 || lost == "" {
		t.Fatalf("%d due, %q lost: the case shows nothing", due, lost)
	}
	out, err := Sheet(p, Options{Today: today})
	if err != nil {
		t.Fatal(err)
	}
	text := strings.ReplaceAll(string(out), "\u00a0", " ")
	_, text, _ = strings.Cut(text, `id="next"`)
	table, rest, _ := strings.Cut(text, "</table>")
	if n := strings.Count(table, "</tr>") - 1; n != due {
		t.Errorf("%d jobs to do now, want %d:\n%s", n, due, table)
	}
	if want := "no good day is left for"; !strings.Contains(rest[:min(600, len(rest))], want) || !strings.Contains(rest[:min(600, len(rest))], "of "+lost) {
		t.Errorf("not said what is left out:\n%s", rest[:min(600, len(rest))])
	}
}
