package packing

import (
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/domain/bags"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Times the planned amount between which a weight is a matter of portions, and
// how many steps of the scale it may miss a small amount by. Beyond, it is
// rather a slip or the wrong food than a choice (common practice, no source).
const (
	leastTimes = 0.5
	mostTimes  = 2.0
	slackSteps = 2
)

// farOff tells whether what was weighed in is so far from the plan that
// somebody should look again.
func (w *work) farOff(planned, shown units.Mass) bool {
	more := w.beyondScale(planned, shown)
	if max(more, -more) <= slackSteps*w.trip.Settings.ScaleStep {
		return false
	}
	return float64(shown) < leastTimes*float64(planned) || float64(shown) > mostTimes*float64(planned)
}

// farOffIn lists the foods of a bag that were weighed far from the plan.
func (w *work) farOffIn(bag *bags.Bag) []bags.Content {
	var list []bags.Content
	for _, c := range bag.Contents {
		if mass, noted := w.weighed(bag.Key, c.Food); noted && w.farOff(c.Mass, mass) {
			list = append(list, c)
		}
	}
	return list
}

// farOffWords asks to look again at what was weighed far from the plan.
func (w *work) farOffWords(bag *bags.Bag) string {
	var foods []string
	for _, c := range w.farOffIn(bag) {
		foods = append(foods, w.farOffFood(bag, c.Food, c.Mass))
	}
	if foods == nil {
		return ""
	}
	return lang.X("packing-far-off", "Far from the plan: {{.Foods}}. Look again: a slip of the scale, or the wrong food?", data{"Foods": strings.Join(foods, "; ")})
}

func (w *work) farOffFood(bag *bags.Bag, food trip.FoodID, planned units.Mass) string {
	mass, _ := w.weighed(bag.Key, food)
	return lang.X("packing-far-off-food", "{{.Food}} {{.Shown}} instead of {{.Planned}}",
		data{"Food": w.foodName(food), "Shown": w.mass(mass), "Planned": w.mass(planned)})
}

// onScaleWords says on a row how much other than planned was weighed in.
func (w *work) onScaleWords(more units.Mass, far bool) string {
	switch {
	case far && more == 0: // one food too much, another too little
		return lang.L("far off: look again")
	case far:
		return joinWords(w.signed(more), lang.L("far off: look again"))
	}
	return lang.X("packing-differs", "{{.Difference}} on the scale", data{"Difference": w.signed(more)})
}
