package trip

import (
	"slices"

	"sumpter/domain/units"
)

// Opening is when a place can be visited: days of the week, less dates.
type Opening struct {
	OpenDays    []string     `json:"open_days"` // Mon to Sun; none: every day
	ClosedDates []units.Date `json:"closed_dates,omitempty"`
}

// OpenOn tells whether the place is open on a date.
func (o Opening) OpenOn(date units.Date) bool {
	if slices.Contains(o.ClosedDates, date) {
		return false
	}
	return len(o.OpenDays) == 0 || slices.Contains(o.OpenDays, date.Weekday().Short())
}

// daysSearched is how far an open day is looked for: a year and its leap day.
const daysSearched = 366

// FirstOpen gives the first open date from one on; false if there is none
// within a year.
func (o Opening) FirstOpen(from units.Date) (units.Date, bool) { return o.open(from, 1) }

// LastOpen gives the last open date up to one; false if there is none within a
// year.
func (o Opening) LastOpen(until units.Date) (units.Date, bool) { return o.open(until, -1) }

func (o Opening) open(from units.Date, step int) (units.Date, bool) {
	for days := range daysSearched {
		if date := from.AddDays(step * days); date.IsSet() && o.OpenOn(date) {
			return date, true
		}
	}
	return 0, false
}

// weekdaysOfPost are the days on which posts take parcels almost everywhere.
// Common practice, no source: ask yours.
func weekdaysOfPost() []string { return []string{"Mon", "Tue", "Wed", "Thu", "Fri", "Sat"} }
