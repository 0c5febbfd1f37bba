package cooking

import (
	"sumpter/domain/findings"
	"sumpter/domain/needs"
	"sumpter/domain/portions"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Compute works out the cooking of the trip. Dinners are made hot wherever a
// flame is allowed; a breakfast or lunch that can be made cold and does not
// simmer is made cold.
//
// It never fails: what cannot be cooked becomes a finding.
func Compute(t *trip.Trip, n needs.Result, p portions.Result, legs []trip.Leg) Result {
	c := newCook(t, n, legs)
	for g := range t.Groups {
		c.lookAtKitchen(g)
	}
	c.drinking()
	c.lookAtSnacks(p)
	for _, slot := range c.slots(p) {
		c.cookSlot(slot)
	}
	c.fuel()
	c.dryCamps()
	return c.result
}

// newCook gathers what every part of the stage asks for.
func newCook(t *trip.Trip, n needs.Result, legs []trip.Leg) *cook {
	c := &cook{trip: t, needs: n, legs: legs, kitchens: make([]kitchen, len(t.Groups)), said: map[string]bool{}}
	c.recipes = make(map[trip.RecipeID]*trip.Recipe, len(t.Recipes))
	for i := range t.Recipes {
		c.recipes[t.Recipes[i].ID] = &t.Recipes[i]
	}
	c.member = make(map[trip.MemberID]int, len(t.Crew))
	for i := range t.Crew {
		c.member[t.Crew[i].ID] = i
	}
	for g := range t.Groups {
		c.kitchens[g] = kitchenOf(t, t.Groups[g].ID)
	}
	return c
}

// cook carries what the parts of the stage share.
type cook struct {
	trip     *trip.Trip
	needs    needs.Result
	legs     []trip.Leg
	kitchens []kitchen // by place in the groups
	recipes  map[trip.RecipeID]*trip.Recipe
	member   map[trip.MemberID]int // place in the crew
	said     map[string]bool       // findings that are told once
	result   Result
	lines    *[]Line // the account of a meal, while somebody asks for it
}

func (c *cook) tell(severity findings.Severity, code string, place findings.Place, what, why, remedy prose.Text) {
	c.result.Findings = append(c.result.Findings, findings.Finding{
		Severity: severity, Stage: findings.Cooking, Code: code, Place: place, What: what, Why: why, Remedy: remedy,
	})
}

// once tells whether a thing is said for the first time.
func (c *cook) once(key string) bool {
	if c.said[key] {
		return false
	}
	c.said[key] = true
	return true
}

// slot is what is eaten at one meal of one group.
type slot struct {
	day     int
	meal    trip.Meal
	group   int // place in the groups
	batches []*portions.Batch
}

// slots lists the meals to be looked at, by day, meal and group: those with
// food, and dinners of snowy days, where drinking water is melted.
func (c *cook) slots(p portions.Result) []slot {
	type key struct {
		day   int
		meal  trip.Meal
		group trip.GroupID
	}
	batches := map[key][]*portions.Batch{}
	for i := range p.Batches {
		b := &p.Batches[i]
		batches[key{b.Day, b.Meal, b.Group}] = append(batches[key{b.Day, b.Meal, b.Group}], b)
	}
	var list []slot
	for d := range c.trip.Days {
		for _, meal := range []trip.Meal{trip.Breakfast, trip.Lunch, trip.Dinner} {
			for g := range c.trip.Groups {
				found := batches[key{d + 1, meal, c.trip.Groups[g].ID}]
				if len(found) > 0 || meal == trip.Dinner && c.melts(d+1, g) {
					list = append(list, slot{d + 1, meal, g, found})
				}
			}
		}
	}
	return list
}

// melts tells whether the group melts its drinking water that day.
func (c *cook) melts(day, group int) bool {
	return c.trip.Days[day-1].SnowWater && !c.trip.Days[day-1].NoFlame && c.kitchens[group].canCook() &&
		len(c.trip.Eaters(day, c.trip.Groups[group].ID)) > 0
}

// Heated tells whether a recipe is put on the flame at a meal, where one is
// allowed and there is a stove: what must simmer or is poured off, and wet
// recipes but those that may be made cold and are not a dinner.
func Heated(recipe *trip.Recipe, meal trip.Meal) bool {
	wet := recipe.Water > 0 || recipe.PourOff > 0
	if recipe.Simmer > 0 || recipe.PourOff > 0 {
		return true
	}
	return wet && (!recipe.ColdOK || meal == trip.Dinner)
}

// eaters counts the members who eat of the batches.
func (s *slot) eaters() int {
	seen := map[trip.MemberID]bool{}
	for _, batch := range s.batches {
		for _, portion := range batch.Portions {
			seen[portion.Member] = true
		}
	}
	return len(seen)
}

func (s *slot) place(c *cook) findings.Place {
	return findings.Place{Day: s.day, Meal: s.meal, Group: c.trip.Groups[s.group].ID}
}

// inPot is the room the dry food of a batch takes in the pot.
func inPot(batch *portions.Batch) units.Volume {
	grams := 0.0
	for _, amount := range batch.Totals {
		if amount.Place == trip.InPot {
			grams += amount.Mass.Grams()
		}
	}
	return units.FromMillilitres(grams * gramsPerPotMil)
}
