package bench

import (
	"errors"
	"slices"
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/typed"
	"sumpter/domain/trip"
)

// OpenText writes runs of opening days as people do: "Mon–Sat", "every day".
func OpenText(o trip.Opening) string {
	if len(o.OpenDays) == 0 || len(o.OpenDays) == 7 {
		return lang.L("every day")
	}
	names := trip.OpenDayNames()
	var parts []string
	for from := 0; from < len(names); from++ {
		to := from
		for to < len(names) && slices.Contains(o.OpenDays, names[to]) {
			to++
		}
		switch to - from {
		case 0:
			continue
		case 1, 2:
			for _, day := range names[from:to] {
				parts = append(parts, lang.L(day))
			}
		default:
			parts = append(parts, lang.L(names[from])+"–"+lang.L(names[to-1]))
		}
		from = to
	}
	return strings.Join(parts, ", ")
}

// ReadOpen reads days of the week and runs of them.
func ReadOpen(o *trip.Opening, text string) error {
	o.OpenDays = nil
	if text == "" || strings.EqualFold(text, lang.L("every day")) {
		return nil
	}
	names := trip.OpenDayNames()
	open := make([]bool, len(names))
	for _, part := range typed.List(text) {
		first, last, run := strings.Cut(strings.ReplaceAll(part, "-", "–"), "–")
		if !run {
			last = first
		}
		from, to := weekday(first), weekday(last)
		if from < 0 || to < 0 {
			return errors.New(lang.L("Write days as Mon, Tue, Wed, Thu, Fri, Sat, Sun, or Mon–Fri; nothing means every day."))
		}
		for day := from; ; day = (day + 1) % len(names) {
			open[day] = true
			if day == to {
				break
			}
		}
	}
	for i, name := range names {
		if open[i] {
			o.OpenDays = append(o.OpenDays, name)
		}
	}
	return nil
}

func weekday(text string) int {
	text = strings.ToLower(strings.TrimSpace(text))
	for i, name := range trip.OpenDayNames() {
		for _, known := range []string{name, lang.L(name)} {
			if len(text) >= 2 && strings.HasPrefix(text, strings.ToLower(known)) || text == strings.ToLower(known) {
				return i
			}
		}
	}
	return -1
}
