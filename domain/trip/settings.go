package trip

import (
	"sumpter/domain/optional"
	"sumpter/domain/units"
)

// WalkingEquation is which published equation plans the cost of walking.
type WalkingEquation string

// Equations for walking with a load; the others are shown as its bracket.
const (
	LCDABackpacking WalkingEquation = "LCDA backpacking 2022"
	LCDAWalking     WalkingEquation = "LCDA walking 2019"
	Pandolf         WalkingEquation = "Pandolf 1977"
)

// Settings are the leader's choices that hold for the whole trip.
type Settings struct {
	// Needs.
	Walking       WalkingEquation `json:"walking_equation"`
	PartyFactor   float64         `json:"party_factor"`   // on moving time, for a large or loaded group; 1 to 2
	StopShare     float64         `json:"stop_share"`     // hours of stops per moving hour
	EarlyAppetite float64         `json:"early_appetite"` // share of the need people eat on days 1 and 2
	ColdShare     float64         `json:"cold_share"`     // added to the need on days whose low is below freezing
	ProteinPerKg  float64         `json:"protein_g_per_kg"`
	MealShares    MealShares      `json:"meal_shares"`
	// Portions.
	DayLow    float64    `json:"day_low"`       // least part of a day's need the portions must reach
	DayHigh   float64    `json:"day_high"`      // most
	ScaleStep units.Mass `json:"scale_step_g"`  // what the kitchen scale can show
	Seconds   float64    `json:"seconds_share"` // cooked at hot meals above the portions, for second helpings
	// Menu.
	FillOpenSlots bool          `json:"fill_open_slots"` // the plan fills what the leader left open
	RepeatGap     int           `json:"repeat_gap_days"` // no dinner twice within so many days
	MenuAim       float64       `json:"menu_aim"`        // what a filled menu is best at: -1 cheap, 0 light, 1 varied
	CookMinutes   units.Minutes `json:"cook_minutes"`    // on a burner a day, half of it on the longest day; 0: no limit
	// Way of the food.
	PackingNight units.Date    `json:"packing_night"`
	ShoppingDay  units.Date    `json:"shopping_day"`
	HomeHigh     units.Celsius `json:"home_high_c"`     // highest temperature where food waits before the trip
	HomeLow      units.Celsius `json:"home_low_c"`      // lowest
	HomeFridge   bool          `json:"home_fridge"`     // perishables stay cold until the start
	CarHours     units.Hours   `json:"car_hours"`       // on the road from home to the start
	CarHigh      units.Celsius `json:"car_high_c"`      // highest temperature there
	PackSunHeat  float64       `json:"pack_sun_heat_k"` // a dark pack in the sun above the air
	// Fuel and water.
	FuelReserve float64       `json:"fuel_reserve"`  // share above what is reckoned
	WaterStart  units.Celsius `json:"water_start_c"` // of the water that goes into the pot
	HotDrink    units.Volume  `json:"hot_drink_ml"`  // per eater with breakfast and dinner
	WashUp      units.Volume  `json:"wash_up_ml"`    // warm water per pot and meal
	// Loads.
	DinnerShare float64 `json:"dinner_share"` // largest part of a leg's dinners in one pack; 1: no rule
	FuelShare   float64 `json:"fuel_share"`   // largest part of a leg's fuel in one pack
	// Bags.
	StoreMeals    int  `json:"store_meals"`     // what is taken by the spoon at so many meals of a leg is one bag or bottle for all of them; 0: each meal has its own
	SnackDays     int  `json:"snack_days"`      // days of an eater's snacks in one bag; 1: a bag a day
	LunchPerEater bool `json:"lunch_per_eater"` // each eater's lunch in a bag of their own; else handed round
	// Smellables: room in the food-storage containers for each member's paste,
	// soap, cream and rubbish.
	Smellables units.Volume `json:"smellables_ml"`
	// Money and people.
	Budget        optional.Value[units.Money] `json:"budget,omitzero"`
	Helpers       int                         `json:"helpers"`        // on packing night
	ReserveDays   float64                     `json:"reserve_days"`   // emergency reserve, in days of energy
	ReserveRecipe RecipeID                    `json:"reserve_recipe"` // what the reserve is made of; 0: the program chooses
	ReserveEnd    ReserveEnd                  `json:"reserve_end"`    // what becomes of a reserve that was not needed
}

// ReserveEnd is what becomes of an emergency reserve that was not needed.
type ReserveEnd string

// Ends of the reserve.
const (
	ReserveTakenHome ReserveEnd = "taken home"    // on top of all meals
	ReserveEatenLast ReserveEnd = "eaten at last" // the snacks of the last days of each leg, kept back
)

// MealShares says which part of a day's energy each meal should bring; they
// sum to 1.
type MealShares struct {
	Breakfast float64 `json:"breakfast"`
	Lunch     float64 `json:"lunch"`
	Dinner    float64 `json:"dinner"`
	Snack     float64 `json:"snack"`
}

// Of gives the share of one meal.
func (s MealShares) Of(meal Meal) float64 {
	switch meal {
	case Breakfast:
		return s.Breakfast
	case Lunch:
		return s.Lunch
	case Dinner:
		return s.Dinner
	case Snack:
		return s.Snack
	default:
		return 0
	}
}

// DefaultSettings are what a new trip starts from: published values where
// there are any, else common practice (see the contributor guide).
func DefaultSettings() Settings {
	return Settings{
		Walking: LCDABackpacking, PartyFactor: 1.2, StopShare: 1.0 / 6, EarlyAppetite: 0.9,
		ProteinPerKg: 1.2, MealShares: MealShares{Breakfast: 0.22, Lunch: 0.23, Dinner: 0.30, Snack: 0.25},
		DayLow: 0.95, DayHigh: 1.10, ScaleStep: units.Gram, FillOpenSlots: true, RepeatGap: 3, MenuAim: 0.25, CookMinutes: 90,
		HomeLow: 18, HomeHigh: 24, HomeFridge: true, CarHours: 2, CarHigh: 35, PackSunHeat: 5,
		FuelReserve: 0.15, WaterStart: 10, HotDrink: 300 * units.Millilitre, WashUp: 500 * units.Millilitre,
		DinnerShare: 0.5, FuelShare: 0.67, StoreMeals: 2, SnackDays: 3, Smellables: 500 * units.Millilitre, Helpers: 4, ReserveEnd: ReserveTakenHome,
	}
}
