// Package trial works out how a cook group's day would turn out with other
// dishes in one of its slots, without planning the whole trip again: who eats,
// what it brings, weighs and takes to cook. A leader compares recipes by it.
//
// Start with NewDay, then ask With for each choice. Everything is reckoned by
// the stages that make the plan, on the needs of the plan, so that a choice
// taken gives what was promised, but for needs that change with the loads.
package trial

import (
	"math"
	"slices"

	"sumpter/domain/cooking"
	"sumpter/domain/menu"
	"sumpter/domain/needs"
	"sumpter/domain/portions"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Day is one cook group's day, cut out of a trip.
type Day struct {
	trip  *trip.Trip // the day, and the day before for the height of its camp
	needs needs.Result
	day   int // place of the day in the cut trip
	group trip.GroupID
}

// Outcome is how one slot and its day turn out. Masses, energies and costs are
// means over the eaters; a cost is by the gram of the cheapest package.
type Outcome struct {
	Eaters   int             `json:"eaters"`
	Without  []trip.MemberID `json:"without,omitempty"` // eaters who get nothing in the slot
	Batches  int             `json:"batches"`           // pots cooked apart in the slot
	MealKcal units.Kcal      `json:"meal_kcal"`
	MealFood units.Mass      `json:"meal_food_g"`
	DayKcal  units.Kcal      `json:"day_kcal"`
	DayFood  units.Mass      `json:"day_food_g"`
	Protein  float64         `json:"day_protein_g"`
	Minutes  units.Minutes   `json:"minutes"` // until the last of the slot eats
	Fuel     units.Mass      `json:"fuel_g"`  // of the slot, for the whole group, no reserve
	Cost     units.Money     `json:"day_cost"`
	Unpriced int             `json:"unpriced"` // foods of the day without a price
}

// NewDay cuts a day (1-based) of a group out of a canonical trip. The cells of
// the trip are all there is to eat: put proposals in before. The needs are
// those of the trip.
func NewDay(t *trip.Trip, n needs.Result, day int, group trip.GroupID) *Day {
	first := max(1, day-1)
	cut := *t
	cut.Days = slices.Clone(t.Days[first-1 : day])
	if first < day {
		cut.Days[0].Meals = nil
	}
	d := &Day{trip: &cut, day: day - first + 1, group: group}
	cut.Settings.FillOpenSlots = false
	cut.Points, cut.Pins = nil, nil
	cut.Groups = slices.DeleteFunc(slices.Clone(t.Groups), func(g trip.CookGroup) bool { return g.ID != group })
	cut.Menu = nil
	for _, cell := range t.Menu {
		if cell.Day == day && cell.Group == group {
			cell.Day = d.day
			cut.Menu = append(cut.Menu, cell)
		}
	}
	cut.Crew = nil
	for i := range t.Crew {
		if m := t.Crew[i]; m.Group == group && m.Present(day) {
			m.FirstDay, m.LastDay = 0, 0
			cut.Crew = append(cut.Crew, m)
			need := n.Members[i]
			need.Days = need.Days[first-1 : day]
			d.needs.Members = append(d.needs.Members, need)
		}
	}
	d.needs.Walks = n.Walks[first-1 : day]
	return d
}

// With serves other dishes at a meal of the day.
func (d *Day) With(meal trip.Meal, dishes []trip.Dish) Outcome {
	served := *d.trip
	served.Menu = []trip.Cell{{Day: d.day, Meal: meal, Group: d.group, Dishes: dishes}}
	for _, cell := range d.trip.Menu {
		if cell.Meal != meal {
			served.Menu = append(served.Menu, cell)
		}
	}
	resolved := menu.Servings(&served, nil)
	sized := portions.Figures(&served, d.needs, resolved)
	cooked := cooking.Compute(&served, d.needs, sized, served.Legs())
	return d.outcome(meal, sized, cooked)
}

// AsItIs gives the day as the trip has it.
func (d *Day) AsItIs(meal trip.Meal) Outcome {
	for _, cell := range d.trip.Menu {
		if cell.Meal == meal {
			return d.With(meal, cell.Dishes)
		}
	}
	return d.With(meal, nil)
}

func (d *Day) outcome(meal trip.Meal, sized portions.Result, cooked cooking.Result) Outcome {
	o := Outcome{Eaters: len(d.trip.Crew)}
	if o.Eaters == 0 {
		return o
	}
	fed := map[trip.MemberID]bool{}
	for i := range sized.Batches {
		batch := &sized.Batches[i]
		if batch.Meal != meal || batch.Day != d.day {
			continue
		}
		o.Batches++
		for _, portion := range batch.Portions {
			fed[portion.Member] = true
			o.MealKcal += portion.Kcal
			for _, amount := range portion.Amounts {
				o.MealFood += amount.Mass
			}
		}
	}
	for i := range d.trip.Crew {
		if id := d.trip.Crew[i].ID; !fed[id] {
			o.Without = append(o.Without, id)
		}
		day := sized.Intakes[i].Days[d.day-1]
		o.DayKcal, o.DayFood, o.Protein = o.DayKcal+day.Kcal, o.DayFood+day.Food, o.Protein+day.ProteinGrams
	}
	o.price(d.trip, sized)
	for _, m := range cooked.Meals {
		if m.Meal == meal && m.Day == d.day {
			o.Minutes, o.Fuel = m.Minutes, m.FuelMass
		}
	}
	return o.perEater()
}

// price adds up what the food of the day costs.
func (o *Outcome) price(t *trip.Trip, sized portions.Result) {
	grams := map[trip.FoodID]units.Mass{}
	for i := range sized.Batches {
		for _, total := range sized.Batches[i].Totals {
			grams[total.Food] += total.Mass
		}
	}
	cost := 0.0
	for i := range t.Foods {
		mass, eaten := grams[t.Foods[i].ID]
		if !eaten {
			continue
		}
		if price, known := t.Foods[i].GramPrice(); known {
			cost += price * mass.Grams()
		} else {
			o.Unpriced++
		}
	}
	o.Cost = units.Money(math.Round(cost / float64(max(1, o.Eaters))))
}

func (o Outcome) perEater() Outcome {
	n := float64(o.Eaters)
	o.MealKcal, o.DayKcal, o.Protein = o.MealKcal/units.Kcal(n), o.DayKcal/units.Kcal(n), o.Protein/n
	o.MealFood, o.DayFood = o.MealFood.Scale(1/n), o.DayFood.Scale(1/n)
	return o
}
