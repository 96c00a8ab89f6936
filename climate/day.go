package climate

import (
	"strconv"
	"time"
)

// Year length of the climate's calendar: no leap days.
const daysPerYear = 365

// monthStart holds the days before each month, and 365 at the end.
var monthStart = [13]int{0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365}

// Day is a calendar day of a 365-day year: 1 is 1 January, 59 is 28 February,
// 60 is 1 March, 365 is 31 December. 0 stands for "unknown" or "never".
type Day int

// DayOf returns the day of a month's date. 29 February counts as the 28th.
// A date that does not exist gives 0.
func DayOf(m time.Month, date int) Day {
	if m < time.January || m > time.December || date < 1 {
		return 0
	}
	if m == time.February && date == 29 {
		date = 28
	}
	if date > monthStart[m]-monthStart[m-1] {
		return 0
	}
	return Day(monthStart[m-1] + date)
}

// Add moves the day by n days, around the year's end if need be.
func (d Day) Add(n int) Day { return wrap(float64(int(d) + n)) }

// Month is the month the day lies in; 0 for the unknown day.
func (d Day) Month() time.Month {
	if d < 1 || d > daysPerYear {
		return 0
	}
	m := 1
	for int(d) > monthStart[m] {
		m++
	}
	return time.Month(m)
}

// Date is the day of the month, 1 to 31; 0 for the unknown day.
func (d Day) Date() int {
	m := d.Month()
	if m == 0 {
		return 0
	}
	return int(d) - monthStart[m-1]
}

// String writes the day as "14 Oct"; the unknown day as "never".
func (d Day) String() string {
	m := d.Month()
	if m == 0 {
		return "never"
	}
	return strconv.Itoa(d.Date()) + " " + m.String()[:3]
}

// wrap rounds a day number to a calendar day 1 to 365.
func wrap(day float64) Day {
	d := whole(day) % daysPerYear
	if d <= 0 {
		d += daysPerYear
	}
	return Day(d)
}
