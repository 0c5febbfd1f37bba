package onward

import (
	"context"
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/cooking"
	"sumpter/domain/plan"
	"sumpter/domain/portions"
	"sumpter/domain/resupply"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func (w *work) crewChanged() bool { return len(w.leaves) > 0 }

func (w *work) boxMissing() bool { return slices.Contains(mapValues(w.unfed, len(w.plan.Legs)), true) }

func mapValues(unfed map[int]bool, legs int) []bool {
	list := make([]bool, legs)
	for i := range list {
		list[i] = unfed[i]
	}
	return list
}

func (w *work) changed() bool {
	return w.crewChanged() || w.boxMissing() || len(w.gone) > 0 || len(w.moved) > 0
}

func (w *work) missing() Amount {
	var sum Amount
	for _, bag := range w.gone {
		sum.Bags++
		sum.Food += bag.Food
		sum.Kcal += bag.Kcal
	}
	return sum
}

// spare lists the own bags of those who went home, and who of the others may
// eat them.
func (w *work) spare() []Spare {
	var list []Spare
	for _, bag := range w.orphaned {
		one := Spare{Bag: bag.Key, Of: bag.Member}
		for i := range w.trip.Crew {
			member := &w.trip.Crew[i]
			if member.ID != bag.Member && w.present(member.ID, w.from) && w.mayEat(member, bag) {
				one.MayEat = append(one.MayEat, member.ID)
			}
		}
		list = append(list, one)
	}
	return list
}

func (w *work) mayEat(member *trip.Member, bag *bags.Bag) bool {
	for _, content := range bag.Contents {
		if food := w.foods[content.Food]; food == nil || len(member.Objections(food)) > 0 {
			return false
		}
	}
	return true
}

// adjusted is the plan as it now stands: who is there, which boxes come, where
// bags are eaten. Figures that follow are set later.
func (w *work) adjusted() *plan.Plan {
	now := *w.plan
	t := w.trip.Clone()
	for i := range t.Crew {
		if first, left := w.leaves[t.Crew[i].ID]; left {
			t.Crew[i].LastDay = first - 1
			if first <= max(1, t.Crew[i].FirstDay) { // never came
				t.Crew[i].FirstDay, t.Crew[i].LastDay = len(t.Days)+1, len(t.Days)+1
			}
		}
	}
	for i := range t.Points {
		if slices.Contains(w.done.MissingBoxes, t.Points[i].ID) {
			t.Points[i].Use = false
		}
	}
	now.Trip, now.Legs = t, t.Legs()
	now.Bags = bags.Result{Bags: w.bagsNow(now.Legs)}
	now.Cooking = w.fuelNow()
	now.Resupply.Boxes = w.boxesNow()
	return &now
}

// bagsNow lists the bags that are, were or will be there.
func (w *work) bagsNow(legs []trip.Leg) []bags.Bag {
	orphaned := map[string]bool{}
	for _, bag := range w.orphaned {
		orphaned[bag.Key] = true
	}
	var list []bags.Bag
	for i := range w.plan.Bags.Bags {
		bag := w.plan.Bags.Bags[i]
		if w.unfed[bag.Leg] || orphaned[bag.Key] {
			continue
		}
		if move, ok := w.moved[bag.Key]; ok {
			bag.Day, bag.Meal = move.Day, move.Meal
		}
		bag.Leg = trip.LegOf(legs, bag.Day)
		list = append(list, bag)
	}
	slices.SortStableFunc(list, func(a, b bags.Bag) int {
		return slot{a.Day, a.Meal, a.Group}.compare(slot{b.Day, b.Meal, b.Group})
	})
	return list
}

// legNow gives the place of a leg once legs whose box did not come are part
// of the one before; false for those.
func (w *work) legNow(leg int) (int, bool) {
	place := leg
	for i := range leg + 1 {
		if w.unfed[i] {
			place--
		}
	}
	return place, !w.unfed[leg]
}

func (w *work) fuelNow() cooking.Result {
	now := w.plan.Cooking
	now.Fuel = nil
	for _, fuel := range w.plan.Cooking.Fuel {
		if leg, comes := w.legNow(fuel.Leg); comes {
			fuel.Leg = leg
			now.Fuel = append(now.Fuel, fuel)
		}
	}
	return now
}

func (w *work) boxesNow() []resupply.Box {
	var list []resupply.Box
	for _, box := range w.plan.Resupply.Boxes {
		if leg, comes := w.legNow(box.Leg); comes {
			box.Leg = leg
			list = append(list, box)
		}
	}
	return list
}

// resplit gives what is left to those who are there, with as few things
// changing hands as equal fairness allows.
func (w *work) resplit(ctx context.Context, now *plan.Plan) error {
	there := now.Bags
	there.Bags = nil
	for _, bag := range now.Bags.Bags {
		if end, ended := w.ends[bag.Key]; !ended || end.End == trip.Eaten || end.Day >= w.from {
			there.Bags = append(there.Bags, bag)
		}
	}
	split, err := carry.Compute(ctx, carry.Work{Trip: now.Trip, Legs: now.Legs, Needs: now.Needs, Bags: there, Cooking: now.Cooking}, &w.plan.Carry)
	now.Carry = split
	return err
}

// handOvers compares who had each thing last night with who has it now. What
// was taken on from a box has no giver.
func (w *work) handOvers(now *plan.Plan) []trail.HandOver {
	if w.from == 1 {
		return nil
	}
	before := carriersOn(w.plan, w.from-1)
	gone := map[string]bool{}
	for key, end := range w.ends {
		gone[key] = end.Day < w.from
	}
	byKey := map[string]*bags.Bag{}
	for i := range now.Bags.Bags {
		byKey[now.Bags.Bags[i].Key] = &now.Bags.Bags[i]
	}
	var list []trail.HandOver
	for _, item := range itemsOn(now, w.from) {
		if bag := byKey[item.Key]; item.Kind == carry.BagItem && (bag == nil || bag.Day < w.from || gone[item.Key]) {
			continue
		}
		if from, had := before[thing{item.Kind, item.Key}]; had && from != item.Carrier {
			list = append(list, trail.HandOver{Item: item, From: from, To: item.Carrier})
		}
	}
	return list
}

type thing struct {
	kind carry.ItemKind
	key  string
}

func itemsOn(p *plan.Plan, day int) []carry.Item {
	for _, stage := range p.Carry.Stages {
		if stage.FirstDay <= day && day <= stage.LastDay {
			return stage.Items
		}
	}
	return nil
}

func carriersOn(p *plan.Plan, day int) map[thing]trip.MemberID {
	found := map[thing]trip.MemberID{}
	for _, item := range itemsOn(p, day) {
		found[thing{item.Kind, item.Key}] = item.Carrier
	}
	return found
}

// days adds up what those who are there get on each day that is left.
func (w *work) days() []Day {
	var list []Day
	for number := w.from; number <= len(w.trip.Days); number++ {
		day := Day{Number: number}
		for i := range w.trip.Crew {
			id := w.trip.Crew[i].ID
			if !w.present(id, number) {
				continue
			}
			eaten := Eaten{Member: id}
			if i < len(w.plan.Needs.Members) && number <= len(w.plan.Needs.Members[i].Days) {
				need := w.plan.Needs.Members[i].Days[number-1]
				eaten.Target, eaten.ProteinTarget = need.TargetKcal, need.ProteinGrams
			}
			for l := range w.lots {
				lot := &w.lots[l]
				if lot.home.day == number {
					eaten.Planned += lot.planned[id].kcal
				}
				if lot.now.day == number && len(lot.bags) > 0 {
					eaten.Kcal += lot.eaters[id].kcal
					eaten.ProteinGrams += lot.eaters[id].protein
				}
			}
			day.Planned += eaten.Planned
			day.Kcal += eaten.Kcal
			day.Members = append(day.Members, eaten)
		}
		list = append(list, day)
	}
	return list
}

// setIntakes puts what is eaten now in the place of what was planned.
func (w *work) setIntakes(now *plan.Plan) {
	intakes := make([]portions.Intake, len(w.plan.Portions.Intakes))
	for i, intake := range w.plan.Portions.Intakes {
		intake.Days = slices.Clone(intake.Days)
		for _, day := range w.days() {
			if day.Number > len(intake.Days) {
				continue
			}
			at := &intake.Days[day.Number-1]
			place := slices.IndexFunc(day.Members, func(e Eaten) bool { return e.Member == intake.Member })
			if place < 0 {
				*at = portions.DayIntake{}
				continue
			}
			at.Kcal, at.ProteinGrams = day.Members[place].Kcal, day.Members[place].ProteinGrams
		}
		intakes[i] = intake
	}
	now.Portions.Intakes = intakes
}

// lasts says how far what is in the packs this morning reaches.
func (w *work) lasts(now *plan.Plan) Lasts {
	leg := trip.LegOf(now.Legs, w.from)
	if leg < 0 {
		return Lasts{}
	}
	last := now.Legs[leg].LastDay
	have := units.Kcal(0)
	for i := range w.lots {
		if l := &w.lots[i]; len(l.bags) > 0 && l.earliest <= w.from {
			have += l.kcal()
		}
	}
	return Lasts{Full: w.reach(have, 1), Most: w.reach(have, 0.9), Some: w.reach(have, 0.8), UntilFood: last - w.from + 1}
}

// reach counts days until a part of the need is no longer covered; beyond the
// last day it goes on as on that day.
func (w *work) reach(have units.Kcal, part float64) float64 {
	days := 0.0
	for number := w.from; ; number++ {
		need := units.Kcal(0)
		day := min(number, len(w.trip.Days))
		for i := range w.plan.Needs.Members {
			member := &w.plan.Needs.Members[i]
			if w.present(member.Member, day) && day <= len(member.Days) {
				need += member.Days[day-1].TargetKcal
			}
		}
		need *= units.Kcal(part)
		if need <= 0 || number > len(w.trip.Days)+30 {
			return days
		}
		if have < need {
			return days + float64(have/need)
		}
		have -= need
		days++
	}
}
