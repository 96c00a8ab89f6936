package schedule

import "testing"

// The most exact name wins, whatever its place in the file.
func TestWho(t *testing.T) {
	s := &Site{Crew: Crew{Who: []Assignment{
		{"west/lime/2026-1", "d"}, {"lime", "a"}, {"west/lime", "c"}, {"west", "b"}, {"east", "e"},
	}}}
	for id, want := range map[string]string{
		"west/lime/2026-1": "d", "west/lime/2026-2": "c", "west/nitrogen/2026-1": "b", "north/lime/2026-1": "a", "east/lime/2026-1": "e",
		"north/nitrogen/2026-1": "", "site/last-safe/1": "", "west/late-nitrogen/1": "b",
	} {
		if got := s.Who(id); got != want {
			t.Errorf("%s is %q's, want %q", id, got, want)
		}
	}
}
