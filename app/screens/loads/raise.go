package loads

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// raise offers, where packs are over their limits, to raise these by the least
// that lets the split shown fit.
type raise struct {
	screen  *Screen
	words   *widget.Label
	content *fyne.Container
}

func newRaise(s *Screen) *raise {
	r := &raise{screen: s, words: widget.NewLabel("")}
	r.words.Wrapping, r.words.SizeName = fyne.TextWrapWord, theme.SizeNameCaptionText
	r.content = container.NewBorder(nil, nil, nil, container.NewVBox(widget.NewButton(lang.L("Raise these limits"), r.do)), r.words)
	return r
}

// raised is the limits of a member that the split shown would fit.
type raised struct {
	member trip.MemberID
	load   optional.Value[units.Mass]
	room   optional.Value[units.Volume]
}

// Raised limits are round, and a little above what is carried: the split weighs
// and measures each piece rounded up.
const (
	loadStep = 10 * units.Gram
	roomStep = units.Litre / 10
)

// raisedLimits are those of members whose load or room is passed on any day.
func (v *view) raisedLimits() []raised {
	var list []raised
	for i := range v.plan.Carry.Members {
		m := &v.plan.Trip.Crew[i]
		load, room := units.Mass(0), units.Volume(0)
		for _, d := range v.plan.Carry.Members[i].Days {
			load, room = max(load, d.Load), max(room, d.Volume)
		}
		one := raised{member: m.ID}
		if limit, limited := m.LoadLimit.Get(); limited && load > limit {
			one.load = optional.Of((load/loadStep + 2) * loadStep)
		}
		if room > m.PackRoom {
			one.room = optional.Of((room/roomStep + 2) * roomStep)
		}
		if one.load.Known() || one.room.Known() {
			list = append(list, one)
		}
	}
	return list
}

func (r *raise) show() {
	v := r.screen.view
	var names []string
	if v != nil && v.rest == nil {
		for _, one := range v.raisedLimits() {
			if load, ok := one.load.Get(); ok {
				names = append(names, lang.X("raise-to", "{{.Name}} to {{.Limit}}", data{"Name": v.memberName(one.member), "Limit": written.Quantity(load, v.plan.Trip.Units)}))
			}
			if room, ok := one.room.Get(); ok {
				names = append(names, lang.X("raise-to", "{{.Name}} to {{.Limit}}", data{"Name": v.memberName(one.member), "Limit": written.Quantity(room, v.plan.Trip.Units)}))
			}
		}
	}
	bench.SetShown(r.content, len(names) > 0)
	r.words.SetText(lang.X("raise-limits", "The split shown would fit with these limits: {{.Names}}. They are of bodies and packs: ask first.", data{"Names": strings.Join(names, ", ")}))
}

// do raises the limits, in one step of undo.
func (r *raise) do() {
	v := r.screen.view
	if v == nil || v.rest != nil {
		return
	}
	list := v.raisedLimits()
	_ = r.screen.bench.Edit(lang.L("raise limits of packs"), func(on *trip.Trip) error {
		for _, one := range list {
			m := on.Member(one.member)
			if m == nil {
				continue
			}
			if one.load.Known() {
				m.LoadLimit = one.load
			}
			if room, ok := one.room.Get(); ok {
				m.PackRoom = room
			}
		}
		return nil
	})
}
