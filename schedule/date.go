package schedule

import (
	"fmt"
	"strconv"
	"time"

	"swardbook/climate"
)

// Date is a civil day, without a clock or a zone.
type Date struct {
	Year  int
	Month time.Month
	Day   int
}

// ParseDate reads "2026-09-12". It refuses days that no calendar has.
func ParseDate(s string) (Date, error) {
	t, err := time.Parse("2006-01-02", s)
	if err != nil {
		return Date{}, fmt.Errorf("%q is not a date; write it as 2026-09-12", s)
	}
	return dateOf(t), nil
}

func dateOf(t time.Time) Date { return Date{t.Year(), t.Month(), t.Day()} }

// Time gives midnight of the day in UTC, for writers that need one.
func (d Date) Time() time.Time { return time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, time.UTC) }

// IsZero tells the unset date.
func (d Date) IsZero() bool { return d == Date{} }

// String gives the ISO form, or "" for the unset date.
func (d Date) String() string {
	if d.IsZero() {
		return ""
	}
	if d.Year < 1000 || d.Year > 9999 || d.Month < 1 || d.Month > 12 || d.Day < 1 || d.Day > 31 {
		return fmt.Sprintf("%04d-%02d-%02d", d.Year, int(d.Month), d.Day)
	}
	figure := func(n int) byte { return byte('0' + n%10) }
	y, m := d.Year, int(d.Month)
	return string([]byte{figure(y / 1000), figure(y / 100), figure(y / 10), figure(y), '-', figure(m / 10), figure(m), '-', figure(d.Day / 10), figure(d.Day)})
}

// Words gives the form for people: "Sat 19 Sep 2026".
func (d Date) Words() string {
	if d.Month < 1 || d.Year < 1000 {
		return d.Time().Format("Mon 2 Jan 2006")
	}
	return d.Weekday().String()[:3] + " " + d.Short()
}

// Short gives the form inside a sentence: "19 Sep 2026".
func (d Date) Short() string {
	if d.Month < 1 || d.Year < 1000 {
		return d.Time().Format("2 Jan 2006")
	}
	return d.DayMonth() + " " + strconv.Itoa(d.Year)
}

// DayMonth gives the form where the year is plain: "19 Sep".
func (d Date) DayMonth() string { return strconv.Itoa(d.Day) + " " + d.Month.String()[:3] }

// MarshalText writes the ISO form.
func (d Date) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads the ISO form; empty text is the unset date.
func (d *Date) UnmarshalText(b []byte) error {
	if len(b) == 0 {
		*d = Date{}
		return nil
	}
	p, err := ParseDate(string(b))
	if err == nil {
		*d = p
	}
	return err
}

// Number counts days from a fixed day in the year 0, so that dates can be subtracted.
func (d Date) Number() int {
	y, m := d.Year, int(d.Month)
	if m <= 2 { // a year that starts in March has its leap day last
		y, m = y-1, m+12
	}
	return 365*y + floorDiv(y, 4) - floorDiv(y, 100) + floorDiv(y, 400) + (153*(m-3)+2)/5 + d.Day + 60
}

func floorDiv(a, b int) int {
	q := a / b
	if a%b != 0 && (a < 0) != (b < 0) {
		q--
	}
	return q
}

// FromNumber gives the date of a [Date.Number].
func FromNumber(n int) Date {
	n -= 61 // days before 1 March of year 0 in this count
	era := floorDiv(n, 146097)
	of := n - era*146097 // day of the 400-year era, 0 to 146096
	y := (of - of/1460 + of/36524 - of/146096) / 365
	yday := of - (365*y + y/4 - y/100)
	m := (5*yday + 2) / 153
	day := yday - (153*m+2)/5 + 1
	y += era * 400
	if m += 3; m > 12 {
		m, y = m-12, y+1
	}
	return Date{y, time.Month(m), day}
}

// AddDays gives the day n days later, or earlier for a negative n.
func (d Date) AddDays(n int) Date { return FromNumber(d.Number() + n) }

// Next gives the day after.
func (d Date) Next() Date {
	if d.Day < 28 {
		d.Day++
		return d
	}
	return d.AddDays(1)
}

// AddMonths gives the same day n months later; a day that the month lacks
// becomes its last.
func (d Date) AddMonths(n int) Date {
	months := int(d.Month) - 1 + n
	years := floorDiv(months, 12)
	y, m := d.Year+years, time.Month(months-12*years+1)
	return Date{y, m, min(d.Day, daysIn(y, m))}
}

// daysIn counts the days of a month.
func daysIn(y int, m time.Month) int {
	switch m {
	case time.April, time.June, time.September, time.November:
		return 30
	case time.February:
		if y%4 == 0 && (y%100 != 0 || y%400 == 0) {
			return 29
		}
		return 28
	}
	return 31
}

// DaysFrom counts the days from e to d; negative when d is earlier.
func (d Date) DaysFrom(e Date) int { return d.Number() - e.Number() }

// Compare orders two dates.
func (d Date) Compare(e Date) int { return d.order() - e.order() }

// Before tells whether d comes before e.
func (d Date) Before(e Date) bool { return d.order() < e.order() }

// After tells whether d comes after e.
func (d Date) After(e Date) bool { return d.order() > e.order() }

// order is greater for the later of two days. It is quicker than [Date.Number], but its
// differences mean nothing.
func (d Date) order() int { return d.Year<<9 | int(d.Month)<<5 | d.Day }

// Weekday gives the day of the week.
func (d Date) Weekday() time.Weekday { return time.Weekday(((d.Number()+5)%7 + 7) % 7) }

// DayOfYear gives the climate's day; 29 February counts as 28 February.
func (d Date) DayOfYear() climate.Day {
	return climate.DayOf(d.Month, d.Day)
}

// OnDay gives the first date on or after d that falls on the climate's day.
func (d Date) OnDay(c climate.Day) Date {
	r := Date{d.Year, c.Month(), c.Date()}
	if r.Before(d) {
		r.Year++
	}
	return r
}

// Later and Earlier give the one of two dates that comes last or first.
func Later(a, b Date) Date {
	if a.Before(b) {
		return b
	}
	return a
}

// Earlier gives the one of two dates that comes first.
func Earlier(a, b Date) Date {
	if b.Before(a) {
		return b
	}
	return a
}

// Span is a run of days, both ends included.
type Span struct {
	From Date `json:"from"`
	To   Date `json:"to"`
}

// Has tells whether d lies in the span.
func (s Span) Has(d Date) bool { return !d.Before(s.From) && !d.After(s.To) }

// Days counts the days of the span; 0 or less means it is empty.
func (s Span) Days() int { return s.To.DaysFrom(s.From) + 1 }
