package onward

import (
	"cmp"
	"maps"
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// gains is what one eater gets.
type gains struct {
	kcal    units.Kcal
	protein float64
}

// lot is one recipe of one slot: its bags are eaten together or not at all.
type lot struct {
	home     slot // as planned
	now      slot // as the leader moved it
	recipe   trip.RecipeID
	bags     []*bags.Bag // those that are there or to come
	dishes   []string    // their keys, a pot each
	earliest int         // first day on which it is in the packs
	latest   int         // last day on which all of it is known to be good
	begun    bool        // some of it is eaten today
	servings []trail.Serving
	eaters   map[trip.MemberID]gains
	planned  map[trip.MemberID]gains
	refused  []trip.MemberID // who are there, were not portioned for, and may eat of none of its pots
}

type lotKey struct {
	home   slot
	recipe trip.RecipeID
}

// mostSeconds is how much more than planned one eater is reckoned to eat when
// others are missing (common practice, no source).
const mostSeconds = 1.5

// dishOf gives the key of the dish a bag is for, "d3 dinner g1 r7 b1".
func dishOf(bag *bags.Bag) string { return bag.Uses[0].Dish(bag.Group) }

// gather sorts the bags, as far as each dish takes from them: into dishes,
// gone, or nobody's.
func (w *work) gather() {
	at := map[lotKey]int{}
	for _, bag := range byDish(w.bags) {
		now := slot{bag.Day, bag.Meal, bag.Group}
		if m, ok := w.moved[dishOf(bag)]; ok {
			now = slot{m.Day, m.Meal, m.Group}
		}
		end, ended := w.ends[bag.Key]
		lost := ended && end.End != trip.Eaten
		switch {
		case !ended:
		case w.several[bag.Key]: // what was taken before the end was eaten, the rest is gone
			ended = now.day > 0 && now.day <= end.Day && end.End != trip.NotPacked
			lost = !ended
		case end.End == trip.Eaten:
			now.day = end.Day
		}
		lost = lost || w.unfed[bag.Leg]
		switch {
		case now.day == 0 && !lost:
			w.kept = append(w.kept, bag)
			continue
		case now.day < w.from:
			continue // that day is over
		case lost:
			w.gone = append(w.gone, bag)
		case !w.hasEater(bag, now.day):
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

// hasEater tells whether somebody is there to eat a bag on a day: who it is
// for, and may eat it if it was given to them.
func (w *work) hasEater(bag *bags.Bag, day int) bool {
	if bag.Member == 0 {
		return true
	}
	eater := w.eaterOf(bag, day)
	if eater == bag.Member {
		return w.present(eater, day)
	}
	member := w.trip.Member(eater)
	if member == nil || !w.mayHave(member, bag.Key) {
		w.unsafe = append(w.unsafe, given{bag.Key, day, eater})
		return false
	}
	return w.present(eater, day)
}

// byDish gives bags from which several dishes take once for each of them.
func byDish(all []bags.Bag) []*bags.Bag {
	list := make([]*bags.Bag, 0, len(all))
	for i := range all {
		if len(all[i].Uses) == 0 {
			continue // a reserve is for no dish
		}
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

// dues says who was portioned for how much of each food in a pot.
type dues map[trip.MemberID]map[trip.FoodID]units.Mass

// share says who gets how much of a dish: own bags go to their eater, the rest
// is shared as it was portioned, and what those leave who are not there is
// eaten by the others as far as they can.
func (w *work) share(l *lot) {
	l.planned, l.eaters = map[trip.MemberID]gains{}, map[trip.MemberID]gains{}
	l.latest = w.latest(l)
	pots := map[string]dues{}
	for run, at := range w.batches[lotKey{l.home, l.recipe}] {
		pots[dishKey(l.home, l.recipe, run+1)] = w.portioned(l, at)
	}
	for _, bag := range l.bags {
		if dish := dishOf(bag); !slices.Contains(l.dishes, dish) {
			l.dishes = append(l.dishes, dish)
		}
	}
	w.welcome(l, pots)
	for _, bag := range l.bags {
		if bag.Member == 0 {
			continue
		}
		eater := w.eaterOf(bag, l.now.day)
		mine := pots[dishOf(bag)][eater]
		for _, content := range bag.Contents {
			w.give(l, bag, eater, content.Food, content.Mass)
			if mine != nil && eater == bag.Member { // what was given comes on top
				mine[content.Food] = max(0, mine[content.Food]-content.Mass)
			}
		}
	}
	for _, bag := range l.bags {
		if bag.Member == 0 {
			for _, content := range bag.Contents {
				w.shareOut(l, pots[dishOf(bag)], bag, content)
			}
		}
	}
}

// portioned is what each was planned to eat of a batch.
func (w *work) portioned(l *lot, batch int) dues {
	pot := dues{}
	for _, portion := range w.plan.Portions.Batches[batch].Portions {
		was := l.planned[portion.Member]
		for _, amount := range portion.Amounts {
			was = w.add(was, amount.Food, amount.Mass)
			if pot[portion.Member] == nil {
				pot[portion.Member] = map[trip.FoodID]units.Mass{}
			}
			pot[portion.Member][amount.Food] += amount.Mass
		}
		l.planned[portion.Member] = was
	}
	return pot
}

// shareOut parts what is in a bag among those whose portion has the food.
func (w *work) shareOut(l *lot, pot dues, bag *bags.Bag, content bags.Content) {
	sum := units.Mass(0)
	eaters := w.eatersOf(pot)
	for _, member := range eaters {
		if w.present(member, l.now.day) {
			sum += pot[member][content.Food]
		}
	}
	if sum <= 0 {
		return
	}
	left := content.Mass
	for _, member := range eaters {
		if due := pot[member][content.Food]; due > 0 && w.present(member, l.now.day) {
			part := min(left, due.Scale(mostSeconds), content.Mass.Scale(float64(due)/float64(sum)))
			w.give(l, bag, member, content.Food, part)
			left -= part
		}
	}
}

func (w *work) eatersOf(pot dues) []trip.MemberID { return slices.Sorted(maps.Keys(pot)) }

func (w *work) give(l *lot, bag *bags.Bag, member trip.MemberID, food trip.FoodID, mass units.Mass) {
	l.eaters[member] = w.add(l.eaters[member], food, mass)
	l.servings = append(l.servings, trail.Serving{
		Day: l.now.day, Meal: l.now.meal, Group: l.now.group, Recipe: l.recipe,
		Dish: dishOf(bag), Bag: bag.Key, Place: bag.Place, Member: member, Food: food, Mass: mass,
	})
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
	if last, known := w.fates[l.home]; known {
		return max(last, l.home.day)
	}
	return len(w.trip.Days)
}

// kcal is what a dish brings to those who are there.
func (l *lot) kcal() units.Kcal {
	sum := units.Kcal(0)
	for _, id := range slices.Sorted(maps.Keys(l.eaters)) {
		sum += l.eaters[id].kcal
	}
	return sum
}

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
