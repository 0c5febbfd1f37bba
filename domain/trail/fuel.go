package trail

import (
	"strings"

	"sumpter/domain/cooking"
	"sumpter/domain/plan"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// fuel says what each group has of each fuel on the morning of a day: what the
// leg began with, less what was cooked, set right where somebody looked.
func fuel(p *plan.Plan, notes []trip.FuelNote, day int) []Fuel {
	leg := trip.LegOf(p.Legs, day)
	var list []Fuel
	for _, carried := range p.Cooking.Fuel {
		if carried.Leg != leg || len(carried.Containers) == 0 {
			continue
		}
		f := Fuel{Group: carried.Group, Kind: carried.Fuel, Held: held(p, &carried, notes, day)}
		for _, container := range f.Held {
			f.Left += container.Left
			if container.Left > 0 {
				f.Full = append(f.Full, container.Container)
			}
		}
		f.Today = burnt(p, &carried, day)
		list = append(list, f)
	}
	return list
}

// held follows the containers of a group from the first morning of a leg to
// that of a day. They are emptied one after the other.
func held(p *plan.Plan, carried *cooking.LegFuel, notes []trip.FuelNote, day int) []Held {
	var list []Held
	for _, container := range carried.Containers {
		if !container.Ahead { // else for a later leg
			list = append(list, Held{Container: container, Left: container.Fuel})
		}
	}
	first := p.Legs[carried.Leg].FirstDay
	for i := range list {
		list[i].look(notes, 1, first-1) // while it was carried ahead
	}
	for d := first; d <= day; d++ {
		for i := range list {
			list[i].look(notes, d, d)
		}
		if d == day {
			break
		}
		gone := burnt(p, carried, d)
		for i := range list {
			part := min(gone, list[i].Left)
			list[i].Left, gone = list[i].Left-part, gone-part
		}
	}
	return list
}

// look takes over what was noted of a container from one day to another.
func (h *Held) look(notes []trip.FuelNote, from, to int) {
	h.Noted = false
	latest := 0
	for _, note := range notes {
		if note.Day >= from && note.Day <= to && note.Day > latest && h.is(note.Container) {
			h.Left, h.Noted, latest = note.Left, true, note.Day
		}
	}
}

// is tells whether a key names the container. One that came along from an
// earlier leg was "leg1 group1 gas for leg3 1" there and is "leg3 group1 gas 1" now.
func (h *Held) is(key string) bool {
	if key == h.Key {
		return true
	}
	leg, rest, _ := strings.Cut(h.Key, " ")
	at := strings.LastIndexByte(rest, ' ')
	return h.Brought && at >= 0 && strings.HasSuffix(key, " "+rest[:at]+" for "+leg+rest[at:])
}

// burnt is what the cooking of a day takes, without reserve.
func burnt(p *plan.Plan, carried *cooking.LegFuel, day int) units.Mass {
	var sum units.Mass
	for _, meal := range p.Cooking.Meals {
		if meal.Group == carried.Group && meal.Fuel == carried.Fuel && meal.Day == day {
			sum += meal.FuelMass
		}
	}
	return sum
}
