package onward

import (
	"cmp"
	"maps"
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/needs"
	"sumpter/domain/plan"
	"sumpter/domain/portions"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// slot is one meal of one cook group.
type slot struct {
	day   int
	meal  trip.Meal
	group trip.GroupID
}

func (a slot) compare(b slot) int {
	return cmp.Or(cmp.Compare(a.day, b.day), cmp.Compare(trip.MealOrder(a.meal), trip.MealOrder(b.meal)), cmp.Compare(a.group, b.group))
}

// gains is what one eater gets.
type gains struct {
	kcal    units.Kcal
	protein float64
}

// lot is one dish of one slot: its bags are eaten together or not at all.
type lot struct {
	home     slot // as planned
	now      slot // as the leader moved it
	recipe   trip.RecipeID
	bags     []*bags.Bag // those that are there or to come
	dishes   []string    // their keys
	all      int         // bags it was packed in
	earliest int         // first day on which it is in the packs
	latest   int         // last day on which all of it is known to be good
	begun    bool        // some of it is eaten today
	eaters   map[trip.MemberID]gains
	planned  map[trip.MemberID]gains
}

// mostSeconds is how much more than planned one eater is reckoned to eat when
// others are missing (common practice, no source).
const mostSeconds = 1.5

// work is the state from which the rest is planned.
type work struct {
	plan *plan.Plan
	trip *trip.Trip
	done *trip.Progress
	from int

	foods    map[trip.FoodID]*trip.Food
	recipes  map[trip.RecipeID]*trip.Recipe
	proposed *carry.Decided // for the morning of from
	needs    needs.Result   // of those who are there
	ends     map[string]trip.BagEnd
	moved    map[string]trip.DishMove // by dish; what was decided last
	unfed    map[int]bool             // legs whose box did not come
	several  map[string]bool          // bags from which several dishes take
	lots     []lot                    // by home and recipe
	gone     []*bags.Bag              // of days that are left
	orphaned []*bags.Bag              // own bags of those who are not there
	kept     []*bags.Bag              // carried on for no meal yet
}

func newWork(p *plan.Plan, done *trip.Progress, from int) *work {
	known := *p.Trip // the plan may be older than what was noted
	known.Progress = *done
	w := &work{
		plan: p, trip: &known, done: done, from: from,
		foods: map[trip.FoodID]*trip.Food{}, recipes: map[trip.RecipeID]*trip.Recipe{},
		ends: map[string]trip.BagEnd{}, moved: map[string]trip.DishMove{}, unfed: map[int]bool{}, several: map[string]bool{},
	}
	for i := range p.Bags.Bags {
		w.several[p.Bags.Bags[i].Key] = len(p.Bags.Bags[i].Uses) > 1
	}
	for i := range w.trip.Foods {
		w.foods[w.trip.Foods[i].ID] = &w.trip.Foods[i]
	}
	for i := range w.trip.Recipes {
		w.recipes[w.trip.Recipes[i].ID] = &w.trip.Recipes[i]
	}
	for _, e := range done.Ends {
		w.ends[e.Bag] = e
	}
	decided := slices.Clone(done.Replans)
	slices.SortFunc(decided, func(a, b trip.Replan) int { return cmp.Compare(a.Day, b.Day) })
	for _, replan := range decided {
		for _, m := range replan.Moves {
			w.moved[m.Dish] = m
		}
	}
	for i, leg := range p.Legs {
		w.unfed[i] = leg.From != 0 && slices.Contains(done.MissingBoxes, leg.From)
	}
	w.gather()
	return w
}

// present tells whether a member is there on a day, after all.
func (w *work) present(id trip.MemberID, day int) bool {
	member := w.trip.Member(id)
	return member != nil && w.trip.There(member, day)
}

// dishOf gives the key of the dish a bag is for, "d3 dinner g1 r7 b1".
func dishOf(bag *bags.Bag) string { return bag.Uses[0].Dish(bag.Group) }

// gather sorts the bags, as far as each dish takes from them: into dishes,
// gone, or nobody's.
func (w *work) gather() {
	at := map[lotKey]int{}
	for _, bag := range byDish(w.plan.Bags.Bags) {
		now := slot{bag.Day, bag.Meal, bag.Group}
		if m, ok := w.moved[dishOf(bag)]; ok {
			now = slot{m.Day, m.Meal, m.Group}
		}
		end, ended := w.ends[bag.Key]
		lost := ended && end.End != trip.Eaten || w.unfed[bag.Leg]
		switch {
		case !ended:
		case w.several[bag.Key]: // what was taken before the end was eaten, the rest is gone
			ended = bag.Day <= end.Day
			lost = lost && !ended || bag.Day > end.Day
		case end.End == trip.Eaten:
			now.day = end.Day
		}
		switch {
		case now.day == 0 && !lost:
			w.kept = append(w.kept, bag)
			continue
		case now.day < w.from:
			continue // that day is over
		case lost:
			w.gone = append(w.gone, bag)
		case bag.Member != 0 && !w.present(bag.Member, now.day):
			w.orphaned = append(w.orphaned, bag)
			continue
		}
		home := slot{bag.Day, bag.Meal, bag.Group}
		k := lotKey{home, bag.Recipe}
		place, seen := at[k]
		if !seen {
			place = len(w.lots)
			at[k] = place
			w.lots = append(w.lots, lot{home: home, now: now, recipe: bag.Recipe, earliest: w.plan.Legs[bag.Leg].FirstDay})
		}
		l := &w.lots[place]
		l.all++
		if !lost {
			l.bags = append(l.bags, bag)
			l.now = now
			l.begun = l.begun || ended
		}
	}
	slices.SortStableFunc(w.lots, func(a, b lot) int { return cmp.Or(a.home.compare(b.home), cmp.Compare(a.recipe, b.recipe)) })
	for i := range w.lots {
		w.share(&w.lots[i])
	}
}

// byDish gives bags from which several dishes take once for each of them.
func byDish(all []bags.Bag) []*bags.Bag {
	var list []*bags.Bag
	for i := range all {
		if len(all[i].Uses) < 2 {
			list = append(list, &all[i])
			continue
		}
		parts := all[i].ByDish()
		for j := range parts {
			list = append(list, &parts[j])
		}
	}
	return list
}

type lotKey struct {
	home   slot
	recipe trip.RecipeID
}

// share says who gets how much of a dish: own bags go to their eater, the rest
// is shared as it was portioned, and what those leave who are not there is
// eaten by the others as far as they can.
func (w *work) share(l *lot) {
	l.planned, l.eaters, l.dishes = map[trip.MemberID]gains{}, map[trip.MemberID]gains{}, nil
	due := map[trip.MemberID]map[trip.FoodID]units.Mass{}
	for i := range w.plan.Portions.Batches {
		batch := &w.plan.Portions.Batches[i]
		if (slot{batch.Day, batch.Meal, batch.Group}) != l.home || batch.Recipe != l.recipe {
			continue
		}
		for _, portion := range batch.Portions {
			w.portion(l, due, &portion)
		}
	}
	for _, bag := range l.bags {
		if dish := dishOf(bag); !slices.Contains(l.dishes, dish) {
			l.dishes = append(l.dishes, dish)
		}
	}
	w.welcome(l, due)
	for _, bag := range l.bags {
		if bag.Member == 0 {
			continue
		}
		for _, content := range bag.Contents {
			w.give(l, bag.Member, content.Food, content.Mass)
			if mine := due[bag.Member]; mine != nil {
				mine[content.Food] = max(0, mine[content.Food]-content.Mass)
			}
		}
	}
	for _, bag := range l.bags {
		if bag.Member == 0 {
			for _, content := range bag.Contents {
				w.shareOut(l, due, content.Food, content.Mass)
			}
		}
	}
	l.latest = w.latest(l)
}

func (w *work) portion(l *lot, due map[trip.MemberID]map[trip.FoodID]units.Mass, portion *portions.Portion) {
	was := l.planned[portion.Member]
	for _, amount := range portion.Amounts {
		was = w.add(was, amount.Food, amount.Mass)
		if due[portion.Member] == nil {
			due[portion.Member] = map[trip.FoodID]units.Mass{}
		}
		due[portion.Member][amount.Food] += amount.Mass
	}
	l.planned[portion.Member] = was
}

// shareOut parts what is in a bag among those whose portion has the food.
func (w *work) shareOut(l *lot, due map[trip.MemberID]map[trip.FoodID]units.Mass, food trip.FoodID, mass units.Mass) {
	sum := units.Mass(0)
	for _, member := range w.eatersOf(due) {
		if w.present(member, l.now.day) {
			sum += due[member][food]
		}
	}
	if sum <= 0 {
		return
	}
	for _, member := range w.eatersOf(due) {
		if w.present(member, l.now.day) {
			most := due[member][food].Scale(mostSeconds)
			w.give(l, member, food, min(most, mass.Scale(float64(due[member][food])/float64(sum))))
		}
	}
}

func (w *work) eatersOf(due map[trip.MemberID]map[trip.FoodID]units.Mass) []trip.MemberID {
	var list []trip.MemberID
	for i := range w.trip.Crew {
		if _, ok := due[w.trip.Crew[i].ID]; ok {
			list = append(list, w.trip.Crew[i].ID)
		}
	}
	return list
}

func (w *work) give(l *lot, member trip.MemberID, food trip.FoodID, mass units.Mass) {
	l.eaters[member] = w.add(l.eaters[member], food, mass)
}

func (w *work) add(to gains, id trip.FoodID, mass units.Mass) gains {
	food := w.foods[id]
	if food == nil {
		return to
	}
	to.kcal += food.Kcal(mass)
	to.protein += food.EatenGrams(mass) / 100 * food.Per100g.ProteinGrams.Or(0)
	return to
}

// latest is the last day on which everything in a dish is known to be good;
// where that is not known it is the day it was planned for.
func (w *work) latest(l *lot) int {
	last := len(w.trip.Days)
	for i := range w.plan.Spoilage.Fates {
		fate := &w.plan.Spoilage.Fates[i]
		if (slot{fate.Day, fate.Meal, fate.Group}) != l.home {
			continue
		}
		last = min(last, max(fate.LatestDay, l.home.day))
	}
	return last
}

// kcal is what a dish brings to those who are there.
func (l *lot) kcal() units.Kcal { return sumOf(l.eaters) }

// wanted is what it was planned to bring to those who are there.
func (w *work) wanted(l *lot) units.Kcal {
	sum := units.Kcal(0)
	for i := range w.trip.Crew {
		if id := w.trip.Crew[i].ID; w.present(id, l.home.day) {
			sum += l.planned[id].kcal
		}
	}
	return sum
}

func sumOf(eaters map[trip.MemberID]gains) units.Kcal {
	sum := units.Kcal(0)
	for _, id := range slices.Sorted(maps.Keys(eaters)) {
		sum += eaters[id].kcal
	}
	return sum
}
