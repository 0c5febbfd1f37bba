package resupply

import (
	"sumpter/domain/bags"
	"sumpter/domain/findings"
	"sumpter/domain/posting"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func finding(severity findings.Severity, code string, p *trip.ResupplyPoint, what, why, remedy prose.Text) findings.Finding {
	return findings.Finding{
		Severity: severity, Stage: findings.Resupply, Code: code,
		Place: findings.Place{Day: p.AfterDay, Point: p.ID}, What: what, Why: why, Remedy: remedy,
	}
}

func offTheDays(t *trip.Trip, p *trip.ResupplyPoint) findings.Finding {
	return finding(findings.LookAt, "point-off-route", p,
		prose.Say("%s is to be used after day %d, and the trip ends with day %d: it is not.", p.Name, p.AfterDay, len(t.Days)),
		prose.Say("A box serves the days after its point; there must be at least one before it and one after."),
		prose.Say("Put it after a day from 1 to %d, or do not use it.", max(1, len(t.Days)-1)))
}

func sameEvening(p *trip.ResupplyPoint) findings.Finding {
	return finding(findings.LookAt, "point-doubled", p,
		prose.Say("%s lies on an evening on which another point is used: it gets no box.", p.Name),
		prose.Say("Food is taken on once an evening; of two points the one with the lower ID is used."),
		prose.Say("Use only one of them, or move one to another day."))
}

func nextMorning(p *trip.ResupplyPoint, evening units.Date) findings.Finding {
	return finding(findings.LookAt, "pick-up-moved", p,
		prose.Say("%s is closed on %s: the box is picked up on %s, before setting off.", p.Name, evening, evening.AddDays(1)),
		prose.Say("The opening days and closed dates entered for the point."),
		prose.Say("Ask when it opens, plan a late start, and keep the breakfast of that day in the packs."))
}

func closed(p *trip.ResupplyPoint, evening, next units.Date) findings.Finding {
	remedy := prose.Say("Enter its opening days, or use another point.")
	if next.IsSet() {
		wait := int(next - evening)
		remedy = prose.Plural(wait,
			prose.Say("It opens on %s: move the start by %d day, wait there with food for %d day more, or use another point.", next, wait, wait),
			prose.Say("It opens on %s: move the start by %d days, wait there with food for %d days more, or use another point.", next, wait, wait))
	}
	return finding(findings.MustFix, "point-closed", p,
		prose.Say("%s is closed on %s and the day after.", p.Name, evening),
		prose.Say("The opening days and closed dates entered for the point."), remedy)
}

func holdUnknown(p *trip.ResupplyPoint) findings.Finding {
	return finding(findings.LookAt, "hold-unknown", p,
		prose.Say("Nobody knows how long %s keeps a box: there is no earliest day of posting.", p.Name),
		prose.Say("A box that comes too early is sent back. Posts differ and change their rules."),
		prose.Say("Ask there and enter the days."))
}

func emptyWindow(p *trip.ResupplyPoint, w posting.Window) findings.Finding {
	hold := p.HoldDays.Or(0)
	return finding(findings.MustFix, "no-posting-day", p,
		prose.Say("No day is right to post the box for %s: not before %s, or it may be sent back; not after %s, or it may be late.", p.Name, w.From, w.By),
		prose.Say("Days of transit: %d to %d, in hand: %d, of hold: %d less %d.", p.FastestDays, p.TransitDays, p.BufferDays, hold, p.HoldMargin),
		prose.Say("Days of hold that would do: %d. Ask for them, keep fewer days in hand, or send by a faster and surer way.", posting.HoldNeeded(p)))
}

func sentTooLate(p *trip.ResupplyPoint, c posting.Calendar) findings.Finding {
	return finding(findings.MustFix, "sent-too-late", p,
		prose.Say("The box for %s is to leave on %s: the latest day is %s.", p.Name, c.On, c.By),
		prose.Say("Days of transit: %d, in hand: %d; it is fetched on %s.", p.TransitDays, p.BufferDays, c.PickUp),
		prose.Say("Choose an earlier day, or a faster way."))
}

func sentTooEarly(p *trip.ResupplyPoint, c posting.Calendar) findings.Finding {
	return finding(findings.MustFix, "sent-too-early", p,
		prose.Say("The box for %s is to leave on %s: before %s it may be sent back.", p.Name, c.On, c.From),
		prose.Say("Days of hold: %d less %d, of the fastest transit: %d.", p.HoldDays.Or(0), p.HoldMargin, p.FastestDays),
		prose.Say("Choose a later day, or ask for a longer hold."))
}

func noBoxesTaken(p *trip.ResupplyPoint, on units.Date) findings.Finding {
	return finding(findings.MustFix, "no-boxes-taken", p,
		prose.Say("The box for %s is to leave on %s, when the post near home takes none.", p.Name, on),
		prose.Say("The days on which boxes are taken, as entered."),
		prose.Say("Choose another day, or correct the days of the post."))
}

func sentOnTrip(p *trip.ResupplyPoint, on units.Date) findings.Finding {
	return finding(findings.LookAt, "posted-on-trip", p,
		prose.Say("The box for %s leaves home on %s, when the trip is under way, and nobody is named who sends it.", p.Name, on),
		prose.Say("Sent earlier, it might be sent back before it is fetched, or wait in the warm."),
		prose.Say("Name somebody at home who sends it, or choose an earlier day if the point keeps boxes long enough."))
}

func senderAway(p *trip.ResupplyPoint, name string, on units.Date) findings.Finding {
	return finding(findings.MustFix, "sender-away", p,
		prose.Say("%s is to send the box for %s on %s, and walks with the group on that day.", name, p.Name, on),
		prose.Say("The days on which members are there."),
		prose.Say("Name somebody at home, or choose another day."))
}

func collectorAway(p *trip.ResupplyPoint, name string) findings.Finding {
	return finding(findings.MustFix, "collector-away", p,
		prose.Say("%s is to fetch the box at %s, and is not with the group on day %d.", name, p.Name, p.AfterDay),
		prose.Say("The days on which members are there. Posts hand a box only to the person named on it, with a photo identity."),
		prose.Say("Let somebody else fetch it, and write their name on it."))
}

func labelIncomplete(p *trip.ResupplyPoint, lacks []prose.Text) findings.Finding {
	last := len(lacks) - 1
	list := lacks[last]
	if last > 0 {
		list = prose.Say("%s and %s", prose.List(", ", lacks[:last]), lacks[last])
	}
	return finding(findings.LookAt, "label-incomplete", p,
		prose.Say("The label of the box for %s lacks %s.", p.Name, list),
		prose.Say("A post hands a box to the person named on it, and sends back what it cannot place."),
		prose.Say("Enter them with the point: the full name as on the identity card, the office with its postal code, and where a box goes back to."))
}

func packedTooLate(p *trip.ResupplyPoint, c posting.Calendar, night units.Date) findings.Finding {
	late := int(night - c.On)
	return finding(findings.MustFix, "packed-too-late", p,
		prose.Say("The box for %s is to leave on %s, but packing night is %s.", p.Name, c.On, night),
		prose.Say("Days of transit: %d, in hand before pick-up: %d.", p.TransitDays, p.BufferDays),
		prose.Plural(late, prose.Say("Pack at least %d day earlier, or send by a faster way.", late),
			prose.Say("Pack at least %d days earlier, or send by a faster way.", late)))
}

func overLimit(bag *bags.Bag, p *trip.ResupplyPoint) findings.Finding {
	f := finding(findings.MustFix, "bag-over-parcel", p,
		prose.Say("Bag %s (%s, %s) is larger than a parcel to %s may be.", bag.Code, bag.Mass(), bag.Volume, p.Name),
		prose.Say("The limits entered for the point, less %s and a fifth of the volume for the carton (common practice, no source).", cartonMass),
		prose.Say("Pack the meal in smaller bags, or check the limits."))
	f.Place.Bag = bag.Key
	return f
}

func emptyBox(p *trip.ResupplyPoint) findings.Finding {
	return finding(findings.Note, "empty-box", p,
		prose.Say("Nothing is eaten from the box at %s.", p.Name),
		prose.Say("No bag belongs to the days after it."),
		prose.Say("Fill the menu of the days after it, or do not use the point."))
}

func notThere(t *trip.Trip, p *trip.ResupplyPoint, b *Box, before trip.Leg) findings.Finding {
	what := prose.Say("If the box at %s does not come, the packs are empty after day %d.", p.Name, before.LastDay)
	switch {
	case len(b.Bags) == 0:
		what = prose.Say("If there is nothing to buy at %s, the packs are empty after day %d.", p.Name, before.LastDay)
	case t.Settings.ReserveDays > 0:
		what = prose.Say("If the box at %s does not come, the packs are empty after day %d, but for a reserve of %.1f days.", p.Name, before.LastDay, t.Settings.ReserveDays)
	}
	remedy := prose.Say("Have the arrival of the box confirmed before the leg begins, and know where food can be bought near the point.")
	if b.TurnBackBy > 0 {
		remedy = remedy.Then(prose.Say("Later than the evening of day %d the food no longer reaches back.", b.TurnBackBy))
	}
	return finding(findings.Note, "box-not-there", p, what,
		prose.Say("Food left against days back to where it came from, at the same pace (common practice, no source)."), remedy)
}

// shopFindings speaks of what is to be bought at the point.
func (b *Box) shopFindings(t *trip.Trip, p *trip.ResupplyPoint) []findings.Finding {
	if len(b.BoughtThere) == 0 {
		return nil
	}
	var list []findings.Finding
	foods := map[trip.FoodID]bool{}
	for _, bought := range b.BoughtThere {
		foods[bought.Food] = true
	}
	for i := range t.Shops {
		s := &t.Shops[i]
		if s.Use && s.Point == p.ID && b.PickUp.IsSet() && !s.OpenOn(b.PickUp) {
			list = append(list, shopClosed(p, s, b.PickUp))
		}
	}
	return append(list, boughtOnTheWay(p, len(foods)))
}

func boughtOnTheWay(p *trip.ResupplyPoint, foods int) findings.Finding {
	return finding(findings.Note, "bought-on-the-way", p,
		prose.Plural(foods, prose.Say("%d food for the days after %s is bought there, not sent.", foods, p.Name),
			prose.Say("%d foods for the days after %s are bought there, not sent.", foods, p.Name)),
		prose.Say("A shop that is used and stands there sells them."),
		prose.Say("Ring the shop a week before: a small one may not have enough for a group. Read the labels there as you would at home: another make may hold other allergens."))
}

func shopClosed(p *trip.ResupplyPoint, s *trip.Shop, on units.Date) findings.Finding {
	remedy := prose.Say("Enter its opening days, or have the food sent.")
	if open, found := s.FirstOpen(on); found {
		remedy = prose.Say("It opens on %s. Have the food sent, or move the start.", open)
	}
	return finding(findings.MustFix, "shop-closed", p,
		prose.Say("%s at %s is closed on %s, when food is to be bought there.", s.Name, p.Name, on),
		prose.Say("The opening days and closed dates entered for the shop."), remedy)
}

// fuelFindings says how the leg's fuel gets there. Where it is neither sold nor
// taken it is carried ahead, which package cooking tells.
func (b *Box) fuelFindings(p *trip.ResupplyPoint) []findings.Finding {
	if len(b.Fuel) == 0 || b.FuelBoughtThere || !b.Posted {
		return nil
	}
	return []findings.Finding{finding(findings.LookAt, "fuel-by-post", p,
		prose.Plural(len(b.Fuel),
			prose.Say("%d fuel container is to be sent to %s.", len(b.Fuel), p.Name),
			prose.Say("%d fuel containers are to be sent to %s.", len(b.Fuel), p.Name)),
		prose.Say("Stove fuel, lighters and matches are dangerous goods and barred from ordinary post."),
		prose.Say("Ask a carrier who is licensed for them, or have fuel bought there. Never hide it in the box."))}
}
