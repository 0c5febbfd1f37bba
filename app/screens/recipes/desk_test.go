package recipes

import (
	"testing"

	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/findings"
	"sumpter/domain/trip"
)

// desk is the screen in a window, with what it told.
type desk struct {
	*Screen
	*benchtest.Desk
	t *testing.T
}

func newDesk(t *testing.T, made *trip.Trip) *desk {
	t.Helper()
	d := benchtest.New(t, made)
	s := &desk{Screen: New(d.Bench), Desk: d, t: t}
	d.Show(s.Screen, 1180, 740)
	return s
}

func kitchenDesk(t *testing.T) *desk { return newDesk(t, benchtest.Pantry()) }

func emptyDesk(t *testing.T) *desk { return newDesk(t, trip.New("Short walk", 20_000)) }

// recipe finds a recipe of the document by its name.
func (d *desk) recipe(name string) *trip.Recipe {
	d.t.Helper()
	t := d.bench.Trip()
	for i := range t.Recipes {
		if t.Recipes[i].Name == name {
			return &t.Recipes[i]
		}
	}
	d.t.Fatalf("the trip has no %q", name)
	return nil
}

// choose puts the cursor of the list on a recipe.
func (d *desk) choose(name string) {
	d.t.Helper()
	d.GoTo(findings.Place{Recipe: d.recipe(name).ID})
}
