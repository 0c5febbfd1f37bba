package loads

import (
	"context"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sumpter/app/demo"
	"sumpter/domain/carry"
	"sumpter/domain/plan"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

func planned(t *testing.T, on *trip.Trip) *view {
	t.Helper()
	p, err := plan.Make(context.Background(), on, plan.Options{})
	if err != nil || p.Refused() {
		t.Fatalf("not planned: %v %v", err, p.Findings)
	}
	return newView(p, nil)
}

func views(t *testing.T) []*view {
	example := demo.Trip()
	return []*view{planned(t, &example), planned(t, triptest.Large(14, 6, 3))}
}

// The things listed are what the loads are made of: every kind adds up to the
// figure of the plan, for everybody, on every day.
func TestThingsAddUpToTheLoad(t *testing.T) {
	for _, v := range views(t) {
		for day := 1; day <= len(v.plan.Trip.Days); day++ {
			for i := range v.plan.Trip.Crew {
				m := &v.plan.Trip.Crew[i]
				d, _ := v.load(m.ID, day)
				var food, gear, fuel units.Mass
				for _, x := range v.things(m.ID, day) {
					switch x.kind {
					case carry.BagItem:
						food += x.mass
					case carry.GearItem:
						gear += x.mass
					case carry.FuelItem:
						fuel += x.mass
					}
				}
				if food != d.Food || gear != d.Gear || fuel != d.Fuel {
					t.Fatalf("%s, day %d: food %v of %v, gear %v of %v, fuel %v of %v", m.Name, day, food, d.Food, gear, d.Gear, fuel, d.Fuel)
				}
			}
		}
	}
}

func TestMembersStandByGroupThenName(t *testing.T) {
	for _, v := range views(t) {
		sorted := slices.IsSortedFunc(v.order, func(a, b int) int {
			left, right := v.plan.Trip.Crew[a], v.plan.Trip.Crew[b]
			if left.Group != right.Group {
				return int(left.Group - right.Group)
			}
			if left.Name < right.Name {
				return -1
			}
			return 1
		})
		if !sorted || len(v.order) != len(v.plan.Trip.Crew) {
			t.Errorf("order %v", v.order)
		}
	}
}

// A move takes from one what it gives to the other, and says so in shares.
func TestAMoveConservesMass(t *testing.T) {
	all := views(t)
	rapid.Check(t, func(rt *rapid.T) {
		v := rapid.SampledFrom(all).Draw(rt, "trip")
		day := rapid.IntRange(1, len(v.plan.Trip.Days)).Draw(rt, "day")
		from := rapid.SampledFrom(v.plan.Trip.Crew).Draw(rt, "from").ID
		to := rapid.SampledFrom(v.plan.Trip.Crew).Draw(rt, "to").ID
		// Water is poured by the plan; no hand moves it.
		things := slices.DeleteFunc(v.things(from, day), func(t thing) bool { return t.kind == waterKind })
		if len(things) == 0 {
			return
		}
		m := move{thing: rapid.SampledFrom(things).Draw(rt, "thing"), to: to}
		beforeFrom, capFrom := v.load(from, day)
		beforeTo, capTo := v.load(to, day)
		o := v.weigh(m, day)
		moved := m.thing.mass
		if from == to || o.obstacle != "" {
			moved = 0
		}
		if o.from.Load != beforeFrom.Load-moved || o.to.Load != beforeTo.Load+moved {
			rt.Fatalf("%v moved: %v → %v and %v → %v", moved, beforeFrom.Load, o.from.Load, beforeTo.Load, o.to.Load)
		}
		for _, c := range []struct {
			d   carry.Day
			cap units.Mass
		}{{o.from, capFrom}, {o.to, capTo}} {
			if want := float64(c.d.Load) / float64(c.cap); c.d.Present && math.Abs(c.d.Share-want) > 1e-9 {
				rt.Fatalf("share %v, want %v", c.d.Share, want)
			}
			if sum := c.d.OwnKit + c.d.Food + c.d.Gear + c.d.Fuel + c.d.Waste; c.d.Present && sum != c.d.Load {
				rt.Fatalf("the parts make %v, the load is %v", sum, c.d.Load)
			}
		}
		if worst := v.worstAfter(m, day); worst+1e-12 < max(o.from.Share, o.to.Share) {
			rt.Fatalf("the heaviest share is said to be %v", worst)
		}
	})
}

func TestWeighSaysByHowMuchALimitIsPassed(t *testing.T) {
	example := demo.Trip()
	v := planned(t, &example)
	var tent thing
	for _, m := range v.plan.Trip.Crew {
		for _, x := range v.things(m.ID, 1) {
			if x.kind == carry.GearItem && x.mass == 2900*units.Gram && x.group == 1 && m.Name != "Ruth" {
				tent = x
			}
		}
	}
	ruth := v.plan.Trip.Crew[4]
	o := v.weigh(move{thing: tent, to: ruth.ID}, 1)
	before, _ := v.load(ruth.ID, 1)
	if want := before.Load + tent.mass - 9500*units.Gram; o.over != want || o.obstacle != "" {
		t.Errorf("over by %v (%s), want %v", o.over, o.obstacle, want)
	}
}
