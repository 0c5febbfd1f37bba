// Package limits finds limits of packs that can all be kept, where those of a
// trip are passed: what bodies and packs would have to bear. Whether they can is
// for the leader to ask.
//
// Start with Raise; its only error is that of its context.
package limits

import (
	"context"
	"slices"

	"sumpter/domain/findings"
	"sumpter/domain/optional"
	"sumpter/domain/plan"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Raised is limits of a member that are above those of the trip; what is not
// known stays as it is.
type Raised struct {
	Member trip.MemberID
	Load   optional.Value[units.Mass]
	Room   optional.Value[units.Volume]
}

// Raised limits are round, and a little above what is carried: the split weighs
// and measures each piece rounded up.
const (
	loadStep = 10 * units.Gram
	roomStep = units.Litre / 10
)

// mostSlack is never reached: it would be tonnes.
const mostSlack = 1 << 20

// Passed lists the limits that a plan passes on any day, dry-camp water
// included, each raised to just above what is carried.
func Passed(p *plan.Plan) []Raised { return passed(p, 1) }

// passed leaves so many steps above what is carried, and up to one more.
func passed(p *plan.Plan, slack int) []Raised {
	named := overLimit(p)
	var list []Raised
	for i := range p.Carry.Members {
		m := &p.Trip.Crew[i]
		load, room := heaviest(p, i)
		limit, limited := m.LoadLimit.Get()
		one := Raised{Member: m.ID}
		heavy, large := limited && load > limit, room > m.PackRoom
		if named[m.ID] && !heavy && !large { // by what the split rounds up
			heavy, large = limited && enoughLoad(load, slack) > limit, enoughRoom(room, slack) > m.PackRoom
		}
		if heavy {
			one.Load = optional.Of(enoughLoad(load, slack))
		}
		if large {
			one.Room = optional.Of(enoughRoom(room, slack))
		}
		if heavy || large {
			list = append(list, one)
		}
	}
	return list
}

func enoughLoad(load units.Mass, slack int) units.Mass {
	return (load/loadStep + 1 + units.Mass(slack)) * loadStep
}

func enoughRoom(room units.Volume, slack int) units.Volume {
	return (room/roomStep + 1 + units.Volume(slack)) * roomStep
}

// heaviest is the most that the member at a place in the crew carries on a day.
func heaviest(p *plan.Plan, place int) (load units.Mass, room units.Volume) {
	for _, d := range p.Carry.Members[place].Days {
		load, room = max(load, d.Load+d.Water), max(room, d.Volume)
	}
	return load, room
}

// overLimit is who passes a limit by the findings of the split.
func overLimit(p *plan.Plan) map[trip.MemberID]bool {
	named := map[trip.MemberID]bool{}
	for _, f := range p.Carry.Findings {
		if f.Stage == findings.Carry && (f.Code == "over-limit" || f.Code == "water-over-limit") {
			named[f.Place.Member] = true
		}
	}
	return named
}

// Raise finds limits with which the plan of a trip passes none. Other limits
// give other loads, these other needs, and so another split, which may pass
// others: it plans until none is passed, each time with twice the slack. At last
// it takes back what the split that came of it does not use, if that holds too.
// The trip is not changed; of one that cannot be planned nothing is raised. Progress, if set, hears after each plan how many
// members are over a limit.
func Raise(ctx context.Context, t *trip.Trip, progress func(over int)) ([]Raised, error) {
	on := t.Clone()
	var all []Raised
	for slack := 1; slack < mostSlack; slack *= 2 {
		p, err := plan.Make(ctx, on, plan.Options{})
		if err != nil {
			return nil, err
		}
		more := passed(p, slack)
		if progress != nil {
			progress(len(more))
		}
		if len(more) == 0 {
			return trimmed(ctx, t, p, all)
		}
		Set(on, more)
		all = joined(all, more)
	}
	return all, nil
}

// joined puts newer limits over older ones.
func joined(all, more []Raised) []Raised {
	for _, one := range more {
		at := slices.IndexFunc(all, func(r Raised) bool { return r.Member == one.Member })
		if at < 0 {
			all = append(all, one)
			continue
		}
		if one.Load.Known() {
			all[at].Load = one.Load
		}
		if one.Room.Known() {
			all[at].Room = one.Room
		}
	}
	return all
}

// trimmed lowers raised limits to what is carried with them, down to those of
// the trip, if the plan made with these passes none.
func trimmed(ctx context.Context, t *trip.Trip, p *plan.Plan, all []Raised) ([]Raised, error) {
	var less []Raised
	for _, one := range all {
		was := t.Member(one.Member)
		place := slices.IndexFunc(p.Trip.Crew, func(m trip.Member) bool { return m.ID == one.Member })
		load, room := heaviest(p, place)
		kept := Raised{Member: one.Member}
		if to, raised := one.Load.Get(); raised && load > was.LoadLimit.Or(0) {
			kept.Load = optional.Of(min(to, enoughLoad(load, 1)))
		}
		if to, raised := one.Room.Get(); raised && room > was.PackRoom {
			kept.Room = optional.Of(min(to, enoughRoom(room, 1)))
		}
		if kept.Load.Known() || kept.Room.Known() {
			less = append(less, kept)
		}
	}
	if slices.Equal(less, all) {
		return all, nil
	}
	on := t.Clone()
	Set(on, less)
	again, err := plan.Make(ctx, on, plan.Options{})
	if err != nil {
		return nil, err
	}
	if len(passed(again, 1)) > 0 || len(overLimit(again)) > 0 {
		return all, nil
	}
	return less, nil
}

// Set gives members their raised limits.
func Set(on *trip.Trip, list []Raised) {
	for _, one := range list {
		m := on.Member(one.Member)
		if m == nil {
			continue
		}
		if one.Load.Known() {
			m.LoadLimit = one.Load
		}
		if room, raised := one.Room.Get(); raised {
			m.PackRoom = room
		}
	}
}
