package bags

import (
	"slices"

	"sumpter/domain/science/boiling"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// ware is a food with what packing asks of it worked out once.
type ware struct {
	food         *trip.Food
	allergens    []Allergen // not free, in the order of the label
	density      float64    // g/mL
	densityKnown bool
}

// Cautious bulk densities in g/mL for foods whose own is not known: light for
// their form, so that the bag is large enough. Common practice, no source; the
// lightest usual foods (puffed grain, crispbread) lie near 0.15.
var cautiousDensity = map[trip.Form]float64{
	trip.Dry: 0.20, trip.Powder: 0.35, trip.Liquid: 0.90, trip.Spread: 0.80, trip.Piece: 0.15,
}

// wares looks at every food of the trip.
func wares(t *trip.Trip) map[trip.FoodID]*ware {
	named := labelled(t)
	all := make(map[trip.FoodID]*ware, len(t.Foods))
	for i := range t.Foods {
		w := &ware{food: &t.Foods[i]}
		w.density, w.densityKnown = w.food.Density.Get()
		if !w.densityKnown || w.density <= 0 {
			w.density, w.densityKnown = cautiousDensity[w.food.Form], false
		}
		if w.density == 0 {
			w.density = cautiousDensity[trip.Piece]
		}
		for _, a := range named {
			if state := w.food.Presence(a); state != trip.Free {
				w.allergens = append(w.allergens, Allergen{a, state})
			}
		}
		all[w.food.ID] = w
	}
	return all
}

// labelled lists the allergens a label tells: the declared ones, then those of
// the crew that are none of them.
func labelled(t *trip.Trip) []trip.Allergen {
	list := trip.DeclaredAllergens()
	var own []trip.Allergen
	for i := range t.Crew {
		for _, allergy := range t.Crew[i].Allergies {
			if !slices.Contains(list, allergy.Allergen) && !slices.Contains(own, allergy.Allergen) {
				own = append(own, allergy.Allergen)
			}
		}
	}
	slices.Sort(own)
	return append(list, own...)
}

// mergeLabels joins two lists in label order. The order is that of the wares'
// lists, which are all cut from the same one.
func mergeLabels(a, b []Allergen) []Allergen {
	if len(a) == 0 {
		return slices.Clone(b)
	}
	for _, x := range b {
		if i := slices.IndexFunc(a, func(y Allergen) bool { return y.Allergen == x.Allergen }); i >= 0 {
			a[i].Presence = trip.Worse(a[i].Presence, x.Presence)
		} else {
			a = append(a, x)
		}
	}
	return a
}

// volume is what a mass takes up in a bag.
func (w *ware) volume(mass units.Mass) units.Volume {
	return units.FromMillilitres(mass.Grams() / w.density)
}

// wrapping is what stays of the packages that go along as bought: of the size
// that comes out with least over, whole packages.
func (w *ware) wrapping(mass units.Mass) units.Mass {
	pack, count := w.bought(mass)
	if pack == nil {
		return 0
	}
	return pack.Wrapping * units.Mass(count)
}

// bought chooses the package for a mass that stays in it.
func (w *ware) bought(mass units.Mass) (best *trip.Package, count int64) {
	if !w.food.PackedAsBought {
		return nil, 0
	}
	for i := range w.food.Packages {
		p := &w.food.Packages[i]
		if p.Net <= 0 {
			continue
		}
		n := int64((mass-1)/p.Net) + 1
		if best == nil || p.Net*units.Mass(n) < best.Net*units.Mass(count) {
			best, count = p, n
		}
	}
	return best, count
}

// melts tells whether a food turns soft in a pack on its way to a day.
func (k *packer) melts(w *ware, day int) bool {
	return w.meltsAt(k.hot[day-1])
}

func (w *ware) meltsAt(heat units.Celsius) bool {
	softens, known := w.food.Storage.SoftensAt.Get()
	return known && heat >= softens
}

// minutes on the flame at the height where a slot is cooked.
func (k *packer) minutes(r *trip.Recipe, day int, meal trip.Meal) units.Minutes {
	q10 := boiling.GrainQ10
	if r.Pulses {
		q10 = boiling.LegumeQ10
	}
	height := k.trip.CookHeight(day, meal)
	return r.Simmer * units.Minutes(boiling.TimeFactor(float64(height), q10))
}

// runs tells what leaks out of a bag.
func (w *ware) runs() bool { return w.food.Form == trip.Liquid || w.food.Form == trip.Spread }

// perishes tells what does not keep in an opened bag on the way. Dry food and
// powders that turn perishable when wetted are dry in it.
func (w *ware) perishes() bool {
	s := &w.food.Storage
	return s.Control() != trip.TCSNo || s.TCSWhenOpen && w.food.Form != trip.Dry && w.food.Form != trip.Powder
}

// presence is the state of an allergen that is on the label.
func (w *ware) presence(allergen trip.Allergen) trip.Presence {
	for _, a := range w.allergens {
		if a.Allergen == allergen {
			return a.Presence
		}
	}
	return trip.Free
}
