package spoilage

import (
	"sumpter/domain/science/daytemp"
	"sumpter/domain/science/foodsafety"
	"sumpter/domain/science/shelflife"
)

// exposureBetween gives the share of the time allowed to perishable food that
// a course of temperature uses from one hour to a later one: half of it for
// each hour in the danger zone, and as much again above 32.2 C.
// A pack or car above 60 C is hot by accident and counts like the zone.
//
// Source: see foodsafety.Exposure.
func exposureBetween(day daytemp.Day, from, to float64) float64 {
	slow := 1 / foodsafety.AllowedHours
	fast := 1/foodsafety.AllowedHoursHot - slow
	return slow*day.HoursAboveBetween(from, to, foodsafety.DangerFromC) +
		fast*day.HoursAboveBetween(from, to, foodsafety.HotWeatherFromC)
}

// clock adds up, over the days of the trip, what a pack uses of an allowance.
type clock struct {
	days  []daytemp.Day
	rate  func(day daytemp.Day, from, to float64) float64
	whole []float64 // before each day, from the first
	meals map[float64][]float64
}

func newClock(days []daytemp.Day, rate func(day daytemp.Day, from, to float64) float64) *clock {
	c := &clock{days: days, rate: rate, whole: make([]float64, len(days)+1), meals: map[float64][]float64{}}
	for d, day := range days {
		c.whole[d+1] = c.whole[d] + rate(day, 0, 24)
	}
	return c
}

// until gives what is used on a day from midnight to an hour.
func (c *clock) until(day int, hour float64) float64 {
	known, ok := c.meals[hour]
	if !ok {
		known = make([]float64, len(c.days))
		for d := range c.days {
			known[d] = c.rate(c.days[d], 0, hour)
		}
		c.meals[hour] = known
	}
	return known[day]
}

// between gives what is used from one day and hour to a later one; nothing if
// it is not later.
func (c *clock) between(fromDay int, fromHour float64, toDay int, toHour float64) float64 {
	used := c.whole[toDay] + c.until(toDay, toHour) - c.whole[fromDay] - c.until(fromDay, fromHour)
	return max(0, used)
}

// qualityRate gives days of shelf life used by a course of temperature.
func qualityRate(q10 float64) func(day daytemp.Day, from, to float64) float64 {
	return func(day daytemp.Day, from, to float64) float64 {
		return shelflife.Q10Between(q10, day, referenceC, from, to)
	}
}

// referenceC is the temperature for which shelf lives are stated.
const referenceC = 20.0
