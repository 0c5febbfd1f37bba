package menu

import (
	"fyne.io/fyne/v2/lang"

	"sumpter/domain/findings"
	menus "sumpter/domain/menu"
	"sumpter/domain/trip"
)

// slot is one meal of one cook group on one day.
type slot struct {
	day   int
	meal  trip.Meal
	group trip.GroupID
}

func slotOfCell(c *trip.Cell) slot  { return slot{c.Day, c.Meal, c.Group} }
func slotOfMenu(s *menus.Slot) slot { return slot{s.Day, s.Meal, s.Group} }
func slotOfPlace(p findings.Place) slot {
	return slot{p.Day, p.Meal, p.Group}
}

// words names a slot in the middle of a sentence: "dinner of day 3"; with the
// group where there are several.
func (k slot) words(t *trip.Trip) string {
	data := map[string]any{"Meal": lang.L(string(k.meal)), "Day": k.day}
	if g := t.Group(k.group); g != nil && len(t.Groups) > 1 {
		data["Group"] = g.Name
		return lang.X("menu-slot-group", "{{.Meal}} of day {{.Day}} ({{.Group}})", data)
	}
	return lang.X("menu-slot", "{{.Meal}} of day {{.Day}}", data)
}

// mealTitle is a meal at the head of a line.
func mealTitle(meal trip.Meal) string {
	switch meal {
	case trip.Breakfast:
		return lang.L("Breakfast")
	case trip.Lunch:
		return lang.L("Lunch")
	case trip.Dinner:
		return lang.L("Dinner")
	default:
		return lang.L("Snacks")
	}
}
