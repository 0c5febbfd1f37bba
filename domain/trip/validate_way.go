package trip

import (
	"fmt"

	"sumpter/domain/prose"
)

// theWay checks what was noted on the way.
func (c *checker) theWay(p *Progress) {
	if c.size("progress.crew_changes", "changes of the crew", len(p.CrewChanges), 0, MaxMembers*MaxDays) {
		for i := range p.CrewChanges {
			c.at("progress.crew_changes", i, 0, "")
			c.crewChange(&p.CrewChanges[i])
		}
		c.where = Where{List: "progress.crew_changes"}
		distinct(c, "", "change", p.CrewChanges, func(change CrewChange) string {
			return fmt.Sprintf("member %d on day %d", change.Member, change.Day)
		})
	}
	if c.size("progress.replans", "mornings of decision", len(p.Replans), 0, MaxDays) {
		for i := range p.Replans {
			c.at("progress.replans", i, 0, "")
			c.replan(&p.Replans[i])
		}
		c.where = Where{List: "progress.replans"}
		distinct(c, "", "day", p.Replans, func(r Replan) int { return r.Day })
	}
}

func (c *checker) replan(r *Replan) {
	c.dayOf(r.Day, prose.Say("Enter the day on whose morning it was decided."))
	if c.count("moves", "moved dishes", len(r.Moves), 0, MaxNotedBags) {
		distinct(c, "moves", "dish", r.Moves, func(m DishMove) string { return m.Dish })
		for i := range r.Moves {
			c.enter("moves", i)
			c.dishMove(&r.Moves[i])
			c.leave()
		}
	}
	if c.count("hand_overs", "hand-overs", len(r.HandOvers), 0, MaxNotedBags) {
		distinct(c, "hand_overs", "hand-over of", r.HandOvers, HandOver.thing)
		for i := range r.HandOvers {
			c.enter("hand_overs", i)
			c.handOver(&r.HandOvers[i])
			c.leave()
		}
	}
	if c.count("given", "bags given away", len(r.Given), 0, MaxNotedBags) {
		distinct(c, "given", "bag", r.Given, func(g GivenBag) string { return g.Bag })
		for i := range r.Given {
			c.enter("given", i)
			c.bagKey(r.Given[i].Bag)
			if !c.members[r.Given[i].To] {
				c.missing("to", "member", int64(r.Given[i].To), "one of the crew")
			}
			c.leave()
		}
	}
}

// thing names what changes hands.
func (h HandOver) thing() string {
	switch {
	case h.Bag != "":
		return h.Bag
	case h.Gear != 0:
		return fmt.Sprintf("gear %d", h.Gear)
	default:
		return h.Fuel
	}
}

func (c *checker) crewChange(change *CrewChange) {
	if !c.members[change.Member] {
		c.missing("member", "member", int64(change.Member), "one of the crew, or take the line out")
	}
	c.dayOf(change.Day, prose.Say("Enter the day on whose morning it holds first."))
}

func (c *checker) dishMove(move *DishMove) {
	if c.line("dish", "key of the dish", move.Dish) && isBlank(move.Dish) {
		c.add("dish", prose.Say("no dish is named"), prose.Say("the key of a dish, as the plan shows it"), prose.Say("Name the dish, or take the line out."))
	}
	if move.Day == 0 {
		if move.Meal != "" || move.Group != 0 {
			c.add("day", prose.Say("a meal is named without a day"), prose.Say("a day, or no meal and group"), prose.Say("Enter the day, or leave the rest empty."))
		}
		return
	}
	c.dayOf(move.Day, prose.Say("Enter the day on which it is eaten, or 0 if it is carried on."))
	word(c, "meal", "meal", move.Meal, Meals()...)
	if !c.groups[move.Group] {
		c.missing("group", "cook group", int64(move.Group), "one of the cook groups")
	}
}

func (c *checker) handOver(h *HandOver) {
	c.handedThing(h)
	if !c.members[h.To] {
		c.missing("to", "member", int64(h.To), "one of the crew")
	}
}

// handedThing checks what changes hands, and who had it.
func (c *checker) handedThing(h *HandOver) {
	if countOf(h.Bag != "", h.Gear != 0, h.Fuel != "") != 1 {
		c.add("", prose.Say("the hand-over names not exactly one of bag, gear and fuel container"), prose.Say("one of the three"), prose.Say("Keep one of them, or take the line out."))
	}
	c.line("bag", "key of the bag", h.Bag)
	c.line("fuel_container", "key of the container", h.Fuel)
	if h.Gear != 0 && c.trip.GearItem(h.Gear) == nil {
		c.missing("gear", "piece of gear", int64(h.Gear), "one of the gear, or take the line out")
	}
	if h.From != 0 && !c.members[h.From] {
		c.missing("from", "member", int64(h.From), "one of the crew, or nobody")
	}
}
