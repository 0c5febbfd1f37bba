package resupply

import (
	"sumpter/domain/findings"
	"sumpter/domain/trip"
)

// missing says what happens if nothing is to be had at the point, given the
// leg before it: its food is used up on the evening of arrival.
func (b *Box) missing(t *trip.Trip, before trip.Leg, p *trip.ResupplyPoint) []findings.Finding {
	if len(b.Bags)+len(b.BoughtThere) == 0 {
		return []findings.Finding{emptyBox(p)}
	}
	// After day k the packs hold LastDay-k days of food; the way back is
	// k-FirstDay+1 days.
	if k := (before.FirstDay + before.LastDay - 1) / 2; k >= before.FirstDay {
		b.TurnBackBy = k
	}
	return []findings.Finding{notThere(t, p, b, before)}
}
