package loads

import (
	"errors"
	"fmt"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/findings"
	"sumpter/domain/trip"
)

// pinList lists what the leader pinned by hand, and from whom things are
// kept; each can be taken off.
type pinList struct {
	screen  *Screen
	table   *grid.Grid[trip.Pin]
	none    *look.Paragraph
	content fyne.CanvasObject
}

func newPinList(s *Screen) *pinList {
	l := &pinList{screen: s, none: look.NewParagraph(lang.L("No pins: the split is free. Drag a bag to another pack, or press M on it, to pin it there."), look.Body, look.Ink)}
	l.table = grid.New([]grid.Column[trip.Pin]{
		{Title: lang.L("Thing"), Width: 180, Text: l.thing},
		{Title: lang.L("Is"), Width: 110, Text: pinWord},
		{Title: lang.L("Member"), Width: 120, Text: func(p trip.Pin) string { return memberOf(s.bench.Trip(), p.Member) }},
	}, grid.Options[trip.Pin]{Key: pinKey, OnDelete: l.remove, OnOpen: l.open, OnProblem: s.bench.Say, Clipboard: s.bench.Clipboard})
	head := container.NewBorder(nil, nil, look.NewHeading(lang.L("Pins and bans")), widget.NewButton(lang.L("Take off"), l.table.Delete))
	l.content = container.NewBorder(container.NewVBox(head, l.none), nil, nil, nil, l.table)
	return l
}

func pinKey(p trip.Pin) string {
	return fmt.Sprintf("%s|%d|%s|%d|%v", p.Bag, p.Gear, p.Fuel, p.Member, p.Forbid)
}

func pinWord(p trip.Pin) string {
	if p.Forbid {
		return lang.L("kept from")
	}
	return lang.L("pinned to")
}

func memberOf(t *trip.Trip, id trip.MemberID) string {
	if m := t.Member(id); m != nil {
		return m.Name
	}
	return "–"
}

// thing names what a pin is about; a bag that the plan no longer makes is
// named by its key.
func (l *pinList) thing(p trip.Pin) string {
	if gear := l.screen.bench.Trip().GearItem(p.Gear); gear != nil {
		return gear.Name
	}
	if bag := l.bag(p); bag != nil {
		return bag.Code + ", " + l.screen.view.aboutBag(bag)
	}
	if s := l.screen; p.Fuel != "" && s.view != nil {
		if c, there := s.view.containers[p.Fuel]; there {
			return c.Name + ", " + s.view.groupName(c.group)
		}
	}
	return lang.X("pin-gone", "{{.Key}} (not in the plan now)", data{"Key": p.Bag + p.Fuel})
}

func (l *pinList) bag(p trip.Pin) *bags.Bag {
	if l.screen.view == nil {
		return nil
	}
	return l.screen.view.bags[p.Bag]
}

func (l *pinList) show() {
	pins := slices.Clone(l.screen.bench.Trip().Pins)
	l.table.SetRows(pins)
	if len(pins) == 0 {
		l.none.Show()
	} else {
		l.none.Hide()
	}
}

func (l *pinList) remove(p trip.Pin) error {
	if l.screen.way.refuses() {
		return errors.New(pinsOfPackingNight())
	}
	name := lang.X("undo-unpin", "take the pin off {{.Thing}}", data{"Thing": l.thing(p)})
	if p.Forbid {
		name = lang.X("undo-unban", "let {{.Name}} carry {{.Thing}} again", data{"Name": memberOf(l.screen.bench.Trip(), p.Member), "Thing": l.thing(p)})
	}
	without := func(pins []trip.Pin) []trip.Pin {
		return slices.DeleteFunc(pins, func(q trip.Pin) bool { return q == p })
	}
	if l.screen.view == nil {
		return l.screen.bench.Edit(name, func(on *trip.Trip) error {
			on.Pins = without(on.Pins)
			return nil
		})
	}
	return l.screen.repin(name, without)
}

// open goes to the pinned thing in its pack.
func (l *pinList) open(p trip.Pin) {
	place := findings.Place{Bag: p.Bag, Gear: p.Gear, Member: p.Member}
	if bag := l.bag(p); bag != nil && l.screen.view != nil && bag.Leg < len(l.screen.view.plan.Legs) {
		place.Day = l.screen.view.plan.Legs[bag.Leg].FirstDay
	}
	l.screen.GoTo(place)
	if c, there := l.screen.view.containers[p.Fuel]; there {
		l.screen.showDay(l.screen.view.plan.Legs[c.leg].FirstDay)
		l.screen.goToThing(carry.Thing{Kind: carry.FuelItem, Key: p.Fuel})
	}
}
