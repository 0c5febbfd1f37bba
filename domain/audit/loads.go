package audit

import (
	"math"
	"strconv"

	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// checkCarriers makes sure that each bag that is still to be eaten has one
// carrier who is there and may carry it.
func checkCarriers(a *auditor) {
	for s := range a.Carry.Stages {
		stage := &a.Carry.Stages[s]
		carried := map[string]int{}
		for _, item := range stage.Items {
			member := a.index.member[item.Carrier]
			if member == nil || !member.Present(stage.FirstDay) || !member.Present(stage.LastDay) {
				a.fault(findings.Place{Day: stage.FirstDay, Member: item.Carrier}, prose.Say("a carrier is there all the stage"), prose.Say("%s is given to %s, who is not there", a.thingName(item), a.memberName(item.Carrier)))
				continue
			}
			if item.Kind != carry.BagItem {
				continue
			}
			carried[item.Key]++
			bag := a.index.bag[item.Key]
			if bag == nil || bag.Leg > stage.Leg || bag.LastDay < stage.FirstDay {
				a.fault(findings.Place{Day: stage.FirstDay, Bag: item.Key}, prose.Say("only bags still to be eaten are carried"), prose.Say("%s is not of this stage", a.bagName(item.Key)))
				continue
			}
			for _, content := range bag.Contents {
				if food := a.index.food[content.Food]; food != nil && mustNotCarry(member, food) && !a.said(findings.Carry, saidOf(bag, stage)) {
					a.fault(findings.Place{Day: stage.FirstDay, Member: member.ID, Bag: bag.Key}, prose.Say("nobody carries what they are allergic to"), prose.Say("%s carries bag %s with %s", member.Name, bag.Code, food.Name))
				}
			}
		}
		for i := range a.Bags.Bags {
			bag := &a.Bags.Bags[i]
			if bag.Leg <= stage.Leg && bag.LastDay >= stage.FirstDay && carried[bag.Key] != 1 && !a.nobodyThere(stage) {
				a.fault(findings.Place{Day: stage.FirstDay, Bag: bag.Key}, prose.Say("each bag is in one pack"), prose.Say("bag %s is in %d packs", bag.Code, carried[bag.Key]))
			}
		}
	}
}

func (a *auditor) nobodyThere(stage *carry.Stage) bool {
	for i := range a.Trip.Crew {
		if a.Trip.Crew[i].Present(stage.FirstDay) {
			return false
		}
	}
	return true
}

// mustNotCarry: an allergic member does not carry a food that contains the
// allergen; one harmed by traces, nothing that is not declared free of it.
func mustNotCarry(member *trip.Member, food *trip.Food) bool {
	for _, allergy := range member.Allergies {
		state := food.Presence(allergy.Allergen)
		if state == trip.Contains || allergy.Severe && state != trip.Free {
			return true
		}
	}
	return false
}

// tally is a member's load on one morning, added up by the auditor.
type tally struct{ food, gear, fuel, waste units.Mass }

// checkLoads adds up again what everybody carries on every morning.
func checkLoads(a *auditor) {
	if len(a.Carry.Members) != len(a.Trip.Crew) {
		a.fault(findings.Place{}, prose.Say("everybody's load is told"), prose.Say("%d loads for %d members", len(a.Carry.Members), len(a.Trip.Crew)))
		return
	}
	sums := make([][]tally, len(a.Trip.Crew))
	for i := range sums {
		sums[i] = make([]tally, len(a.Trip.Days))
	}
	waste := units.Mass(0)
	for s := range a.Carry.Stages {
		stage := &a.Carry.Stages[s]
		a.checkWaste(s, waste)
		for _, item := range stage.Items {
			if who, ok := a.index.place[item.Carrier]; ok {
				for day := stage.FirstDay; day <= stage.LastDay; day++ {
					a.add(&sums[who][day-1], item, day)
				}
			}
		}
		waste = a.wasteAfter(s, waste)
	}
	for i := range a.Trip.Crew {
		for day := 1; day <= len(a.Trip.Days); day++ {
			a.compareLoad(i, day, sums[i][day-1])
		}
	}
}

func (a *auditor) add(sum *tally, item carry.Item, day int) {
	switch item.Kind {
	case carry.BagItem:
		switch bag := a.index.bag[item.Key]; {
		case bag == nil:
		case day > bag.LastDay:
			sum.waste += bag.Tare
		default:
			sum.food += bag.Mass()
			for _, use := range bag.Uses {
				for _, content := range use.Contents {
					if use.Day < day {
						sum.food -= content.Mass
					}
				}
			}
		}
	case carry.GearItem:
		if id, err := strconv.ParseInt(item.Key, 10, 64); err == nil {
			if gear := a.Trip.GearItem(trip.GearID(id)); gear != nil {
				sum.gear += gear.Mass
			}
		}
	case carry.FuelItem:
		for _, fuel := range a.Cooking.Fuel {
			for _, container := range fuel.Containers {
				if container.Key != item.Key {
					continue
				}
				sum.fuel += container.Empty
				if container.EmptyFrom == 0 || day < container.EmptyFrom {
					sum.fuel += container.Fuel
				}
			}
		}
	case carry.WasteItem:
		sum.waste += item.Mass
	}
}

func (a *auditor) compareLoad(who, day int, sum tally) {
	member, told := &a.Trip.Crew[who], a.Carry.Members[who].Days[day-1]
	place := findings.Place{Day: day, Member: member.ID}
	if told.Present != member.Present(day) {
		a.fault(place, prose.Say("only who is there carries"), prose.Say("%s is told present %v", member.Name, told.Present))
	}
	if !member.Present(day) {
		return
	}
	if told.OwnKit != member.OwnKit || told.Food != sum.food || told.Gear != sum.gear || told.Fuel != sum.fuel || told.Waste != sum.waste {
		a.fault(place, prose.Say("a load is the sum of its items"), prose.Say("%s on day %d: told food %v gear %v fuel %v waste %v, added up %v %v %v %v",
			member.Name, day, told.Food, told.Gear, told.Fuel, told.Waste, sum.food, sum.gear, sum.fuel, sum.waste))
	}
	load := member.OwnKit + sum.food + sum.gear + sum.fuel + sum.waste
	if told.Load != load {
		a.fault(place, prose.Say("a load is the sum of its items"), prose.Say("%s on day %d carries %v, told %v", member.Name, day, load, told.Load))
	}
	if capability := a.Carry.Members[who].Capability; capability > 0 && math.Abs(told.Share-float64(load)/float64(capability)) > 1e-9 {
		a.fault(place, prose.Say("a share is load by capability"), prose.Say("%s on day %d: share %.4f", member.Name, day, told.Share))
	}
}

// checkWaste makes sure that the wrappings of what was eaten are still
// carried on the next stage.
func (a *auditor) checkWaste(s int, expected units.Mass) {
	told := units.Mass(0)
	for _, item := range a.Carry.Stages[s].Items {
		if item.Kind == carry.WasteItem {
			told += item.Mass
		}
	}
	if told != expected && !a.nobodyThere(&a.Carry.Stages[s]) {
		a.fault(findings.Place{Day: a.Carry.Stages[s].FirstDay}, prose.Say("wrappings are carried out"), prose.Say("%v of waste is carried, it should be %v", told, expected))
	}
}

// wasteAfter reckons the waste handed on at the end of a stage.
func (a *auditor) wasteAfter(s int, before units.Mass) units.Mass {
	stage := &a.Carry.Stages[s]
	waste := before
	for _, item := range stage.Items {
		if bag := a.index.bag[item.Key]; item.Kind == carry.BagItem && bag != nil && bag.LastDay <= stage.LastDay {
			waste += bag.Tare
		}
	}
	lastOfLeg := s+1 == len(a.Carry.Stages) || a.Carry.Stages[s+1].Leg != stage.Leg
	if !lastOfLeg {
		return waste
	}
	for _, fuel := range a.Cooking.Fuel {
		if fuel.Leg == stage.Leg {
			for _, container := range fuel.Containers {
				waste += container.Empty
			}
		}
	}
	if s+1 < len(a.Carry.Stages) {
		if point := a.Trip.Point(a.Legs[a.Carry.Stages[s+1].Leg].From); point != nil && point.TakesWaste {
			return 0
		}
	}
	return waste
}

// checkBounds compares the shares of a stage with what it claims.
func checkBounds(a *auditor) {
	for s := range a.Carry.Stages {
		stage := &a.Carry.Stages[s]
		worst := 0.0
		for _, member := range a.Carry.Members {
			worst = math.Max(worst, member.Days[stage.FirstDay-1].Share)
		}
		place := findings.Place{Day: stage.FirstDay}
		if math.Abs(worst-stage.Worst) > 1e-6 {
			a.fault(place, prose.Say("the heaviest share is the largest of the shares"), prose.Say("stage says %.4f, shares say %.4f", stage.Worst, worst))
		}
		if stage.WorstBound > worst*(1+1e-6)+1e-9 || stage.MeanBound > stage.Mean*(1+1e-6)+1e-9 {
			a.fault(place, prose.Say("no split is below its bound"), prose.Say("heaviest share %.4f is below the bound %.4f", worst, stage.WorstBound))
		}
	}
}

// checkLimits looks for loads over a hard limit without a finding.
func checkLimits(a *auditor) {
	for i := range a.Trip.Crew {
		member := &a.Trip.Crew[i]
		limit, limited := member.LoadLimit.Get()
		for d, day := range a.Carry.Members[i].Days {
			overMass := limited && day.Load > limit
			overRoom := day.Volume > member.PackRoom
			if !day.Present || !overMass && !overRoom {
				continue
			}
			if !a.said(findings.Carry, func(f findings.Finding) bool { return f.Severity == findings.MustFix }) {
				a.fault(findings.Place{Day: d + 1, Member: member.ID}, prose.Say("no load passes a hard limit in silence"),
					prose.Say("%s carries %v and %v on day %d, over the limit", member.Name, day.Load, day.Volume, d+1))
			}
		}
	}
}

// saidOf tells the findings that own up to a bag in the wrong pack: of the
// very bag, or that the bags of the stage cannot all be carried as they must.
func saidOf(bag *bags.Bag, stage *carry.Stage) func(findings.Finding) bool {
	return func(f findings.Finding) bool {
		return f.Place.Bag == bag.Key || f.Code == "no-split" && f.Place.Day == stage.FirstDay
	}
}
