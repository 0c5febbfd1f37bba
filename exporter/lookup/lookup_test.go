package lookup

import (
	"slices"
	"testing"

	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/plan"
	"sumpter/domain/trip"
	"sumpter/exporter/plantest"
)

func TestThingsAreFoundByTheirKeys(t *testing.T) {
	p := plantest.Small()
	l := New(p)
	bag := l.Bag("d3 dinner g1 r1 b1 pot 1")
	if bag == nil || bag.Code != "3D-A" {
		t.Fatalf("found bag %+v", bag)
	}
	if box := l.Box(bag.Key); box == nil || l.Point(box.Point).Name != "Valley post" {
		t.Errorf("found box %+v", box)
	}
	if member := l.Member(2); member == nil || member.Name != plantest.WideName {
		t.Errorf("found member %+v", member)
	}
	if gear := l.Gear("1"); gear == nil || gear.Name != "stove" {
		t.Errorf("found gear %+v", gear)
	}
	if fate := l.Fate(3, trip.Dinner, 1, 2); fate == nil || fate.Why.String() != "nobody said how it keeps" {
		t.Errorf("found fate %+v", fate)
	}
	if meal := l.Meal(2, trip.Dinner, 1); meal == nil || !meal.Cold {
		t.Errorf("found meal %+v", meal)
	}
	if container := l.Fuel("leg2 group1 gas mix 1"); container == nil || container.Name != "small canister" {
		t.Errorf("found container %+v", container)
	}
}

func TestWhatIsMissingIsNil(t *testing.T) {
	l := New(&plan.Plan{})
	if l.Trip == nil || l.Member(1) != nil || l.Group(1) != nil || l.Food(1) != nil || l.Recipe(1) != nil || l.Point(1) != nil ||
		l.Gear("1") != nil || l.Bag("x") != nil || l.Fuel("x") != nil || l.Meal(1, trip.Dinner, 1) != nil || l.Box("x") != nil ||
		l.Carriers("x") != nil || l.Fate(1, trip.Dinner, 1, 1) != nil || l.Pot(&bags.Bag{}) != nil {
		t.Error("something was found in an empty plan")
	}
}

func TestCarriersFollowHandOvers(t *testing.T) {
	stage := func(day int, carrier trip.MemberID) carry.Stage {
		return carry.Stage{FirstDay: day, LastDay: day, Items: []carry.Item{{Kind: carry.BagItem, Key: "bag", Carrier: carrier}, {Kind: carry.GearItem, Key: "bag", Carrier: 9}}}
	}
	p := &plan.Plan{Carry: carry.Result{Stages: []carry.Stage{stage(1, 1), stage(2, 1), stage(3, 2)}}}
	if got, want := New(p).Carriers("bag"), []Carrier{{1, 1}, {3, 2}}; !slices.Equal(got, want) {
		t.Errorf("carriers %v, want %v", got, want)
	}
}

func TestBagsOfAPotStayTogether(t *testing.T) {
	use := func(run int, place trip.Place) bags.Use {
		return bags.Use{Day: 1, Meal: trip.Dinner, Recipe: 7, Batch: run, Place: place}
	}
	bag := func(uses ...bags.Use) bags.Bag { return bags.Bag{Group: 1, Uses: uses} }
	p := &plan.Plan{Bags: bags.Result{Bags: []bags.Bag{
		bag(use(1, trip.InPot)), bag(use(2, trip.InPot)), bag(use(1, trip.AtBowl)), bag(use(1, trip.AtBowl), use(2, trip.InPot), use(2, trip.AtBowl)),
	}}}
	l := New(p)
	if got := l.Pot(&p.Bags.Bags[0]); len(got) != 3 || got[1] != &p.Bags.Bags[2] || got[2] != &p.Bags.Bags[3] {
		t.Errorf("the first pot has %d bags", len(got))
	}
	if got := l.Batch(1, trip.Dinner, 1, 7, 2); len(got) != 2 || got[0] != &p.Bags.Bags[1] || got[1] != &p.Bags.Bags[3] {
		t.Errorf("the second pot has %d bags", len(got))
	}
	if got := l.Pot(&p.Bags.Bags[3]); got != nil {
		t.Errorf("a store is made together with %d bags", len(got))
	}
}
