package trip

import (
	"maps"
	"reflect"
	"slices"
)

// Clone gives a deep copy: nothing that is changed in it changes the trip.
func (t *Trip) Clone() *Trip {
	c := *t
	c.Groups = slices.Clone(t.Groups)
	c.Crew = cloneEach(t.Crew, func(m *Member) {
		m.Diets, m.Allergies, m.Dislikes = slices.Clone(m.Diets), slices.Clone(m.Allergies), slices.Clone(m.Dislikes)
	})
	c.Days = cloneEach(t.Days, func(d *Day) { d.Meals = slices.Clone(d.Meals) })
	c.Foods = cloneEach(t.Foods, func(f *Food) {
		f.Packages, f.Allergens, f.Diets = slices.Clone(f.Packages), maps.Clone(f.Allergens), maps.Clone(f.Diets)
	})
	c.Recipes = cloneEach(t.Recipes, func(r *Recipe) {
		r.Meals, r.Method = slices.Clone(r.Meals), slices.Clone(r.Method)
		r.Ingredients = cloneEach(r.Ingredients, func(i *Ingredient) { i.Swaps = slices.Clone(i.Swaps) })
	})
	c.Menu = cloneEach(t.Menu, func(cell *Cell) {
		cell.Dishes = cloneEach(cell.Dishes, func(d *Dish) {
			d.For, d.Accepted = slices.Clone(d.For), slices.Clone(d.Accepted)
		})
	})
	c.Gear = slices.Clone(t.Gear)
	c.Fuels = slices.Clone(t.Fuels)
	c.Bags = slices.Clone(t.Bags)
	c.Posting.Opening = t.Posting.Opening.clone()
	c.Points = cloneEach(t.Points, func(p *ResupplyPoint) { p.Opening = p.Opening.clone() })
	c.Shops = cloneEach(t.Shops, func(s *Shop) { s.Opening = s.Opening.clone() })
	c.Pins = slices.Clone(t.Pins)
	c.Kept = cloneEach(t.Kept, func(k *KeptPacks) { k.Things = slices.Clone(k.Things) })
	p := &c.Progress
	p.Purchases, p.Ends, p.MissingBoxes = slices.Clone(p.Purchases), slices.Clone(p.Ends), slices.Clone(p.MissingBoxes)
	p.PartsGone, p.FuelNotes, p.CrewChanges = slices.Clone(p.PartsGone), slices.Clone(p.FuelNotes), slices.Clone(p.CrewChanges)
	p.Replans = cloneEach(p.Replans, func(r *Replan) {
		r.Moves, r.HandOvers, r.Given = slices.Clone(r.Moves), slices.Clone(r.HandOvers), slices.Clone(r.Given)
	})
	p.Packed = cloneEach(p.Packed, func(b *PackedBag) { b.Weighed = slices.Clone(b.Weighed) })
	return &c
}

func (o Opening) clone() Opening {
	return Opening{OpenDays: slices.Clone(o.OpenDays), ClosedDates: slices.Clone(o.ClosedDates)}
}

func cloneEach[T any](list []T, deepen func(*T)) []T {
	copied := slices.Clone(list)
	for i := range copied {
		deepen(&copied[i])
	}
	return copied
}

// Equal tells whether two trips say the same, order of lists included.
func Equal(a, b *Trip) bool { return reflect.DeepEqual(a, b) }
