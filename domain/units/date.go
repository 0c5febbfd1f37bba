package units

import (
	"fmt"
	"strconv"
)

// Date is a calendar day of the proleptic Gregorian calendar, as days since
// 1970-01-01. It has no clock and no zone, so no clock change can move it.
// The zero Date means "not set".
type Date int32

// The days a trip may touch; outside, a date is a typing error.
const (
	firstYear = 1971
	lastYear  = 2199
)

// NewDate makes a date and refuses days that the calendar does not have.
func NewDate(year, month, day int) (Date, error) {
	if year < firstYear || year > lastYear {
		return 0, fmt.Errorf("year %d is not between %d and %d", year, firstYear, lastYear)
	}
	if month < 1 || month > 12 || day < 1 || day > daysIn(year, month) {
		return 0, fmt.Errorf("there is no day %04d-%02d-%02d", year, month, day)
	}
	return Date(daysFromCivil(year, month, day)), nil
}

// ParseDate reads YYYY-MM-DD (ISO 8601).
func ParseDate(text string) (Date, error) {
	if len(text) != 10 || text[4] != '-' || text[7] != '-' {
		return 0, fmt.Errorf("%q is not a date as YYYY-MM-DD", text)
	}
	year, errYear := strconv.ParseUint(text[:4], 10, 16)
	month, errMonth := strconv.ParseUint(text[5:7], 10, 8)
	day, errDay := strconv.ParseUint(text[8:], 10, 8)
	if errYear != nil || errMonth != nil || errDay != nil {
		return 0, fmt.Errorf("%q is not a date as YYYY-MM-DD", text)
	}
	return NewDate(int(year), int(month), int(day))
}

// IsSet tells whether there is a date at all.
func (d Date) IsSet() bool { return d != 0 }

// AddDays moves the date; an unset date stays unset.
func (d Date) AddDays(days int) Date {
	if !d.IsSet() {
		return 0
	}
	return d + Date(days)
}

// Civil gives year, month (1 to 12) and day of the month.
func (d Date) Civil() (year, month, day int) { return civilFromDays(int(d)) }

// Weekday gives the day of the week, Monday first.
func (d Date) Weekday() Weekday {
	return Weekday(((int(d)+3)%7 + 7) % 7)
}

// String writes YYYY-MM-DD, or nothing if unset.
func (d Date) String() string {
	if !d.IsSet() {
		return ""
	}
	year, month, day := d.Civil()
	return fmt.Sprintf("%04d-%02d-%02d", year, month, day)
}

// Spoken writes the date as people say it, with its weekday: "Mon 20 Jul 2026".
func (d Date) Spoken() string {
	if !d.IsSet() {
		return ""
	}
	year, month, day := d.Civil()
	return fmt.Sprintf("%s %d %s %d", d.Weekday().Short(), day, monthNames[month-1], year)
}

// MarshalText writes YYYY-MM-DD.
func (d Date) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads YYYY-MM-DD; empty text is an unset date.
func (d *Date) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*d = 0
		return nil
	}
	parsed, err := ParseDate(string(text))
	if err != nil {
		return err
	}
	*d = parsed
	return nil
}

// MonthName gives the three-letter name of a month, 1 to 12.
func MonthName(month int) string { return monthNames[month-1] }

var monthNames = [12]string{"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"}

// Weekday counts from Monday = 0, as ISO 8601 orders the week.
type Weekday int

// The days of the week.
const (
	Monday Weekday = iota
	Tuesday
	Wednesday
	Thursday
	Friday
	Saturday
	Sunday
)

var weekdayNames = [7]string{"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"}

// Short gives the three-letter name.
func (w Weekday) Short() string { return weekdayNames[w] }

func daysIn(year, month int) int {
	switch month {
	case 4, 6, 9, 11:
		return 30
	case 2:
		if year%4 == 0 && (year%100 != 0 || year%400 == 0) {
			return 29
		}
		return 28
	default:
		return 31
	}
}

// daysFromCivil counts days since 1970-01-01 in years that begin on 1 March,
// so that the leap day comes last.
func daysFromCivil(year, month, day int) int {
	if month <= 2 {
		year--
	}
	era := floorDivide(year, 400)
	yearOfEra := year - era*400
	dayOfYear := (153*((month+9)%12)+2)/5 + day - 1
	dayOfEra := yearOfEra*365 + yearOfEra/4 - yearOfEra/100 + dayOfYear
	return era*146097 + dayOfEra - 719468
}

func civilFromDays(days int) (year, month, day int) {
	days += 719468
	era := floorDivide(days, 146097)
	dayOfEra := days - era*146097
	yearOfEra := (dayOfEra - dayOfEra/1460 + dayOfEra/36524 - dayOfEra/146096) / 365
	dayOfYear := dayOfEra - (365*yearOfEra + yearOfEra/4 - yearOfEra/100)
	shifted := (5*dayOfYear + 2) / 153
	day = dayOfYear - (153*shifted+2)/5 + 1
	month = (shifted+2)%12 + 1
	year = yearOfEra + era*400
	if month <= 2 {
		year++
	}
	return year, month, day
}

func floorDivide(a, b int) int {
	quotient := a / b
	if a%b < 0 {
		quotient--
	}
	return quotient
}
