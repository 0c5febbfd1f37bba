package tripbook

import "sumpter/domain/trip"

// The names of the sheets, in the order of a leader's work.
const (
	sheetTrip        = "Trip"
	sheetGroups      = "Cook groups"
	sheetCrew        = "Crew"
	sheetDays        = "Days"
	sheetFoods       = "Foods"
	sheetSafety      = "Allergens and diets"
	sheetPackages    = "Packages"
	sheetRecipes     = "Recipes"
	sheetIngredients = "Ingredients"
	sheetMenu        = "Menu"
	sheetAccepted    = "Accepted risks"
	sheetGear        = "Gear"
	sheetFuels       = "Fuels"
	sheetBagTypes    = "Bag types"
	sheetResupply    = "Resupply"
	sheetShops       = "Shops"
	sheetPins        = "Pins"
	sheetKept        = "Kept packs"

	sheetPurchases    = "Purchases"
	sheetPacked       = "Packed bags"
	sheetBagEnds      = "Bag ends"
	sheetPartsGone    = "Parts gone"
	sheetFuelNotes    = "Fuel left"
	sheetMissingBoxes = "Missing boxes"
	sheetCrewChanges  = "Crew changes"
	sheetReplans      = "Decisions"
	sheetDishMoves    = "Moved dishes"
	sheetHandOvers    = "Hand-overs"
	sheetGivenBags    = "Given bags"

	sheetReadMe = "Read me" // written, never read
	sheetLists  = "Lists"   // behind the drop-downs
)

// sheets is the table that reading and writing follow. Things come before
// what is made of them.
func sheets() []sheet {
	return []sheet{
		tripSheet(), groupSheet(), crewSheet(), daySheet(), foodSheet(), safetySheet(), packageSheet(),
		recipeSheet(), ingredientSheet(), menuSheet(), acceptedSheet(), gearSheet(), fuelSheet(),
		bagTypeSheet(), resupplySheet(), shopSheet(), pinSheet(), keptSheet(), purchaseSheet(), packedSheet(), bagEndSheet(), partGoneSheet(), fuelNoteSheet(), missingBoxSheet(),
		crewChangeSheet(), replanSheet(), dishMoveSheet(), handOverSheet(), givenBagSheet(),
	}
}

// essential sheets hold what no trip is without.
var essential = []string{sheetTrip, sheetGroups, sheetCrew, sheetDays}

const helpID = "Kept by the program. Leave it empty for something new; do not change it."

// idColumn is the last column of a sheet whose rows have IDs.
func idColumn[R any, ID ~int64](at func(*R) *ID) column[R] {
	c := codec[ID]{
		look: asNumber, allowed: says("the number the program wrote, or nothing"),
		write: func(id ID, _ *scope, u unit) content { return numberContent(same("").units[0].writeWhole(int64(id))) },
		read: func(text string, _ *scope, _ unit) (ID, string) {
			id, wrong := parseID(text)
			return ID(id), wrong
		},
	}
	return col("ID", "id", at, c, helpID).wide(6)
}

func groupSheet() sheet {
	type R = trip.CookGroup
	t := &table[R]{
		name: sheetGroups, list: "groups", names: func(s *scope) *names { return &s.groups },
		about: "Who shares a stove and a pot. One row a group.",
		fresh: func() R { return R{} },
		columns: []column[R]{
			col("Name", "name", func(g *R) *string { return &g.Name }, line(), "What the group is called.").must().wide(24),
			idColumn(func(g *R) *trip.GroupID { return &g.ID }),
		},
	}
	t.from, t.into = plainList(t.list, func(t *trip.Trip) *[]R { return &t.Groups })
	return t
}

func toGroup() codec[trip.GroupID] {
	return reference[trip.GroupID](func(s *scope) *names { return &s.groups })
}
func toMember() codec[trip.MemberID] {
	return reference[trip.MemberID](func(s *scope) *names { return &s.members })
}
func toFood() codec[trip.FoodID] {
	return reference[trip.FoodID](func(s *scope) *names { return &s.foods })
}
func toRecipe() codec[trip.RecipeID] {
	return reference[trip.RecipeID](func(s *scope) *names { return &s.recipes })
}
func toGear() codec[trip.GearID] {
	return reference[trip.GearID](func(s *scope) *names { return &s.gear })
}

// mealList is meals in one cell.
func mealList() codec[[]trip.Meal] {
	return sayingEmpty("none", listOf(word(trip.Meals()), "one or more meals, or none"))
}

// weekdayList is days of the week in one cell.
func weekdayList() codec[[]string] {
	return sayingEmpty("every day", listOf(word(trip.OpenDayNames()), "days of the week, or every day"))
}

// sayingEmpty writes an empty list as a word, so that a blank cell is not taken
// for it.
func sayingEmpty[T any](empty string, c codec[[]T]) codec[[]T] {
	write, read := c.write, c.read
	c.write = func(list []T, s *scope, u unit) content {
		if len(list) == 0 {
			return textContent(empty)
		}
		return write(list, s, u)
	}
	c.read = func(text string, s *scope, u unit) ([]T, string) {
		if nameKey(text) == empty {
			return nil, ""
		}
		return read(text, s, u)
	}
	return c
}
