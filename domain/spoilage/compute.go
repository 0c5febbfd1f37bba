package spoilage

import (
	"cmp"
	"slices"

	"sumpter/domain/portions"
	"sumpter/domain/science/daytemp"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Compute follows every ingredient to its slot. The trip is canonical.
//
// Food that needs time/temperature control keeps an exposure account over the
// whole way (2 h in the danger zone, 1 h above 32.2 C, never wound back); all
// food uses up its shelf life by a Q10 factor over the temperatures it meets.
// What is not known is never safe.
func Compute(t *trip.Trip, p portions.Result) Result {
	j := newJudge(t)
	for _, s := range servingsOf(t, p, j.legs) {
		if fate, ok := j.judge(s); ok {
			j.result.Fates = append(j.result.Fates, fate)
		}
	}
	j.result.Findings = j.findings()
	return j.result
}

// judge carries what the parts of the stage share.
type judge struct {
	trip     *trip.Trip
	legs     []trip.Leg
	ways     []way
	packs    []daytemp.Day
	exposure *clock
	quality  map[float64]*clock // by Q10
	wares    map[trip.FoodID]ware
	arrivals map[wareOnLeg]account
	latest   map[lastMeal]int
	reasons  []reason // by place in the fates
	result   Result
}

func newJudge(t *trip.Trip) *judge {
	j := &judge{
		trip: t, legs: t.Legs(), packs: packDays(t), quality: map[float64]*clock{}, wares: make(map[trip.FoodID]ware, len(t.Foods)),
		arrivals: map[wareOnLeg]account{}, latest: map[lastMeal]int{},
	}
	for _, leg := range j.legs {
		j.ways = append(j.ways, wayOf(t, leg))
	}
	j.exposure = newClock(j.packs, exposureBetween)
	for i := range t.Foods {
		w := wareOf(&t.Foods[i])
		j.wares[w.food.ID] = w
		if j.quality[w.q10] == nil {
			j.quality[w.q10] = newClock(j.packs, qualityRate(w.q10))
		}
	}
	return j
}

// serving is one food in one slot.
type serving struct {
	day      int
	meal     trip.Meal
	group    trip.GroupID
	food     trip.FoodID
	leg      int
	mass     units.Mass
	soak     float64 // minutes in cold water, the longest of the slot
	openedAt *moment // when its package was opened, if before this slot
}

type moment struct {
	day  int // place
	hour float64
}

// servingsOf lists the foods of every slot once, by day, meal, group and food,
// and finds out which come from a package that was opened before.
func servingsOf(t *trip.Trip, p portions.Result, legs []trip.Leg) []serving {
	type key struct {
		day   int
		meal  trip.Meal
		group trip.GroupID
		food  trip.FoodID
	}
	at := map[key]int{}
	var list []serving
	recipes := make(map[trip.RecipeID]*trip.Recipe, len(t.Recipes))
	for i := range t.Recipes {
		recipes[t.Recipes[i].ID] = &t.Recipes[i]
	}
	for i := range p.Batches {
		b := &p.Batches[i]
		for _, amount := range b.Totals {
			k := key{b.Day, b.Meal, b.Group, amount.Food}
			place, seen := at[k]
			if !seen {
				place = len(list)
				at[k] = place
				list = append(list, serving{day: b.Day, meal: b.Meal, group: b.Group, food: amount.Food, leg: trip.LegOf(legs, b.Day)})
			}
			list[place].mass += amount.Mass
			if recipe := recipes[b.Recipe]; recipe != nil && recipe.ColdOK && recipe.Water > 0 && amount.Place == trip.InPot {
				list[place].soak = max(list[place].soak, float64(recipe.Soak))
			}
		}
	}
	slices.SortFunc(list, func(a, b serving) int {
		return cmp.Or(cmp.Compare(a.day, b.day), cmp.Compare(trip.MealOrder(a.meal), trip.MealOrder(b.meal)),
			cmp.Compare(a.group, b.group), cmp.Compare(a.food, b.food))
	})
	markOpened(t, list)
	return list
}

// markOpened runs the clock of packages that are carried as bought and turn
// perishable once open: a slot that does not begin with a whole package goes
// on eating the one opened before.
func markOpened(t *trip.Trip, list []serving) {
	type supply struct {
		leg   int
		group trip.GroupID
		food  trip.FoodID
	}
	type state struct {
		left   units.Mass // in the open package
		opened moment
	}
	open := map[supply]state{}
	for i := range list {
		s := &list[i]
		food := t.Food(s.food)
		if food == nil || !food.PackedAsBought || !food.Storage.TCSWhenOpen || len(food.Packages) == 0 {
			continue
		}
		smallest := food.Packages[0].Net
		for _, sold := range food.Packages {
			smallest = min(smallest, sold.Net)
		}
		if smallest <= 0 {
			continue
		}
		k := supply{s.leg, s.group, s.food}
		before := open[k]
		if before.left > 0 {
			opened := before.opened
			s.openedAt = &opened
		}
		now := state{left: before.left - s.mass, opened: before.opened}
		if now.left < 0 {
			now.left = (smallest - (-now.left)%smallest) % smallest
			now.opened = moment{s.day - 1, hourOf(s.meal)}
		}
		open[k] = now
	}
}
