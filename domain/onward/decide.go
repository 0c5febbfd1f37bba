package onward

import (
	"cmp"
	"context"
	"slices"

	"sumpter/domain/carry"
	"sumpter/domain/plan"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
)

// choices lists the ways to share the load on the morning of from, and who their
// shares leave out.
func (w *work) choices(now *plan.Plan) ([]Choice, []trip.MemberID) {
	if w.from < w.differsFrom() || !w.open(now.Legs) {
		return nil, nil // all is where the plan has it, or stays with who had it
	}
	var list []Choice
	var aside []trip.MemberID
	for i := range now.Carry.Stages {
		stage := &now.Carry.Stages[i]
		if stage.FirstDay != w.from || w.done.Replan(w.from) != nil {
			continue
		}
		aside = stage.Aside
		before := carriersOn(now, w.from-1)
		for _, choice := range stage.Choices {
			to := func(item carry.Item) trip.MemberID {
				return choice.Carriers[carry.Thing{Kind: item.Kind, Key: item.Key}]
			}
			one := Choice{HandOvers: w.changes(now, to), Worst: choice.Worst, Mean: choice.Mean, Taken: choice.Taken, Passed: choice.Passed, carriers: choice.Carriers}
			for _, item := range stage.Items {
				if _, had := before[carry.Thing{Kind: item.Kind, Key: item.Key}]; !had && item.Kind != carry.WasteItem {
					item.Carrier = to(item)
					one.PickUps = append(one.PickUps, trail.HandOver{Item: item, To: item.Carrier})
				}
			}
			one.Relabelled = w.relabelled(one.PickUps)
			if last := len(list) - 1; last >= 0 && one.Changes() <= list[last].Changes() {
				one.Taken = one.Taken || list[last].Taken
				list[last] = one // as few changes, and fairer
				continue
			}
			list = append(list, one)
		}
	}
	return list, aside
}

// takeFew lets the plan follow the fewest hand-overs that are nearly as fair as
// the fairest and pass limits by nearly as little.
func (w *work) takeFew(ctx context.Context, rest *Rest) error {
	last := len(rest.Choices) - 1
	if last < 0 {
		return nil
	}
	best := rest.Choices[last]
	few := slices.IndexFunc(rest.Choices, func(c Choice) bool {
		return c.NearlyAsLittleAs(best.Passed) && c.Worst <= best.Worst*carry.NearlyFair && c.Mean <= best.Mean*carry.NearlyFair
	})
	if few < 0 || rest.Choices[few].Taken {
		return nil
	}
	for i := range rest.Choices {
		rest.Choices[i].Taken = i == few
	}
	w.proposed = &carry.Decided{Day: w.from, Carriers: rest.Choices[few].carriers, Proposed: true}
	return w.resplit(ctx, rest.Plan)
}

// relabelled counts what goes from a box into another pack than planned,
// though who was planned for it is there.
func (w *work) relabelled(pickUps []trail.HandOver) int {
	planned := carriersOn(w.plan, w.from)
	n := 0
	for _, up := range pickUps {
		to, known := planned[carry.Thing{Kind: up.Item.Kind, Key: up.Item.Key}]
		if known && to != up.To && w.present(to, w.from) {
			n++
		}
	}
	return n
}

// Decide gives what is stored when the leader takes a choice, and the proposed
// meals and gifts if meals says so. It holds together with what was decided before on
// that morning.
func (r *Rest) Decide(choice int, meals bool) trip.Replan {
	decided := trip.Replan{Day: r.From}
	if meals {
		for _, move := range r.Moves {
			for _, dish := range move.Dishes {
				decided.Moves = append(decided.Moves, trip.DishMove{Dish: dish, Day: move.ToDay, Meal: move.ToMeal, Group: move.ToGroup})
			}
		}
	}
	if meals {
		for _, gift := range r.Gifts {
			decided.Given = append(decided.Given, trip.GivenBag{Bag: gift.Bag, To: gift.To})
		}
	}
	overs := r.HandOvers
	if choice >= 0 && choice < len(r.Choices) {
		overs = slices.Concat(r.Choices[choice].HandOvers, r.Choices[choice].PickUps)
	}
	for _, over := range overs {
		if one, ok := handOverOf(over); ok {
			decided.HandOvers = append(decided.HandOvers, one)
		}
	}
	slices.SortFunc(decided.Moves, func(a, b trip.DishMove) int { return cmp.Compare(a.Dish, b.Dish) })
	return decided
}

func handOverOf(over trail.HandOver) (trip.HandOver, bool) {
	one, ok := (carry.Thing{Kind: over.Item.Kind, Key: over.Item.Key}).HandOver()
	one.From, one.To = over.From, over.To
	return one, ok && over.To != 0
}

// Store adds a decision to what was done: a later one of the same morning goes
// on from the earlier.
func Store(done *trip.Progress, decided trip.Replan) {
	had := done.Replan(decided.Day)
	if had == nil {
		done.Replans = append(done.Replans, decided)
		return
	}
	for _, move := range decided.Moves {
		had.Moves = slices.DeleteFunc(had.Moves, func(m trip.DishMove) bool { return m.Dish == move.Dish })
		had.Moves = append(had.Moves, move)
	}
	for _, given := range decided.Given {
		had.Given = slices.DeleteFunc(had.Given, func(g trip.GivenBag) bool { return g.Bag == given.Bag })
		had.Given = append(had.Given, given)
	}
	for _, over := range decided.HandOvers {
		place := slices.IndexFunc(had.HandOvers, func(h trip.HandOver) bool {
			return h.Bag == over.Bag && h.Gear == over.Gear && h.Fuel == over.Fuel
		})
		if place >= 0 {
			had.HandOvers[place].To = over.To
		} else {
			had.HandOvers = append(had.HandOvers, over)
		}
	}
	had.HandOvers = slices.DeleteFunc(had.HandOvers, func(h trip.HandOver) bool { return h.From == h.To }) // given back: it stays
}
