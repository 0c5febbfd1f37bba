// Package booklet prints the recipes as the cooks of this trip make them: the
// amounts of every pot in which a recipe is cooked, its water, its minutes at
// that height, and the bags it comes from.
package booklet

import (
	"strings"

	"sumpter/domain/bags"
	"sumpter/domain/cooking"
	"sumpter/domain/portions"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/exporter/cautions"
	"sumpter/exporter/print/page"
	"sumpter/exporter/print/press"
	"sumpter/exporter/print/typeset"
)

// mostPots is how many pots stand beside each other in one table.
const mostPots = 5

// pot is one batch with its bags.
type pot struct {
	batch *portions.Batch
	run   int // which of several pots of its dish, from 1
	of    int
	bags  []*bags.Bag
}

// Draw draws the menu, a card for each recipe that is served on any of the
// days, and the cautions for those who cook.
func Draw(p *press.Press, days func(day int) bool) []page.Page {
	flow := p.Flow(press.Layout{
		Title: p.Tell(prose.Say("Recipe booklet")),
		Note:  p.Tell(prose.Say("Amounts are those in the bags. Eaters, water and minutes are reckoned for each day and its height.")),
	})
	served := pots(p, days)
	if len(served) == 0 {
		flow.Add(p.Text(press.Style{Size: 10, Ink: p.Inks.Ink}, flow.Width(), p.Tell(prose.Say("Nothing on the menu has been portioned yet."))))
		return flow.Finish()
	}
	press.MenuTable(p, flow, days, 0)
	for i := range p.Trip.Recipes {
		recipe := &p.Trip.Recipes[i]
		if list := served[recipe.ID]; len(list) > 0 {
			flow.Gap(20)
			flow.Keep(5, card(p, recipe, list, flow.Width())...)
		}
	}
	flow.Gap(20)
	press.Cautions(p, flow, cautions.Stoves(), cautions.FoodSafety(), cautions.Water(), cautions.Allergies())
	return flow.Finish()
}

// pots sorts the batches of the days by recipe.
func pots(p *press.Press, days func(int) bool) map[trip.RecipeID][]pot {
	type dish struct {
		day    int
		meal   trip.Meal
		group  trip.GroupID
		recipe trip.RecipeID
	}
	runs := map[dish]int{}
	served := map[trip.RecipeID][]pot{}
	for i := range p.Plan.Portions.Batches {
		batch := &p.Plan.Portions.Batches[i]
		key := dish{batch.Day, batch.Meal, batch.Group, batch.Recipe}
		runs[key]++
		if days(batch.Day) {
			served[batch.Recipe] = append(served[batch.Recipe], pot{
				batch: batch, run: runs[key], bags: p.Batch(batch.Day, batch.Meal, batch.Group, batch.Recipe, runs[key]),
			})
		}
	}
	for _, list := range served {
		for i := range list {
			b := list[i].batch
			list[i].of = runs[dish{b.Day, b.Meal, b.Group, b.Recipe}]
		}
	}
	return served
}

// card is a recipe with all its pots.
func card(p *press.Press, recipe *trip.Recipe, list []pot, width press.Points) []press.Block {
	blocks := []press.Block{
		p.Text(press.Style{Size: 15, Bold: true, Ink: p.Inks.Ink}, width, recipe.Name).Under(1, width, 0.8, p.Inks.Ink),
		p.Warning(9, width, press.Allergens(allergens(list))),
	}
	if len(allergens(list)) == 0 {
		blocks = append(blocks, p.Text(press.Style{Size: 8.5, Ink: p.Inks.Quiet}, width, p.Tell(prose.Say("no declared allergen, as far as the foods say"))))
	}
	blocks = append(blocks, p.Text(press.Style{Size: 9.5, Ink: p.Inks.Ink}, width, making(p, recipe)))
	for start := 0; start < len(list); start += mostPots {
		blocks = append(blocks, table(p, recipe, list[start:min(start+mostPots, len(list))], width))
	}
	blocks = append(blocks, method(p, recipe, width))
	if recipe.Notes != "" {
		blocks = append(blocks, p.Text(press.Style{Size: 8.5, Ink: p.Inks.Quiet}, width, recipe.Notes))
	}
	return blocks
}

// allergens gives the worst state of each allergen over the bags of all pots.
func allergens(list []pot) []bags.Allergen {
	var all []bags.Allergen
	for _, pot := range list {
		for _, bag := range pot.bags {
			all = press.Worst(all, bag.Allergens)
		}
	}
	return all
}

// making says how it is cooked, apart from any day.
func making(p *press.Press, recipe *trip.Recipe) string {
	var texts []string
	if recipe.Simmer > 0 {
		texts = append(texts, p.Tell(prose.Say("Simmer %.0f min at sea level, longer higher up.", float64(recipe.Simmer))))
	}
	if recipe.Soak > 0 {
		texts = append(texts, p.Tell(prose.Say("Soak %.0f min off the flame.", float64(recipe.Soak))))
	}
	if recipe.ColdOK {
		texts = append(texts, p.Tell(prose.Say("Can be made cold, without flame.")))
	}
	return strings.Join(texts, " ")
}

// table has a column for each pot.
func table(p *press.Press, recipe *trip.Recipe, list []pot, width press.Points) press.Block {
	columns := []press.Column{{}}
	for range list {
		columns = append(columns, press.Column{Width: min(84, (width-130)/press.Points(len(list))-6), Right: true})
	}
	t := p.Table(width, 1.2, columns...)
	bold, plain := press.Style{Size: 9, Bold: true, Ink: p.Inks.Ink}, press.Style{Size: 9, Ink: p.Inks.Ink}
	quiet := press.Style{Size: 8.5, Ink: p.Inks.Quiet}
	line := func(style press.Style, head string, of func(pot) string) press.Block {
		cells := []press.Drawing{p.Cell(quiet, head)}
		for _, pot := range list {
			cells = append(cells, p.Cell(style, of(pot)))
		}
		return t.Row(cells...)
	}
	rows := []press.Block{
		line(bold, p.Tell(prose.Say("When")), func(pot pot) string { return when(p, pot) }),
		line(plain, p.Tell(prose.Say("Eaters")), func(pot pot) string { return eaters(p, pot) }),
		line(plain, p.Tell(prose.Say("Bags")), func(pot pot) string { return codes(pot) }),
	}
	for _, food := range foods(list) {
		cells := []press.Drawing{p.Cell(plain, ingredient(p, food))}
		for _, pot := range list {
			cells = append(cells, p.Cell(bold, amount(p, pot, food)))
		}
		rows = append(rows, t.Row(cells...))
	}
	rows = append(rows, line(bold, p.Tell(prose.Say("Water")), func(pot pot) string { return water(p, pot) }))
	if recipe.Simmer > 0 || heated(p, recipe, list) {
		rows = append(rows, line(bold, p.Tell(prose.Say("On the flame")), func(pot pot) string { return flame(p, recipe, pot) }))
	}
	return press.Stack(0, rows...)
}

func when(p *press.Press, pot pot) string {
	parts := []string{p.Tell(prose.Say("Day %d", pot.batch.Day))}
	if date := p.ShortDate(p.Trip.DateOf(pot.batch.Day)); date != "" {
		parts = append(parts, date)
	}
	parts = append(parts, p.MealName(pot.batch.Meal))
	if group := p.GroupName(pot.batch.Group); group != "" {
		parts = append(parts, group)
	}
	if pot.of > 1 {
		parts = append(parts, p.Tell(prose.Say("pot %d of %d", pot.run, pot.of)))
	}
	return strings.Join(parts, "\n")
}

// eaters is how many eat, and who, where a pot is only for some.
func eaters(p *press.Press, pot pot) string {
	count := p.Tell(prose.Say("%d", len(pot.batch.Portions)))
	if pot.of < 2 || len(pot.batch.Portions) > 3 {
		return count
	}
	names := make([]string, len(pot.batch.Portions))
	for i, portion := range pot.batch.Portions {
		names[i] = p.MemberName(portion.Member)
	}
	return strings.Join(names, ", ")
}

func codes(pot pot) string {
	list := make([]string, len(pot.bags))
	for i, bag := range pot.bags {
		list[i] = bag.Code
	}
	return strings.Join(list, " ")
}

type part struct {
	food  trip.FoodID
	place trip.Place
}

// foods lists what goes into any of the pots, in the order of the plan.
func foods(list []pot) []part {
	var all []part
	seen := map[part]bool{}
	for _, pot := range list {
		for _, total := range pot.batch.Totals {
			if key := (part{total.Food, total.Place}); !seen[key] {
				seen[key] = true
				all = append(all, key)
			}
		}
	}
	return all
}

func ingredient(p *press.Press, part part) string {
	if part.place == trip.AtBowl {
		return p.Tell(prose.Say("%s, onto the bowls", p.FoodName(part.food)))
	}
	return p.FoodName(part.food)
}

func amount(p *press.Press, pot pot, part part) string {
	for _, total := range pot.batch.Totals {
		if total.Food == part.food && total.Place == part.place {
			return p.Weigh(total.Mass)
		}
	}
	return "–"
}

func water(p *press.Press, pot pot) string {
	switch {
	case pot.batch.Water == 0:
		return "–"
	case pot.batch.PourOff > 0:
		return p.Tell(prose.Say("%s, pour off %s", p.Volume(pot.batch.Water), p.Volume(pot.batch.PourOff)))
	default:
		return p.Volume(pot.batch.Water)
	}
}

func heated(p *press.Press, recipe *trip.Recipe, list []pot) bool {
	for _, pot := range list {
		if meal := p.Meal(pot.batch.Day, pot.batch.Meal, pot.batch.Group); meal != nil && cooking.Heated(recipe, pot.batch.Meal) {
			return true
		}
	}
	return false
}

// flame says how long the pot stays on the flame after the boil.
func flame(p *press.Press, recipe *trip.Recipe, pot pot) string {
	meal := p.Meal(pot.batch.Day, pot.batch.Meal, pot.batch.Group)
	switch {
	case meal == nil || !cooking.Heated(recipe, pot.batch.Meal):
		return "–"
	case meal.Cold:
		return p.Tell(prose.Say("no flame"))
	case recipe.Simmer == 0:
		return p.Tell(prose.Say("boil"))
	default:
		return p.Tell(prose.Say("%.0f min", float64(cooking.SimmerAt(recipe, meal.Height))))
	}
}

func method(p *press.Press, recipe *trip.Recipe, width press.Points) press.Block {
	var steps []press.Block
	body := press.Style{Size: 10, Ink: p.Inks.Ink}
	number := press.Style{Size: 10, Bold: true, Ink: p.Inks.Accent}
	for _, step := range recipe.Method {
		if strings.TrimSpace(step) == "" {
			continue
		}
		steps = append(steps, press.Beside(
			press.Placed{Block: p.Spans(number, 16, typeset.Bold(p.Tell(prose.Say("%d", len(steps)+1))))},
			press.Placed{X: 18, Block: p.Text(body, width-18, step)},
		))
	}
	return press.Stack(2, steps...)
}
