package tripbook

import (
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// tripSheet holds what is there once: the trip's own fields and its settings.
func tripSheet() sheet {
	type R = trip.Trip
	text := func(title, field string, at func(*R) *string, c codec[string], help string) column[R] {
		return col(title, field, at, c, help)
	}
	return &table[R]{
		name: sheetTrip, list: "trip", single: true,
		about: "The trip itself and the choices that hold for all of it. Fill in column B; what stands there already is common practice and may stay.",
		fresh: func() R {
			return R{Units: units.Metric, Settings: trip.DefaultSettings(), Posting: trip.UsualPosting()}
		},
		from: func(t *trip.Trip) []R { return []R{*t} },
		into: func(g *gathered[R]) {
			for _, row := range g.rows {
				g.trip.Title, g.trip.Notes, g.trip.Start = row.Title, row.Notes, row.Start
				g.trip.Units, g.trip.Currency, g.trip.Settings = row.Units, row.Currency, row.Settings
				g.trip.Posting, g.trip.Identity = row.Posting, row.Identity
				g.comes(0, "trip")
			}
		},
		columns: append([]column[R]{
			text("Title", "title", func(t *R) *string { return &t.Title }, line(), "What the trip is called.").must(),
			col("First day", "start", func(t *R) *units.Date { return &t.Start }, date(), "The date of day 1.").must(),
			col("Units", "units", func(t *R) *units.System { return &t.Units }, word([]units.System{units.Metric, units.US}), "What the program shows. The numbers here are read in the unit that stands beside them or in the heading."),
			text("Currency", "currency", func(t *R) *string { return &t.Currency }, currency(), "ISO 4217 code of every price: EUR, USD, CHF.").must(),
			text("Notes", "notes", func(t *R) *string { return &t.Notes }, notes(), "Anything."),
		}, append(settingColumns(), postingColumns()...)...),
	}
}

// setting makes a row of the settings.
func setting[T any](title, field string, at func(*trip.Settings) *T, c codec[T], help string) column[trip.Trip] {
	return col(title, "settings."+field, func(t *trip.Trip) *T { return at(&t.Settings) }, c, help)
}

func settingColumns() []column[trip.Trip] {
	type S = trip.Settings
	return []column[trip.Trip]{
		setting("Packing night", "packing_night", func(s *S) *units.Date { return &s.PackingNight }, date(), "The evening when all is weighed and bagged."),
		setting("Shopping day", "shopping_day", func(s *S) *units.Date { return &s.ShoppingDay }, date(), "When the food is bought."),
		setting("Helpers on packing night", "helpers", func(s *S) *int { return &s.Helpers }, count(), "How many people pack."),
		setting("Budget", "budget", func(s *S) *optional.Value[units.Money] { return &s.Budget }, maybe(money()), "For food, fuel and fees. Empty: no limit."),
		setting("Walking equation", "walking_equation", func(s *S) *trip.WalkingEquation { return &s.Walking }, word(trip.WalkingEquations()), "Which published equation plans the energy of walking; the others show how sure it is."),
		setting("Party factor", "party_factor", func(s *S) *float64 { return &s.PartyFactor }, number[float64](same("")), "On the moving time, for a large or loaded group: 1 to 2."),
		setting("Stops", "stop_share", func(s *S) *float64 { return &s.StopShare }, number[float64](share), "Hours of stops for each hour of moving."),
		setting("Early appetite", "early_appetite", func(s *S) *float64 { return &s.EarlyAppetite }, number[float64](share), "Part of the need that people eat on days 1 and 2."),
		setting("Added in the cold", "cold_share", func(s *S) *float64 { return &s.ColdShare }, number[float64](share), "Added to the need on days with frost."),
		setting("Protein per kg of body mass", "protein_g_per_kg", func(s *S) *float64 { return &s.ProteinPerKg }, number[float64](same("g")), "Grams of protein a day for each kilogram of body mass."),
		setting("Energy from breakfast", "meal_shares.breakfast", func(s *S) *float64 { return &s.MealShares.Breakfast }, number[float64](share), "Part of the day's energy. The four meals sum to 100 %."),
		setting("Energy from lunch", "meal_shares.lunch", func(s *S) *float64 { return &s.MealShares.Lunch }, number[float64](share), "Part of the day's energy."),
		setting("Energy from dinner", "meal_shares.dinner", func(s *S) *float64 { return &s.MealShares.Dinner }, number[float64](share), "Part of the day's energy."),
		setting("Energy from snacks", "meal_shares.snack", func(s *S) *float64 { return &s.MealShares.Snack }, number[float64](share), "Part of the day's energy."),
		setting("Least of a day's need", "day_low", func(s *S) *float64 { return &s.DayLow }, number[float64](share), "Portions reach at least this part of each member's need."),
		setting("Most of a day's need", "day_high", func(s *S) *float64 { return &s.DayHigh }, number[float64](share), "Portions stay below this part."),
		setting("Step of the kitchen scale", "scale_step_g", func(s *S) *units.Mass { return &s.ScaleStep }, exact[units.Mass](foodMass), "The smallest difference the scale shows."),
		setting("Second helpings", "seconds_share", func(s *S) *float64 { return &s.Seconds }, number[float64](share), "Cooked at hot meals above the portions. What nobody takes is not kept: it spoils."),
		setting("Fill open meals", "fill_open_slots", func(s *S) *bool { return &s.FillOpenSlots }, yesNo(), "The plan fills what the menu leaves open."),
		setting("Days between repeats", "repeat_gap_days", func(s *S) *int { return &s.RepeatGap }, count(), "No dinner comes twice within so many days."),
		setting("Aim of the menu", "menu_aim", func(s *S) *float64 { return &s.MenuAim }, number[float64](same("")), "What a filled menu is best at: -1 cheap, 0 light, 1 varied, or between."),
		setting("Minutes on a burner a day", "cook_minutes", func(s *S) *units.Minutes { return &s.CookMinutes }, number[units.Minutes](same("min")), "A filled menu keeps to it, and to half of it on the longest day. 0: no limit."),
		setting("Home, lowest", "home_low_c", func(s *S) *units.Celsius { return &s.HomeLow }, number[units.Celsius](temperature), "Where the food waits before the trip."),
		setting("Home, highest", "home_high_c", func(s *S) *units.Celsius { return &s.HomeHigh }, number[units.Celsius](temperature), "Where the food waits before the trip."),
		setting("Cold at home", "home_fridge", func(s *S) *bool { return &s.HomeFridge }, yesNo(), "Perishables stay in a fridge until the start."),
		setting("Hours in the car", "car_hours", func(s *S) *units.Hours { return &s.CarHours }, number[units.Hours](same("h")), "From home to the start."),
		setting("Car, highest", "car_high_c", func(s *S) *units.Celsius { return &s.CarHigh }, number[units.Celsius](temperature), "How hot it gets in there."),
		setting("Sun on the pack", "pack_sun_heat_k", func(s *S) *float64 { return &s.PackSunHeat }, number[float64](warming), "How much warmer than the air food in a pack gets."),
		setting("Fuel reserve", "fuel_reserve", func(s *S) *float64 { return &s.FuelReserve }, number[float64](share), "Above what is reckoned."),
		setting("Water at the start", "water_start_c", func(s *S) *units.Celsius { return &s.WaterStart }, number[units.Celsius](temperature), "Of the water that goes into the pot."),
		setting("Hot drink", "hot_drink_ml", func(s *S) *units.Volume { return &s.HotDrink }, exact[units.Volume](smallVolume), "For each eater with breakfast and with dinner."),
		setting("Washing up", "wash_up_ml", func(s *S) *units.Volume { return &s.WashUp }, exact[units.Volume](smallVolume), "Warm water for each pot and meal."),
		setting("Dinners in one pack", "dinner_share", func(s *S) *float64 { return &s.DinnerShare }, number[float64](share), "Largest part of a leg's dinners that one member carries. 100 %: no rule."),
		setting("Fuel in one pack", "fuel_share", func(s *S) *float64 { return &s.FuelShare }, number[float64](share), "Largest part of a leg's fuel that one member carries."),
		setting("Meals of a store", "store_meals", func(s *S) *int { return &s.StoreMeals }, count(), "Oil, milk powder, coffee and the like: from so many meals of a leg, one bag or bottle for all of them. 0: each meal has its own."),
		setting("Days of snacks in a bag", "snack_days", func(s *S) *int { return &s.SnackDays }, count(), "How many days of snacks each member gets in one bag."),
		setting("Lunch for each eater", "lunch_per_eater", func(s *S) *bool { return &s.LunchPerEater }, yesNo(), "Each eater has lunch in a bag of their own. No: it is handed round."),
		setting("Smells besides food", "smellables_ml", func(s *S) *units.Volume { return &s.Smellables }, exact[units.Volume](smallVolume), "Room that each member's paste, soap, cream and rubbish take in the food-storage containers."),
		setting("Emergency reserve", "reserve_days", func(s *S) *float64 { return &s.ReserveDays }, number[float64](same("days")), "In days of energy."),
		setting("Reserve is made of", "reserve_recipe", func(s *S) *trip.RecipeID { return &s.ReserveRecipe }, orBlank(toRecipe()), "A recipe that needs no flame. Empty: the program chooses."),
		setting("Reserve at the end", "reserve_end", func(s *S) *trip.ReserveEnd { return &s.ReserveEnd }, word(trip.ReserveEnds()), "A reserve on top of all meals is taken home if it was not needed; or the snacks of the last days of each stage are kept for it and eaten at last."),
	}
}

// postingColumns tell how boxes are sent from home, and which trip this is.
func postingColumns() []column[trip.Trip] {
	type R = trip.Trip
	return []column[R]{
		col("Return address", "posting.return_address", func(t *R) *string { return &t.Posting.ReturnAddress }, notes(), "Name and address that a box goes back to."),
		col("Boxes are taken on", "posting.open_days", func(t *R) *[]string { return &t.Posting.OpenDays }, weekdayList(), "When the post near home takes parcels: Mon; Tue; ..."),
		col("Not on dates", "posting.closed_dates", func(t *R) *[]units.Date { return &t.Posting.ClosedDates }, dateList(), "Holidays, with ; between."),
		col("Identity", "identity", func(t *R) *string { return &t.Identity }, line(), "Kept by the program: calendars know the trip by it, whatever it is called."),
	}
}
