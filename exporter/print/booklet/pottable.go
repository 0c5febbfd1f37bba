package booklet

import (
	"cmp"
	"slices"
	"strings"

	"sumpter/domain/cooking"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/exporter/print/press"
	"sumpter/exporter/print/typeset"
)

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
