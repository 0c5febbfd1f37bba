package trip

import (
	"strings"

	"sumpter/domain/prose"
	"sumpter/domain/units"
)

// Validate gives everything that stops the trip from being planned, all at
// once, in the order of the document. None means that every stage can work;
// it does not mean that the plan is good: that is what findings tell.
func Validate(t *Trip) []Problem {
	c := &checker{trip: t}
	c.head()
	c.things()
	c.settings()
	c.crew()
	c.days()
	c.foodList()
	c.recipeList()
	c.menu()
	c.gearList()
	c.fuels()
	c.bags()
	c.posted()
	c.points()
	c.shops()
	c.pins()
	c.keptPacks()
	c.progress()
	return c.problems
}

// head checks what the trip says of itself and how long its lists are.
func (c *checker) head() {
	t := c.trip
	c.where = Where{List: "trip"}
	c.line("title", "title", t.Title)
	c.notes("notes", "notes", t.Notes)
	c.date("start", "date of the first day", t.Start, true)
	c.line("identity", "identity", t.Identity)
	word(c, "units", "system of units", t.Units, units.Metric, units.US)
	if len(t.Currency) != 3 || strings.Trim(t.Currency, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") != "" {
		c.add("currency", prose.Say("currency is %q", shown(t.Currency)), prose.Say("a code of ISO 4217, three capital letters such as EUR"), prose.Say("Enter the code of the currency."))
	}
}

// things checks the IDs and names of every kind and notes them, so that
// references can be followed.
func (c *checker) things() {
	t := c.trip
	c.groups = known(c, "groups", "cook groups", t.Groups, 1, MaxGroups, func(g *CookGroup) (GroupID, string) { return g.ID, g.Name })
	c.members = known(c, "crew", "members", t.Crew, 1, MaxMembers, func(m *Member) (MemberID, string) { return m.ID, m.Name })
	c.foods = known(c, "foods", "foods", t.Foods, 0, MaxFoods, func(f *Food) (FoodID, string) { return f.ID, f.Name })
	c.recipes = known(c, "recipes", "recipes", t.Recipes, 0, MaxRecipes, func(r *Recipe) (RecipeID, string) { return r.ID, r.Name })
	c.gear = known(c, "gear", "pieces of gear", t.Gear, 0, MaxGear, func(g *Gear) (GearID, string) { return g.ID, g.Name })
	c.pointIDs = known(c, "points", "resupply points", t.Points, 0, MaxPoints, func(p *ResupplyPoint) (PointID, string) { return p.ID, p.Name })
	named(c, "fuels", "fuel containers", t.Fuels, 0, MaxFuels, func(f *FuelContainer) string { return f.Name })
	named(c, "bag_types", "kinds of bag", t.Bags, 1, MaxBagTypes, func(b *BagType) string { return b.Name })
	named(c, "shops", "shops", t.Shops, 0, MaxShops, func(s *Shop) string { return s.Name })
	c.size("days", "days", len(t.Days), 1, MaxDays)
	c.size("menu", "menu cells", len(t.Menu), 0, MaxCells)
	c.size("pins", "pins", len(t.Pins), 0, MaxPins)
}

func (c *checker) size(list, label string, length, low, high int) bool {
	c.where = Where{List: list}
	return c.count("", label, length, low, high)
}

// known checks one kind of thing that has IDs and gives the set of them.
func known[T any, ID ~int64](c *checker, list, label string, things []T, low, high int, of func(*T) (ID, string)) map[ID]bool {
	if !named(c, list, label, things, low, high, func(thing *T) string {
		_, name := of(thing)
		return name
	}) {
		things = nil
	}
	ids := make(map[ID]bool, len(things))
	for i := range things {
		id, name := of(&things[i])
		c.at(list, i, int64(id), name)
		if id <= 0 {
			c.add("id", prose.Say("the ID is %d", id), prose.Say("a whole number from 1"), prose.Say("Give it a number that nothing else of its kind has."))
		} else if ids[id] {
			c.add("id", prose.Say("the ID %d is already taken", id), prose.Say("an ID that nothing else of its kind has"), prose.Say("Give it another number."))
		}
		ids[id] = true
	}
	return ids
}

// named checks one kind of thing that has a name; two that differ in capital
// letters only would be mixed up. It tells whether the list may be looked into.
func named[T any](c *checker, list, label string, things []T, low, high int, of func(*T) string) bool {
	if !c.size(list, label, len(things), low, high) && len(things) > high {
		return false
	}
	first := make(map[string]int, len(things))
	for i := range things {
		name := of(&things[i])
		c.at(list, i, 0, name)
		c.name(name)
		key := strings.ToLower(strings.TrimSpace(name))
		if place, taken := first[key]; taken && key != "" {
			c.add("name", prose.Say("the name %q is already that of number %d", shown(name), place), prose.Say("a name that nothing else of its kind has"), prose.Say("Rename one of the two."))
		} else {
			first[key] = i + 1
		}
	}
	return true
}

// The days a trip may touch.
var (
	firstDate, _ = units.NewDate(1971, 1, 1)
	lastDate, _  = units.NewDate(2199, 12, 31)
)

func (c *checker) date(field, label string, date units.Date, needed bool) {
	switch {
	case !date.IsSet() && needed:
		c.add(field, prose.Say("the %s is not set", prose.Word(label)), prose.Say("a date"), prose.Say("Enter the %s.", prose.Word(label)))
	case date.IsSet() && (date < firstDate || date > lastDate):
		c.add(field, prose.Say("the %s is out of range", prose.Word(label)), prose.Say("%s to %s", firstDate.String(), lastDate.String()), prose.Say("Enter the %s anew.", prose.Word(label)))
	}
}
