// Package wayaudit checks the re-planned rest of a trip against what must hold
// on the way, from the plan of packing night, what was noted since, and the
// rest alone. It shares no code with the planner: it reckons again what is left
// in each bag, who is there, and who may eat what.
//
// Start with Check. A sound rest gives no findings.
package wayaudit

import (
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/findings"
	"sumpter/domain/plan"
	"sumpter/domain/prose"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
)

// Work is a rest and what it was made from.
type Work struct {
	Planned  *plan.Plan     // of packing night
	Done     *trip.Progress // what was noted since
	From     int            // first day that was planned anew
	Now      *plan.Plan     // as it stands now
	Servings []trail.Serving
	Findings []findings.Finding // of the rest
}

// mostFaults bounds what one check says, so that no broken rule hides another.
const mostFaults = 20

// Check gives every breach it finds, as findings that must be fixed. They speak
// of the program, not of the leader's choices.
func Check(w Work) []findings.Finding {
	a := newAuditor(w)
	for _, check := range []func(*auditor){
		checkPots, checkServings, checkMasses, checkAge, checkPlaces, checkLoads, checkLimits, checkWater, checkFuel,
	} {
		a.bound = len(a.faults) + mostFaults
		check(a)
	}
	return a.faults
}

type auditor struct {
	Work
	trip    *trip.Trip // of the plan
	planned map[string]*bags.Bag
	now     map[string]*bags.Bag
	ends    map[string]trip.BagEnd
	portion map[portionKey]bool
	faults  []findings.Finding
	bound   int // of the faults, for the check that runs
}

// portionKey is a food that a member was portioned for in a dish; food 0 is
// any.
type portionKey struct {
	dish   string
	member trip.MemberID
	food   trip.FoodID
}

func newAuditor(w Work) *auditor {
	a := &auditor{
		Work: w, trip: w.Planned.Trip, planned: map[string]*bags.Bag{}, now: map[string]*bags.Bag{},
		ends: map[string]trip.BagEnd{}, portion: map[portionKey]bool{}, bound: mostFaults,
	}
	for i := range w.Planned.Bags.Bags {
		a.planned[w.Planned.Bags.Bags[i].Key] = &w.Planned.Bags.Bags[i]
	}
	for i := range w.Now.Bags.Bags {
		bag := &w.Now.Bags.Bags[i]
		if a.now[bag.Key] != nil {
			a.fault(findings.Place{Bag: bag.Key}, prose.Say("each bag is there once"), prose.Say("%s is listed twice", a.bag(bag.Key)))
		}
		a.now[bag.Key] = bag
	}
	for _, end := range w.Done.Ends {
		a.ends[end.Bag] = end
	}
	runs := map[string]int{}
	for i := range w.Planned.Portions.Batches {
		b := &w.Planned.Portions.Batches[i]
		sitting := bags.Use{Day: b.Day, Meal: b.Meal, Recipe: b.Recipe}
		first := sitting.Dish(b.Group)
		runs[first]++
		sitting.Batch = runs[first]
		dish := sitting.Dish(b.Group)
		for _, portion := range b.Portions {
			a.portion[portionKey{dish, portion.Member, 0}] = true
			for _, amount := range portion.Amounts {
				a.portion[portionKey{dish, portion.Member, amount.Food}] = true
			}
		}
	}
	return a
}

// fault records a breach of a rule.
func (a *auditor) fault(place findings.Place, rule, what prose.Text) {
	if len(a.faults) >= a.bound {
		return
	}
	a.faults = append(a.faults, findings.Finding{
		Severity: findings.MustFix, Stage: findings.Check, Code: "rest-unsound", Place: place,
		What:   what,
		Why:    prose.Say("Checked apart from the planner: %s.", rule),
		Remedy: prose.Say("Do not use this part of the plan. It is a fault of the program: please report it with the trip file."),
	})
}

// said tells whether a finding of the plan or of the rest owns up to something.
func (a *auditor) said(about func(findings.Finding) bool) bool {
	return slices.ContainsFunc(a.Findings, about) || slices.ContainsFunc(a.Planned.Findings, about)
}

// there tells whether a member is with the group on a day: as planned, unless
// the last that was noted up to that day says otherwise.
func (a *auditor) there(id trip.MemberID, day int) bool {
	m := a.trip.Member(id)
	if m == nil {
		return false
	}
	last := m.LastDay
	if last == 0 {
		last = len(a.trip.Days)
	}
	there, since := !m.Standby && day >= m.FirstDay && day <= last, 0
	for _, c := range a.Done.CrewChanges {
		if c.Member == id && c.Day <= day && c.Day > since {
			there, since = c.There, c.Day
		}
	}
	return there
}

// comes tells whether a bag of a leg ever comes into the packs.
func (a *auditor) comes(bag *bags.Bag) bool {
	return !slices.Contains(a.Done.MissingBoxes, a.Planned.Legs[bag.Leg].From) && a.ends[bag.Key].End != trip.NotPacked
}
