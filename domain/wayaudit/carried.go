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
			if !a.there(item.Carrier, day) {
				if a.anybody(day) {
					a.fault(findings.Place{Day: day, Member: item.Carrier}, prose.Say("a carrier is there"), prose.Say("%s %s is given to somebody who is not there", item.Kind, item.Key))
				}
				continue
			}
			if item.Kind != carry.BagItem {
				continue
			}
			packs[item.Key]++
			bag := a.now[item.Key]
			if bag == nil || a.planned[item.Key] == nil || !a.comes(a.planned[item.Key]) {
				a.fault(findings.Place{Day: day, Bag: item.Key}, prose.Say("what is not there is not carried"), prose.Say("bag %s is carried on day %d and is not there", item.Key, day))
				continue
			}
			a.checkCarrier(bag, item.Carrier, day)
		}
		for key, bag := range a.now {
			end, ended := a.ends[key]
			gone := ended && (end.End != trip.Eaten || len(bag.Uses) == 1) && end.Day < a.From
			if bag.Leg == stage.Leg && bag.LastDay >= stage.FirstDay && bag.LastDay >= a.From && !gone && packs[key] != 1 && a.anybody(day) {
				a.fault(findings.Place{Day: day, Bag: key}, prose.Say("each bag is in one pack"), prose.Say("bag %s is in %d packs on day %d", bag.Code, packs[key], day))
			}
		}
	}
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
				a.fault(findings.Place{Day: day, Member: carrier, Bag: bag.Key}, prose.Say("nobody carries what they are allergic to"), prose.Say("member %d carries bag %s with food %d", carrier, bag.Code, c.Food))
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
				if !told.Present {
					continue
				}
				if apart := told.Food - food[m.Member]; apart > rounding || apart < -rounding || told.Load != told.OwnKit+told.Food+told.Gear+told.Fuel+told.Waste {
					a.fault(findings.Place{Day: day, Member: m.Member}, prose.Say("a load is the sum of its items"),
						prose.Say("member %d carries %s of food on day %d, the bags hold %s", m.Member, told.Food, day, food[m.Member]))
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
					prose.Say("%s carries %v and %v on day %d, over the limit", member.Name, load.Load, load.Volume, day))
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
				a.fault(findings.Place{Day: first, Group: group.ID}, prose.Say("the fuel there is is the fuel needed"), prose.Say("meals burn %v, the group carries %v", burn, hold))
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
