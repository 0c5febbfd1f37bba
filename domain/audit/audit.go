// Package audit checks a finished plan against the invariants every plan must
// keep, from the trip and the plan alone. It shares no code with the planner:
// it adds up again what the stages claim, so that a mistake in one of them
// shows before anybody walks on it.
//
// Start with Check. A sound plan gives no findings.
package audit

import (
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/cooking"
	"sumpter/domain/findings"
	"sumpter/domain/menu"
	"sumpter/domain/needs"
	"sumpter/domain/portions"
	"sumpter/domain/prose"
	"sumpter/domain/resupply"
	"sumpter/domain/shopping"
	"sumpter/domain/spoilage"
	"sumpter/domain/trip"
)

// Work is a trip and what the stages made of it.
type Work struct {
	Trip     *trip.Trip // canonical
	Legs     []trip.Leg
	Needs    needs.Result
	Menu     menu.Result
	Portions portions.Result
	Spoilage spoilage.Result
	Cooking  cooking.Result
	Bags     bags.Result
	Resupply resupply.Result
	Carry    carry.Result
	Shopping shopping.Result
	Findings []findings.Finding // of all stages
}

// mostFaults bounds the list: a plan that is wrong everywhere need not say so
// ten thousand times.
const mostFaults = 200

// Check gives every breach of an invariant it finds, as findings that must be
// fixed. They speak of the program, not of the leader's choices.
func Check(w Work) []findings.Finding {
	a := &auditor{Work: w, index: newIndex(w)}
	for _, check := range []func(*auditor){
		checkPortions, checkServed, checkSafety, checkIntakes, checkBatchesInBags, checkBags, checkReserve,
		checkBoxes, checkCarriers, checkLoads, checkBounds, checkLimits, checkWater, checkWaterLimits, checkShopping,
		checkSpoilage, checkFuel,
	} {
		check(a)
	}
	return a.faults
}

type auditor struct {
	Work
	index  index
	faults []findings.Finding
}

// fault records a breach of a rule.
func (a *auditor) fault(place findings.Place, rule, what prose.Text) {
	if len(a.faults) >= mostFaults {
		return
	}
	a.faults = append(a.faults, findings.Finding{
		Severity: findings.MustFix, Stage: findings.Check, Code: "plan-unsound", Place: place,
		What:   what,
		Why:    prose.Say("Checked apart from the planner: %s.", rule),
		Remedy: prose.Say("Do not use this part of the plan. It is a fault of the program: please report it with the trip file."),
	})
}

// said tells whether some finding of a stage speaks of a place.
func (a *auditor) said(stage findings.Stage, about func(findings.Finding) bool) bool {
	for _, finding := range a.Findings {
		if finding.Stage != stage {
			continue
		}
		for one := range finding.Each() {
			if about(one) {
				return true
			}
		}
	}
	return false
}

// told tells whether a finding of this code speaks of a point.
func (a *auditor) told(point trip.PointID, code string) bool {
	return slices.ContainsFunc(a.Findings, func(f findings.Finding) bool { return f.Place.Point == point && f.Code == code })
}

// index finds things of the trip by ID.
type index struct {
	food   map[trip.FoodID]*trip.Food
	member map[trip.MemberID]*trip.Member
	recipe map[trip.RecipeID]*trip.Recipe
	place  map[trip.MemberID]int // in the canonical crew
	bag    map[string]*bags.Bag
}

func newIndex(w Work) index {
	x := index{
		food: map[trip.FoodID]*trip.Food{}, member: map[trip.MemberID]*trip.Member{},
		recipe: map[trip.RecipeID]*trip.Recipe{}, place: map[trip.MemberID]int{}, bag: map[string]*bags.Bag{},
	}
	for i := range w.Trip.Foods {
		x.food[w.Trip.Foods[i].ID] = &w.Trip.Foods[i]
	}
	for i := range w.Trip.Crew {
		x.member[w.Trip.Crew[i].ID] = &w.Trip.Crew[i]
		x.place[w.Trip.Crew[i].ID] = i
	}
	for i := range w.Trip.Recipes {
		x.recipe[w.Trip.Recipes[i].ID] = &w.Trip.Recipes[i]
	}
	for i := range w.Bags.Bags {
		x.bag[w.Bags.Bags[i].Key] = &w.Bags.Bags[i]
	}
	return x
}
