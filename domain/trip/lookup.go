package trip

import "sumpter/domain/units"

// DateOf gives the date of a day of the trip (1-based).
func (t *Trip) DateOf(day int) units.Date { return t.Start.AddDays(day - 1) }

// Present tells whether the member is planned to be with the group on a day
// (1-based).
func (m *Member) Present(day int) bool {
	return !m.Standby && day >= max(m.FirstDay, 1) && (m.LastDay == 0 || day <= m.LastDay)
}

// Eats tells whether the meal is eaten from the packs on the day.
func (d *Day) Eats(meal Meal) bool {
	for _, eaten := range d.Meals {
		if eaten == meal {
			return true
		}
	}
	return false
}

// CookHeight gives the height at which a meal of the day is cooked. Breakfast
// is cooked where the group slept, at the camp of the day before.
func (t *Trip) CookHeight(day int, meal Meal) units.Metres {
	switch {
	case meal == Lunch:
		return t.Days[day-1].LunchHeight
	case meal == Breakfast && day > 1:
		return t.Days[day-2].CampHeight
	default:
		return t.Days[day-1].CampHeight
	}
}

// Member finds a member by ID, or nil.
func (t *Trip) Member(id MemberID) *Member {
	for i := range t.Crew {
		if t.Crew[i].ID == id {
			return &t.Crew[i]
		}
	}
	return nil
}

// Group finds a cook group by ID, or nil.
func (t *Trip) Group(id GroupID) *CookGroup {
	for i := range t.Groups {
		if t.Groups[i].ID == id {
			return &t.Groups[i]
		}
	}
	return nil
}

// Food finds a food by ID, or nil.
func (t *Trip) Food(id FoodID) *Food {
	for i := range t.Foods {
		if t.Foods[i].ID == id {
			return &t.Foods[i]
		}
	}
	return nil
}

// Recipe finds a recipe by ID, or nil.
func (t *Trip) Recipe(id RecipeID) *Recipe {
	for i := range t.Recipes {
		if t.Recipes[i].ID == id {
			return &t.Recipes[i]
		}
	}
	return nil
}

// GearItem finds a piece of gear by ID, or nil.
func (t *Trip) GearItem(id GearID) *Gear {
	for i := range t.Gear {
		if t.Gear[i].ID == id {
			return &t.Gear[i]
		}
	}
	return nil
}

// Point finds a resupply point by ID, or nil.
func (t *Trip) Point(id PointID) *ResupplyPoint {
	for i := range t.Points {
		if t.Points[i].ID == id {
			return &t.Points[i]
		}
	}
	return nil
}

// Cell finds what the leader decided for a slot, or nil.
func (t *Trip) Cell(day int, meal Meal, group GroupID) *Cell {
	for i := range t.Menu {
		if c := &t.Menu[i]; c.Day == day && c.Meal == meal && c.Group == group {
			return c
		}
	}
	return nil
}

// Eaters lists the members of a group who are present on a day, by ID.
func (t *Trip) Eaters(day int, group GroupID) []MemberID {
	var eaters []MemberID
	for i := range t.Crew {
		if m := &t.Crew[i]; m.Group == group && m.Present(day) {
			eaters = append(eaters, m.ID)
		}
	}
	sortIDs(eaters)
	return eaters
}
