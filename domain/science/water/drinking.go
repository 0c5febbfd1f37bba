// Package water gives the water a person should drink on the move by heat
// and effort, with the ceilings above which drinking is itself dangerous, and
// the water that cooking takes.
package water

// LitresPerQuart is the US quart.
const LitresPerQuart = 0.946352946

// Ceilings in litres: more lowers the blood's sodium and is dangerous.
//
// Source: US Army TB MED 507, printed as 1.5 quarts an hour and 12 a day.
const (
	MostPerHour = 1.5 * LitresPerQuart
	MostPerDay  = 12 * LitresPerQuart
)

// SpreadPerHour is how far single people lie to either side of the table, in
// litres; sun or shade moves it as much again.
//
// Source: US Army TB MED 507.
const SpreadPerHour = 0.25 * LitresPerQuart

// Effort is a column of the table: easy is 2.5 mph with under 30 lb, moderate
// 3.5 mph with under 40 lb, hard 3.5 mph with 40 lb or more.
type Effort int

// The efforts of the table.
const (
	Easy Effort = iota
	Moderate
	Hard
)

// row is litres per hour in quarters of a quart, from a wet-bulb globe
// temperature upward.
type row struct {
	fromF    float64
	quarters [3]float64 // easy, moderate, hard
}

// Source: US Army TB MED 507, for heat-acclimated people and at least four
// hours of work.
var table = [...]row{
	{78, [3]float64{2, 3, 3}},
	{82, [3]float64{2, 3, 4}},
	{85, [3]float64{3, 3, 4}},
	{88, [3]float64{3, 3, 4}},
	{90, [3]float64{4, 4, 4}},
}

// TableFromC is the wet-bulb globe temperature in degrees Celsius at which the
// table begins.
const TableFromC = (78 - 32) / 1.8

// coolPerHour is litres per hour of walking below the table: common practice,
// 0.3 to 0.5, no source.
var coolPerHour = [3]float64{0.3, 0.4, 0.5}

// DrinkPerHour returns litres per hour of walking at a wet-bulb globe temperature
// in degrees Celsius. That is not air temperature: when only the latter is
// known, a shade day is assumed by giving it here (design choice), and the
// user is told.
//
// Source: US Army TB MED 507; below 25.6 C common practice, no source.
func DrinkPerHour(wetBulbGlobeC float64, effort Effort) float64 {
	effort = min(Hard, max(Easy, effort))
	fahrenheit := wetBulbGlobeC*1.8 + 32
	litres := coolPerHour[effort]
	for _, r := range table {
		if fahrenheit >= r.fromF {
			litres = max(litres, r.quarters[effort]/4*LitresPerQuart)
		}
	}
	return litres
}

// Drink for a day without walking, in litres, beside the water in food.
//
// Source: Institute of Medicine 2005 (total water 3.7 and 2.7 litres, of which
// about 3.0 and 2.2 are drunk); from memory.
const (
	BaseMan   = 3.0
	BaseWoman = 2.2
)

// DrinkInDay returns litres to drink in a day: the base and the hours on the move,
// never above the ceilings. Capped tells that a ceiling was met.
//
// Source: design choice on the published rates and ceilings.
func DrinkInDay(baseLitres, litresPerHour, movingHours float64) (litres float64, capped bool) {
	rate := min(litresPerHour, MostPerHour)
	total := baseLitres + rate*movingHours
	return min(total, MostPerDay), rate < litresPerHour || total > MostPerDay
}
