package foodsafety

import "math"

// Holding limits as the Food Code prints them, in both scales.
//
// Source: FDA Food Code 3-501.16(A).
const (
	ColdHoldingMaxC = 5.0
	ColdHoldingMaxF = 41.0
	HotHoldingMinC  = 57.0
	HotHoldingMinF  = 135.0
)

// The danger zone in degrees Celsius, and the limit above which an hour is
// allowed instead of two.
//
// Source: USDA Food Safety and Inspection Service, printed as 40, 140 and 90 F.
const (
	DangerFromC     = (40.0 - 32) / 1.8
	DangerToC       = (140.0 - 32) / 1.8
	HotWeatherFromC = (90.0 - 32) / 1.8
)

// Hours that perishable food may spend in the danger zone in all, and above
// HotWeatherFromC.
//
// Source: USDA Food Safety and Inspection Service.
const (
	AllowedHours    = 2.0
	AllowedHoursHot = 1.0
)

// Exposure returns the share of the allowance that hours at one temperature
// use up. Shares add up, cooling stops the account but never winds it back,
// and at 1 the food must be thrown away (design choice on published limits).
// At or above DangerToC food is held hot and nothing counts; a place that is
// hot by accident, such as a car, is to be capped below it by the caller.
func Exposure(hours, celsius float64) float64 {
	switch {
	case celsius <= DangerFromC || celsius >= DangerToC:
		return 0
	case celsius > HotWeatherFromC:
		return hours / AllowedHoursHot
	default:
		return hours / AllowedHours
	}
}

// doublingMinutes is the doubling time of the fastest bacteria.
const doublingMinutes = 20.0

// Growth returns how many times the fastest bacteria multiply in hours in the
// danger zone; it explains the two-hour rule and decides nothing.
//
// Source: USDA Food Safety and Inspection Service, doubling in about 20 min.
func Growth(hours float64) float64 {
	return math.Exp2(hours * 60 / doublingMinutes)
}
