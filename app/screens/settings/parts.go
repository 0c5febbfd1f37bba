package settings

import (
	"fyne.io/fyne/v2/lang"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// parts lists every setting, in the order of the work. A new field of the
// trip's settings gets a line here; a test fails until it has one.
func parts(u units.System) []part {
	return []part{
		{lang.L("The trip"), head()},
		{lang.L("What people need"), needSettings()},
		{lang.L("Meals and portions"), mealSettings(u)},
		{lang.L("From the shop to the start"), waySettings(u)},
		{lang.L("Boxes sent from home"), postingSettings()},
		{lang.L("Cooking and water"), cookingSettings(u)},
		{lang.L("Bags and packing night"), bagSettings(u)},
		{lang.L("Who carries what"), loadSettings()},
		{lang.L("Emergency reserve"), reserveSettings()},
		{lang.L("Money"), moneySettings()},
	}
}

func needSettings() []setting {
	return []setting{
		equation(),
		number("party_factor", lang.L("Slower as a group"), lang.L("The walking time of a lone walker is multiplied by this. A large or loaded group waits, helps and repacks."),
			counted("×"), func(s *trip.Settings) *float64 { return &s.PartyFactor }),
		number("stop_share", lang.L("Stops"), lang.L("Time at rest for each hour of walking: photographs, water, blisters. It counts as light activity."),
			share(), func(s *trip.Settings) *float64 { return &s.StopShare }),
		number("early_appetite", lang.L("Appetite on days 1 and 2"), lang.L("Many people eat less than they need at first. That part of the need is planned; what is missing is not made up later."),
			share(), func(s *trip.Settings) *float64 { return &s.EarlyAppetite }),
		number("cold_share", lang.L("More in frost"), lang.L("Added to the need on days whose lowest temperature is below freezing."),
			share(), func(s *trip.Settings) *float64 { return &s.ColdShare }),
		number("protein_g_per_kg", lang.L("Protein a day"), lang.L("The target for each kilogram of body mass. A member may have a target of their own."),
			counted("g/kg"), func(s *trip.Settings) *float64 { return &s.ProteinPerKg }),
	}
}

func mealSettings(u units.System) []setting {
	return []setting{
		mealShare(trip.Breakfast, lang.L("Energy from breakfast"), func(s *trip.MealShares) *float64 { return &s.Breakfast }),
		mealShare(trip.Lunch, lang.L("Energy from lunch"), func(s *trip.MealShares) *float64 { return &s.Lunch }),
		mealShare(trip.Dinner, lang.L("Energy from dinner"), func(s *trip.MealShares) *float64 { return &s.Dinner }),
		snackShare(),
		number("day_low", lang.L("A day has at least"), lang.L("Portions reach at least this part of each member's need on every day; where they cannot, it is a finding."),
			share(), func(s *trip.Settings) *float64 { return &s.DayLow }),
		number("day_high", lang.L("A day has at most"), lang.L("Portions stay below this part of the need. More is weight that nobody asked for."),
			share(), func(s *trip.Settings) *float64 { return &s.DayHigh }),
		number("scale_step_g", lang.L("Step of the kitchen scale"), lang.L("The smallest difference your scale shows. What is weighed out is rounded to it."),
			smallMass(u), func(s *trip.Settings) *units.Mass { return &s.ScaleStep }),
		number("seconds_share", lang.L("Second helpings"), lang.L("Cooked at hot meals above the portions, for whoever is still hungry. What nobody takes is not kept: it spoils."),
			share(), func(s *trip.Settings) *float64 { return &s.Seconds }),
		yesNo("fill_open_slots", lang.L("Fill what is open"), lang.L("The plan chooses dishes for the slots you left open. With no they stay empty and the plan says so."),
			func(s *trip.Settings) *bool { return &s.FillOpenSlots }),
		number("repeat_gap_days", lang.L("Same dinner again after"), lang.L("No dinner comes twice within so many days when the plan chooses."),
			whole(lang.L("days")), func(s *trip.Settings) *int { return &s.RepeatGap }),
		number("menu_aim", lang.L("Aim of a filled menu"), lang.L("What the plan looks for when it chooses dishes: -1 is the cheapest menu, 0 the lightest, 1 the most varied; between them it is both in part."),
			counted(""), func(s *trip.Settings) *float64 { return &s.MenuAim }),
		number("cook_minutes", lang.L("On a burner a day"), lang.L("A filled menu keeps within so many minutes of cooking a day for each group, and half of it on the longest day. 0 is no limit."),
			minutes(), func(s *trip.Settings) *units.Minutes { return &s.CookMinutes }),
	}
}

func waySettings(u units.System) []setting {
	return []setting{
		date("packing_night", lang.L("Packing night"), lang.L("The evening when all is weighed and bagged. Opened packages begin to age on it."),
			func(s *trip.Settings) *units.Date { return &s.PackingNight }),
		date("shopping_day", lang.L("Shopping day"), lang.L("When the food is bought. What keeps a short time is followed from here."),
			func(s *trip.Settings) *units.Date { return &s.ShoppingDay }),
		number("home_low_c", lang.L("Home, coolest"), lang.L("The lowest temperature where the food waits before the trip."),
			temperature(u), func(s *trip.Settings) *units.Celsius { return &s.HomeLow }),
		number("home_high_c", lang.L("Home, warmest"), lang.L("The highest temperature where the food waits before the trip."),
			temperature(u), func(s *trip.Settings) *units.Celsius { return &s.HomeHigh }),
		yesNo("home_fridge", lang.L("Cold until the start"), lang.L("What must be kept cold waits in a fridge until the group leaves."),
			func(s *trip.Settings) *bool { return &s.HomeFridge }),
		number("car_hours", lang.L("On the road"), lang.L("How long the food lies in the car, bus or train on the way to the start."),
			hours(), func(s *trip.Settings) *units.Hours { return &s.CarHours }),
		number("car_high_c", lang.L("On the road, warmest"), lang.L("How hot it gets in there. A closed car in the sun goes far above the air outside."),
			temperature(u), func(s *trip.Settings) *units.Celsius { return &s.CarHigh }),
		number("pack_sun_heat_k", lang.L("Sun on the pack"), lang.L("How much warmer than the air the food in a dark pack gets."),
			warming(u), func(s *trip.Settings) *float64 { return &s.PackSunHeat }),
	}
}

func cookingSettings(u units.System) []setting {
	return []setting{
		number("fuel_reserve", lang.L("Fuel reserve"), lang.L("Fuel on top of what is reckoned, for wind, spills and melted snow that was not planned."),
			share(), func(s *trip.Settings) *float64 { return &s.FuelReserve }),
		number("water_start_c", lang.L("Water at the start"), lang.L("How cold the water is that goes into the pot. Colder water takes more fuel."),
			temperature(u), func(s *trip.Settings) *units.Celsius { return &s.WaterStart }),
		number("hot_drink_ml", lang.L("Hot drink"), lang.L("Boiled for each eater with breakfast and with dinner."),
			smallVolume(u), func(s *trip.Settings) *units.Volume { return &s.HotDrink }),
		number("wash_up_ml", lang.L("Washing up"), lang.L("Warm water for each pot and meal."),
			smallVolume(u), func(s *trip.Settings) *units.Volume { return &s.WashUp }),
	}
}

func bagSettings(u units.System) []setting {
	return []setting{
		number("store_meals", lang.L("A store from"), lang.L("Oil, milk powder, coffee, grated cheese: what is taken by the spoon at so many meals of a stage is one bag or bottle for all of them. 0 gives each meal its own."),
			whole(lang.L("meals")), func(s *trip.Settings) *int { return &s.StoreMeals }),
		number("snack_days", lang.L("Days in a snack bag"), lang.L("Each member gets the snacks of so many days in one bag. With 1 nobody can eat ahead, and there are many bags to fill."),
			whole(lang.L("days")), func(s *trip.Settings) *int { return &s.SnackDays }),
		yesNo("lunch_per_eater", lang.L("Lunch in own bags"), lang.L("Each eater has lunch in a bag of their own. With no it is handed round, and the label says how much is whose."),
			func(s *trip.Settings) *bool { return &s.LunchPerEater }),
		number("smellables_ml", lang.L("Room for toiletries"), lang.L("Room that each member's paste, soap, cream and rubbish take in the food-storage containers, where there are any."),
			smallVolume(u), func(s *trip.Settings) *units.Volume { return &s.Smellables }),
		number("helpers", lang.L("Helpers on packing night"), lang.L("How many people pack. The evening's length hangs on it."),
			whole(lang.L("people")), func(s *trip.Settings) *int { return &s.Helpers }),
	}
}

func loadSettings() []setting {
	return []setting{
		number("dinner_share", lang.L("Dinners in one pack"), lang.L("The largest part of a stage's dinners that one member carries, so that a pack that is lost costs no more. 100 % is no rule."),
			share(), func(s *trip.Settings) *float64 { return &s.DinnerShare }),
		number("fuel_share", lang.L("Fuel in one pack"), lang.L("The largest part of a stage's fuel that one member carries. 100 % is no rule."),
			share(), func(s *trip.Settings) *float64 { return &s.FuelShare }),
	}
}

func reserveSettings() []setting {
	return []setting{
		number("reserve_days", lang.L("Emergency reserve"), lang.L("Food beyond the plan, for a day lost to weather, an injury or the wrong valley. It counts in days of energy for everybody."),
			counted(lang.L("days")), func(s *trip.Settings) *float64 { return &s.ReserveDays }),
		reserveRecipe(),
		reserveEnd(),
	}
}

func moneySettings() []setting {
	return []setting{
		currency(),
		budget(),
	}
}
