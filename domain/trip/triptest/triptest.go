// Package triptest makes trips for tests and benchmarks: random valid ones
// that visit the corners of the model, and large plausible ones. Every figure
// in it is invented or typical, none is to be planned with.
package triptest

import (
	"math/rand/v2"

	"pgregory.net/rapid"

	"sumpter/domain/trip"
)

// Trip generates random valid trips: 1 to 8 people, 1 to 6 days, up to two
// resupply points, foods of which much is unknown, members who join late,
// leave early and cannot eat everything, and menus that are open, partly
// filled and locked. Lists stand in any order; empty ones are nil.
func Trip() *rapid.Generator[*trip.Trip] {
	return rapid.Custom(func(t *rapid.T) *trip.Trip {
		b := builder{
			pick: func(low, high int) int { return rapid.IntRange(low, high).Draw(t, "pick") },
			odd:  true,
		}
		return b.build(size{
			people:  b.pick(1, 8),
			days:    b.pick(1, 6),
			groups:  b.pick(1, 3),
			points:  b.pick(0, 2),
			foods:   b.pick(1, 10),
			recipes: b.pick(0, 8),
		})
	})
}

// Large makes a plausible trip of the given size with a full menu, for
// benchmarks: about 120 recipes, a cook group for some 15 people, a resupply
// point for some five days. The same arguments give the same trip.
func Large(people, days int, seed uint64) *trip.Trip {
	random := rand.New(rand.NewPCG(seed, 0))
	b := builder{pick: func(low, high int) int { return low + random.IntN(high-low+1) }}
	return b.build(size{
		people:  people,
		days:    days,
		groups:  min(4, max(1, (people+14)/15)),
		points:  min(4, max(0, (days-1)/5)),
		foods:   4 * len(larder),
		recipes: 120,
	})
}

// size is how many of each noun a trip has.
type size struct{ people, days, groups, points, foods, recipes int }

// builder makes the nouns of one trip from a source of whole numbers. Odd
// trips also get what is rare: unknown facts, strange menus, loose ends.
type builder struct {
	pick func(low, high int) int // both included
	odd  bool
	trip trip.Trip

	larderOf map[trip.FoodID]ware
	foodsFor map[use][]trip.FoodID
}

func (b *builder) build(s size) *trip.Trip {
	b.larderOf, b.foodsFor = map[trip.FoodID]ware{}, map[use][]trip.FoodID{}
	b.head()
	for _, id := range b.ids(s.groups) {
		b.trip.Groups = append(b.trip.Groups, trip.CookGroup{ID: trip.GroupID(id), Name: named("Group", id)})
	}
	b.days(s.days)
	b.foods(s.foods)
	b.recipes(s.recipes)
	b.crew(s.people)
	b.points(s.points)
	b.shops()
	b.gear()
	b.bags()
	b.menu()
	b.pins()
	b.kept()
	b.progress()
	if b.odd {
		b.disorder()
	}
	done := b.trip
	return &done
}

// disorder turns the lists, so that nothing can lean on their being sorted.
func (b *builder) disorder() {
	turn(b, b.trip.Groups)
	turn(b, b.trip.Crew)
	turn(b, b.trip.Foods)
	turn(b, b.trip.Recipes)
	turn(b, b.trip.Menu)
	turn(b, b.trip.Gear)
	turn(b, b.trip.Points)
	turn(b, b.trip.Shops)
}

func turn[T any](b *builder, list []T) {
	if len(list) < 2 {
		return
	}
	by := b.pick(0, len(list)-1)
	turned := append(append(make([]T, 0, len(list)), list[by:]...), list[:by]...)
	copy(list, turned)
}
