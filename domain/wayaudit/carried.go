package wayaudit

import (
	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// stagesLeft are the stages that are not over on the morning of From.
func (a *auditor) stagesLeft() []*carry.Stage {
	var list []*carry.Stage
	for i := range a.Now.Carry.Stages {
		if stage := &a.Now.Carry.Stages[i]; stage.LastDay >= a.From {
			list = append(list, stage)
		}
	}
	return list
}

// checkPlaces: each bag that is there and still to be eaten is in one pack, of
// somebody who is there and whom it does not harm; what is gone is in none.
func checkPlaces(a *auditor) {
	for _, stage := range a.stagesLeft() {
		packs := map[string]int{}
		day := max(stage.FirstDay, a.From)
		for _, item := range stage.Items {
			if away := a.awayOn(item.Carrier, day, stage.LastDay); away != 0 {
				if a.anybody(away) {
					a.fault(findings.Place{Day: away, Member: item.Carrier}, prose.Say("a carrier is there"), prose.Say("%s is given to %s, who is not there on day %d", a.thing(item), a.member(item.Carrier), away))
				}
				continue
			}
			if item.Kind != carry.BagItem {
				continue
			}
			packs[item.Key]++
			bag := a.now[item.Key]
			if bag == nil || a.planned[item.Key] == nil || !a.comes(a.planned[item.Key]) {
				a.fault(findings.Place{Day: day, Bag: item.Key}, prose.Say("what is not there is not carried"), prose.Say("%s is carried on day %d and is not there", a.bag(item.Key), day))
				continue
			}
			a.checkCarrier(bag, item.Carrier, day)
		}
		for key, bag := range a.now {
			end, ended := a.ends[key]
			gone := ended && (end.End != trip.Eaten || len(bag.Uses) == 1) && end.Day < a.From
			if bag.Leg == stage.Leg && bag.LastDay >= stage.FirstDay && bag.LastDay >= a.From && !gone && packs[key] != 1 && a.anybody(day) {
				a.fault(findings.Place{Day: day, Bag: key}, prose.Say("each bag is in one pack"), prose.Say("%s is in %d packs on day %d", a.bag(key), packs[key], day))
			}
		}
	}
}

// awayOn is the first day of some on which a member is not there, 0 for none.
func (a *auditor) awayOn(id trip.MemberID, first, last int) int {
	for day := first; day <= last; day++ {
		if !a.there(id, day) {
			return day
		}
	}
	return 0
}

func (a *auditor) anybody(day int) bool {
	for i := range a.trip.Crew {
		if a.there(a.trip.Crew[i].ID, day) {
			return true
		}
	}
	return false
}

// checkCarrier keeps allergens out of packs: what contains one, and for whom
// traces harm what is not plainly free. That somebody has the share they
// themselves eat was judged when the trip was planned.
func (a *auditor) checkCarrier(bag *bags.Bag, carrier trip.MemberID, day int) {
	if a.planned[bag.Key].Member == carrier {
		return
	}
	for _, c := range bag.Contents {
		food := a.trip.Food(c.Food)
		if food == nil {
			continue
		}
		for _, allergy := range a.trip.Member(carrier).Allergies {
			state := food.Presence(allergy.Allergen)
			if state != trip.Contains && (!allergy.Severe || state == trip.Free) {
				continue
			}
			if !a.said(func(f findings.Finding) bool {
				return f.Stage == findings.Carry && (f.Place.Bag == bag.Key || f.Code == "no-split")
			}) {
				a.fault(findings.Place{Day: day, Member: carrier, Bag: bag.Key}, prose.Say("nobody carries what they are allergic to"), prose.Say("%s carries %s with %s in it", a.member(carrier), a.bag(bag.Key), a.food(c.Food)))
			}
		}
	}
}

// checkLoads adds up the food in the packs of each morning again.
func checkLoads(a *auditor) {
	for _, stage := range a.stagesLeft() {
		for day := max(stage.FirstDay, a.From); day <= stage.LastDay; day++ {
			food := map[trip.MemberID]units.Mass{}
			for _, item := range stage.Items {
				if end, ended := a.ends[item.Key]; ended && end.Day < day {
					continue // eaten up, lost or left behind
				}
				if bag := a.now[item.Key]; item.Kind == carry.BagItem && bag != nil && day <= bag.LastDay {
					food[item.Carrier] += bag.Tare
					for _, mass := range a.inBag(bag, day) {
						food[item.Carrier] += mass
					}
				}
			}
			for i := range a.Now.Carry.Members {
				m := &a.Now.Carry.Members[i]
				told := m.Days[day-1]
				if told.Present != a.there(m.Member, day) {
					a.fault(findings.Place{Day: day, Member: m.Member}, prose.Say("who is there is reckoned with, and nobody else"),
						prose.Say("%s counts on day %d as there or gone, and is not", a.member(m.Member), day))
				}
				if !told.Present {
					continue
				}
				if apart := told.Food - food[m.Member]; apart > rounding || apart < -rounding || told.Load != told.OwnKit+told.Food+told.Gear+told.Fuel+told.Waste {
					a.fault(findings.Place{Day: day, Member: m.Member}, prose.Say("a load is the sum of its items"),
						prose.Say("%s carries %s of food on day %d, the bags hold %s", a.member(m.Member), told.Food, day, food[m.Member]))
				}
			}
		}
	}
}

// inBag is what is in a bag on a morning, by what the rest says is taken from
// it, held against what was weighed and what went since. A reserve is whole as
// long as it is carried.
func (a *auditor) inBag(bag *bags.Bag, day int) []units.Mass {
	var list []units.Mass
	if bag.Kind == bags.ReserveBag {
		for _, c := range bag.Contents {
			list = append(list, c.Mass)
		}
	}
	for _, use := range bag.Uses {
		for _, c := range use.Contents {
			if use.Day >= day {
				list = append(list, c.Mass)
			}
		}
	}
	return list
}

// checkLimits looks for loads over a hard limit that nobody is told of.
func checkLimits(a *auditor) {
	for i := range a.Now.Carry.Members {
		told := &a.Now.Carry.Members[i]
		member := a.trip.Member(told.Member)
		if member == nil {
			continue
		}
		limit, limited := member.LoadLimit.Get()
		for day := a.From; day <= len(told.Days); day++ {
			load := told.Days[day-1]
			if !load.Present || (!limited || load.Load <= limit) && load.Volume <= member.PackRoom {
				continue
			}
			if !a.said(func(f findings.Finding) bool { return f.Stage == findings.Carry && f.Severity == findings.MustFix }) {
				a.fault(findings.Place{Day: day, Member: member.ID}, prose.Say("no load passes a hard limit in silence"),
					prose.Say("%s carries %s and %s on day %d, over the limit", a.member(member.ID), load.Load, load.Volume, day))
			}
		}
	}
}

// checkFuel: meals burn no more than the containers can hold, or it is said.
func checkFuel(a *auditor) {
	for leg := range a.Now.Legs {
		first, last := max(a.From, a.Now.Legs[leg].FirstDay), a.Now.Legs[leg].LastDay
		if last < a.From {
			continue
		}
		for _, group := range a.trip.Groups {
			var burn, hold units.Mass
			for _, meal := range a.Now.Cooking.Meals {
				if meal.Group == group.ID && meal.Day >= first && meal.Day <= last {
					burn += meal.FuelMass
				}
			}
			for _, fuel := range a.Now.Cooking.Fuel {
				if fuel.Leg != leg || fuel.Group != group.ID {
					continue
				}
				for _, container := range fuel.Containers {
					if !container.Ahead {
						hold += a.mostIn(container.Key, container.Fuel)
					}
				}
			}
			if burn > hold && !a.said(func(f findings.Finding) bool { return f.Stage == findings.Cooking && f.Place.Group == group.ID }) {
				a.fault(findings.Place{Day: first, Group: group.ID}, prose.Say("the fuel there is is the fuel needed"), prose.Say("the meals of %s burn %s, the group carries %s", a.group(group.ID), burn, hold))
			}
		}
	}
}

// mostIn is the most a container can hold: what was found in it last, or what
// it began with.
func (a *auditor) mostIn(key string, full units.Mass) units.Mass {
	latest := 0
	for _, note := range a.Done.FuelNotes {
		if note.Container == key && note.Day <= a.From && note.Day > latest {
			full, latest = note.Left, note.Day
		}
	}
	return full
}
