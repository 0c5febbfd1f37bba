package loads

import (
	"cmp"
	"slices"
	"strconv"

	"sumpter/app/written"
	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/cooking"
	"sumpter/domain/onward"
	"sumpter/domain/plan"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// view is one plan, indexed for looking at its loads.
type view struct {
	plan       *plan.Plan
	rest       *onward.Rest // of which the plan is; nil: packing night's
	first      int          // day that is still ahead
	order      []int        // places in the crew, by group, then name
	bags       map[string]*bags.Bag
	containers map[string]fuelOf
	goneAfter  map[string]int // bags that were eaten, lost or left behind, by their last day
	top        float64        // largest share of any morning, water included
	topMass    units.Mass     // the same as a mass
}

type fuelOf struct {
	*cooking.Container
	group trip.GroupID
	leg   int
}

// newView reads the plan of packing night, or, if rest is not nil, the packs of
// the rest of the trip.
func newView(p *plan.Plan, rest *onward.Rest) *view {
	v := &view{plan: p, rest: rest, first: 1, bags: map[string]*bags.Bag{}, containers: map[string]fuelOf{}, goneAfter: map[string]int{}}
	if rest != nil {
		v.first = rest.From
		for _, end := range p.Trip.Progress.Ends {
			v.goneAfter[end.Bag] = end.Day
		}
	}
	for i := range p.Bags.Bags {
		v.bags[p.Bags.Bags[i].Key] = &p.Bags.Bags[i]
	}
	for f := range p.Cooking.Fuel {
		fuel := &p.Cooking.Fuel[f]
		for i := range fuel.Containers {
			v.containers[fuel.Containers[i].Key] = fuelOf{&fuel.Containers[i], fuel.Group, fuel.Leg}
		}
	}
	for i := range p.Trip.Crew {
		v.order = append(v.order, i)
	}
	slices.SortStableFunc(v.order, func(a, b int) int {
		left, right := &p.Trip.Crew[a], &p.Trip.Crew[b]
		return cmp.Or(cmp.Compare(left.Group, right.Group), cmp.Compare(left.Name, right.Name))
	})
	for _, member := range p.Carry.Members {
		for _, day := range member.Days {
			v.topMass = max(v.topMass, day.Load+day.Water)
			if member.Capability > 0 {
				v.top = max(v.top, float64(day.Load+day.Water)/float64(member.Capability))
			}
		}
	}
	return v
}

// place gives a member's place in the crew, -1 for nobody.
func (v *view) place(id trip.MemberID) int {
	return slices.IndexFunc(v.plan.Trip.Crew, func(m trip.Member) bool { return m.ID == id })
}

// load gives what a member carries on a morning.
func (v *view) load(id trip.MemberID, day int) (carry.Day, units.Mass) {
	i := v.place(id)
	if i < 0 || i >= len(v.plan.Carry.Members) || day < 1 || day > len(v.plan.Carry.Members[i].Days) {
		return carry.Day{}, 0
	}
	return v.plan.Carry.Members[i].Days[day-1], v.plan.Carry.Members[i].Capability
}

// there tells whether a member is with the group on a day.
func (v *view) there(id trip.MemberID, day int) bool {
	load, _ := v.load(id, day)
	return load.Present
}

// anyThere tells whether somebody of a cook group is there on a day; all of it
// may have gone home on the way.
func (v *view) anyThere(group trip.GroupID, day int) bool {
	return slices.ContainsFunc(v.plan.Trip.Crew, func(m trip.Member) bool { return m.Group == group && v.there(m.ID, day) })
}

// stages are those that are not over.
func (v *view) stages() []*carry.Stage {
	var list []*carry.Stage
	for i := range v.plan.Carry.Stages {
		if s := &v.plan.Carry.Stages[i]; s.LastDay >= v.first {
			list = append(list, s)
		}
	}
	return list
}

// stage gives the stage a day belongs to, nil if there is none.
func (v *view) stage(day int) *carry.Stage {
	for i := range v.plan.Carry.Stages {
		if s := &v.plan.Carry.Stages[i]; day >= s.FirstDay && day <= s.LastDay {
			return s
		}
	}
	return nil
}

// fair gives the fair level of a day as a share of capability, 0 if unknown.
func (v *view) fair(day int) float64 {
	s := v.stage(day)
	if s == nil || day-s.FirstDay >= len(s.Fair) {
		return 0
	}
	return s.Fair[day-s.FirstDay]
}

// thing is one thing somebody carries on a morning.
type thing struct {
	kind    carry.ItemKind
	key     string
	name    string
	about   string
	mass    units.Mass
	volume  units.Volume
	carrier trip.MemberID
	why     string
	bag     *bags.Bag    // of a bag
	group   trip.GroupID // of gear and fuel; 0: anybody's
}

// id names a thing for good.
func (t *thing) id() string { return string(t.kind) + " " + t.key }

// things lists what a member carries on a day: gear, then bags in the order
// they are eaten, then fuel and waste.
func (v *view) things(member trip.MemberID, day int) []thing {
	s := v.stage(day)
	if s == nil {
		return nil
	}
	var list []thing
	for i := range s.Items {
		if s.Items[i].Carrier != member {
			continue
		}
		if t, there := v.thing(&s.Items[i], day); there {
			list = append(list, t)
		}
	}
	rank := func(t thing) int {
		return slices.Index([]carry.ItemKind{carry.GearItem, carry.BagItem, carry.FuelItem, carry.WasteItem}, t.kind)
	}
	slices.SortStableFunc(list, func(a, b thing) int { return cmp.Or(cmp.Compare(rank(a), rank(b)), cmp.Compare(a.name, b.name)) })
	if water, dry := v.water(member, day); dry {
		list = append(list, water)
	}
	return list
}

// find gives the thing of an id on a day, whoever carries it.
func (v *view) find(id string, day int) (thing, bool) {
	if member, ok := waterOf(id); ok {
		return v.water(member, day)
	}
	s := v.stage(day)
	if s == nil {
		return thing{}, false
	}
	for i := range s.Items {
		if item := &s.Items[i]; string(item.Kind)+" "+item.Key == id {
			return v.thing(item, day)
		}
	}
	return thing{}, false
}

// thing reads an item on a day; a bag that was eaten is none any more.
func (v *view) thing(item *carry.Item, day int) (thing, bool) {
	t := thing{kind: item.Kind, key: item.Key, name: item.Key, mass: item.Mass, carrier: item.Carrier, why: written.Text(item.Why, v.plan.Trip.Units)}
	switch item.Kind {
	case carry.BagItem:
		t.bag = v.bags[item.Key]
		if last, gone := v.goneAfter[item.Key]; t.bag == nil || t.bag.LastDay < day || gone && last < day {
			return t, false
		}
		t.name, t.mass, t.volume, t.about = t.bag.Code, t.bag.On(day), t.bag.Volume, v.aboutBag(t.bag)
	case carry.GearItem:
		if gear := v.gear(item.Key); gear != nil {
			t.name, t.group, t.volume, t.about = gear.Name, gear.Group, gear.Volume, kindWord(gear.Kind)
		}
	case carry.FuelItem:
		if c, ok := v.containers[item.Key]; ok {
			t.name, t.group, t.volume, t.about = c.Name, c.group, c.Volume, fuelWords(c.Container, day)
			if c.EmptyFrom > 0 && day >= c.EmptyFrom {
				t.mass = c.Empty
			}
		}
	case carry.WasteItem:
		t.name, t.about = wasteWord(), ""
	}
	return t, true
}

func (v *view) gear(key string) *trip.Gear { return v.plan.Trip.GearItem(gearID(key)) }

// gearID reads the key of a piece of gear; 0 for what is none.
func gearID(key string) trip.GearID {
	id, err := strconv.ParseInt(key, 10, 64)
	if err != nil {
		return 0
	}
	return trip.GearID(id)
}
