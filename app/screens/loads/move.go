package loads

import (
	"errors"
	"slices"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/written"
	"sumpter/domain/carry"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// move is a thing on its way from one pack to another, by hand.
type move struct {
	thing thing
	to    trip.MemberID // 0: over nobody
	away  bool          // the thing is kept from them, instead of given to them
}

// outcome is what a move would make of two loads, reckoned from the plan
// before anything else is split anew.
type outcome struct {
	from, to             carry.Day
	fromBefore, toBefore float64
	obstacle             string     // why it must not be, "" where it may
	over                 units.Mass // above the taker's hard limit, with the water they carry
	cramped              bool       // no room in the taker's pack
}

// weigh reckons a move on a day.
func (v *view) weigh(m move, day int) outcome {
	var o outcome
	var capFrom, capTo units.Mass
	o.from, capFrom = v.load(m.thing.carrier, day)
	o.to, capTo = v.load(m.to, day)
	o.fromBefore, o.toBefore = o.from.Share, o.to.Share
	if m.to == 0 || m.to == m.thing.carrier || m.away {
		return o
	}
	if o.obstacle = v.obstacle(&m.thing, m.to, day); o.obstacle != "" {
		return o
	}
	shift(&o.from, capFrom, m.thing.kind, -m.thing.mass)
	shift(&o.to, capTo, m.thing.kind, m.thing.mass)
	if member := v.plan.Trip.Member(m.to); member != nil {
		if limit, limited := member.LoadLimit.Get(); limited {
			o.over = max(0, o.to.Load+o.to.Water-limit)
		}
		o.cramped = o.to.Volume+m.thing.volume > member.PackRoom
	}
	return o
}

// shift puts a mass onto a load or takes it off.
func shift(d *carry.Day, capability units.Mass, kind carry.ItemKind, mass units.Mass) {
	switch kind {
	case carry.BagItem:
		d.Food += mass
	case carry.GearItem:
		d.Gear += mass
	case carry.FuelItem:
		d.Fuel += mass
	case carry.WasteItem:
		d.Waste += mass
	}
	d.Load += mass
	d.Share = 0
	if capability > 0 {
		d.Share = float64(d.Load) / float64(capability)
	}
}

// say writes the outcome of a move in one line.
func (v *view) say(m move, o outcome) string {
	values := data{"Thing": m.thing.title(), "From": v.memberName(m.thing.carrier), "To": v.memberName(m.to)}
	switch {
	case m.away && m.to == 0:
		return lang.X("away-nobody", "{{.Thing}}: away from whom?", values)
	case m.away:
		return lang.X("away-from", "{{.Thing}} is kept away from {{.To}}", values)
	case m.to == 0:
		return lang.X("move-nobody", "{{.Thing}}: to whom?", values)
	case m.to == m.thing.carrier:
		return lang.X("move-stay", "{{.Thing}} stays with {{.From}}", values)
	case o.obstacle != "":
		return o.obstacle
	}
	values["FromBefore"], values["FromAfter"] = percent(o.fromBefore), percent(o.from.Share)
	values["ToBefore"], values["ToAfter"] = percent(o.toBefore), percent(o.to.Share)
	text := lang.X("move-shares", "{{.From}} {{.FromBefore}} → {{.FromAfter}}, {{.To}} {{.ToBefore}} → {{.ToAfter}}", values)
	if o.over > 0 {
		text += ". " + lang.X("move-over", "{{.Mass}} above {{.To}}'s limit!", data{"Mass": written.Quantity(o.over, v.plan.Trip.Units), "To": v.memberName(m.to)})
	}
	if o.cramped {
		text += ". " + lang.X("move-cramped", "No room for it in {{.To}}'s pack!", data{"To": v.memberName(m.to)})
	}
	return text
}

// thing names a thing as the plan does.
func (t *thing) thing() carry.Thing { return carry.Thing{Kind: t.kind, Key: t.key} }

// concerns tells whether a pin is about a thing.
func (t *thing) concerns(p trip.Pin) bool { return carry.PinnedThing(p) == t.thing() }

// repin changes pins in one step of undo. The rest is split anew around them,
// near the packs as they are now.
func (s *Screen) repin(name string, change func(pins []trip.Pin) []trip.Pin) error {
	packs := s.view.plan.Carry.Packs()
	return s.bench.Edit(name, func(on *trip.Trip) error {
		on.Pins, on.Kept = change(on.Pins), packs
		return nil
	})
}

// give pins a thing to a member.
func (s *Screen) give(t thing, to trip.MemberID) error {
	pin, ok := t.thing().Pin(to, false)
	if !ok {
		return s.refuse(t.fixed())
	}
	if why := s.view.obstacle(&t, to, s.day); why != "" {
		s.pack.refuse(t, to, why)
		return s.refuse(why)
	}
	if s.view.rest != nil {
		return s.way.give(t, to)
	}
	name := lang.X("undo-move-bag", "move {{.Thing}} to another pack", data{"Thing": t.title()})
	if to == t.carrier {
		name = lang.X("undo-pin", "pin {{.Thing}} where it is", data{"Thing": t.title()})
	}
	return s.repin(name, func(pins []trip.Pin) []trip.Pin {
		pins = slices.DeleteFunc(pins, func(p trip.Pin) bool { return t.concerns(p) && (!p.Forbid || p.Member == to) })
		return append(pins, pin)
	})
}

// ban keeps a thing from a member.
func (s *Screen) ban(t thing, from trip.MemberID) error {
	pin, ok := t.thing().Pin(from, true)
	if !ok {
		return s.refuse(t.fixed())
	}
	if s.way.refuses() {
		return errors.New(pinsOfPackingNight())
	}
	name := lang.X("undo-ban", "keep {{.Thing}} from {{.Name}}", data{"Thing": t.title(), "Name": s.view.memberName(from)})
	err := s.repin(name, func(pins []trip.Pin) []trip.Pin {
		pins = slices.DeleteFunc(pins, func(p trip.Pin) bool { return t.concerns(p) && p.Member == from })
		return append(pins, pin)
	})
	if err == nil {
		s.banned = &banned{thing: t, pin: pin}
		s.tellBanned()
	}
	return err
}

// free takes off every pin and ban of a thing.
func (s *Screen) free(t thing) error {
	if s.way.refuses() {
		return errors.New(pinsOfPackingNight())
	}
	name := lang.X("undo-free", "take the pins off {{.Thing}}", data{"Thing": t.title()})
	return s.repin(name, func(pins []trip.Pin) []trip.Pin { return slices.DeleteFunc(pins, t.concerns) })
}

func (s *Screen) refuse(why string) error {
	s.bench.Say(why)
	return errors.New(why)
}
