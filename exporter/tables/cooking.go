package tables

import (
	"fmt"
	"strings"

	"sumpter/domain/carry"
	"sumpter/domain/cooking"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func cookingTable(x *index) Table {
	rows := make([]*cooking.Meal, len(x.plan.Cooking.Meals))
	for i := range rows {
		rows[i] = &x.plan.Cooking.Meals[i]
	}
	fuel := func(key, heading string, of func(*cooking.Meal) units.Mass) field[*cooking.Meal] {
		return field[*cooking.Meal]{Column{Key: key, Heading: heading + " (" + x.foodUnit() + ")", Decimals: x.foodDecimals(), Width: 9}, func(m *cooking.Meal) Value { return x.food(of(m)) }}
	}
	water := func(key, heading string, of func(*cooking.Meal) units.Volume) field[*cooking.Meal] {
		return field[*cooking.Meal]{Column{Key: key, Heading: heading + " (" + x.drinkUnit() + ")", Decimals: 1, Width: 10}, func(m *cooking.Meal) Value { return x.drink(of(m)) }}
	}
	return groupBy(fill(Table{
		Name: "cooking", Title: "Cooking, by meal",
		About: "Water, minutes and fuel at the height of each camp. Fuel here is without the reserve; low is calm with a lid, high is exposed.",
		Empty: "Nothing is cooked yet.",
	}, []field[*cooking.Meal]{
		{Column{Key: "day", Heading: "Day", Width: 5}, func(m *cooking.Meal) Value { return count(m.Day) }},
		{Column{Key: "meal", Heading: "Meal", Width: 10}, func(m *cooking.Meal) Value { return words(mealName(m.Meal)) }},
		{Column{Key: "group", Heading: "Cook group", Width: 14}, func(m *cooking.Meal) Value { return words(x.group(m.Group)) }},
		{Column{Key: "flame", Heading: "Flame", Width: 10}, func(m *cooking.Meal) Value {
			if m.Cold {
				return words("none")
			}
			return words("stove")
		}},
		{Column{Key: "height", Heading: "Height (" + x.heightUnit() + ")", Width: 8}, func(m *cooking.Meal) Value { return x.height(m.Height) }},
		{Column{Key: "boils", Heading: "Water boils at (" + x.heatUnit() + ")", Decimals: 1, Width: 9}, func(m *cooking.Meal) Value { return x.heat(m.BoilsAt) }},
		water("food_water", "Water for food", func(m *cooking.Meal) units.Volume { return m.FoodWater }),
		water("other_water", "Drinks and washing", func(m *cooking.Meal) units.Volume { return m.OtherWater }),
		{Column{Key: "boilings", Heading: "Pots brought to the boil", Width: 10}, func(m *cooking.Meal) Value { return count(m.Boils) }},
		{Column{Key: "simmer", Heading: "Simmer (min)", Width: 9}, func(m *cooking.Meal) Value { return figure(float64(m.SimmerMinutes)) }},
		{Column{Key: "minutes", Heading: "Until all eat (min)", Width: 9}, func(m *cooking.Meal) Value { return figure(float64(m.Minutes)) }},
		{Column{Key: "fuel", Heading: "Fuel", Width: 13}, func(m *cooking.Meal) Value { return words(orNone(string(m.Fuel), "none")) }},
		fuel("fuel_mass", "Burns", func(m *cooking.Meal) units.Mass { return m.FuelMass }),
		fuel("fuel_low", "Low", func(m *cooking.Meal) units.Mass { return m.FuelLow }),
		fuel("fuel_high", "High", func(m *cooking.Meal) units.Mass { return m.FuelHigh }),
	}, rows), rows, func(m *cooking.Meal) int { return m.Day })
}

func fuelByLegTable(x *index) Table {
	rows := make([]*cooking.LegFuel, len(x.plan.Cooking.Fuel))
	for i := range rows {
		rows[i] = &x.plan.Cooking.Fuel[i]
	}
	return fill(Table{
		Name: "fuel_by_leg", Title: "Fuel to carry, by leg",
		About: "Reserve included. A container is carried on when it is empty, until rubbish can be left.",
		Empty: "No fuel is needed.",
	}, []field[*cooking.LegFuel]{
		{Column{Key: "leg", Heading: "Leg", Width: 16}, func(l *cooking.LegFuel) Value { return words(x.leg(l.Leg)) }},
		{Column{Key: "group", Heading: "Cook group", Width: 18}, func(l *cooking.LegFuel) Value { return words(x.group(l.Group)) }},
		{Column{Key: "fuel", Heading: "Fuel", Width: 18}, func(l *cooking.LegFuel) Value { return words(string(l.Fuel)) }},
		{Column{Key: "needed", Heading: "Needed with reserve (" + x.foodUnit() + ")", Decimals: x.foodDecimals(), Width: 14}, func(l *cooking.LegFuel) Value { return x.food(l.Needed) }},
		{Column{Key: "carried", Heading: "Carried (" + x.foodUnit() + ")", Decimals: x.foodDecimals(), Width: 12}, func(l *cooking.LegFuel) Value {
			var sum units.Mass
			for _, container := range l.Containers {
				sum += x.fuelIn(container, l.Fuel)
			}
			return x.food(sum)
		}},
		{Column{Key: "containers", Heading: "Containers", Width: 60, Wrap: true}, func(l *cooking.LegFuel) Value { return words(x.containers(l)) }},
	}, rows)
}

func (x *index) containers(l *cooking.LegFuel) string {
	var lines []string
	for _, container := range l.Containers {
		line := container.Name + ", " + x.weighed(x.fuelIn(container, l.Fuel)) + " of fuel"
		if container.Ahead {
			line += ", for a later leg"
		}
		if container.EmptyFrom > 0 {
			line += fmt.Sprintf(", empty from day %d", container.EmptyFrom)
		}
		lines = append(lines, line)
	}
	return orNone(strings.Join(lines, "\n"), "none chosen")
}

// fuelIn is what a container holds at the start of its leg. One on its way to a
// later leg is planned with its whole mass.
func (x *index) fuelIn(container cooking.Container, fuel trip.FuelKind) units.Mass {
	if container.Ahead {
		for _, sold := range x.trip.Fuels {
			if sold.Name == container.Name && sold.Fuel == fuel {
				return sold.Net
			}
		}
	}
	return container.Fuel
}

// waterRow is a member's water of a day, and the load of its morning.
type waterRow struct {
	*cooking.Water
	load carry.Day
}

func waterTable(x *index) Table {
	loads := map[trip.MemberID][]carry.Day{}
	for _, m := range x.plan.Carry.Members {
		loads[m.Member] = m.Days
	}
	rows := make([]waterRow, len(x.plan.Cooking.Water))
	for i := range rows {
		w := &x.plan.Cooking.Water[i]
		rows[i] = waterRow{Water: w}
		if days := loads[w.Member]; w.Day >= 1 && w.Day <= len(days) {
			rows[i].load = days[w.Day-1]
		}
	}
	return groupBy(fill(Table{
		Name: "water", Title: "Water, by day and member",
		About: "Water to drink over the whole day, and what each carries in to a dry camp: their own drink there, and of the group's cooking water as much as leaves all equally loaded. Treat all water from the land.",
		Empty: "There is nobody to give water yet.",
	}, []field[waterRow]{
		{Column{Key: "day", Heading: "Day", Width: 5}, func(w waterRow) Value { return count(w.Day) }},
		{Column{Key: "date", Heading: "Date", Width: 15}, func(w waterRow) Value { return x.date(w.Day) }},
		{Column{Key: "member", Heading: "Member", Width: 20}, func(w waterRow) Value { return words(x.member(w.Member)) }},
		{Column{Key: "drinking", Heading: "To drink (" + x.drinkUnit() + ")", Decimals: 1, Width: 11}, func(w waterRow) Value { return x.drink(w.Drinking) }},
		{Column{Key: "ceiling", Heading: "Held at the published ceiling", Width: 15}, func(w waterRow) Value { return yesNo(w.AtCeiling) }},
		{Column{Key: "carry_in", Heading: "To carry in (" + x.drinkUnit() + ")", Decimals: 1, Width: 12}, func(w waterRow) Value { return x.drink(w.load.CarryIn()) }},
		{Column{Key: "to_cook", Heading: "Of it to cook with (" + x.drinkUnit() + ")", Decimals: 1, Width: 12}, func(w waterRow) Value { return x.drink(w.load.ToCookWith()) }},
		{Column{Key: "mind", Heading: "Mind", Width: 34, Wrap: true}, func(w waterRow) Value { return words(x.waterCautions(w.Day)) }},
	}, rows), rows, func(w waterRow) int { return w.Day })
}

func (x *index) waterCautions(day int) string {
	var texts []string
	if x.day(day).DryCamp {
		texts = append(texts, "no water at the camp")
	}
	if x.day(day).SnowWater {
		texts = append(texts, "melted from snow")
	}
	return orNone(strings.Join(texts, ", "), "water at the camp: treat it")
}
