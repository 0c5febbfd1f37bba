package trip

import (
	"math"

	"sumpter/domain/prose"
	"sumpter/domain/units"
)

func (c *checker) settings() {
	s := &c.trip.Settings
	c.where = Where{List: "settings"}
	word(c, "walking_equation", "walking equation", s.Walking, WalkingEquations()...)
	c.setting("party_factor", "party factor", s.PartyFactor, "")
	c.setting("stop_share", "share of stops", s.StopShare, "")
	c.setting("early_appetite", "appetite of the first days", s.EarlyAppetite, "")
	c.setting("cold_share", "share added for cold", s.ColdShare, "")
	c.setting("protein_g_per_kg", "protein target", s.ProteinPerKg, "g/kg")
	c.mealShares(s.MealShares)
	c.setting("day_low", "least part of the need", s.DayLow, "")
	c.setting("day_high", "most of the need", s.DayHigh, "")
	c.setting("scale_step_g", "step of the kitchen scale", s.ScaleStep.Grams(), "g")
	c.setting("seconds_share", "share for second helpings", s.Seconds, "")
	c.setting("repeat_gap_days", "gap between equal dinners", float64(s.RepeatGap), "days")
	c.setting("menu_aim", "aim of the menu", s.MenuAim, "")
	c.setting("cook_minutes", "time on a burner a day", float64(s.CookMinutes), "min")
	c.settingsOfTheWay(s)
	c.settingsOfLoads(s)
}

func (c *checker) mealShares(shares MealShares) {
	sum := 0.0
	for _, meal := range Meals() {
		share := shares.Of(meal)
		if !c.setting("meal_shares."+string(meal), "share of "+string(meal), share, "") {
			return
		}
		sum += share
	}
	if math.Abs(sum-1) > shareTolerance {
		c.add("meal_shares", prose.Say("the shares of the meals sum to %g", math.Round(sum*1e6)/1e6), prose.Say("shares that sum to 1"), prose.Say("Change the shares until they sum to 1 (100 %%)."))
	}
}

// settingsOfTheWay checks the dates before the trip and the temperatures that
// the food meets.
func (c *checker) settingsOfTheWay(s *Settings) {
	c.date("packing_night", "packing night", s.PackingNight, false)
	c.date("shopping_day", "shopping day", s.ShoppingDay, false)
	start := c.trip.Start
	if s.PackingNight.IsSet() {
		c.before("packing_night", "packing night", s.PackingNight, start, "the first day")
	}
	if s.ShoppingDay.IsSet() {
		c.before("shopping_day", "shopping day", s.ShoppingDay, start, "the first day")
	}
	if s.PackingNight.IsSet() && s.ShoppingDay > s.PackingNight {
		c.add("shopping_day", prose.Say("the shopping day %s is after the packing night", s.ShoppingDay.String()), prose.Say("at the latest %s", s.PackingNight.String()), prose.Say("Shop before packing, or pack later."))
	}
	c.setting("home_low_c", "lowest temperature at home", float64(s.HomeLow), "°C")
	c.setting("home_high_c", "highest temperature at home", float64(s.HomeHigh), "°C")
	if s.HomeLow > s.HomeHigh {
		c.swapped("home_low_c", "lowest temperature at home", float64(s.HomeLow), float64(s.HomeHigh), "°C")
	}
	c.setting("car_hours", "time in the car", float64(s.CarHours), "h")
	c.setting("car_high_c", "highest temperature in the car", float64(s.CarHigh), "°C")
	c.setting("pack_sun_heat_k", "warming of a pack in the sun", s.PackSunHeat, "K")
}

func (c *checker) before(field, label string, date, start units.Date, of string) {
	if !start.IsSet() || date <= start && date >= start.AddDays(-maxDaysBefore) {
		return
	}
	allowed := prose.Say("at most %d days before %s, and not after it", maxDaysBefore, prose.Word(of))
	c.add(field, prose.Say("the %s %s does not fit %s (%s)", prose.Word(label), date.String(), prose.Word(of), start.String()), allowed, prose.Say("Enter the %s anew, or move the trip.", prose.Word(label)))
}

// swapped adds that a lower bound is above its upper bound.
func (c *checker) swapped(field, label string, low, high float64, unit string) {
	c.add(field, prose.Say("%s is %s, above the highest", prose.Word(label), measure(low, unit)), prose.Say("at most %s", measure(high, unit)), prose.Say("Exchange the two, or correct one of them."))
}

func (c *checker) settingsOfLoads(s *Settings) {
	c.setting("fuel_reserve", "fuel reserve", s.FuelReserve, "")
	c.setting("water_start_c", "temperature of the water", float64(s.WaterStart), "°C")
	c.setting("hot_drink_ml", "hot drink", s.HotDrink.Millilitres(), "mL")
	c.setting("wash_up_ml", "water for washing up", s.WashUp.Millilitres(), "mL")
	c.setting("dinner_share", "largest share of dinners in one pack", s.DinnerShare, "")
	c.setting("fuel_share", "largest share of fuel in one pack", s.FuelShare, "")
	c.setting("store_meals", "number of meals from which a food is a store", float64(s.StoreMeals), "")
	c.setting("snack_days", "days of snacks in one bag", float64(s.SnackDays), "days")
	c.setting("smellables_ml", "room for what smells besides food", s.Smellables.Millilitres(), "mL")
	if budget, known := s.Budget.Get(); known {
		c.price("budget", "budget", budget)
	}
	c.setting("helpers", "number of helpers", float64(s.Helpers), "")
	c.setting("reserve_days", "emergency reserve", s.ReserveDays, "days")
	word(c, "reserve_end", "end of the reserve", s.ReserveEnd, ReserveEnds()...)
	if s.ReserveRecipe != 0 && !c.recipes[s.ReserveRecipe] {
		c.missing("reserve_recipe", "recipe", int64(s.ReserveRecipe), "another recipe, or none")
	}
}

// price checks an amount of money in the smallest unit of the currency.
func (c *checker) price(field, label string, amount units.Money) {
	if amount >= 0 && amount <= maxPrice {
		return
	}
	currency := c.trip.Currency
	allowed := prose.Say("from 0 to %s", prose.Price{Amount: maxPrice, Currency: currency})
	c.add(field, prose.Say("%s is %s", prose.Word(label), prose.Price{Amount: amount, Currency: currency}), allowed, prose.Say("Enter the %s %s.", prose.Word(label), allowed))
}

// missing adds that a reference leads nowhere.
func (c *checker) missing(field, kind string, id int64, instead string) {
	c.add(field, prose.Say("there is no %s with the ID %d", prose.Word(kind), id), prose.Say("a %s of this trip", prose.Word(kind)), prose.Say("Choose %s.", prose.Word(instead)))
}
