// Package calendar writes the dates before and during a trip as iCalendar
// (RFC 5545): buying, packing night, posting windows, pick-ups, the days of
// the trip. Days have no clock and no zone, so no clock change moves them.
package calendar

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	ical "github.com/arran4/golang-ical"

	"sumpter/domain/plan"
	"sumpter/domain/resupply"
	"sumpter/domain/trip"
	"sumpter/domain/units"
	"sumpter/exporter/summary"
)

// Write writes the calendar of the plan. The stamp says when what is in it was
// last changed (DTSTAMP, in UTC); the same plan and stamp give the same bytes.
// An event keeps its UID when its date moves and when anything is renamed, so
// that importing again updates it. Dates that are not set are left out.
func Write(w io.Writer, p *plan.Plan, stamp time.Time) error {
	calendar := ical.NewCalendar()
	calendar.SetProductId("-//Sumpter//Trip calendar//EN")
	calendar.SetMethod(ical.MethodPublish)
	calendar.SetXWRCalName(plain(titleOf(p.Trip)))
	for _, e := range events(p) {
		add(calendar, e, p.Trip, stamp)
	}
	return calendar.SerializeTo(w, ical.WithNewLineWindows)
}

// event is one entry over whole days, both included.
type event struct {
	key         string // stable within the trip
	first, last units.Date
	summary     string
	description string
	location    string
}

func titleOf(t *trip.Trip) string {
	if t == nil || strings.TrimSpace(t.Title) == "" {
		return "Trip"
	}
	return t.Title
}

func add(calendar *ical.Calendar, e event, t *trip.Trip, stamp time.Time) {
	entry := calendar.AddEvent(identity(t, e.key))
	entry.SetDtStampTime(stamp)
	entry.SetAllDayStartAt(day(e.first))
	entry.SetAllDayEndAt(day(e.last.AddDays(1))) // the end is exclusive: RFC 5545, 3.6.1
	entry.SetSummary(plain(titleOf(t) + ": " + e.summary))
	if e.description != "" {
		entry.SetDescription(plain(e.description))
	}
	if e.location != "" {
		entry.SetLocation(plain(e.location))
	}
	entry.SetTimeTransparency(ical.TransparencyTransparent)
}

// identity makes a UID that tells nothing of the trip. A trip that never had a
// file is known by its title.
func identity(t *trip.Trip, key string) string {
	of := t.Identity
	if of == "" {
		of = titleOf(t)
	}
	sum := sha256.Sum256([]byte(of + "\x00" + key))
	return hex.EncodeToString(sum[:12]) + "@sumpter.invalid"
}

func day(date units.Date) time.Time {
	year, month, number := date.Civil()
	return time.Date(year, time.Month(month), number, 0, 0, 0, 0, time.UTC)
}

// plain takes out control characters, which a calendar may not hold; new
// lines stay and are escaped by the writer.
func plain(text string) string {
	text = strings.ReplaceAll(text, "\r\n", "\n")
	return strings.Map(func(r rune) rune {
		if r < ' ' && r != '\n' || r == 0x7f {
			return -1
		}
		return r
	}, strings.ToValidUTF8(text, "\uFFFD"))
}

// events lists what is dated, in the order of the calendar's making.
func events(p *plan.Plan) []event {
	if p.Trip == nil {
		return nil
	}
	list := buying(p)
	if night := p.Trip.Settings.PackingNight; night.IsSet() {
		list = append(list, event{key: "packing night", first: night, last: night, summary: "packing night",
			description: fmt.Sprintf("Bags to weigh, pack and label: %d, about %.0f min; helpers: %d. Strictest allergy rounds first.",
				len(p.Bags.Bags), float64(p.Packing.Minutes), p.Trip.Settings.Helpers)})
	}
	for i := range p.Resupply.Boxes {
		list = append(list, boxEvents(p.Trip, &p.Resupply.Boxes[i])...)
	}
	if p.Trip.Start.IsSet() && len(p.Trip.Days) > 0 {
		list = append(list, event{key: "trip", first: p.Trip.Start, last: p.Trip.DateOf(len(p.Trip.Days)),
			summary: "on the trail", description: summary.When(p)})
	}
	return list
}

// buying gives the shopping day, and each other day by which something must be
// at home.
func buying(p *plan.Plan) []event {
	planned, foods := p.Trip.Settings.ShoppingDay, map[units.Date]int{}
	var deadlines []units.Date
	all := 0
	for _, line := range p.Shopping.Lines {
		if len(line.Buys) == 0 {
			continue
		}
		all++
		if !line.Deadline.IsSet() || line.Deadline == planned {
			continue
		}
		if foods[line.Deadline] == 0 {
			deadlines = append(deadlines, line.Deadline)
		}
		foods[line.Deadline]++
	}
	var list []event
	if planned.IsSet() {
		list = append(list, event{key: "shopping day", first: planned, last: planned, summary: "buy food",
			description: fmt.Sprintf("Foods to buy: %d. See the shopping list; compare every label with the allergens.", all)})
	}
	slices.Sort(deadlines)
	for i, date := range deadlines {
		list = append(list, event{key: fmt.Sprintf("food deadline %d", i+1), first: date, last: date, summary: "last day to have food at home",
			description: fmt.Sprintf("Foods that must be at home by this day: %d.", foods[date])})
	}
	return list
}

func boxEvents(t *trip.Trip, box *resupply.Box) []event {
	name, address := "the resupply point", ""
	if point := t.Point(box.Point); point != nil {
		name, address = point.Name, point.Address
	}
	var list []event
	if box.Posted && box.PostBy.IsSet() {
		e := event{key: fmt.Sprintf("posting %d", box.Point), first: box.PostBy, last: box.PostBy, summary: "post the box to " + name,
			description: fmt.Sprintf("Parcels: %d, %s. Latest day: %s. Ask the place whether it takes and keeps the box. No fuel in ordinary post.",
				len(box.Parcels), box.Mass.Format(t.Units), box.PostBy.Spoken())}
		switch {
		case box.SendChosen: // the leader's day, whatever the window
			e.first, e.last = box.SendOn, box.SendOn
		case box.PostFrom.IsSet() && box.PostFrom <= box.PostBy:
			e.first = box.PostFrom
		}
		list = append(list, e)
	}
	if !box.Posted && box.SendOn.IsSet() {
		list = append(list, event{key: fmt.Sprintf("bringing %d", box.Point), first: box.SendOn, last: box.SendOn, summary: "take the box to " + name,
			description: fmt.Sprintf("Parcels: %d, %s. Picked up: %s.", len(box.Parcels), box.Mass.Format(t.Units), box.PickUp.Spoken()), location: address})
	}
	if box.PickUp.IsSet() {
		list = append(list, event{key: fmt.Sprintf("pick-up %d", box.Point), first: box.PickUp, last: box.PickUp, summary: "pick up the box at " + name,
			description: fmt.Sprintf("Bags: %d. Check opening hours.", len(box.Bags)), location: address})
	}
	return list
}
