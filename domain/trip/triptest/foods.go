package triptest

import (
	"slices"

	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// foods fills the larder round and round, so that a small trip already has
// one of several uses; odd trips start anywhere in it.
func (b *builder) foods(count int) {
	for i, id := range b.ids(count) {
		at := i % len(larder)
		if b.odd {
			at = b.pick(0, len(larder)-1)
		}
		w := larder[at]
		b.trip.Foods = append(b.trip.Foods, b.food(trip.FoodID(id), w))
		b.larderOf[trip.FoodID(id)] = w
		b.foodsFor[w.use] = append(b.foodsFor[w.use], trip.FoodID(id))
	}
}

func (b *builder) food(id trip.FoodID, w ware) trip.Food {
	food := trip.Food{
		ID: id, Name: named(w.name, int64(id)), Per100g: b.nutrients(w), Form: w.form,
		Density: unsure(b, w.density), Packages: b.packages(w), Aisle: oneOf(b, "dry goods", "chilled", ""),
		Storage: b.storage(w), Allergens: b.allergens(w), Diets: b.diets(w), PackedAsBought: w.packed,
	}
	if b.rarely() {
		food.RefuseShare = b.hundredths(0, 60)
		food.AtHome = units.Mass(b.pick(0, 900)) * units.Gram
		food.Source, food.Notes = "label", "opened in spring"
	}
	if w.form == trip.Piece && b.rarely() {
		food.PieceMass, food.PieceHalves = units.Mass(b.pick(8, 80))*units.Gram, b.chance(50)
	}
	return food
}

func (b *builder) nutrients(w ware) trip.Nutrients {
	convention := trip.TotalCarbohydrate
	carb := w.carb
	if b.rarely() {
		convention, carb = trip.AvailableCarbohydrate, max(0, w.carb-w.fibre)
	}
	return trip.Nutrients{
		Kcal: units.Kcal(w.kcal), ProteinGrams: unsure(b, w.protein), FatGrams: unsure(b, w.fat),
		CarbGrams: unsure(b, carb), FibreGrams: unsure(b, w.fibre),
		SugarGrams:       maybe(b, 50, float64(b.pick(0, int(carb)))),
		SodiumMilligrams: unsure(b, float64(b.pick(0, 900))), CarbConvention: convention,
	}
}

func (b *builder) packages(w ware) []trip.Package {
	var packages []trip.Package
	net := max(50, w.portion*b.pick(2, 8))
	for range b.pick(1, 2) {
		wrapping := units.Mass(net/20) * units.Gram
		packages = append(packages, trip.Package{
			Net: units.Mass(net) * units.Gram, Price: unsure(b, units.Money(b.pick(50, 900))),
			Shop: oneOf(b, "", "village shop"), InStock: maybe(b, 10, b.pick(0, 40)), Wrapping: wrapping,
		})
		net *= 2
	}
	if b.rarely() {
		return nil
	}
	return packages
}

func (b *builder) storage(w ware) trip.Storage {
	storage := trip.Storage{
		TCS: w.tcs, TCSWhenOpen: w.opensTCS, ShelfDays: unsure(b, w.days),
		Q10: oneOf(b, 2.0, 3.0), MaxHeat: maybe(b, 50, units.Celsius(b.pick(25, 40))), Crushable: w.crushable,
	}
	if w.softens {
		storage.SoftensAt = optional.Of(units.Celsius(30))
	}
	if b.rarely() {
		storage.TCS, storage.Basis = trip.TCSUnknown, "common practice"
		storage.WaterActivity, storage.PH = maybe(b, 60, float64(b.pick(60, 99))/100), maybe(b, 60, float64(b.pick(35, 70))/10)
		storage.HeatTreated = b.chance(30)
	}
	return storage
}

func (b *builder) allergens(w ware) map[trip.Allergen]trip.Presence {
	states := map[trip.Allergen]trip.Presence{}
	for _, allergen := range trip.DeclaredAllergens() {
		states[allergen] = trip.Free
	}
	for _, allergen := range w.allergens {
		states[allergen] = trip.Contains
	}
	if !b.odd {
		return states
	}
	for range b.pick(0, 4) {
		allergen := oneOf(b, trip.KnownAllergens()...)
		if b.chance(50) {
			states[allergen] = oneOf(b, trip.MayContain, trip.NotKnown, trip.Contains)
		} else {
			delete(states, allergen)
		}
	}
	return states
}

func (b *builder) diets(w ware) map[trip.Diet]trip.Suitability {
	strictness := []trip.Diet{trip.Pescatarian, trip.Vegetarian, trip.Vegan}
	suits := slices.Index(strictness, w.diet)
	diets := map[trip.Diet]trip.Suitability{trip.NoPork: trip.Suits}
	for i, diet := range strictness {
		diets[diet] = trip.DoesNotSuit
		if i <= suits {
			diets[diet] = trip.Suits
		}
	}
	if w.diet == "" {
		diets[trip.NoPork] = trip.DoesNotSuit
	}
	if b.rarely() {
		diets[oneOf(b, trip.Halal, trip.LactoseFree, "low salt", trip.Vegan)] = oneOf(b, trip.SuitsUnknown, trip.DoesNotSuit)
	}
	return diets
}
