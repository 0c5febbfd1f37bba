// Package onward plans the rest of a trip with the bags there are. On the
// trail nothing can be weighed anew: somebody goes home, a box does not come,
// a bag is lost, and what is left in packs and boxes has to feed those who are
// left. It says what is eaten when, who gets how much of their need, who
// carries what now and what changes hands for it.
//
// Start with Make; its only error is that of its context.
package onward

import (
	"context"

	"sumpter/domain/carry"
	"sumpter/domain/findings"
	"sumpter/domain/plan"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
	"sumpter/domain/units"
	"sumpter/domain/wayaudit"
)

// Rest is the rest of a trip, from the morning of a day.
type Rest struct {
	From int // first day that is planned anew, 1-based

	// Plan is the plan as it now stands: bags where they are eaten now, those
	// that are gone or never came left out, carriers and intakes as they are.
	// Days before From are as they were planned.
	Plan *plan.Plan

	Changed   bool             // anything differs from what was planned
	Moves     []Move           // proposed: what should be eaten at another meal
	HandOvers []trail.HandOver // on the morning of From
	Choices   []Choice         // other ways to hand over, from the fewest on; none once it is decided
	Aside     []trip.MemberID  // who holds more than a fair load in any case, where the shares of the choices leave them out
	Decided   bool             // what changes hands that morning is decided
	Missing   Amount           // of days from From on, that will not be there
	Spare     []Spare          // own bags of those who went home
	Gifts     []Gift           // proposed: to whom of the others some of them should go
	Unticked  []string         // keys of bags that packing night did not close
	Servings  []trail.Serving  // from From on: who eats what out of which bag
	Days      []Day            // from From to the end
	Lasts     []Lasts          // by cook group
	Fuel      []Fuel           // by leg and group, where it is not enough
	Back      TurnBack         // while going on is not fed
	Buy       []Purchase       // what is missing, where it can be bought
	Findings  []findings.Finding
}

// Amount is a number of bags and what is in them.
type Amount struct {
	Bags int
	Food units.Mass
	Kcal units.Kcal
}

// Move is a dish, with all that is left of its bags, that is better eaten at
// another meal, of its cook group or of another.
type Move struct {
	Group    trip.GroupID // whose it is now
	Recipe   trip.RecipeID
	Bags     []string // keys
	Dishes   []string // keys
	Day      int      // where it is now
	Meal     trip.Meal
	ToGroup  trip.GroupID
	ToDay    int
	ToMeal   trip.Meal
	Earliest int // first day on which it is in the packs
}

// Choice is one way to share the load on the morning of From.
type Choice struct {
	HandOvers []trail.HandOver
	PickUps   []trail.HandOver // out of a box: from nobody
	Worst     float64          // heaviest share that morning, load by capability
	Mean      float64          // heaviest share of each day, weighted by its hours
	Taken     bool             // the one that Plan follows: nearly as fair as can be

	carriers   map[carry.Thing]trip.MemberID
	Relabelled int // pick-ups that go to another than planned
	carry.Passed
}

// Changes counts what has to be done by hand.
func (c Choice) Changes() int { return len(c.HandOvers) + c.Relabelled }

// Day is one day that is left.
type Day struct {
	Number  int
	Planned units.Kcal // for those who are there, before anything changed
	Kcal    units.Kcal // now
	Members []Eaten    // those who are there, by member
}

// Share is what the day brings of what was planned for it, 1 for all of it.
func (d Day) Share() float64 {
	if d.Planned <= 0 {
		return 1
	}
	return float64(d.Kcal / d.Planned)
}

// OfNeed is what part of their need those who are there get on the day, and
// the member who gets the least part of theirs.
func (d Day) OfNeed() (share, least float64, who trip.MemberID) {
	var target, kcal units.Kcal
	for _, e := range d.Members {
		if e.Target <= 0 {
			continue
		}
		target, kcal = target+e.Target, kcal+e.Kcal
		if part := float64(e.Kcal / e.Target); who == 0 || part < least {
			least, who = part, e.Member
		}
	}
	if target <= 0 {
		return 1, 1, 0
	}
	return float64(kcal / target), least, who
}

// Eaten is what one member gets on one day.
type Eaten struct {
	Member        trip.MemberID
	Target        units.Kcal // from the packs
	Planned       units.Kcal
	Kcal          units.Kcal
	ProteinTarget float64 // grams
	ProteinGrams  float64
}

// Make plans the rest from the morning of a day. The plan is that of packing
// night; done says what has happened since. A day outside the trip gives an
// empty rest.
func Make(ctx context.Context, p *plan.Plan, done *trip.Progress, from int) (*Rest, error) {
	rest := &Rest{From: from, Plan: p}
	if p.Refused() || from < 1 || from > len(p.Trip.Days) {
		return rest, nil
	}
	w := newWork(p, done, from)
	rest.Changed, rest.Missing = w.changed(), w.missing()
	rest.Moves, rest.Spare, rest.Unticked = w.propose(), w.spare(), w.unticked()
	rest.Plan = w.adjusted()
	if rest.Changed {
		if err := w.resplit(ctx, rest.Plan); err != nil {
			return nil, err
		}
	}
	rest.Choices, rest.Aside = w.choices(rest.Plan)
	rest.Decided = done.Replan(from) != nil
	if err := w.takeFew(ctx, rest); err != nil {
		return nil, err
	}
	rest.HandOvers = w.handOvers(rest.Plan)
	rest.Servings, rest.Days = w.servings(), w.days()
	rest.Gifts = w.gifts(rest.Days)
	w.setIntakes(rest.Plan, rest.Days)
	rest.Lasts, rest.Fuel = w.lasts(), w.fuelShort(rest.Plan)
	rest.Back, rest.Buy = w.turnBack(rest), w.toBuy(rest.Days)
	rest.Findings = w.tell(rest)
	rest.Findings = append(rest.Findings, wayaudit.Check(wayaudit.Work{
		Planned: p, Done: done, From: from, Now: rest.Plan, Servings: rest.Servings, Findings: rest.Findings,
	})...)
	findings.Sort(rest.Findings)
	return rest, nil
}
