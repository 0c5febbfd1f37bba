package portions_test

import (
	"context"
	"encoding/json"
	"math"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/fill"
	"sumpter/domain/findings"
	"sumpter/domain/menu"
	"sumpter/domain/needs"
	"sumpter/domain/optional"
	"sumpter/domain/portions"
	"sumpter/domain/science/checkvalues"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// plan runs the stages up to portions.
func plan(t interface{ Fatal(...any) }, tr *trip.Trip) (*trip.Trip, needs.Result, menu.Result, portions.Result) {
	c := tr.Canonical()
	n := needs.Compute(c, nil)
	var open []trip.Cell
	if c.Settings.FillOpenSlots {
		p, err := fill.Menu(context.Background(), c, n, fill.Options{Steps: 20_000})
		if err != nil {
			t.Fatal(err)
		}
		open = p.Cells
	}
	m := menu.Resolve(c, open)
	return c, n, m, portions.Compute(c, n, m)
}

func TestSharesAgainstTheTable(t *testing.T) {
	file, err := os.Open("../../testdata/check_values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	person := func(i int) func(checkvalues.Row) any {
		return func(row checkvalues.Row) any {
			total := units.FromGrams(row.Inputs.Number(0))
			needs := []float64{row.Inputs.Number(1), row.Inputs.Number(2), row.Inputs.Number(3)}
			return portions.Shares(total, units.Milligram, needs)[i].Grams()
		}
	}
	checkvalues.Check(t, file, "portions", checkvalues.Answers{
		"share by energy need, person A": person(0), "share by energy need, person C": person(2),
	})
}

func TestSharesAreExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		step := units.Mass(rapid.Int64Range(1, 5000).Draw(t, "step"))
		total := step * units.Mass(rapid.Int64Range(0, 5000).Draw(t, "steps"))
		weights := rapid.SliceOfN(rapid.Float64Range(0, 10), 1, 12).Draw(t, "weights")
		shares := portions.Shares(total, step, weights)
		var sum units.Mass
		all := 0.0
		for _, w := range weights {
			all += w
		}
		for i, share := range shares {
			sum += share
			if share < 0 || share%step != 0 {
				t.Errorf("share %d is no whole number of steps of %d", share, step)
			}
			if exact := float64(total) * weights[i] / all; all > 0 && math.Abs(float64(share)-exact) > float64(step)+1e-3 {
				t.Errorf("share %d is more than a step of %d from %.3f", share, step, exact)
			}
		}
		if sum != total {
			t.Errorf("shares sum to %d of %d", sum, total)
		}
	})
}

// TestSumsAndBounds: batches add up exactly, scales keep the bounds of the recipe, every serving of the menu is a portion, and nothing
// else is.
func TestSumsAndBounds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tr, _, m, p := plan(t, triptest.Trip().Draw(t, "trip"))
		at := 0
		for i := range m.Slots {
			for d, dish := range m.Slots[i].Dishes {
				for b, batch := range dish.Batches {
					if at >= len(p.Batches) {
						t.Fatalf("batch %d of the menu is not sized", at)
					}
					got := &p.Batches[at]
					at++
					if got.Day != m.Slots[i].Day || got.Meal != m.Slots[i].Meal || got.Group != m.Slots[i].Group || got.Dish != d || got.Batch != b || got.Recipe != dish.Recipe {
						t.Errorf("batch %+v stands for another", got)
					}
					checkBatch(t, tr, batch, got)
				}
			}
		}
		if at != len(p.Batches) {
			t.Errorf("%d batches, the menu has %d", len(p.Batches), at)
		}
	})
}

func checkBatch(t *rapid.T, tr *trip.Trip, served menu.Batch, got *portions.Batch) {
	recipe := tr.Recipe(got.Recipe)
	type key struct {
		food  trip.FoodID
		place trip.Place
	}
	sums, scales := map[key]units.Mass{}, 0.0
	for k, portion := range got.Portions {
		if portion.Member != served.Servings[k].Member {
			t.Errorf("portion %d is for member %d, the serving for %d", k, portion.Member, served.Servings[k].Member)
		}
		if portion.Scale < recipe.MinScale || portion.Scale > recipe.MaxScale {
			t.Errorf("scale %v outside %v to %v", portion.Scale, recipe.MinScale, recipe.MaxScale)
		}
		scales += portion.Scale
		kcal := 0.0
		for _, a := range portion.Amounts {
			sums[key{a.Food, a.Place}] += a.Mass
			kcal += float64(tr.Food(a.Food).Kcal(a.Mass))
			if !slices.ContainsFunc(served.Servings[k].Parts, func(p menu.Part) bool { return p.Food == a.Food }) {
				t.Errorf("food %d is not in the serving", a.Food)
			}
		}
		if math.Abs(kcal-float64(portion.Kcal)) > 1e-6 {
			t.Errorf("portion tells %v kcal, its foods bring %v", portion.Kcal, kcal)
		}
	}
	for _, more := range got.Seconds {
		if more.Place != trip.InPot || !recipe.NeedsFlame() || got.Meal == trip.Snack || tr.Settings.Seconds == 0 {
			t.Errorf("second helpings out of no hot pot: %+v", got)
		}
		sums[key{more.Food, more.Place}] += more.Mass
	}
	if recipe.NeedsFlame() && got.Meal != trip.Snack {
		scales *= 1 + tr.Settings.Seconds
	}
	for _, total := range got.Totals {
		if sums[key{total.Food, total.Place}] != total.Mass || total.Mass <= 0 {
			t.Errorf("portions of food %d sum to %v, the batch says %v", total.Food, sums[key{total.Food, total.Place}], total.Mass)
		}
		delete(sums, key{total.Food, total.Place})
	}
	if len(sums) > 0 {
		t.Errorf("portions hold foods that the batch does not: %v", sums)
	}
	if want := recipe.Water.Scale(scales); got.Water != want {
		t.Errorf("water %v, want %v", got.Water, want)
	}
}

// TestCountedFoodsAreWhole: what comes in pieces is never cut finer than it may be, nobody who should have some has none, and what is
// weighed makes up for it.
func TestCountedFoodsAreWhole(t *testing.T) {
	pieces := 0
	rapid.Check(t, func(t *rapid.T) {
		tr, _, m, p := plan(t, triptest.Trip().Draw(t, "trip"))
		served := map[trip.FoodID]bool{}
		for i := range m.Slots {
			for _, dish := range m.Slots[i].Dishes {
				for _, batch := range dish.Batches {
					for _, part := range batch.Servings[0].Parts {
						served[part.Food] = true
					}
				}
			}
		}
		for _, batch := range p.Batches {
			for _, total := range batch.Totals {
				if step := tr.Food(total.Food).PieceStep(); step > 0 && total.Mass%step != 0 {
					t.Errorf("%v of a food in pieces of %v", total.Mass, step)
				} else if step > 0 {
					pieces++
				}
			}
			for _, portion := range batch.Portions {
				for _, a := range portion.Amounts {
					step := tr.Food(a.Food).PieceStep()
					if alone := batch.Meal == trip.Snack || a.Place == trip.AtBowl; step > 0 && alone && (a.Mass%step != 0 || a.Mass < step) {
						t.Errorf("member %d gets %v of a food in pieces of %v", portion.Member, a.Mass, step)
					}
				}
			}
		}
	})
	if pieces == 0 {
		t.Error("no random trip serves a counted food")
	}
}

// The day of a bar of 60 g and oats by the gram: whole bars, and the oats make up the rest to the kcal.
func TestWhatIsWeighedMakesUpForPieces(t *testing.T) {
	tr := triptest.Large(1, 1, 3)
	tr.Settings.Seconds, tr.Settings.ScaleStep = 0, units.Gram
	tr.Foods = tr.Foods[:2]
	bar, oats := &tr.Foods[0], &tr.Foods[1]
	for _, f := range []*trip.Food{bar, oats} {
		f.Per100g.Kcal, f.RefuseShare, f.PieceMass, f.PieceHalves = 400, 0, 0, false
	}
	bar.PieceMass = 60 * units.Gram
	tr.Crew[0].Allergies, tr.Crew[0].Diets, tr.Crew[0].Dislikes = nil, nil, nil
	tr.Recipes = []trip.Recipe{{ID: 1, Name: "Bar and oats", Meals: []trip.Meal{trip.Snack}, MinScale: 0.1, MaxScale: 20, Ingredients: []trip.Ingredient{
		{Food: bar.ID, Amount: 50 * units.Gram, Role: trip.Base, Place: trip.AtBowl}, {Food: oats.ID, Amount: 100 * units.Gram, Role: trip.Base, Place: trip.AtBowl},
	}}}
	tr.Days[0].Meals = []trip.Meal{trip.Snack}
	tr.Menu = []trip.Cell{{Day: 1, Meal: trip.Snack, Group: tr.Crew[0].Group, Dishes: []trip.Dish{{Recipe: 1}}}}
	tr.Settings.ReserveRecipe, tr.Pins = 0, nil
	c, n, _, p := plan(t, tr)
	if len(p.Batches) != 1 {
		t.Fatalf("%d batches", len(p.Batches))
	}
	got := p.Batches[0].Portions[0].Amounts
	if got[0].Mass%(60*units.Gram) != 0 || math.Abs(float64(p.Intakes[0].Days[0].Kcal-n.Members[0].Days[0].TargetKcal)) > 4 {
		t.Errorf("%v, %.0f of %.0f kcal in trip %s", got, float64(p.Intakes[0].Days[0].Kcal), float64(n.Members[0].Days[0].TargetKcal), c.Title)
	}
}

// A tenth more is in the hot pot, water with it, and in nobody's intake.
func TestSecondHelpings(t *testing.T) {
	tr := triptest.Large(6, 4, 3)
	tr.Settings.Seconds = 0
	_, _, _, without := plan(t, tr)
	tr.Settings.Seconds = 0.1
	_, _, _, with := plan(t, tr)
	more := 0
	for i := range with.Batches {
		a, b := &without.Batches[i], &with.Batches[i]
		for _, second := range b.Seconds {
			k := slices.IndexFunc(a.Totals, func(x portions.Amount) bool { return x.Food == second.Food && x.Place == second.Place })
			if want := a.Totals[k].Mass.Scale(0.1); (second.Mass-want).Grams() > 1 || (want-second.Mass).Grams() > 1 {
				t.Errorf("%v for second helpings of %v", second.Mass, a.Totals[k].Mass)
			}
			more++
		}
		if len(b.Seconds) > 0 && b.Water != 0 && math.Abs(float64(b.Water)/float64(a.Water)-1.1) > 1e-3 {
			t.Errorf("water %v, without second helpings %v", b.Water, a.Water)
		}
	}
	if more == 0 || !reflect.DeepEqual(with.Intakes, without.Intakes) {
		t.Errorf("%d foods for second helpings; intakes must not change", more)
	}
}

// TestWeighable: every share is a whole number of tenths of the scale's step, and whole steps where it is large.
func TestWeighable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tr, _, _, p := plan(t, triptest.Trip().Draw(t, "trip"))
		spoon := max(units.Milligram, tr.Settings.ScaleStep/10)
		for _, batch := range p.Batches {
			for _, total := range batch.Totals {
				if total.Mass%spoon != 0 && tr.Food(total.Food).PieceMass == 0 {
					t.Errorf("%v cannot be measured in steps of %v", total.Mass, spoon)
				}
			}
		}
	})
}

// TestDaysMeetTheNeed: a day within the bounds of the settings, or a finding that tells why not; unknown figures are counted.
func TestDaysMeetTheNeed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tr, n, _, p := plan(t, triptest.Trip().Draw(t, "trip"))
		for i, intake := range p.Intakes {
			for d, eaten := range intake.Days {
				target, kcal := float64(n.Members[i].Days[d].TargetKcal), float64(eaten.Kcal)
				code := ""
				switch {
				case target > 0 && kcal < target*tr.Settings.DayLow-1:
					code = "day-short"
				case target > 0 && kcal > target*tr.Settings.DayHigh+1:
					code = "day-over"
				}
				said := slices.IndexFunc(p.Findings, func(f findings.Finding) bool {
					return (f.Code == "day-short" || f.Code == "day-over") && speaksOf(f, d+1, intake.Member)
				})
				if (said >= 0) != (code != "") || said >= 0 && p.Findings[said].Code != code {
					t.Errorf("day %d of member %d: %.0f of %.0f kcal, want finding %q, have place %d", d+1, intake.Member, kcal, target, code, said)
				}
			}
		}
	})
}

func speaksOf(f findings.Finding, day int, member trip.MemberID) bool {
	for one := range f.Each() {
		if one.Place.Day == day && one.Place.Member == member {
			return true
		}
	}
	return false
}

// TestNothingToEatIsToldOnce: an empty menu is one finding, not four for each member and day.
func TestNothingToEatIsToldOnce(t *testing.T) {
	tr := trip.New("Empty", 0)
	tr.Crew = append(tr.Crew, trip.NewMember(2, "Ann", 1))
	for len(tr.Days) < 4 {
		tr.Days = append(tr.Days, trip.NewDay())
	}
	_, _, _, p := plan(t, tr)
	var told []findings.Finding
	for _, f := range p.Findings {
		if f.Code == "day-short" || f.Code == "protein-short" {
			told = append(told, f)
		}
	}
	if len(told) != 1 || !strings.Contains(told[0].What.String(), "2 members get nothing to eat on days 1–4") || !strings.Contains(told[0].What.String(), "Ann (") ||
		!speaksOf(told[0], 4, 1) || !speaksOf(told[0], 4, 2) {
		t.Errorf("got %+v", told)
	}
}

func TestIntakesAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tr, _, _, p := plan(t, triptest.Trip().Draw(t, "trip"))
		if len(p.Intakes) != len(tr.Crew) {
			t.Fatalf("%d intakes for %d members", len(p.Intakes), len(tr.Crew))
		}
		for i, intake := range p.Intakes {
			for d, told := range intake.Days {
				var mass units.Mass
				foods := map[trip.FoodID]units.Mass{}
				for _, b := range p.Batches {
					for _, portion := range b.Portions {
						for _, a := range portion.Amounts {
							if b.Day == d+1 && portion.Member == tr.Crew[i].ID {
								mass += a.Mass
								foods[a.Food] += a.Mass
							}
						}
					}
				}
				sodium, unknown := 0.0, 0
				for id, m := range foods {
					food := tr.Food(id)
					if mg, ok := food.Per100g.SodiumMilligrams.Get(); ok {
						sodium += mg * food.EatenGrams(m) / 100
					} else {
						unknown++
					}
				}
				if told.Food != mass || math.Abs(told.SodiumMilligrams-sodium) > 1e-6 || told.UnknownSodium != unknown {
					t.Errorf("day %d of member %d: told %+v, portions give %v, %v mg sodium and %d unknown", d+1, intake.Member, told, mass, sodium, unknown)
				}
			}
		}
	})
}

func TestOrderOfListsDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tr := triptest.Trip().Draw(t, "trip")
		_, _, _, first := plan(t, tr)
		turned := tr.Clone()
		slices.Reverse(turned.Crew)
		slices.Reverse(turned.Foods)
		slices.Reverse(turned.Recipes)
		_, _, _, second := plan(t, turned)
		if !reflect.DeepEqual(first, second) {
			a, _ := json.Marshal(first)
			b, _ := json.Marshal(second)
			t.Errorf("portions differ:\n%s\n%s", a, b)
		}
	})
}

// table is a day with one food for each meal, 100 g a standard eater.
func table(foods map[trip.Meal]trip.Food) *trip.Trip {
	tr := &trip.Trip{
		Groups: []trip.CookGroup{{ID: 1, Name: "Larch"}}, Settings: trip.DefaultSettings(),
		Crew: []trip.Member{{ID: 1, Name: "Ada", Group: 1, Age: 40, BodyMass: 60 * units.Kilogram, Appetite: 1, GivenNeed: optional.Of(units.Kcal(2400))}},
		Days: []trip.Day{{}},
	}
	for i, meal := range trip.Meals() {
		food, ok := foods[meal]
		if !ok {
			continue
		}
		id := int64(i + 1)
		food.ID, food.Name, food.Storage.TCS = trip.FoodID(id), string(meal)+" food", trip.TCSNo
		tr.Foods = append(tr.Foods, food)
		tr.Recipes = append(tr.Recipes, trip.Recipe{ID: trip.RecipeID(id), Name: string(meal), Meals: []trip.Meal{meal}, MinScale: 0.5, MaxScale: 3,
			Ingredients: []trip.Ingredient{{Food: food.ID, Amount: 100 * units.Gram, Role: trip.Base, Place: trip.InPot}}})
		tr.Menu = append(tr.Menu, trip.Cell{Day: 1, Meal: meal, Group: 1, Dishes: []trip.Dish{{Recipe: trip.RecipeID(id)}}})
		tr.Days[0].Meals = append(tr.Days[0].Meals, meal)
	}
	return tr
}

func food(kcal, protein float64) trip.Food {
	f := trip.Food{}
	f.Per100g.Kcal, f.Per100g.ProteinGrams = units.Kcal(kcal), optional.Of(protein)
	return f
}

func TestMealsBringTheirShare(t *testing.T) {
	same := food(400, 20)
	tr := table(map[trip.Meal]trip.Food{trip.Breakfast: same, trip.Lunch: same, trip.Dinner: same, trip.Snack: same})
	_, _, _, p := plan(t, tr)
	want := []units.Mass{132, 138, 180, 150} // 2400 kcal by 0.22, 0.23, 0.30, 0.25 at 4 kcal/g
	for i, b := range p.Batches {
		if b.Totals[0].Mass != want[i]*units.Gram {
			t.Errorf("%s: %v, want %d g", b.Meal, b.Totals[0].Mass, want[i])
		}
	}
	if got := float64(p.Intakes[0].Days[0].Kcal); math.Abs(got-2400) > 4 {
		t.Errorf("the day brings %.0f kcal, want 2400", got)
	}
	if len(p.Findings) != 0 {
		t.Errorf("findings on a sound day: %v", p.Findings)
	}
}

func TestDenseFoodGrows(t *testing.T) {
	lean, dense := food(350, 20), food(600, 20)
	tr := table(map[trip.Meal]trip.Food{trip.Breakfast: lean, trip.Lunch: lean, trip.Dinner: lean, trip.Snack: dense})
	_, n, _, p := plan(t, tr)
	eaten := p.Intakes[0].Days[0]
	byShare := 0.75*2400/3.5 + 0.25*2400/6
	if eaten.Food.Grams() > byShare-20 {
		t.Errorf("%v of food, no lighter than %.0f g by shares alone", eaten.Food, byShare)
	}
	if math.Abs(float64(eaten.Kcal)-float64(n.Members[0].Days[0].TargetKcal)) > 5 {
		t.Errorf("the day brings %v kcal of %v", eaten.Kcal, n.Members[0].Days[0].TargetKcal)
	}
}

func TestProteinDecides(t *testing.T) {
	poor, rich := food(400, 8), food(380, 26)
	tr := table(map[trip.Meal]trip.Food{trip.Breakfast: poor, trip.Lunch: rich, trip.Dinner: rich, trip.Snack: poor})
	tr.Crew[0].ProteinPer = optional.Of(1.9) // 114 g
	_, _, _, p := plan(t, tr)
	eaten := p.Intakes[0].Days[0]
	if eaten.ProteinGrams < 113 {
		t.Errorf("%.1f g protein of 114", eaten.ProteinGrams)
	}
	if kcal := float64(eaten.Kcal); kcal < 2390 || kcal > 2400*1.1+5 {
		t.Errorf("%.0f kcal", kcal)
	}
}

func TestShortDayNamesTheRemedy(t *testing.T) {
	small := food(200, 10)
	tr := table(map[trip.Meal]trip.Food{trip.Breakfast: small, trip.Dinner: small})
	for i := range tr.Recipes {
		tr.Recipes[i].MaxScale = 1
	}
	oil := food(900, 0)
	oil.ID, oil.Name, oil.Storage.TCS = 9, "oil", trip.TCSNo
	tr.Foods = append(tr.Foods, oil)
	tr.Days[0].Meals = []trip.Meal{trip.Breakfast, trip.Dinner}
	_, n, _, p := plan(t, tr)
	missing := float64(n.Members[0].Days[0].TargetKcal)*tr.Settings.DayLow - 400
	i := slices.IndexFunc(p.Findings, func(f findings.Finding) bool { return f.Code == "day-short" })
	if i < 0 {
		t.Fatal("a hungry day has no finding")
	}
	want := "Add " + fmtGrams(5*math.Ceil(missing/9/5)) + " of oil to a meal of Ada, add a dish, or let portions be larger."
	if f := p.Findings[i]; f.Severity != findings.MustFix || f.Remedy.String() != want {
		t.Errorf("got %+v, want remedy %q", f, want)
	}
}

// TestHungryMembersOfADayAreToldTogether: each by name, with what they get and what would mend it.
func TestHungryMembersOfADayAreToldTogether(t *testing.T) {
	small := food(200, 10)
	tr := table(map[trip.Meal]trip.Food{trip.Breakfast: small, trip.Dinner: small})
	for i := range tr.Recipes {
		tr.Recipes[i].MaxScale = 1
	}
	oil := food(900, 0)
	oil.ID, oil.Name, oil.Storage.TCS = 9, "oil", trip.TCSNo
	tr.Foods = append(tr.Foods, oil)
	second := tr.Crew[0]
	second.ID, second.Name = 7, "Bo"
	tr.Crew = append(tr.Crew, second)
	tr.Days[0].Meals = []trip.Meal{trip.Breakfast, trip.Dinner}
	_, _, _, p := plan(t, tr)
	var told []findings.Finding
	for _, f := range p.Findings {
		if f.Code == "day-short" {
			told = append(told, f)
		}
	}
	if len(told) != 1 || !speaksOf(told[0], 1, tr.Crew[0].ID) || !speaksOf(told[0], 1, 7) {
		t.Fatalf("got %+v", told)
	}
	what, remedy := told[0].What.String(), told[0].Remedy.String()
	if !strings.HasPrefix(what, "2 members get too little on day 1: Ada 400 of ") || !strings.Contains(what, ", Bo 400 of ") || strings.Count(what, "%)") != 2 {
		t.Errorf("it says %q", what)
	}
	if !strings.Contains(remedy, " g of oil for Ada, ") || !strings.Contains(remedy, " g of oil for Bo; or add a dish") {
		t.Errorf("it advises %q", remedy)
	}
}

func fmtGrams(g float64) string { return units.FromGrams(g).String() }

func TestUnknownIsNotZero(t *testing.T) {
	blank := trip.Food{}
	blank.Per100g.Kcal = 400
	known := blank
	known.Per100g.CarbGrams, known.Per100g.FibreGrams = optional.Of(60.0), optional.Of(10.0)
	known.Per100g.CarbConvention = trip.TotalCarbohydrate
	label := blank
	label.Per100g.CarbGrams, label.Per100g.CarbConvention = optional.Of(50.0), trip.AvailableCarbohydrate
	half := blank // total carbohydrate says nothing about what is available while fibre is unknown
	half.Per100g.CarbGrams, half.Per100g.CarbConvention = optional.Of(60.0), trip.TotalCarbohydrate
	_, _, _, p := plan(t, table(map[trip.Meal]trip.Food{trip.Breakfast: blank, trip.Lunch: known, trip.Dinner: label, trip.Snack: half}))
	eaten := p.Intakes[0].Days[0]
	if eaten.UnknownProtein != 4 || eaten.UnknownFat != 4 || eaten.UnknownCarb != 2 || eaten.UnknownFibre != 3 || eaten.UnknownSodium != 4 {
		t.Errorf("unknown figures are not counted: %+v", eaten)
	}
	mass := func(i int) float64 { return p.Batches[i].Totals[0].Mass.Grams() }
	if want := 0.5 * (mass(1) + mass(2)); math.Abs(eaten.CarbGrams-want) > 1e-9 {
		t.Errorf("%.2f g available carbohydrate, want %.2f: both conventions bring 50 g in 100 g", eaten.CarbGrams, want)
	}
}

func BenchmarkCompute(b *testing.B) {
	tr := triptest.Large(60, 21, 1).Canonical()
	n := needs.Compute(tr, nil)
	m := menu.Resolve(tr, nil)
	for b.Loop() {
		portions.Compute(tr, n, m)
	}
}

// A main meal below 500 kcal or 20 g of protein is told of (common practice, no source); one that holds both is not.
func TestASmallDinnerIsAFinding(t *testing.T) {
	for _, c := range []struct {
		kcal, protein float64
		small         bool
	}{{490, 30, true}, {700, 15, true}, {700, 30, false}} {
		tr := table(map[trip.Meal]trip.Food{trip.Breakfast: food(400, 20), trip.Dinner: food(c.kcal, c.protein)})
		for i := range tr.Recipes {
			tr.Recipes[i].MinScale, tr.Recipes[i].MaxScale = 1, 1
		}
		_, _, _, p := plan(t, tr)
		if got := slices.ContainsFunc(p.Findings, func(f findings.Finding) bool { return f.Code == "main-meal-small" }); got != c.small {
			t.Errorf("a dinner of %.0f kcal and %.0f g protein: told %v, want %v", c.kcal, c.protein, got, c.small)
		}
	}
}
