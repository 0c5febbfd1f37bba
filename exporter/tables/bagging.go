package tables

import (
	"fmt"
	"strings"

	"sumpter/domain/bags"
	"sumpter/domain/cooking"
	"sumpter/domain/trip"
)

func bagsTable(x *index) Table {
	rows := make([]*bags.Bag, len(x.plan.Bags.Bags))
	for i := range rows {
		rows[i] = &x.plan.Bags.Bags[i]
	}
	return groupBy(fill(Table{
		Name: "bags", Title: "Bagging list",
		About: "A row a bag, in the order they are eaten. Put an x in the first column when it is packed, sealed and labelled.",
		Empty: "There are no bags yet: nothing on the menu has been portioned.",
	}, []field[*bags.Bag]{
		{Column{Key: "done", Heading: "Done", Role: Tick, Width: 6}, func(*bags.Bag) Value { return open() }},
		{Column{Key: "code", Heading: "Label", Role: Code, Width: 9}, func(b *bags.Bag) Value { return words(b.Code) }},
		{Column{Key: "day", Heading: "Day", Width: 4}, func(b *bags.Bag) Value { return count(b.Day) }},
		{Column{Key: "last_day", Heading: "To day", Width: 4}, func(b *bags.Bag) Value { return count(b.LastDay) }},
		{Column{Key: "meal", Heading: "Meal", Width: 9}, func(b *bags.Bag) Value { return words(bagMeal(b)) }},
		{Column{Key: "for", Heading: "For", Width: 11, Wrap: true}, func(b *bags.Bag) Value { return words(x.bagEaters(b)) }},
		{Column{Key: "recipe", Heading: "Dish", Width: 17, Wrap: true}, func(b *bags.Bag) Value { return words(x.bagDish(b)) }},
		{Column{Key: "contents", Heading: "Contents", Width: 38, Wrap: true}, func(b *bags.Bag) Value { return words(x.bagContents(b)) }},
		{Column{Key: "water", Heading: "Water to add (" + x.waterUnit() + ")", Decimals: x.waterDecimals(), Width: 8}, func(b *bags.Bag) Value { return x.water(b.Water) }},
		{Column{Key: "minutes", Heading: "Flame (min)", Width: 7}, x.flameOf},
		{Column{Key: "soak", Heading: "Soak (min)", Width: 6}, func(b *bags.Bag) Value { return figure(float64(b.Soak)) }},
		{Column{Key: "allergens", Heading: "Allergens", Role: Danger, Width: 22, Wrap: true}, func(b *bags.Bag) Value { return words(allergenWords(b.Allergens)) }},
		{Column{Key: "carrier", Heading: "Carried by", Width: 10, Wrap: true}, func(b *bags.Bag) Value { return words(x.carrierOf(b.Key)) }},
		{Column{Key: "box", Heading: "Box", Width: 11, Wrap: true}, func(b *bags.Bag) Value { return words(x.boxOf(b.Key)) }},
		{Column{Key: "type", Heading: "Bag", Width: 9, Wrap: true}, func(b *bags.Bag) Value { return words(bagType(b)) }},
		{Column{Key: "mass", Heading: "With tare (" + x.foodUnit() + ")", Decimals: x.foodDecimals(), Width: 8}, func(b *bags.Bag) Value { return x.food(b.Mass()) }},
	}, rows), rows, func(b *bags.Bag) int { return b.Day })
}

// flameOf gives the minutes after the boil of what goes into a pot.
func (x *index) flameOf(b *bags.Bag) Value {
	recipe, meal := x.Recipe(b.Recipe), x.Meal(b.Day, b.Meal, b.Group)
	switch {
	case b.Minutes > 0:
		return figure(float64(b.Minutes))
	case b.Place == trip.InPot && recipe != nil && meal != nil && !meal.Cold && cooking.Heated(recipe, b.Meal):
		return words("boil")
	default:
		return words("none")
	}
}

func (m measure) waterDecimals() int {
	if m.us() {
		return 2
	}
	return 0
}

// bagMeal is the meal a bag is for, or that it serves several.
func bagMeal(b *bags.Bag) string {
	if b.Kind == bags.ReserveBag {
		return "reserve"
	}
	if b.Kind != bags.SnackBag && len(b.Uses) > 1 {
		return "store"
	}
	return mealName(b.Meal)
}

func (x *index) bagEaters(b *bags.Bag) string {
	if only := b.OnlyEater(); only != 0 {
		return x.member(only) + " only"
	}
	return fmt.Sprintf("%s, %d %s", x.group(b.Group), b.Eaters, plural(b.Eaters, "eater", "eaters"))
}

func (x *index) bagDish(b *bags.Bag) string {
	var text string
	switch {
	case b.Kind == bags.ReserveBag:
		text = "emergency reserve, only in need"
	case b.Kind == bags.SnackBag && b.Reserve:
		text = "snacks of " + dayRange(b.Day, b.LastDay) + ", reserve: not before there is need"
	case b.Kind == bags.SnackBag:
		text = "snacks of " + dayRange(b.Day, b.LastDay)
	case len(b.Uses) > 1:
		return x.storeName(b)
	default:
		text = x.recipe(b.Recipe)
	}
	if b.Place == trip.AtBowl && (b.Meal == trip.Breakfast || b.Meal == trip.Dinner) {
		text += ", onto the bowls"
	}
	if b.Parts > 1 {
		text += fmt.Sprintf(" (bag %d of %d)", b.Part, b.Parts)
	}
	return text
}

// storeName is what is taken from at several meals.
func (x *index) storeName(b *bags.Bag) string {
	text := fmt.Sprintf("for %d dishes of %s", len(b.Uses), dayRange(b.Day, b.LastDay))
	if b.Recipe != 0 {
		text = x.recipe(b.Recipe) + ", " + dayRange(b.Day, b.LastDay)
	}
	if b.Parts > 1 {
		text += fmt.Sprintf(" (bag %d of %d)", b.Part, b.Parts)
	}
	return text
}

func (x *index) bagContents(b *bags.Bag) string {
	lines := make([]string, len(b.Contents))
	for i, content := range b.Contents {
		lines[i] = x.foodName(content.Food) + " " + x.amount(content.Food, content.Mass)
	}
	return strings.Join(lines, "; ")
}

func bagType(b *bags.Bag) string {
	text := orNone(b.Type, Unknown)
	if b.Double {
		text = "double " + text
	}
	var care []string
	if b.Crushable {
		care = append(care, "crushes")
	}
	if b.Melts {
		care = append(care, "melts")
	}
	if len(care) > 0 {
		text += "\n" + strings.Join(care, ", ")
	}
	return text
}

// allergenWords names every allergen that is or may be in a bag in full, what
// is contained first; unknown is said, since it is not safe.
func allergenWords(list []bags.Allergen) string {
	var parts []string
	for _, state := range []struct {
		presence trip.Presence
		lead     string
	}{
		{trip.Contains, "CONTAINS "}, {trip.MayContain, "may contain "}, {trip.NotKnown, "NOT KNOWN: "},
	} {
		var names []string
		for _, allergen := range list {
			if allergen.Presence == state.presence {
				names = append(names, string(allergen.Allergen))
			}
		}
		if len(names) > 0 {
			parts = append(parts, state.lead+strings.Join(names, ", "))
		}
	}
	return orNone(strings.Join(parts, "\n"), "none of the declared ones")
}
