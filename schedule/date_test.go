package schedule

import (
	"testing"
	"time"
)

// The standard library's calendar is the reference.
func TestDateAgainstStandardCalendar(t *testing.T) {
	start := time.Date(1898, time.December, 25, 0, 0, 0, 0, time.UTC)
	for i := range 400 * 365 {
		want := start.AddDate(0, 0, i)
		d := dateOf(want)
		if d.Weekday() != want.Weekday() {
			t.Fatalf("%s: weekday %s, want %s", d, d.Weekday(), want.Weekday())
		}
		if got := dateOf(start).AddDays(i); got != d {
			t.Fatalf("%d days on: %s, want %s", i, got, d)
		}
		if got := d.DaysFrom(dateOf(start)); got != i {
			t.Fatalf("%s: %d days from the start, want %d", d, got, i)
		}
	}
}

func TestDayOfYear(t *testing.T) {
	for text, want := range map[string]int{
		"2026-01-01": 1, "2026-02-28": 59, "2028-02-29": 59, "2028-03-01": 60, "2026-12-31": 365,
	} {
		d, err := ParseDate(text)
		if err != nil || int(d.DayOfYear()) != want {
			t.Errorf("%s: day %d, want %d (%v)", text, d.DayOfYear(), want, err)
		}
	}
	leap := Date{2027, time.June, 1}.OnDay(60)
	if want := (Date{2028, time.March, 1}); leap != want {
		t.Errorf("day 60 after June 2027 is %s, want %s", leap, want)
	}
}

func TestAddMonthsKeepsToTheMonth(t *testing.T) {
	for _, row := range []struct {
		from string
		n    int
		want string
	}{
		{"2026-01-31", 1, "2026-02-28"}, {"2028-01-31", 1, "2028-02-29"},
		{"2026-12-15", 6, "2027-06-15"}, {"2026-03-31", -1, "2026-02-28"},
	} {
		d, err := ParseDate(row.from)
		if err != nil {
			t.Fatal(err)
		}
		if got := d.AddMonths(row.n).String(); got != row.want {
			t.Errorf("%s and %d months: %s, want %s", row.from, row.n, got, row.want)
		}
	}
}

func TestParseDateRefuses(t *testing.T) {
	for _, text := range []string{"", "2026-02-30", "2026-13-01", "9/19/2026", "2026-9-1"} {
		if d, err := ParseDate(text); err == nil {
			t.Errorf("%q gave %s", text, d)
		}
	}
}
