package onward_test

import (
	"cmp"
	"context"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/onward"
	"sumpter/domain/plan"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

func planned(t testing.TB, of *trip.Trip) *plan.Plan {
	t.Helper()
	p, err := plan.Make(context.Background(), of, plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if p.Refused() || len(p.Bags.Bags) == 0 {
		t.Skip("a trip without bags")
	}
	return p
}

func onwards(t interface{ Fatal(...any) }, p *plan.Plan, done trip.Progress, from int) *onward.Rest {
	rest, err := onward.Make(context.Background(), p, &done, from)
	if err != nil {
		t.Fatal(err)
	}
	return rest
}

func TestNothingHappenedNothingChanges(t *testing.T) {
	p := planned(t, triptest.Large(6, 6, 3))
	for from := 1; from <= 6; from++ {
		rest := onwards(t, p, trip.Progress{}, from)
		if rest.Changed || len(rest.Moves) > 0 || len(rest.Spare) > 0 || rest.Missing.Bags > 0 || len(rest.Findings) > 0 {
			t.Errorf("from day %d: %+v", from, rest)
		}
		if !reflect.DeepEqual(rest.Plan.Carry, p.Carry) {
			t.Errorf("from day %d somebody else carries", from)
		}
		for _, day := range rest.Days {
			for _, eaten := range day.Members {
				was := intake(p, eaten.Member, day.Number)
				if diff := float64(eaten.Kcal - was.Kcal); diff > 1 || diff < -1 {
					t.Errorf("day %d: member %d gets %.1f kcal, planned %.1f", day.Number, eaten.Member, eaten.Kcal, was.Kcal)
				}
				if diff := eaten.ProteinGrams - was.ProteinGrams; diff > 0.1 || diff < -0.1 {
					t.Errorf("day %d: member %d gets %.1f g of protein, planned %.1f", day.Number, eaten.Member, eaten.ProteinGrams, was.ProteinGrams)
				}
			}
		}
	}
}

func intake(p *plan.Plan, id trip.MemberID, day int) (found struct {
	Kcal         units.Kcal
	ProteinGrams float64
}) {
	for _, member := range p.Portions.Intakes {
		if member.Member == id {
			found.Kcal, found.ProteinGrams = member.Days[day-1].Kcal, member.Days[day-1].ProteinGrams
		}
	}
	return found
}

// someCarrier gives a member who has gear of the group on a day.
func someCarrier(t *testing.T, p *plan.Plan, day int) trip.MemberID {
	t.Helper()
	for _, stage := range p.Carry.Stages {
		for _, item := range stage.Items {
			if stage.FirstDay <= day && day <= stage.LastDay && item.Kind == carry.GearItem {
				return item.Carrier
			}
		}
	}
	t.Fatal("nobody carries gear")
	return 0
}

// Somebody goes home: what they had goes to others, and nothing else changes
// hands without need.
func TestSomebodyGoesHome(t *testing.T) {
	p := planned(t, triptest.Large(6, 6, 3))
	leaver := someCarrier(t, p, 3)
	rest := onwards(t, p, trip.Progress{CrewChanges: []trip.CrewChange{{Member: leaver, Day: 4}}}, 4)
	given := 0
	for _, h := range rest.HandOvers {
		if h.To == leaver {
			t.Errorf("%s is given to who went home", h.Item.Key)
		}
		if h.From == leaver {
			given++
		}
	}
	if given == 0 {
		t.Error("nothing was taken from who went home")
	}
	for _, stage := range rest.Plan.Carry.Stages {
		for _, item := range stage.Items {
			if stage.LastDay >= 4 && item.Carrier == leaver {
				t.Errorf("who went home carries %s from day %d", item.Key, stage.FirstDay)
			}
		}
	}
	for _, spare := range rest.Spare {
		if spare.Of != leaver || slices.Contains(spare.MayEat, leaver) {
			t.Errorf("spare bag %+v", spare)
		}
	}
	for _, day := range rest.Days {
		if slices.ContainsFunc(day.Members, func(e onward.Eaten) bool { return e.Member == leaver }) {
			t.Errorf("who went home eats on day %d", day.Number)
		}
		if day.Share() < 0.999 {
			t.Errorf("day %d brings only %.2f of what was planned for those who stay", day.Number, day.Share())
		}
	}
}

// A dinner is lost: its day is helped out from the others, within what the
// rules of the kitchen allow.
func TestALostDinnerIsSpreadOut(t *testing.T) {
	p := planned(t, triptest.Large(4, 6, 3))
	var done trip.Progress
	for _, bag := range p.Bags.Bags {
		if bag.Day == 4 && bag.Meal == trip.Dinner {
			done.Ends = append(done.Ends, trip.BagEnd{Bag: bag.Key, End: trip.Lost, Day: 3})
		}
	}
	if len(done.Ends) == 0 {
		t.Fatal("no dinner to lose")
	}
	before := onwards(t, p, done, 4)
	if before.Missing.Bags != len(done.Ends) || before.Days[0].Share() > 0.95 {
		t.Errorf("missing %+v, day 4 brings %.2f", before.Missing, before.Days[0].Share())
	}
	if len(before.Findings) == 0 {
		t.Error("nobody is told")
	}
	onward.Store(&done, before.Decide(-1, true))
	after := onwards(t, p, done, 4)
	if len(after.Moves) > 0 {
		t.Errorf("what was taken over is proposed again: %+v", after.Moves)
	}
	if least(after) < least(before)-1e-9 {
		t.Errorf("the leanest day got leaner: %.3f after %.3f", least(after), least(before))
	}
}

func least(rest *onward.Rest) float64 {
	found := 1.0
	for _, day := range rest.Days {
		found = min(found, day.Share())
	}
	return found
}

// happened draws what may have happened by the morning of a day.
func happened(rt *rapid.T, p *plan.Plan, from int) trip.Progress {
	var done trip.Progress
	for _, bag := range p.Bags.Bags {
		switch rapid.IntRange(0, 9).Draw(rt, "fate") {
		case 0:
			done.Ends = append(done.Ends, trip.BagEnd{Bag: bag.Key, End: rapid.SampledFrom(trip.Ends()).Draw(rt, "end"), Day: rapid.IntRange(1, from).Draw(rt, "on")})
		case 1:
			done.Replans = append(done.Replans, moved(rt, p, &bag, from))
		}
	}
	slices.SortStableFunc(done.Replans, func(a, b trip.Replan) int { return cmp.Compare(a.Day, b.Day) })
	done.Replans = slices.CompactFunc(done.Replans, func(a, b trip.Replan) bool { return a.Day == b.Day })
	for _, leg := range p.Legs {
		if leg.From != 0 && rapid.Bool().Draw(rt, "missing") {
			done.MissingBoxes = append(done.MissingBoxes, leg.From)
		}
	}
	for _, member := range p.Trip.Crew[1:] {
		if rapid.IntRange(0, 3).Draw(rt, "leaves") == 0 {
			done.CrewChanges = append(done.CrewChanges, trip.CrewChange{Member: member.ID, Day: rapid.IntRange(1, len(p.Trip.Days)).Draw(rt, "from")})
		}
	}
	return done
}

// moved draws that the dish of a bag is eaten elsewhere, or carried on, and
// that the bag goes to somebody.
func moved(rt *rapid.T, p *plan.Plan, bag *bags.Bag, from int) trip.Replan {
	day := rapid.IntRange(1, from).Draw(rt, "decided on")
	dish := bag.Uses[0].Dish(bag.Group)
	move := trip.DishMove{Dish: dish}
	if rapid.IntRange(0, 4).Draw(rt, "kept") > 0 {
		move = trip.DishMove{Dish: dish, Day: rapid.IntRange(day, len(p.Trip.Days)).Draw(rt, "to"), Meal: rapid.SampledFrom(trip.Meals()).Draw(rt, "meal"), Group: rapid.SampledFrom(p.Trip.Groups).Draw(rt, "group").ID}
	}
	over := trip.HandOver{Bag: bag.Key, To: rapid.SampledFrom(p.Trip.Crew).Draw(rt, "taker").ID}
	return trip.Replan{Day: day, Moves: []trip.DishMove{move}, HandOvers: []trip.HandOver{over}}
}

func TestWhateverHappens(t *testing.T) {
	p := planned(t, triptest.Large(4, 4, 7))
	rapid.Check(t, func(rt *rapid.T) {
		from := rapid.IntRange(1, len(p.Trip.Days)).Draw(rt, "from")
		done := happened(rt, p, from)
		rest := onwards(rt, p, done, from)
		again := onwards(rt, p, done, from)
		if !reflect.DeepEqual(rest, again) {
			rt.Fatal("the same state gives another rest")
		}
		checkBags(rt, p, &done, rest)
		checkEaten(rt, p, &done, rest)
		checkMoves(rt, p, &done, rest)
	})
}

// checkBags: a bag is there, gone, spare or eaten, and only once; nobody
// carries what is gone, and who went home carries nothing.
func checkBags(rt *rapid.T, p *plan.Plan, done *trip.Progress, rest *onward.Rest) {
	there := map[string]bool{}
	for i := range rest.Plan.Bags.Bags {
		key := rest.Plan.Bags.Bags[i].Key
		if there[key] {
			rt.Fatalf("bag %s is there twice", key)
		}
		there[key] = true
	}
	for _, s := range rest.Servings {
		if !there[s.Bag] {
			rt.Fatalf("bag %s is served and not there", s.Bag)
		}
	}
	for i := range p.Bags.Bags {
		bag := &p.Bags.Bags[i]
		if from := p.Legs[bag.Leg].From; slices.Contains(done.MissingBoxes, from) && from != 0 && there[bag.Key] {
			rt.Fatalf("bag %s comes from a box that did not come", bag.Key)
		}
	}
	for _, stage := range rest.Plan.Carry.Stages {
		for _, item := range stage.Items {
			for _, d := range done.CrewChanges {
				if item.Carrier == d.Member && stage.FirstDay >= d.Day {
					rt.Fatalf("%s is carried by who went home", item.Key)
				}
			}
			if item.Kind == carry.BagItem && !there[item.Key] {
				rt.Fatalf("bag %s is carried and not there", item.Key)
			}
		}
	}
}

// checkEaten: nobody is given energy that is in no bag, and who is given
// something was planned to eat of that dish, so that no allergy is met anew.
func checkEaten(rt *rapid.T, p *plan.Plan, done *trip.Progress, rest *onward.Rest) {
	var packed, eaten units.Kcal
	for i := range p.Bags.Bags {
		packed += p.Bags.Bags[i].Kcal
	}
	for _, day := range rest.Days {
		for _, e := range day.Members {
			eaten += e.Kcal
			for _, d := range done.CrewChanges {
				if e.Member == d.Member && day.Number >= d.Day {
					rt.Fatalf("who went home eats on day %d", day.Number)
				}
			}
		}
	}
	if float64(eaten) > float64(packed-rest.Missing.Kcal)+1 {
		rt.Fatalf("%.0f kcal are eaten of %.0f packed, %.0f missing", eaten, packed, rest.Missing.Kcal)
	}
}

func checkMoves(rt *rapid.T, p *plan.Plan, done *trip.Progress, rest *onward.Rest) {
	for _, move := range rest.Moves {
		recipe := p.Trip.Recipe(move.Recipe)
		if move.ToDay < rest.From || move.ToDay < move.Earliest || recipe == nil {
			rt.Fatalf("move %+v", move)
		}
		if recipe.NeedsFlame() && p.Trip.Days[move.ToDay-1].NoFlame {
			rt.Fatalf("%s is to be cooked on day %d without fire", recipe.Name, move.ToDay)
		}
		for _, key := range move.Bags {
			if end := done.BagEnd(key); end != nil {
				rt.Fatalf("bag %s is %s and to be moved", key, end.End)
			}
		}
	}
	if rest.Missing.Bags == 0 && len(rest.Moves) > 0 {
		rt.Fatal("meals move though nothing is missing")
	}
}

func BenchmarkOnward60x21(b *testing.B) {
	p := planned(b, triptest.Large(60, 21, 1))
	done := trip.Progress{CrewChanges: []trip.CrewChange{{Member: p.Trip.Crew[5].ID, Day: 9}}}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := onward.Make(context.Background(), p, &done, 9); err != nil {
			b.Fatal(err)
		}
	}
}

func planOf(rt *rapid.T, of *trip.Trip) *plan.Plan {
	of.Progress = trip.Progress{}
	p, err := plan.Make(context.Background(), of, plan.Options{})
	if err != nil {
		rt.Fatal(err)
	}
	if p.Refused() || len(p.Bags.Bags) == 0 {
		rt.Skip("a trip without bags")
	}
	return p
}

// A dish moved to a meal that has the recipe already is a pot of its own there:
// each pot's bags hold what the pot holds.
func TestTwoPotsOfOneRecipeAtOneMealStayApart(t *testing.T) {
	p := planned(t, triptest.Large(4, 6, 3))
	moved := 0
	for i := range p.Bags.Bags {
		for j := range p.Bags.Bags {
			a, b := &p.Bags.Bags[i], &p.Bags.Bags[j]
			if moved > 20 || a.Recipe == 0 || a.Recipe != b.Recipe || a.Group != b.Group || len(a.Uses) != 1 || len(b.Uses) != 1 || a.Day >= b.Day || a.Leg != b.Leg {
				continue
			}
			moved++
			move := trip.DishMove{Dish: a.Uses[0].Dish(a.Group), Day: b.Day, Meal: b.Meal, Group: b.Group}
			rest := onwards(t, p, trip.Progress{Replans: []trip.Replan{{Day: a.Day, Moves: []trip.DishMove{move}}}}, a.Day)
			holds := map[string]units.Mass{}
			for k := range rest.Plan.Bags.Bags {
				bag := &rest.Plan.Bags.Bags[k]
				for n := range bag.Uses {
					holds[bag.Uses[n].Dish(bag.Group)] += bag.Uses[n].Mass()
				}
			}
			run := map[string]int{}
			for _, batch := range rest.Plan.Portions.Batches {
				sitting := bags.Use{Day: batch.Day, Meal: batch.Meal, Recipe: batch.Recipe}
				meal := sitting.Dish(batch.Group)
				run[meal]++
				sitting.Batch = run[meal]
				var want units.Mass
				for _, amount := range batch.Totals {
					want += amount.Mass
				}
				if dish := sitting.Dish(batch.Group); batch.Day >= a.Day && holds[dish] != want {
					t.Errorf("%s moved to day %d: the bags of %s hold %v, its pot %v", a.Code, b.Day, dish, holds[dish], want)
				}
			}
		}
	}
	if moved == 0 {
		t.Fatal("no recipe comes twice")
	}
}
