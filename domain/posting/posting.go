// Package posting is the calendar of boxes: when the box of a resupply point
// is fetched, between which days it may leave home, on which day it does, and
// how long it is then on its way and lies there. What boxes weigh and how food
// bears the way is for others.
package posting

import (
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Calendar is the days of one box. Without a start of the trip it has none.
type Calendar struct {
	PickUp    units.Date // the evening the point is reached, or the morning after
	Open      bool       // the point is open on PickUp
	NextOpen  units.Date // closed: the first open day after; unset: none within a year
	Morning   bool       // fetched the morning after: the evening is closed
	Sent      bool       // by post or carrier; false: somebody brings it
	Window               // in which it may leave home
	On        units.Date // it leaves home; unset: no day is right and none was chosen
	Chosen    bool       // On is the leader's choice, not the latest day in time
	OnTheWay  int        // days in the van, at the slowest usual
	LiesThere int        // days it then waits
}

// Window is the first and the last day on which a box may leave home. An empty
// one has From after By.
type Window struct {
	From units.Date // unset: nobody knows how long boxes are kept
	By   units.Date
}

// Sent tells whether a box goes to a point by post or carrier: always to a
// post office, to a hut or shop if the leader gave it days of transit.
func Sent(p *trip.ResupplyPoint) bool {
	switch p.Kind {
	case trip.PostOffice:
		return true
	case trip.Hut, trip.ShopOnWay:
		return p.TransitDays > 0
	default:
		return false
	}
}

// Of gives the calendar of a point's box. Unless the leader chose a day, the
// box leaves home on the latest that still brings it in time, with the days in
// hand that were asked for: that keeps its food at home as long as can be, and
// it lies at the point as short.
func Of(t *trip.Trip, p *trip.ResupplyPoint) Calendar {
	c := Calendar{Sent: Sent(p)}
	evening := t.DateOf(p.AfterDay)
	if !evening.IsSet() {
		return c
	}
	c.pickUp(p, evening)
	c.Window = windowOf(p, c.PickUp)
	if c.Sent {
		c.Window = c.Window.during(t.Posting.Opening)
		c.OnTheWay = max(0, p.TransitDays)
	}
	c.On = c.By
	if chosen := p.Sending.SendOn; chosen.IsSet() {
		c.On, c.Chosen = chosen, true
	}
	if c.On.IsSet() {
		c.LiesThere = max(0, int(c.PickUp-c.On)-c.OnTheWay)
	}
	return c
}

// pickUp finds when the box is fetched. Where the point is closed on the
// evening of arrival but open the next day, that is before setting off.
func (c *Calendar) pickUp(p *trip.ResupplyPoint, evening units.Date) {
	c.PickUp, c.Open = evening, p.OpenOn(evening)
	if c.Open {
		return
	}
	next, found := p.FirstOpen(evening)
	if found && next == evening.AddDays(1) {
		c.PickUp, c.Open, c.Morning = next, true, true
		return
	}
	if found {
		c.NextOpen = next
	}
}

// windowOf counts back from the pick-up:
//
//	latest posting   = pick-up - slowest transit - days in hand
//	earliest arrival = pick-up - (hold - margin)
//	earliest posting = earliest arrival - fastest transit
//
// Design choice of testdata/check_values.csv, topic resupply. Who meets the
// group brings the box along on the day.
func windowOf(p *trip.ResupplyPoint, pickUp units.Date) Window {
	if p.Kind == trip.Meeting {
		return Window{By: pickUp}
	}
	w := Window{By: pickUp.AddDays(-p.TransitDays - p.BufferDays)}
	if hold, known := p.HoldDays.Get(); known {
		w.From = pickUp.AddDays(-(hold - p.HoldMargin) - p.FastestDays)
	}
	return w
}

// during keeps the days on which boxes are taken.
func (w Window) during(open trip.Opening) Window {
	if w.From.IsSet() {
		if first, found := open.FirstOpen(w.From); found {
			w.From = first
		}
	}
	if last, found := open.LastOpen(w.By); found {
		w.By = last
	}
	return w
}

// Empty tells whether no day is right.
func (w Window) Empty() bool { return w.From.IsSet() && w.From > w.By }

// Holds tells whether a day is right.
func (w Window) Holds(day units.Date) bool {
	return day.IsSet() && day <= w.By && (!w.From.IsSet() || day >= w.From)
}

// HoldNeeded is the least hold, in days, with which the window of a point is
// not empty, weekends of the post aside.
func HoldNeeded(p *trip.ResupplyPoint) int {
	return p.TransitDays + p.BufferDays - p.FastestDays + p.HoldMargin
}
