package packing

import (
	"cmp"
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/findings"
	"sumpter/domain/resupply"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Compute plans the packing night of a canonical trip. Bags that touch the
// same allergies of the crew make one round. A round that touches more follows
// one that touches less without cleaning; anything else is packed after it.
// All rounds free of the severe allergies come before the first that is not,
// and what is for somebody harmed by traces is never packed where their
// allergen was: if no order does that, on another table. So nobody's life
// hangs on how well a table was wiped.
//
// Within a round each food is taken out once and weighed into all its bags.
// Bags of boxes come first, by the day they leave home, then in the order of
// eating. What is bought on the way is not packed.
func Compute(t *trip.Trip, b bags.Result, r resupply.Result) Result {
	n := &night{trip: t, allergies: allergiesOf(t), severeOf: map[trip.MemberID][]int{}, foods: map[trip.FoodID]*trip.Food{}}
	n.findSevere()
	for i := range t.Foods {
		n.foods[t.Foods[i].ID] = &t.Foods[i]
	}
	rounds := n.rounds(packingOrder(r.PackedAtHome(b.Bags), r))
	var result Result
	for i, round := range rounds {
		bulk := n.bulk(i, round.bags)
		minutes := n.minutes(round, bulk)
		result.Rounds = append(result.Rounds, Round{
			Name: n.name(round.touches), Table: round.table + 1, FreeOf: n.freeOf(round.touches), CleanFirst: round.clean,
			Steps: n.steps(round.bags), Minutes: minutes,
		})
		result.Bulk = append(result.Bulk, bulk...)
		result.Minutes += minutes
	}
	for i := range result.Rounds {
		result.Rounds[i].SetAside = n.setAside(rounds, result.Bulk, i)
	}
	result.Findings = n.findings(rounds, &result)
	findings.Sort(result.Findings)
	return result
}

// night is the table of a trip's packing.
type night struct {
	trip      *trip.Trip
	allergies []allergy
	severeOf  map[trip.MemberID][]int // places of a member's severe allergies
	foods     map[trip.FoodID]*trip.Food
}

// packingOrder sorts bags: boxes by the day they leave home, then the rest
// as they are eaten.
func packingOrder(all []bags.Bag, r resupply.Result) []*bags.Bag {
	posting := map[int]units.Date{}
	for _, box := range r.Boxes {
		if box.Posted && box.SendOn.IsSet() {
			posting[box.Leg] = box.SendOn
		}
	}
	list := make([]*bags.Bag, len(all))
	for i := range all {
		list[i] = &all[i]
	}
	slices.SortStableFunc(list, func(x, y *bags.Bag) int {
		a, first := posting[x.Leg]
		c, second := posting[y.Leg]
		if first != second {
			return cmp.Compare(boolInt(second), boolInt(first))
		}
		return cmp.Compare(a, c)
	})
	return list
}

func boolInt(b bool) int {
	if b {
		return 1
	}
	return 0
}

// steps sends the bags of a round from station to station.
func (n *night) steps(list []*bags.Bag) []Step {
	var steps []Step
	for _, station := range Stations() {
		for _, bag := range list {
			if n.visits(bag, station) {
				steps = append(steps, Step{Station: station, Bag: bag.Key})
			}
		}
	}
	return steps
}

func (n *night) visits(bag *bags.Bag, station Station) bool {
	return station == Label || station == Check || slices.ContainsFunc(bag.Contents, func(c bags.Content) bool {
		return n.station(c.Food) == station
	})
}

func (n *night) station(id trip.FoodID) Station { return StationOf(n.foods[id]) }

// bulk lists the foods of a round, each once, by station and then ID.
func (n *night) bulk(round int, list []*bags.Bag) []Bulk {
	at := map[trip.FoodID]int{}
	var bulk []Bulk
	for _, bag := range list {
		for _, c := range bag.Contents {
			i, ok := at[c.Food]
			if !ok {
				i = len(bulk)
				at[c.Food] = i
				bulk = append(bulk, Bulk{Round: round, Food: c.Food})
			}
			bulk[i].Total += c.Mass
			bulk[i].Into = append(bulk[i].Into, Weighing{Bag: bag.Key, Mass: c.Mass})
		}
	}
	order := map[Station]int{WeighDry: 0, CountOut: 1, Wet: 2}
	slices.SortFunc(bulk, func(a, b Bulk) int {
		return cmp.Or(cmp.Compare(order[n.station(a.Food)], order[n.station(b.Food)]), cmp.Compare(a.Food, b.Food))
	})
	return bulk
}
