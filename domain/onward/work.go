package onward

import (
	"cmp"
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/needs"
	"sumpter/domain/plan"
	"sumpter/domain/trip"
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

// work is the state from which the rest is planned.
type work struct {
	plan *plan.Plan
	trip *trip.Trip
	done *trip.Progress
	from int

	foods    map[trip.FoodID]*trip.Food
	recipes  map[trip.RecipeID]*trip.Recipe
	there    map[trip.MemberID][]bool // by day-1
	refuses  map[objection]bool
	fates    map[slot]int     // last day on which all of a planned meal is known to be good
	batches  map[lotKey][]int // places in the planned batches
	proposed *carry.Decided   // for the morning of from
	needs    needs.Result     // of those who are there
	ends     map[string]trip.BagEnd
	moved    map[string]trip.DishMove // by dish; what was decided last
	given    map[string][]given       // by bag, in the order of days
	unfed    map[int]bool             // legs whose box did not come
	bags     []bags.Bag               // those of the plan, with what is really in them
	differ   bool                     // what is in any is not as planned
	byKey    map[string]int           // places in the planned bags
	runs     map[string]int           // which of the pots of its recipe a dish is at its meal now, from 1
	several  map[string]bool          // bags from which several dishes take
	lots     []lot                    // by home and recipe
	gone     []*bags.Bag              // of days that are left
	orphaned []*bags.Bag              // own bags of those who are not there
	kept     []*bags.Bag              // carried on for no meal yet
	unsafe   []given                  // given to who may not eat it
}

// objection asks whether a member must not be served a food.
type objection struct {
	member trip.MemberID
	food   trip.FoodID
}

// given is a bag that is another's from a day on.
type given struct {
	bag string
	day int
	to  trip.MemberID
}

func newWork(p *plan.Plan, done *trip.Progress, from int) *work {
	known := *p.Trip // the plan may be older than what was noted
	known.Progress = *done
	w := &work{
		plan: p, trip: &known, done: done, from: from,
		foods: map[trip.FoodID]*trip.Food{}, recipes: map[trip.RecipeID]*trip.Recipe{}, there: map[trip.MemberID][]bool{},
		refuses: map[objection]bool{}, fates: map[slot]int{}, batches: map[lotKey][]int{},
		ends: map[string]trip.BagEnd{}, moved: map[string]trip.DishMove{}, given: map[string][]given{},
		unfed: map[int]bool{}, several: map[string]bool{}, byKey: map[string]int{},
	}
	w.indexTrip()
	w.indexPlan()
	for _, e := range done.Ends {
		w.ends[e.Bag] = e
	}
	decided := slices.Clone(done.Replans)
	slices.SortFunc(decided, func(a, b trip.Replan) int { return cmp.Compare(a.Day, b.Day) })
	for _, replan := range decided {
		for _, m := range replan.Moves {
			w.moved[m.Dish] = m
		}
		for _, g := range replan.Given {
			w.given[g.Bag] = append(w.given[g.Bag], given{g.Bag, replan.Day, g.To})
		}
	}
	w.bags, w.differ = w.packed(p.Bags.Bags)
	w.gather()
	return w
}

func (w *work) indexTrip() {
	for i := range w.trip.Foods {
		w.foods[w.trip.Foods[i].ID] = &w.trip.Foods[i]
	}
	for i := range w.trip.Recipes {
		w.recipes[w.trip.Recipes[i].ID] = &w.trip.Recipes[i]
	}
	for i := range w.trip.Crew {
		m := &w.trip.Crew[i]
		days := make([]bool, len(w.trip.Days))
		for d := range days {
			days[d] = w.trip.There(m, d+1)
		}
		w.there[m.ID] = days
	}
}

func (w *work) indexPlan() {
	for i := range w.plan.Bags.Bags {
		w.byKey[w.plan.Bags.Bags[i].Key] = i
		w.several[w.plan.Bags.Bags[i].Key] = len(w.plan.Bags.Bags[i].Uses) > 1
	}
	for i, leg := range w.plan.Legs {
		w.unfed[i] = leg.From != 0 && slices.Contains(w.done.MissingBoxes, leg.From)
	}
	for i := range w.plan.Spoilage.Fates {
		fate := &w.plan.Spoilage.Fates[i]
		at := slot{fate.Day, fate.Meal, fate.Group}
		if last, seen := w.fates[at]; !seen || fate.LatestDay < last {
			w.fates[at] = fate.LatestDay
		}
	}
	for i := range w.plan.Portions.Batches {
		b := &w.plan.Portions.Batches[i]
		key := lotKey{slot{b.Day, b.Meal, b.Group}, b.Recipe}
		w.batches[key] = append(w.batches[key], i)
	}
}

// present tells whether a member is there on a day, after all.
func (w *work) present(id trip.MemberID, day int) bool {
	days := w.there[id]
	return day >= 1 && day <= len(days) && days[day-1]
}

// mayEat tells whether neither allergy nor diet nor dislike keeps a member from
// all that is in a bag. What is not known is not safe.
func (w *work) mayEat(member *trip.Member, bag *bags.Bag) bool {
	for _, content := range bag.Contents {
		ask := objection{member.ID, content.Food}
		refuses, known := w.refuses[ask]
		if !known {
			food := w.foods[content.Food]
			refuses = food == nil || len(member.Objections(food)) > 0
			w.refuses[ask] = refuses
		}
		if refuses {
			return false
		}
	}
	return true
}

// mayHave tells whether a member may eat from a bag that was another's: what
// was eaten out of it before has left its traces.
func (w *work) mayHave(member *trip.Member, key string) bool {
	bag := w.planned(key)
	return bag != nil && w.mayEat(member, bag)
}

// planned finds a bag of the plan, or nil.
func (w *work) planned(key string) *bags.Bag {
	if at, ok := w.byKey[key]; ok {
		return &w.plan.Bags.Bags[at]
	}
	return nil
}

// eaterOf gives for whom an own bag is on a day: whom it was packed for, or to
// whom it was given since; 0 for a bag of the group.
func (w *work) eaterOf(bag *bags.Bag, day int) trip.MemberID {
	eater := bag.Member
	for _, g := range w.given[bag.Key] {
		if eater != 0 && g.day <= day {
			eater = g.to
		}
	}
	return eater
}
