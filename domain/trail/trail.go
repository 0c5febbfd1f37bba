// Package trail reads one day on the way off a plan and what has been noted of
// it: what is eaten and who has it, what each member carries this morning, who
// hands what to whom, the fuel that is left, and how far the food reaches if a
// box does not come. It reckons nothing anew; a changed trip is planned again.
package trail

import (
	"cmp"
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/cooking"
	"sumpter/domain/plan"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Day is one day on the way.
type Day struct {
	Number    int    // 1-based
	Bags      []Bag  // by meal of the day and cook group, as they are eaten
	Packs     []Pack // of those present, by member
	HandOvers []HandOver
	Fuel      []Fuel // by group and fuel
}

// Bag is a bag from which is eaten on the day.
type Bag struct {
	*bags.Bag
	Carrier trip.MemberID // who has it this morning; 0: nobody known
	End     trip.End      // what became of it; empty: it is still there
}

// MealOn is the first meal of a day that takes from the bag.
func (b Bag) MealOn(day int) trip.Meal {
	if uses := b.UsesOn(day); len(uses) > 0 {
		return uses[0].Meal
	}
	return b.Meal
}

// Pack is what a member sets off with.
type Pack struct {
	Member  trip.MemberID
	Load    carry.Day
	Items   []carry.Item // by kind and key; what was eaten before is not among them
	Drink   units.Volume // over the day, with what is drunk on the way
	CarryIn units.Volume // of water to a camp without any
}

// HandOver is a thing that changes its carrier this morning, because somebody
// came, left, or food was taken on.
type HandOver struct {
	Item     carry.Item
	From, To trip.MemberID
}

// Fuel is what a cook group has of one fuel this morning.
type Fuel struct {
	Group trip.GroupID
	Kind  trip.FuelKind
	Left  units.Mass // as noted or else as planned, reserve included; a stove in wind burns more
	Today units.Mass // what the day's cooking should take, no reserve
	Full  []cooking.Container
	Held  []Held // every container the group has on the leg
}

// Held is what is left in a container of fuel.
type Held struct {
	cooking.Container
	Left  units.Mass // as noted last, less what was cooked since
	Noted bool       // somebody looked on this very morning
}

// On reads a day. The progress may be newer than the plan. A day outside the
// trip is empty.
func On(p *plan.Plan, done *trip.Progress, number int) Day {
	day := Day{Number: number}
	if number < 1 || number > len(p.Trip.Days) {
		return day
	}
	stage := stageOf(p, number)
	ends := make(map[string]trip.BagEnd, len(done.Ends))
	for _, end := range done.Ends {
		ends[end.Bag] = end
	}
	carriers := map[string]trip.MemberID{}
	if stage >= 0 {
		for _, item := range p.Carry.Stages[stage].Items {
			if item.Kind == carry.BagItem {
				carriers[item.Key] = item.Carrier
			}
		}
		day.HandOvers = handOvers(p, stage, number)
	}
	for i := range p.Bags.Bags {
		if bag := &p.Bags.Bags[i]; bag.EatenOn(number) {
			day.Bags = append(day.Bags, Bag{Bag: bag, Carrier: carriers[bag.Key], End: ends[bag.Key].End})
		}
	}
	slices.SortStableFunc(day.Bags, func(a, b Bag) int {
		return cmp.Or(cmp.Compare(trip.MealOrder(a.MealOn(number)), trip.MealOrder(b.MealOn(number))), cmp.Compare(a.Group, b.Group))
	})
	day.Packs = packs(p, ends, stage, number)
	day.Fuel = fuel(p, done.FuelNotes, number)
	return day
}

// stageOf gives the place of the stage a day belongs to, -1 for none.
func stageOf(p *plan.Plan, day int) int {
	return slices.IndexFunc(p.Carry.Stages, func(s carry.Stage) bool { return s.FirstDay <= day && day <= s.LastDay })
}

// handOvers lists what another carried until last night.
func handOvers(p *plan.Plan, stage, day int) []HandOver {
	if p.Carry.Stages[stage].FirstDay != day {
		return nil
	}
	var list []HandOver
	for _, item := range p.Carry.Stages[stage].HandedOver() {
		list = append(list, HandOver{Item: item, From: item.From, To: item.Carrier})
	}
	return list
}

func packs(p *plan.Plan, ends map[string]trip.BagEnd, stage, day int) []Pack {
	gone := map[string]bool{} // eaten by plan, or noted on an earlier day
	weighs := map[string]units.Mass{}
	for i := range p.Bags.Bags {
		bag := &p.Bags.Bags[i]
		end, noted := ends[bag.Key]
		gone[bag.Key] = bag.LastDay < day || noted && end.Day < day
		weighs[bag.Key] = bag.On(day)
	}
	var list []Pack
	for _, member := range p.Carry.Members {
		if day > len(member.Days) || !member.Days[day-1].Present {
			continue
		}
		load := member.Days[day-1]
		pack := Pack{Member: member.Member, Load: load, CarryIn: load.CarryIn()}
		for _, water := range p.Cooking.Water {
			if water.Day == day && water.Member == member.Member {
				pack.Drink = water.Drinking
			}
		}
		if stage >= 0 {
			for _, item := range p.Carry.Stages[stage].Items {
				if item.Carrier == member.Member && (item.Kind != carry.BagItem || !gone[item.Key]) {
					if item.Kind == carry.BagItem {
						item.Mass = weighs[item.Key] // what is left of it
					}
					pack.Items = append(pack.Items, item)
				}
			}
		}
		list = append(list, pack)
	}
	return list
}
