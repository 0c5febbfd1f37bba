// Package spoilage follows each ingredient from the shop to the pot, through
// home, car, box and pack with the temperatures of each, and says whether it
// is then safe, not safe or not known, and how much of its quality is gone.
//
// Start with Compute; it wants a canonical trip. Where a box is used,
// the food of the days after the point travels in the box.
package spoilage

import (
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Verdict is whether a food may be eaten where the plan puts it.
type Verdict string

// Verdicts. Only Safe is safe.
const (
	Safe     Verdict = "safe"
	NotSafe  Verdict = "not safe"
	NotKnown Verdict = "not known"
)

// Result is the fate of every ingredient in every slot.
type Result struct {
	Fates    []Fate             `json:"fates"` // by day, meal, group, food
	Findings []findings.Finding `json:"-"`
}

// Fate is one food in one slot.
type Fate struct {
	Day          int          `json:"day"`
	Meal         trip.Meal    `json:"meal"`
	Group        trip.GroupID `json:"group"`
	Food         trip.FoodID  `json:"food"`
	Verdict      Verdict      `json:"verdict"`
	Why          prose.Text   `json:"why"`
	Dose         float64      `json:"dose"`         // share of the 2 h / 1 h allowance used by food that needs control; 1 is the end
	QualityUsed  float64      `json:"quality_used"` // share of the shelf life gone when eaten; above 1 it is past
	QualityKnown bool         `json:"quality_known"`
	DaysLeft     float64      `json:"days_left"` // at the temperatures of that day; only if QualityKnown
	Melts        bool         `json:"melts"`
	LatestDay    int          `json:"latest_day"` // last day of the trip it could still be eaten; 0: none
	Path         []Stretch    `json:"path,omitempty"`
}

// Stretch is one part of the way.
type Stretch struct {
	Where       string        `json:"where"` // home, car, post, box, pack
	Days        float64       `json:"days"`
	Low         units.Celsius `json:"low_c"`
	High        units.Celsius `json:"high_c"`
	Known       bool          `json:"known"` // false: nobody gave the temperatures
	QualityUsed float64       `json:"quality_used"`
}
