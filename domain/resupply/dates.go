package resupply

import (
	"slices"

	"sumpter/domain/findings"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// openOn tells whether a point hands boxes out on a date.
func openOn(p *trip.ResupplyPoint, date units.Date) bool {
	if slices.Contains(p.ClosedDates, date) {
		return false
	}
	return len(p.OpenDays) == 0 || slices.Contains(p.OpenDays, date.Weekday().Short())
}

// nextOpen is the first open date from one on, within a year.
func nextOpen(p *trip.ResupplyPoint, from units.Date) (units.Date, bool) {
	for days := range 366 {
		if date := from.AddDays(days); openOn(p, date) {
			return date, true
		}
	}
	return 0, false
}

// window is when a box may be posted.
type window struct {
	from, by units.Date // from unset: no limit known
}

// postingWindow counts back from the pick-up:
//
//	latest posting   = pick-up - slowest transit - buffer
//	earliest arrival = pick-up - (hold - margin)
//	earliest posting = earliest arrival - fastest transit
//
// Design choice of testdata/check_values.csv, topic resupply.
func postingWindow(p *trip.ResupplyPoint, pickUp units.Date) window {
	w := window{by: pickUp.AddDays(-p.TransitDays - p.BufferDays)}
	if hold, known := p.HoldDays.Get(); known {
		w.from = pickUp.AddDays(-(hold - p.HoldMargin) - p.FastestDays)
	}
	return w
}

// holdNeeded is the least hold with which the window is not empty.
func holdNeeded(p *trip.ResupplyPoint) int {
	return p.TransitDays + p.BufferDays - p.FastestDays + p.HoldMargin
}

// date sets pick-up and posting. Where the point is closed on the evening of
// arrival but open the next day, the box is picked up before setting off.
func (b *Box) date(t *trip.Trip, p *trip.ResupplyPoint) []findings.Finding {
	evening := t.DateOf(p.AfterDay)
	if !evening.IsSet() {
		return nil
	}
	var list []findings.Finding
	b.PickUp = evening
	if !openOn(p, evening) {
		next, found := nextOpen(p, evening)
		if next == evening.AddDays(1) && found {
			b.PickUp = next
			list = append(list, nextMorning(p, evening))
		} else {
			list = append(list, closed(p, evening, next, found))
		}
	}
	if !b.Posted {
		return list
	}
	w := postingWindow(p, b.PickUp)
	b.PostFrom, b.PostBy = w.from, w.by
	return append(list, windowFindings(t, p, w)...)
}

// windowFindings looks for what is wrong with the days of posting.
func windowFindings(t *trip.Trip, p *trip.ResupplyPoint, w window) []findings.Finding {
	var list []findings.Finding
	switch {
	case !w.from.IsSet():
		list = append(list, holdUnknown(p))
	case w.from > w.by:
		list = append(list, emptyWindow(p, w))
	case w.from >= t.Start:
		list = append(list, postedLater(p, w))
	}
	if night := t.Settings.PackingNight; night.IsSet() && night > w.by {
		list = append(list, packedTooLate(p, w, night))
	}
	return list
}

// missing says what happens if the box is not there, given the leg before it:
// its food is used up on the evening of arrival.
func (b *Box) missing(t *trip.Trip, before trip.Leg, p *trip.ResupplyPoint) []findings.Finding {
	if len(b.Bags) == 0 {
		return []findings.Finding{emptyBox(p)}
	}
	// After day k the packs hold LastDay-k days of food; the way back is
	// k-FirstDay+1 days.
	if k := (before.FirstDay + before.LastDay - 1) / 2; k >= before.FirstDay {
		b.TurnBackBy = k
	}
	return []findings.Finding{notThere(t, p, b, before)}
}
