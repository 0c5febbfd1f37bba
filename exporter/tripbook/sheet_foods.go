package tripbook

import (
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func foodSheet() sheet {
	type R = trip.Food
	type maybeFloat = optional.Value[float64]
	grams := maybe(number[float64](same("g")))
	t := &table[R]{
		name: sheetFoods, list: "foods", names: func(s *scope) *names { return &s.foods },
		about: "What is bought. Figures are for 100 g of what is eaten, as on the label. Leave empty what is not known: unknown never counts as safe.",
		fresh: func() R {
			return R{Form: trip.Dry, Storage: trip.Storage{TCS: trip.TCSUnknown, TCSWhenOpen: true, Q10: 2}}
		},
		columns: []column[R]{
			col("Name", "name", func(f *R) *string { return &f.Name }, line(), "A name that no other food has.").must().wide(28),
			col("Form", "form", func(f *R) *trip.Form { return &f.Form }, word(trip.Forms()), "How it behaves in a bag. Powder is double-bagged, liquid goes into a bottle, piece is counted. Empty: dry.").wide(9),
			col("Energy per 100 g", "per_100g.kcal", func(f *R) *units.Kcal { return &f.Per100g.Kcal }, number[units.Kcal](energy), "Kilocalories, or kJ where you write kJ behind.").must(),
			col("Protein per 100 g", "per_100g.protein_g", func(f *R) *maybeFloat { return &f.Per100g.ProteinGrams }, grams, "Empty: not known."),
			col("Fat per 100 g", "per_100g.fat_g", func(f *R) *maybeFloat { return &f.Per100g.FatGrams }, grams, "Empty: not known."),
			col("Carbohydrate per 100 g", "per_100g.carb_g", func(f *R) *maybeFloat { return &f.Per100g.CarbGrams }, grams, "Empty: not known. The next column says what it includes."),
			col("Carbohydrate is", "per_100g.carb_convention", func(f *R) *trip.CarbConvention { return &f.Per100g.CarbConvention }, word(trip.CarbConventions()), "Total includes fibre (US labels); available does not (EU labels).").must().wide(11),
			col("Fibre per 100 g", "per_100g.fibre_g", func(f *R) *maybeFloat { return &f.Per100g.FibreGrams }, grams, "Empty: not known."),
			col("Sugar per 100 g", "per_100g.sugar_g", func(f *R) *maybeFloat { return &f.Per100g.SugarGrams }, grams, "Empty: not known."),
			col("Sodium per 100 g", "per_100g.sodium_mg", func(f *R) *maybeFloat { return &f.Per100g.SodiumMilligrams }, maybe(number[float64](sodium)), "EU labels give salt: 1 g of salt has 400 mg of sodium."),
			col("Refuse", "refuse_share", func(f *R) *float64 { return &f.RefuseShare }, number[float64](share), "Part of what is carried that is not eaten: peel, shell."),
			col("Density", "bulk_g_per_ml", func(f *R) *maybeFloat { return &f.Density }, maybe(number[float64](same("g/mL"))), "Grams in a millilitre as poured, air between pieces included. Empty: not known; more room is kept."),
			col("At home", "at_home_g", func(f *R) *units.Mass { return &f.AtHome }, exact[units.Mass](foodMass), "Already in the cupboard."),
			col("Aisle", "aisle", func(f *R) *string { return &f.Aisle }, line(), "Where it stands in the shop: sorts the shopping list.").wide(14),
			col("Stays in its package", "packed_as_bought", func(f *R) *bool { return &f.PackedAsBought }, yesNo(), "Tins and bars that are not opened before the meal.").wide(9),
			col("Piece", "piece_g", func(f *R) *units.Mass { return &f.PieceMass }, exact[units.Mass](foodMass), "Mass of one bar, tin or wrap: portions are then whole pieces. Empty or 0: any amount."),
			col("Halves", "piece_halves", func(f *R) *bool { return &f.PieceHalves }, yesNo(), "A piece may be halved.").wide(9),
			col("Must stay cold", "storage.tcs", func(f *R) *trip.TCS { return &f.Storage.TCS }, word(trip.TCSStates()), "Needs time or temperature control for safety (label: keep refrigerated). Unknown counts as yes.").wide(9),
			col("Must stay cold once opened", "storage.tcs_when_open", func(f *R) *bool { return &f.Storage.TCSWhenOpen }, yesNo(), "Label: refrigerate after opening. Empty counts as yes.").wide(9),
			col("Water activity", "storage.water_activity", func(f *R) *maybeFloat { return &f.Storage.WaterActivity }, maybe(number[float64](same(""))), "0 to 1, from the maker: with the next two it tells whether a food of unknown need must stay cold. Empty: not known.").wide(9),
			col("pH", "storage.ph", func(f *R) *maybeFloat { return &f.Storage.PH }, maybe(number[float64](same(""))), "From the maker. Empty: not known."),
			col("Heated in its package", "storage.heat_treated", func(f *R) *bool { return &f.Storage.HeatTreated }, yesNo(), "Heat-treated and sealed so that nothing can get in again: tins, retort pouches.").wide(9),
			col("Keeps for", "storage.shelf_days_20c", func(f *R) *maybeFloat { return &f.Storage.ShelfDays }, maybe(number[float64](same("days"))), "Days of good quality at 20 °C (68 °F), sealed."),
			col("Faster per 10 K", "storage.q10", func(f *R) *float64 { return &f.Storage.Q10 }, number[float64](same("")), "How much faster quality goes when it is 10 K (18 °F) warmer. 2 is usual, 3 for what is rich in fat. Empty: 2.").wide(8),
			col("Good up to", "storage.max_heat_c", func(f *R) *optional.Value[units.Celsius] { return &f.Storage.MaxHeat }, maybe(number[units.Celsius](temperature)), "Above this the stated days do not hold."),
			col("Softens from", "storage.softens_c", func(f *R) *optional.Value[units.Celsius] { return &f.Storage.SoftensAt }, maybe(number[units.Celsius](temperature)), "Chocolate, cheese: melts from here."),
			col("Crushable", "storage.crushable", func(f *R) *bool { return &f.Storage.Crushable }, yesNo(), "Crackers, crisps: packed on top.").wide(9),
			col("Storage facts from", "storage.basis", func(f *R) *string { return &f.Storage.Basis }, line(), "Label, table, or common practice.").wide(18),
			col("Figures from", "source", func(f *R) *string { return &f.Source }, line(), "Label, or the table and number.").wide(18),
			col("Notes", "notes", func(f *R) *string { return &f.Notes }, notes(), "Anything."),
			idColumn(func(f *R) *trip.FoodID { return &f.ID }),
		},
	}
	t.from, t.into = plainList(t.list, func(t *trip.Trip) *[]R { return &t.Foods })
	return t
}

// packageRow is one way a food is sold.
type packageRow struct {
	food trip.FoodID
	trip.Package
}

func packageSheet() sheet {
	type R = packageRow
	return &table[R]{
		name: sheetPackages, list: "packages",
		about: "In which sizes the foods are sold. One row a package; a food may have several.",
		fresh: func() R { return R{} },
		from: func(t *trip.Trip) []R {
			var rows []R
			for i := range t.Foods {
				for _, sold := range t.Foods[i].Packages {
					rows = append(rows, R{t.Foods[i].ID, sold})
				}
			}
			return rows
		},
		into: func(g *gathered[R]) {
			places := placesOf(g.trip.Foods, func(f *trip.Food) trip.FoodID { return f.ID })
			for i := range g.rows {
				place, ok := places[g.rows[i].food]
				if !ok {
					continue // its food is a fault already
				}
				food := &g.trip.Foods[place]
				g.comes(i, "foods[%d].packages[%d]", place, len(food.Packages))
				food.Packages = append(food.Packages, g.rows[i].Package)
			}
		},
		columns: []column[R]{
			col("Food", "food", func(p *R) *trip.FoodID { return &p.food }, toFood(), "A food of sheet Foods.").must().wide(28),
			col("Net", "net_g", func(p *R) *units.Mass { return &p.Net }, exact[units.Mass](foodMass), "What is in it.").must(),
			col("Price", "price", func(p *R) *optional.Value[units.Money] { return &p.Price }, maybe(money()), "In the trip's currency. Empty: not known."),
			col("Shop", "shop", func(p *R) *string { return &p.Shop }, line(), "Where it is sold.").wide(20),
			col("In stock", "in_stock", func(p *R) *optional.Value[int] { return &p.InStock }, maybe(count()), "How many there are to be had. Empty: enough."),
			col("Many from", "many_from", func(p *R) *int { return &p.ManyFrom }, count(), "From so many bought at once each costs less. Empty: no discount.").wide(8),
			col("Price of many", "many_price", func(p *R) *optional.Value[units.Money] { return &p.ManyPrice }, maybe(money()), "Of one package, among so many."),
			col("Wrapping", "wrapping_g", func(p *R) *units.Mass { return &p.Wrapping }, exact[units.Mass](foodMass), "Mass of tin or wrapper, where the food stays in it."),
		},
	}
}

// placesOf gives the place of each ID in a list.
func placesOf[T any, ID comparable](list []T, id func(*T) ID) map[ID]int {
	places := make(map[ID]int, len(list))
	for i := range list {
		places[id(&list[i])] = i
	}
	return places
}
