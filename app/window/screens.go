package window

import (
	"sumpter/app/screens/bench"
	"sumpter/app/screens/crew"
	"sumpter/app/screens/foods"
	"sumpter/app/screens/loads"
	"sumpter/app/screens/menu"
	"sumpter/app/screens/packing"
	"sumpter/app/screens/printing"
	"sumpter/app/screens/recipes"
	"sumpter/app/screens/resupply"
	"sumpter/app/screens/route"
	"sumpter/app/screens/settings"
	"sumpter/app/screens/shopping"
	"sumpter/app/screens/trail"
)

// newScreens makes every screen, in the order of the work; the last, which
// holds for all of it, is no step.
func newScreens(b *bench.Bench) []bench.Screen {
	return []bench.Screen{
		crew.New(b),
		route.New(b),
		foods.New(b),
		recipes.New(b),
		menu.New(b),
		loads.New(b),
		resupply.New(b),
		shopping.New(b),
		packing.New(b),
		trail.New(b),
		printing.New(b),
		settings.New(b),
	}
}
