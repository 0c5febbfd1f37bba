package menu_test

import (
	"context"
	"encoding/json"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/fill"
	"sumpter/domain/findings"
	"sumpter/domain/menu"
	"sumpter/domain/needs"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

func resolve(t interface{ Fatal(...any) }, tr *trip.Trip) (menu.Result, *trip.Trip) {
	canonical := tr.Canonical()
	return menu.Resolve(canonical, proposed(t, canonical)), canonical
}

// proposed fills the open slots where the settings ask for it.
func proposed(t interface{ Fatal(...any) }, canonical *trip.Trip) []trip.Cell {
	if !canonical.Settings.FillOpenSlots {
		return nil
	}
	p, err := fill.Menu(context.Background(), canonical, needs.Compute(canonical, nil), fill.Options{Steps: 20_000})
	if err != nil {
		t.Fatal(err)
	}
	return p.Cells
}

// each calls f for every serving.
func each(r menu.Result, f func(*menu.Slot, *menu.Dish, menu.Serving)) {
	for i := range r.Slots {
		for d := range r.Slots[i].Dishes {
			for _, batch := range r.Slots[i].Dishes[d].Batches {
				for _, serving := range batch.Servings {
					f(&r.Slots[i], &r.Slots[i].Dishes[d], serving)
				}
			}
		}
	}
}

func drawn(t *rapid.T) *trip.Trip {
	tr := triptest.Trip().Draw(t, "trip")
	tr.Settings.FillOpenSlots = rapid.Bool().Draw(t, "fill")
	return tr
}

// TestNobodyIsServedADanger is the rule that matters most: what an allergy or a diet speaks against, unknown included, is served only
// where the leader accepted it in that very cell, and then it is a finding.
func TestNobodyIsServedADanger(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		result, tr := resolve(t, drawn(t))
		each(result, func(slot *menu.Slot, dish *menu.Dish, serving menu.Serving) {
			member := tr.Member(serving.Member)
			for _, part := range serving.Parts {
				danger := slices.ContainsFunc(member.Objections(tr.Food(part.Food)), trip.Objection.Dangerous)
				if danger != part.Accepted {
					t.Errorf("%s, food %d: danger %v, accepted %v", member.Name, part.Food, danger, part.Accepted)
				}
				if danger && !acceptedIn(tr, slot, dish, serving.Member, part.Food) {
					t.Errorf("%s is served %d on day %d and nobody accepted it", member.Name, part.Food, slot.Day)
				}
				if danger && !told(result.Findings, findings.Place{Day: slot.Day, Meal: slot.Meal, Group: slot.Group, Member: member.ID, Food: part.Food, Recipe: dish.Recipe}) {
					t.Errorf("%s is served %d on day %d without a finding", member.Name, part.Food, slot.Day)
				}
			}
		})
	})
}

func acceptedIn(tr *trip.Trip, slot *menu.Slot, dish *menu.Dish, member trip.MemberID, food trip.FoodID) bool {
	cell := tr.Cell(slot.Day, slot.Meal, slot.Group)
	for _, d := range cell.Dishes {
		for _, a := range d.Accepted {
			if d.Recipe == dish.Recipe && a.Member == member && a.Food == food {
				return true
			}
		}
	}
	return false
}

func told(list []findings.Finding, place findings.Place) bool {
	return slices.ContainsFunc(list, func(f findings.Finding) bool { return f.Place == place || slices.Contains(f.Also, place) })
}

// TestWhoGoesWithoutIsTold: everybody who eats in a slot is served something, or a finding names the slot and them or the whole group.
func TestWhoGoesWithoutIsTold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		result, _ := resolve(t, drawn(t))
		for i := range result.Slots {
			slot := &result.Slots[i]
			served := map[trip.MemberID]bool{}
			each(menu.Result{Slots: result.Slots[i : i+1]}, func(_ *menu.Slot, _ *menu.Dish, s menu.Serving) { served[s.Member] = true })
			for _, eater := range slot.Eaters {
				known := slices.ContainsFunc(result.Findings, func(f findings.Finding) bool {
					return slices.ContainsFunc(append([]findings.Place{f.Place}, f.Also...), func(at findings.Place) bool {
						return at.Day == slot.Day && at.Meal == slot.Meal && at.Group == slot.Group && (at.Member == eater || at.Member == 0)
					})
				})
				if !served[eater] && !known {
					t.Errorf("member %d gets no %s on day %d and nobody says so", eater, slot.Meal, slot.Day)
				}
			}
		}
	})
}

func TestSlotsAreSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		result, tr := resolve(t, drawn(t))
		for i := range result.Slots {
			slot := &result.Slots[i]
			if !tr.Days[slot.Day-1].Eats(slot.Meal) || !slices.Equal(slot.Eaters, tr.Eaters(slot.Day, slot.Group)) || len(slot.Eaters) == 0 {
				t.Errorf("slot %+v is not eaten from the packs by these", slot)
			}
			if i > 0 && !before(&result.Slots[i-1], slot) {
				t.Errorf("slots %d and %d are out of order", i-1, i)
			}
			for d := range slot.Dishes {
				checkDish(t, tr, slot, &slot.Dishes[d])
			}
		}
	})
}

func before(a, b *menu.Slot) bool {
	if a.Day != b.Day {
		return a.Day < b.Day
	}
	if a.Meal != b.Meal {
		return trip.MealOrder(a.Meal) < trip.MealOrder(b.Meal)
	}
	return a.Group < b.Group
}

// checkDish holds a dish against its recipe: one pot for each batch, foods of the recipe or its swaps, each eater once.
func checkDish(t *rapid.T, tr *trip.Trip, slot *menu.Slot, dish *menu.Dish) {
	recipe, seen, size := tr.Recipe(dish.Recipe), map[trip.MemberID]bool{}, 1<<30
	for _, batch := range dish.Batches {
		if len(batch.Servings) > size {
			t.Errorf("a larger batch after a smaller one")
		}
		size = len(batch.Servings)
		pot := potOf(recipe, batch.Servings[0])
		for k, serving := range batch.Servings {
			if seen[serving.Member] || !slices.Contains(slot.Eaters, serving.Member) || k > 0 && serving.Member < batch.Servings[k-1].Member {
				t.Errorf("member %d is served twice, out of turn, or does not eat here", serving.Member)
			}
			seen[serving.Member] = true
			if !slices.Equal(pot, potOf(recipe, serving)) {
				t.Errorf("one pot holds two things: %v", batch)
			}
			for _, part := range serving.Parts {
				ingredient := recipe.Ingredients[part.Ingredient]
				isSwap := slices.ContainsFunc(ingredient.Swaps, func(s trip.Swap) bool { return s.Food == part.Food })
				if part.Swapped && !isSwap || !part.Swapped && part.Food != ingredient.Food {
					t.Errorf("part %+v is not in the recipe", part)
				}
			}
		}
	}
}

func potOf(recipe *trip.Recipe, serving menu.Serving) []string {
	var pot []string
	for _, part := range serving.Parts {
		if recipe.Ingredients[part.Ingredient].Place == trip.InPot {
			pot = append(pot, string(rune(part.Ingredient))+"/"+string(rune(part.Food)))
		}
	}
	return pot
}

// TestOrderOfListsDoesNotMatter: turning every list of the trip gives the same menu.
func TestOrderOfListsDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tr := drawn(t)
		first, _ := resolve(t, tr)
		turned := tr.Clone()
		slices.Reverse(turned.Crew)
		slices.Reverse(turned.Foods)
		slices.Reverse(turned.Recipes)
		slices.Reverse(turned.Groups)
		slices.Reverse(turned.Menu)
		second, _ := resolve(t, turned)
		if !reflect.DeepEqual(first, second) {
			a, _ := json.Marshal(first)
			b, _ := json.Marshal(second)
			t.Errorf("menus differ:\n%s\n%s", a, b)
		}
	})
}

// kitchen is a small trip: one dinner, whose recipe the test sets.
func kitchen(recipe trip.Recipe, crew ...trip.Member) *trip.Trip {
	food := func(id trip.FoodID, name string, allergens map[trip.Allergen]trip.Presence, diets map[trip.Diet]trip.Suitability) trip.Food {
		f := trip.Food{ID: id, Name: name, Allergens: map[trip.Allergen]trip.Presence{}, Diets: diets}
		f.Per100g.Kcal = 400
		for _, a := range trip.DeclaredAllergens() {
			f.Allergens[a] = trip.Free
		}
		for a, p := range allergens {
			f.Allergens[a] = p
		}
		return f
	}
	vegan := map[trip.Diet]trip.Suitability{trip.Vegan: trip.Suits}
	tr := &trip.Trip{
		Groups: []trip.CookGroup{{ID: 1, Name: "Larch"}},
		Days:   []trip.Day{{Meals: []trip.Meal{trip.Dinner}}},
		Foods: []trip.Food{
			food(1, "pasta", map[trip.Allergen]trip.Presence{trip.Gluten: trip.Contains, trip.Wheat: trip.Contains}, vegan),
			food(2, "corn pasta", nil, vegan),
			food(3, "cheese", map[trip.Allergen]trip.Presence{trip.Milk: trip.Contains}, map[trip.Diet]trip.Suitability{trip.Vegan: trip.DoesNotSuit}),
			food(4, "seeds", nil, vegan),
			food(5, "unread sauce", map[trip.Allergen]trip.Presence{trip.Gluten: trip.NotKnown}, nil),
		},
		Settings: trip.DefaultSettings(),
	}
	recipe.ID, recipe.Name, recipe.MinScale, recipe.MaxScale, recipe.Meals = 1, "Supper", 0.5, 2, []trip.Meal{trip.Dinner}
	tr.Recipes = []trip.Recipe{recipe}
	for i := range crew {
		crew[i].ID, crew[i].Group, crew[i].Name = trip.MemberID(i+1), 1, string(rune('A'+i))
		crew[i].BodyMass, crew[i].Appetite, crew[i].Age = 70*units.Kilogram, 1, 30
	}
	tr.Crew = crew
	tr.Menu = []trip.Cell{{Day: 1, Meal: trip.Dinner, Group: 1, Dishes: []trip.Dish{{Recipe: 1}}}}
	return tr
}

func part(food trip.FoodID, place trip.Place, swaps ...trip.Swap) trip.Ingredient {
	return trip.Ingredient{Food: food, Amount: 100 * units.Gram, Role: trip.Base, Place: place, Swaps: swaps}
}

var (
	coeliac  = trip.Member{Allergies: []trip.Allergy{{Allergen: trip.Gluten, Severe: true}}}
	vegan    = trip.Member{Diets: []trip.Diet{trip.Vegan}}
	anyone   = trip.Member{}
	cornEach = trip.Swap{Food: 2, Amount: 100 * units.Gram}
	cornAll  = trip.Swap{Food: 2, Amount: 100 * units.Gram, ForAll: true}
)

func TestPots(t *testing.T) {
	cases := []struct {
		name   string
		recipe trip.Recipe
		crew   []trip.Member
		want   string // batches: member:food+food
	}{
		{"one pot for all", trip.Recipe{Ingredients: []trip.Ingredient{part(1, trip.InPot, cornAll)}}, []trip.Member{anyone, coeliac, anyone}, "1:2 2:2 3:2"},
		{"a swap for one is a pot apart, the larger first", trip.Recipe{Ingredients: []trip.Ingredient{part(1, trip.InPot, cornEach)}}, []trip.Member{coeliac, anyone, anyone}, "2:1 3:1 | 1:2"},
		{"bowls differ in one pot", trip.Recipe{Ingredients: []trip.Ingredient{part(2, trip.InPot), part(3, trip.AtBowl, trip.Swap{Food: 4, Amount: units.Gram})}}, []trip.Member{vegan, anyone}, "1:2+4 2:2+3"},
		{"left out", trip.Recipe{Ingredients: []trip.Ingredient{part(2, trip.InPot), part(3, trip.AtBowl, trip.Swap{})}}, []trip.Member{vegan, anyone}, "1:2 2:2+3"},
		{"unknown is not safe", trip.Recipe{Ingredients: []trip.Ingredient{part(2, trip.InPot), part(5, trip.InPot)}}, []trip.Member{coeliac, anyone}, "2:2+5"},
		{"nothing left of it", trip.Recipe{Ingredients: []trip.Ingredient{part(3, trip.InPot, trip.Swap{})}}, []trip.Member{vegan, anyone}, "2:3"},
		{"a dislike takes the swap", trip.Recipe{Ingredients: []trip.Ingredient{part(1, trip.InPot, cornEach)}}, []trip.Member{{Dislikes: []trip.FoodID{1}}, anyone}, "1:2 | 2:1"},
		{"a dislike without a swap is served", trip.Recipe{Ingredients: []trip.Ingredient{part(1, trip.InPot)}}, []trip.Member{{Dislikes: []trip.FoodID{1}}, anyone}, "1:1 2:1"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			result, _ := resolve(t, kitchen(c.recipe, slices.Clone(c.crew)...))
			if got := batches(result); got != c.want {
				t.Errorf("got %s, want %s", got, c.want)
			}
		})
	}
}

func batches(result menu.Result) string {
	var pots []string
	for _, dish := range result.Slots[0].Dishes {
		for _, batch := range dish.Batches {
			var servings []string
			for _, s := range batch.Servings {
				var foods []string
				for _, p := range s.Parts {
					foods = append(foods, string(rune('0'+p.Food)))
				}
				servings = append(servings, string(rune('0'+s.Member))+":"+strings.Join(foods, "+"))
			}
			pots = append(pots, strings.Join(servings, " "))
		}
	}
	return strings.Join(pots, " | ")
}

// A dish somebody may not eat must not be advised to be for everybody.
func TestWhoGetsNothingIsToldWhy(t *testing.T) {
	for name, c := range map[string]struct {
		second trip.Member
		says   string
	}{
		"may eat it": {anyone, "for everybody"}, "may not": {coeliac, "contains"},
	} {
		tr := kitchen(trip.Recipe{Ingredients: []trip.Ingredient{part(1, trip.InPot)}}, anyone, c.second)
		tr.Menu[0].Dishes[0].For = []trip.MemberID{1}
		result, _ := resolve(t, tr)
		remedies := ""
		for _, f := range result.Findings {
			if f.Code == "nothing-served" {
				remedies += f.Remedy.String()
			}
		}
		if !strings.Contains(remedies, c.says) || name == "may not" && strings.Contains(remedies, "everybody") {
			t.Errorf("%s: the remedy is %q", name, remedies)
		}
	}
}

func TestFindings(t *testing.T) {
	plain := trip.Recipe{Ingredients: []trip.Ingredient{part(1, trip.InPot)}}
	accepted := kitchen(plain, coeliac, anyone)
	accepted.Menu[0].Dishes[0].Accepted = []trip.Acceptance{{Member: 1, Food: 1, Reason: "gluten-free this time"}}
	open := kitchen(plain, anyone)
	open.Menu, open.Settings.FillOpenSlots = nil, false
	locked := kitchen(plain, anyone)
	locked.Menu[0].Dishes, locked.Menu[0].Locked = nil, true
	others := kitchen(plain, anyone, anyone)
	others.Menu[0].Dishes[0].For = []trip.MemberID{1}
	stirred := kitchen(trip.Recipe{Water: units.Litre, Ingredients: []trip.Ingredient{part(1, trip.InPot, cornEach)}}, coeliac, anyone)
	beside := kitchen(trip.Recipe{Ingredients: []trip.Ingredient{part(1, trip.InPot, cornEach)}}, coeliac, anyone)
	lunch := kitchen(plain, anyone)
	lunch.Recipes[0].Meals = []trip.Meal{trip.Lunch}
	cases := []struct {
		name     string
		trip     *trip.Trip
		code     string
		severity findings.Severity
		member   trip.MemberID
		says     []string
	}{
		{"cannot be served", kitchen(plain, coeliac, anyone), "cannot-be-served", findings.MustFix, 1, []string{"pasta", "allergic to gluten", "contains"}},
		{"accepted", accepted, "danger-accepted", findings.MustFix, 1, []string{"by your decision"}},
		{"open", open, "slot-open", findings.MustFix, 0, []string{"dinner on day 1"}},
		{"locked empty", locked, "slot-empty", findings.Note, 0, []string{"locked"}},
		{"for others only", others, "nothing-served", findings.MustFix, 2, []string{"meant for B"}},
		{"traces at the stove", stirred, "cooked-beside", findings.LookAt, 1, []string{"dinner of day 1", "stove"}},
		{"traces on hands", beside, "eaten-beside", findings.Note, 1, []string{"dinner of day 1"}},
		{"another meal", lunch, "other-meal", findings.Note, 0, []string{"Supper is dinner"}},
		{"dislike", kitchen(plain, trip.Member{Dislikes: []trip.FoodID{1}}), "disliked", findings.Note, 1, []string{"once"}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			result, _ := resolve(t, c.trip)
			var codes []string
			for _, f := range result.Findings {
				codes = append(codes, f.Code)
				if f.Code != c.code {
					continue
				}
				if f.Severity != c.severity || f.Place.Member != c.member || f.Stage != findings.Menu || f.Remedy.IsZero() || f.Why.IsZero() {
					t.Errorf("got %+v", f)
				}
				for _, word := range c.says {
					if !strings.Contains(f.What.String(), word) {
						t.Errorf("%q does not say %q", f.What, word)
					}
				}
			}
			if others := slices.DeleteFunc(slices.Clone(codes), func(code string) bool { return code == c.code || code == "eaten-beside" }); len(others) > 0 || !slices.Contains(codes, c.code) {
				t.Errorf("findings %v, want %s", codes, c.code)
			}
		})
	}
}

func BenchmarkResolve(b *testing.B) {
	tr := triptest.Large(60, 21, 1).Canonical()
	for b.Loop() {
		menu.Resolve(tr, nil)
	}
}
