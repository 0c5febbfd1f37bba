package tables

import (
	"fmt"
	"strings"

	"sumpter/domain/resupply"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// stopsTable lists the choices of points that nothing beats.
func stopsTable(x *index) Table {
	return fill(Table{
		Name: "point_choices", Title: "Which points? Cost against the heaviest morning",
		About: "Choices of resupply points that no other beats in fees, heaviest morning, food carried and detour. The emergency reserve is carried whichever points are used and is not in it.",
		Empty: "No point lies on the way.",
	}, []field[resupply.Choice]{
		{Column{Key: "points", Heading: "Points", Width: 40, Wrap: true}, func(c resupply.Choice) Value { return words(x.points(c.Points)) }},
		{Column{Key: "fees", Heading: "Fees (" + x.trip.Currency + ")", Decimals: x.moneyDecimals(), Width: 10}, func(c resupply.Choice) Value { return x.money(c.Money) }},
		{Column{Key: "heaviest", Heading: "Meals on the heaviest morning (" + x.loadUnit() + ")", Decimals: 1, Width: 14}, func(c resupply.Choice) Value { return x.load(c.HeaviestFood) }},
		{Column{Key: "carried", Heading: "Carried (" + x.loadUnit() + " days)", Decimals: 0, Width: 9}, func(c resupply.Choice) Value { return x.load(units.Kilogram.Scale(c.CarriedKgDay)) }},
		{Column{Key: "detour", Heading: "Detour (h)", Decimals: 1, Width: 8}, func(c resupply.Choice) Value { return figure(float64(c.DetourHours)) }},
		{Column{Key: "current", Heading: "In use", Width: 8}, func(c resupply.Choice) Value { return yesNo(c.Current) }},
		{Column{Key: "advised", Heading: "Advised", Width: 50, Wrap: true}, func(c resupply.Choice) Value {
			switch {
			case c.Recommended:
				return words(x.text(c.Why))
			case c.Beaten:
				return words("beaten by another, or a point in use is closed or too slow")
			default:
				return words("no")
			}
		}},
	}, x.plan.Resupply.Choices)
}

func (x *index) points(ids []trip.PointID) string {
	names := make([]string, len(ids))
	for i, id := range ids {
		names[i] = x.point(id)
	}
	return orNone(strings.Join(names, " + "), "all food from the start")
}

// missingTable says what it means if a box does not come: on the last evening
// on which the food reaches back, and on the evening the box should be there.
func missingTable(x *index) Table {
	type row struct {
		box *resupply.Box
		day int
		is  trail.Shortage
	}
	var rows []row
	for i := range x.plan.Resupply.Boxes {
		box := &x.plan.Resupply.Boxes[i]
		if box.Leg < 1 || box.Leg >= len(x.plan.Legs) {
			continue
		}
		evenings := []int{x.plan.Legs[box.Leg-1].LastDay}
		if box.TurnBackBy > 0 && box.TurnBackBy < evenings[0] {
			evenings = append([]int{box.TurnBackBy}, evenings...)
		}
		for _, day := range evenings {
			rows = append(rows, row{box, day, trail.IfMissing(x.plan, &trip.Progress{}, *box, day)})
		}
	}
	return groupBy(fill(Table{
		Name: "missing_boxes", Title: "If a box does not come",
		About: "What is left in the packs, for how long it feeds all at what they burn, and how far it is back to where it came from, at the same pace (common practice, no source). Later than the day to turn back the food no longer reaches back.",
		Empty: "No box is sent ahead.",
	}, []field[row]{
		{Column{Key: "point", Heading: "Box at", Width: 24, Wrap: true}, func(r row) Value { return words(x.point(r.box.Point)) }},
		{Column{Key: "turn_back", Heading: "Turn back by the evening of day", Width: 12}, func(r row) Value {
			if r.box.TurnBackBy == 0 {
				return words("no such day")
			}
			return count(r.box.TurnBackBy)
		}},
		{Column{Key: "evening", Heading: "On the evening of day", Width: 10}, func(r row) Value { return count(r.day) }},
		{Column{Key: "left", Heading: "Food left (" + x.loadUnit() + ")", Decimals: 1, Width: 9}, func(r row) Value { return x.load(r.is.LeftFood) }},
		{Column{Key: "whom", Heading: "For whom, each with the days of their own dishes", Width: 60, Wrap: true}, func(r row) Value {
			return words(x.eaters(trail.Eaters(x.plan, *r.box, r.day)))
		}},
		{Column{Key: "lasts", Heading: "Lasts (days)", Decimals: 1, Width: 8}, func(r row) Value { return figure(r.is.Lasts) }},
		{Column{Key: "back", Heading: "Days back", Width: 8}, func(r row) Value { return count(r.is.BackDays) }},
		{Column{Key: "reaches", Heading: "Reaches back", Width: 9}, func(r row) Value { return yesNo(r.is.ReachesBack()) }},
		{Column{Key: "missing", Heading: "Missing food (" + x.loadUnit() + ")", Decimals: 1, Width: 9}, func(r row) Value { return x.load(r.is.Food) }},
	}, rows), rows, func(r row) trip.PointID { return r.box.Point })
}

// eaters names people with their diets and allergies, and for how many days
// each has dishes of their own.
func (x *index) eaters(list []trail.Eater) string {
	texts := make([]string, 0, len(list))
	for _, e := range list {
		m := x.Member(e.Member)
		if m == nil {
			continue
		}
		var apart []string
		for _, diet := range m.Diets {
			apart = append(apart, string(diet))
		}
		for _, allergy := range m.Allergies {
			apart = append(apart, "no "+string(allergy.Allergen))
		}
		name := m.Name
		if len(apart) > 0 {
			name += " (" + strings.Join(apart, ", ") + ")"
		}
		texts = append(texts, fmt.Sprintf("%s %.1f", name, e.Lasts))
	}
	return strings.Join(texts, "; ")
}
