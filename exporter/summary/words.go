package summary

import (
	"fmt"
	"strconv"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// extreme is the smallest or largest value of all members and days; the first
// one counts where several are equal.
type extreme struct {
	set    bool
	value  float64
	member trip.MemberID
	day    int
}

func (e *extreme) least(value float64, member trip.MemberID, day int) {
	if !e.set || value < e.value {
		*e = extreme{true, value, member, day}
	}
}

func (e *extreme) most(value float64, member trip.MemberID, day int) {
	if !e.set || value > e.value {
		*e = extreme{true, value, member, day}
	}
}

func who(t *trip.Trip, id trip.MemberID, day int) string {
	name := "unknown"
	if member := t.Member(id); member != nil {
		name = member.Name
	}
	return fmt.Sprintf("%s, day %d", name, day)
}

func percent(share float64) string { return strconv.FormatFloat(share*100, 'f', 0, 64) + " %" }

// whole writes a number without decimals.
func whole(value float64) string { return strconv.FormatFloat(value, 'f', 0, 64) }

// kilograms writes a load, which people speak of in kilograms or pounds even
// where it is small.
func kilograms(mass units.Mass, system units.System) string {
	if system == units.US {
		return strconv.FormatFloat(mass.Pounds(), 'f', 1, 64) + " lb"
	}
	return strconv.FormatFloat(mass.Kilograms(), 'f', 1, 64) + " kg"
}
