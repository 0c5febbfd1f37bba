package bags

import (
	"cmp"
	"slices"

	"sumpter/domain/cooking"
	"sumpter/domain/portions"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Compute packs every batch of the trip, a canonical one. What is dry and goes
// into one pot is one bag. What is taken by the spoon or strewn over the bowls
// at several meals of a leg is one store for the cook group; what is handed
// round at one meal is one bag for those who get it. Snacks are one bag for
// each eater and some days. What an eater must keep from traces that others
// spread at the table is sealed apart. An emergency reserve has bags of its
// own. Within that, what runs, melts, crushes,
// needs cold, is counted or stays in its package is packed by itself.
//
// Each bag tells what every dish takes from it and what part each eater gets.
// Contents add up to the batches to the milligram.
func Compute(t *trip.Trip, p portions.Result, c cooking.Result, legs []trip.Leg) Result {
	k := newPacker(t, c, legs)
	k.apart = newApart(k, p.Batches)
	k.stores = k.countMeals(p.Batches)
	k.keptFrom = keptSnacks(p.Reserve)
	for i := range p.Batches {
		k.gather(k.sitting(&p.Batches[i]))
	}
	for i := range p.Reserve {
		k.gatherReserve(&p.Reserve[i])
	}
	k.bags, k.from = make([]Bag, 0, len(k.lots)), make([]*lot, 0, len(k.lots)) // most lots fill one bag
	for _, l := range k.lots {
		k.pack(l)
	}
	k.pour(p.Batches)
	k.inOrder()
	return Result{Bags: k.bags, Findings: k.findings()}
}

// packer is the table on which the bags of a trip are made.
type packer struct {
	trip     *trip.Trip
	legs     []trip.Leg
	foods    map[trip.FoodID]*ware
	hot      []units.Celsius // by day: the hottest a pack has been on its leg
	cold     map[slot]bool
	shelf    shelf
	apart    *apart
	stores   map[storeKey]meals
	runs     map[dish]int    // batches so far of a recipe in a slot
	keptFrom map[keptKey]int // the first day whose snacks are part of the reserve
	lots     []*lot          // in the order of their first use
	byKey    map[lotKey]*lot
	bags     []Bag
	from     []*lot // of each bag
	seen     troubles
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

func newPacker(t *trip.Trip, c cooking.Result, legs []trip.Leg) *packer {
	k := &packer{
		trip: t, legs: legs, foods: wares(t), cold: map[slot]bool{},
		shelf: newShelf(t.Bags), runs: map[dish]int{}, byKey: map[lotKey]*lot{}, seen: newTroubles(),
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

// pack puts one lot into as many bags as it needs.
func (k *packer) pack(l *lot) {
	fit := k.shelf.fit(l, k.trip.Settings.ScaleStep)
	k.seen.note(fit, l)
	for i, part := range fit.parts {
		bag := Bag{
			Key: l.key.text(i + 1), Kind: l.key.kind, Group: l.key.group, Member: l.key.member,
			Part: i + 1, Parts: len(fit.parts), Type: fit.name, Tare: fit.tare, Double: fit.double, Volume: fit.outer,
			VolumeKnown: true,
		}
		if l.key.kind == ReserveBag {
			l.fillReserve(&bag, part)
		} else {
			l.fill(&bag, part)
		}
		bag.Reserve = l.reserve
		bag.Leg = trip.LegOf(k.legs, cmp.Or(l.carriedFrom, bag.Day))
		for _, c := range bag.Contents {
			w := k.foods[c.Food]
			bag.Food += c.Mass
			bag.Tare += w.wrapping(c.Mass)
			bag.Allergens = mergeLabels(bag.Allergens, w.allergens)
			bag.Crushable = bag.Crushable || w.food.Storage.Crushable
			bag.Melts = bag.Melts || k.melts(w, bag.LastDay)
			bag.VolumeKnown = bag.VolumeKnown && w.densityKnown
			if fit.outer == 0 {
				bag.Volume += w.volume(c.Mass)
			}
		}
		k.time(&bag)
		k.bags = append(k.bags, bag)
		k.from = append(k.from, l)
	}
}

// time says how long the bag of a pot is on the flame and off it.
func (k *packer) time(bag *Bag) {
	recipe := k.trip.Recipe(bag.Recipe)
	if recipe == nil || bag.Kind != MealBag || bag.Place != trip.InPot {
		return
	}
	bag.Soak = recipe.Soak
	if !k.cold[slot{bag.Day, bag.Meal, bag.Group}] {
		bag.Minutes = k.minutes(recipe, bag.Day, bag.Meal)
	}
}

// inOrder sorts the bags as they are eaten, stores of a day before its meals,
// and gives them their codes.
func (k *packer) inOrder() {
	order := make([]int, len(k.bags))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int {
		a, b, x, y := &k.bags[i], &k.bags[j], k.from[i], k.from[j]
		return cmp.Or(
			cmp.Compare(a.Day, b.Day), cmp.Compare(a.shelfOrder(), b.shelfOrder()), cmp.Compare(a.Group, b.Group),
			cmp.Compare(x.key.recipe, y.key.recipe), cmp.Compare(x.key.run, y.key.run), cmp.Compare(b.Place, a.Place), // "pot" first
			cmp.Compare(a.Member, b.Member), cmp.Compare(x.key.handling, y.key.handling),
			cmp.Compare(x.key.food, y.key.food), cmp.Compare(x.place, y.place))
	})
	sorted := make([]Bag, len(k.bags))
	for i, at := range order {
		sorted[i] = k.bags[at]
	}
	giveCodes(sorted)
	k.bags = sorted
}

// shelfOrder is the place of a bag in its day: what is taken from at several
// meals, then meal by meal, a reserve last.
func (b *Bag) shelfOrder() int {
	switch {
	case b.Kind == ReserveBag:
		return len(trip.Meals())
	case b.Kind == StoreBag || b.Kind == OwnBag && len(b.Uses) > 1:
		return -1
	}
	return trip.MealOrder(b.Meal)
}
