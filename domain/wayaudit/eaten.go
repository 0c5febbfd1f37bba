package wayaudit

import (
	"sumpter/domain/bags"
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// checkServings looks at each serving: who eats is there, and neither allergy
// nor diet speaks against the food. What a member was portioned for in that
// very dish was judged when the trip was planned.
func checkServings(a *auditor) {
	for _, s := range a.Servings {
		place := findings.Place{Day: s.Day, Meal: s.Meal, Group: s.Group, Member: s.Member, Food: s.Food, Bag: s.Bag}
		if s.Day < a.From || !a.there(s.Member, s.Day) {
			a.fault(place, prose.Say("only who is there eats"), prose.Say("%s is served on day %d", a.member(s.Member), s.Day))
		}
		if s.Mass < 0 {
			a.fault(place, prose.Say("nobody is served less than nothing"), prose.Say("%s is served %s on day %d", a.member(s.Member), s.Mass, s.Day))
		}
		if a.harms(s.Member, s.Food) && !a.portion[portionKey{s.Dish, s.Member, s.Food}] {
			a.fault(place, prose.Say("nobody is served what their allergy or diet forbids"), prose.Say("%s is served %s on day %d", a.member(s.Member), a.food(s.Food), s.Day))
		}
	}
}

// harms tells whether an allergy or diet forbids a food; unknown forbids it.
func (a *auditor) harms(id trip.MemberID, foodID trip.FoodID) bool {
	m, food := a.trip.Member(id), a.trip.Food(foodID)
	if m == nil || food == nil {
		return true
	}
	for _, allergy := range m.Allergies {
		if food.Presence(allergy.Allergen) != trip.Free {
			return true
		}
	}
	for _, diet := range m.Diets {
		if food.Suitability(diet) != trip.Suits {
			return true
		}
	}
	return false
}

// potKey is what is shared by those who eat of a dish.
type potKey struct {
	dish  string
	day   int
	group trip.GroupID
}

// checkPots: who eats from a pot for which they were not portioned may eat of
// all that is in it.
func checkPots(a *auditor) {
	inPot := map[potKey]map[trip.FoodID]bool{}
	eaters := map[potKey]map[trip.MemberID]bool{}
	for _, s := range a.Servings {
		if s.Place != trip.InPot || a.isOwn(s) {
			continue
		}
		key := potKey{s.Dish, s.Day, s.Group}
		if inPot[key] == nil {
			inPot[key], eaters[key] = map[trip.FoodID]bool{}, map[trip.MemberID]bool{}
		}
		inPot[key][s.Food], eaters[key][s.Member] = true, true
	}
	for key, foods := range inPot {
		for member := range eaters[key] {
			for food := range foods {
				if !a.portion[portionKey{key.dish, member, 0}] && a.harms(member, food) {
					a.fault(findings.Place{Day: key.day, Group: key.group, Member: member, Food: food}, prose.Say("a pot is safe for all who eat from it"),
						prose.Say("%s eats from a pot with %s in it on day %d", a.member(member), a.food(food), key.day))
				}
			}
		}
	}
}

func (a *auditor) isOwn(s trail.Serving) bool {
	bag := a.planned[s.Bag]
	return bag != nil && bag.Member != 0
}

// left reckons what is in a bag for the meals of a day and later: what was
// weighed in or else planned, less what went since.
func (a *auditor) left(bag *bags.Bag, day int) map[trip.FoodID]units.Mass {
	if !a.comes(bag) {
		return nil
	}
	end, ended := a.ends[bag.Key]
	held := map[trip.FoodID]float64{}
	night := a.Done.PackedBag(bag.Key)
	gone := map[int]float64{} // by place in the uses
	for _, part := range a.partsGone(bag.Key) {
		a.spread(bag, night, part, gone)
	}
	for i := range bag.Uses {
		use := &bag.Uses[i]
		on := a.eatenOn(bag, use)
		if on < day || ended && (len(bag.Uses) == 1 && end.End != trip.Eaten || len(bag.Uses) > 1 && on > end.Day) {
			continue
		}
		for _, c := range use.Contents {
			held[c.Food] += a.weighed(bag, night, c) * (1 - gone[i])
		}
	}
	mass := map[trip.FoodID]units.Mass{}
	for food, milligrams := range held {
		mass[food] = units.Mass(milligrams)
	}
	return mass
}

// weighed is what is really in for a planned content.
func (a *auditor) weighed(bag *bags.Bag, night *trip.PackedBag, c bags.Content) float64 {
	if night == nil {
		return float64(c.Mass)
	}
	mass, ok := night.WeighedMass(c.Food)
	if !ok {
		return float64(c.Mass)
	}
	all := units.Mass(0)
	for _, content := range bag.Contents {
		if content.Food == c.Food {
			all += content.Mass
		}
	}
	if all <= 0 {
		return float64(c.Mass)
	}
	return float64(mass) * float64(c.Mass) / float64(all)
}

func (a *auditor) partsGone(key string) []trip.PartGone {
	var list []trip.PartGone
	for day := 1; day <= len(a.trip.Days); day++ {
		for _, part := range a.Done.PartsGone {
			if part.Bag == key && part.Day == day {
				list = append(list, part)
			}
		}
	}
	return list
}

// spread takes a part that is gone from all uses from its day on alike.
func (a *auditor) spread(bag *bags.Bag, night *trip.PackedBag, part trip.PartGone, gone map[int]float64) {
	there := 0.0
	for i := range bag.Uses {
		if bag.Uses[i].Day >= part.Day {
			for _, c := range bag.Uses[i].Contents {
				there += a.weighed(bag, night, c) * (1 - gone[i])
			}
		}
	}
	if there <= 0 {
		return
	}
	share := min(1, float64(part.Mass)/there)
	for i := range bag.Uses {
		if bag.Uses[i].Day >= part.Day {
			gone[i] += (1 - gone[i]) * share
		}
	}
}

// eatenOn is the day on which a dish takes from a bag: as noted, as decided
// last, or as planned.
func (a *auditor) eatenOn(bag *bags.Bag, use *bags.Use) int {
	if end, ended := a.ends[bag.Key]; ended && end.End == trip.Eaten && len(bag.Uses) == 1 {
		return end.Day
	}
	day, decided := use.Day, 0
	for _, replan := range a.Done.Replans {
		for _, move := range replan.Moves {
			if move.Dish == use.Dish(bag.Group) && replan.Day > decided {
				day, decided = move.Day, replan.Day
			}
		}
	}
	return day
}

// rounding is how far sums may be apart: each use and each eater rounds to the
// milligram.
const rounding = 200 * units.Milligram

// checkMasses: nobody eats what is not in the bags.
func checkMasses(a *auditor) {
	served := map[string]map[trip.FoodID]units.Mass{}
	for _, s := range a.Servings {
		if served[s.Bag] == nil {
			served[s.Bag] = map[trip.FoodID]units.Mass{}
		}
		served[s.Bag][s.Food] += s.Mass
	}
	for key, foods := range served {
		bag := a.planned[key]
		if bag == nil {
			a.fault(findings.Place{Bag: key}, prose.Say("only from bags that were packed is eaten"), prose.Say("%s was never packed", a.bag(key)))
			continue
		}
		left := a.left(bag, a.From)
		for food, mass := range foods {
			if mass > left[food]+rounding {
				a.fault(findings.Place{Day: a.From, Bag: key, Food: food}, prose.Say("nobody eats what is not in the bags"),
					prose.Say("%s of %s are eaten out of %s, %s are in it", mass, a.food(food), a.bag(key), left[food]))
			}
		}
	}
}

// checkAge: what is eaten later than it is known to be good is owned up to.
func checkAge(a *auditor) {
	type sitting struct {
		day   int
		meal  trip.Meal
		group trip.GroupID
		food  trip.FoodID
	}
	latest := map[sitting]int{}
	for _, fate := range a.Planned.Spoilage.Fates {
		latest[sitting{fate.Day, fate.Meal, fate.Group, fate.Food}] = fate.LatestDay
	}
	home := map[string]sitting{} // of each dish
	for _, bag := range a.planned {
		for i := range bag.Uses {
			home[bag.Uses[i].Dish(bag.Group)] = sitting{bag.Uses[i].Day, bag.Uses[i].Meal, bag.Group, 0}
		}
	}
	for _, s := range a.Servings {
		packed := home[s.Dish]
		packed.food = s.Food
		if last, known := latest[packed]; s.Day <= packed.day || known && s.Day <= last {
			continue
		}
		if !a.said(func(f findings.Finding) bool {
			return f.Stage == findings.Spoilage && f.Place.Recipe == s.Recipe && f.Place.Day == s.Day
		}) {
			a.fault(findings.Place{Day: s.Day, Bag: s.Bag, Food: s.Food}, prose.Say("food past its safe time is never without a finding"),
				prose.Say("%s of %s is eaten on day %d", a.food(s.Food), a.bag(s.Bag), s.Day))
		}
	}
}
