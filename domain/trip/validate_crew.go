package trip

import (
	"fmt"

	"sumpter/domain/prose"
)

func (c *checker) crew() {
	if len(c.trip.Crew) > MaxMembers {
		return
	}
	for i := range c.trip.Crew {
		member := &c.trip.Crew[i]
		c.at("crew", i, int64(member.ID), member.Name)
		if !c.groups[member.Group] {
			c.missing("group", "cook group", int64(member.Group), "one of the cook groups")
		}
		c.body(member)
		c.presence(member)
		c.limits(member)
		c.notes("medicine", "medicine", member.Medicine)
		c.notes("notes", "notes", member.Notes)
	}
}

func (c *checker) body(m *Member) {
	word(c, "sex", "sex", m.Sex, Sexes()...)
	c.within("age_years", "age", float64(m.Age), minAge, maxAge, "years")
	c.within("body_mass_g", "body mass", m.BodyMass.Kilograms(), minBodyKilograms, maxBodyKilograms, "kg")
	if m.Height != 0 {
		c.within("height_m", "height", float64(m.Height), minHeight, maxHeight, "m")
	}
	if need, given := m.GivenNeed.Get(); given {
		c.within("given_need_kcal", "given need", float64(need), minGivenNeed, maxGivenNeed, "kcal")
	}
	if protein, given := m.ProteinPer.Get(); given {
		c.within("protein_g_per_kg", "protein target", protein, minProtein, maxProtein, "g/kg")
	}
	c.within("appetite", "appetite", m.Appetite, minAppetite, maxAppetite, "")
	c.within("strength", "strength", m.Strength, 0, maxStrength, "")
	c.within("own_kit_g", "own kit", m.OwnKit.Kilograms(), 0, maxKitKilograms, "kg")
	c.within("pack_room_ml", "room in the pack", m.PackRoom.Litres(), 0, maxPackLitres, "L")
	if limit, given := m.LoadLimit.Get(); given {
		c.within("load_limit_g", "load limit", limit.Kilograms(), 0, maxLoadKilograms, "kg")
	}
}

func (c *checker) presence(m *Member) {
	days := len(c.trip.Days)
	if m.FirstDay < 0 || m.FirstDay > days {
		c.add("first_day", prose.Say("the first day is %d", m.FirstDay), prose.Say("a day from 1 to %d, or 0 for the trip's first", days), prose.Say("Enter the day on which the member joins."))
	}
	if m.LastDay < 0 || m.LastDay > days {
		c.add("last_day", prose.Say("the last day is %d", m.LastDay), prose.Say("a day from 1 to %d, or 0 for the trip's last", days), prose.Say("Enter the day on which the member leaves."))
	} else if m.LastDay != 0 && m.LastDay < m.FirstDay {
		c.add("last_day", prose.Say("the last day %d is before the first, %d", m.LastDay, m.FirstDay), prose.Say("a day not before the first"), prose.Say("Exchange the two, or correct one of them."))
	}
}

// limits checks what a member must not or will not eat.
func (c *checker) limits(m *Member) {
	if c.count("diets", "diets", len(m.Diets), 0, maxFacts) {
		distinct(c, "diets", "diet", m.Diets, func(d Diet) string { return string(d) })
		for _, diet := range m.Diets {
			c.fact("diets", "diet", string(diet))
		}
	}
	if c.count("allergies", "allergies", len(m.Allergies), 0, maxFacts) {
		distinct(c, "allergies", "allergy", m.Allergies, func(a Allergy) string { return string(a.Allergen) })
		for _, allergy := range m.Allergies {
			c.fact("allergies", "allergen", string(allergy.Allergen))
		}
	}
	if !c.count("dislikes", "foods disliked", len(m.Dislikes), 0, MaxFoods) {
		return
	}
	distinct(c, "dislikes", "disliked food", m.Dislikes, func(id FoodID) FoodID { return id })
	for _, food := range m.Dislikes {
		if !c.foods[food] {
			c.missing("dislikes", "food", int64(food), "another food, or take it off the list")
		}
	}
}

// fact checks the word of an allergen or a diet.
func (c *checker) fact(field, label, value string) {
	if value == "" {
		c.add(field, prose.Say("%s is empty", prose.Word(label)), prose.Say("a word"), prose.Say("Name the %s, or take it out.", prose.Word(label)))
		return
	}
	c.line(field, label, value)
}

// distinct checks that nothing stands in a list twice.
func distinct[T any, K comparable](c *checker, field, label string, list []T, key func(T) K) {
	if len(list) < 2 {
		return
	}
	seen := make(map[K]bool, len(list))
	for _, item := range list {
		k := key(item)
		if seen[k] {
			c.add(field, prose.Say("%s %q stands there twice", prose.Word(label), shown(fmt.Sprint(k))), prose.Say("each once"), prose.Say("Take one of the two out."))
		}
		seen[k] = true
	}
}
