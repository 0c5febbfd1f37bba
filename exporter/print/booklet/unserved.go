package booklet

import (
	"cmp"
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
	"sumpter/exporter/print/press"
)

// unserved is the card of a recipe that no pot of the days is made by: as it is
// written, for one standard eater and for as many as the crew.
func unserved(p *press.Press, recipe *trip.Recipe, width press.Points) []press.Block {
	blocks := []press.Block{
		p.Text(press.Style{Size: 15, Bold: true, Ink: p.Inks.Ink}, width, recipe.Name).Under(1, width, 0.8, p.Inks.Ink),
		p.Text(press.Style{Size: 8.5, Ink: p.Inks.Quiet}, width, p.Tell(prose.Say("Not served on these days: amounts for standard eaters, as the recipe is written."))),
	}
	if found := written(p, recipe); len(found) > 0 {
		blocks = append(blocks, p.Warning(9, width, press.Allergens(found)))
	} else {
		blocks = append(blocks, p.Text(press.Style{Size: 8.5, Ink: p.Inks.Quiet}, width, p.Tell(prose.Say("no declared allergen, as far as the foods say"))))
	}
	blocks = append(blocks, amounts(p, recipe, max(1, len(p.Trip.Crew)), width))
	return append(blocks, instructions(p, recipe, width)...)
}

// amounts is the table of what goes in for one and for so many.
func amounts(p *press.Press, recipe *trip.Recipe, eaters int, width press.Points) press.Block {
	t := p.Table(tableWidth(2, width), 0.8, press.Column{}, press.Column{Width: potWidth, Right: true}, press.Column{Width: potWidth, Right: true})
	head, plain, bold := press.Style{Size: 8, Bold: true, Ink: p.Inks.Ink}, press.Style{Size: 9, Ink: p.Inks.Ink}, press.Style{Size: 9, Bold: true, Ink: p.Inks.Ink}
	rows := []press.Block{t.Row(p.Cell(head, ""), p.Cell(head, p.Tell(prose.Say("For one"))), p.Cell(head, p.Tell(prose.Say("For %d", eaters))))}
	list := slices.Clone(recipe.Ingredients)
	slices.SortStableFunc(list, func(a, b trip.Ingredient) int { return cmp.Compare(order(a.Place), order(b.Place)) })
	for i, one := range list {
		if one.Place == trip.AtBowl && (i == 0 || list[i-1].Place != trip.AtBowl) {
			rows = append(rows, t.Row(p.Cell(press.Style{Size: 8.5, Bold: true, Ink: p.Inks.Accent}, p.Tell(prose.Say("Onto the bowls")))))
		}
		rows = append(rows, t.Row(p.Cell(plain, p.FoodName(one.Food)), p.Cell(plain, p.Amount(one.Food, one.Amount)), p.Cell(bold, p.Amount(one.Food, one.Amount*units.Mass(eaters)))))
		for _, swap := range one.Swaps {
			rows = append(rows, swapRow(p, t, swap))
		}
	}
	if recipe.Water > 0 {
		rows = append(rows, t.Row(p.Cell(plain, p.Tell(prose.Say("Water"))), p.Cell(plain, p.Volume(recipe.Water)), p.Cell(bold, p.Volume(recipe.Water*units.Volume(eaters)))))
	}
	return press.Stack(0, rows...)
}

// swapRow is what somebody gets instead of the ingredient above.
func swapRow(p *press.Press, t *press.Table, swap trip.Swap) press.Block {
	quiet := press.Style{Size: 8.5, Ink: p.Inks.Quiet}
	if swap.Food == 0 {
		return t.Row(p.Cell(quiet, p.Tell(prose.Say("or left out"))))
	}
	return t.Row(p.Cell(quiet, p.Tell(prose.Say("or %s", p.FoodName(swap.Food)))), p.Cell(quiet, p.Amount(swap.Food, swap.Amount)))
}

// written gives the worst state of each allergen over the foods of a recipe as it is written, swaps left out.
func written(p *press.Press, recipe *trip.Recipe) []bags.Allergen {
	var all []bags.Allergen
	for i := range recipe.Ingredients {
		food := p.Trip.Food(recipe.Ingredients[i].Food)
		if food == nil {
			continue
		}
		var states []bags.Allergen
		for _, allergen := range trip.DeclaredAllergens() {
			if state := food.Presence(allergen); state != trip.Free {
				states = append(states, bags.Allergen{Allergen: allergen, Presence: state})
			}
		}
		all = press.Worst(all, states)
	}
	slices.SortFunc(all, func(a, b bags.Allergen) int { return cmp.Compare(a.Allergen, b.Allergen) })
	return all
}
