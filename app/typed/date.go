package typed

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"sumpter/domain/prose"
	"sumpter/domain/units"
)

// Date reads a day as people write it: 2026-07-20, 20.7.2026, 20 Jul 2026,
// July 20, 2026, Mon 20 Jul 2026. With slashes the month comes first for who
// reads US units; for others both are taken only where one can be no month.
// Empty text is no day.
func Date(text string, system units.System) (units.Date, error) {
	text = strings.TrimSpace(text)
	if text == "" {
		return 0, nil
	}
	if date, err := units.ParseDate(text); err == nil {
		return date, nil
	}
	year, month, day := spelled(text)
	if year == 0 {
		year, month, day = parted(text, ".")
		month, day = day, month
	}
	if year == 0 {
		year, month, day = parted(text, "/")
		switch {
		case month > 12:
			month, day = day, month
		case system != units.US && day <= 12 && month != day && year > 0:
			return 0, prose.Errorf("%q can be two days: write the month as a word, such as 20 Jul 2026", text)
		}
	}
	if date, err := units.NewDate(year, month, day); err == nil {
		return date, nil
	}
	return 0, prose.Errorf("%q is not a date, such as 2026-07-20 or 20 Jul 2026", text)
}

// parted reads three numbers parted by a sign, the year last; year 0 if it is
// no such text.
func parted(text, sign string) (year, first, second int) {
	parts := strings.Split(text, sign)
	if len(parts) != 3 {
		return 0, 0, 0
	}
	var numbers [3]int
	for i, part := range parts {
		n, err := strconv.Atoi(strings.TrimSpace(part))
		if err != nil || n < 1 || n > 9999 {
			return 0, 0, 0
		}
		numbers[i] = n
	}
	return fullYear(numbers[2]), numbers[0], numbers[1]
}

// fullYear takes a year of two digits as one of this century.
func fullYear(year int) int {
	if year < 100 {
		return 2000 + year
	}
	return year
}

// spelled reads a day whose month is a word; year 0 if it is no such text.
func spelled(text string) (year, month, day int) {
	var numbers []int
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }) {
		n, err := strconv.Atoi(strings.TrimRight(strings.ToLower(word), "stndrh")) // 20th
		switch {
		case err == nil:
			numbers = append(numbers, n)
		case month == 0 && monthNamed(word) > 0:
			month = monthNamed(word)
		case !isWeekday(word):
			return 0, 0, 0
		}
	}
	if month == 0 || len(numbers) != 2 {
		return 0, 0, 0
	}
	if numbers[0] > 31 {
		return numbers[0], month, numbers[1]
	}
	return fullYear(numbers[1]), month, numbers[0]
}

// months are their names in the languages of the program.
var months = [12][]string{
	{"january", "januar", "jänner"}, {"february", "februar"}, {"march", "märz", "maerz"}, {"april"}, {"may", "mai"}, {"june", "juni"},
	{"july", "juli"}, {"august"}, {"september"}, {"october", "oktober"}, {"november"}, {"december", "dezember"},
}

// weekdays are their names in the languages of the program.
var weekdays = []string{
	"monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday",
	"montag", "dienstag", "mittwoch", "donnerstag", "freitag", "samstag", "sonnabend", "sonntag",
}

// monthNamed is the month a word or its first three letters name, 0 if none.
func monthNamed(word string) int {
	for i, names := range months {
		for _, name := range names {
			if utf8.RuneCountInString(word) >= 3 && Begins(name, word) {
				return i + 1
			}
		}
	}
	return 0
}

func isWeekday(word string) bool {
	for _, name := range weekdays {
		if utf8.RuneCountInString(word) >= 2 && Begins(name, word) {
			return true
		}
	}
	return false
}
