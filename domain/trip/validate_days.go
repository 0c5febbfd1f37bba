package trip

import (
	"sumpter/domain/prose"
)

func (c *checker) days() {
	if len(c.trip.Days) > MaxDays {
		return
	}
	for i := range c.trip.Days {
		day := &c.trip.Days[i]
		c.at("days", i, 0, day.Name)
		c.line("name", "name", day.Name)
		c.route(day)
		c.weather(day)
		c.mealList("meals", day.Meals)
		c.notes("notes", "notes", day.Notes)
	}
}

func (c *checker) route(day *Day) {
	c.within("distance_m", "distance", float64(day.Distance), 0, maxDistance, "m")
	c.within("ascent_m", "ascent", float64(day.Ascent), 0, maxAscent, "m")
	descentOK := c.within("descent_m", "descent", float64(day.Descent), 0, maxAscent, "m")
	if c.within("steep_descent_m", "steep descent", float64(day.SteepDescent), 0, maxAscent, "m") && descentOK && day.SteepDescent > day.Descent {
		c.add("steep_descent_m", prose.Say("steep descent is %s, more than the whole descent", measure(float64(day.SteepDescent), "m")), prose.Say("at most %s", measure(float64(day.Descent), "m")), prose.Say("Enter the part of the descent that is steep."))
	}
	word(c, "terrain", "terrain", day.Terrain, Terrains()...)
	c.within("camp_height_m", "height of the camp", float64(day.CampHeight), minAltitude, maxAlt, "m")
	c.within("lunch_height_m", "height of the lunch place", float64(day.LunchHeight), minAltitude, maxAlt, "m")
	hours, given := day.MovingHours.Get()
	if !given || !c.within("moving_hours", "moving time", float64(hours), 0, maxHoursOfDay, "h") {
		return
	}
	if float64(day.Distance) > float64(hours)*maxMetresPerMovingHour {
		c.add("moving_hours", prose.Say("%s in %s is faster than anybody walks", measure(float64(day.Distance), "m"), measure(float64(hours), "h")), prose.Say("at most %d m an hour", maxMetresPerMovingHour), prose.Say("Correct the time or the distance, or leave the time empty to have it computed."))
	}
}

func (c *checker) weather(day *Day) {
	low := c.within("low_c", "lowest temperature", float64(day.Low), minCelsius, maxCelsius, "°C")
	high := c.within("high_c", "highest temperature", float64(day.High), minCelsius, maxCelsius, "°C")
	if low && high && day.Low > day.High {
		c.swapped("low_c", "lowest temperature", float64(day.Low), float64(day.High), "°C")
	}
}

// mealList checks meals that may stand in any order, each once.
func (c *checker) mealList(field string, meals []Meal) {
	if !c.count(field, "meals", len(meals), 0, len(Meals())) {
		return
	}
	for _, meal := range meals {
		word(c, field, "meal", meal, Meals()...)
	}
	distinct(c, field, "meal", meals, func(m Meal) Meal { return m })
}
