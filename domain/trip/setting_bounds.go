package trip

// Bound is the range of a number.
type Bound struct {
	Low, High float64
	AboveLow  bool // Low itself is not in the range
}

// SettingBound gives the range that Validate allows for a number of the
// settings, in the unit its JSON name tells: "party_factor" is a factor,
// "car_hours" are hours, a share is 1 for the whole. It tells whether the
// setting is a number with a range.
func SettingBound(name string) (Bound, bool) {
	bound, known := settingBounds[name]
	return bound, known
}

// The ranges are wide: they catch typing errors, not unusual trips (common
// practice, no source).
var settingBounds = map[string]Bound{
	"party_factor":     {Low: 1, High: 2},
	"stop_share":       {High: maxFactorSetting},
	"early_appetite":   {Low: minAppetite, High: maxFactorSetting},
	"cold_share":       {High: 1},
	"protein_g_per_kg": {Low: minProtein, High: maxProtein},

	"meal_shares.breakfast": {High: 1},
	"meal_shares.lunch":     {High: 1},
	"meal_shares.dinner":    {High: 1},
	"meal_shares.snack":     {High: 1},

	"day_low":         {Low: 0.3, High: 1},
	"day_high":        {Low: 1, High: maxFactorSetting},
	"scale_step_g":    {High: 100, AboveLow: true},
	"repeat_gap_days": {High: MaxDays},
	"seconds_share":   {High: 1},
	"menu_aim":        {Low: -1, High: 1},
	"cook_minutes":    {High: 60 * maxHoursOfDay},

	"home_low_c":      {Low: minCelsius, High: maxCelsius},
	"home_high_c":     {Low: minCelsius, High: maxCelsius},
	"car_hours":       {High: 10 * maxHoursOfDay},
	"car_high_c":      {Low: minCelsius, High: 100},
	"pack_sun_heat_k": {High: 50},

	"fuel_reserve":  {High: maxFactorSetting},
	"water_start_c": {High: maxCelsius},
	"hot_drink_ml":  {High: maxWaterLitres * 1000},
	"wash_up_ml":    {High: 10 * maxWaterLitres * 1000},

	"dinner_share":  {High: 1, AboveLow: true},
	"fuel_share":    {High: 1, AboveLow: true},
	"store_meals":   {High: maxMealsOfStore},
	"snack_days":    {Low: 1, High: MaxDays},
	"smellables_ml": {High: maxWaterLitres * 1000},
	"helpers":       {Low: 1, High: MaxMembers},
	"reserve_days":  {High: maxReserveDays},
}

// setting checks a number of the settings against its range.
func (c *checker) setting(name, label string, value float64, unit string) bool {
	bound := settingBounds[name]
	if bound.AboveLow {
		return c.above(name, label, value, bound.High, unit)
	}
	return c.within(name, label, value, bound.Low, bound.High, unit)
}
