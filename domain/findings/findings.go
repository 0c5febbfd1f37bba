// Package findings holds what the leader must know: where it is, how bad, why,
// and what to do. Every stage adds its own; there is one list and one order.
package findings

import (
	"cmp"
	"iter"
	"slices"

	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// Severity is how much a finding matters.
type Severity string

// Severities, worst first. MustFix can hurt somebody or break the trip.
const (
	MustFix Severity = "must fix"
	LookAt  Severity = "look at"
	Note    Severity = "note"
)

// Stage is the part of the plan a finding comes from.
type Stage string

// The stages in the order of the plan.
const (
	Trip     Stage = "trip"
	Needs    Stage = "needs"
	Menu     Stage = "menu"
	Portions Stage = "portions"
	Spoilage Stage = "spoilage"
	Cooking  Stage = "cooking"
	Bags     Stage = "bags"
	Resupply Stage = "resupply"
	Carry    Stage = "carry"
	Shopping Stage = "shopping"
	Packing  Stage = "packing"
	Check    Stage = "check" // the independent check of the finished plan
)

// Place is where in the trip a finding belongs; zero fields do not apply.
type Place struct {
	Day    int           `json:"day,omitempty"`
	Meal   trip.Meal     `json:"meal,omitempty"`
	Group  trip.GroupID  `json:"group,omitempty"`
	Member trip.MemberID `json:"member,omitempty"`
	Food   trip.FoodID   `json:"food,omitempty"`
	Recipe trip.RecipeID `json:"recipe,omitempty"`
	Gear   trip.GearID   `json:"gear,omitempty"`
	Point  trip.PointID  `json:"point,omitempty"`
	Bag    string        `json:"bag,omitempty"` // bag key
}

// Finding is one thing the leader must know.
type Finding struct {
	Severity Severity   `json:"severity"`
	Stage    Stage      `json:"stage"`
	Code     string     `json:"code"` // stable word for programs: "allergen", "day-short"
	Place    Place      `json:"place"`
	Also     []Place    `json:"also,omitempty"` // where else the same cause does the same, in the order of days
	What     prose.Text `json:"what"`           // one plain sentence with the amount
	Why      prose.Text `json:"why"`            // the rule or figure behind it, with its source
	Remedy   prose.Text `json:"remedy"`         // what to do, with the amount
}

// Each gives the finding once for each of its places, as if it stood there
// alone.
func (f Finding) Each() iter.Seq[Finding] {
	return func(yield func(Finding) bool) {
		also := f.Also
		f.Also = nil
		if !yield(f) {
			return
		}
		for _, f.Place = range also {
			if !yield(f) {
				return
			}
		}
	}
}

// Sort puts findings in the order a leader works them off: worst first, then
// by stage, day, place and code. The order is total, so it is stable.
func Sort(list []Finding) {
	slices.SortStableFunc(list, func(a, b Finding) int {
		if order := cmp.Or(
			a.Severity.Compare(b.Severity),
			cmp.Compare(stageOrder(a.Stage), stageOrder(b.Stage)),
			cmp.Compare(a.Place.Day, b.Place.Day),
			cmp.Compare(trip.MealOrder(a.Place.Meal), trip.MealOrder(b.Place.Meal)),
			cmp.Compare(a.Place.Group, b.Place.Group),
			cmp.Compare(a.Place.Member, b.Place.Member),
			cmp.Compare(a.Place.Food, b.Place.Food),
			cmp.Compare(a.Place.Recipe, b.Place.Recipe),
			cmp.Compare(a.Place.Gear, b.Place.Gear),
			cmp.Compare(a.Place.Point, b.Place.Point),
			cmp.Compare(a.Place.Bag, b.Place.Bag),
			cmp.Compare(a.Code, b.Code),
		); order != 0 {
			return order
		}
		return cmp.Compare(a.What.String(), b.What.String())
	})
}

// Count gives how many findings have the severity.
func Count(list []Finding, severity Severity) int {
	n := 0
	for _, finding := range list {
		if finding.Severity == severity {
			n++
		}
	}
	return n
}

// Compare orders the worse before the less bad.
func (s Severity) Compare(other Severity) int { return cmp.Compare(s.order(), other.order()) }

func (s Severity) order() int { return slices.Index([]Severity{MustFix, LookAt, Note}, s) }

func stageOrder(s Stage) int {
	return slices.Index([]Stage{Trip, Needs, Menu, Portions, Spoilage, Cooking, Bags, Resupply, Carry, Shopping, Packing, Check}, s)
}
