package bench

import (
	"strings"

	"sumpter/app/typed"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// mostClosed bounds a run of closed dates: a year.
const mostClosed = 366

// ClosedText writes the dates on which a place is closed, runs of days as
// "2027-12-24–2027-12-26".
func ClosedText(o trip.Opening) string {
	var parts []string
	for from := 0; from < len(o.ClosedDates); from++ {
		to := from
		for to+1 < len(o.ClosedDates) && o.ClosedDates[to+1] == o.ClosedDates[to]+1 {
			to++
		}
		text := o.ClosedDates[from].String()
		if to > from {
			text += "–" + o.ClosedDates[to].String()
		}
		parts = append(parts, text)
		from = to
	}
	return strings.Join(parts, ", ")
}

// ReadClosed reads dates and runs of them.
func ReadClosed(o *trip.Opening, text string) error {
	var dates []units.Date
	for _, part := range typed.List(text) {
		first, last, run := strings.Cut(strings.NewReplacer(" - ", "–", "..", "–").Replace(part), "–")
		from, err := units.ParseDate(strings.TrimSpace(first))
		if err != nil {
			return err
		}
		to := from
		if run {
			if to, err = units.ParseDate(strings.TrimSpace(last)); err != nil {
				return err
			}
		}
		if to < from || to > from.AddDays(mostClosed) {
			return prose.Errorf("from %s to %s is no run of closed days: write the earlier date first, at most a year", from, to)
		}
		for date := from; date <= to; date = date.AddDays(1) {
			dates = append(dates, date)
		}
	}
	o.ClosedDates = dates
	return nil
}
