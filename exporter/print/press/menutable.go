package press

import (
	"slices"
	"strings"

	"sumpter/domain/menu"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// MenuTable draws what is eaten on each day, for one cook group or for all (0).
// Where groups eat different things, each is named.
func MenuTable(p *Press, flow *Flow, days func(day int) bool, group trip.GroupID) {
	columns := []Column{{Head: p.Tell(prose.Say("Day")), Width: 54}}
	meals := trip.Meals()
	for _, meal := range meals {
		columns = append(columns, Column{Head: p.MealName(meal)})
	}
	width := flow.Width()
	table := p.Table(width, 2, columns...)
	text := Style{Size: 8.5, Ink: p.Inks.Ink}
	var rows []Block
	for day := range len(p.Trip.Days) {
		if !days(day + 1) {
			continue
		}
		when := p.Tell(prose.Say("%d", day+1))
		if date := p.ShortDate(p.Trip.DateOf(day + 1)); date != "" {
			when += "\n" + date
		}
		cells := []Drawing{p.Cell(Style{Size: 8.5, Bold: true, Ink: p.Inks.Ink}, when)}
		for _, meal := range meals {
			cells = append(cells, p.Cell(text, p.Dishes(day+1, meal, group)))
		}
		rows = append(rows, table.Row(cells...))
	}
	flow.Section(func(continued bool) Block {
		title := p.Tell(prose.Say("What we eat"))
		if continued {
			title = p.Tell(prose.Say("%s, continued", title))
		}
		return Stack(3, p.Text(Style{Size: 13, Bold: true, Ink: p.Inks.Ink}, width, title), table.Head())
	}, rows)
}

// Dishes names what a cook group, or each of them (0), eats at a meal.
func (p *Press) Dishes(day int, meal trip.Meal, group trip.GroupID) string {
	var names, dishes []string
	for i := range p.Plan.Menu.Slots {
		slot := &p.Plan.Menu.Slots[i]
		if slot.Day != day || slot.Meal != meal || group != 0 && slot.Group != group {
			continue
		}
		names, dishes = append(names, p.GroupName(slot.Group)), append(dishes, p.dishesOf(slot))
	}
	if len(dishes) == 0 {
		return "–"
	}
	if len(slices.Compact(slices.Clone(dishes))) == 1 {
		return dishes[0]
	}
	var lines []string
	for i := range dishes {
		lines = append(lines, p.Tell(prose.Say("%s: %s", names[i], dishes[i])))
	}
	return strings.Join(lines, "\n")
}

func (p *Press) dishesOf(slot *menu.Slot) string {
	var list []string
	for _, dish := range slot.Dishes {
		if recipe := p.Recipe(dish.Recipe); recipe != nil {
			list = append(list, recipe.Name)
		}
	}
	if len(list) == 0 {
		return p.Tell(prose.Say("nothing chosen yet"))
	}
	return strings.Join(list, ", ")
}
