package wayaudit

import (
	"sumpter/domain/carry"
	"sumpter/domain/naming"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// Things are named as the leader calls them; what is not in the trip, by what
// the plan calls it.

func (a *auditor) member(id trip.MemberID) prose.Text { return naming.Member(a.trip, id) }

func (a *auditor) food(id trip.FoodID) prose.Text { return naming.Food(a.trip, id) }

func (a *auditor) group(id trip.GroupID) prose.Text {
	if group := a.trip.Group(id); group != nil {
		return prose.Verbatim(group.Name)
	}
	return prose.Say("a cook group that is not in the trip")
}

func (a *auditor) bag(key string) prose.Text {
	if bag := a.planned[key]; bag != nil {
		return prose.Say("bag %s", bag.Code)
	}
	return prose.Say("a bag that was never packed (%s)", key)
}

// thing names what is carried.
func (a *auditor) thing(item carry.Item) prose.Text {
	return naming.Thing(a.trip, a.Now.Cooking.Fuel, item, a.bag)
}
