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

// allScreens make a screen each, in the order of the work; the last, which
// holds for all of it, is no step.
var allScreens = []func(*bench.Bench) bench.Screen{
	func(b *bench.Bench) bench.Screen { return crew.New(b) },
	func(b *bench.Bench) bench.Screen { return route.New(b) },
	func(b *bench.Bench) bench.Screen { return foods.New(b) },
	func(b *bench.Bench) bench.Screen { return recipes.New(b) },
	func(b *bench.Bench) bench.Screen { return menu.New(b) },
	func(b *bench.Bench) bench.Screen { return loads.New(b) },
	func(b *bench.Bench) bench.Screen { return resupply.New(b) },
	func(b *bench.Bench) bench.Screen { return shopping.New(b) },
	func(b *bench.Bench) bench.Screen { return packing.New(b) },
	func(b *bench.Bench) bench.Screen { return trail.New(b) },
	func(b *bench.Bench) bench.Screen { return printing.New(b) },
	func(b *bench.Bench) bench.Screen { return settings.New(b) },
}

// newScreens makes every screen, and the steps by which each comes up.
func newScreens(on *bench.Bench) ([]bench.Screen, []*bench.Steps) {
	var screens []bench.Screen
	var steps []*bench.Steps
	for _, newScreen := range allScreens {
		on.Steps = bench.NewSteps(on.Document.AfterFrame)
		screens, steps = append(screens, newScreen(on)), append(steps, on.Steps)
	}
	on.Steps = nil
	return screens, steps
}
