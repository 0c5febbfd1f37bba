package trail

import (
	"cmp"
	"slices"
	"strings"

	"sumpter/domain/bags"
	"sumpter/domain/cooking"
	"sumpter/domain/plan"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// Fact is something that happened or was decided on the way, other than packed
// for on packing night. Hand-overs are none: they are lists of their own.
type Fact struct {
	Day   int           // 1-based, when it happened or from when it holds
	Until int           // last day on which it makes a difference
	Group trip.GroupID  // whose cooking it changes; 0: everybody's
	For   trip.MemberID // whose own share it is; 0: nobody's alone
	What  prose.Text    // a sentence
	Bags  []string      // keys of the bags it is about
}

// Facts lists them in the order of days. The plan is that of packing night.
func Facts(p *plan.Plan, done *trip.Progress) []Fact {
	f := facts{plan: p, bags: map[string]*bags.Bag{}}
	if p.Trip == nil {
		return nil
	}
	for i := range p.Bags.Bags {
		f.bags[p.Bags.Bags[i].Key] = &p.Bags.Bags[i]
	}
	for _, change := range done.CrewChanges {
		f.crew(change)
	}
	for _, point := range done.MissingBoxes {
		f.box(point)
	}
	for _, end := range done.Ends {
		f.end(end)
	}
	for _, part := range done.PartsGone {
		if bag := f.bags[part.Bag]; bag != nil {
			f.ofBag(bag, part.Day, bag.LastDay, prose.Say("Bag %s: %s are gone, %s.", bag.Code, part.Mass, part.End))
		}
	}
	for _, note := range done.FuelNotes {
		f.fuel(note)
	}
	for i := range done.Replans {
		f.decided(&done.Replans[i])
	}
	slices.SortStableFunc(f.list, func(a, b Fact) int { return cmp.Compare(a.Day, b.Day) })
	return f.list
}

type facts struct {
	plan *plan.Plan
	bags map[string]*bags.Bag
	list []Fact
}

func (f *facts) add(fact Fact) { f.list = append(f.list, fact) }

// ofBag adds what is said of one bag.
func (f *facts) ofBag(bag *bags.Bag, day, until int, what prose.Text) {
	f.add(Fact{Day: day, Until: until, Group: bag.Group, For: bag.Member, What: what, Bags: []string{bag.Key}})
}

func (f *facts) member(id trip.MemberID) prose.Text {
	if m := f.plan.Trip.Member(id); m != nil {
		return prose.Verbatim(m.Name)
	}
	return prose.Say("somebody who is not in the crew")
}

func (f *facts) crew(change trip.CrewChange) {
	what := prose.Say("%s is not there from day %d on.", f.member(change.Member), change.Day)
	if change.There {
		what = prose.Say("%s is there from day %d on.", f.member(change.Member), change.Day)
	}
	f.add(Fact{Day: change.Day, Until: len(f.plan.Trip.Days), What: what})
}

func (f *facts) box(id trip.PointID) {
	point := f.plan.Trip.Point(id)
	for _, leg := range f.plan.Legs {
		if leg.From == id && point != nil {
			f.add(Fact{Day: leg.FirstDay, Until: leg.LastDay, What: prose.Say("The box at %s did not come.", point.Name)})
		}
	}
}

// end tells of a bag that came to another end than planned.
func (f *facts) end(end trip.BagEnd) {
	bag := f.bags[end.Bag]
	switch {
	case bag == nil || end.End == trip.Eaten && end.Day == bag.LastDay:
	case end.End == trip.Eaten:
		f.ofBag(bag, end.Day, max(end.Day, bag.LastDay), prose.Say("Bag %s, packed to day %d, was eaten up on day %d.", bag.Code, bag.LastDay, end.Day))
	default:
		f.ofBag(bag, end.Day, bag.LastDay, prose.Say("Bag %s: %s.", bag.Code, end.End))
	}
}

func (f *facts) fuel(note trip.FuelNote) {
	for _, carried := range f.plan.Cooking.Fuel {
		place := slices.IndexFunc(carried.Containers, func(c cooking.Container) bool { return c.Key == note.Container })
		if place < 0 {
			continue
		}
		name := carried.Containers[place].Name
		what := prose.Say("%s held %s on the morning of day %d.", name, note.Left, note.Day)
		if note.Left == 0 {
			what = prose.Say("%s was empty or gone on the morning of day %d.", name, note.Day)
		}
		f.add(Fact{Day: note.Day, Until: max(note.Day, f.plan.Legs[carried.Leg].LastDay), Group: carried.Group, What: what})
	}
}

func (f *facts) decided(replan *trip.Replan) {
	for _, move := range replan.Moves {
		f.moved(replan.Day, move)
	}
	for _, given := range replan.Given {
		if bag := f.bags[given.Bag]; bag != nil {
			f.add(Fact{
				Day: replan.Day, Until: bag.LastDay, Bags: []string{bag.Key},
				What: prose.Say("Bag %s, packed for %s, is for %s from day %d on.", bag.Code, f.member(bag.Member), f.member(given.To), replan.Day),
			})
		}
	}
}

// moved tells of a dish that is eaten at another meal than its bags say. Who
// ate it by their labels and who eats it now both have to know.
func (f *facts) moved(day int, move trip.DishMove) {
	var codes []string
	fact := Fact{Day: day, Until: move.Day}
	name := prose.Say("a dish that is not in the trip")
	for i := range f.plan.Bags.Bags {
		bag := &f.plan.Bags.Bags[i]
		if !strings.HasPrefix(bag.Key, move.Dish+" ") {
			continue
		}
		codes, fact.Bags = append(codes, bag.Code), append(fact.Bags, bag.Key)
		fact.Until = max(fact.Until, bag.LastDay)
		if fact.Group = bag.Group; move.Group != 0 && move.Group != bag.Group {
			fact.Group = 0
		}
		if recipe := f.plan.Trip.Recipe(bag.Recipe); recipe != nil {
			name = prose.Verbatim(recipe.Name)
		}
	}
	if len(codes) == 0 {
		return // the plan no longer makes it
	}
	fact.What = prose.Say("%s (%s) is carried on, for no meal yet.", name, strings.Join(codes, ", "))
	if group := f.plan.Trip.Group(move.Group); move.Day > 0 && group != nil {
		fact.What = prose.Say("%s (%s) is eaten on day %d, %s, by %s.", name, strings.Join(codes, ", "), move.Day, move.Meal, group.Name)
	}
	if move.Day == 0 {
		fact.Until = len(f.plan.Trip.Days)
	}
	f.add(fact)
}
