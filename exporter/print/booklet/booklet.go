// Package booklet prints the recipes as the cooks of this trip make them: the
// amounts of every pot in which a recipe is cooked, its water, its minutes at
// that height, and the bags it comes from.
package booklet

import (
	"cmp"
	"slices"
	"strings"

	"sumpter/domain/bags"
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

// dish names the pot as the uses of its bags do.
func (p pot) dish() string {
	use := bags.Use{Day: p.batch.Day, Meal: p.batch.Meal, Recipe: p.batch.Recipe, Batch: p.run}
	return use.Dish(p.batch.Group)
}

// Draw draws the menu, a card for each recipe that is served on any of the
// days, and the cautions for those who cook. Where recipes are chosen it draws
// their cards and the cautions; one that is not served has the amounts for one
// standard eater and for as many as the crew.
func Draw(p *press.Press, days func(day int) bool, chosen []trip.RecipeID) []page.Page {
	return draw(p, prose.Say("Recipe booklet"), days, chosen)
}

// DrawRest draws the same for the rest of a trip from the morning of a day. The
// press is that of the plan of the rest.
func DrawRest(p *press.Press, from int, days func(day int) bool, chosen []trip.RecipeID) []page.Page {
	ahead := func(day int) bool { return day >= from && days(day) }
	return draw(p, prose.Say("Recipe booklet, as things stand on the morning of day %d", from), ahead, chosen)
}

func draw(p *press.Press, title prose.Text, days func(day int) bool, chosen []trip.RecipeID) []page.Page {
	flow := p.Flow(press.Layout{
		Title: p.Tell(title),
		Note:  p.Tell(prose.Say("Amounts are those in the bags. Eaters, water and minutes are reckoned for each day and its height.")),
	})
	served := pots(p, days)
	if len(served) == 0 && len(chosen) == 0 {
		flow.Add(p.Text(press.Style{Size: 10, Ink: p.Inks.Ink}, flow.Width(), p.Tell(prose.Say("Nothing on the menu has been portioned yet."))))
		return flow.Finish()
	}
	if len(chosen) == 0 {
		press.MenuTable(p, flow, days, 0)
	}
	for i := range p.Trip.Recipes {
		recipe := &p.Trip.Recipes[i]
		list := served[recipe.ID]
		switch {
		case len(chosen) > 0 && !slices.Contains(chosen, recipe.ID), len(chosen) == 0 && len(list) == 0:
			continue
		case len(list) == 0:
			flow.Gap(20)
			flow.Keep(5, unserved(p, recipe, flow.Width())...)
		default:
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

// card is a recipe with all its pots. Where the table leaves room beside it,
// the method stands there.
func card(p *press.Press, recipe *trip.Recipe, list []pot, width press.Points) []press.Block {
	blocks := []press.Block{
		p.Text(press.Style{Size: 15, Bold: true, Ink: p.Inks.Ink}, width, recipe.Name).Under(1, width, 0.8, p.Inks.Ink),
		warnings(p, list, width),
	}
	columns := min(len(list), mostPots)
	side := tableWidth(columns, width) + gutter
	if columns == len(list) && width-side >= leastMethod {
		amounts, how := table(p, recipe, list, tableWidth(columns, width)), press.Stack(4, instructions(p, recipe, width-side)...)
		if how.Height <= amounts.Height*mostBeside {
			return append(blocks, press.Beside(press.Placed{Block: amounts}, press.Placed{X: side, Block: how}))
		}
	}
	tables := (len(list) + mostPots - 1) / mostPots
	each := (len(list) + tables - 1) / tables
	for part := range slices.Chunk(list, each) {
		blocks = append(blocks, table(p, recipe, part, tableWidth(len(part), width)))
	}
	return append(blocks, instructions(p, recipe, width)...)
}

// The widths of a table: its figures stay near the names of the foods.
const (
	nameWidth   = 132
	potWidth    = 76
	potGap      = 6 // as between the columns of all tables
	gutter      = 18
	leastMethod = 150
)

// mostBeside is how much higher than the table a method may be to stand beside it.
const mostBeside = 1.3

func tableWidth(pots int, width press.Points) press.Points {
	return min(width, nameWidth+press.Points(pots)*(potWidth+potGap))
}

// instructions is how the recipe is made.
func instructions(p *press.Press, recipe *trip.Recipe, width press.Points) []press.Block {
	blocks := []press.Block{
		p.Text(press.Style{Size: 9.5, Bold: true, Ink: p.Inks.Ink}, width, making(p, recipe)),
		method(p, recipe, width),
	}
	if recipe.Notes != "" {
		blocks = append(blocks, p.Text(press.Style{Size: 8.5, Ink: p.Inks.Quiet}, width, recipe.Notes))
	}
	return blocks
}

// warnings tells the allergens of all pots, or of those of each cook group
// where they are not the same.
func warnings(p *press.Press, list []pot, width press.Points) press.Block {
	var groups []trip.GroupID
	byGroup := map[trip.GroupID][]pot{}
	for _, pot := range list {
		if byGroup[pot.batch.Group] == nil {
			groups = append(groups, pot.batch.Group)
		}
		byGroup[pot.batch.Group] = append(byGroup[pot.batch.Group], pot)
	}
	same := true
	for _, group := range groups {
		same = same && slices.Equal(allergens(byGroup[group]), allergens(list))
	}
	if same {
		return warning(p, list, width)
	}
	const name = 70
	var rows []press.Block
	for _, group := range groups {
		rows = append(rows, press.Beside(
			press.Placed{Block: p.Text(press.Style{Size: 9.5, Bold: true, Ink: p.Inks.Ink}, name, p.GroupName(group))},
			press.Placed{X: name + 6, Block: warning(p, byGroup[group], width-name-6)},
		))
	}
	return press.Stack(2, rows...)
}

func warning(p *press.Press, list []pot, width press.Points) press.Block {
	found := allergens(list)
	if len(found) == 0 {
		return p.Text(press.Style{Size: 8.5, Ink: p.Inks.Quiet}, width, p.Tell(prose.Say("no declared allergen, as far as the foods say")))
	}
	return p.Warning(9, width, press.Allergens(found))
}

// allergens gives the worst state of each allergen over the bags of pots, in
// the order of their names.
func allergens(list []pot) []bags.Allergen {
	var all []bags.Allergen
	for _, pot := range list {
		for _, bag := range pot.bags {
			all = press.Worst(all, bag.Allergens)
		}
	}
	slices.SortFunc(all, func(a, b bags.Allergen) int { return cmp.Compare(a.Allergen, b.Allergen) })
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
