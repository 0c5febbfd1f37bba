package menu

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/written"
	"sumpter/domain/boosters"
	"sumpter/domain/trial"
	"sumpter/domain/trip"
)

// boosters offers something dense where the day is short or heavy: one click
// adds it to the meal for who needs it.
func (d *side) boosters() []fyne.CanvasObject {
	o, k := d.s.seen, d.k
	if o.plan == nil || o.plan.Refused() || k.day > len(o.plan.Trip.Days) {
		return nil
	}
	list := boosters.Propose(o.wholeMenu(), o.plan.Needs, o.plan.Portions, k.day, k.meal, k.group)
	if len(list) == 0 {
		return nil
	}
	why := map[boosters.Reason]string{
		boosters.Energy:  lang.L("Somebody is short of energy on this day. A spoon of something dense helps without much weight:"),
		boosters.Protein: lang.L("Somebody is short of protein on this day. These foods of the trip are rich in it:"),
		boosters.Weight:  lang.L("The food of this day is heavy. A spoon of something dense lets all other portions shrink:"),
	}[list[0].Reason]
	objects := []fyne.CanvasObject{
		heading(lang.L("Denser food")), words(why), note(lang.L("What changes in the day of each who gets it, all portions sized anew: food, energy, protein, cost.")),
	}
	for _, one := range list {
		food := o.foods[one.Food]
		if food == nil {
			continue
		}
		button := widget.NewButton("+ "+written.Quantity(one.Mass, o.trip.Units)+" "+food.Name, func() { _ = d.s.boost(k, one) })
		objects = append(objects, container.NewBorder(nil, nil, button, nil, note(d.boosterWords(&one))))
	}
	return objects
}

// boosterWords says what an addition would change, and for whom.
func (d *side) boosterWords(one *boosters.Proposal) string {
	t, c := d.s.seen.trip, &one.Change
	text := dayChange(t, trial.Outcome{DayFood: c.Food, DayKcal: c.Kcal, Protein: c.ProteinGrams, Cost: c.Cost}, c.Priced)
	if len(one.For) == len(t.Eaters(d.k.day, d.k.group)) {
		return text
	}
	return text + " · " + lang.L("For") + " " + namesOf(t, one.For)
}

// boost adds a dense food to a slot as a dish of its own, for who needs it.
// The same addition is one recipe, however often it is taken.
func (s *Screen) boost(k slot, one boosters.Proposal) error {
	food := s.seen.foods[one.Food]
	if food == nil {
		return s.refuse(lang.L("The member or the food is gone."))
	}
	mass := written.Quantity(one.Mass, s.seen.trip.Units)
	extra := one.Dish(lang.X("booster-name", "{{.Mass}} {{.Food}} more", map[string]any{"Mass": mass, "Food": food.Name}), lang.L("Stir it into the bowl, or eat it beside."))
	dish := trip.Dish{For: one.For}
	if len(one.For) == len(s.seen.trip.Eaters(k.day, k.group)) {
		dish.For = nil
	}
	served := cloneDishes(s.seen.dishes(k))
	name := s.name("menu-boost", "add {{.Dish}} to {{.Slot}}", k, "Dish", extra.Name)
	return s.edit(name, []slot{k}, func(t *trip.Trip) error {
		for i := range t.Recipes {
			if t.Recipes[i].Name == extra.Name {
				dish.Recipe = t.Recipes[i].ID
			}
		}
		if dish.Recipe == 0 {
			extra.ID = trip.NextID(t.Recipes, func(r *trip.Recipe) trip.RecipeID { return r.ID })
			t.Recipes, dish.Recipe = append(t.Recipes, extra), extra.ID
		}
		cellFor(t, k).Dishes = withDish(served, dish)
		return nil
	})
}

// withDish adds a dish; who has it already keeps it.
func withDish(dishes []trip.Dish, more trip.Dish) []trip.Dish {
	for i := range dishes {
		if dishes[i].Recipe == more.Recipe {
			dishes[i].For = more.For
			return dishes
		}
	}
	return append(dishes, more)
}
