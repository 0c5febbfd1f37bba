package onward

import (
	"cmp"
	"slices"

	"sumpter/domain/cooking"
	"sumpter/domain/plan"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Fuel is what a cook group has of a fuel against what the dishes that are left
// of a leg burn, where it is not enough.
type Fuel struct {
	Leg   int // place in the legs of the rest
	From  int // first day that is cooked on it
	Group trip.GroupID
	Kind  trip.FuelKind
	Have  units.Mass // that burns: a canister in frost keeps some
	Need  units.Mass // without reserve
	Cold  []ColdDish // that can be made without flame, the hungriest first, as many as help
	Spare []SpareFuel
	Sold  trip.PointID // next point that sells fuel; 0: none
}

// ColdDish is a meal made cold instead.
type ColdDish struct {
	Day    int
	Meal   trip.Meal
	Recipe trip.RecipeID
	Saves  units.Mass
}

// SpareFuel is what another cook group has over its need and reserve.
type SpareFuel struct {
	Group trip.GroupID
	Mass  units.Mass
}

// Short is how much is missing.
func (f Fuel) Short() units.Mass { return f.Need - f.Have }

// fuelShort compares what is held with what is cooked from now on, leg by leg.
func (w *work) fuelShort(now *plan.Plan) []Fuel {
	var list []Fuel
	first := trip.LegOf(now.Legs, w.from)
	for leg := max(0, first); leg < len(now.Legs); leg++ {
		from := max(w.from, now.Legs[leg].FirstDay)
		all := w.fuelOn(now, leg, from)
		for i := range all {
			if f := &all[i]; f.Short() > 0 {
				f.Cold = w.coldDishes(now, f)
				f.Spare = spareOf(all, f, w.trip.Settings.FuelReserve)
				f.Sold = w.soldFrom(from)
				list = append(list, *f)
			}
		}
	}
	return list
}

// fuelOn gives what each group has and needs of each fuel on a leg.
func (w *work) fuelOn(now *plan.Plan, leg, from int) []Fuel {
	var list []Fuel
	at := func(group trip.GroupID, kind trip.FuelKind) *Fuel {
		i := slices.IndexFunc(list, func(f Fuel) bool { return f.Group == group && f.Kind == kind })
		if i < 0 {
			i = len(list)
			list = append(list, Fuel{Leg: leg, From: from, Group: group, Kind: kind})
		}
		return &list[i]
	}
	for _, held := range trail.On(now, w.done, from).Fuel {
		f := at(held.Group, held.Kind)
		keeps := cooking.ColdRest(w.trip.Days, now.Legs[leg], held.Kind)
		for _, container := range held.Held {
			f.Have += max(0, container.Left-keeps)
		}
	}
	for _, meal := range now.Cooking.Meals {
		if meal.Day >= from && meal.Day <= now.Legs[leg].LastDay && meal.FuelMass > 0 {
			at(meal.Group, meal.Fuel).Need += meal.FuelMass
		}
	}
	slices.SortFunc(list, func(a, b Fuel) int { return cmp.Or(cmp.Compare(a.Group, b.Group), cmp.Compare(a.Kind, b.Kind)) })
	return list
}

// coldDishes names meals of which every dish can be made cold, those that burn
// most first, until the fuel is enough or no more are left.
func (w *work) coldDishes(now *plan.Plan, f *Fuel) []ColdDish {
	var list []ColdDish
	for _, meal := range now.Cooking.Meals {
		if meal.Day < f.From || meal.Day > now.Legs[f.Leg].LastDay || meal.Group != f.Group || meal.Fuel != f.Kind || meal.FuelMass <= 0 {
			continue
		}
		if recipe := w.coldRecipe(now, &meal); recipe != 0 {
			list = append(list, ColdDish{Day: meal.Day, Meal: meal.Meal, Recipe: recipe, Saves: meal.FuelMass})
		}
	}
	slices.SortStableFunc(list, func(a, b ColdDish) int { return cmp.Compare(b.Saves, a.Saves) })
	saved := units.Mass(0)
	for i, dish := range list {
		if saved += dish.Saves; saved >= f.Short() {
			return list[:i+1]
		}
	}
	return list
}

// coldRecipe gives the first recipe of a meal whose every recipe can be made
// cold, else 0.
func (w *work) coldRecipe(now *plan.Plan, meal *cooking.Meal) trip.RecipeID {
	first := trip.RecipeID(0)
	for i := range now.Portions.Batches {
		b := &now.Portions.Batches[i]
		if b.Day != meal.Day || b.Meal != meal.Meal || b.Group != meal.Group {
			continue
		}
		recipe := w.recipes[b.Recipe]
		if recipe == nil || recipe.NeedsFlame() {
			return 0
		}
		if first == 0 {
			first = b.Recipe
		}
	}
	return first
}

func spareOf(all []Fuel, short *Fuel, reserve float64) []SpareFuel {
	var list []SpareFuel
	for _, f := range all {
		if over := f.Have - f.Need.Scale(1+max(0, reserve)); f.Group != short.Group && f.Kind == short.Kind && over > 0 {
			list = append(list, SpareFuel{f.Group, over})
		}
	}
	return list
}

// soldFrom is the next point from a day on that sells fuel, before the last day.
func (w *work) soldFrom(day int) trip.PointID {
	found, after := trip.PointID(0), len(w.trip.Days)
	for i := range w.trip.Points {
		p := &w.trip.Points[i]
		if p.SellsFuel && p.AfterDay >= day-1 && p.AfterDay < after {
			found, after = p.ID, p.AfterDay
		}
	}
	return found
}
