package loads

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/look"
	"sumpter/app/written"
	"sumpter/domain/carry"
	"sumpter/domain/units"
)

// passesLimits tells whether no choice keeps all limits: the last passes them
// least.
func passesLimits(list []carry.Choice) bool { return len(list) > 0 && list[len(list)-1].Any() }

// passedWords says how far a choice passes limits.
func (c *changes) passedWords(choice carry.Choice) string {
	if !choice.Any() {
		return lang.L("none passed")
	}
	return written.Text(choice.Text(), c.screen.bench.Units())
}

func passedTone(choice carry.Choice) fyne.ThemeColorName {
	if choice.Any() {
		return look.Brick
	}
	return look.Quiet
}

// height is how high a choice stands in the picture, and what that measures:
// how much heavier it is than the fairest, or, where limits are passed, by how
// much. Mass and room have no common measure: then there is no picture.
type height struct {
	name   string
	of     func(carry.Choice) float64
	format func(float64) string
}

func (c *changes) heightOf(list []carry.Choice) (height, bool) {
	load := slices.ContainsFunc(list, func(x carry.Choice) bool { return x.OverLimit > 0 })
	room := slices.ContainsFunc(list, func(x carry.Choice) bool { return x.OverRoom > 0 })
	us := c.screen.bench.Units() == units.US
	switch {
	case !passesLimits(list):
		fairest := list[len(list)-1]
		return height{
			lang.L("heavier than the fairest split"),
			func(x carry.Choice) float64 { return 100 * heavier(x, fairest) },
			func(value float64) string { return written.Number(value, 1) + " %" },
		}, true
	case load && !room:
		return height{
			lang.L("over load limits, all packs together"),
			func(x carry.Choice) float64 {
				if us {
					return x.OverLimit.Pounds()
				}
				return x.OverLimit.Kilograms()
			},
			unitFormat(us, "lb", "kg"),
		}, true
	case room && !load:
		return height{
			lang.L("over the room of packs, all together"),
			func(x carry.Choice) float64 {
				if us {
					return x.OverRoom.Quarts()
				}
				return x.OverRoom.Litres()
			},
			unitFormat(us, "qt", "L"),
		}, true
	default:
		return height{}, false
	}
}

func unitFormat(us bool, usUnit, metricUnit string) func(float64) string {
	unit := metricUnit
	if us {
		unit = usUnit
	}
	return func(value float64) string { return written.Number(value, 2) + " " + unit }
}
