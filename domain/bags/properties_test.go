package bags_test

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/bags"
	"sumpter/domain/bags/bagstest"
	"sumpter/domain/cooking"
	"sumpter/domain/portions"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

type held struct {
	day    int
	meal   trip.Meal
	group  trip.GroupID
	recipe trip.RecipeID
	food   trip.FoodID
}

func packed(t *trip.Trip) (portions.Result, bags.Result) {
	p := bagstest.Batches(t)
	return p, bags.Compute(t, p, cooking.Result{}, t.Legs())
}

func TestBagsHoldWhatIsCookedToTheMilligram(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		tr := triptest.Trip().Draw(rt, "trip").Canonical()
		p, r := packed(tr)
		want, got := map[held]units.Mass{}, map[held]units.Mass{}
		var water, poured units.Volume
		for _, b := range p.Batches {
			if len(b.Totals) > 0 {
				water += b.Water
			}
			for _, a := range b.Totals {
				want[held{b.Day, b.Meal, b.Group, b.Recipe, a.Food}] += a.Mass
			}
		}
		for _, b := range r.Bags {
			var sum units.Mass
			for _, c := range b.Contents {
				if c.Mass <= 0 {
					rt.Fatalf("bag %s holds %v of food %d", b.Key, c.Mass, c.Food)
				}
				sum += c.Mass
				got[held{b.Day, b.Meal, b.Group, b.Recipe, c.Food}] += c.Mass
			}
			if sum != b.Food || b.Tare < 0 || b.Volume <= 0 || b.Eaters < 1 || b.Leg != trip.LegOf(tr.Legs(), b.Day) {
				rt.Fatalf("bag %+v does not add up", b)
			}
			poured += b.Water
		}
		if !reflect.DeepEqual(want, got) {
			rt.Fatalf("cooked %v\nbagged %v", want, got)
		}
		if water != poured {
			rt.Fatalf("batches take %v of water, bags say %v", water, poured)
		}
	})
}

func TestNamesAreUniqueAndInOrderOfEating(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		tr := triptest.Trip().Draw(rt, "trip").Canonical()
		_, r := packed(tr)
		keys := map[string]bool{}
		for i, b := range r.Bags {
			if keys[b.Key] {
				rt.Fatalf("key %s is there twice", b.Key)
			}
			keys[b.Key] = true
			if !bags.ValidCode(b.Code) {
				rt.Fatalf("code %s does not check", b.Code)
			}
			if i > 0 && (b.Code <= r.Bags[i-1].Code || len(b.Code) != len(r.Bags[i-1].Code)) {
				rt.Fatalf("code %s follows %s", b.Code, r.Bags[i-1].Code)
			}
			if i > 0 && (b.Day < r.Bags[i-1].Day || b.Day == r.Bags[i-1].Day && trip.MealOrder(b.Meal) < trip.MealOrder(r.Bags[i-1].Meal)) {
				rt.Fatalf("bag %s comes after %s", b.Key, r.Bags[i-1].Key)
			}
		}
	})
}

// No bag meant for a member holds a food that speaks against them, and every
// label tells the worst state of its contents.
func TestAllergensStayApartAndOnTheLabel(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		tr := triptest.Trip().Draw(rt, "trip").Canonical()
		p, r := packed(tr)
		for _, b := range r.Bags {
			for _, a := range trip.DeclaredAllergens() {
				worst := trip.Free
				for _, c := range b.Contents {
					worst = trip.Worse(worst, tr.Food(c.Food).Presence(a))
				}
				i := slices.IndexFunc(b.Allergens, func(x bags.Allergen) bool { return x.Allergen == a })
				if (i < 0) != (worst == trip.Free) || i >= 0 && b.Allergens[i].Presence != worst {
					rt.Fatalf("bag %s: %s is %s, the label says %+v", b.Key, a, worst, b.Allergens)
				}
			}
			if b.Member != 0 {
				for _, c := range b.Contents {
					if slices.ContainsFunc(tr.Member(b.Member).Objections(tr.Food(c.Food)), trip.Objection.Dangerous) {
						rt.Fatalf("bag %s holds food %d", b.Key, c.Food)
					}
				}
			}
		}
		checkBowls(rt, p, r)
	})
}

// checkBowls: the bags for the bowls of a recipe in a slot name as many eaters
// as get something there.
func checkBowls(rt *rapid.T, p portions.Result, r bags.Result) {
	served, named := map[held]int{}, map[held]int{}
	for _, b := range p.Batches {
		for _, portion := range b.Portions {
			if b.Meal != trip.Snack && slices.ContainsFunc(portion.Amounts, func(a portions.Amount) bool { return a.Place == trip.AtBowl && a.Mass > 0 }) {
				served[held{b.Day, b.Meal, b.Group, b.Recipe, 0}]++
			}
		}
	}
	seen := map[string]bool{}
	for _, b := range r.Bags {
		bowls, _, _ := strings.Cut(b.Key, " bowl")
		if b.Meal == trip.Snack || b.Place != trip.AtBowl || seen[bowls] {
			continue
		}
		seen[bowls] = true
		named[held{b.Day, b.Meal, b.Group, b.Recipe, 0}] += b.Eaters
	}
	if !reflect.DeepEqual(served, named) {
		rt.Fatalf("bowls served %v, bags name %v", served, named)
	}
}

func TestKindsStayApart(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		tr := triptest.Trip().Draw(rt, "trip").Canonical()
		_, r := packed(tr)
		for _, b := range r.Bags {
			for _, c := range b.Contents {
				f := tr.Food(c.Food)
				wet := (f.Form == trip.Liquid || f.Form == trip.Spread) && !f.PackedAsBought
				if wet && len(b.Contents) > 1 {
					rt.Fatalf("%s runs in bag %s with others", f.Name, b.Key)
				}
				if bottled := slices.ContainsFunc(tr.Bags, func(x trip.BagType) bool { return x.Name == b.Type && x.Liquids }); wet && !bottled && !b.Double && b.Type != "no bag type" {
					rt.Fatalf("%s runs in a single bag %s", f.Name, b.Key)
				}
				if b.Melts && len(b.Contents) > 1 && !f.PackedAsBought && slices.ContainsFunc(b.Contents, func(o bags.Content) bool { return !tr.Food(o.Food).PackedAsBought && o.Food != c.Food }) && f.Storage.SoftensAt.Known() {
					heat := units.Celsius(-100)
					for d := tr.Legs()[b.Leg].FirstDay; d <= b.Day; d++ {
						heat = max(heat, tr.Days[d-1].High+units.Celsius(tr.Settings.PackSunHeat))
					}
					if heat >= f.Storage.SoftensAt.Or(0) {
						rt.Fatalf("%s melts in bag %s with others", f.Name, b.Key)
					}
				}
			}
		}
	})
}

// A bag closes: no more in it than its type holds, unless a finding says so.
func TestBagsClose(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		tr := triptest.Trip().Draw(rt, "trip").Canonical()
		_, r := packed(tr)
		for _, b := range r.Bags {
			i := slices.IndexFunc(tr.Bags, func(x trip.BagType) bool { return x.Name == b.Type })
			if i < 0 || tr.Bags[i].Liquids {
				continue
			}
			said := false
			for _, f := range r.Findings {
				said = said || f.Code == "bag-too-small" && f.Place.Food == b.Contents[0].Food
			}
			if holds := tr.Bags[i].Nominal.Scale(tr.Bags[i].Fill); b.Volume > holds && !said {
				rt.Fatalf("bag %s of %s holds %v, %v fit", b.Key, b.Type, b.Volume, holds)
			}
		}
	})
}

func TestOrderOfTheCrewChangesNothing(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		tr := triptest.Trip().Draw(rt, "trip")
		_, a := packed(tr.Canonical())
		slices.Reverse(tr.Crew)
		slices.Reverse(tr.Foods)
		slices.Reverse(tr.Bags)
		_, b := packed(tr.Canonical())
		if !reflect.DeepEqual(a, b) {
			rt.Fatal("bags depend on the order of the lists")
		}
	})
}

// 60 people, 21 days; the goal for bags and boxes together is 100 ms.
func BenchmarkCompute(b *testing.B) {
	t := triptest.Large(60, 21, 1).Canonical()
	p := bagstest.Batches(t)
	legs := t.Legs()
	for b.Loop() {
		bags.Compute(t, p, cooking.Result{}, legs)
	}
}
