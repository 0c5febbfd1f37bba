package bags

import (
	"slices"

	"sumpter/domain/portions"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// sitting is one batch with what decides about its bags.
type sitting struct {
	*portions.Batch
	dish dish
	run  int // which of the batches of the recipe in the slot, from 1
	leg  int
	pot  bool // something goes into a pot, so that the rest goes on top
	hand bool // something is taken by hand at the bowls
}

func (k *packer) sitting(b *portions.Batch) *sitting {
	s := &sitting{Batch: b, dish: dish{slot{b.Day, b.Meal, b.Group}, b.Recipe}, leg: trip.LegOf(k.legs, b.Day), pot: hasPot(b)}
	s.hand = slices.ContainsFunc(b.Totals, func(a portions.Amount) bool {
		w := k.foods[a.Food]
		return w != nil && (a.Place != trip.InPot || !s.pot) && !spooned(w, s.Meal, a.Place, s.pot)
	})
	k.runs[s.dish]++
	s.run = k.runs[s.dish]
	return s
}

// seasoningShare of a dish is too little for a bag of its own: where only that
// goes into the pot, it lies with what it is eaten with. Common practice, no
// source.
const seasoningShare = 0.05

func hasPot(b *portions.Batch) bool {
	var pot, all units.Mass
	for _, a := range b.Totals {
		all += a.Mass
		if a.Place == trip.InPot {
			pot += a.Mass
		}
	}
	switch {
	case b.Meal == trip.Snack || pot == 0:
		return false
	case pot == all || float64(pot) >= seasoningShare*float64(all):
		return true
	}
	for i := range b.Portions {
		for _, a := range b.Portions[i].Amounts {
			if a.Place == trip.InPot {
				pot -= a.Mass
			}
		}
	}
	return pot > 0 // of which nobody has a part: second helpings
}

// storeKey is a food that a cook group takes by the spoon on a leg.
type storeKey struct {
	leg   int
	group trip.GroupID
	food  trip.FoodID
}

// meals counts those in which a food is taken, each once.
type meals struct {
	count int
	last  slot
}

// countMeals counts for each food in how many meals of a leg it is taken by
// the spoon.
func (k *packer) countMeals(batches []portions.Batch) map[storeKey]meals {
	counts := map[storeKey]meals{}
	for i := range batches {
		b := &batches[i]
		pot, at := hasPot(b), slot{b.Day, b.Meal, b.Group}
		for _, a := range b.Totals {
			w := k.foods[a.Food]
			if w == nil || a.Mass <= 0 || !spooned(w, b.Meal, a.Place, pot) {
				continue
			}
			key := storeKey{trip.LegOf(k.legs, b.Day), b.Group, a.Food}
			if seen := counts[key]; seen.last != at {
				counts[key] = meals{seen.count + 1, at}
			}
		}
	}
	return counts
}

// spooned tells what keeps in an opened bag or bottle and is taken from it by
// the spoon: all that runs; powders stirred into the bowl; what is strewn over
// a dish from the pot.
func spooned(w *ware, meal trip.Meal, place trip.Place, pot bool) bool {
	switch {
	case w.food.PackedAsBought || w.perishes():
		return false
	case w.runs():
		return true
	case place == trip.InPot || meal == trip.Snack:
		return false
	default:
		return w.food.Form == trip.Powder || pot
	}
}

// stored tells whether a food of a batch comes from the store of its group.
func (k *packer) stored(s *sitting, w *ware, place trip.Place) bool {
	from := k.trip.Settings.StoreMeals
	return from > 0 && spooned(w, s.Meal, place, s.pot) && k.stores[storeKey{s.leg, s.Group, w.food.ID}].count >= from
}

// gather hands the foods of a batch to their lots.
func (k *packer) gather(s *sitting) {
	if s.pot {
		for _, a := range s.Totals {
			if w := k.foods[a.Food]; w != nil && a.Mass > 0 && a.Place == trip.InPot {
				k.lot(k.potKey(s, w)).add(s, trip.InPot, line{ware: w, mass: a.Mass})
			}
		}
	}
	sets := k.eaterSets(s)
	for i := range s.Portions {
		p := &s.Portions[i]
		for _, a := range p.Amounts {
			w := k.foods[a.Food]
			if w == nil || a.Mass <= 0 || s.pot && a.Place == trip.InPot {
				continue
			}
			key := k.bowlKey(s, w, p.Member)
			if key.mixed() {
				key.food = sets[a.Food]
			}
			l := k.lot(key)
			l.reserve = l.reserve || key.kind == SnackBag && k.keptBack(s, w, p.Member)
			l.add(s, trip.AtBowl, line{member: p.Member, ware: w, mass: a.Mass})
		}
	}
}

// lot finds the lot of a key, or begins it.
func (k *packer) lot(key lotKey) *lot {
	l := k.byKey[key]
	if l == nil {
		l = &lot{key: key, place: len(k.lots)}
		k.byKey[key] = l
		k.lots = append(k.lots, l)
	}
	return l
}

// potKey: what is dry goes into the bag of its pot, what runs into a bottle.
// A pot from which somebody eats who must be kept from traces gets its own.
func (k *packer) potKey(s *sitting, w *ware) lotKey {
	if k.stored(s, w, trip.InPot) {
		return lotKey{
			kind: StoreBag, day: k.legs[s.leg].FirstDay, group: s.Group, handling: k.storeHandling(w, s.leg), food: w.food.ID,
			clean: k.apart.eaters(s),
		}
	}
	key := lotKey{kind: MealBag, day: s.Day, meal: s.Meal, group: s.Group, recipe: s.Recipe, run: s.run, place: trip.InPot}
	if key.handling = w.handling(k.melts(w, s.Day)); key.handling.alone(false) {
		key.food = w.food.ID
	}
	return key
}

// bowlKey: snacks to each eater's bag, what is taken by the spoon to the store,
// all else to what is handed round. Who must be kept from traces has all of it
// apart.
func (k *packer) bowlKey(s *sitting, w *ware, member trip.MemberID) lotKey {
	if s.Meal == trip.Snack && !w.runs() {
		return k.snackKey(s, w, member)
	}
	if k.stored(s, w, trip.AtBowl) {
		key := lotKey{kind: StoreBag, day: k.legs[s.leg].FirstDay, group: s.Group, handling: k.storeHandling(w, s.leg), food: w.food.ID}
		if k.apart.fromSpoons(member, s.Group, s.leg) {
			key.kind, key.member = OwnBag, member
		}
		return key
	}
	key := lotKey{kind: MealBag, day: s.Day, meal: s.Meal, group: s.Group, recipe: s.Recipe, run: s.run, place: trip.AtBowl}
	if k.keptApart(s, w, member) || k.trip.Settings.LunchPerEater && s.Meal == trip.Lunch && !w.runs() {
		key.kind, key.member = OwnBag, member
	}
	key.setHandling(w, k.melts(w, s.Day))
	return key
}

// keptApart tells whether a member takes nothing from what others take of a
// food at a meal, by the spoon or from the hand. A seasoning lies in the bag
// with what is taken by hand.
func (k *packer) keptApart(s *sitting, w *ware, member trip.MemberID) bool {
	spoon := spooned(w, s.Meal, trip.AtBowl, s.pot)
	if spoon && k.apart.fromSpoons(member, s.Group, s.leg) {
		return true
	}
	seasons := s.hand && w.handling(k.melts(w, s.Day)) == together
	return (!spoon || seasons) && k.apart.fromHands(member, s.Group, s.Day)
}

// snackKey: the days of a leg in stretches, each with a bag of the eater's
// own. What does not keep is packed for its day.
func (k *packer) snackKey(s *sitting, w *ware, member trip.MemberID) lotKey {
	leg := k.legs[s.leg]
	days := max(1, k.trip.Settings.SnackDays)
	if w.perishes() {
		days = 1
	}
	first := leg.FirstDay + (s.Day-leg.FirstDay)/days*days
	last := min(first+days-1, leg.LastDay)
	if k.keptBack(s, w, member) {
		first, last = k.keptFrom[keptKey{member, s.leg}], leg.LastDay
	}
	key := lotKey{kind: SnackBag, day: first, group: s.Group, member: member, place: trip.AtBowl}
	key.setHandling(w, k.melts(w, last))
	if key.handling == crushing {
		key.handling = together // a handful that lies in the bag with the rest, which is carried on top
	}
	return key
}

func (k *packer) storeHandling(w *ware, leg int) handling {
	return w.handling(k.melts(w, k.legs[leg].LastDay))
}

// eaterSets tells the foods that are handed round together apart by who gets
// them, so that nobody is given a bag with a food they do not get: each food
// by the first one with the same eaters, 0 for those of the most eaters.
func (k *packer) eaterSets(s *sitting) map[trip.FoodID]trip.FoodID {
	eaters := map[trip.FoodID][]trip.MemberID{}
	var foods []trip.FoodID
	for i := range s.Portions {
		p := &s.Portions[i]
		for _, a := range p.Amounts {
			w := k.foods[a.Food]
			if w == nil || a.Mass <= 0 || s.pot && a.Place == trip.InPot || !k.bowlKey(s, w, p.Member).mixed() {
				continue
			}
			if eaters[a.Food] == nil {
				foods = append(foods, a.Food)
			}
			if list := eaters[a.Food]; len(list) == 0 || list[len(list)-1] != p.Member {
				eaters[a.Food] = append(list, p.Member)
			}
		}
	}
	slices.Sort(foods)
	sets := make(map[trip.FoodID]trip.FoodID, len(foods))
	var most trip.FoodID
	for i, food := range foods {
		same := slices.IndexFunc(foods[:i], func(f trip.FoodID) bool { return slices.Equal(eaters[f], eaters[food]) })
		sets[food] = food
		if same >= 0 {
			sets[food] = sets[foods[same]]
		}
		if len(eaters[food]) > len(eaters[most]) {
			most = sets[food]
		}
	}
	for food, set := range sets {
		if set == most {
			sets[food] = 0
		}
	}
	return sets
}
