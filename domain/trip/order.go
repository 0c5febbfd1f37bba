package trip

import (
	"cmp"
	"slices"
)

func sortIDs[T cmp.Ordered](ids []T) { slices.Sort(ids) }

// Canonical gives a copy of the trip whose lists stand in the order of their
// IDs (cells by day, group and meal; fuels and bags by size and name; shops by
// name; packed bags by key), so that a plan never depends on how a list
// happens to be sorted. The copy shares nothing that a planner changes.
func (t *Trip) Canonical() *Trip {
	c := *t
	c.Groups = sortedBy(t.Groups, func(a, b CookGroup) int { return cmp.Compare(a.ID, b.ID) })
	c.Crew = sortedBy(t.Crew, func(a, b Member) int { return cmp.Compare(a.ID, b.ID) })
	c.Foods = sortedBy(t.Foods, func(a, b Food) int { return cmp.Compare(a.ID, b.ID) })
	c.Recipes = sortedBy(t.Recipes, func(a, b Recipe) int { return cmp.Compare(a.ID, b.ID) })
	c.Gear = sortedBy(t.Gear, func(a, b Gear) int { return cmp.Compare(a.ID, b.ID) })
	c.Points = sortedBy(t.Points, func(a, b ResupplyPoint) int {
		return cmp.Or(cmp.Compare(a.AfterDay, b.AfterDay), cmp.Compare(a.ID, b.ID))
	})
	c.Shops = sortedBy(t.Shops, func(a, b Shop) int { return cmp.Compare(a.Name, b.Name) })
	c.Menu = sortedBy(t.Menu, compareCells)
	c.Fuels = sortedBy(t.Fuels, func(a, b FuelContainer) int {
		return cmp.Or(cmp.Compare(a.Fuel, b.Fuel), cmp.Compare(a.Net, b.Net), cmp.Compare(a.Name, b.Name))
	})
	c.Bags = sortedBy(t.Bags, func(a, b BagType) int {
		return cmp.Or(cmp.Compare(a.Nominal, b.Nominal), cmp.Compare(a.Name, b.Name))
	})
	c.Pins = sortedBy(t.Pins, func(a, b Pin) int {
		return cmp.Or(cmp.Compare(a.Bag, b.Bag), cmp.Compare(a.Gear, b.Gear), cmp.Compare(a.Fuel, b.Fuel), cmp.Compare(a.Member, b.Member))
	})
	c.Kept = canonicalKept(t.Kept)
	c.Progress = t.Progress.canonical()
	return &c
}

// canonical puts bags in the order of their keys. Purchases keep theirs: two of
// one kind are told apart by nothing else.
func (p Progress) canonical() Progress {
	p.Packed = sortedBy(p.Packed, func(a, b PackedBag) int { return cmp.Compare(a.Bag, b.Bag) })
	p.Ends = sortedBy(p.Ends, func(a, b BagEnd) int { return cmp.Compare(a.Bag, b.Bag) })
	p.PartsGone = sortedBy(p.PartsGone, func(a, b PartGone) int { return cmp.Or(cmp.Compare(a.Bag, b.Bag), cmp.Compare(a.Day, b.Day)) })
	p.FuelNotes = sortedBy(p.FuelNotes, func(a, b FuelNote) int {
		return cmp.Or(cmp.Compare(a.Container, b.Container), cmp.Compare(a.Day, b.Day))
	})
	p.MissingBoxes = sortedBy(p.MissingBoxes, func(a, b PointID) int { return cmp.Compare(a, b) })
	p.canonicalWay()
	return p
}

func sortedBy[T any](list []T, compare func(a, b T) int) []T {
	sorted := slices.Clone(list)
	slices.SortStableFunc(sorted, compare)
	return sorted
}

func compareCells(a, b Cell) int {
	return cmp.Or(cmp.Compare(a.Day, b.Day), cmp.Compare(a.Group, b.Group), cmp.Compare(MealOrder(a.Meal), MealOrder(b.Meal)))
}

// MealOrder gives the place of a meal in the day, from 0.
func MealOrder(meal Meal) int {
	for i, known := range Meals() {
		if known == meal {
			return i
		}
	}
	return len(Meals())
}
