package trip

import (
	"slices"

	"sumpter/domain/optional"
	"sumpter/domain/prose"
)

func (c *checker) foodList() {
	if len(c.trip.Foods) > MaxFoods {
		return
	}
	for i := range c.trip.Foods {
		food := &c.trip.Foods[i]
		c.at("foods", i, int64(food.ID), food.Name)
		c.line("source", "source", food.Source)
		c.nutrients(&food.Per100g)
		if !(food.RefuseShare >= 0 && food.RefuseShare < 1) {
			c.add("refuse_share", prose.Say("refuse share is %g", food.RefuseShare), prose.Say("from 0 to below 1"), prose.Say("Enter the part that is not eaten, such as 0.25 for a quarter."))
		}
		if density, known := food.Density.Get(); known {
			c.within("bulk_g_per_ml", "bulk density", density, minDensity, maxDensity, "g/mL")
		}
		word(c, "form", "form", food.Form, Forms()...)
		c.packages(food.Packages)
		c.within("at_home_g", "stock at home", food.AtHome.Kilograms(), 0, maxStockKilograms, "kg")
		c.within("piece_g", "mass of a piece", food.PieceMass.Kilograms(), 0, maxPackageKilograms, "kg")
		c.line("aisle", "aisle", food.Aisle)
		c.storage(&food.Storage)
		c.allergens(food.Allergens)
		c.suitabilities(food.Diets)
		c.notes("notes", "notes", food.Notes)
	}
}

func (c *checker) nutrients(n *Nutrients) {
	c.within("per_100g.kcal", "energy per 100 g", float64(n.Kcal), 0, maxKcalPer100g, "kcal")
	sum := 0.0
	for _, part := range []struct {
		field, label string
		grams        optional.Value[float64]
		adds         bool
	}{
		{"per_100g.protein_g", "protein per 100 g", n.ProteinGrams, true},
		{"per_100g.fat_g", "fat per 100 g", n.FatGrams, true},
		{"per_100g.carb_g", "carbohydrate per 100 g", n.CarbGrams, true},
		{"per_100g.fibre_g", "fibre per 100 g", n.FibreGrams, n.CarbConvention == AvailableCarbohydrate},
		{"per_100g.sugar_g", "sugar per 100 g", n.SugarGrams, false},
	} {
		grams, known := part.grams.Get()
		if known && c.within(part.field, part.label, grams, 0, maxMacroSum, "g") && part.adds {
			sum += grams
		}
	}
	if sum > maxMacroSum {
		c.add("per_100g", prose.Say("protein, fat and carbohydrate of 100 g sum to %s", measure(sum, "g")), prose.Say("at most %d g", maxMacroSum), prose.Say("Check the label: the figures must be for 100 g."))
	}
	if sodium, known := n.SodiumMilligrams.Get(); known {
		c.within("per_100g.sodium_mg", "sodium per 100 g", sodium, 0, maxSodiumMilligrams, "mg")
	}
	word(c, "per_100g.carb_convention", "meaning of carbohydrate", n.CarbConvention, CarbConventions()...)
}

func (c *checker) packages(packages []Package) {
	if !c.count("packages", "packages", len(packages), 0, maxPackages) {
		return
	}
	for i := range packages {
		sold := &packages[i]
		c.enter("packages", i)
		c.above("net_g", "net mass of a package", sold.Net.Kilograms(), maxPackageKilograms, "kg")
		if price, known := sold.Price.Get(); known {
			c.price("price", "price", price)
		}
		c.line("shop", "shop", sold.Shop)
		if stock, known := sold.InStock.Get(); known {
			c.within("in_stock", "number of packages to be had", float64(stock), 0, maxInStock, "")
		}
		c.discount(sold)
		c.within("wrapping_g", "wrapping of a package", sold.Wrapping.Kilograms(), 0, maxTareKilograms, "kg")
		c.leave()
	}
}

// discount checks the price of many bought at once.
func (c *checker) discount(p *Package) {
	price, known := p.ManyPrice.Get()
	switch {
	case p.ManyFrom == 0 && !known:
		return
	case !known:
		c.add("many_price", prose.Say("from %d packages on no price is given", p.ManyFrom), prose.Say("a price of one package"), prose.Say("Enter what each costs then, or take the number out."))
	case !p.Price.Known():
		c.add("many_price", prose.Say("a price of many is given and none of one"), prose.Say("a price of one package as well"), prose.Say("Enter the price of one package."))
	default:
		c.price("many_price", "price of one among many", price)
	}
	c.within("many_from", "number from which the price is lower", float64(p.ManyFrom), 2, maxManyFrom, "")
}

func (c *checker) storage(s *Storage) {
	word(c, "storage.tcs", "need of cooling for safety", s.TCS, TCSStates()...)
	if activity, known := s.WaterActivity.Get(); known {
		c.within("storage.water_activity", "water activity", activity, 0, 1, "")
	}
	if ph, known := s.PH.Get(); known {
		c.within("storage.ph", "pH", ph, 0, 14, "")
	}
	if days, known := s.ShelfDays.Get(); known {
		c.within("storage.shelf_days_20c", "shelf life", days, 0, maxShelfDays, "days")
	}
	c.within("storage.q10", "Q10", s.Q10, minQ10, maxQ10, "")
	if heat, known := s.MaxHeat.Get(); known {
		c.within("storage.max_heat_c", "heat it bears", float64(heat), minHeat, maxHeat, "°C")
	}
	if heat, known := s.SoftensAt.Get(); known {
		c.within("storage.softens_c", "softening temperature", float64(heat), minHeat, maxHeat, "°C")
	}
	c.line("storage.basis", "basis", s.Basis)
}

func (c *checker) allergens(states map[Allergen]Presence) {
	if !c.count("allergens", "allergens", len(states), 0, maxFacts) {
		return
	}
	for _, allergen := range sortedKeys(states) {
		c.fact("allergens", "allergen", string(allergen))
		word(c, "allergens."+shown(string(allergen)), "state of the allergen", states[allergen], Presences()...)
	}
}

func (c *checker) suitabilities(states map[Diet]Suitability) {
	if !c.count("diets", "diets", len(states), 0, maxFacts) {
		return
	}
	for _, diet := range sortedKeys(states) {
		c.fact("diets", "diet", string(diet))
		word(c, "diets."+shown(string(diet)), "state of the diet", states[diet], Suitabilities()...)
	}
}

func sortedKeys[K ~string, V any](m map[K]V) []K {
	keys := make([]K, 0, len(m))
	for key := range m {
		keys = append(keys, key)
	}
	slices.Sort(keys)
	return keys
}
