// Package pocketcard prints a card for each member to fold twice and keep in a
// pocket: who is harmed by what and what to do then, what I carry, what we eat,
// who has what. There are cards for the trip as packed, and for the rest of it
// once something went otherwise.
package pocketcard

import (
	"slices"
	"strings"

	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/prose"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
	"sumpter/exporter/cautions"
	"sumpter/exporter/print/page"
	"sumpter/exporter/print/press"
	"sumpter/exporter/print/typeset"
)

// scales are how large the text may be, largest first: smaller text saves a
// sheet for a few lines that stand over.
var scales = []press.Points{1, 0.95, 0.9}

// Draw draws the cards of members, each on sheets of its own.
func Draw(p *press.Press, members []trip.MemberID) []page.Page {
	return cards(p, members, nil)
}

// DrawRest draws the cards for the rest of a trip, of those who are there on
// any day of it. The press is that of the plan of the rest.
func DrawRest(p *press.Press, members []trip.MemberID, rest *Rest) []page.Page {
	return cards(p, members, rest)
}

// Rest is what the cards for the rest of a trip tell beside its plan.
type Rest struct {
	From      int              // first day that is ahead
	HandOvers []trail.HandOver // on its morning
	Facts     []trail.Fact     // what went otherwise than packed
}

func cards(p *press.Press, members []trip.MemberID, rest *Rest) []page.Page {
	var pages []page.Page
	for _, id := range members {
		member := p.Member(id)
		if member == nil || rest != nil && !comes(p, id, rest.From) {
			continue
		}
		var best []page.Page
		for _, scale := range scales {
			if sheets := draw(p, member, scale, rest); best == nil || len(sheets) < len(best) {
				best = sheets
			}
			if len(best) == 1 {
				break
			}
		}
		pages = append(pages, best...)
	}
	return pages
}

func draw(p *press.Press, member *trip.Member, scale press.Points, rest *Rest) []page.Page {
	c := &card{Press: p, member: member, scale: scale, from: 1}
	if rest != nil {
		c.from, c.rest = rest.From, rest
	}
	c.flow = p.Flow(press.Layout{Title: member.Name, Panels: true})
	c.front()
	c.changed()
	c.carried()
	c.shared()
	c.eaten()
	return c.flow.Finish()
}

// card is the card of one member.
type card struct {
	*press.Press
	member *trip.Member
	scale  press.Points
	from   int   // first day that is ahead
	rest   *Rest // nil: the trip as packed
	flow   *press.Flow
}

func (c *card) body() press.Style  { return press.Style{Size: 7.5 * c.scale, Ink: c.Inks.Ink} }
func (c *card) small() press.Style { return press.Style{Size: 7 * c.scale, Ink: c.Inks.Ink} }
func (c *card) bold() press.Style {
	return press.Style{Size: 7.5 * c.scale, Bold: true, Ink: c.Inks.Ink}
}
func (c *card) quiet() press.Style { return press.Style{Size: 7 * c.scale, Ink: c.Inks.Quiet} }

// title begins a part of the card.
func (c *card) title(text string) press.Block {
	width := c.flow.Width()
	return c.Text(press.Style{Size: 10.5, Bold: true, Ink: c.Inks.Ink}, width, text).Under(1, width, 0.8, c.Inks.Accent).Below(3)
}

// section draws rows under a title.
func (c *card) section(title string, rows []press.Block) {
	c.flow.Section(func(continued bool) press.Block {
		if continued {
			return c.title(c.Tell(prose.Say("%s, continued", title)))
		}
		return c.title(title)
	}, rows)
}

// front is who it is, and what everybody must know when something goes wrong.
func (c *card) front() {
	width := c.flow.Width()
	c.flow.Add(c.OneLine(press.Style{Size: 20, Bold: true, Ink: c.Inks.Ink}, width, c.member.Name))
	c.flow.Add(c.Text(c.quiet(), width, c.TripTitle()))
	c.flow.Add(c.Text(c.body(), width, c.present()).Below(4))
	if note := c.standing(); !note.IsZero() {
		c.flow.Add(c.Text(c.bold(), width, c.Tell(note)).Below(4))
	}
	if mine := c.health(c.member, true); mine != nil {
		c.flow.Keep(2, mine...)
		c.flow.Gap(6)
	}
	var others []press.Block
	for i := range c.Trip.Crew {
		if other := &c.Trip.Crew[i]; other != c.member {
			if rows := c.health(other, false); rows != nil {
				others = append(others, press.Stack(1, rows...).Below(4))
			}
		}
	}
	if len(others) == 0 && c.health(c.member, true) == nil {
		others = append(others, c.Text(c.body(), width, c.Tell(prose.Say("Nobody of the group has entered an allergy. Ask again before the first meal."))).Below(4))
	}
	if len(others) > 0 {
		c.section(c.Tell(prose.Say("Allergies in the group")), others)
	}
	c.flow.Gap(4)
	c.emergency()
}

// present says when the member is there, and with whom they cook.
func (c *card) present() string {
	first, last := max(c.from, c.member.FirstDay), c.member.LastDay
	if last == 0 {
		last = len(c.Trip.Days)
	}
	text := c.Days(first, last)
	if date := c.Trip.DateOf(first); date.IsSet() {
		text += ", " + c.Tell(prose.Say("%s to %s", c.ShortDate(date), c.ShortDate(c.Trip.DateOf(last))))
	}
	if group := c.GroupName(c.member.Group); group != "" {
		text += " · " + c.Tell(prose.Say("cooks with %s", group))
	}
	return text
}

// health is what harms a member and their medicine; nothing if there is none.
func (c *card) health(m *trip.Member, own bool) []press.Block {
	if len(m.Allergies) == 0 && m.Medicine == "" && (!own || len(m.Diets) == 0) {
		return nil
	}
	width := c.flow.Width()
	var severe, mild []trip.Allergen
	for _, allergy := range m.Allergies {
		if allergy.Severe {
			severe = append(severe, allergy.Allergen)
		} else {
			mild = append(mild, allergy.Allergen)
		}
	}
	style := press.Style{Size: 8, Ink: c.Inks.Danger}
	var blocks []press.Block
	if !own {
		blocks = append(blocks, c.Text(c.bold(), width, m.Name))
	}
	if len(severe) > 0 {
		blocks = append(blocks, c.Banner(style, c.Inks.Danger, 3, width,
			typeset.Bold(c.Tell(prose.Say("ALLERGIC, TRACES HARM: %s", prose.List(", ", severe))))))
	}
	if len(mild) > 0 {
		blocks = append(blocks, c.Framed(style, false, 3, width, typeset.Bold(c.Tell(prose.Say("allergic: %s", prose.List(", ", mild))))))
	}
	if m.Medicine != "" {
		blocks = append(blocks, c.Spans(c.body(), width, typeset.Bold(c.Tell(prose.Say("Medicine"))+": "), typeset.Plain(m.Medicine)))
	}
	if own && len(m.Diets) > 0 {
		blocks = append(blocks, c.Text(c.body(), width, c.Tell(prose.Say("eats: %s", prose.List(", ", m.Diets)))))
	}
	return blocks
}

func (c *card) emergency() {
	width := c.flow.Width()
	topic := cautions.Emergency()
	var rows []press.Block
	for _, rule := range topic.Rules {
		rows = append(rows, c.Spans(c.small(), width,
			typeset.Bold(c.Tell(rule.Short)+". "), typeset.Plain(c.Tell(rule.Text))).Below(2))
	}
	c.section(c.Tell(topic.Title), rows)
}

// carried is what this member has in the pack, stretch by stretch.
func (c *card) carried() {
	title := c.Tell(prose.Say("What I carry"))
	var rows []press.Block
	for i := range c.Plan.Carry.Stages {
		stage := &c.Plan.Carry.Stages[i]
		if stage.LastDay < c.from {
			continue
		}
		var own []carry.Item
		for _, item := range stage.Items {
			if item.Carrier == c.member.ID && !c.gone(item, stage.FirstDay) {
				own = append(own, item)
			}
		}
		rows = append(rows, c.passedOn(stage)...)
		if len(own) > 0 {
			rows = append(rows, c.stage(stage, own)...)
		}
		rows = append(rows, c.water(stage)...)
	}
	if len(rows) == 0 {
		rows = append(rows, c.Text(c.body(), c.flow.Width(), c.Tell(prose.Say("Nothing of the shared food and gear."))))
	}
	c.flow.Gap(4)
	c.section(title, rows)
}

// stage is the things of one stretch of days: gear and fuel, then the bags,
// whose codes begin with their day.
func (c *card) stage(stage *carry.Stage, own []carry.Item) []press.Block {
	width := c.flow.Width()
	head := c.Days(stage.FirstDay, stage.LastDay)
	if day := c.morning(stage.FirstDay); day != nil {
		head += "  ·  " + c.Tell(prose.Say("in the morning %s, food %s", c.Load(day.Load), c.Load(day.Food)))
	}
	first := []press.Block{c.Text(c.bold(), width-6, head).On(c.Inks.Wash, 3, 1.5, width).Below(2)}
	var things []string
	var rows []press.Block
	for _, item := range own {
		bag := c.Bag(item.Key)
		if item.Kind != carry.BagItem || bag == nil {
			things = append(things, c.Thing(item))
			continue
		}
		rows = append(rows, press.Beside(
			press.Placed{Block: c.Tick(6.5)},
			press.Placed{X: 11, Block: c.Spans(c.body(), width-11, typeset.Bold(bag.Code), typeset.Plain("  "+c.what(bag)))},
		))
	}
	if len(things) > 0 {
		first = append(first, c.Text(c.body(), width, strings.Join(things, " · ")).Below(2))
	}
	if len(rows) == 0 {
		return []press.Block{press.Stack(0, first...).Below(5)}
	}
	rows[0] = press.Stack(0, append(first, rows[0])...) // the head never stands alone
	rows[len(rows)-1] = rows[len(rows)-1].Below(5)
	return rows
}

// what says what a bag is for, and until when where it serves several days.
func (c *card) what(bag *bags.Bag) string {
	text := c.When(bag) + ", " + c.DishName(bag)
	if bag.LastDay > bag.Day {
		text += ", " + c.Days(bag.Day, bag.LastDay)
	}
	return text
}

// morning is the member's load on a day, or nil.
func (c *card) morning(day int) *carry.Day {
	for i := range c.Plan.Carry.Members {
		if m := &c.Plan.Carry.Members[i]; m.Member == c.member.ID && day >= 1 && day <= len(m.Days) && m.Days[day-1].Present {
			return &m.Days[day-1]
		}
	}
	return nil
}

// eaten is what the member's cook group eats, and who has its bags.
func (c *card) eaten() {
	var rows []press.Block
	for day := 1; day <= len(c.Trip.Days); day++ {
		if day >= c.from && c.there(day) {
			rows = append(rows, c.day(day)...)
		}
	}
	if len(rows) == 0 {
		rows = append(rows, c.Text(c.body(), c.flow.Width(), c.Tell(prose.Say("There are no days yet."))))
	}
	c.flow.Gap(6)
	c.section(c.Tell(prose.Say("What we eat")), rows)
}

// day is a day, a row for each meal; the first has the head of the day.
func (c *card) day(day int) []press.Block {
	width := c.flow.Width()
	d := &c.Trip.Days[day-1]
	walk := []string{d.Name}
	if d.Distance > 0 {
		walk = append(walk, c.Tell(prose.Say("%s, %s up", prose.Distance(d.Distance), prose.Height(d.Ascent))))
	}
	head := c.Spans(c.body(), width, typeset.Bold(c.Day(day)), typeset.Plain("  "+strings.Join(slices.DeleteFunc(walk, func(s string) bool { return s == "" }), " · ")))
	var rows []press.Block
	for _, meal := range trip.Meals() {
		dishes := c.Dishes(day, meal, c.member.Group)
		if dishes == "–" {
			continue
		}
		rows = append(rows, c.Spans(c.small(), width-6, typeset.Bold(c.MealName(meal)+" "), typeset.Plain(dishes+c.where(day, meal))).Moved(6))
	}
	if len(rows) == 0 {
		return []press.Block{head.Under(1.5, width, 0.3, c.Inks.Line)}
	}
	rows[0] = press.Stack(0, head, rows[0])
	last := &rows[len(rows)-1]
	*last = last.Under(1.5, width, 0.3, c.Inks.Line)
	return rows
}

// where names the packs that have the bags of a meal, pack by pack, without
// those that only somebody else eats from.
func (c *card) where(day int, meal trip.Meal) string {
	var packs []trip.MemberID // 0: nobody carries it yet
	codes := map[trip.MemberID][]string{}
	for _, bag := range c.Slot(day, meal, c.member.Group) {
		if only := bag.OnlyEater(); only != 0 && only != c.member.ID {
			continue
		}
		pack := c.carrierOn(bag.Key, day)
		if codes[pack] == nil {
			packs = append(packs, pack)
		}
		codes[pack] = append(codes[pack], bag.Code)
	}
	var parts []string
	for _, pack := range packs {
		part := strings.Join(codes[pack], " ")
		if pack != 0 {
			part = c.MemberName(pack) + " " + part
		}
		parts = append(parts, part)
	}
	if len(parts) == 0 {
		return ""
	}
	return " (" + strings.Join(parts, ", ") + ")"
}

// carrierOn gives who carries a bag on a day, or 0.
func (c *card) carrierOn(bag string, day int) trip.MemberID {
	var last trip.MemberID
	for i, carrier := range c.Carriers(bag) {
		if i == 0 || carrier.FromDay <= day {
			last = carrier.Member
		}
	}
	return last
}

// shared is who has the stoves, the pots and everything else of the group.
func (c *card) shared() {
	var spans []typeset.Span
	for i := range c.Trip.Gear {
		gear := &c.Trip.Gear[i]
		var parts []string
		for _, carrier := range c.ahead(c.CarriersOf(carry.GearItem, c.GearKey(gear))) {
			if len(parts) == 0 {
				parts = append(parts, c.MemberName(carrier.Member))
				continue
			}
			parts = append(parts, c.Tell(prose.Say("from day %d %s", carrier.FromDay, c.MemberName(carrier.Member))))
		}
		if len(parts) == 0 {
			continue
		}
		if len(spans) > 0 {
			spans = append(spans, typeset.Plain(" · "))
		}
		spans = append(spans, typeset.Bold(gear.Name+": "), typeset.Plain(strings.Join(parts, ", ")))
	}
	if len(spans) > 0 {
		c.flow.Gap(6)
		style := c.small()
		var rows []press.Block
		for _, line := range c.Set.Paragraph(style.Size, c.flow.Width(), spans...) {
			rows = append(rows, press.Lines(style, []typeset.Line{line}))
		}
		c.section(c.Tell(prose.Say("Who has what")), rows)
	}
}
