package trail_test

import (
	"context"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/bags"
	"sumpter/domain/bags/bagstest"
	"sumpter/domain/carry"
	"sumpter/domain/cooking"
	"sumpter/domain/needs"
	"sumpter/domain/plan"
	"sumpter/domain/portions"
	"sumpter/domain/resupply"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// byHand is a plan of four days for two, a box after day 3, one leaving after
// day 2. Every figure is simple to add up.
func byHand() *plan.Plan {
	bag := func(key string, day, leg int) bags.Bag {
		return bagstest.EatenAtOnce(bags.Bag{Key: key, Code: key, Day: day, Leg: leg, Meal: trip.Dinner, Food: 500 * units.Gram, Kcal: 2000})
	}
	item := func(kind carry.ItemKind, key string, carrier trip.MemberID) carry.Item {
		return carry.Item{Kind: kind, Key: key, Carrier: carrier}
	}
	from := func(before trip.MemberID, item carry.Item) carry.Item {
		item.From = before
		return item
	}
	here, gone := carry.Day{Present: true, Food: 800 * units.Gram}, carry.Day{}
	dry := here
	dry.Water = 2 * units.Kilogram
	day := needs.Day{Present: true, Kcal: 2500}
	return &plan.Plan{
		Trip: &trip.Trip{Days: make([]trip.Day, 4)},
		Legs: []trip.Leg{{FirstDay: 1, LastDay: 3}, {FirstDay: 4, LastDay: 4, From: 7}},
		Bags: bags.Result{Bags: []bags.Bag{bag("one", 1, 0), bag("two", 2, 0), bag("three", 3, 0), bag("four", 4, 1)}},
		Needs: needs.Result{Members: []needs.Member{
			{Member: 1, Days: []needs.Day{day, day, day, day}}, {Member: 2, Days: []needs.Day{day, day, {}, {}}},
		}},
		Carry: carry.Result{
			Stages: []carry.Stage{
				{FirstDay: 1, LastDay: 2, Items: []carry.Item{item(carry.BagItem, "one", 1), item(carry.BagItem, "two", 2), item(carry.BagItem, "three", 2), item(carry.GearItem, "5", 2), item(carry.GearItem, "6", 1)}},
				{FirstDay: 3, LastDay: 3, Items: []carry.Item{from(2, item(carry.BagItem, "three", 1)), from(2, item(carry.GearItem, "5", 1)), from(1, item(carry.GearItem, "6", 1)), from(2, item(carry.WasteItem, "rubbish", 1))}},
				{FirstDay: 4, LastDay: 4, Leg: 1, Items: []carry.Item{item(carry.BagItem, "four", 1), from(1, item(carry.GearItem, "5", 1))}},
			},
			Members: []carry.Member{{Member: 1, Days: []carry.Day{here, dry, here, here}}, {Member: 2, Days: []carry.Day{here, here, gone, gone}}},
		},
		Cooking: cooking.Result{
			Meals: []cooking.Meal{
				{Day: 1, Group: 1, Fuel: trip.GasMix, FuelMass: 30 * units.Gram}, {Day: 2, Group: 1, Fuel: trip.GasMix, FuelMass: 20 * units.Gram},
				{Day: 2, Group: 2, Fuel: trip.GasMix, FuelMass: 90 * units.Gram}, {Day: 4, Group: 1, Fuel: trip.GasMix, FuelMass: 10 * units.Gram},
			},
			Fuel: []cooking.LegFuel{
				{Leg: 0, Group: 1, Fuel: trip.GasMix, Containers: []cooking.Container{
					{Key: "a", Fuel: 40 * units.Gram, EmptyFrom: 3}, {Key: "b", Fuel: 40 * units.Gram}, {Key: "c", Fuel: 100 * units.Gram, Ahead: true},
				}},
				{Leg: 1, Group: 1, Fuel: trip.GasMix, Containers: []cooking.Container{{Key: "c", Fuel: 100 * units.Gram, Brought: true}}},
			},
			Water: []cooking.Water{{Day: 2, Member: 1, Drinking: 3 * units.Litre}},
		},
		Resupply: resupply.Result{Boxes: []resupply.Box{{Point: 7, Leg: 1, Bags: []string{"four"}, TurnBackBy: 1}}},
	}
}

func TestADaysBagsAndWhoHasThem(t *testing.T) {
	done := &trip.Progress{Ends: []trip.BagEnd{{Bag: "two", End: trip.ThrownAway, Day: 2}}}
	day := trail.On(byHand(), done, 2)
	if len(day.Bags) != 1 || day.Bags[0].Key != "two" || day.Bags[0].Carrier != 2 || day.Bags[0].End != trip.ThrownAway {
		t.Errorf("bags %+v", day.Bags)
	}
	if next := trail.On(byHand(), done, 3).Bags; len(next) != 1 || next[0].Carrier != 1 || next[0].End != "" {
		t.Errorf("day 3: %+v", next)
	}
}

func TestADaysBagsStandInTheOrderOfEating(t *testing.T) {
	p := byHand()
	use := func(day int, meal trip.Meal) bags.Use { return bags.Use{Day: day, Meal: meal} }
	p.Bags.Bags = []bags.Bag{
		{Key: "oil", Day: 1, LastDay: 2, Meal: trip.Dinner, Group: 2, Uses: []bags.Use{use(1, trip.Dinner), use(2, trip.Breakfast), use(2, trip.Dinner)}},
		{Key: "snack", Day: 1, LastDay: 2, Meal: trip.Snack, Group: 1, Uses: []bags.Use{use(1, trip.Snack), use(2, trip.Snack)}},
		{Key: "porridge", Day: 2, LastDay: 2, Meal: trip.Breakfast, Group: 1, Uses: []bags.Use{use(2, trip.Breakfast)}},
		{Key: "wraps", Day: 2, LastDay: 2, Meal: trip.Lunch, Group: 1, Uses: []bags.Use{use(2, trip.Lunch)}},
		{Key: "raisins", Day: 2, LastDay: 2, Meal: trip.Breakfast, Group: 1, Uses: []bags.Use{use(2, trip.Breakfast)}},
	}
	for day, want := range map[int][]string{1: {"oil", "snack"}, 2: {"porridge", "raisins", "oil", "wraps", "snack"}} {
		var have []string
		for _, bag := range trail.On(p, &trip.Progress{}, day).Bags {
			have = append(have, bag.Key)
		}
		if !slices.Equal(have, want) {
			t.Errorf("day %d: %v, want %v", day, have, want)
		}
	}
}

func TestPacksHoldWhatIsNotEaten(t *testing.T) {
	keys := func(pack trail.Pack) []string {
		var list []string
		for _, item := range pack.Items {
			list = append(list, item.Key)
		}
		return list
	}
	day := trail.On(byHand(), &trip.Progress{}, 2)
	if len(day.Packs) != 2 || !slices.Equal(keys(day.Packs[0]), []string{"6"}) || !slices.Equal(keys(day.Packs[1]), []string{"two", "three", "5"}) {
		t.Errorf("packs %+v", day.Packs)
	}
	if pack := day.Packs[0]; pack.Drink != 3*units.Litre || pack.CarryIn != 2*units.Litre || pack.Load.Food != 800*units.Gram {
		t.Errorf("pack of member 1: %+v", pack)
	}
	if day := trail.On(byHand(), &trip.Progress{}, 3); len(day.Packs) != 1 {
		t.Errorf("member 2 left, yet packs are %+v", day.Packs)
	}
	lost := &trip.Progress{Ends: []trip.BagEnd{{Bag: "three", End: trip.Lost, Day: 1}}}
	if pack := trail.On(byHand(), lost, 2).Packs[1]; !slices.Equal(keys(pack), []string{"two", "5"}) {
		t.Errorf("a bag lost yesterday is still carried: %v", keys(pack))
	}
}

func TestHandOversAreOfTheFirstMorningOnly(t *testing.T) {
	for day, want := range map[int][]string{1: nil, 2: nil, 3: {"three", "5"}, 4: nil} {
		var have []string
		for _, h := range trail.On(byHand(), &trip.Progress{}, day).HandOvers {
			if h.From != 2 || h.To != 1 {
				t.Errorf("%s goes from %d to %d", h.Item.Key, h.From, h.To)
			}
			have = append(have, h.Item.Key)
		}
		if !slices.Equal(have, want) {
			t.Errorf("day %d: %v change hands, want %v", day, have, want)
		}
	}
}

func TestFuelLeftFollowsTheCooking(t *testing.T) {
	for _, c := range []struct {
		day         int
		left, today units.Mass
		full        int
	}{{1, 80, 30, 2}, {2, 50, 20, 2}, {3, 30, 0, 1}, {4, 100, 10, 1}} {
		fuel := trail.On(byHand(), &trip.Progress{}, c.day).Fuel
		if len(fuel) != 1 || fuel[0].Left != c.left*units.Gram || fuel[0].Today != c.today*units.Gram || len(fuel[0].Full) != c.full {
			t.Errorf("day %d: %+v, want %d g left, %d g today, %d containers", c.day, fuel, c.left, c.today, c.full)
		}
	}
}

func TestADayOutsideIsEmpty(t *testing.T) {
	for _, number := range []int{0, 5} {
		if day := trail.On(byHand(), &trip.Progress{}, number); len(day.Bags)+len(day.Packs)+len(day.Fuel) > 0 {
			t.Errorf("day %d: %+v", number, day)
		}
	}
}

func TestIfABoxDoesNotCome(t *testing.T) {
	p := byHand()
	box := p.Resupply.Boxes[0]
	for _, c := range []struct {
		name     string
		day      int
		done     trip.Progress
		bags     int
		lasts    float64
		back     int
		reaches  bool
		leftFood units.Mass
	}{
		// On the evening of day 1 two bags of 2,000 kcal are left for two who need 5,000 a day.
		{"heard of early", 1, trip.Progress{}, 2, 0.8, 1, false, 1000},
		{"on day 2, one is left of the crew", 2, trip.Progress{}, 1, 0.8, 2, false, 500},
		{"on arrival", 3, trip.Progress{}, 0, 0, 3, false, 0},
		{"a bag was lost", 1, trip.Progress{Ends: []trip.BagEnd{{Bag: "three", End: trip.Lost, Day: 1}}}, 1, 0.4, 1, false, 500},
	} {
		s := trail.IfMissing(p, &c.done, box, c.day)
		if s.LeftBags != c.bags || s.Lasts != c.lasts || s.BackDays != c.back || s.ReachesBack() != c.reaches || s.LeftFood != c.leftFood*units.Gram {
			t.Errorf("%s: %+v", c.name, s)
		}
		if s.Bags != 1 || s.Food != 500*units.Gram || s.TurnBackBy != 1 || s.Point != 7 {
			t.Errorf("%s: the box is %+v", c.name, s)
		}
	}
	p.Bags.Bags[1].Uses[0].Kcal = 4000
	if s := trail.IfMissing(p, &trip.Progress{}, box, 1); !s.ReachesBack() {
		t.Errorf("6,000 kcal feed two for the day back: %+v", s)
	}
}

// On the evening of day 1 the first of two, with a reserve of 500 kcal, has
// dishes of 2,000 kcal for the two days until the box; the second leaves on day
// 2. Both need 2,500 a day.
func TestOwnDishesAreReckonedForEach(t *testing.T) {
	p := byHand()
	meals := func(kcal ...units.Kcal) (days []portions.DayIntake) {
		for _, k := range kcal {
			days = append(days, portions.DayIntake{Kcal: k})
		}
		return days
	}
	p.Portions.Intakes = []portions.Intake{{Member: 1, Days: meals(9000, 1000, 1000, 9000)}, {Member: 2, Days: meals(9000, 750)}}
	p.Portions.Reserve = []portions.Reserve{{Member: 1, FirstDay: 1, LastDay: 4, PackedKcal: 500}, {Member: 2, FirstDay: 1, LastDay: 1, PackedKcal: 800}}
	box := p.Resupply.Boxes[0]
	for day, want := range map[int][]trail.Eater{
		1: {{Member: 1, Lasts: 1}, {Member: 2, Lasts: 0.3}}, 2: {{Member: 1, Lasts: 0.6}}, 3: {{Member: 1, Lasts: 0.2}},
	} {
		if have := trail.Eaters(p, box, day); !reflect.DeepEqual(have, want) {
			t.Errorf("evening of day %d: %+v, want %+v", day, have, want)
		}
	}
	box.Leg = 0
	if trail.Eaters(p, box, 1) != nil {
		t.Error("a box of the first leg")
	}
}

func TestBoxesAheadAreThoseNotYetTaken(t *testing.T) {
	p := byHand()
	for day, want := range map[int]int{1: 1, 3: 1, 4: 1, 5: 0} {
		if have := len(trail.Ahead(p, day)); have != want {
			t.Errorf("day %d: %d boxes ahead, want %d", day, have, want)
		}
	}
}

// Over all days of any trip each bag is eaten up on the days of its uses, and
// what the packs hold of food is what the loads say.
func TestTheDaysOfAPlanHoldEveryBag(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		p, err := plan.Make(context.Background(), triptest.Trip().Draw(rt, "trip"), plan.Options{})
		if err != nil {
			rt.Fatal(err)
		}
		if p.Refused() {
			rt.Skip("not planned")
		}
		seen := map[string]map[int]bool{}
		for number := 1; number <= len(p.Trip.Days); number++ {
			day := trail.On(p, &trip.Progress{}, number)
			for _, bag := range day.Bags {
				if seen[bag.Key] == nil {
					seen[bag.Key] = map[int]bool{}
				}
				seen[bag.Key][number] = true
			}
			for _, pack := range day.Packs {
				food := units.Mass(0)
				for _, item := range pack.Items {
					if item.Kind == carry.BagItem {
						food += item.Mass
					}
				}
				if food != pack.Load.Food {
					rt.Fatalf("day %d: member %d has bags of %v, the load says %v", number, pack.Member, food, pack.Load.Food)
				}
			}
		}
		for _, bag := range p.Bags.Bags {
			want := map[int]bool{}
			for _, use := range bag.Uses {
				want[use.Day] = true
			}
			if len(want) == 0 && seen[bag.Key] == nil {
				continue // a reserve is not touched
			}
			if !reflect.DeepEqual(seen[bag.Key], want) {
				rt.Fatalf("bag %s is eaten from on %v, want %v", bag.Key, seen[bag.Key], want)
			}
		}
	})
}
