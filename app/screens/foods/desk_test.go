package foods

import (
	"testing"

	"sumpter/app/screens/bench/benchtest"
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

func demoDesk(t *testing.T) *desk { return newDesk(t, benchtest.Demo()) }

func pantryDesk(t *testing.T) *desk { return newDesk(t, benchtest.Pantry()) }

func emptyDesk(t *testing.T) *desk { return newDesk(t, trip.New("Short walk", 20_000)) }

// food finds a food of the document by its name.
func (d *desk) food(name string) *trip.Food {
	d.t.Helper()
	t := d.bench.Trip()
	for i := range t.Foods {
		if t.Foods[i].Name == name {
			return &t.Foods[i]
		}
	}
	d.t.Fatalf("the trip has no %q", name)
	return nil
}

// choose puts the cursor of the table on a food.
func (d *desk) choose(name string) {
	d.t.Helper()
	d.selectFood(d.food(name).ID)
	d.table.Focus()
}
