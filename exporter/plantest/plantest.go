// Package plantest makes small plans by hand for the tests of the papers.
// Every figure in it is invented and simple to add up in the head.
package plantest

import (
	"strings"

	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/cooking"
	"sumpter/domain/findings"
	"sumpter/domain/menu"
	"sumpter/domain/needs"
	"sumpter/domain/optional"
	"sumpter/domain/packing"
	"sumpter/domain/plan"
	"sumpter/domain/portions"
	"sumpter/domain/prose"
	"sumpter/domain/resupply"
	"sumpter/domain/shopping"
	"sumpter/domain/spoilage"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Names that must come through every paper as they are: one that looks like a
// formula, one in letters of East Asia, one with the signs of CSV and XML.
const (
	FormulaName = "=1+1"
	WideName    = "美咲"
	SignsName   = `Jo "the <&> cook", O'Neill`
)

// Start is the date of day 1.
const Start = units.Date(20654) // 2026-07-20, a Monday

// Empty is the plan of a trip in which nothing has been entered.
func Empty() *plan.Plan {
	return &plan.Plan{Trip: &trip.Trip{Units: units.Metric, Currency: "EUR", Settings: trip.DefaultSettings()}}
}

// Small is the plan of three people over three days with a box after day 2.
// Member 3 leaves after day 2.
func Small() *plan.Plan {
	t := smallTrip()
	return &plan.Plan{
		Trip: t, Legs: t.Legs(),
		Needs: smallNeeds(), Menu: smallMenu(), Portions: smallPortions(),
		Spoilage: spoilage.Result{Fates: []spoilage.Fate{
			{Day: 1, Meal: trip.Dinner, Group: 1, Food: 1, Verdict: spoilage.Safe, Why: prose.Say("dry"), QualityUsed: 0.1, QualityKnown: true, DaysLeft: 300, LatestDay: 3},
			{Day: 3, Meal: trip.Dinner, Group: 1, Food: 2, Verdict: spoilage.NotKnown, Why: prose.Say("nobody said how it keeps")},
		}},
		Cooking: smallCooking(), Bags: smallBags(),
		Resupply: resupply.Result{Boxes: []resupply.Box{{
			Point: 1, Leg: 1, Bags: []string{"d3 dinner g1 r1 b1 pot 1"}, Fuel: []string{"leg2 group1 gas mix 1"}, FuelBoughtThere: true,
			Mass: 510 * units.Gram, Volume: units.Litre, Fees: 350, PickUp: Start + 1, PostFrom: Start - 20, PostBy: Start - 10, SendOn: Start - 10, Posted: true,
			Parcels: []resupply.Parcel{{Bags: []string{"d3 dinner g1 r1 b1 pot 1"}, Mass: 510 * units.Gram, Volume: units.Litre}},
		}}},
		Carry: smallCarry(), Shopping: smallShopping(), Packing: smallPacking(),
		Rounds: 2, Settled: true, Change: 0.004,
		Findings: []findings.Finding{
			{Severity: findings.Note, Stage: findings.Shopping, Code: "no-price", Place: findings.Place{Food: 2}, What: prose.Say("The price of peanuts is unknown."), Remedy: prose.Say("Enter it.")},
			{Severity: findings.MustFix, Stage: findings.Menu, Code: "allergen", Place: findings.Place{Day: 1, Meal: trip.Dinner, Group: 1, Member: 2}, What: prose.Say("Peanuts for an allergic member."), Why: prose.Say("contains"), Remedy: prose.Say("Swap them.")},
		},
	}
}

func smallTrip() *trip.Trip {
	day := trip.Day{Name: "Hut to lake", Distance: 12000, Ascent: 500, Meals: []trip.Meal{trip.Dinner, trip.Snack}}
	dry := day
	dry.DryCamp, dry.NoFlame = true, true
	settings := trip.DefaultSettings()
	settings.Budget = optional.Of(units.Money(5000))
	settings.ShoppingDay, settings.PackingNight = Start-14, Start-12
	return &trip.Trip{
		Progress: trip.Progress{Replans: []trip.Replan{{
			Day: 2, Moves: []trip.DishMove{{Dish: "d1 dinner g1 r1 b1", Day: 2, Meal: trip.Lunch, Group: 1}},
			HandOvers: []trip.HandOver{{Bag: "bag", From: 1, To: 2}},
		}}},
		Title: "Three & a box", Identity: "three", Start: Start, Units: units.Metric, Currency: "EUR", Settings: settings,
		Groups: []trip.CookGroup{{ID: 1, Name: "North pot"}},
		Crew: []trip.Member{
			{ID: 1, Name: FormulaName, Group: 1, OwnKit: 8 * units.Kilogram},
			{ID: 2, Name: WideName, Group: 1, OwnKit: 7 * units.Kilogram, Allergies: []trip.Allergy{{Allergen: trip.Peanuts, Severe: true}}, Medicine: "pen in the top pocket"},
			{ID: 3, Name: SignsName, Group: 1, OwnKit: 6 * units.Kilogram, LastDay: 2, Diets: []trip.Diet{trip.Vegan}},
		},
		Days: []trip.Day{day, dry, day},
		Foods: []trip.Food{
			{ID: 1, Name: "rice", Aisle: "grains", Packages: []trip.Package{{Net: 500 * units.Gram, Price: optional.Of(units.Money(199)), Shop: "@market"}}},
			{ID: 2, Name: "+peanuts", Packages: []trip.Package{{Net: 200 * units.Gram}}},
		},
		Recipes: []trip.Recipe{{ID: 1, Name: "Rice pot", Ingredients: []trip.Ingredient{{Food: 1}, {Food: 2}}, Simmer: 12, Soak: 5, Method: []string{"Boil the water.", "Stir in the rice."}}},
		Gear:    []trip.Gear{{ID: 1, Name: "stove", Kind: trip.Stove, Mass: 400 * units.Gram}},
		Points:  []trip.ResupplyPoint{{ID: 1, Name: "Valley post", Kind: trip.PostOffice, AfterDay: 2, Use: true, Address: "To be called for, Valley"}},
	}
}

func smallNeeds() needs.Result {
	day := needs.Day{Present: true, Kcal: 3000, Low: 2700, High: 3300, FromPacks: 1, TargetKcal: 2800, ProteinGrams: 80}
	return needs.Result{Members: []needs.Member{
		{Member: 1, RestingKcal: 1600, Days: []needs.Day{day, day, day}},
		{Member: 2, RestingKcal: 1400, Days: []needs.Day{day, day, day}},
		{Member: 3, RestingKcal: 1500, Days: []needs.Day{day, day, {}}},
	}}
}

func smallMenu() menu.Result {
	serving := func(id trip.MemberID, food trip.FoodID, swapped bool) menu.Serving {
		return menu.Serving{Member: id, Parts: []menu.Part{{Ingredient: 0, Food: 1}, {Ingredient: 1, Food: food, Swapped: swapped}}}
	}
	slot := func(day int, eaters ...trip.MemberID) menu.Slot {
		batches := []menu.Batch{{}}
		for _, id := range eaters {
			if id == 2 {
				batches = append(batches, menu.Batch{Servings: []menu.Serving{serving(2, 1, true)}})
				continue
			}
			batches[0].Servings = append(batches[0].Servings, serving(id, 2, false))
		}
		return menu.Slot{Day: day, Meal: trip.Dinner, Group: 1, Eaters: eaters, Proposed: day == 2, Dishes: []menu.Dish{{Recipe: 1, Batches: batches}}}
	}
	return menu.Result{Slots: []menu.Slot{slot(1, 1, 2, 3), slot(2, 1, 2, 3), slot(3, 1, 2)}}
}

func smallPortions() portions.Result {
	portion := func(id trip.MemberID) portions.Portion {
		return portions.Portion{Member: id, Scale: 1, Kcal: 700, Amounts: []portions.Amount{{Food: 1, Place: trip.InPot, Mass: 150 * units.Gram}}}
	}
	batch := func(day, place int, ids ...trip.MemberID) portions.Batch {
		b := portions.Batch{Day: day, Meal: trip.Dinner, Group: 1, Batch: place, Recipe: 1, Water: units.Volume(len(ids)) * 300 * units.Millilitre}
		for _, id := range ids {
			b.Portions = append(b.Portions, portion(id))
		}
		b.Totals = []portions.Amount{{Food: 1, Place: trip.InPot, Mass: units.Mass(len(ids)) * 150 * units.Gram}}
		if place == 0 {
			b.Totals = append(b.Totals, portions.Amount{Food: 2, Place: trip.AtBowl, Mass: units.Mass(len(ids)) * 40 * units.Gram})
		}
		return b
	}
	day := portions.DayIntake{Food: 700 * units.Gram, Kcal: 2660, ProteinGrams: 75, FatGrams: 90, CarbGrams: 350, FibreGrams: 30, SodiumMilligrams: 2000, UnknownFibre: 1}
	return portions.Result{
		Batches: []portions.Batch{batch(1, 0, 1, 3), batch(1, 1, 2), batch(2, 0, 1, 3), batch(2, 1, 2), batch(3, 0, 1), batch(3, 1, 2)},
		Intakes: []portions.Intake{
			{Member: 1, Days: []portions.DayIntake{day, day, day}},
			{Member: 2, Days: []portions.DayIntake{day, day, day}},
			{Member: 3, Days: []portions.DayIntake{day, day, {}}},
		},
	}
}

func smallCooking() cooking.Result {
	return cooking.Result{
		Meals: []cooking.Meal{
			{Day: 1, Meal: trip.Dinner, Group: 1, Height: 1200, BoilsAt: 96, FoodWater: 900 * units.Millilitre, Boils: 2, Minutes: 40, SimmerMinutes: 14, Fuel: trip.GasMix, FuelMass: 30 * units.Gram, FuelLow: 20 * units.Gram, FuelHigh: 45 * units.Gram},
			{Day: 2, Meal: trip.Dinner, Group: 1, Height: 1500, BoilsAt: 95, FoodWater: 900 * units.Millilitre, Cold: true},
		},
		Fuel: []cooking.LegFuel{
			{Leg: 0, Group: 1, Fuel: trip.GasMix, Needed: 90 * units.Gram, Containers: []cooking.Container{{Key: "leg1 group1 gas mix 1", Name: "small canister", Fuel: 100 * units.Gram, Empty: 80 * units.Gram}}},
			{Leg: 1, Group: 1, Fuel: trip.GasMix, Needed: 40 * units.Gram, Containers: []cooking.Container{{Key: "leg2 group1 gas mix 1", Name: "small canister", Fuel: 100 * units.Gram, Empty: 80 * units.Gram}}},
		},
		Water: []cooking.Water{
			{Day: 1, Member: 1, Drinking: 4 * units.Litre}, {Day: 1, Member: 2, Drinking: 3 * units.Litre}, {Day: 1, Member: 3, Drinking: 3500 * units.Millilitre},
			{Day: 2, Member: 1, Drinking: 4 * units.Litre, CarriedDrink: 1200 * units.Millilitre},
		},
	}
}

func smallBags() bags.Result {
	bag := func(key, code string, day, eaters int, member trip.MemberID, contents ...bags.Content) bags.Bag {
		b := bags.Bag{Key: key, Code: code, Day: day, Meal: trip.Dinner, Group: 1, Member: member, Recipe: 1, Place: trip.InPot, Eaters: eaters, Leg: (day - 1) / 2, Part: 1, Parts: 1, Type: "1 L bag",
			Contents: contents, Tare: 10 * units.Gram, Volume: units.Litre, VolumeKnown: true, Water: units.Volume(eaters) * 300 * units.Millilitre, Minutes: 14, Soak: 5}
		for _, content := range contents {
			b.Food += content.Mass
			if content.Food == 2 {
				b.Allergens = []bags.Allergen{{Allergen: trip.Peanuts, Presence: trip.Contains}, {Allergen: trip.Soybeans, Presence: trip.NotKnown}}
			}
		}
		b.Kind, b.LastDay = bags.MealBag, day
		b.Uses = []bags.Use{{Day: day, Meal: b.Meal, Recipe: b.Recipe, Batch: 1, Place: b.Place, Contents: contents, Water: b.Water}}
		if strings.Contains(key, " b2 ") {
			b.Uses[0].Batch = 2
		}
		return b
	}
	return bags.Result{Bags: []bags.Bag{
		bag("d1 dinner g1 r1 b1 pot 1", "1D-A", 1, 2, 0, bags.Content{Food: 1, Mass: 300 * units.Gram}, bags.Content{Food: 2, Mass: 80 * units.Gram}),
		bag("d1 dinner g1 r1 b2 m2 pot 1", "1D-B", 1, 1, 2, bags.Content{Food: 1, Mass: 150 * units.Gram}),
		bag("d3 dinner g1 r1 b1 pot 1", "3D-A", 3, 2, 0, bags.Content{Food: 1, Mass: 500 * units.Gram}),
	}}
}

func smallCarry() carry.Result {
	day := func(own, food units.Mass) carry.Day {
		d := carry.Day{Present: true, OwnKit: own * units.Kilogram, Food: food * units.Gram}
		d.Load = d.OwnKit + d.Food
		d.Share = float64(d.Load) / float64(50*units.Kilogram)
		return d
	}
	dry := day(8, 0)
	dry.Water, dry.ToCook = 2*units.Kilogram, 800*units.Gram
	return carry.Result{
		Stages: []carry.Stage{
			{Leg: 0, FirstDay: 1, LastDay: 2, Worst: 0.1678, WorstBound: 0.16, Mean: 0.1678, MeanBound: 0.16, Fair: []float64{0.15, 0.14}, Items: []carry.Item{
				{Kind: carry.BagItem, Key: "d1 dinner g1 r1 b1 pot 1", Carrier: 1, Why: prose.Say("least loaded")},
				{Kind: carry.BagItem, Key: "d1 dinner g1 r1 b2 m2 pot 1", Carrier: 2, Why: prose.Say("her own")},
				{Kind: carry.FuelItem, Key: "leg1 group1 gas mix 1", Carrier: 3, Why: prose.Say("evens out")},
				{Kind: carry.GearItem, Key: "1", Carrier: 1, Why: prose.Say("evens out")},
			}},
			{Leg: 1, FirstDay: 3, LastDay: 3, Worst: 0.17, WorstBound: 0.17, Mean: 0.17, MeanBound: 0.17, Proven: true, HandOvers: 1, Fair: []float64{0.16}, Items: []carry.Item{
				{Kind: carry.BagItem, Key: "d3 dinner g1 r1 b1 pot 1", Carrier: 1, From: 2, Mass: 510 * units.Gram, Why: prose.Say("least loaded")},
			}},
		},
		Members: []carry.Member{
			{Member: 1, Capability: 50 * units.Kilogram, Days: []carry.Day{day(8, 390), dry, day(8, 510)}},
			{Member: 2, Capability: 50 * units.Kilogram, Days: []carry.Day{day(7, 160), day(7, 0), day(7, 0)}},
			{Member: 3, Capability: 50 * units.Kilogram, Days: []carry.Day{day(6, 0), day(6, 0), {}}},
		},
	}
}

func smallShopping() shopping.Result {
	return shopping.Result{
		Lines: []shopping.Line{
			{Food: 1, Deadline: Start - 14, Needed: 950 * units.Gram, FromHome: 0, Bought: 1000 * units.Gram, Leftover: 50 * units.Gram,
				Buys: []shopping.Buy{{Package: 0, Count: 2, Net: 500 * units.Gram, Shop: "@market", Each: optional.Of(units.Money(199))}}, Cost: 398, CostKnown: true, BestProven: true},
			{Food: 2, Deadline: Start - 14, Needed: 80 * units.Gram, FromHome: 30 * units.Gram, Bought: 200 * units.Gram, Leftover: 150 * units.Gram,
				Buys: []shopping.Buy{{Package: 0, Count: 1, Net: 200 * units.Gram}}},
		},
		Fuel: []shopping.FuelLine{
			{Name: "small canister", Fuel: trip.GasMix, Count: 1, Cost: 600, CostKnown: true},
			{Name: "small canister", Fuel: trip.GasMix, Count: 1, Point: 1, Cost: 600, CostKnown: true},
		},
		Cost: 1598, Fees: 350, Unpriced: 1, PerPersonDay: 244,
	}
}

func smallPacking() packing.Result {
	return packing.Result{
		Rounds: []packing.Round{
			{Name: prose.Say("without peanuts"), FreeOf: []trip.Allergen{trip.Peanuts}, CleanFirst: true, Steps: []packing.Step{
				{Station: packing.WeighDry, Bag: "d1 dinner g1 r1 b2 m2 pot 1"}, {Station: packing.Label, Bag: "d1 dinner g1 r1 b2 m2 pot 1"},
			}},
			{Name: prose.Say("all the rest"), CleanFirst: true, Steps: []packing.Step{{Station: packing.WeighDry, Bag: "d1 dinner g1 r1 b1 pot 1"}}},
		},
		Bulk: []packing.Bulk{
			{Round: 0, Food: 1, Total: 150 * units.Gram, Into: []packing.Weighing{{Bag: "d1 dinner g1 r1 b2 m2 pot 1", Mass: 150 * units.Gram}}},
			{Round: 1, Food: 1, Total: 800 * units.Gram, Into: []packing.Weighing{{Bag: "d1 dinner g1 r1 b1 pot 1", Mass: 300 * units.Gram}, {Bag: "d3 dinner g1 r1 b1 pot 1", Mass: 500 * units.Gram}}},
		},
		Minutes: 25,
	}
}
