package trip

import (
	"fmt"
	"math"

	"sumpter/domain/units"
)

func (c *checker) settings() {
	s := &c.trip.Settings
	c.where = Where{List: "settings"}
	word(c, "walking_equation", "walking equation", s.Walking, WalkingEquations()...)
	c.within("party_factor", "party factor", s.PartyFactor, 1, 2, "")
	c.within("stop_share", "share of stops", s.StopShare, 0, maxFactorSetting, "")
	c.within("early_appetite", "appetite of the first days", s.EarlyAppetite, minAppetite, maxFactorSetting, "")
	c.within("cold_share", "share added for cold", s.ColdShare, 0, 1, "")
	c.within("protein_g_per_kg", "protein target", s.ProteinPerKg, minProtein, maxProtein, "g/kg")
	c.mealShares(s.MealShares)
	c.within("day_low", "least part of the need", s.DayLow, 0.3, 1, "")
	c.within("day_high", "most of the need", s.DayHigh, 1, maxFactorSetting, "")
	c.within("scale_step_g", "step of the kitchen scale", s.ScaleStep.Grams(), 0.001, 100, "g")
	c.within("repeat_gap_days", "gap between equal dinners", float64(s.RepeatGap), 0, MaxDays, "days")
	c.settingsOfTheWay(s)
	c.settingsOfLoads(s)
}

func (c *checker) mealShares(shares MealShares) {
	sum := 0.0
	for _, meal := range Meals() {
		share := shares.Of(meal)
		if !c.within("meal_shares."+string(meal), "share of "+string(meal), share, 0, 1, "") {
			return
		}
		sum += share
	}
	if math.Abs(sum-1) > shareTolerance {
		c.add("meal_shares", fmt.Sprintf("the shares of the meals sum to %s", plain(math.Round(sum*1e6)/1e6)), "shares that sum to 1", "Change the shares until they sum to 1 (100 %).")
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
		c.add("shopping_day", "the shopping day "+s.ShoppingDay.String()+" is after the packing night", "at the latest "+s.PackingNight.String(), "Shop before packing, or pack later.")
	}
	c.within("home_low_c", "lowest temperature at home", float64(s.HomeLow), minCelsius, maxCelsius, "°C")
	c.within("home_high_c", "highest temperature at home", float64(s.HomeHigh), minCelsius, maxCelsius, "°C")
	if s.HomeLow > s.HomeHigh {
		c.swapped("home_low_c", "lowest temperature at home", float64(s.HomeLow), float64(s.HomeHigh), "°C")
	}
	c.within("car_hours", "time in the car", float64(s.CarHours), 0, 10*maxHoursOfDay, "h")
	c.within("car_high_c", "highest temperature in the car", float64(s.CarHigh), minCelsius, 100, "°C")
	c.within("pack_sun_heat_k", "warming of a pack in the sun", s.PackSunHeat, 0, 50, "K")
}

func (c *checker) before(field, label string, date, start units.Date, of string) {
	if !start.IsSet() || date <= start && date >= start.AddDays(-maxDaysBefore) {
		return
	}
	allowed := fmt.Sprintf("at most %d days before %s, and not after it", maxDaysBefore, of)
	c.add(field, fmt.Sprintf("the %s %s does not fit %s (%s)", label, date, of, start), allowed, "Enter the "+label+" anew, or move the trip.")
}

// swapped adds that a lower bound is above its upper bound.
func (c *checker) swapped(field, label string, low, high float64, unit string) {
	c.add(field, label+" is "+measure(low, unit)+", above the highest", "at most "+measure(high, unit), "Exchange the two, or correct one of them.")
}

func (c *checker) settingsOfLoads(s *Settings) {
	c.within("fuel_reserve", "fuel reserve", s.FuelReserve, 0, maxFactorSetting, "")
	c.within("water_start_c", "temperature of the water", float64(s.WaterStart), 0, maxCelsius, "°C")
	c.within("hot_drink_ml", "hot drink", s.HotDrink.Litres(), 0, maxWaterLitres, "L")
	c.within("wash_up_ml", "water for washing up", s.WashUp.Litres(), 0, 10*maxWaterLitres, "L")
	c.above("dinner_share", "largest share of dinners in one pack", s.DinnerShare, 1, "")
	c.above("fuel_share", "largest share of fuel in one pack", s.FuelShare, 1, "")
	if budget, known := s.Budget.Get(); known {
		c.price("budget", "budget", budget)
	}
	c.within("helpers", "number of helpers", float64(s.Helpers), 1, MaxMembers, "")
	c.within("reserve_days", "emergency reserve", s.ReserveDays, 0, maxReserveDays, "days")
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
	allowed := "from 0 to " + maxPrice.Format(currency)
	c.add(field, label+" is "+amount.Format(currency), allowed, "Enter the "+label+" "+allowed+".")
}

// missing adds that a reference leads nowhere.
func (c *checker) missing(field, kind string, id int64, instead string) {
	c.add(field, fmt.Sprintf("there is no %s with the ID %d", kind, id), "a "+kind+" of this trip", "Choose "+instead+".")
}
