package pocketcard

import (
	"strings"

	"sumpter/domain/carry"
	"sumpter/domain/prose"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
	"sumpter/exporter/print/press"
)

// handedOver tells to whom the member gives what before a day, and from whom
// they get what.
func (c *card) handedOver(overs []trail.HandOver, day int) []press.Block {
	gives, gets := map[trip.MemberID][]string{}, map[trip.MemberID][]string{}
	for _, over := range overs {
		if over.From == c.member.ID {
			gives[over.To] = append(gives[over.To], c.named(over.Item))
		}
		if over.To == c.member.ID {
			gets[over.From] = append(gets[over.From], c.named(over.Item))
		}
	}
	var rows []press.Block
	tell := func(text prose.Text) { rows = append(rows, c.Text(c.body(), c.flow.Width(), c.Tell(text)).Below(2)) }
	for i := range c.Trip.Crew {
		id := c.Trip.Crew[i].ID
		switch things := gives[id]; {
		case len(things) > 0 && c.miss(c.member.ID, id, day):
			tell(prose.Say("I leave for %s, who comes when I am gone, with somebody who stays: %s", c.MemberName(id), strings.Join(things, ", ")))
		case len(things) > 0:
			tell(prose.Say("I give %s: %s", c.MemberName(id), strings.Join(things, ", ")))
		}
		switch things := gets[id]; {
		case len(things) > 0 && c.miss(id, c.member.ID, day):
			tell(prose.Say("%s left this for me with somebody who stays, I ask who has it: %s", c.MemberName(id), strings.Join(things, ", ")))
		case len(things) > 0:
			tell(prose.Say("I get from %s: %s", c.MemberName(id), strings.Join(things, ", ")))
		}
	}
	return rows
}

// miss tells whether a giver has gone before the taker comes, so that they do not
// meet to hand over anything.
func (c *card) miss(giver, taker trip.MemberID, day int) bool {
	return day > 1 && !isThere(c.Press, giver, day) && !isThere(c.Press, taker, day-1)
}

// passedOn is what changes packs when a stretch of days begins, under a head of
// its own: the evening before for who has gone by then.
func (c *card) passedOn(stage *carry.Stage) []press.Block {
	if stage.FirstDay <= c.from {
		return nil // what is handed over on the first morning of a rest stands at the top
	}
	var overs []trail.HandOver
	for _, item := range stage.HandedOver() {
		if !c.gone(item, stage.FirstDay) {
			overs = append(overs, trail.HandOver{Item: item, From: item.From, To: item.Carrier})
		}
	}
	rows := c.handedOver(overs, stage.FirstDay)
	if len(rows) == 0 {
		return nil
	}
	head := prose.Say("Before I start on day %d", stage.FirstDay)
	if !c.there(stage.FirstDay) {
		head = prose.Say("Before I leave, after day %d", stage.FirstDay-1)
	}
	width := c.flow.Width()
	rows[0] = press.Stack(0, c.Text(c.bold(), width-6, c.Tell(head)).On(c.Inks.Wash, 3, 1.5, width).Below(2), rows[0])
	rows[len(rows)-1] = rows[len(rows)-1].Below(3)
	return rows
}

// named is how the group calls a thing: a bag by its code.
func (c *card) named(item carry.Item) string {
	if bag := c.Bag(item.Key); item.Kind == carry.BagItem && bag != nil {
		return bag.Code
	}
	return c.Thing(item)
}
