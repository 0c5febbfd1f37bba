package onward

import (
	"slices"

	"sumpter/domain/carry"
	"sumpter/domain/trip"
)

// Give gives what is stored when the leader hands a thing to another on a
// morning that is ahead. What was proposed for the morning of From is decided
// with it, as it is shown. It is false for rubbish, which nobody hands over.
func (r *Rest) Give(thing carry.Thing, day int, to trip.MemberID) (trip.Replan, bool) {
	over, ok := thing.HandOver()
	if !ok {
		return trip.Replan{}, false
	}
	decided := trip.Replan{Day: day}
	if day == r.From && !r.Decided {
		taken := slices.IndexFunc(r.Choices, func(c Choice) bool { return c.Taken })
		decided = r.Decide(taken, false)
	}
	over.From, over.To = carriersOn(r.Plan, max(1, day-1))[thing], to
	decided.HandOvers = slices.DeleteFunc(decided.HandOvers, func(h trip.HandOver) bool { return carry.ThingOf(h) == thing })
	decided.HandOvers = append(decided.HandOvers, over)
	return decided, true
}
