package bags

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"sumpter/domain/cooking"
	"sumpter/domain/portions"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Compute packs every batch of the trip, a canonical one. What goes into one
// pot is one bag; what goes onto the bowls is one bag for those who eat the
// same, or one each where portions differ by more than a spoon evens out;
// snacks are one bag per eater, but one bottle for all of what runs. Within
// that, liquids, foods that melt, that crush, that need cold and that stay in
// their package are packed apart.
//
// Contents add up to the batches to the milligram.
func Compute(t *trip.Trip, p portions.Result, c cooking.Result, legs []trip.Leg) Result {
	k := newPacker(t, c, legs)
	for i := range p.Batches {
		k.batch(&p.Batches[i])
	}
	k.inOrder()
	return Result{Bags: k.bags, Findings: k.findings()}
}

// packer is the table on which the bags of a trip are made.
type packer struct {
	trip  *trip.Trip
	legs  []trip.Leg
	foods map[trip.FoodID]*ware
	hot   []units.Celsius // by day: the hottest a pack has been on its leg
	cold  map[slot]bool
	shelf shelf
	runs  map[dish]int // batches so far of a recipe in a slot
	bags  []Bag
	rank  []rank
	seen  troubles
}

type slot struct {
	day   int
	meal  trip.Meal
	group trip.GroupID
}

type dish struct {
	slot
	recipe trip.RecipeID
}

// rank orders bags within their slot as they were made.
type rank struct{ batch, bag int }

func newPacker(t *trip.Trip, c cooking.Result, legs []trip.Leg) *packer {
	k := &packer{
		trip: t, legs: legs, foods: wares(t), cold: map[slot]bool{},
		shelf: newShelf(t.Bags), runs: map[dish]int{}, seen: newTroubles(),
	}
	for _, meal := range c.Meals {
		k.cold[slot{meal.Day, meal.Meal, meal.Group}] = meal.Cold
	}
	for d, day := range t.Days {
		leg := legs[trip.LegOf(legs, d+1)]
		before := wayHeat(t, leg)
		if d+1 > leg.FirstDay {
			before = k.hot[d-1]
		}
		k.hot = append(k.hot, max(before, day.High+units.Celsius(max(0, t.Settings.PackSunHeat))))
	}
	return k
}

// wayHeat is the hottest a leg's food gets before it is in a pack: at home, in
// the car, where its box waits. A box of which that is not known is reckoned
// as hot as the car.
func wayHeat(t *trip.Trip, leg trip.Leg) units.Celsius {
	heat := t.Settings.HomeHigh
	if point := t.Point(leg.From); point != nil {
		return max(heat, point.StoreHigh.Or(t.Settings.CarHigh))
	}
	if t.Settings.CarHours > 0 {
		heat = max(heat, t.Settings.CarHigh)
	}
	return heat
}

// batch makes the bags of one batch.
func (k *packer) batch(b *portions.Batch) {
	where := dish{slot{b.Day, b.Meal, b.Group}, b.Recipe}
	k.runs[where]++
	first := len(k.bags)
	recipe := k.trip.Recipe(b.Recipe)
	var minutes units.Minutes
	if recipe != nil && !k.cold[where.slot] {
		minutes = k.minutes(recipe, where)
	}
	for _, d := range k.destinations(b) {
		for _, lot := range k.lots(d, b.Day) {
			k.pack(where, d, lot)
		}
	}
	for i := range k.bags[first:] {
		if bag := &k.bags[first+i]; recipe != nil && bag.Place == trip.InPot {
			bag.Minutes, bag.Soak = minutes, recipe.Soak
		}
	}
	for i := range k.bags[first:] {
		k.rank = append(k.rank, rank{k.runs[where], first + i})
	}
	k.pour(b, k.bags[first:])
}

// pack puts one lot into as many bags as it needs.
func (k *packer) pack(where dish, d destination, l lot) {
	fit := k.shelf.fit(l, k.trip.Settings.ScaleStep)
	k.seen.note(fit, l)
	for i, part := range fit.parts {
		bag := Bag{
			Key: k.key(where, d, l, i+1),
			Day: where.day, Meal: where.meal, Group: where.group, Recipe: where.recipe,
			Member: d.member, Place: d.place, Eaters: d.eaters,
			Leg: trip.LegOf(k.legs, where.day), Part: i + 1, Parts: len(fit.parts),
			Type: fit.name, Tare: fit.tare, Double: fit.double, Volume: fit.outer,
			VolumeKnown: true, Contents: make([]Content, 0, len(part)),
		}
		for _, a := range part {
			bag.Contents = append(bag.Contents, Content{Food: a.ware.food.ID, Mass: a.mass})
			bag.Food += a.mass
			bag.Kcal += a.ware.food.Kcal(a.mass)
			bag.Tare += a.ware.wrapping(a.mass)
			bag.Crushable = bag.Crushable || a.ware.food.Storage.Crushable
			bag.Melts = bag.Melts || k.melts(a.ware, where.day)
			bag.VolumeKnown = bag.VolumeKnown && a.ware.densityKnown
			if fit.outer == 0 {
				bag.Volume += a.ware.volume(a.mass)
			}
		}
		bag.Allergens = label(part)
		k.bags = append(k.bags, bag)
	}
}

// key names a bag by what it serves, so that it stays the same bag when other
// days change: day, meal, group, recipe, which batch of it, pot or bowl, whose,
// what kind of lot, which part.
func (k *packer) key(where dish, d destination, l lot, part int) string {
	var key strings.Builder
	key.Grow(48) // one piece of memory for most keys
	number := func(sign string, n int64) {
		key.WriteString(sign)
		key.WriteString(strconv.FormatInt(n, 10))
	}
	number("d", int64(where.day))
	key.WriteString(" " + string(where.meal))
	number(" g", int64(where.group))
	number(" r", int64(where.recipe))
	number(" b", int64(k.runs[where]))
	switch {
	case d.member != 0:
		number(" m", int64(d.member))
	case d.first != 0:
		number(" with m", int64(d.first))
	}
	key.WriteString(" " + string(d.place))
	if l.kind != together {
		key.WriteString(" " + l.kind.word())
	}
	if l.kind.alone() {
		number(" f", int64(l.amounts[0].ware.food.ID))
	}
	number(" ", int64(part))
	return key.String()
}

// pour shares the water of a batch over its bags by mass: those for the pot if
// there are any, and of these the lots that are neither liquid nor apart.
func (k *packer) pour(b *portions.Batch, bags []Bag) {
	if b.Water == 0 {
		return
	}
	takers := pick(bags, func(bag *Bag) bool { return bag.Place == trip.InPot && !k.shelf.bottle(bag.Type) })
	if takers == nil {
		takers = pick(bags, func(bag *Bag) bool { return !k.shelf.bottle(bag.Type) })
	}
	if takers == nil {
		takers = pick(bags, func(*Bag) bool { return true })
	}
	var total, sofar units.Mass
	for _, bag := range takers {
		total += bag.Food
	}
	for _, bag := range takers {
		before := b.Water.Scale(float64(sofar) / float64(total))
		sofar += bag.Food
		bag.Water = b.Water.Scale(float64(sofar)/float64(total)) - before
	}
}

func pick(bags []Bag, wanted func(*Bag) bool) []*Bag {
	var list []*Bag
	for i := range bags {
		if wanted(&bags[i]) {
			list = append(list, &bags[i])
		}
	}
	return list
}

// inOrder sorts the bags as they are eaten and gives them their codes.
func (k *packer) inOrder() {
	order := make([]int, len(k.bags))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int {
		a, b := &k.bags[i], &k.bags[j]
		return cmp.Or(
			cmp.Compare(a.Day, b.Day), cmp.Compare(trip.MealOrder(a.Meal), trip.MealOrder(b.Meal)),
			cmp.Compare(a.Group, b.Group), cmp.Compare(a.Recipe, b.Recipe),
			cmp.Compare(k.rank[i].batch, k.rank[j].batch), cmp.Compare(k.rank[i].bag, k.rank[j].bag))
	})
	sorted := make([]Bag, len(k.bags))
	for i, at := range order {
		sorted[i] = k.bags[at]
	}
	giveCodes(sorted)
	k.bags = sorted
}
