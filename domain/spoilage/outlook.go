package spoilage

import (
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Outlook judges foods before they stand on a menu.
type Outlook struct{ judge *judge }

// NewOutlook prepares the ways of the trip's foods. The trip is canonical and must not change while the outlook is used.
func NewOutlook(t *trip.Trip) *Outlook { return &Outlook{newJudge(t)} }

// At tells the fate of a food if it were eaten at a meal, soaked in the cold for so long before, from a package opened then; false for a
// food the trip does not have.
func (o *Outlook) At(day int, meal trip.Meal, food trip.FoodID, soak units.Minutes) (Fate, bool) {
	o.judge.reasons = o.judge.reasons[:0]
	return o.judge.judge(serving{day: day, meal: meal, food: food, leg: trip.LegOf(o.judge.legs, day), soak: float64(soak)})
}
