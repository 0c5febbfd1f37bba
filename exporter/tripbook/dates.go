package tripbook

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"sumpter/domain/units"
)

// Spreadsheets count days from 1899-12-30 (from 1904-01-01 where the workbook
// says so); package units counts from 1970-01-01. ECMA-376 Part 1, 18.17.4.1.
const (
	serialOf1970     = 25569
	serialOf1970From = 24107 // in the 1904 system
)

var (
	isoDate    = regexp.MustCompile(`^(\d{4})-(\d{1,2})-(\d{1,2})(?:[T ].*)?$`)
	dottedDate = regexp.MustCompile(`^(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4})$`) // day first wherever dots are used
	slashDate  = regexp.MustCompile(`^(\d{1,2})[/-](\d{1,2})[/-](\d{4})$`)
	dayMonth   = regexp.MustCompile(`^(?:[A-Za-z]+,? )?(\d{1,2})\.? ([A-Za-z]{3,9})\.?,? (\d{4})$`)
	monthDay   = regexp.MustCompile(`^(?:[A-Za-z]+,? )?([A-Za-z]{3,9})\.? (\d{1,2}),? (\d{4})$`)
	serialDate = regexp.MustCompile(`^\d{4,6}(\.\d+)?$`)
)

var months = []string{"jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"}

const allowedDate = "a date such as 2026-07-20"

// serial gives the number a spreadsheet holds for the date.
func serial(d units.Date) int { return int(d) + serialOf1970 }

// parseDate reads a spreadsheet's day number or a written date. 3/4/2026 is
// refused: half the world reads it as March, the other half as April.
func parseDate(text string, from1904 bool) (units.Date, string) {
	text = strings.Join(strings.Fields(text), " ")
	if serialDate.MatchString(text) {
		return dateOfSerial(text, from1904)
	}
	if m := isoDate.FindStringSubmatch(text); m != nil {
		return civil(m[1], m[2], m[3])
	}
	if m := dottedDate.FindStringSubmatch(text); m != nil {
		return civil(m[3], m[2], m[1])
	}
	if m := slashDate.FindStringSubmatch(text); m != nil {
		return slashed(m[1], m[2], m[3])
	}
	if m := dayMonth.FindStringSubmatch(text); m != nil {
		return civil(m[3], monthNumber(m[2]), m[1])
	}
	if m := monthDay.FindStringSubmatch(text); m != nil {
		return civil(m[3], monthNumber(m[1]), m[2])
	}
	return 0, "is not a date"
}

func dateOfSerial(text string, from1904 bool) (units.Date, string) {
	number, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return 0, "is not a date"
	}
	days := int(math.Floor(number)) - serialOf1970
	if from1904 {
		days = int(math.Floor(number)) - serialOf1970From
	}
	year, month, day := units.Date(days).Civil()
	date, err := units.NewDate(year, month, day)
	if err != nil {
		return 0, "is not a date of our time"
	}
	return date, ""
}

func slashed(first, second, year string) (units.Date, string) {
	a, _ := strconv.Atoi(first)
	b, _ := strconv.Atoi(second)
	switch {
	case a == b, a > 12:
		return civil(year, second, first)
	case b > 12:
		return civil(year, first, second)
	default:
		return 0, "can be read in two ways: write the year first"
	}
}

func civil(year, month, day string) (units.Date, string) {
	y, _ := strconv.Atoi(year)
	m, _ := strconv.Atoi(month)
	d, _ := strconv.Atoi(day)
	date, err := units.NewDate(y, m, d)
	if err != nil {
		return 0, "is a day that the calendar does not have"
	}
	return date, ""
}

func monthNumber(name string) string {
	for i, short := range months {
		if strings.HasPrefix(strings.ToLower(name), short) {
			return strconv.Itoa(i + 1)
		}
	}
	return "0"
}
