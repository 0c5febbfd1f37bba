package carry

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/bags"
	"sumpter/domain/bags/bagstest"
	"sumpter/domain/cooking"
	"sumpter/domain/findings"
	"sumpter/domain/needs"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// tightWork is a random crew whose packs are narrow, with limits, gear of cook
// groups, and somebody who comes late or leaves early; often not all fits.
func tightWork(rt *rapid.T) Work {
	w := crewWork(rt)
	const second trip.GroupID = 9999
	w.Trip.Groups = append(w.Trip.Groups, trip.CookGroup{ID: second, Name: "Second"})
	w.Trip.Crew[0].Group, w.Trip.Gear[0].Group = second, second
	w.Cooking.Fuel = append(w.Cooking.Fuel, cooking.LegFuel{Group: second, Fuel: trip.GasMix, Containers: []cooking.Container{{Key: "second", Name: "Canister", Fuel: 100 * units.Gram, Volume: units.Litre}}})
	w.Trip.Settings.DinnerShare = rapid.SampledFrom([]float64{0.3, 0.6, 1}).Draw(rt, "dinner share")
	w.Trip.Settings.FuelShare = rapid.SampledFrom([]float64{0.4, 0.7, 1}).Draw(rt, "fuel share")
	for i := range w.Trip.Crew {
		m := &w.Trip.Crew[i]
		switch rapid.IntRange(0, 3).Draw(rt, "kind of member") {
		case 0:
			m.LoadLimit = optional.Of(m.OwnKit + units.Mass(rapid.IntRange(0, 30).Draw(rt, "limit"))*100*units.Gram)
		case 1:
			m.PackRoom = units.Volume(rapid.IntRange(1, 8).Draw(rt, "room")) * units.Litre
		}
	}
	return w
}

// told tells whether a finding that must be fixed or looked at has one of the
// codes, of the stage or of the whole trip.
func told(r Result, stage *Stage, codes ...string) bool {
	return slices.ContainsFunc(r.Findings, func(f findings.Finding) bool {
		return slices.Contains(codes, f.Code) && (f.Place.Day == 0 || f.Place.Day == stage.FirstDay)
	})
}

// Worked out from the trip and the carriers alone: on every stage of a random
// crew what belongs to a cook group is with one of it, own food with its eater,
// no pack is over its limit or its room on the first morning, and none holds
// more of a group's dinners or fuel than allowed and whole pieces make it; or a
// finding says so.
func TestEveryRuleOfAPackIsHeldOrTold(t *testing.T) {
	met := map[string]int{}
	rapid.Check(t, func(rt *rapid.T) {
		w := tightWork(rt)
		r := mustCompute(rt, w)
		for s := range r.Stages {
			stage := &r.Stages[s]
			checkGroups(rt, w, stage, met)
			checkOwnFood(rt, w, r, stage, met)
			checkPackLimits(rt, w, r, stage, met)
			checkParts(rt, w, r, stage, met)
		}
	})
	for _, rule := range []string{"group's gear", "group's fuel", "own food", "own food moved", "room", "over room", "limit", "over limit", "part", "part told"} {
		if met[rule] == 0 {
			t.Errorf("%s never came up: %v", rule, met)
		}
	}
}

func checkGroups(rt *rapid.T, w Work, stage *Stage, met map[string]int) {
	for _, item := range stage.Items {
		group, kind := trip.GroupID(0), ""
		switch item.Kind {
		case GearItem:
			id, _ := strconv.ParseInt(item.Key, 10, 64)
			group, kind = w.Trip.GearItem(trip.GearID(id)).Group, "group's gear"
		case FuelItem:
			for _, fuel := range w.Cooking.Fuel {
				if slices.ContainsFunc(fuel.Containers, func(c cooking.Container) bool { return c.Key == item.Key }) {
					group, kind = fuel.Group, "group's fuel"
				}
			}
		}
		anybody := slices.ContainsFunc(w.Trip.Crew, func(m trip.Member) bool { return m.Group == group && m.Present(stage.FirstDay) })
		if group == 0 || !anybody {
			continue
		}
		met[kind]++
		if got := w.Trip.Member(item.Carrier).Group; got != group {
			rt.Fatalf("%s %s of group %d is with one of group %d", item.Kind, item.Key, group, got)
		}
	}
}

func checkOwnFood(rt *rapid.T, w Work, r Result, stage *Stage, met map[string]int) {
	for _, item := range stage.Items {
		i := slices.IndexFunc(w.Bags.Bags, func(b bags.Bag) bool { return item.Kind == BagItem && b.Key == item.Key })
		if i < 0 || w.Bags.Bags[i].Member == 0 || !w.Trip.Member(w.Bags.Bags[i].Member).Present(stage.FirstDay) {
			continue
		}
		met["own food"]++
		if item.Carrier != w.Bags.Bags[i].Member {
			met["own food moved"]++
			if !told(r, stage, "own-share-moved") {
				rt.Fatalf("own food of %d is with %d in silence", w.Bags.Bags[i].Member, item.Carrier)
			}
		}
	}
}

func checkPackLimits(rt *rapid.T, w Work, r Result, stage *Stage, met map[string]int) {
	for i := range w.Trip.Crew {
		m := &w.Trip.Crew[i]
		load, room := m.OwnKit, units.Volume(0)
		for _, item := range stage.Items {
			if item.Carrier == m.ID {
				load, room = load+item.Mass, room+roomOf(w, item)
			}
		}
		if !m.Present(stage.FirstDay) {
			continue
		}
		limit, limited := m.LoadLimit.Get()
		for _, c := range []struct {
			kind string
			over bool
		}{{"limit", limited && load > limit}, {"room", room > m.PackRoom}} {
			met[c.kind]++
			if !c.over {
				continue
			}
			met["over "+c.kind]++
			said := slices.ContainsFunc(r.Findings, func(f findings.Finding) bool {
				return f.Code == "over-limit" && f.Place.Member == m.ID && f.Place.Day == stage.FirstDay && !f.Why.IsZero() && !f.Remedy.IsZero()
			})
			if !said {
				rt.Fatalf("member %d is over their %s on day %d in silence: %s and %s", m.ID, c.kind, stage.FirstDay, load, room)
			}
		}
	}
}

func roomOf(w Work, item Item) units.Volume {
	switch item.Kind {
	case BagItem:
		return w.Bags.Bags[slices.IndexFunc(w.Bags.Bags, func(b bags.Bag) bool { return b.Key == item.Key })].Volume
	case GearItem:
		id, _ := strconv.ParseInt(item.Key, 10, 64)
		return w.Trip.GearItem(trip.GearID(id)).Volume
	case FuelItem:
		return units.Litre // as crewWork makes them
	default:
		return 0
	}
}

// checkParts holds what each pack has of a group's dinners still to come, by
// energy, and of its fuel against the part that is allowed; a pack may always
// hold one piece, or its equal part among those who can carry any.
func checkParts(rt *rapid.T, w Work, r Result, stage *Stage, met map[string]int) {
	type part struct {
		total, largest int64
		pieces         int
		packs          map[trip.MemberID]int64
		carriers       map[trip.MemberID]bool
		share          float64
	}
	parts := map[string]*part{}
	add := func(name string, share float64, carrier trip.MemberID, amount int64, may func(*trip.Member) bool) {
		p := parts[name]
		if p == nil {
			p = &part{packs: map[trip.MemberID]int64{}, carriers: map[trip.MemberID]bool{}, share: share}
			parts[name] = p
		}
		p.total, p.largest, p.pieces = p.total+amount, max(p.largest, amount), p.pieces+1
		p.packs[carrier] += amount
		for i := range w.Trip.Crew {
			if m := &w.Trip.Crew[i]; m.Present(stage.FirstDay) && may(m) {
				p.carriers[m.ID] = true
			}
		}
	}
	for _, item := range stage.Items {
		switch item.Kind {
		case BagItem:
			bag := &w.Bags.Bags[slices.IndexFunc(w.Bags.Bags, func(b bags.Bag) bool { return b.Key == item.Key })]
			energy, dinner := units.Kcal(0), false
			for _, use := range bag.Uses {
				if use.Meal == trip.Dinner && use.Day >= stage.FirstDay {
					energy, dinner = energy+use.Kcal, true
				}
			}
			if dinner {
				add(fmt.Sprint("dinners ", bag.Group), w.Trip.Settings.DinnerShare, item.Carrier, max(1, int64(energy)), func(m *trip.Member) bool {
					if eater := w.Trip.Member(bag.Member); eater != nil && eater.Present(stage.FirstDay) {
						return m == eater
					}
					return BagObstacle(w.Trip, bag, m, stage.FirstDay).Kind == ""
				})
			}
		case FuelItem:
			for _, fuel := range w.Cooking.Fuel {
				for _, c := range fuel.Containers {
					if c.Key == item.Key && fuel.Leg == stage.Leg {
						add(fmt.Sprint("fuel ", fuel.Group), w.Trip.Settings.FuelShare, item.Carrier, max(1, c.Fuel.CeilGrams()), func(m *trip.Member) bool {
							return GearObstacle(w.Trip, fuel.Group, m, stage.FirstDay).Kind == ""
						})
					}
				}
			}
		}
	}
	for name, p := range parts {
		if p.pieces < 2 || len(p.carriers) < 2 || p.share >= 1 {
			continue
		}
		most := max(int64(math.Floor(p.share*float64(p.total))), p.largest, (p.total+int64(len(p.carriers))-1)/int64(len(p.carriers)))
		for member, amount := range p.packs {
			met["part"]++
			if amount <= most {
				continue
			}
			met["part told"]++
			if !told(r, stage, "lost-pack", "over-limit") {
				rt.Fatalf("member %d has %d of %d of the %s, %d are allowed", member, amount, p.total, name, most)
			}
		}
	}
}

// Where it costs nobody anything the bags of a dish are in one pack, a dish of
// one eater is in theirs, and food is not beside liquid fuel.
func TestWhatIsFreeIsTidy(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		mass := float64(rapid.IntRange(2, 30).Draw(rt, "mass")) / 10
		other := float64(rapid.IntRange(2, 30).Draw(rt, "other mass")) / 10
		part := func(key string, batch int, eaters ...trip.MemberID) bags.Bag {
			b := bagstest.EatenAtOnce(bags.Bag{Key: key, Code: key, Kind: bags.MealBag, Day: 1, Meal: trip.Breakfast, Group: 1, Food: units.FromKilograms(mass), Volume: units.Litre, Eaters: max(2, len(eaters))})
			b.Uses[0].Batch, b.Uses[0].Recipe = batch, trip.RecipeID(batch)
			if len(eaters) == 1 {
				b.Eaters, b.Uses[0].PotFor = 1, eaters
			}
			return b
		}
		people := []float64{60, 60}
		two := mustCompute(rt, Work{Trip: walkers(1, people...), Legs: walkers(1, 60).Legs(), Bags: bags.Result{Bags: []bags.Bag{part("a", 1), part("b", 2), part("c", 1), part("d", 2)}}})
		if two.Stages[0].DishPacks != 1 {
			rt.Fatalf("the bags of a dish are in %.1f packs", two.Stages[0].DishPacks)
		}
		eater := trip.MemberID(rapid.IntRange(1, 2).Draw(rt, "eater"))
		own := mustCompute(rt, Work{Trip: walkers(1, people...), Legs: walkers(1, 60).Legs(), Bags: bags.Result{Bags: []bags.Bag{part("a", 1, eater), part("b", 2, 3-eater)}}})
		if carrierOf(own, 0, "a") != eater || carrierOf(own, 0, "b") != 3-eater {
			rt.Fatalf("dishes of one eater are with another: %v", own.Stages[0].Items)
		}
		on := walkers(1, people...)
		on.Gear = []trip.Gear{{ID: 1, Name: "Tarp", Mass: units.FromKilograms(other)}}
		fuel := cooking.LegFuel{Group: 1, Fuel: trip.WhiteGas, Containers: []cooking.Container{{Key: "bottle", Fuel: units.FromKilograms(mass)}}}
		a, b := part("a", 1), part("b", 2)
		a.Food, a.Uses[0].Contents = units.FromKilograms(other), nil
		a = bagstest.EatenAtOnce(a)
		apart := mustCompute(rt, Work{Trip: on, Legs: on.Legs(), Bags: bags.Result{Bags: []bags.Bag{a, b}}, Cooking: cooking.Result{Fuel: []cooking.LegFuel{fuel}}})
		if carrierOf(apart, 0, "a") == carrierOf(apart, 0, "bottle") || carrierOf(apart, 0, "b") == carrierOf(apart, 0, "bottle") || hasFindingCode(apart, "fuel-beside-food") {
			rt.Fatalf("food is beside the bottle: %v", apart.Stages[0].Items)
		}
	})
}

// Room of wrappings is carried on from stage to stage until rubbish is left.
func TestRoomOfWrappingsIsCarriedOn(t *testing.T) {
	met := 0
	rapid.Check(t, func(rt *rapid.T) {
		w := crewWork(rt)
		w.Trip.Crew[0].LastDay = rapid.IntRange(1, len(w.Trip.Days)).Draw(rt, "last day")
		w.Needs = needs.Compute(w.Trip, nil)
		r, runs := mustCompute(rt, w), cutStages(w)
		room := func(day int) units.Volume {
			sum := units.Volume(0)
			for i := range r.Members {
				sum += r.Members[i].Days[day-1].WasteRoom
			}
			return sum
		}
		for s := 1; s < len(runs); s++ {
			if runs[s-1].wasteLeftBehind || len(runs[s].present) == 0 {
				continue
			}
			before, now := room(runs[s-1].last), room(runs[s].first)
			if before > 0 {
				met++
			}
			if now < before {
				rt.Fatalf("%v of wrappings became %v on day %d", before, now, runs[s].first)
			}
		}
	})
	if met == 0 {
		t.Error("no wrappings were ever carried on")
	}
}

// Small crews are split as fairly as any split, by enumeration with the masses of
// each morning: bags that are eaten, stores that get lighter, wrappings that stay.
func TestSmallCrewsAreSplitAsFairlyAsAnySplit(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		days := rapid.IntRange(2, 3).Draw(rt, "days")
		on := walkers(days, rapid.SliceOfN(rapid.Float64Range(40, 90), 2, 3).Draw(rt, "body masses")...)
		hundred := func(name string, low, high int) units.Mass {
			return units.Mass(rapid.IntRange(low, high).Draw(rt, name)) * 100 * units.Gram
		}
		for i := range on.Crew {
			on.Crew[i].OwnKit = hundred("own kit", 0, 40)
		}
		var list []bags.Bag
		for n := range rapid.IntRange(2, 5).Draw(rt, "bags") {
			b := bagOf(strconv.Itoa(n), rapid.IntRange(1, days).Draw(rt, "day"), hundred("mass", 1, 30).Kilograms())
			b.Tare = hundred("tare", 0, 2)
			list = append(list, b)
		}
		store := bags.Bag{Key: "store", Code: "store", Kind: bags.StoreBag, Day: 1, LastDay: days, Meal: trip.Breakfast, Group: 1, Tare: 100 * units.Gram, Volume: units.Litre}
		for day := 1; day <= days; day++ {
			mass := hundred("taken", 1, 20)
			store.Food += mass
			store.Uses = append(store.Uses, bags.Use{Day: day, Meal: trip.Dinner, Contents: []bags.Content{{Food: 1, Mass: mass}}})
		}
		list = append(list, store)
		stage := mustCompute(rt, Work{Trip: on, Legs: on.Legs(), Bags: bags.Result{Bags: list}}).Stages[0]
		worst, mean := fairestByEnumeration(on, list)
		if stage.Worst > worst*1.005+1e-9 || stage.Mean > mean+1e-9 {
			rt.Fatalf("split %.6f and %.6f, the fairest is %.6f and %.6f", stage.Worst, stage.Mean, worst, mean)
		}
	})
}

// fairestByEnumeration gives the least heaviest share of the first morning, and
// the least mean of the days' heaviest among splits within 0.5 % of it.
func fairestByEnumeration(on *trip.Trip, list []bags.Bag) (worst, mean float64) {
	var all [][2]float64
	worst, mean = math.Inf(1), math.Inf(1)
	carriers := make([]int, len(list))
	for {
		first, sum := 0.0, 0.0
		for day := 1; day <= len(on.Days); day++ {
			heaviest := 0.0
			for i := range on.Crew {
				load := on.Crew[i].OwnKit
				for b, carrier := range carriers {
					if carrier == i && day <= list[b].LastDay {
						load += list[b].On(day)
					} else if carrier == i {
						load += list[b].Tare
					}
				}
				heaviest = max(heaviest, float64(load)/float64(capabilityMass(&on.Crew[i])))
			}
			if day == 1 {
				first = heaviest
			}
			sum += heaviest / float64(len(on.Days))
		}
		all, worst = append(all, [2]float64{first, sum}), min(worst, first)
		at := 0
		for at < len(carriers) && carriers[at] == len(on.Crew)-1 {
			carriers[at], at = 0, at+1
		}
		if at == len(carriers) {
			break
		}
		carriers[at]++
	}
	for _, split := range all {
		if split[0] <= worst*1.005 {
			mean = min(mean, split[1])
		}
	}
	return worst, mean
}
