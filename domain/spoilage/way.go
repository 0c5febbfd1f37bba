package spoilage

import (
	"sumpter/domain/posting"
	"sumpter/domain/science/daytemp"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Hours of the day at which things happen (design choice). Snacks are eaten
// all day and reckoned at its end.
const (
	startHour   = 8.0
	pickUpHour  = 17.0
	fridgeC     = 4.0
	hottestHour = daytemp.PeakHour
)

func hourOf(meal trip.Meal) float64 {
	switch meal {
	case trip.Breakfast:
		return 7
	case trip.Lunch:
		return 12.5
	case trip.Snack:
		return 17
	default:
		return 19
	}
}

// stage is a part of the way before the pack, at a daily course of temperature.
type stage struct {
	where string
	days  float64
	day   daytemp.Day
	known bool
}

// way is how the food of one leg comes into the packs.
type way struct {
	before  []stage // from purchase to pack; the home of food kept cold differs
	arrives int     // place of the day on which it comes into the packs
	hour    float64
	sold    map[trip.FoodID]bool // bought where the leg begins: not on this way
}

const home, car, post, box, pack = "home", "car", "post", "box", "pack"

// wayOf follows the food of a leg from purchase to the packs. A box is at home
// until the day it leaves, then in the van for as long as the post is slow, and
// the rest of the time where it waits. Who meets the group keeps it at home.
func wayOf(t *trip.Trip, leg trip.Leg) way {
	s := &t.Settings
	room := daytemp.Day{Low: float64(min(s.HomeLow, s.HomeHigh)), High: float64(s.HomeHigh)}
	parked := stage{where: car, days: float64(s.CarHours) / 24, day: daytemp.Day{Low: float64(s.CarHigh), High: float64(s.CarHigh)}, known: true}
	point := t.Point(leg.From)
	if point == nil {
		return way{before: []stage{atHome(s, t.Start, room), parked}, arrives: leg.FirstDay - 1, hour: startHour}
	}
	w := way{arrives: point.AfterDay - 1, hour: pickUpHour, sold: t.FoodsSoldAt(point.ID)}
	c := posting.Of(t, point)
	van := stage{where: post, days: float64(c.OnTheWay), day: daytemp.Day{Low: room.Low, High: max(room.High, parked.day.High)}, known: true}
	store := stage{where: box, days: float64(c.LiesThere), day: van.day}
	low, okLow := point.StoreLow.Get()
	high, okHigh := point.StoreHigh.Get()
	if okLow && okHigh {
		store.known, store.day = true, daytemp.Day{Low: float64(min(low, high)), High: float64(high)}
	}
	switch {
	case point.Kind == trip.Meeting:
		w.before = []stage{atHome(s, c.PickUp, room), parked}
	case c.Sent:
		w.before = []stage{atHome(s, c.On, room), van, store}
	default:
		w.before = []stage{atHome(s, c.On, room), parked, store}
	}
	return w
}

func atHome(s *trip.Settings, leaves units.Date, room daytemp.Day) stage {
	days := 0.0
	if s.ShoppingDay.IsSet() && leaves > s.ShoppingDay {
		days = float64(leaves - s.ShoppingDay)
	}
	return stage{where: home, days: days, day: room, known: true}
}

// cooled gives the stage for food that is kept in the refrigerator at home.
func (s stage) cooled() stage {
	if s.where == home {
		s.day = daytemp.Day{Low: fridgeC, High: fridgeC}
	}
	return s
}

// packDays gives the temperature in a pack on each day of the trip: the air,
// and by day a dark pack in the sun above it.
func packDays(t *trip.Trip) []daytemp.Day {
	days := make([]daytemp.Day, len(t.Days))
	for d := range t.Days {
		low := float64(min(t.Days[d].Low, t.Days[d].High))
		high := float64(t.Days[d].High) + max(0, t.Settings.PackSunHeat)
		days[d] = daytemp.Day{Low: low, High: max(low, high)}
	}
	return days
}
