// Package bagstest makes the input of the stages after portions from a trip by
// running the stages before them, and small foods for worked cases.
package bagstest

import (
	"context"

	"sumpter/domain/fill"
	"sumpter/domain/menu"
	"sumpter/domain/needs"
	"sumpter/domain/portions"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Batches sizes the menu of a canonical trip.
func Batches(t *trip.Trip) portions.Result {
	n := needs.Compute(t, nil)
	return portions.Compute(t, n, menu.Resolve(t, proposed(t, n)))
}

// proposed fills the open slots where the settings ask for it.
func proposed(t *trip.Trip, n needs.Result) []trip.Cell {
	if !t.Settings.FillOpenSlots {
		return nil
	}
	p, err := fill.Menu(context.Background(), t, n, fill.Options{Steps: fill.Sketch})
	if err != nil {
		panic(err) // only a cancelled context fails
	}
	return p.Cells
}

// Food is a dry food free of every declared allergen.
func Food(id trip.FoodID, name string) trip.Food {
	f := trip.Food{ID: id, Name: name, Form: trip.Dry, Allergens: map[trip.Allergen]trip.Presence{}}
	f.Storage.TCS = trip.TCSNo
	for _, a := range trip.DeclaredAllergens() {
		f.Allergens[a] = trip.Free
	}
	return f
}

// Grams is a mass.
func Grams(g int) units.Mass { return units.Mass(g) * units.Gram }
