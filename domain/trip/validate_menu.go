package trip

import (
	"sumpter/domain/prose"
)

type slotKey struct {
	day   int
	meal  Meal
	group GroupID
}

func (c *checker) menu() {
	if len(c.trip.Menu) > MaxCells {
		return
	}
	taken := make(map[slotKey]int, len(c.trip.Menu))
	eaters := c.groupSizes()
	servings := 0
	for i := range c.trip.Menu {
		cell := &c.trip.Menu[i]
		c.where = Where{List: "menu", Index: i + 1}
		key := slotKey{cell.Day, cell.Meal, cell.Group}
		if first, twice := taken[key]; twice {
			c.add("", prose.Say("%s of day %d is decided twice for this cook group, first by cell %d", shown(string(cell.Meal)), cell.Day, first), prose.Say("one cell for each day, meal and cook group"), prose.Say("Put the dishes into one cell."))
		} else {
			taken[key] = i + 1
		}
		c.slot(cell)
		servings += c.dishes(cell, eaters[cell.Group])
	}
	if servings > MaxServings {
		c.where = Where{List: "menu"}
		c.add("", prose.Say("the menu has %d servings", servings), prose.Say("at most %d", MaxServings), prose.Say("Plan the trip in parts."))
	}
}

func (c *checker) slot(cell *Cell) {
	if cell.Day < 1 || cell.Day > len(c.trip.Days) {
		c.add("day", prose.Say("the day is %d", cell.Day), prose.Say("a day from 1 to %d", len(c.trip.Days)), prose.Say("Move the cell to a day of the trip, or take it out."))
	}
	word(c, "meal", "meal", cell.Meal, Meals()...)
	if !c.groups[cell.Group] {
		c.missing("group", "cook group", int64(cell.Group), "one of the cook groups")
	}
}

// dishes checks what is served and gives how many servings it can be at most.
func (c *checker) dishes(cell *Cell, groupSize int) int {
	if !c.count("dishes", "dishes", len(cell.Dishes), 0, maxDishes) {
		return 0
	}
	distinct(c, "dishes", "recipe", cell.Dishes, func(d Dish) RecipeID { return d.Recipe })
	servings := 0
	for i := range cell.Dishes {
		dish := &cell.Dishes[i]
		c.enter("dishes", i)
		if !c.recipes[dish.Recipe] {
			c.missing("recipe", "recipe", int64(dish.Recipe), "one of the recipes, or take the dish out")
		}
		c.servedTo(dish)
		c.leave()
		servings += groupSize
		if len(dish.For) > 0 {
			servings += min(len(dish.For), MaxMembers) - groupSize
		}
	}
	return servings
}

func (c *checker) servedTo(dish *Dish) {
	if c.count("for", "eaters", len(dish.For), 0, MaxMembers) {
		distinct(c, "for", "eater", dish.For, func(id MemberID) MemberID { return id })
		for _, member := range dish.For {
			if !c.members[member] {
				c.missing("for", "member", int64(member), "one of the crew")
			}
		}
	}
	if !c.count("accepted", "accepted dangers", len(dish.Accepted), 0, MaxMembers) {
		return
	}
	distinct(c, "accepted", "accepted danger", dish.Accepted, func(a Acceptance) [2]int64 { return [2]int64{int64(a.Member), int64(a.Food)} })
	for i, accepted := range dish.Accepted {
		c.enter("accepted", i)
		if !c.members[accepted.Member] {
			c.missing("member", "member", int64(accepted.Member), "one of the crew")
		}
		if !c.foods[accepted.Food] {
			c.missing("food", "food", int64(accepted.Food), "one of the foods")
		}
		c.notes("reason", "reason", accepted.Reason)
		c.leave()
	}
}

func (c *checker) groupSizes() map[GroupID]int {
	sizes := make(map[GroupID]int, len(c.trip.Groups))
	for i := range c.trip.Crew {
		sizes[c.trip.Crew[i].Group]++
	}
	return sizes
}
