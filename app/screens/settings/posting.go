package settings

import (
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/screens/bench"
	"sumpter/domain/trip"
)

// postingSettings are how boxes are sent from home.
func postingSettings() []setting {
	return []setting{
		{
			name: "posting.return_address", title: lang.L("Return address"), unit: noUnit,
			about:   lang.L("Where a box goes back to that nobody fetches: name, street and place, parted by commas. It stands on every address label."),
			allowed: func(*trip.Trip) string { return lang.L("lines, parted by commas") },
			text:    func(t *trip.Trip) string { return bench.AddressText(t.Posting.ReturnAddress) },
			set: func(t *trip.Trip, text string) error {
				t.Posting.ReturnAddress = bench.ReadAddress(text)
				return nil
			},
		},
		{
			name: "posting.open_days", title: lang.L("The post takes boxes on"), unit: noUnit,
			about:   lang.L("The days of the week on which the office near home takes boxes. Ask there: Saturdays differ."),
			allowed: func(*trip.Trip) string { return lang.L("days, such as Mon–Sat") },
			text:    func(t *trip.Trip) string { return bench.OpenText(t.Posting.Opening) },
			set: func(t *trip.Trip, text string) error {
				return bench.ReadOpen(&t.Posting.Opening, strings.TrimSpace(text))
			},
			usual: func(t *trip.Trip) { t.Posting.OpenDays = trip.UsualPosting().OpenDays },
		},
		{
			name: "posting.closed_dates", title: lang.L("No post on"), unit: noUnit,
			about:   lang.L("Public holidays and other days on which the office near home takes none. The last day of posting moves before them."),
			allowed: func(*trip.Trip) string { return lang.L("dates, or from–to") },
			text:    func(t *trip.Trip) string { return bench.ClosedText(t.Posting.Opening) },
			set:     func(t *trip.Trip, text string) error { return bench.ReadClosed(&t.Posting.Opening, text) },
		},
	}
}
