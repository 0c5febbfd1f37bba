package menu

import (
	"fmt"
	"slices"
	"strings"

	"sumpter/domain/findings"
	"sumpter/domain/trip"
)

// labelDefers ends every remedy about allergens.
const labelDefers = "The label of the bought food rules; ask the member, and their doctor where in doubt."

func placeOf(slot *Slot) findings.Place {
	return findings.Place{Day: slot.Day, Meal: slot.Meal, Group: slot.Group}
}

// reviewSlot says who goes without, and what does not suit the slot.
func (r *resolver) reviewSlot(slot *Slot, dishes int) {
	place := placeOf(slot)
	if dishes == 0 {
		r.find(findings.MustFix, "no-meal", place, fmt.Sprintf("%s is open: nobody of %s gets anything.", when(slot), r.groupName(slot.Group)),
			"The meal is eaten from the packs this day.", "Choose a recipe, let the open slots be filled, or take the meal off the day.")
		return
	}
	served := map[trip.MemberID]bool{}
	for _, dish := range slot.Dishes {
		for _, batch := range dish.Batches {
			for _, serving := range batch.Servings {
				served[serving.Member] = true
			}
		}
		r.reviewDish(slot, r.recipes[dish.Recipe])
	}
	for _, id := range slot.Eaters {
		if !served[id] {
			place.Member = id
			r.find(findings.MustFix, "goes-without", place, fmt.Sprintf("%s gets nothing for %s on day %d.", r.trip.Member(id).Name, strings.ToLower(titleOf(slot.Meal)), slot.Day),
				"No dish of this meal may be served to them.", "Add a dish they can eat, for them alone if need be, or a swap in the recipe.")
		}
	}
}

// reviewDish says where a recipe does not suit the meal or the day.
func (r *resolver) reviewDish(slot *Slot, recipe *trip.Recipe) {
	if recipe == nil {
		return
	}
	place := placeOf(slot)
	place.Recipe = recipe.ID
	if !suitsMeal(recipe, slot.Meal) {
		r.find(findings.Note, "other-meal", place, fmt.Sprintf("%s is served as %s on day %d.", recipe.Name, slot.Meal, slot.Day),
			"The recipe is not meant for that meal.", "Leave it if you mean it, or add the meal to the recipe.")
	}
	if r.trip.Days[slot.Day-1].NoFlame && recipe.NeedsFlame() {
		r.find(findings.MustFix, "no-flame", place, fmt.Sprintf("%s needs a stove, and stoves are forbidden on day %d.", recipe.Name, slot.Day),
			"The day is marked as one without flame; local rules decide.", "Choose a recipe that can be made cold.")
	}
}

func suitsMeal(recipe *trip.Recipe, meal trip.Meal) bool {
	for _, suited := range recipe.Meals {
		if suited == meal {
			return true
		}
	}
	return false
}

func (r *resolver) groupName(id trip.GroupID) string {
	if group := r.trip.Group(id); group != nil {
		return group.Name
	}
	return "the group"
}

// cannotServe says that a dish has no safe form for an eater.
func (r *resolver) cannotServe(slot *Slot, recipe *trip.Recipe, food trip.FoodID, member *trip.Member) {
	place := placeOf(slot)
	place.Recipe, place.Member, place.Food = recipe.ID, member.ID, food
	name := "an ingredient"
	why := "A swap that suits them is missing."
	if f := r.foods[food]; f != nil {
		name, why = f.Name, reasonAgainst(member, f)
	}
	r.find(findings.LookAt, "not-served", place, fmt.Sprintf("%s gets no %s on day %d: %s is not safe or not suitable for them.", member.Name, recipe.Name, slot.Day, name),
		why, "Add a swap to the recipe, another dish for them, or read the label of "+name+". "+labelDefers)
}

// takenOn keeps in sight what the leader accepted by hand.
func (r *resolver) takenOn(slot *Slot, recipe *trip.Recipe, dish trip.Dish, food *trip.Food, member *trip.Member) {
	place := placeOf(slot)
	place.Recipe, place.Member, place.Food = recipe.ID, member.ID, food.ID
	reason := ""
	for _, acceptance := range dish.Accepted {
		if acceptance.Member == member.ID && acceptance.Food == food.ID {
			reason = acceptance.Reason
		}
	}
	r.find(findings.LookAt, "taken-on", place, fmt.Sprintf("%s is served %s on day %d because you took it on by hand.", member.Name, food.Name, slot.Day),
		strings.TrimSpace(reasonAgainst(member, food)+" Your reason: "+reason), "Take it back in this dish if the reason no longer holds. "+labelDefers)
}

func (r *resolver) disliked(slot *Slot, recipe *trip.Recipe, food *trip.Food, member *trip.Member) {
	place := placeOf(slot)
	place.Recipe, place.Member, place.Food = recipe.ID, member.ID, food.ID
	r.find(findings.Note, "disliked", place, fmt.Sprintf("%s does not like %s, and gets it in %s on day %d.", member.Name, food.Name, recipe.Name, slot.Day),
		"It is safe for them, and the recipe has no swap they like better.", "Add a swap, or leave it.")
}

// reasonAgainst says in words why a food must not be served to a member.
func reasonAgainst(member *trip.Member, food *trip.Food) string {
	var reasons []string
	for _, objection := range member.Objections(food) {
		switch {
		case objection.Allergen != "" && objection.Presence == trip.NotKnown:
			reasons = append(reasons, fmt.Sprintf("whether it contains %s is not known, and unknown is not safe", objection.Allergen))
		case objection.Allergen != "":
			reasons = append(reasons, fmt.Sprintf("it %s %s", verb(objection.Presence), objection.Allergen))
		case objection.Diet != "" && objection.Suits == trip.SuitsUnknown:
			reasons = append(reasons, fmt.Sprintf("whether it is %s is not known", objection.Diet))
		case objection.Diet != "":
			reasons = append(reasons, fmt.Sprintf("it is not %s", objection.Diet))
		}
	}
	if len(reasons) == 0 {
		return "A swap that suits them is missing."
	}
	text := strings.Join(reasons, "; ")
	return strings.ToUpper(text[:1]) + text[1:] + "."
}

func verb(presence trip.Presence) string {
	if presence == trip.Contains {
		return "contains"
	}
	return "may contain"
}

// reviewPots warns where a severe allergen is handled beside whom it harms:
// each time it is cooked, and once for all the times it is only eaten.
func (r *resolver) reviewPots(slot *Slot, recipe *trip.Recipe, batches []Batch) {
	for _, id := range slot.Eaters {
		member := r.trip.Member(id)
		for _, allergy := range member.Allergies {
			food := r.harmfulFood(batches, allergy.Allergen)
			if !allergy.Severe || food == nil {
				continue
			}
			place := placeOf(slot)
			place.Recipe, place.Member, place.Food = recipe.ID, id, food.ID
			if recipe.NeedsFlame() || recipe.Water > 0 {
				r.find(findings.LookAt, "cross-contact", place,
					fmt.Sprintf("%s is cooked beside %s on day %d, whom traces of %s harm.", recipe.Name, member.Name, slot.Day, allergy.Allergen),
					fmt.Sprintf("%s: %s %s. Heat and rinsing do not remove it (common practice, no source).", food.Name, presenceWords(food.Presence(allergy.Allergen)), allergy.Allergen),
					fmt.Sprintf("Cook %s's food first, in a pot, with a spoon and a cloth of its own, or choose a dish without %s for all.", member.Name, allergy.Allergen))
				continue
			}
			r.beside[contact{id, allergy.Allergen}] = append(r.beside[contact{id, allergy.Allergen}], slot.Day)
		}
	}
}

// contact is a member and an allergen whose traces harm them.
type contact struct {
	member   trip.MemberID
	allergen trip.Allergen
}

// sayBeside tells once for each member and allergen on which days others eat
// it cold beside them.
func (r *resolver) sayBeside() {
	for i := range r.trip.Crew {
		member := &r.trip.Crew[i]
		for _, allergy := range member.Allergies {
			days := r.beside[contact{member.ID, allergy.Allergen}]
			if len(days) == 0 {
				continue
			}
			r.find(findings.Note, "eaten-beside", findings.Place{Day: days[0], Member: member.ID},
				fmt.Sprintf("Others eat %s from their own bags beside %s, whom traces harm: on %s.", allergy.Allergen, member.Name, dayList(days)),
				"Crumbs and hands carry traces (common practice, no source).",
				"Wash hands after eating, share no knives, bags or boards, and ask "+member.Name+" what they need.")
		}
	}
}

// dayList writes days as a person would: "days 1, 2 and 5".
func dayList(days []int) string {
	days = slices.Compact(slices.Clone(days))
	if len(days) == 1 {
		return fmt.Sprintf("day %d", days[0])
	}
	words := make([]string, len(days))
	for i, day := range days {
		words[i] = fmt.Sprint(day)
	}
	last := len(words) - 1
	return "days " + strings.Join(words[:last], ", ") + " and " + words[last]
}

func presenceWords(presence trip.Presence) string {
	if presence == trip.NotKnown {
		return "may, for all that is known, contain"
	}
	return verb(presence)
}

// harmfulFood gives a food of the batches that is not plainly free of an
// allergen.
func (r *resolver) harmfulFood(batches []Batch, allergen trip.Allergen) *trip.Food {
	for _, batch := range batches {
		for _, serving := range batch.Servings {
			for _, part := range serving.Parts {
				if food := r.foods[part.Food]; food != nil && food.Presence(allergen) != trip.Free {
					return food
				}
			}
		}
	}
	return nil
}
