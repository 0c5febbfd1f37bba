package bags_test

import (
	"reflect"
	"slices"
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
				water += b.Water + b.PourOff
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
			}
			if sum != b.Food || b.Tare < 0 || b.Volume <= 0 || b.Eaters < 1 || b.Leg != trip.LegOf(tr.Legs(), b.Day) || b.Leg != trip.LegOf(tr.Legs(), b.LastDay) {
				rt.Fatalf("bag %+v does not add up", b)
			}
			for _, u := range b.Uses {
				var shared units.Mass
				for _, c := range u.Contents {
					got[held{u.Day, u.Meal, b.Group, u.Recipe, c.Food}] += c.Mass
					sum -= c.Mass
				}
				for _, s := range u.Shares {
					shared += s.Mass
				}
				if len(u.Shares) > 0 != (u.Place == trip.AtBowl) || len(u.Shares) > 0 && shared != u.Mass() {
					rt.Fatalf("bag %s shares %v out of %v", b.Key, shared, u.Mass())
				}
				poured += u.Water
				if u.PourOff > u.Water {
					rt.Fatalf("bag %s: more is poured off than put in: %+v", b.Key, u)
				}
			}
			if sum != 0 {
				rt.Fatalf("bag %s is not eaten up: %v left", b.Key, sum)
			}
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
			if i == 0 {
				continue
			}
			store := func(b *bags.Bag) bool { return b.Kind == bags.StoreBag || b.Kind == bags.OwnBag && len(b.Uses) > 1 }
			last := &r.Bags[i-1]
			if b.Day < last.Day || b.Day == last.Day && (store(&b) && !store(last) || !store(&b) && !store(last) && trip.MealOrder(b.Meal) < trip.MealOrder(last.Meal)) {
				rt.Fatalf("bag %s comes after %s", b.Key, last.Key)
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
			for _, u := range b.Uses {
				for _, c := range u.Contents {
					if b.Member != 0 && slices.ContainsFunc(tr.Member(b.Member).Objections(tr.Food(c.Food)), trip.Objection.Dangerous) && !accepted(tr, &b, &u, c.Food) {
						rt.Fatalf("bag %s holds food %d", b.Key, c.Food)
					}
				}
			}
		}
		checkShares(rt, p, r)
	})
}

// accepted tells whether the leader took a food on by hand for the member
// whose bag it is in.
func accepted(t *trip.Trip, b *bags.Bag, u *bags.Use, food trip.FoodID) bool {
	return slices.ContainsFunc(t.Menu, func(c trip.Cell) bool {
		return c.Day == u.Day && c.Meal == u.Meal && c.Group == b.Group && slices.ContainsFunc(c.Dishes, func(d trip.Dish) bool {
			return slices.ContainsFunc(d.Accepted, func(a trip.Acceptance) bool { return a.Member == b.Member && a.Food == food })
		})
	})
}

// checkShares: what the bags of the bowls share out is what each eater is
// portioned, food by food where a bag holds one, and in all. A pinch for the
// pot may lie with what is eaten at the bowl.
func checkShares(rt *rapid.T, p portions.Result, r bags.Result) {
	type part struct {
		held
		member trip.MemberID
	}
	want, got := map[part]units.Mass{}, map[part]units.Mass{}
	for _, b := range p.Batches {
		var pot, all units.Mass
		for _, a := range b.Totals {
			all += a.Mass
			if a.Place == trip.InPot {
				pot += a.Mass
			}
		}
		pinch := float64(pot) < 0.05*float64(all) && len(b.Seconds) == 0
		for _, portion := range b.Portions {
			for _, a := range portion.Amounts {
				if b.Meal == trip.Snack || a.Place == trip.AtBowl || pinch {
					want[part{held{b.Day, b.Meal, b.Group, b.Recipe, 0}, portion.Member}] += a.Mass
				}
			}
		}
	}
	for _, b := range r.Bags {
		for _, u := range b.Uses {
			for _, s := range u.Shares {
				got[part{held{u.Day, u.Meal, b.Group, u.Recipe, 0}, s.Member}] += s.Mass
			}
		}
	}
	if !reflect.DeepEqual(want, got) {
		rt.Fatalf("portioned %v, shared out %v", want, got)
	}
}

// Nobody harmed by traces takes from a bag into which others reach with a
// spoon that has been in what harms them at table on that leg, or with hands
// that have held it on that day.
func TestNobodyMeetsTheirAllergenInASharedBag(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		tr := triptest.Trip().Draw(rt, "trip").Canonical()
		p, r := packed(tr)
		for i := range r.Bags {
			b := &r.Bags[i]
			sharers := sharers(b)
			if len(sharers) < 2 {
				continue
			}
			for _, id := range sharers {
				for _, allergy := range tr.Member(id).Allergies {
					if food := harmfulNear(tr, p, b, allergy); food != 0 {
						rt.Fatalf("%s shares bag %s with others who eat food %d: %s", tr.Member(id).Name, b.Key, food, allergy.Allergen)
					}
				}
			}
		}
	})
}

// sharers are those whose bowls are filled from a bag.
func sharers(b *bags.Bag) []trip.MemberID {
	var list []trip.MemberID
	for _, u := range b.Uses {
		for _, s := range u.Shares {
			list = append(list, s.Member)
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// harmfulNear looks for a food with an allergen in what a bag's group eats.
func harmfulNear(t *trip.Trip, p portions.Result, b *bags.Bag, allergy trip.Allergy) trip.FoodID {
	hands := b.Kind != bags.StoreBag && byHand(t, b)
	for _, batch := range p.Batches {
		near := batch.Day == b.Day && (batch.Meal != trip.Snack || hands)
		if b.Kind == bags.StoreBag {
			near = trip.LegOf(t.Legs(), batch.Day) == b.Leg && batch.Meal != trip.Snack
		}
		if batch.Group != b.Group || !near {
			continue
		}
		for _, a := range batch.Totals {
			if state := t.Food(a.Food).Presence(allergy.Allergen); state == trip.Contains || allergy.Severe && state != trip.Free {
				return a.Food
			}
		}
	}
	return 0
}

// byHand tells a bag of pieces and grains that are no topping of a pot.
func byHand(t *trip.Trip, b *bags.Bag) bool {
	for _, i := range t.Recipe(b.Recipe).Ingredients {
		if i.Place == trip.InPot && b.Meal != trip.Snack {
			return false
		}
	}
	return slices.ContainsFunc(b.Contents, func(c bags.Content) bool {
		form := t.Food(c.Food).Form
		return form == trip.Dry || form == trip.Piece
	})
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
				if bottled := slices.ContainsFunc(tr.Bags, func(x trip.BagType) bool { return x.Name == b.Type && x.Liquids }); wet && !bottled && !b.Double && b.Type != "" {
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
