package onward

import (
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Morning is the day from whose morning the rest of a trip is ahead: today, or,
// where today is no day of the trip, the last of which anything was noted. It
// is at least 1.
func Morning(t *trip.Trip, done *trip.Progress, today units.Date) int {
	if day := int(today-t.Start) + 1; t.Start.IsSet() && today.IsSet() && day >= 1 && day <= len(t.Days) {
		return day
	}
	latest := 1
	for _, end := range done.Ends {
		latest = max(latest, end.Day)
	}
	for _, part := range done.PartsGone {
		latest = max(latest, part.Day)
	}
	for _, note := range done.FuelNotes {
		latest = max(latest, note.Day)
	}
	for _, change := range done.CrewChanges {
		latest = max(latest, change.Day)
	}
	for _, replan := range done.Replans {
		latest = max(latest, replan.Day)
	}
	return min(latest, max(1, len(t.Days)))
}
