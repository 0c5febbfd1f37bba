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
		checkSharedBowls(rt, tr, p, r)
	})
}

// checkSharedBowls: a bag for several bowls holds only what somebody who gets
// all of it may eat. The number of eaters of a batch is the sum over its bags.
func checkSharedBowls(rt *rapid.T, tr *trip.Trip, p portions.Result, r bags.Result) {
	for _, batch := range p.Batches {
		bowls := 0
		for _, portion := range batch.Portions {
			if batch.Meal != trip.Snack && slices.ContainsFunc(portion.Amounts, func(a portions.Amount) bool { return a.Place == trip.AtBowl }) {
				bowls++
			}
		}
		lots := map[string]int{}
		for _, b := range r.Bags {
			if b.Day == batch.Day && b.Meal == batch.Meal && b.Group == batch.Group && b.Recipe == batch.Recipe && b.Place == trip.AtBowl && b.Meal != trip.Snack {
				name, _, _ := strings.Cut(b.Key, " bowl")
				lots[name] = b.Eaters
			}
		}
		if len(tr.Cell(batch.Day, batch.Meal, batch.Group).Dishes) > 1 || batch.Batch > 0 {
			continue
		}
		others := 0
		for _, b2 := range p.Batches {
			if b2.Day == batch.Day && b2.Meal == batch.Meal && b2.Group == batch.Group && b2.Batch > 0 {
				others++
			}
		}
		sum := 0
		for _, n := range lots {
			sum += n
		}
		if others == 0 && sum != bowls {
			rt.Fatalf("%d bowls, bags for %d: %v", bowls, sum, lots)
		}
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
