package menu

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/screens/bench"
	"sumpter/app/written"
	menus "sumpter/domain/menu"
	"sumpter/domain/portions"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// leastName is the width that the name of a dish has beside its buttons.
const leastName float32 = 150

// dish shows one dish: for whom, and each batch with its grams and swaps.
func (d *side) dish(dish trip.Dish) []fyne.CanvasObject {
	o, s := d.s.seen, d.s
	name := words(s.recipeName(dish.Recipe))
	name.Bold = true
	out := widget.NewButton(lang.L("Take out"), func() { _ = s.remove(d.k, dish.Recipe) })
	who := widget.NewButton(lang.L("For whom…"), func() { d.chooseEaters(dish.Recipe) })
	out.Importance, who.Importance = widget.LowImportance, widget.LowImportance
	list := []fyne.CanvasObject{
		widget.NewSeparator(), bench.Head(bench.Wide(leastName, name), who, out),
	}
	if d.eatersOf == dish.Recipe {
		list = append(list, d.eaterChecks(dish))
	}
	lines := []string{d.forWhom(dish)}
	if o.fresh(d.k) {
		if served := servedDish(o.slots[d.k], dish.Recipe); served != nil {
			lines = append(lines, d.batchLines(served)...)
		}
	}
	list = append(list, note(strings.Join(lines, "\n")))
	for _, accepted := range dish.Accepted {
		list = append(list, d.accepted(dish.Recipe, accepted))
	}
	return list
}

func (d *side) forWhom(dish trip.Dish) string {
	if len(dish.For) == 0 {
		return lang.L("For everybody who eats here.")
	}
	return lang.L("For") + " " + namesOf(d.s.seen.trip, dish.For) + "."
}

func (d *side) chooseEaters(recipe trip.RecipeID) {
	if d.eatersOf == recipe {
		recipe = 0
	}
	d.eatersOf = recipe
	d.show(d.k)
}

// eaterChecks lets the leader tick who a dish is for.
func (d *side) eaterChecks(dish trip.Dish) fyne.CanvasObject {
	t := d.s.seen.trip
	eaters := t.Eaters(d.k.day, d.k.group)
	box := container.NewGridWithColumns(2)
	for _, id := range eaters {
		check := widget.NewCheck(t.Member(id).Name, nil)
		check.Checked = len(dish.For) == 0 || slices.Contains(dish.For, id)
		check.OnChanged = func(on bool) {
			chosen := slices.DeleteFunc(slices.Clone(eaters), func(e trip.MemberID) bool {
				if e == id {
					return !on
				}
				return len(dish.For) > 0 && !slices.Contains(dish.For, e)
			})
			if d.s.serveTo(d.k, dish.Recipe, chosen) != nil {
				d.show(d.k)
			}
		}
		box.Add(check)
	}
	return box
}

func servedDish(s *menus.Slot, recipe trip.RecipeID) *menus.Dish {
	if s == nil {
		return nil
	}
	for i := range s.Dishes {
		if s.Dishes[i].Recipe == recipe {
			return &s.Dishes[i]
		}
	}
	return nil
}

// batchLines says of each pot who eats it, how much, of what, and which swaps
// were taken.
func (d *side) batchLines(served *menus.Dish) []string {
	o := d.s.seen
	var lines []string
	pots := 0
	for _, batch := range o.batches[d.k] {
		if batch.Recipe != served.Recipe || batch.Batch >= len(served.Batches) {
			continue
		}
		pots++
		line := batchSize(o.trip, batch)
		if len(served.Batches) > 1 {
			line = fmt.Sprintf("%s %d: %s", lang.L("Pot"), pots, line)
		}
		lines = append(lines, line, "– "+d.batchFoods(batch))
		if more := secondsOf(batch); more > 0 {
			lines = append(lines, "– "+lang.X("menu-seconds", "besides, {{.Mass}} in the pot for second helpings", map[string]any{"Mass": written.Quantity(more, o.trip.Units)}))
		}
		for _, swap := range d.swaps(o.recipes[served.Recipe], served.Batches[batch.Batch].Servings) {
			lines = append(lines, "– "+swap)
		}
	}
	return lines
}

// secondsOf is the food of a pot beyond the portions.
func secondsOf(batch *portions.Batch) (sum units.Mass) {
	for _, amount := range batch.Seconds {
		sum += amount.Mass
	}
	return sum
}

func batchSize(t *trip.Trip, batch *portions.Batch) string {
	var members []trip.MemberID
	low, high := batch.Portions[0].Kcal, batch.Portions[0].Kcal
	least, most := massOf(batch.Portions[0]), massOf(batch.Portions[0])
	for _, portion := range batch.Portions {
		members = append(members, portion.Member)
		low, high = min(low, portion.Kcal), max(high, portion.Kcal)
		least, most = min(least, massOf(portion)), max(most, massOf(portion))
	}
	return fmt.Sprintf("%s: %s, %s kcal %s", namesOf(t, members), massRange(least, most, t.Units), numberRange(float64(low), float64(high)), lang.L("each"))
}

// batchFoods lists the foods with the least and the most that one eater gets.
func (d *side) batchFoods(batch *portions.Batch) string {
	t, o := d.s.seen.trip, d.s.seen
	var foods []string
	for _, total := range batch.Totals {
		food := o.foods[total.Food]
		if food == nil {
			continue
		}
		least, most, eaters := total.Mass, total.Mass*0, 0
		for _, portion := range batch.Portions {
			for _, amount := range portion.Amounts {
				if amount.Food == total.Food && amount.Place == total.Place {
					least, most, eaters = min(least, amount.Mass), max(most, amount.Mass), eaters+1
				}
			}
		}
		text := food.Name + " " + amountRange(food, least, most, t.Units)
		if eaters < len(batch.Portions) {
			text += fmt.Sprintf(" (%d %s %d)", eaters, lang.L("of"), len(batch.Portions))
		}
		foods = append(foods, text)
	}
	return strings.Join(foods, " · ")
}

// swaps says who gets what instead of what.
func (d *side) swaps(recipe *trip.Recipe, servings []menus.Serving) []string {
	o := d.s.seen
	if recipe == nil {
		return nil
	}
	taken := map[string][]trip.MemberID{}
	var order []string
	tell := func(text string, member trip.MemberID) {
		if _, known := taken[text]; !known {
			order = append(order, text)
		}
		taken[text] = append(taken[text], member)
	}
	for _, serving := range servings {
		for i := range recipe.Ingredients {
			written := o.foods[recipe.Ingredients[i].Food]
			if written == nil {
				continue
			}
			at := slices.IndexFunc(serving.Parts, func(p menus.Part) bool { return p.Ingredient == i })
			switch {
			case at < 0:
				tell(lang.X("menu-without", "no {{.Food}}", map[string]any{"Food": written.Name}), serving.Member)
			case serving.Parts[at].Swapped && o.foods[serving.Parts[at].Food] != nil:
				tell(lang.X("menu-instead", "{{.Other}} instead of {{.Food}}", map[string]any{"Other": o.foods[serving.Parts[at].Food].Name, "Food": written.Name}), serving.Member)
			}
		}
	}
	for i, text := range order {
		order[i] = lang.L("Swap") + ": " + text + ": " + namesOf(o.trip, taken[text])
	}
	return order
}

func massOf(portion portions.Portion) (sum units.Mass) {
	for _, amount := range portion.Amounts {
		sum += amount.Mass
	}
	return sum
}
