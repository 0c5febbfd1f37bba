package recipes

import (
	"sumpter/domain/menu"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// kitchen works out what the recipes of one trip give and whom they suit, and
// keeps it: a trip in the document never changes.
type kitchen struct {
	trip   *trip.Trip
	crew   *menu.Taster
	diets  *menu.Taster // one eater for each known diet
	listed map[trip.RecipeID]*facts
	tasted map[trip.RecipeID]*tasting

	counted  bool
	refusing int // recipes that cannot be served to everybody
}

// tasting is how a recipe turns out for the crew.
type tasting struct {
	tried   []menu.Tasting // by member
	refused []menu.Tasting
}

// facts of a recipe, as written, for one standard eater.
type facts struct {
	kcal    units.Kcal
	mass    units.Mass // as carried
	protein sum
	fat     sum
	carbs   sum // fibre not included
	fibre   sum
	sodium  sum // mg
	worst   map[trip.Allergen]trip.Presence
	diets   []trip.Diet // suited, after swaps
}

// sum of a nutrient; unknown counts the foods whose figure nobody knows, so
// that the sum is a lower bound.
type sum struct {
	amount  float64
	unknown int
}

func (s *sum) add(per100g interface{ Get() (float64, bool) }, eaten float64) {
	if value, known := per100g.Get(); known {
		s.amount += value * eaten / 100
		return
	}
	s.unknown++
}

func newKitchen(t *trip.Trip) *kitchen {
	return &kitchen{trip: t, listed: map[trip.RecipeID]*facts{}, tasted: map[trip.RecipeID]*tasting{}}
}

// of gives the kitchen of a trip, this one if it is the same.
func (k *kitchen) of(t *trip.Trip) *kitchen {
	if k.trip == t {
		return k
	}
	return newKitchen(t)
}

// facts of a recipe, worked out when first asked for.
func (k *kitchen) facts(recipe *trip.Recipe) *facts {
	if known := k.listed[recipe.ID]; known != nil {
		return known
	}
	if k.diets == nil {
		k.diets = menu.NewTaster(dieters(k.trip))
	}
	f := &facts{worst: map[trip.Allergen]trip.Presence{}}
	for i := range recipe.Ingredients {
		f.take(k.trip.Food(recipe.Ingredients[i].Food), recipe.Ingredients[i].Amount)
	}
	for i, one := range k.diets.Taste(recipe) {
		if one.Served {
			f.diets = append(f.diets, trip.KnownDiets()[i])
		}
	}
	k.listed[recipe.ID] = f
	return f
}

func (k *kitchen) taster() *menu.Taster {
	if k.crew == nil {
		k.crew = menu.NewTaster(k.trip)
	}
	return k.crew
}

// waiting counts the recipes that cannot be served to everybody. The window
// asks after every edit of any screen, so it is counted once for each trip.
func (k *kitchen) waiting() int {
	if !k.counted {
		k.counted = true
		for i := range k.trip.Recipes {
			if !k.taster().ServesAll(&k.trip.Recipes[i]) {
				k.refusing++
			}
		}
	}
	return k.refusing
}

// taste tries a recipe on the crew, when first asked for.
func (k *kitchen) taste(recipe *trip.Recipe) *tasting {
	if known := k.tasted[recipe.ID]; known != nil {
		return known
	}
	t := &tasting{tried: k.taster().Taste(recipe)}
	for _, one := range t.tried {
		if !one.Served {
			t.refused = append(t.refused, one)
		}
	}
	k.tasted[recipe.ID] = t
	return t
}

// take adds a carried mass of a food.
func (f *facts) take(food *trip.Food, carried units.Mass) {
	if food == nil {
		return
	}
	eaten, n := food.EatenGrams(carried), &food.Per100g
	f.mass += carried
	f.kcal += food.Kcal(carried)
	f.protein.add(n.ProteinGrams, eaten)
	f.fat.add(n.FatGrams, eaten)
	f.fibre.add(n.FibreGrams, eaten)
	f.sodium.add(n.SodiumMilligrams, eaten)
	f.addCarbs(n, eaten)
	for _, allergen := range trip.DeclaredAllergens() {
		before, had := f.worst[allergen]
		if !had {
			before = trip.Free
		}
		f.worst[allergen] = trip.Worse(before, food.Presence(allergen))
	}
}

// addCarbs takes fibre out where the figure holds it.
func (f *facts) addCarbs(n *trip.Nutrients, eaten float64) {
	carbs, known := n.CarbGrams.Get()
	fibre, fibreKnown := n.FibreGrams.Get()
	switch {
	case !known, n.CarbConvention == trip.TotalCarbohydrate && !fibreKnown:
		f.carbs.unknown++
	case n.CarbConvention == trip.TotalCarbohydrate:
		f.carbs.amount += max(0, carbs-fibre) * eaten / 100
	default:
		f.carbs.amount += carbs * eaten / 100
	}
}

// density is kcal in a gram carried.
func (f *facts) density() float64 {
	if f.mass == 0 {
		return 0
	}
	return float64(f.kcal) / f.mass.Grams()
}

// with lists the declared allergens of a state.
func (f *facts) with(state trip.Presence) []trip.Allergen {
	var list []trip.Allergen
	for _, allergen := range trip.DeclaredAllergens() {
		if f.worst[allergen] == state {
			list = append(list, allergen)
		}
	}
	return list
}

// dieters is the trip with one eater for each diet the program knows, to try
// recipes on.
func dieters(t *trip.Trip) *trip.Trip {
	c := *t
	c.Crew = nil
	for i, diet := range trip.KnownDiets() {
		c.Crew = append(c.Crew, trip.Member{ID: trip.MemberID(i + 1), Name: string(diet), Diets: []trip.Diet{diet}})
	}
	return &c
}

// minutes from cold water to the bowl without the boil, which hangs on stove
// and height.
func minutes(recipe *trip.Recipe) float64 { return float64(recipe.Simmer + recipe.Soak) }
