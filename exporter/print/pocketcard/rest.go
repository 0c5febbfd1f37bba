package pocketcard

import (
	"sumpter/domain/carry"
	"sumpter/domain/prose"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
	"sumpter/exporter/lookup"
	"sumpter/exporter/print/press"
)

// comes tells whether a member is there on any day from a day on.
func comes(p *press.Press, id trip.MemberID, from int) bool {
	for day := from; day <= len(p.Trip.Days); day++ {
		if isThere(p, id, day) {
			return true
		}
	}
	return false
}

// isThere tells whether a member is there on a day, by the plan's loads.
func isThere(p *press.Press, id trip.MemberID, day int) bool {
	for i := range p.Plan.Carry.Members {
		if m := &p.Plan.Carry.Members[i]; m.Member == id && day >= 1 && day <= len(m.Days) {
			return m.Days[day-1].Present
		}
	}
	member := p.Member(id)
	return member != nil && member.Present(day)
}

func (c *card) there(day int) bool { return isThere(c.Press, c.member.ID, day) }

// standing says of what the card is, once the trip is under way.
func (c *card) standing() prose.Text {
	switch {
	case c.rest != nil:
		return prose.Say("From the morning of day %d on, as things stand after what happened on the way. Earlier cards no longer hold.", c.from)
	case c.Trip.Progress.UnderWay():
		return prose.Say("As planned for packing night: what changed on the way since is on the pocket cards for the rest of the way.")
	default:
		return prose.Text{}
	}
}

// gone tells whether a bag is not to be had on a day: eaten up, lost, left behind.
func (c *card) gone(item carry.Item, day int) bool {
	if c.rest == nil || item.Kind != carry.BagItem {
		return false
	}
	end := c.Trip.Progress.BagEnd(item.Key)
	return c.Bag(item.Key) == nil || end != nil && end.Day < day
}

// ahead leaves out who had a thing before the first day of the card.
func (c *card) ahead(carriers []lookup.Carrier) []lookup.Carrier {
	for len(carriers) > 1 && carriers[1].FromDay <= c.from {
		carriers = carriers[1:]
	}
	return carriers
}

// changed is what the member hands over and is given this morning, and what
// else is other than packed.
func (c *card) changed() {
	if c.rest == nil {
		return
	}
	width := c.flow.Width()
	var rows []press.Block
	rows = append(rows, c.handedOver(c.rest.HandOvers, c.from)...)
	for _, fact := range c.rest.Facts {
		if c.concerns(fact) {
			rows = append(rows, c.Text(c.body(), width, c.Tell(prose.Say("Day %d", fact.Day))+"  "+c.Tell(fact.What)).Below(2))
		}
	}
	if len(rows) > 0 {
		c.flow.Gap(4)
		c.section(c.Tell(prose.Say("Other than packed")), rows)
	}
}

// concerns tells whether a fact makes a difference to the member from now on.
func (c *card) concerns(fact trail.Fact) bool {
	if fact.Until < c.from {
		return false
	}
	if fact.For != 0 {
		return fact.For == c.member.ID
	}
	return fact.Group == 0 || fact.Group == c.member.Group
}
