package press

import (
	"strings"

	"sumpter/domain/bags"
	"sumpter/domain/cooking"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/exporter/print/typeset"
)

// What is said of a bag, alike on all papers.

// DishName names what a bag becomes; a store by its food.
func (p *Press) DishName(bag *bags.Bag) string {
	switch {
	case bag.Kind == bags.ReserveBag:
		return p.Tell(prose.Say("emergency reserve"))
	case bag.Kind == bags.SnackBag && bag.Reserve:
		return p.Tell(prose.Say("Snacks, reserve: not before there is need"))
	case bag.Kind == bags.SnackBag && len(bag.Uses) > 1:
		return p.Tell(prose.Say("Snacks"))
	case len(bag.Uses) > 1:
		var names []string
		for _, content := range bag.Contents {
			names = append(names, p.FoodName(content.Food))
		}
		return strings.Join(names, ", ")
	}
	if recipe := p.Recipe(bag.Recipe); recipe != nil {
		return recipe.Name
	}
	return p.Tell(prose.Say("a dish that is not in the trip"))
}

// Plain tells whether a bag is one food and is called by its name.
func (p *Press) Plain(bag *bags.Bag) bool {
	return len(bag.Contents) == 1 && p.DishName(bag) == p.FoodName(bag.Contents[0].Food)
}

// When says for which meal a bag is, or that several take from it.
func (p *Press) When(bag *bags.Bag) string {
	if bag.Kind == bags.ReserveBag {
		return p.Tell(prose.Say("only in need"))
	}
	if len(bag.Uses) > 1 && bag.Kind != bags.SnackBag {
		return p.Tell(prose.Say("store"))
	}
	return p.MealName(bag.Meal)
}

// BagDays says on which days a bag is eaten from, with their dates.
func (p *Press) BagDays(bag *bags.Bag) string {
	if bag.Kind == bags.ReserveBag {
		return p.Tell(prose.Say("to day %d", bag.LastDay))
	}
	if bag.LastDay <= bag.Day {
		return p.Day(bag.Day)
	}
	first, last := p.ShortDate(p.Trip.DateOf(bag.Day)), p.ShortDate(p.Trip.DateOf(bag.LastDay))
	if first == "" || last == "" {
		return p.Tell(prose.Say("Days %d to %d", bag.Day, bag.LastDay))
	}
	return p.Tell(prose.Say("Days %d to %d, %s to %s", bag.Day, bag.LastDay, first, last))
}

// Eaters says who eats a bag: "only for Kim", "for 5".
func (p *Press) Eaters(bag *bags.Bag) string {
	if only := bag.OnlyEater(); only != 0 {
		return p.Tell(prose.Say("only for %s", p.MemberName(only)))
	}
	return p.Tell(prose.Say("for %d", bag.Eaters))
}

// Part says which of several bags of a dish it is, or nothing.
func (p *Press) Part(bag *bags.Bag) string {
	if bag.Parts < 2 {
		return ""
	}
	return p.Tell(prose.Say("bag %d of %d", bag.Part, bag.Parts))
}

// Cook says what to do with a bag, in short.
func (p *Press) Cook(bag *bags.Bag) string {
	if bag.Kind == bags.ReserveBag {
		return p.Tell(prose.Say("leave it sealed until there is need"))
	}
	var parts []string
	recipe, meal := p.Recipe(bag.Recipe), p.Meal(bag.Day, bag.Meal, bag.Group)
	cold := meal != nil && meal.Cold
	if len(bag.Uses) > 1 && bag.Kind != bags.SnackBag {
		return p.Tell(prose.Say("take from it %d times; the recipe cards say how much", len(bag.Uses)))
	}
	if bag.Place == trip.AtBowl && bag.Meal != trip.Snack && bag.Water == 0 {
		parts = append(parts, p.Tell(prose.Say("onto the bowls")))
	}
	if bag.Water > 0 {
		parts = append(parts, p.Tell(prose.Say("add %s of water", p.Volume(bag.Water))))
	}
	heated := bag.Place == trip.InPot && recipe != nil && meal != nil && cooking.Heated(recipe, bag.Meal)
	switch {
	case cold && heated:
		parts = append(parts, p.Tell(prose.Say("no flame that day: make it cold")))
	case bag.Minutes > 0:
		parts = append(parts, p.Tell(prose.Say("%.0f min on the flame", float64(bag.Minutes))))
	case heated:
		parts = append(parts, p.Tell(prose.Say("bring to the boil")))
	}
	if bag.Soak > 0 {
		parts = append(parts, p.Tell(prose.Say("%.0f min off the flame", float64(bag.Soak))))
	}
	return strings.Join(parts, ", ")
}

// Takes lists what each meal takes from a bag that serves several; nothing for
// other bags.
func (p *Press) Takes(bag *bags.Bag) []string {
	if len(bag.Uses) < 2 {
		return nil
	}
	list := make([]string, len(bag.Uses))
	for i := range bag.Uses {
		use := &bag.Uses[i]
		if bag.Kind == bags.SnackBag {
			list[i] = p.Tell(prose.Say("Day %d: %s", use.Day, p.Weigh(use.Mass())))
			continue
		}
		list[i] = p.Tell(prose.Say("Day %d, %s: %s", use.Day, use.Meal, p.Weigh(use.Mass())))
		if recipe := p.Recipe(use.Recipe); recipe != nil {
			list[i] += " · " + recipe.Name
		}
	}
	return list
}

// mostBeside is how many bags of a pot are named on the label of another.
const mostBeside = 3

// With names the other bags of the same pot and the same eaters, or nothing.
func (p *Press) With(bag *bags.Bag) string {
	var codes []string
	for _, other := range p.together(bag) {
		if other != bag {
			codes = append(codes, other.Code)
		}
	}
	switch more := len(codes) - mostBeside; {
	case len(codes) == 0:
		return ""
	case more > 1:
		return p.Tell(prose.Say("together with %s and %d more", strings.Join(codes[:mostBeside], ", "), more))
	default:
		return p.Tell(prose.Say("together with %s", strings.Join(codes, ", ")))
	}
}

// First tells whether a bag is the first of those that are made together and
// that this dish uses up: what it takes from a store comes beside.
func (p *Press) First(bag *bags.Bag) bool {
	for _, other := range p.together(bag) {
		if len(other.Uses) == 1 {
			return other == bag
		}
	}
	return true
}

// together lists the bags of a pot that the same people eat.
func (p *Press) together(bag *bags.Bag) []*bags.Bag {
	var list []*bags.Bag
	for _, other := range p.Pot(bag) {
		if other.Member == bag.Member {
			list = append(list, other)
		}
	}
	return list
}

// Contents lists what is in a bag with its mass, in the order of the plan.
func (p *Press) Contents(bag *bags.Bag) []typeset.Span {
	return p.contents(bag, bag.Contents)
}

func (p *Press) contents(bag *bags.Bag, list []bags.Content) []typeset.Span {
	var spans []typeset.Span
	for i, content := range list {
		if i > 0 {
			spans = append(spans, typeset.Plain("\u00a0· "))
		}
		spans = append(spans, typeset.Bold(p.Amount(content.Food, content.Mass)), typeset.Plain("\u00a0"+p.contentName(bag, content.Food)))
	}
	return spans
}

// contentName names a food in a bag, and where it is put in if that is on the way.
func (p *Press) contentName(bag *bags.Bag, food trip.FoodID) string {
	if box := p.BoughtAt(bag.Key, food); box != nil {
		return p.Tell(prose.Say("%s, bought at %s", p.FoodName(food), p.PlaceName(box.Point)))
	}
	return p.FoodName(food)
}

// SomeContents lists the first foods of a bag and says how many more there are.
func (p *Press) SomeContents(bag *bags.Bag, most int) []typeset.Span {
	if len(bag.Contents) <= most {
		return p.Contents(bag)
	}
	return append(p.contents(bag, bag.Contents[:most]),
		typeset.Plain("\u00a0· "+p.Tell(prose.Say("and %d more: see the packing list", len(bag.Contents)-most))))
}

// Handling says in what a bag is packed and what it does not bear.
func (p *Press) Handling(bag *bags.Bag) []string {
	var list []string
	switch {
	case bag.Type == trip.AsBought:
		list = append(list, p.Tell(prose.Say("stays as bought")))
	case bag.Type != "":
		list = append(list, strings.ReplaceAll(bag.Type, " ", "\u00a0"))
	}
	if bag.Double {
		list = append(list, p.Tell(prose.Say("two bags")))
	}
	return append(list, p.Care(bag)...)
}

// Care says what a bag does not bear.
func (p *Press) Care(bag *bags.Bag) []string {
	var list []string
	if bag.Crushable {
		list = append(list, p.Tell(prose.Say("breaks easily")))
	}
	if bag.Melts {
		list = append(list, p.Tell(prose.Say("melts in heat")))
	}
	return list
}

// Carried says whose pack a bag is in, and where it waits before.
func (p *Press) Carried(bag *bags.Bag) string {
	var text string
	for i, carrier := range p.Carriers(bag.Key) {
		if i == 0 {
			text = p.Tell(prose.Say("pack: %s", p.MemberName(carrier.Member)))
			continue
		}
		text = p.Tell(prose.Say("%s, from day %d %s", text, carrier.FromDay, p.MemberName(carrier.Member)))
	}
	if text == "" {
		text = p.Tell(prose.Say("nobody carries it yet"))
	}
	if box := p.Box(bag.Key); box != nil {
		text = p.Tell(prose.Say("box: %s, then %s", p.PlaceName(box.Point), text))
	}
	return text
}
