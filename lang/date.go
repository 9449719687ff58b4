package lang

import "strconv"

// Date is a calendar day, or a month when Day is 0. The zero Date is no date.
// The engine never reads a clock: dates come from the text or from the caller.
type Date struct{ Year, Month, Day int }

// ParseDate reads 2025-10-03, or 1974-01 where the day is not known.
func ParseDate(s string) (Date, bool) {
	if len(s) != 7 && len(s) != 10 || s[4] != '-' || len(s) == 10 && s[7] != '-' {
		return Date{}, false
	}
	y, e1 := strconv.Atoi(s[:4])
	m, e2 := strconv.Atoi(s[5:7])
	d, e3 := 0, error(nil)
	if len(s) == 10 {
		if d, e3 = strconv.Atoi(s[8:10]); d == 0 {
			return Date{}, false
		}
	}
	if e1 != nil || e2 != nil || e3 != nil || y < 1 || m < 1 || m > 12 || d < 0 || d > daysIn(y, m) {
		return Date{}, false
	}
	return Date{y, m, d}, true
}

func daysIn(y, m int) int {
	switch m {
	case 2:
		if y%4 == 0 && (y%100 != 0 || y%400 == 0) {
			return 29
		}
		return 28
	case 4, 6, 9, 11:
		return 30
	}
	return 31
}

// IsZero reports that there is no date.
func (d Date) IsZero() bool { return d == Date{} }

// String prints the date as the language writes it.
func (d Date) String() string {
	two := func(n int) string {
		if n < 10 {
			return "0" + strconv.Itoa(n)
		}
		return strconv.Itoa(n)
	}
	y := strconv.Itoa(d.Year)
	for len(y) < 4 {
		y = "0" + y
	}
	s := y + "-" + two(d.Month)
	if d.Day > 0 {
		s += "-" + two(d.Day)
	}
	return s
}

// Days counts days on the proleptic Gregorian calendar, so that differences
// between dates are days; a month counts from its first day.
func (d Date) Days() int {
	y, m, day := d.Year, d.Month, max(d.Day, 1)
	if m <= 2 {
		y--
		m += 12
	}
	return 365*y + y/4 - y/100 + y/400 + (153*(m-3)+2)/5 + day
}

// Before reports whether d is earlier than e.
func (d Date) Before(e Date) bool { return d.Days() < e.Days() }
