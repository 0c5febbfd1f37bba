package trip_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func TestFoodFaults(t *testing.T) {
	food := func(spoil func(*trip.Food)) func(*trip.Trip) { return func(t *trip.Trip) { spoil(&t.Foods[0]) } }
	number := func(value float64) optional.Value[float64] { return optional.Of(value) }
	checkFaults(t, []fault{
		{"kilojoules as kcal", food(func(f *trip.Food) { f.Per100g.Kcal = 1586 }), "foods 1 per_100g.kcal", "1586"},
		{"energy not a number", food(func(f *trip.Food) { f.Per100g.Kcal = units.Kcal(math.NaN()) }), "foods 1 per_100g.kcal", "NaN"},
		{"negative protein", food(func(f *trip.Food) { f.Per100g.ProteinGrams = number(-1) }), "foods 1 per_100g.protein_g", "-1"},
		{"more than 100 g in 100 g", food(func(f *trip.Food) {
			f.Per100g.ProteinGrams, f.Per100g.FatGrams, f.Per100g.CarbGrams = number(50), number(50), number(50)
		}), "foods 1 per_100g", "150 g"},
		{"salt beyond salt", food(func(f *trip.Food) { f.Per100g.SodiumMilligrams = number(50_000) }), "foods 1 per_100g.sodium_mg", "50000"},
		{"no carbohydrate convention", food(func(f *trip.Food) { f.Per100g.CarbConvention = "" }), "foods 1 per_100g.carb_convention", `""`},
		{"all refuse", food(func(f *trip.Food) { f.RefuseShare = 1 }), "foods 1 refuse_share", "1"},
		{"refuse in per cent", food(func(f *trip.Food) { f.RefuseShare = 25 }), "foods 1 refuse_share", "25"},
		{"refuse not a number", food(func(f *trip.Food) { f.RefuseShare = math.NaN() }), "foods 1 refuse_share", "NaN"},
		{"density of nothing", food(func(f *trip.Food) { f.Density = number(0) }), "foods 1 bulk_g_per_ml", "0"},
		{"unknown form", food(func(f *trip.Food) { f.Form = "gas" }), "foods 1 form", `"gas"`},
		{"empty package", food(func(f *trip.Food) { f.Packages[0].Net = 0 }), "foods 1 packages[1].net_g", "0 kg"},
		{"negative price", food(func(f *trip.Food) { f.Packages[0].Price = optional.Of(units.Money(-100)) }), "foods 1 packages[1].price", "-1"},
		{"negative stock", food(func(f *trip.Food) { f.Packages[0].InStock = optional.Of(-1) }), "foods 1 packages[1].in_stock", "-1"},
		{"discount from one", food(func(f *trip.Food) {
			f.Packages[0].Price, f.Packages[0].ManyFrom, f.Packages[0].ManyPrice = optional.Of(units.Money(100)), 1, optional.Of(units.Money(90))
		}), "foods 1 packages[1].many_from", "1"},
		{"discount without a price", food(func(f *trip.Food) { f.Packages[0].ManyFrom = 3 }), "foods 1 packages[1].many_price", "from 3"},
		{"discount on no price", food(func(f *trip.Food) {
			f.Packages[0].Price, f.Packages[0].ManyFrom, f.Packages[0].ManyPrice = optional.Unknown[units.Money](), 3, optional.Of(units.Money(90))
		}), "foods 1 packages[1].many_price", "none of one"},
		{"negative wrapping", food(func(f *trip.Food) { f.Packages[0].Wrapping = -1 }), "foods 1 packages[1].wrapping_g", "-"},
		{"too many packages", food(func(f *trip.Food) { f.Packages = slices.Repeat(f.Packages[:1], 21) }), "foods 1 packages", "21 packages"},
		{"negative stock at home", food(func(f *trip.Food) { f.AtHome = -1 }), "foods 1 at_home_g", "-"},
		{"unknown cooling", food(func(f *trip.Food) { f.Storage.TCS = "" }), "foods 1 storage.tcs", `""`},
		{"negative life", food(func(f *trip.Food) { f.Storage.ShelfDays = number(-1) }), "foods 1 storage.shelf_days_20c", "-1"},
		{"no Q10", food(func(f *trip.Food) { f.Storage.Q10 = 0 }), "foods 1 storage.q10", "0"},
		{"bears fire", food(func(f *trip.Food) { f.Storage.MaxHeat = optional.Of(units.Celsius(900)) }), "foods 1 storage.max_heat_c", "900"},
		{"softens never", food(func(f *trip.Food) { f.Storage.SoftensAt = optional.Of(units.Celsius(math.Inf(1))) }), "foods 1 storage.softens_c", "Inf"},
		{"unknown presence", food(func(f *trip.Food) { f.Allergens = map[trip.Allergen]trip.Presence{trip.Milk: "no"} }), "foods 1 allergens.milk", `"no"`},
		{"nameless allergen", food(func(f *trip.Food) { f.Allergens = map[trip.Allergen]trip.Presence{"": trip.Free} }), "foods 1 allergens", "empty"},
		{"unknown suitability", food(func(f *trip.Food) { f.Diets = map[trip.Diet]trip.Suitability{trip.Vegan: "yes"} }), "foods 1 diets.vegan", `"yes"`},
		{"long aisle", food(func(f *trip.Food) { f.Aisle = strings.Repeat("a", 121) }), "foods 1 aisle", "121"},
	})
}

func TestRecipeFaults(t *testing.T) {
	recipe := func(spoil func(*trip.Recipe)) func(*trip.Trip) { return func(t *trip.Trip) { spoil(&t.Recipes[0]) } }
	first := func(spoil func(*trip.Ingredient)) func(*trip.Trip) {
		return recipe(func(r *trip.Recipe) { spoil(&r.Ingredients[0]) })
	}
	checkFaults(t, []fault{
		{"unknown meal", recipe(func(r *trip.Recipe) { r.Meals = []trip.Meal{""} }), "recipes 1 meals", `""`},
		{"no ingredients", recipe(func(r *trip.Recipe) { r.Ingredients = nil }), "recipes 1 ingredients", "0 ingredients"},
		{"negative water", recipe(func(r *trip.Recipe) { r.Water = -1 }), "recipes 1 water_ml", "-"},
		{"negative water poured off", recipe(func(r *trip.Recipe) { r.PourOff = -1 }), "recipes 1 pour_off_ml", "-"},
		{"simmers for ever", recipe(func(r *trip.Recipe) { r.Simmer = units.Minutes(math.Inf(1)) }), "recipes 1 simmer_minutes", "Inf"},
		{"soaks for a week", recipe(func(r *trip.Recipe) { r.Soak = 10_080 }), "recipes 1 soak_minutes", "10080"},
		{"no smallest portion", recipe(func(r *trip.Recipe) { r.MinScale = 0 }), "recipes 1 min_scale", "0"},
		{"largest below the standard", recipe(func(r *trip.Recipe) { r.MaxScale = 0.9 }), "recipes 1 max_scale", "0.9"},
		{"bell in the method", recipe(func(r *trip.Recipe) { r.Method = []string{"Stir.", "\a"} }), "recipes 1 method[2]", "U+0007"},
		{"unknown food", first(func(i *trip.Ingredient) { i.Food = 4711 }), "recipes 1 ingredients[1].food", "4711"},
		{"nothing of it", first(func(i *trip.Ingredient) { i.Amount = 0 }), "recipes 1 ingredients[1].amount_g", "0 kg"},
		{"kilograms as grams", first(func(i *trip.Ingredient) { i.Amount = 80 * units.Kilogram }), "recipes 1 ingredients[1].amount_g", "80 kg"},
		{"unknown role", first(func(i *trip.Ingredient) { i.Role = "" }), "recipes 1 ingredients[1].role", `""`},
		{"unknown place", first(func(i *trip.Ingredient) { i.Place = "sky" }), "recipes 1 ingredients[1].place", `"sky"`},
		{"swap for a ghost", first(func(i *trip.Ingredient) { i.Swaps = []trip.Swap{{}, {Food: 4711, Amount: 1}} }), "recipes 1 ingredients[1].swaps[2].food", "4711"},
		{"swap for nothing of it", func(t *trip.Trip) {
			t.Recipes[0].Ingredients[0].Swaps = []trip.Swap{{Food: t.Foods[0].ID}}
		}, "recipes 1 ingredients[1].swaps[1].amount_g", "0 kg"},
		{"amount of nothing", first(func(i *trip.Ingredient) { i.Swaps = []trip.Swap{{Amount: 5 * units.Gram}} }), "recipes 1 ingredients[1].swaps[1].amount_g", "5 g"},
		{"too many swaps", first(func(i *trip.Ingredient) { i.Swaps = make([]trip.Swap, 11) }), "recipes 1 ingredients[1].swaps", "11 swaps"},
	})
}

func TestMenuFaults(t *testing.T) {
	cell := func(spoil func(*trip.Cell)) func(*trip.Trip) { return func(t *trip.Trip) { spoil(&t.Menu[1]) } }
	last := len(plain().Menu)
	checkFaults(t, []fault{
		{"day after the end", cell(func(c *trip.Cell) { c.Day = 7 }), "menu 2 day", "7"},
		{"day zero", cell(func(c *trip.Cell) { c.Day = 0 }), "menu 2 day", "0"},
		{"unknown meal", cell(func(c *trip.Cell) { c.Meal = "tea" }), "menu 2 meal", `"tea"`},
		{"unknown group", cell(func(c *trip.Cell) { c.Group = 4711 }), "menu 2 group", "4711"},
		{"slot decided twice", func(t *trip.Trip) { t.Menu = append(t.Menu, t.Menu[0]) }, fmt.Sprintf("menu %d ", last+1), "twice"},
		{"unknown recipe", cell(func(c *trip.Cell) { c.Dishes[0].Recipe = 4711 }), "menu 2 dishes[1].recipe", "4711"},
		{"dish twice", cell(func(c *trip.Cell) { c.Dishes = append(c.Dishes, c.Dishes[0]) }), "menu 2 dishes", "twice"},
		{"for a ghost", cell(func(c *trip.Cell) { c.Dishes[0].For = []trip.MemberID{4711} }), "menu 2 dishes[1].for", "4711"},
		{"for one twice", func(t *trip.Trip) {
			t.Menu[1].Dishes[0].For = []trip.MemberID{t.Crew[0].ID, t.Crew[0].ID}
		}, "menu 2 dishes[1].for", "twice"},
		{"accepted for a ghost", func(t *trip.Trip) {
			t.Menu[1].Dishes[0].Accepted = []trip.Acceptance{{Member: 4711, Food: t.Foods[0].ID}}
		}, "menu 2 dishes[1].accepted[1].member", "4711"},
		{"accepted a ghost", func(t *trip.Trip) {
			t.Menu[1].Dishes[0].Accepted = []trip.Acceptance{{Member: t.Crew[0].ID, Food: 4711}}
		}, "menu 2 dishes[1].accepted[1].food", "4711"},
	})
}

func TestGearFaults(t *testing.T) {
	stove, pot := 0, 1
	gear := func(at int, spoil func(*trip.Gear)) func(*trip.Trip) {
		return func(t *trip.Trip) { spoil(&t.Gear[at]) }
	}
	checkFaults(t, []fault{
		{"unknown kind", gear(2, func(g *trip.Gear) { g.Kind = "piano" }), "gear 3 kind", `"piano"`},
		{"unknown group", gear(2, func(g *trip.Gear) { g.Group = 4711 }), "gear 3 group", "4711"},
		{"negative mass", gear(2, func(g *trip.Gear) { g.Mass = -1 }), "gear 3 mass_g", "-"},
		{"negative volume", gear(2, func(g *trip.Gear) { g.Volume = -1 }), "gear 3 volume_ml", "-"},
		{"stove without fuel", gear(stove, func(g *trip.Gear) { g.Fuel = "" }), "gear 1 fuel", `""`},
		{"stove without heat", gear(stove, func(g *trip.Gear) { g.PowerWatts = 0 }), "gear 1 power_w", "0 W"},
		{"stove better than heat", gear(stove, func(g *trip.Gear) { g.Efficiency = 1.1 }), "gear 1 efficiency", "1.1"},
		{"pot for nothing", gear(pot, func(g *trip.Gear) { g.Capacity = 0 }), "gear 2 capacity_ml", "0 L"},
		{"pot of ice", gear(pot, func(g *trip.Gear) { g.HeatCapacity = -1 }), "gear 2 heat_capacity_kj_per_kg_k", "-1"},
		{"unknown fuel", func(t *trip.Trip) { t.Fuels[0].Fuel = "hope" }, "fuels 1 fuel", `"hope"`},
		{"empty can", func(t *trip.Trip) { t.Fuels[0].Net = 0 }, "fuels 1 net_g", "0 kg"},
		{"can lighter than nothing", func(t *trip.Trip) { t.Fuels[0].Empty = -1 }, "fuels 1 empty_g", "-"},
		{"bag of no size", func(t *trip.Trip) { t.Bags[0].Nominal = 0 }, "bag_types 1 nominal_ml", "0 L"},
		{"bag that is never filled", func(t *trip.Trip) { t.Bags[0].Fill = 0 }, "bag_types 1 fill", "0"},
		{"bag overfilled", func(t *trip.Trip) { t.Bags[0].Fill = 1.01 }, "bag_types 1 fill", "1.01"},
		{"bag lighter than nothing", func(t *trip.Trip) { t.Bags[0].Tare = -1 }, "bag_types 1 tare_g", "-"},
		{"pin of nothing", func(t *trip.Trip) { t.Pins[0].Gear = 0 }, "pins 1 ", "not exactly one"},
		{"pin of two", func(t *trip.Trip) { t.Pins[0].Bag = "d1" }, "pins 1 ", "not exactly one"},
		{"pin of a ghost", func(t *trip.Trip) { t.Pins[0].Gear = 4711 }, "pins 1 gear", "4711"},
		{"pin to a ghost", func(t *trip.Trip) { t.Pins[0].Member = 4711 }, "pins 1 member", "4711"},
		{"pin twice", func(t *trip.Trip) {
			t.Pins = append(t.Pins, trip.Pin{Gear: t.Pins[0].Gear, Member: t.Pins[0].Member, Forbid: true})
		}, "pins 0 ", "twice"},
	})
}

func TestPointFaults(t *testing.T) {
	point := func(spoil func(*trip.ResupplyPoint)) func(*trip.Trip) {
		return func(t *trip.Trip) { spoil(&t.Points[0]) }
	}
	shop := func(spoil func(*trip.Shop)) func(*trip.Trip) {
		return func(t *trip.Trip) {
			t.Shops = []trip.Shop{trip.NewShop("Mill")}
			spoil(&t.Shops[0])
		}
	}
	checkFaults(t, []fault{
		{"unknown kind", point(func(p *trip.ResupplyPoint) { p.Kind = "moon" }), "points 1 kind", `"moon"`},
		{"after the end", point(func(p *trip.ResupplyPoint) { p.AfterDay = 7 }), "points 1 after_day", "7"},
		{"before the start", point(func(p *trip.ResupplyPoint) { p.AfterDay = 0 }), "points 1 after_day", "0"},
		{"unknown weekday", point(func(p *trip.ResupplyPoint) { p.OpenDays = []string{"Monday"} }), "points 1 open_days", `"Monday"`},
		{"weekday twice", point(func(p *trip.ResupplyPoint) { p.OpenDays = []string{"Mon", "Mon"} }), "points 1 open_days", "twice"},
		{"closed on no date", point(func(p *trip.ResupplyPoint) { p.ClosedDates = []units.Date{0} }), "points 1 closed_dates", "not set"},
		{"post backwards", point(func(p *trip.ResupplyPoint) { p.FastestDays = -1 }), "points 1 fastest_transit_days", "-1"},
		{"fastest slower than usual", point(func(p *trip.ResupplyPoint) { p.TransitDays, p.FastestDays = 2, 3 }), "points 1 fastest_transit_days", "above"},
		{"negative buffer", point(func(p *trip.ResupplyPoint) { p.BufferDays = -1 }), "points 1 buffer_days", "-1"},
		{"holds for ever", point(func(p *trip.ResupplyPoint) { p.HoldDays = optional.Of(100_000) }), "points 1 hold_days", "100000"},
		{"negative margin", point(func(p *trip.ResupplyPoint) { p.HoldMargin = -1 }), "points 1 hold_margin_days", "-1"},
		{"parcel of nothing", point(func(p *trip.ResupplyPoint) { p.MaxParcel = optional.Of(units.Mass(0)) }), "points 1 max_parcel_g", "0 kg"},
		{"girth of nothing", point(func(p *trip.ResupplyPoint) { p.MaxGirth = optional.Of(units.Metres(0)) }), "points 1 max_length_and_girth_m", "0 m"},
		{"negative fee", point(func(p *trip.ResupplyPoint) { p.FeePerParcel = -1 }), "points 1 fee_per_parcel", "-"},
		{"fetched by a ghost", point(func(p *trip.ResupplyPoint) { p.Sending.Collector = 4711 }), "points 1 sending.collector", "4711"},
		{"sent by a ghost", point(func(p *trip.ResupplyPoint) { p.Sending.Sender = 4711 }), "points 1 sending.sender", "4711"},
		{"sent by two", func(t *trip.Trip) {
			t.Points[0].Sending = trip.Sending{Sender: t.Crew[0].ID, Helper: "Bo"}
		}, "points 1 sending.helper", "both"},
		{"name of two lines", point(func(p *trip.ResupplyPoint) { p.Sending.Addressee = "a\nb" }), "points 1 sending.addressee", "U+000A"},
		{"boxes taken on no weekday", func(t *trip.Trip) { t.Posting.OpenDays = []string{"Noday"} }, "posting 0 open_days", "Noday"},
		{"shop without a name", shop(func(s *trip.Shop) { s.Name = "" }), "shops 1 name", "empty"},
		{"shop nowhere", shop(func(s *trip.Shop) { s.Point = 4711 }), "shops 1 point", "4711"},
		{"negative cost of a visit", shop(func(s *trip.Shop) { s.VisitFee = -1 }), "shops 1 visit_fee", "-"},
		{"negative least order", shop(func(s *trip.Shop) { s.LeastOrder = -1 }), "shops 1 least_order", "-"},
		{"shop twice", func(t *trip.Trip) {
			t.Shops = []trip.Shop{trip.NewShop("Mill"), trip.NewShop("mill")}
		}, "shops 2 name", "already"},
		{"negative visit fee", point(func(p *trip.ResupplyPoint) { p.VisitFee = -1 }), "points 1 visit_fee", "-"},
		{"detour backwards", point(func(p *trip.ResupplyPoint) { p.Detour = -1 }), "points 1 detour_m", "-1"},
		{"detour not a number", point(func(p *trip.ResupplyPoint) { p.DetourHours = units.Hours(math.NaN()) }), "points 1 detour_hours", "NaN"},
		{"store low above high", point(func(p *trip.ResupplyPoint) {
			p.StoreLow, p.StoreHigh = optional.Of(units.Celsius(20)), optional.Of(units.Celsius(10))
		}), "points 1 store_low_c", "above"},
	})
}

// Whoever repairs a sheet wants the whole list, not one fault after the other.
func TestAllFaultsAtOnce(t *testing.T) {
	spoilt := plain()
	spoilt.Currency = ""
	spoilt.Crew[0].Age = 0
	spoilt.Foods[1].Form = ""
	spoilt.Menu[0].Day = 99
	if problems := trip.Validate(spoilt); len(problems) != 4 {
		t.Fatalf("%d problems, want 4: %v", len(problems), problems)
	}
}

func TestEmptyTripSaysWhatToBeginWith(t *testing.T) {
	problems := trip.Validate(&trip.Trip{Units: units.Metric, Currency: "EUR", Start: 20_000, Settings: trip.DefaultSettings()})
	var lists []string
	for _, problem := range problems {
		lists = append(lists, problem.Where.List)
	}
	if want := []string{"groups", "crew", "bag_types", "days"}; !slices.Equal(lists, want) {
		t.Errorf("problems with %v, want %v", lists, want)
	}
}

// A menu within its lists' limits may still ask for too much work.
func TestTooManyServings(t *testing.T) {
	big := plain()
	for i := range trip.MaxMembers - len(big.Crew) {
		one := big.Crew[0]
		one.ID, one.Name = trip.MemberID(1000+i), fmt.Sprint("M", i)
		big.Crew = append(big.Crew, one)
	}
	for len(big.Days) < trip.MaxDays {
		big.Days = append(big.Days, big.Days[1])
	}
	big.Menu = nil
	for day := range big.Days {
		for _, meal := range trip.Meals() {
			cell := trip.Cell{Day: day + 1, Meal: meal, Group: big.Groups[0].ID}
			for _, recipe := range big.Recipes[:3] {
				cell.Dishes = append(cell.Dishes, trip.Dish{Recipe: recipe.ID})
			}
			big.Menu = append(big.Menu, cell)
		}
	}
	problems := trip.Validate(big)
	if len(problems) != 1 || !strings.Contains(problems[0].What.String(), "288000 servings") {
		t.Fatalf("got %v", problems)
	}
}

func TestProblemIsOneLineForPeople(t *testing.T) {
	spoilt := plain()
	spoilt.Crew[1].Name, spoilt.Crew[1].Age = "Jo\nthe second", 200
	for _, problem := range trip.Validate(spoilt) {
		if strings.ContainsAny(problem.String(), "\n\r") {
			t.Errorf("more than one line: %q", problem)
		}
	}
	want := "crew 2 (Jo the second): age is 200 years; allowed: from 5 to 110 years. Enter the age from 5 to 110 years."
	if got := trip.Validate(spoilt)[1].String(); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}
