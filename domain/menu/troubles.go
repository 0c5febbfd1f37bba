package menu

import (
	"cmp"
	"slices"
	"strings"

	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// labelDefers ends every remedy that lets somebody eat.
func labelDefers() prose.Text {
	return prose.Say("The label of the bought food rules; ask the member, and their doctor where in doubt.")
}

func (k slotKey) place() findings.Place {
	return findings.Place{Day: k.day, Meal: k.meal, Group: k.group}
}

func (r *resolver) tell(severity findings.Severity, code string, place findings.Place, what, why, remedy prose.Text) {
	r.seen = append(r.seen, findings.Finding{Severity: severity, Stage: findings.Menu, Code: code, Place: place, What: what, Why: why, Remedy: remedy})
}

// lookAtOpen tells of a slot in which nothing is served.
func (r *resolver) lookAtOpen(key slotKey, cell *trip.Cell) {
	group := r.trip.Group(key.group).Name
	if cell != nil && cell.Locked {
		r.tell(findings.Note, "slot-empty", key.place(),
			prose.Say("%s has no %s on day %d: the slot is locked empty.", group, key.meal, key.day),
			prose.Say("The leader locked the slot."), prose.Say("Unlock it, or take the meal out of the day if it is eaten elsewhere."))
		return
	}
	severity := findings.MustFix
	if key.meal == trip.Snack {
		severity = findings.LookAt
	}
	remedy := prose.Say("Choose a recipe, or let the program fill open slots.")
	if r.trip.Settings.FillOpenSlots {
		remedy = prose.Say("No recipe for %s suits this day and these eaters: add one, or choose by hand.", key.meal)
	}
	r.tell(severity, "slot-open", key.place(), prose.Say("%s has nothing for %s on day %d.", group, key.meal, key.day),
		prose.Say("The meal is eaten from the packs this day."), remedy)
}

func (r *resolver) lookAtAbsent(key slotKey, dish *trip.Dish, member trip.MemberID) {
	place := key.place()
	place.Member, place.Recipe = member, dish.Recipe
	who := r.trip.Member(member)
	if who == nil {
		return // validation names it
	}
	r.tell(findings.Note, "dish-for-absent", place,
		prose.Say("%s is meant for %s, who does not eat %s with %s on day %d.", r.recipes[dish.Recipe].Name, who.Name, key.meal, r.trip.Group(key.group).Name, key.day),
		prose.Say("Only members of the cook group who are there that day eat in the slot."), prose.Say("Take the name out of the dish, or change the days or the group."))
}

// lookAtAccepted keeps in sight what somebody eats because the leader took the danger on.
func (r *resolver) lookAtAccepted(key slotKey, recipe *trip.Recipe, dish Dish, accepted []trip.Acceptance) {
	for _, batch := range dish.Batches {
		for _, serving := range batch.Servings {
			for _, part := range serving.Parts {
				if !part.Accepted {
					continue
				}
				member, food := r.member(serving.Member), r.food(part.Food)
				severity := findings.LookAt
				if deadly(member, food) {
					severity = findings.MustFix
				}
				place := key.place()
				place.Member, place.Food, place.Recipe = member.ID, food.ID, recipe.ID
				r.tell(severity, "danger-accepted", place,
					prose.Say("%s is served %s in %s at %s on day %d, by your decision: %s.", member.Name, food.Name, recipe.Name, key.meal, key.day, because(member, food)),
					reasonGiven(accepted, member.ID, food.ID).Then(prose.Say("Unknown and traces are never safe of themselves.")),
					prose.Say("Take it back if the reason no longer holds.").Then(labelDefers()))
			}
		}
	}
}

func reasonGiven(accepted []trip.Acceptance, member trip.MemberID, food trip.FoodID) prose.Text {
	for _, a := range accepted {
		if a.Member == member && a.Food == food && a.Reason != "" {
			return prose.Say("You took this on by hand in this cell, for this reason: %s.", strings.TrimRight(a.Reason, ". "))
		}
	}
	return prose.Say("You took this on by hand in this cell.")
}

// deadly tells whether the food holds what the member is allergic to, or may hold what harms them in traces.
func deadly(member *trip.Member, food *trip.Food) bool {
	for _, o := range member.Objections(food) {
		if o.Presence == trip.Contains || o.Severe {
			return true
		}
	}
	return false
}

// because says what speaks against serving the food to the member.
func because(member *trip.Member, food *trip.Food) prose.Text {
	var words []prose.Text
	for _, o := range member.Objections(food) {
		switch {
		case o.Allergen != "" && o.Presence == trip.NotKnown:
			words = append(words, prose.Say("allergic to %s, and it is not known whether it holds any", o.Allergen))
		case o.Allergen != "" && o.Presence == trip.Contains:
			words = append(words, prose.Say("allergic to %s, which it contains", o.Allergen))
		case o.Allergen != "":
			words = append(words, prose.Say("allergic to %s, which it may contain", o.Allergen))
		case o.Diet != "" && o.Suits == trip.DoesNotSuit:
			words = append(words, prose.Say("it is not %s", o.Diet))
		case o.Diet != "":
			words = append(words, prose.Say("it is not known to be %s", o.Diet))
		}
	}
	return prose.List("; ", words)
}

type refusedDish struct {
	refusal
	recipe *trip.Recipe
}

// lookAtRefused tells who gets nothing of a dish, and who gets nothing at all.
func (r *resolver) lookAtRefused(key slotKey, slot *Slot, refused []refusedDish) {
	hungry := map[trip.MemberID]bool{}
	for _, eater := range slot.Eaters {
		hungry[eater] = !slot.served(eater)
	}
	for _, no := range refused {
		member, place := r.member(no.member), key.place()
		place.Member, place.Food, place.Recipe = no.member, no.food, no.recipe.ID
		severity, besides := findings.LookAt, prose.Say("They get the other dishes of the meal.")
		if hungry[no.member] {
			severity, besides = findings.MustFix, prose.Say("They get nothing else at this meal.")
		}
		r.tell(severity, "cannot-be-served", place,
			prose.Say("%s gets no %s at %s on day %d: %s. %s", member.Name, no.recipe.Name, key.meal, key.day, r.reason(member, no.refusal), besides),
			prose.Say("Nobody is served what their allergy or diet forbids; unknown counts as forbidden."), r.remedyFor(key, no))
		hungry[no.member] = false
	}
	for _, eater := range slot.Eaters {
		if !hungry[eater] {
			continue
		}
		place := key.place()
		place.Member = eater
		r.tell(findings.MustFix, "nothing-served", place,
			prose.Say("No dish of %s on day %d is meant for %s.", key.meal, key.day, r.member(eater).Name),
			prose.Say("The dishes of the slot are for others only."), r.remedyForOne(slot, eater))
	}
}

// remedyForOne says what helps somebody for whom no dish of a slot is meant: a
// dish that is not safe for them must not simply be for everybody.
func (r *resolver) remedyForOne(slot *Slot, eater trip.MemberID) prose.Text {
	member := r.member(eater)
	for i := range slot.Dishes {
		recipe := r.recipes[slot.Dishes[i].Recipe]
		if recipe == nil {
			continue
		}
		if out := r.serve(recipe, []trip.MemberID{eater}, nil); len(out.refused) > 0 {
			return prose.Say("%s is not for %s: %s. Read its label and enter it, give the recipe a swap, or add a dish for them.",
				recipe.Name, member.Name, r.reason(member, out.refused[0]))
		}
	}
	return prose.Say("Add a dish for them, or let a dish be for everybody.")
}

func (r *resolver) reason(member *trip.Member, no refusal) prose.Text {
	food := r.food(no.food)
	if food == nil {
		return prose.Say("nothing is left of it after the swaps")
	}
	return prose.Say("%s, %s, and no swap is safe", food.Name, because(member, food))
}

// suggestions is how many recipes a remedy names.
const suggestions = 2

// remedyFor names recipes for the meal that the member may eat.
func (r *resolver) remedyFor(key slotKey, no refusedDish) prose.Text {
	var names []string
	for i := range r.trip.Recipes {
		recipe := &r.trip.Recipes[i]
		if recipe.ID == no.recipe.ID || !slices.Contains(recipe.Meals, key.meal) || r.trip.Days[key.day-1].NoFlame && recipe.NeedsFlame() {
			continue
		}
		if out := r.serve(recipe, []trip.MemberID{no.member}, nil); len(out.refused) == 0 {
			if names = append(names, recipe.Name); len(names) == suggestions {
				break
			}
		}
	}
	swap := prose.Say("Give the recipe a swap they may eat")
	if food := r.food(no.food); food != nil {
		swap = prose.Say("Give %s a swap for %s that they may eat", no.recipe.Name, food.Name)
	}
	if len(names) == 0 {
		return prose.Say("%s, or bring another dish for them: none of the recipes for this meal will do.", swap).Then(labelDefers())
	}
	served := prose.Verbatim(names[0])
	if len(names) == suggestions {
		served = prose.Say("%s or %s", names[0], names[1])
	}
	return prose.Say("%s, or serve them %s.", swap, served).Then(labelDefers())
}

// lookAtMeal notes a dish that its recipe means for other meals.
func (r *resolver) lookAtMeal(key slotKey, recipe *trip.Recipe) {
	if slices.Contains(recipe.Meals, key.meal) {
		return
	}
	place := key.place()
	place.Recipe = recipe.ID
	r.tell(findings.Note, "other-meal", place, prose.Say("%s is %s on day %d.", recipe.Name, key.meal, key.day),
		prose.Say("The recipe is not meant for that meal."), prose.Say("Leave it if you mean it, or add the meal to the recipe."))
}

// dislike is a disliked food that a member is served.
type dislike struct {
	key slotKey
	refusal
}

func (r *resolver) noteDislikes(key slotKey, list []refusal) {
	for _, d := range list {
		r.dislikes = append(r.dislikes, dislike{key, d})
	}
}

// lookAtTrip tells what is better said once than at every meal.
func (r *resolver) lookAtTrip() {
	r.lookAtDislikes()
	r.lookAtContact()
	r.lookAtRepeats()
	r.lookAtUnused()
}

func (r *resolver) lookAtDislikes() {
	slices.SortStableFunc(r.dislikes, func(a, b dislike) int {
		return cmp.Or(cmp.Compare(a.member, b.member), cmp.Compare(a.food, b.food))
	})
	for i := 0; i < len(r.dislikes); {
		first, n := r.dislikes[i], 0
		for ; i < len(r.dislikes) && r.dislikes[i].refusal == first.refusal; i++ {
			n++
		}
		place := first.key.place()
		place.Member, place.Food = first.member, first.food
		r.tell(findings.Note, "disliked", place,
			prose.Say("%s is served %s %s, first at %s on day %d, and does not like it.", r.member(first.member).Name, r.food(first.food).Name, times(n), first.key.meal, first.key.day),
			prose.Say("A dislike gives way where no swap is at hand."), prose.Say("Choose another dish, or give the recipe a swap."))
	}
}

func times(n int) prose.Text {
	return prose.Plural(n, prose.Say("once"), prose.Say("%d times", n))
}
