package resupply

import (
	"sumpter/domain/findings"
	"sumpter/domain/posting"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// date sets when the box leaves home and when it is fetched, and tells what is
// wrong with that.
func (b *Box) date(t *trip.Trip, p *trip.ResupplyPoint) []findings.Finding {
	c := posting.Of(t, p)
	if !c.PickUp.IsSet() {
		return nil
	}
	b.PickUp, b.SendOn, b.SendChosen, b.LiesThere = c.PickUp, c.On, c.Chosen, c.LiesThere
	if b.Posted {
		b.PostFrom, b.PostBy = c.From, c.By
	}
	var list []findings.Finding
	switch {
	case !c.Open:
		list = append(list, closed(p, t.DateOf(p.AfterDay), c.NextOpen))
	case c.Morning:
		list = append(list, nextMorning(p, t.DateOf(p.AfterDay)))
	}
	if b.Posted {
		list = append(list, windowFindings(p, c)...)
	}
	list = append(list, sendingFindings(t, p, c)...)
	return append(list, peopleFindings(t, p, c)...)
}

// windowFindings looks for what is wrong with the days of posting.
func windowFindings(p *trip.ResupplyPoint, c posting.Calendar) []findings.Finding {
	switch {
	case !c.From.IsSet():
		return []findings.Finding{holdUnknown(p)}
	case c.Empty():
		return []findings.Finding{emptyWindow(p, c.Window)}
	default:
		return nil
	}
}

// sendingFindings looks for what is wrong with the day the box leaves home.
func sendingFindings(t *trip.Trip, p *trip.ResupplyPoint, c posting.Calendar) []findings.Finding {
	var list []findings.Finding
	switch {
	case c.Chosen && c.On > c.By:
		list = append(list, sentTooLate(p, c))
	case c.Chosen && c.From.IsSet() && c.On < c.From:
		list = append(list, sentTooEarly(p, c))
	case c.Chosen && c.Sent && !t.Posting.OpenOn(c.On):
		list = append(list, noBoxesTaken(p, c.On))
	}
	if night := t.Settings.PackingNight; night.IsSet() && night > c.On && c.On.IsSet() {
		list = append(list, packedTooLate(p, c, night))
	}
	return list
}

// peopleFindings asks whether who sends and who fetches can.
func peopleFindings(t *trip.Trip, p *trip.ResupplyPoint, c posting.Calendar) []findings.Finding {
	var list []findings.Finding
	s := &p.Sending
	if sender := t.Member(s.Sender); sender != nil && onTheTrail(t, sender, c.On) {
		list = append(list, senderAway(p, sender.Name, c.On))
	} else if sender == nil && s.Helper == "" && c.On >= t.Start && p.Kind != trip.Meeting {
		list = append(list, sentOnTrip(p, c.On))
	}
	evening := p.AfterDay
	if collector := t.Member(s.Collector); collector != nil && !collector.Present(evening) && !collector.Present(evening+1) {
		list = append(list, collectorAway(p, collector.Name))
	}
	return list
}

// onTheTrail tells whether a member walks with the group on a date.
func onTheTrail(t *trip.Trip, m *trip.Member, date units.Date) bool {
	day := int(date-t.Start) + 1
	return date.IsSet() && day >= 1 && day <= len(t.Days) && m.Present(day)
}
