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
	among []trip.MemberID // whose means are told; nil: all
}

// Outcome is how one slot and its day turn out. Masses, energies and costs are
// means over the eaters, or those of them that Among asks for; a cost is by the
// gram of the cheapest package.
type Outcome struct {
	Eaters   int             `json:"eaters"`            // of whom it tells
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

// Among tells of some members only; everybody of the group eats as before. What
// is cooked as seconds counts for those of a pot alike.
func (d *Day) Among(members []trip.MemberID) *Day {
	some := *d
	some.among = members
	return &some
}

// tells whether an outcome is about a member.
func (d *Day) tells(member trip.MemberID) bool {
	return d.among == nil || slices.Contains(d.among, member)
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
	var o Outcome
	fed := map[trip.MemberID]bool{}
	for i := range sized.Batches {
		batch := &sized.Batches[i]
		if batch.Meal != meal || batch.Day != d.day {
			continue
		}
		o.Batches++
		for _, portion := range batch.Portions {
			if !d.tells(portion.Member) {
				continue
			}
			fed[portion.Member] = true
			o.MealKcal += portion.Kcal
			for _, amount := range portion.Amounts {
				o.MealFood += amount.Mass
			}
		}
	}
	for i := range d.trip.Crew {
		id := d.trip.Crew[i].ID
		if !d.tells(id) {
			continue
		}
		o.Eaters++
		if !fed[id] {
			o.Without = append(o.Without, id)
		}
		day := sized.Intakes[i].Days[d.day-1]
		o.DayKcal, o.DayFood, o.Protein = o.DayKcal+day.Kcal, o.DayFood+day.Food, o.Protein+day.ProteinGrams
	}
	if o.Eaters == 0 {
		return Outcome{}
	}
	o.price(d, sized)
	for _, m := range cooked.Meals {
		if m.Meal == meal && m.Day == d.day {
			o.Minutes, o.Fuel = m.Minutes, m.FuelMass
		}
	}
	return o.perEater()
}

// price adds up what the food of the day costs.
func (o *Outcome) price(d *Day, sized portions.Result) {
	grams := map[trip.FoodID]float64{}
	for i := range sized.Batches {
		d.addGrams(grams, &sized.Batches[i])
	}
	cost := 0.0
	for i := range d.trip.Foods {
		food := &d.trip.Foods[i]
		eaten, is := grams[food.ID]
		if !is {
			continue
		}
		if price, known := food.GramPrice(); known {
			cost += price * eaten
		} else {
			o.Unpriced++
		}
	}
	o.Cost = units.Money(math.Round(cost / float64(o.Eaters)))
}

// addGrams adds what a batch holds for those told of, their part of the seconds with it.
func (d *Day) addGrams(grams map[trip.FoodID]float64, batch *portions.Batch) {
	told := 0
	for _, portion := range batch.Portions {
		if !d.tells(portion.Member) {
			continue
		}
		told++
		for _, amount := range portion.Amounts {
			grams[amount.Food] += amount.Mass.Grams()
		}
	}
	for _, more := range batch.Seconds {
		if told > 0 {
			grams[more.Food] += more.Mass.Grams() * float64(told) / float64(len(batch.Portions))
		}
	}
}

func (o Outcome) perEater() Outcome {
	n := float64(o.Eaters)
	o.MealKcal, o.DayKcal, o.Protein = o.MealKcal/units.Kcal(n), o.DayKcal/units.Kcal(n), o.Protein/n
	o.MealFood, o.DayFood = o.MealFood.Scale(1/n), o.DayFood.Scale(1/n)
	return o
}
