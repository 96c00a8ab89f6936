package plan

import (
	"strings"
	"testing"
)

// A sowing that is not on the day asked for, or is on it outside the usual time, is told
// where the program tells what it assumed, with the odds: the working of the job alone is
// not read by everybody. Cool-season seed goes down 6 to 8 weeks before the average first
// frost, by mid-September in the north (Purdue AY-3).
func TestSowingOnAnotherDayIsTold(t *testing.T) {
	for seeded, want := range map[string]string{
		"2026-11-10": "the sowing is not on 10 Nov 2026 as asked: sown then, grass comes up before winter in ",
		"2026-10-10": "the day of the sowing is the one asked for. Sown on 10 Oct 2026, grass comes up before winter in ",
		"2026-09-05": "",
	} {
		site := sown(t, "OH", "6a", "tall fescue", "2026-08-20", seeded)
		told := ""
		for _, a := range plan(t, site).Assumptions {
			if strings.Contains(a, "the sowing is") || strings.Contains(a, "day of the sowing") {
				told += a
			}
		}
		if want == "" && told != "" || !strings.Contains(told, want) {
			t.Errorf("%s: told %q, want %q", seeded, told, want)
		}
	}
}
