package sitefile

import (
	"strings"
	"testing"
)

// A day of overseeding that can hardly be meant is reported, with what to do about it.
func TestOverseedDays(t *testing.T) {
	for _, c := range []struct {
		name, grass, more, day string
		says                   string // "": nothing
		fatal                  bool
	}{
		{"fits", "tall fescue", "", "2026-09-05", "", false},
		{"years after the sowing", "tall fescue", "seeded = 2020-09-01", "2026-09-05", "", false},
		{"before the sowing", "tall fescue", "seeded = 2026-09-20", "2026-09-05", "is not after the stand was sown", true},
		{"on the sowing", "tall fescue", "seeded = 2026-09-05", "2026-09-05", "is it the seeding day, seeded, that is meant?", true},
		{"a young stand", "tall fescue", "seeded = 2026-04-05", "2026-09-05", "within a year of the sowing", false},
		{"sod", "St. Augustinegrass", "", "2026-06-05", "no seed to sow over", true},
		{"winter", "tall fescue", "", "2027-01-05", "overseeding in January", false},
		{"long ago", "tall fescue", "", "2024-09-05", "changes nothing", false},
		{"far ahead", "tall fescue", "", "2036-09-05", "more than five years after the start", false},
		{"after the end", "tall fescue", "", "2027-09-05", "after the program ends", true},
	} {
		through := ""
		if c.name == "after the end" {
			through = "through = 2027-07-31\n"
		}
		s, ps := load(t, "title = \"Plot\"\nstart = 2026-08-10\n"+through+"[place]\nstate = \"OH\"\nhardiness = \"6a\"\n[area.a]\nsize = \"2000 sq ft\"\ngrass = \""+c.grass+"\"\noverseed = "+c.day+"\n"+c.more+"\n")
		var said []string
		fatal := false
		for _, p := range ps {
			if strings.HasSuffix(p.Key, "overseed") {
				said, fatal = append(said, p.Error()+" ("+p.Hint+")"), fatal || !p.Warning
			}
		}
		text := strings.Join(said, "; ")
		if c.says == "" && text != "" || !strings.Contains(text, c.says) || fatal != c.fatal {
			t.Errorf("%s: %q, fatal %t", c.name, text, fatal)
		}
		if c.says == "" && (s == nil || s.Areas[0].Overseed.String() != c.day) {
			t.Errorf("%s: the day is not read", c.name)
		}
	}
}
