package spoilage

import (
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
}

const home, car, post, box, pack = "home", "car", "post", "box", "pack"

// wayOf follows the food of a leg from purchase to the packs. Boxes leave home
// on the latest day that still brings them in time.
func wayOf(t *trip.Trip, leg trip.Leg) way {
	s := &t.Settings
	room := daytemp.Day{Low: float64(min(s.HomeLow, s.HomeHigh)), High: float64(s.HomeHigh)}
	parked := stage{where: car, days: float64(s.CarHours) / 24, day: daytemp.Day{Low: float64(s.CarHigh), High: float64(s.CarHigh)}, known: true}
	point := t.Point(leg.From)
	if point == nil {
		return way{before: []stage{atHome(s, t.Start, room), parked}, arrives: leg.FirstDay - 1, hour: startHour}
	}
	w := way{arrives: point.AfterDay - 1, hour: pickUpHour}
	pickUp := t.DateOf(point.AfterDay)
	transit, buffer := max(0, point.TransitDays), max(0, point.BufferDays)
	store := stage{where: box, days: float64(buffer), known: true}
	low, okLow := point.StoreLow.Get()
	high, okHigh := point.StoreHigh.Get()
	if okLow && okHigh {
		store.day = daytemp.Day{Low: float64(min(low, high)), High: float64(high)}
	} else {
		store.known, store.day = false, daytemp.Day{Low: room.Low, High: max(room.High, parked.day.High)}
	}
	switch point.Kind {
	case trip.Meeting:
		w.before = []stage{atHome(s, pickUp, room), parked}
	case trip.Hut, trip.Cache:
		store.days += float64(transit)
		w.before = []stage{atHome(s, pickUp.AddDays(-transit-buffer), room), parked, store}
	default:
		van := stage{where: post, days: float64(transit), day: daytemp.Day{Low: room.Low, High: max(room.High, parked.day.High)}, known: true}
		w.before = []stage{atHome(s, pickUp.AddDays(-transit-buffer), room), van, store}
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
