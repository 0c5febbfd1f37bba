// Package booklet prints the recipes as the cooks of this trip make them: the
// amounts of every pot in which a recipe is cooked, its water, its minutes at
// that height, and the bags it comes from.
package booklet

import (
	"cmp"
	"slices"
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

// table has a column for each pot. What comes out of another bag than the one
// that holds most of the dish has the code of its bag beside its amount.
func table(p *press.Press, recipe *trip.Recipe, list []pot, width press.Points) press.Block {
	columns := []press.Column{{}}
	for range list {
		columns = append(columns, press.Column{Width: min(potWidth, (width-nameWidth)/press.Points(len(list))-potGap), Right: true})
	}
	t := p.Table(width, 0.8, columns...)
	bold, plain := press.Style{Size: 9, Bold: true, Ink: p.Inks.Ink}, press.Style{Size: 9, Ink: p.Inks.Ink}
	head, quiet := press.Style{Size: 8, Bold: true, Ink: p.Inks.Ink}, press.Style{Size: 8.5, Ink: p.Inks.Quiet}
	line := func(style press.Style, head string, of func(pot) string) press.Block {
		cells := []press.Drawing{p.Cell(quiet, head)}
		for _, pot := range list {
			cells = append(cells, p.Cell(style, of(pot)))
		}
		return t.Row(cells...)
	}
	sources := make([]source, len(list))
	for i, pot := range list {
		sources[i] = sourceOf(pot)
	}
	bagCells := []press.Drawing{p.Cell(quiet, p.Tell(prose.Say("Bags")))}
	for _, source := range sources {
		bagCells = append(bagCells, p.Cell(bold, strings.Join(source.main, " ")))
	}
	rows := []press.Block{
		line(head, p.Tell(prose.Say("When")), func(pot pot) string { return when(p, pot) }),
		line(plain, p.Tell(prose.Say("Eaters")), func(pot pot) string { return eaters(p, pot) }),
		t.Row(bagCells...),
	}
	bowls := false
	for _, food := range foods(list) {
		if food.place == trip.AtBowl && list[0].batch.Meal != trip.Snack && !bowls {
			bowls = true
			rows = append(rows, t.Row(p.Cell(press.Style{Size: 8.5, Bold: true, Ink: p.Inks.Accent}, p.Tell(prose.Say("Onto the bowls")))))
		}
		cells := []press.Drawing{p.Cell(plain, p.FoodName(food.food))}
		for i, pot := range list {
			cells = append(cells, p.SpansCell(plain, fromBag(sources[i].beside[food]), typeset.Bold(amount(p, pot, food))))
		}
		rows = append(rows, t.Row(cells...))
	}
	if slices.ContainsFunc(list, func(pot pot) bool { return pot.batch.Water > 0 }) {
		rows = append(rows, line(bold, p.Tell(prose.Say("Water")), func(pot pot) string { return water(p, pot) }))
	}
	if recipe.Simmer > 0 || heated(p, recipe, list) {
		rows = append(rows, line(bold, p.Tell(prose.Say("On the flame")), func(pot pot) string { return flame(p, recipe, pot) }))
	}
	return press.Stack(0, rows...)
}

// source is where the foods of a pot come from.
type source struct {
	main   []string          // codes of the bags that hold most of it, or what is shared out
	beside map[part][]string // codes of the other bags, by what is taken from them
}

// mostCodes is how many codes stand beside an amount: what comes from more
// bags than that is in bags for each eater.
const mostCodes = 2

// sourceOf tells which bag holds which part of a dish.
func sourceOf(pot pot) source {
	from, most := holders(pot)
	found := source{beside: map[part][]string{}}
	named := map[string]bool{}
	for _, total := range pot.batch.Totals {
		codes := from[total.Food]
		if len(codes) > mostCodes || slices.Equal(codes, []string{most}) {
			continue
		}
		found.beside[part{total.Food, total.Place}] = codes
		for _, code := range codes {
			named[code] = code != most
		}
	}
	for _, bag := range pot.bags {
		if !named[bag.Code] {
			found.main = append(found.main, bag.Code)
		}
	}
	return found
}

// holders gives the codes of the bags that hold each food of a dish, and the
// one that holds most of them.
func holders(pot pot) (from map[trip.FoodID][]string, most string) {
	from, holds := map[trip.FoodID][]string{}, map[string]int{}
	for _, bag := range pot.bags {
		for i := range bag.Uses {
			use := &bag.Uses[i]
			if use.Dish(bag.Group) != pot.dish() {
				continue
			}
			for _, content := range use.Contents {
				if !slices.Contains(from[content.Food], bag.Code) {
					from[content.Food] = append(from[content.Food], bag.Code)
					holds[bag.Code]++
				}
			}
		}
		if most == "" || holds[bag.Code] > holds[most] {
			most = bag.Code
		}
	}
	return from, most
}

func fromBag(codes []string) typeset.Span {
	if len(codes) == 0 {
		return typeset.Plain("")
	}
	return typeset.Plain(strings.Join(codes, " ") + "  ")
}

func when(p *press.Press, pot pot) string {
	meal := p.MealName(pot.batch.Meal)
	if group := p.GroupName(pot.batch.Group); group != "" {
		meal += ", " + group
	}
	parts := []string{p.Day(pot.batch.Day), meal}
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

type part struct {
	food  trip.FoodID
	place trip.Place
}

// foods lists what goes into any of the pots, in the order of the plan, then
// what goes onto the bowls.
func foods(list []pot) []part {
	var all []part
	for _, pot := range list {
		for _, total := range pot.batch.Totals {
			if key := (part{total.Food, total.Place}); !slices.Contains(all, key) {
				all = append(all, key)
			}
		}
	}
	slices.SortStableFunc(all, func(a, b part) int { return cmp.Compare(order(a.place), order(b.place)) })
	return all
}

func order(place trip.Place) int {
	if place == trip.AtBowl {
		return 1
	}
	return 0
}

func amount(p *press.Press, pot pot, part part) string {
	for _, total := range pot.batch.Totals {
		if total.Food == part.food && total.Place == part.place {
			return p.Amount(total.Food, total.Mass)
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
