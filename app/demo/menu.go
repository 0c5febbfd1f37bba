package demo

import "sumpter/domain/trip"

// day is what is eaten on one day, by name; both groups eat the same, and the
// swaps of the recipes do the rest.
type day struct{ breakfast, lunch, dinner, snack []string }

const coffeeTime = "Milky coffee"

func menuByName() []day {
	return []day{
		{
			lunch:  []string{"Alpine cheese, crispbread and carrots"},
			dinner: []string{"Tomato pasta with soya mince"},
			snack:  []string{"Orchard mix"},
		},
		{
			breakfast: []string{"Seed and cranberry muesli", coffeeTime},
			lunch:     []string{"Tuna and sun-dried tomato wraps"},
			dinner:    []string{"Cold noodle salad with almond dressing", "Lemonade"},
			snack:     []string{"Salted cashew and raisin mix"},
		},
		{
			breakfast: []string{"Apple and cinnamon porridge", coffeeTime},
			lunch:     []string{"Tahini crackers with sun-dried tomato"},
			dinner:    []string{"Red lentil dal with rice", "Pan apple crumble"},
			snack:     []string{"Peanut and mango mix"},
		},
		{
			breakfast: []string{"Potato scramble with tomato", coffeeTime},
			lunch:     []string{"Peanut butter and banana wraps"},
			dinner:    []string{"Smoky chilli on polenta", "Chocolate pudding"},
			snack:     []string{"Fig rolls and cashews"},
		},
		{
			breakfast: []string{"Cocoa quinoa with cashews", coffeeTime},
			lunch:     []string{"Sausage sticks and crackers with figs"},
			dinner:    []string{"Peanut noodles with tofu", "Stewed apricots with cashews"},
			snack:     []string{"Orchard mix"},
		},
		{
			breakfast: []string{"Soaked oats with mango and coconut", coffeeTime},
			lunch:     []string{"Couscous salad with seeds and cranberries"},
			dinner:    []string{"Hill farmer's pie", "Hot cocoa"},
			snack:     []string{"Granola bar, halva and nuts"},
		},
		{
			breakfast: []string{"Apple and cinnamon porridge", coffeeTime},
			lunch:     []string{"Miso noodle soup"},
			dinner:    []string{"Apricot couscous with chicken", "Ginger tea and shortbread"},
			snack:     []string{"Chocolate and nut mix"},
		},
		{
			breakfast: []string{"Raisin rice with coconut", coffeeTime},
			lunch:     []string{"Potato soup with cheese"},
			dinner:    []string{"Mushroom risotto", "Hot cocoa"},
			snack:     []string{"Jerky, seeds and dried fruit"},
		},
		{
			breakfast: []string{"Seed and cranberry muesli", coffeeTime},
			lunch:     []string{"Almond butter, dates and crackers"},
			snack:     []string{"Chocolate and nut mix"},
		},
	}
}

func menu(list []trip.Recipe) []trip.Cell {
	var cells []trip.Cell
	for i, eaten := range menuByName() {
		for _, group := range []trip.GroupID{larch, rowan} {
			for _, slot := range []struct {
				meal  trip.Meal
				names []string
			}{{trip.Breakfast, eaten.breakfast}, {trip.Lunch, eaten.lunch}, {trip.Dinner, eaten.dinner}, {trip.Snack, eaten.snack}} {
				if len(slot.names) == 0 {
					continue
				}
				cell := trip.Cell{Day: i + 1, Meal: slot.meal, Group: group}
				for _, name := range slot.names {
					cell.Dishes = append(cell.Dishes, trip.Dish{Recipe: named(list, name)})
				}
				cells = append(cells, cell)
			}
		}
	}
	return cells
}
