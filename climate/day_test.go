package climate

import (
	"testing"
	"time"
)

func TestDays(t *testing.T) {
	for _, c := range []struct {
		month time.Month
		date  int
		want  Day
		text  string
	}{
		{1, 1, 1, "1 Jan"}, {2, 28, 59, "28 Feb"}, {2, 29, 59, "28 Feb"}, {3, 1, 60, "1 Mar"}, {10, 14, 287, "14 Oct"},
		{12, 31, 365, "31 Dec"}, {2, 30, 0, "never"}, {13, 1, 0, "never"}, {0, 1, 0, "never"}, {4, 31, 0, "never"}, {6, 0, 0, "never"},
	} {
		d := DayOf(c.month, c.date)
		if d != c.want || d.String() != c.text {
			t.Errorf("%d/%d: %d %s, want %d %s", c.month, c.date, d, d, c.want, c.text)
		}
	}
	for d := Day(1); d <= 365; d++ {
		if DayOf(d.Month(), d.Date()) != d {
			t.Errorf("day %d comes back as %d", d, DayOf(d.Month(), d.Date()))
		}
	}
	for from, want := range map[float64]Day{0: 365, 0.49: 365, 0.5: 1, -112: 253, 365.4: 365, 365.6: 1, 376: 11, -400: 330, 1000: 270} {
		if got := wrap(from); got != want {
			t.Errorf("day number %g is day %d, want %d", from, got, want)
		}
	}
	if Day(360).Add(10) != 5 || Day(5).Add(-10) != 360 {
		t.Error("adding days past the year's end")
	}
}

func TestTexts(t *testing.T) {
	for got, want := range map[string]string{
		Fahrenheit(50).String():   "50 °F (10 °C)",
		Fahrenheit(45.5).String(): "45.5 °F (7.5 °C)",
		Fahrenheit(32).String():   "32 °F (0 °C)",
		Inches(2).String():        "2 in (5 cm)",
		Cool.String():             "cool-season",
		Warm.String():             "warm-season",
	} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	near(t, "900 ft", float64(Feet(900).Meters()), 274.32, 1e-9)
	near(t, "back", float64(Meters(274.32).Feet()), 900, 1e-9)
}
