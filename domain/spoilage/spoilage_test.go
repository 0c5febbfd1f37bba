package spoilage_test

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/findings"
	"sumpter/domain/optional"
	"sumpter/domain/portions/portionstest"
	"sumpter/domain/spoilage"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// larder is a trip of three days between 14 and 36 degrees on which one food
// is eaten at every dinner; bought on the day of the start, no car.
func larder(food trip.Food) *trip.Trip {
	settings := trip.DefaultSettings()
	settings.PackSunHeat, settings.CarHours = 0, 0
	start, _ := units.NewDate(2026, 7, 20)
	settings.ShoppingDay, settings.PackingNight = start, start
	food.ID, food.Name = 1, "Food"
	made := &trip.Trip{
		Start: start, Settings: settings, Groups: []trip.CookGroup{{ID: 1, Name: "One"}},
		Crew:    []trip.Member{{ID: 1, Name: "Ana", Group: 1}},
		Foods:   []trip.Food{food},
		Recipes: []trip.Recipe{{ID: 1, Meals: trip.Meals(), Ingredients: []trip.Ingredient{{Food: 1, Amount: 100 * units.Gram, Place: trip.InPot}}}},
	}
	for day := 1; day <= 3; day++ {
		made.Days = append(made.Days, trip.Day{Low: 14, High: 36, Meals: trip.Meals()})
		made.Menu = append(made.Menu, trip.Cell{Day: day, Meal: trip.Dinner, Group: 1, Dishes: []trip.Dish{{Recipe: 1}}})
	}
	return made
}

func stable(days float64) trip.Food {
	return trip.Food{Storage: trip.Storage{TCS: trip.TCSNo, ShelfDays: optional.Of(days), Q10: 2}}
}

func perishable() trip.Food { return trip.Food{Storage: trip.Storage{TCS: trip.TCSYes}} }

func compute(t *trip.Trip) spoilage.Result {
	c := t.Canonical()
	return spoilage.Compute(c, portionstest.Serve(c))
}

func codes(list []findings.Finding) string {
	var words []string
	for _, finding := range list {
		words = append(words, finding.Code)
	}
	return strings.Join(words, " ")
}

// testdata/check_values.csv, shelf_life: a day of 14 to 36 C uses 1.62734 days
// at 20 C of a food with Q10 2; 60 days last 36.87.
func TestQualityIsUsedUpByTheDaysCourse(t *testing.T) {
	result := compute(larder(stable(60)))
	first, second := result.Fates[0], result.Fates[1]
	if have := 60 * (second.QualityUsed - first.QualityUsed); math.Abs(have-1.627340928) > 1e-5 {
		t.Errorf("a day uses %v days, want 1.62734", have)
	}
	left := (60 - 60*first.QualityUsed) / 1.627340928
	if math.Abs(first.DaysLeft-left) > 1e-3 || first.Verdict != spoilage.Safe || !first.QualityKnown || first.LatestDay != 3 {
		t.Errorf("have %+v, want %v days left", first, left)
	}
	if len(result.Findings) != 0 {
		t.Errorf("nothing is wrong: %s", codes(result.Findings))
	}
}

func TestPastItsShelfLifeNobodyKnows(t *testing.T) {
	result := compute(larder(stable(2)))
	if f := result.Fates; f[0].Verdict != spoilage.Safe || f[2].Verdict != spoilage.NotKnown || f[2].LatestDay != 1 || f[2].DaysLeft != 0 {
		t.Errorf("have %+v", f)
	}
	if codes(result.Findings) != "food-not-known" || !strings.Contains(result.Findings[0].Remedy.String(), "by day 1") {
		t.Errorf("have %+v", result.Findings)
	}
}

// USDA FSIS: 2 h in the danger zone, 1 h above 32.2 C.
func TestPerishableFoodInAWarmPack(t *testing.T) {
	warm := larder(perishable())
	for d := range warm.Days {
		warm.Days[d].Low, warm.Days[d].High = 25, 25
	}
	result := compute(warm)
	fate := result.Fates[0] // 11 hours from the start at 8 to dinner at 19, 2 h allowed
	if math.Abs(fate.Dose-5.5) > 1e-9 || fate.Verdict != spoilage.NotSafe || fate.LatestDay != 0 {
		t.Errorf("have %+v", fate)
	}
	if len(result.Findings) != 1 || result.Findings[0].Severity != findings.MustFix || !strings.Contains(result.Findings[0].What.String(), "3 meals from day 1 to 3") {
		t.Errorf("have %+v", result.Findings)
	}
	warm.Menu[0].Meal = trip.Breakfast // before the start
	if fate := compute(warm).Fates[0]; fate.Dose != 0 || fate.Verdict != spoilage.Safe || fate.LatestDay != 1 {
		t.Errorf("breakfast from the refrigerator: %+v", fate)
	}
	warm.Settings.CarHours, warm.Settings.CarHigh = 0.75, 35 // an hour allowed
	if fate := compute(warm).Fates[0]; math.Abs(fate.Dose-0.75) > 1e-9 || len(fate.Path) != 1 || fate.Path[0].Where != "car" {
		t.Errorf("after the car: %+v", fate)
	}
	warm.Settings.CarHigh = 65 // hot by accident, not held hot
	if fate := compute(warm).Fates[0]; math.Abs(fate.Dose-0.75) > 1e-9 {
		t.Errorf("a car above 60 C must count: %+v", fate)
	}
	warm.Settings.ShoppingDay, warm.Settings.HomeFridge = warm.Start.AddDays(-1), false
	if fate := compute(warm).Fates[0]; math.Abs(fate.Dose-12.75) > 1e-9 {
		t.Errorf("a day at home without a refrigerator: %+v", fate)
	}
}

func TestPerishableFoodInTheCold(t *testing.T) {
	frost := larder(perishable())
	for d := range frost.Days {
		frost.Days[d].Low, frost.Days[d].High = -8, 3
	}
	frost.Settings.ShoppingDay = frost.Start.AddDays(-2)
	result := compute(frost)
	for _, fate := range result.Fates {
		if fate.Verdict != spoilage.Safe || fate.Dose != 0 || fate.LatestDay != 3 || fate.QualityKnown {
			t.Errorf("have %+v", fate)
		}
	}
	if len(result.Findings) != 0 {
		t.Errorf("have %+v", result.Findings)
	}
	frost.Settings.ShoppingDay = frost.Start.AddDays(-6) // Food Code 3-501.17: 7 days
	if fates := compute(frost).Fates; fates[0].Verdict != spoilage.Safe || fates[2].Verdict != spoilage.NotKnown {
		t.Errorf("a week in the cold is enough: %+v", fates)
	}
}

func TestUnknownIsNeverSafe(t *testing.T) {
	unknown := perishable()
	unknown.Storage.TCS = trip.TCSUnknown
	fresh := stable(0)
	for name, food := range map[string]trip.Food{
		"control": unknown, "no state at all": {}, "shelf life": {Storage: trip.Storage{TCS: trip.TCSNo}}, "eaten the same day": fresh,
	} {
		result := compute(larder(food))
		for _, fate := range result.Fates {
			if fate.Verdict != spoilage.NotKnown || fate.LatestDay != 0 || fate.QualityKnown {
				t.Errorf("%s: %+v", name, fate)
			}
		}
		if codes(result.Findings) != "food-not-known" || result.Findings[0].Place.Food != 1 {
			t.Errorf("%s: have %+v", name, result.Findings)
		}
	}
}

// The maker's figures answer where nobody said whether a food needs cooling,
// and are doubted aloud where they speak against what was said.
func TestFiguresOfTheMaker(t *testing.T) {
	food := stable(365)
	food.Storage.TCS, food.Storage.WaterActivity = trip.TCSUnknown, optional.Of(0.6)
	if got := compute(larder(food)); got.Fates[2].Verdict != spoilage.Safe || codes(got.Findings) != "" {
		t.Errorf("dry food: %v, %q", got.Fates[2].Verdict, codes(got.Findings))
	}
	food.Storage.WaterActivity = optional.Of(0.95)
	if got := compute(larder(food)); got.Fates[2].Verdict == spoilage.Safe || !strings.Contains(codes(got.Findings), "food-not-known") {
		t.Errorf("moist food: %v, %q", got.Fates[2].Verdict, codes(got.Findings))
	}
	food.Storage.TCS = trip.TCSNo
	if got := compute(larder(food)); codes(got.Findings) != "cooling-doubted" {
		t.Errorf("moist food said to keep: %q", codes(got.Findings))
	}
}

func TestHeatBeyondTheStatedDays(t *testing.T) {
	food := stable(60)
	food.Storage.MaxHeat = optional.Of(units.Celsius(22)) // the mean of the days is 25
	result := compute(larder(food))
	if f := result.Fates; f[2].Verdict != spoilage.Safe || codes(result.Findings) != "food-warm" {
		t.Errorf("little of a long life is used: %+v, %s", f[2], codes(result.Findings))
	}
	food.Storage.ShelfDays = optional.Of(6.0)
	result = compute(larder(food))
	if f := result.Fates; f[2].QualityUsed > 1 || f[2].Verdict != spoilage.NotKnown {
		t.Errorf("over half of it is used: %+v", f[2])
	}
}

func TestMelting(t *testing.T) {
	chocolate := stable(300)
	chocolate.Storage.SoftensAt = optional.Of(units.Celsius(30))
	hot := larder(chocolate)
	if result := compute(hot); !result.Fates[0].Melts || codes(result.Findings) != "food-melts" {
		t.Errorf("at 36 C: %+v", result)
	}
	for d := range hot.Days {
		hot.Days[d].High = 27
	}
	if compute(hot).Fates[0].Melts {
		t.Error("27 C melts no chocolate")
	}
	hot.Settings.PackSunHeat = 5
	if !compute(hot).Fates[0].Melts {
		t.Error("a dark pack in the sun is 5 K warmer")
	}
	hot.Settings.PackSunHeat, hot.Menu[0].Meal = 5, trip.Breakfast
	if compute(hot).Fates[0].Melts {
		t.Error("it has not met the sun before breakfast of the first day")
	}
}

// A tin is shelf-stable until it is opened (Food Code 1-201.10).
func TestOpenedPackages(t *testing.T) {
	tin := stable(1000)
	tin.Storage.TCSWhenOpen, tin.PackedAsBought = true, true
	tin.Packages = []trip.Package{{Net: 200 * units.Gram}}
	result := compute(larder(tin)) // 100 g each evening: the second is a day old
	if f := result.Fates; f[0].Verdict != spoilage.Safe || f[1].Verdict != spoilage.NotSafe || f[1].Dose < 1 || f[2].Verdict != spoilage.Safe {
		t.Errorf("have %+v", f)
	}
	if codes(result.Findings) != "food-not-safe" || !strings.Contains(result.Findings[0].Remedy.String(), "whole packages") {
		t.Errorf("have %+v", result.Findings)
	}
	tin.Packages[0].Net = 100 * units.Gram
	if result := compute(larder(tin)); len(result.Findings) != 0 {
		t.Errorf("whole tins: %+v", result.Findings)
	}
	tin.PackedAsBought, tin.Form = false, trip.Spread // opened on packing night
	if fate := compute(larder(tin)).Fates[0]; fate.Verdict != spoilage.NotSafe {
		t.Errorf("spread into another bag: %+v", fate)
	}
	tin.Form = trip.Powder // turns perishable only when wetted
	if fate := compute(larder(tin)).Fates[0]; fate.Verdict != spoilage.Safe {
		t.Errorf("a powder: %+v", fate)
	}
}

func TestSoakingTooLong(t *testing.T) {
	soak := larder(stable(300))
	soak.Recipes[0].ColdOK, soak.Recipes[0].Water, soak.Recipes[0].Soak = true, 200*units.Millilitre, 150
	if fate := compute(soak).Fates[0]; fate.Verdict != spoilage.NotSafe || fate.Dose < 1 {
		t.Errorf("two and a half hours above 25 C: %+v", fate)
	}
	soak.Recipes[0].Soak = 20
	if fate := compute(soak).Fates[0]; fate.Verdict != spoilage.Safe {
		t.Errorf("twenty minutes: %+v", fate)
	}
}

func TestBoxesTravelTheirOwnWay(t *testing.T) {
	sent := larder(stable(60))
	sent.Settings.CarHours, sent.Settings.ShoppingDay = 2, sent.Start.AddDays(-10)
	sent.Points = []trip.ResupplyPoint{{
		ID: 5, Kind: trip.PostOffice, AfterDay: 2, Use: true, TransitDays: 3, BufferDays: 4,
		StoreLow: optional.Of(units.Celsius(18)), StoreHigh: optional.Of(units.Celsius(27)),
	}}
	where := func(fate spoilage.Fate) string {
		var words []string
		for _, part := range fate.Path {
			words = append(words, part.Where)
		}
		return strings.Join(words, " ")
	}
	fates := compute(sent).Fates
	if where(fates[0]) != "home car pack" || where(fates[2]) != "home post box pack" {
		t.Errorf("have %q and %q", where(fates[0]), where(fates[2]))
	}
	// bought on 10 July, posted on 14 July, there on 17 July, picked up on 21 July at 17, eaten on 22 July at 19
	for i, want := range []float64{4, 3, 4, 26.0 / 24} {
		if have := fates[2].Path[i].Days; math.Abs(have-want) > 1e-9 {
			t.Errorf("%s: have %v days, want %v", fates[2].Path[i].Where, have, want)
		}
	}
	sum := 0.0
	for _, part := range fates[2].Path {
		sum += part.QualityUsed
	}
	if math.Abs(sum-fates[2].QualityUsed) > 1e-9 {
		t.Errorf("the stretches use %v, the food %v", sum, fates[2].QualityUsed)
	}
	sent.Points[0].Kind = trip.Hut
	if have := where(compute(sent).Fates[2]); have != "home post box pack" {
		t.Errorf("to a hut by a carrier: %q", have)
	}
	sent.Points[0].TransitDays, sent.Points[0].FastestDays = 0, 0
	if have := where(compute(sent).Fates[2]); have != "home car box pack" {
		t.Errorf("to a hut by a friend: %q", have)
	}
	sent.Points[0].Kind = trip.Meeting
	if have := where(compute(sent).Fates[2]); have != "home car pack" {
		t.Errorf("a meeting: %q", have)
	}
	sent.Points[0].Kind, sent.Points[0].StoreHigh = trip.PostOffice, optional.Unknown[units.Celsius]()
	result := compute(sent)
	if f := result.Fates[2]; f.Verdict != spoilage.NotKnown || f.QualityKnown || codes(result.Findings) != "food-not-known" {
		t.Errorf("nobody knows how warm the box is: %+v", f)
	}
}

// A cheese that keeps 60 days at 20 degrees, sent to a hut: in a cool cellar it
// is well, under a hot roof it is past its best or nobody knows, in the heat of
// the van it melts, and what must stay cold is not safe. Each is a finding.
func TestCheeseInAHotHut(t *testing.T) {
	hut := func(food trip.Food, low, high units.Celsius) *trip.Trip {
		sent := larder(food)
		sent.Settings.ShoppingDay = sent.Start.AddDays(-10)
		for d := range sent.Days {
			sent.Days[d].Low, sent.Days[d].High = 2, 4
		}
		sent.Points = []trip.ResupplyPoint{{
			ID: 5, Kind: trip.Hut, AfterDay: 2, Use: true, TransitDays: 1, FastestDays: 1, BufferDays: 6,
			StoreLow: optional.Of(low), StoreHigh: optional.Of(high),
		}}
		return sent
	}
	cheese := stable(60)
	if r := compute(hut(cheese, 8, 12)); len(r.Findings) > 0 || r.Fates[2].Verdict != spoilage.Safe {
		t.Errorf("in a cool cellar: %+v", r.Findings)
	}
	short := stable(20)
	if r := compute(hut(short, 8, 12)); r.Fates[2].Verdict != spoilage.Safe || len(r.Findings) > 0 {
		t.Errorf("20 days in a cool cellar: %+v", r.Fates[2])
	}
	r := compute(hut(short, 35, 60))
	if f := r.Fates[2]; f.Verdict == spoilage.Safe || f.QualityUsed <= 1 || len(r.Findings) == 0 || r.Findings[0].Place.Day != 3 {
		t.Errorf("under a hot roof: %+v, %+v", f, r.Findings)
	}
	cheese.Storage.SoftensAt = optional.Of(units.Celsius(35))
	if r := compute(hut(cheese, 20, 45)); !r.Fates[2].Melts || len(r.Findings) == 0 {
		t.Errorf("it melts: %+v, %+v", r.Fates[2], r.Findings)
	}
	r = compute(hut(perishable(), 20, 30))
	if f := r.Fates[2]; f.Verdict != spoilage.NotSafe || codes(r.Findings) == "" || r.Findings[0].Severity != findings.MustFix {
		t.Errorf("what must stay cold: %+v, %+v", f, r.Findings)
	}
}

func TestEatFirst(t *testing.T) {
	made := larder(stable(300))
	made.Foods = append(made.Foods, made.Foods[0], made.Foods[0])
	made.Foods[1].ID, made.Foods[1].Storage.ShelfDays = 2, optional.Of(4.5)
	made.Foods[2].ID, made.Foods[2].Storage.ShelfDays = 3, optional.Of(2.0)
	for id := trip.FoodID(2); id <= 3; id++ {
		made.Recipes[0].Ingredients = append(made.Recipes[0].Ingredients, trip.Ingredient{Food: id, Amount: units.Gram, Place: trip.InPot})
	}
	var order []trip.FoodID
	for _, fate := range spoilage.EatFirst(made, compute(made)) {
		order = append(order, fate.Food)
	}
	if !reflect.DeepEqual(order, []trip.FoodID{3, 2}) {
		t.Errorf("have %v", order)
	}
}

func TestEveryFindingSpeaks(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := triptest.Trip().Draw(rt, "trip").Canonical()
		p := portionstest.Serve(made)
		result := spoilage.Compute(made, p)
		if !reflect.DeepEqual(result, spoilage.Compute(made, p)) {
			rt.Fatal("the same trip must give the same fates")
		}
		said := map[trip.FoodID]bool{}
		for _, finding := range result.Findings {
			said[finding.Place.Food] = true
			if finding.What.IsZero() || finding.Why.IsZero() || finding.Remedy.IsZero() || finding.Stage != findings.Spoilage {
				rt.Errorf("a finding without words: %+v", finding)
			}
		}
		legs := made.Legs()
		for _, fate := range result.Fates {
			if fate.Verdict != spoilage.Safe && !said[fate.Food] {
				rt.Errorf("%+v without a finding", fate)
			}
			checkFate(rt, made, legs, fate)
		}
		served := map[trip.FoodID]bool{}
		for _, batch := range p.Batches {
			for _, amount := range batch.Totals {
				served[amount.Food] = true
			}
		}
		for _, fate := range result.Fates {
			delete(served, fate.Food)
		}
		if len(served) > 0 {
			rt.Errorf("foods without a fate: %v", served)
		}
	})
}

func checkFate(rt *rapid.T, made *trip.Trip, legs []trip.Leg, fate spoilage.Fate) {
	for name, value := range map[string]float64{"dose": fate.Dose, "quality": fate.QualityUsed, "days left": fate.DaysLeft} {
		if math.IsNaN(value) || math.IsInf(value, 0) || value < 0 {
			rt.Errorf("%s is %v: %+v", name, value, fate)
		}
	}
	food := made.Food(fate.Food)
	if fate.Verdict == spoilage.Safe && food.Storage.Control() != trip.TCSNo {
		for day := legs[trip.LegOf(legs, fate.Day)].FirstDay; day < fate.Day; day++ {
			if made.Days[day-1].Low > 4.45 {
				rt.Errorf("perishable after a warm day %d: %+v", day, fate)
			}
		}
	}
	if fate.LatestDay < 0 || fate.LatestDay > len(made.Days) {
		rt.Errorf("latest day %d", fate.LatestDay)
	}
}

// Hotter days, a hotter car or a hotter box never lengthen a life.
func TestHotterNeverLengthensLife(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := triptest.Trip().Draw(rt, "trip").Canonical()
		hotter := *made
		hotter.Days = append([]trip.Day(nil), made.Days...)
		for d := range hotter.Days {
			hotter.Days[d].High += units.Celsius(rapid.IntRange(0, 15).Draw(rt, "high"))
			hotter.Days[d].Low += units.Celsius(rapid.IntRange(0, 5).Draw(rt, "low"))
			hotter.Days[d].High = max(hotter.Days[d].High, hotter.Days[d].Low)
		}
		hotter.Settings.CarHigh += units.Celsius(rapid.IntRange(0, 10).Draw(rt, "car"))
		p := portionstest.Serve(made)
		before, after := spoilage.Compute(made, p).Fates, spoilage.Compute(&hotter, p).Fates
		for i := range before {
			a, b := before[i], after[i]
			if b.Dose < a.Dose-1e-6 || b.QualityUsed < a.QualityUsed-1e-6 || b.LatestDay > a.LatestDay || a.Verdict != spoilage.Safe && b.Verdict == spoilage.Safe || a.Melts && !b.Melts {
				rt.Errorf("hotter made it better: %+v then %+v", a, b)
			}
		}
	})
}

func BenchmarkSpoilage60x21(b *testing.B) {
	large := triptest.Large(60, 21, 1).Canonical()
	p := portionstest.Serve(large)
	b.ReportAllocs()
	for b.Loop() {
		spoilage.Compute(large, p)
	}
}
