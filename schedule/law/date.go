package law

import (
	"fmt"
	"time"
)

// MonthDay is a day of any year. The zero value stands for "no day given".
type MonthDay struct {
	Month time.Month
	Day   int // 1 to the month's longest, February 29 included
}

// IsZero reports whether no day is given.
func (m MonthDay) IsZero() bool { return m == MonthDay{} }

// Valid reports whether the day exists in some year.
func (m MonthDay) Valid() bool {
	if m.Month < time.January || m.Month > time.December || m.Day < 1 {
		return false
	}
	leap := time.Date(2024, m.Month, m.Day, 0, 0, 0, 0, time.UTC)
	return leap.Month() == m.Month
}

// String is "16 Nov".
func (m MonthDay) String() string { return fmt.Sprintf("%d %.3s", m.Day, m.Month) }

func (m MonthDay) order() int { return int(m.Month)*100 + m.Day }

// Span is a stretch of days that comes every year, first and last day included.
// It crosses the new year when To is earlier than From. The zero value holds no
// day. February 29 as To means the end of February in every year.
type Span struct{ From, To MonthDay }

// IsZero reports whether the span is unset.
func (s Span) IsZero() bool { return s == Span{} }

// Has reports whether m lies in the span, its first and last day included.
func (s Span) Has(m MonthDay) bool {
	if s.IsZero() || m.IsZero() {
		return false
	}
	from, to, at := s.From.order(), s.To.order(), m.order()
	if from <= to {
		return from <= at && at <= to
	}
	return at >= from || at <= to
}

// String is "16 Nov to the end of February".
func (s Span) String() string {
	to := s.To.String()
	if s.To == (MonthDay{time.February, 29}) {
		to = "the end of February"
	}
	return s.From.String() + " to " + to
}

// printed spells a date of the table as every other date is spelled: "1 Oct 2013"
// for 2013-10-01, "Nov 2021" for 2021-11. A year or a word stays as it is.
func printed(date string) string {
	for layout, spelled := range map[string]string{"2006-01-02": "2 Jan 2006", "2006-01": "Jan 2006"} {
		if t, err := time.Parse(layout, date); err == nil {
			return t.Format(spelled)
		}
	}
	return date
}

// Check returns an error if an end of the span is not a day of the year.
func (s Span) Check() error {
	for _, m := range [2]MonthDay{s.From, s.To} {
		if !m.Valid() {
			return fmt.Errorf("no such day of the year: month %d, day %d; give month and day, such as 11-15", int(m.Month), m.Day)
		}
	}
	return nil
}
