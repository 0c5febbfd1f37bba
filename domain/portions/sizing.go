package portions

import (
	"math"

	"sumpter/domain/needs"
	"sumpter/domain/science/foodenergy"
	"sumpter/domain/trip"
)

// day is the servings of one member on one day while their scales are found.
type day struct {
	servings []*serving
	energy   float64 // price of a kcal, in grams of food
	protein  float64 // price of a gram of protein, in grams of food
}

// sizeDay finds the scales of a member's day.
func (s *sizer) sizeDay(member, d int) {
	servings := s.days[[2]int{member, d}]
	if len(servings) == 0 {
		return
	}
	need := s.needOf(member, d)
	s.wish(servings, need)
	one := &day{servings: servings}
	target, settings := float64(need.TargetKcal), &s.trip.Settings
	one.meet(target)
	protein := need.ProteinGrams
	if protein > 0 {
		protein += proteinMargin
	}
	if one.sum().protein >= protein {
		return
	}
	if one.meetProtein(target, protein) {
		return
	}
	// Even the dishes richest in protein are too little at the need: up to
	// the most the settings allow, more food is the lesser evil.
	most := target * max(1, settings.DayHigh-energyMargin)
	one.meet(most)
	one.meetProtein(most, protein)
	if one.sum().protein <= protein {
		return
	}
	low, high := target, most
	for range extraHalvings {
		middle := (low + high) / 2
		if one.meet(middle); one.meetProtein(middle, protein) {
			high = middle
		} else {
			low = middle
		}
	}
	one.meet(high)
	one.meetProtein(high, protein)
}

// energyMargin is what rounding to the scale may add to a day's energy, as a share.
const energyMargin = 0.005

// proteinMargin is what rounding to the scale may take from a day's protein, in grams.
const proteinMargin = 1.0

// needOf gives a member's need, nothing where needs does not have it.
func (s *sizer) needOf(member, d int) needs.Day {
	if member < len(s.needs.Members) && d < len(s.needs.Members[member].Days) {
		return s.needs.Members[member].Days[d]
	}
	return needs.Day{}
}

// wish sets the scale each serving would have if every meal brought its share
// of the day, and a dinner at least what a main meal should hold.
func (s *sizer) wish(servings []*serving, need needs.Day) {
	all := 0.0
	for _, meal := range mealsOf(servings) {
		all += s.trip.Settings.MealShares.Of(meal)
	}
	for _, meal := range mealsOf(servings) {
		share := 1 / float64(len(mealsOf(servings)))
		if all > 0 {
			share = s.trip.Settings.MealShares.Of(meal) / all
		}
		target := float64(need.TargetKcal) * share
		if meal == trip.Dinner {
			target = max(target, min(foodenergy.MainMealKcal, float64(need.TargetKcal)))
		}
		var fixed, grows float64
		for _, o := range servings {
			if o.meal == meal {
				fixed += o.fixed.kcal
				grows += o.grows.kcal
			}
		}
		for _, o := range servings {
			if o.meal != meal {
				continue
			}
			o.wished = o.clamp(1)
			if grows > 0 {
				o.wished = o.clamp((target - fixed) / grows)
			}
		}
	}
}

func mealsOf(servings []*serving) []trip.Meal {
	var list []trip.Meal
	for _, meal := range trip.Meals() {
		for _, o := range servings {
			if o.meal == meal {
				list = append(list, meal)
				break
			}
		}
	}
	return list
}

// How closely the day is met: far below what the scale can weigh.
const (
	mostLooks       = 60   // at prices of energy
	closeKcal       = 1e-3 // of the energy asked
	usualPrice      = 0.23 // g/kcal, of mixed dry food; where the search for a price begins
	proteinHalvings = 24
	extraHalvings   = 10
)

// meet sets the scales so that the day brings the energy at least weight, or as near as the bounds of the recipes allow.
func (d *day) meet(kcal float64) {
	d.protein = 0
	d.balance(kcal)
}

// balance finds the price of energy at which the day brings it. The energy
// grows with the price in straight pieces, so Newton's steps find it in a few
// looks; where one leaves the bracket the interval is halved instead.
func (d *day) balance(kcal float64) {
	low, high := -dearest, dearest
	for _, end := range []float64{low, high} {
		if d.energy = end; end*(d.placed()-kcal) <= 0 {
			return // even the smallest portions are too much, or the largest too little
		}
	}
	d.energy = usualPrice
	for range mostLooks {
		got := d.placed()
		if math.Abs(got-kcal) < closeKcal {
			return
		}
		if got < kcal {
			low = d.energy
		} else {
			high = d.energy
		}
		next := d.energy + (kcal-got)/d.slope()
		if !(next > low && next < high) {
			next = (low + high) / 2
		}
		d.energy = next
	}
}

// placed sets the scales for the prices and gives the energy of the day.
func (d *day) placed() float64 {
	d.place()
	return d.sum().kcal
}

// slope is how much energy a gram on the price of a kcal brings, from the dishes that are within their bounds.
func (d *day) slope() float64 {
	slope := 0.0
	for _, o := range d.servings {
		if g := o.grows; g.grams > 0 && o.scale > o.leastScale && o.scale < o.mostScale {
			slope += g.kcal * g.kcal / g.grams
		}
	}
	return slope
}

// dearest bounds the prices: at it every dish with energy (or protein) is as large or as small as it may be.
const dearest = 64.0

// meetProtein raises the price of protein until the day brings enough of it at the same energy; false if it cannot.
func (d *day) meetProtein(kcal, protein float64) bool {
	low, high := 0.0, dearest
	if d.protein = high; !d.enough(kcal, protein) {
		return false
	}
	for range proteinHalvings {
		if d.protein = (low + high) / 2; d.enough(kcal, protein) {
			high = d.protein
		} else {
			low = d.protein
		}
	}
	d.protein = high
	d.balance(kcal)
	return true
}

func (d *day) enough(kcal, protein float64) bool {
	d.balance(kcal)
	return d.sum().protein >= protein
}

// place sets each scale for the prices: the wished scale, moved by how much
// lighter than its worth the dish is. A dish worth a tenth more than it weighs
// grows by a tenth of the standard portion, so that meals stay meals; without
// that, least weight alone would make a day of nuts.
func (d *day) place() {
	for _, o := range d.servings {
		o.scale = o.wished
		if g := o.grows; g.grams > 0 {
			worth := d.energy*g.kcal + d.protein*g.protein
			o.scale = o.clamp(o.wished + worth/g.grams - 1)
		}
	}
}

func (d *day) sum() content {
	var sum content
	for _, o := range d.servings {
		c := o.at(o.scale)
		sum = content{sum.grams + c.grams, sum.kcal + c.kcal, sum.protein + c.protein}
	}
	return sum
}
