package spoilage

import (
	"sumpter/domain/science/shelflife"
	"sumpter/domain/trip"
)

// Design choices about keeping food.
const (
	fridgeBelowDays = 30.0 // shelf life at 20 C up to which food is kept in the refrigerator at home
	heatMargin      = 0.5  // of the shelf life, that may be used where it was too warm for the stated days
	coldDays        = 7.0  // that perishable food keeps cold; FDA Food Code 3-501.17, from memory
	longSoakMinutes = 60.0 // from which soaking in the cold counts as time in the danger zone
)

// ware is a food as this stage sees it.
type ware struct {
	food      *trip.Food
	control   trip.TCS // yes, no or unknown
	shelfDays float64  // at 20 C; 0 if not known
	q10       float64
}

func wareOf(food *trip.Food) ware {
	w := ware{food: food, control: food.Storage.Control(), q10: food.Storage.Q10}
	if days, ok := food.Storage.ShelfDays.Get(); ok && days > 0 {
		w.shelfDays = days
	}
	if w.control != trip.TCSNo && w.control != trip.TCSYes {
		w.control = trip.TCSUnknown
	}
	if w.q10 <= 0 {
		w.q10 = shelflife.DefaultQ10
	}
	w.q10 = max(1, w.q10)
	if w.control == trip.TCSNo && food.Storage.TCSWhenOpen && !food.PackedAsBought && opensWhenPacked(food.Form) {
		w.control = trip.TCSYes
	}
	return w
}

// opensWhenPacked tells forms that are open once they are put into another
// bag on packing night. Dry food and powders turn perishable only when wetted,
// which is when they are eaten.
func opensWhenPacked(form trip.Form) bool {
	return form != trip.Dry && form != trip.Powder
}

// perishable tells food whose time at warm temperatures is counted.
func (w *ware) perishable() bool { return w.control != trip.TCSNo }

// perDay gives the share of the shelf life that a day at 20 C uses, 0 if it is
// not known.
func (w *ware) perDay() float64 {
	if w.shelfDays == 0 {
		return 0
	}
	return 1 / w.shelfDays
}

// keptCold tells food that stays in the refrigerator at home, if there is one.
func (w *ware) keptCold(s *trip.Settings) bool {
	return s.HomeFridge && (w.perishable() || w.shelfDays > 0 && w.shelfDays <= fridgeBelowDays)
}

// tooWarm tells whether a steady temperature is above what the stated days
// hold for.
func (w *ware) tooWarm(meanC float64) bool {
	most, ok := w.food.Storage.MaxHeat.Get()
	return ok && meanC > float64(most)
}
