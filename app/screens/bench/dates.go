package bench

import (
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/domain/units"
)

// DateWords writes a date as a person says it, in the reader's language:
// "Mon 20 Jul 2026". A date that is not set has no words.
func DateWords(date units.Date) string {
	words := strings.Fields(date.Spoken())
	if len(words) < 4 {
		return ""
	}
	return DayWords(date) + " " + words[3]
}

// WeekdayWord is the weekday of a date in the reader's language: "Mon".
func WeekdayWord(date units.Date) string {
	words := strings.Fields(date.Spoken())
	if len(words) < 4 {
		return ""
	}
	weekday := words[0]
	return lang.L(weekday)
}

// DayWords is DateWords without the year, where that of the trip is meant.
func DayWords(date units.Date) string {
	words := strings.Fields(date.Spoken())
	if len(words) < 4 {
		return ""
	}
	weekday, day, month := words[0], words[1], words[2]
	return lang.X("weekday-day-month", "{{.Weekday}} {{.Day}} {{.Month}}",
		map[string]any{"Weekday": lang.L(weekday), "Day": day, "Month": lang.L(month)})
}
