package rows

import "sumpter/domain/trip"

func theGroups(t *trip.Trip) *[]trip.CookGroup { return &t.Groups }
func theCrew(t *trip.Trip) *[]trip.Member      { return &t.Crew }
func theDays(t *trip.Trip) *[]trip.Day         { return &t.Days }

func headFields(t *trip.Trip) []field {
	return []field{
		textOf("title", &t.Title), textOf("notes", &t.Notes), dateOf("start", &t.Start),
		textOf("units", &t.Units), textOf("currency", &t.Currency), textOf("identity", &t.Identity),
	}
}

func settingsFields(s *trip.Settings) []field {
	return []field{
		textOf("walking_equation", &s.Walking), numberOf("party_factor", &s.PartyFactor),
		numberOf("stop_share", &s.StopShare), numberOf("early_appetite", &s.EarlyAppetite),
		numberOf("cold_share", &s.ColdShare), numberOf("protein_g_per_kg", &s.ProteinPerKg),
		numberOf("breakfast_share", &s.MealShares.Breakfast), numberOf("lunch_share", &s.MealShares.Lunch),
		numberOf("dinner_share_of_day", &s.MealShares.Dinner), numberOf("snack_share", &s.MealShares.Snack),
		numberOf("day_low", &s.DayLow), numberOf("day_high", &s.DayHigh), wholeOf("scale_step_mg", &s.ScaleStep),
		flagOf("fill_open_slots", &s.FillOpenSlots), wholeOf("repeat_gap_days", &s.RepeatGap),
		dateOf("packing_night", &s.PackingNight), dateOf("shopping_day", &s.ShoppingDay),
		numberOf("home_high_c", &s.HomeHigh), numberOf("home_low_c", &s.HomeLow), flagOf("home_fridge", &s.HomeFridge),
		numberOf("car_hours", &s.CarHours), numberOf("car_high_c", &s.CarHigh), numberOf("pack_sun_heat_k", &s.PackSunHeat),
		numberOf("fuel_reserve", &s.FuelReserve), numberOf("water_start_c", &s.WaterStart),
		wholeOf("hot_drink_ul", &s.HotDrink), wholeOf("wash_up_ul", &s.WashUp),
		numberOf("dinner_share_of_pack", &s.DinnerShare), numberOf("fuel_share_of_pack", &s.FuelShare),
		wholeOf("store_meals", &s.StoreMeals), wholeOf("snack_days", &s.SnackDays), flagOf("lunch_per_eater", &s.LunchPerEater), wholeOf("smellables_ul", &s.Smellables),
		maybeWhole("budget_minor", &s.Budget), wholeOf("helpers", &s.Helpers),
		numberOf("reserve_days", &s.ReserveDays), referenceTo("reserve_recipe", &s.ReserveRecipe),
		numberOf("seconds_share", &s.Seconds), numberOf("menu_aim", &s.MenuAim), numberOf("cook_minutes", &s.CookMinutes),
		textOf("reserve_end", &s.ReserveEnd),
	}
}

func groupFields(g *trip.CookGroup) []field {
	return []field{wholeOf("id", &g.ID), textOf("name", &g.Name)}
}

func memberFields(m *trip.Member) []field {
	return []field{
		wholeOf("id", &m.ID), textOf("name", &m.Name), referenceTo("cook_group", &m.Group), textOf("sex", &m.Sex),
		wholeOf("age_years", &m.Age), wholeOf("body_mass_mg", &m.BodyMass), numberOf("height_m", &m.Height),
		maybeNumber("given_need_kcal", &m.GivenNeed), numberOf("appetite", &m.Appetite), numberOf("strength", &m.Strength),
		wholeOf("own_kit_mg", &m.OwnKit), wholeOf("pack_room_ul", &m.PackRoom), maybeWhole("load_limit_mg", &m.LoadLimit),
		wholeOf("first_day", &m.FirstDay), wholeOf("last_day", &m.LastDay), maybeNumber("protein_g_per_kg", &m.ProteinPer),
		textOf("medicine", &m.Medicine), textOf("notes", &m.Notes), flagOf("standby", &m.Standby),
	}
}

func dayFields(d *trip.Day) []field {
	return []field{
		textOf("name", &d.Name), numberOf("distance_m", &d.Distance), numberOf("ascent_m", &d.Ascent),
		numberOf("descent_m", &d.Descent), numberOf("steep_descent_m", &d.SteepDescent), textOf("terrain", &d.Terrain),
		maybeNumber("moving_hours", &d.MovingHours), numberOf("camp_height_m", &d.CampHeight),
		numberOf("lunch_height_m", &d.LunchHeight), numberOf("low_c", &d.Low), numberOf("high_c", &d.High),
		flagOf("dry_camp", &d.DryCamp), flagOf("snow_water", &d.SnowWater), flagOf("no_flame", &d.NoFlame),
		textOf("notes", &d.Notes),
	}
}

func peopleTables() []Table {
	member := those([]string{"member"}, theCrew, func(m *trip.Member) Row { return Row{int64(m.ID)} })
	return []Table{
		single("trip", func(t *trip.Trip) *trip.Trip { return t }, headFields),
		single("settings", func(t *trip.Trip) *trip.Settings { return &t.Settings }, settingsFields),
		list("cook_group", 1, theGroups, groupFields),
		list("member", 1, theCrew, memberFields),
		items("member_diet", "place", member, func(m *trip.Member) *[]trip.Diet { return &m.Diets },
			func(d *trip.Diet) []field { return []field{textOf("diet", d)} }),
		items("member_allergy", "place", member, func(m *trip.Member) *[]trip.Allergy { return &m.Allergies },
			func(a *trip.Allergy) []field {
				return []field{textOf("allergen", &a.Allergen), flagOf("severe", &a.Severe)}
			}),
		items("member_dislike", "place", member, func(m *trip.Member) *[]trip.FoodID { return &m.Dislikes },
			func(id *trip.FoodID) []field { return []field{wholeOf("food", id)} }),
		items("day", "number", theTrip(), theDays, dayFields),
		items("day_meal", "place", within(theTrip(), "day", theDays), func(d *trip.Day) *[]trip.Meal { return &d.Meals }, mealFields),
	}
}

func mealFields(meal *trip.Meal) []field { return []field{textOf("meal", meal)} }
