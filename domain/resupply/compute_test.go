package resupply_test

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/bags"
	"sumpter/domain/bags/bagstest"
	"sumpter/domain/cooking"
	"sumpter/domain/findings"
	"sumpter/domain/optional"
	"sumpter/domain/prose"
	"sumpter/domain/resupply"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

func plan(t *trip.Trip) (bags.Result, resupply.Result) {
	legs := t.Legs()
	b := bags.Compute(t, bagstest.Batches(t), cooking.Result{}, legs)
	return b, resupply.Compute(t, b, cooking.Result{}, legs)
}

func TestEachBagOfALaterLegIsInOneParcelOfItsBox(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		tr := triptest.Trip().Draw(rt, "trip").Canonical()
		b, r := plan(tr)
		places := map[string]int{}
		for _, box := range r.Boxes {
			point := tr.Point(box.Point)
			var mass units.Mass
			var volume units.Volume
			var parcelled []string
			for _, parcel := range box.Parcels {
				mass += parcel.Mass
				volume += parcel.Volume
				parcelled = append(parcelled, parcel.Bags...)
				if limit, known := point.MaxParcel.Get(); known && parcel.Mass > limit && len(parcel.Bags) > 1 {
					rt.Fatalf("a parcel of %v to a point that takes %v", parcel.Mass, limit)
				}
			}
			if mass != box.Mass || volume != box.Volume {
				rt.Fatalf("box %+v does not add up", box)
			}
			slices.Sort(parcelled)
			own := slices.Clone(box.Bags)
			slices.Sort(own)
			if !slices.Equal(parcelled, own) {
				rt.Fatalf("box holds %v, parcels %v", own, parcelled)
			}
			if want := point.VisitFee + point.FeePerParcel*units.Money(len(box.Parcels)); box.Fees != want {
				rt.Fatalf("fees %d, want %d", box.Fees, want)
			}
			for _, key := range box.Bags {
				places[key]++
			}
			checkBought(rt, tr, b, &box)
		}
		for _, bag := range b.Bags {
			if want := min(bag.Leg, 1); places[bag.Key] != want && !(places[bag.Key] == 0 && allBought(r, &bag)) {
				rt.Fatalf("bag %s of leg %d is in %d boxes", bag.Key, bag.Leg, places[bag.Key])
			}
		}
		checkPackedAtHome(rt, b, r)
	})
}

// checkBought compares a box with its bags and with what its point sells, one
// content at a time.
func checkBought(rt *rapid.T, tr *trip.Trip, b bags.Result, box *resupply.Box) {
	var want []resupply.Bought
	var mass units.Mass
	for i := range b.Bags {
		bag := &b.Bags[i]
		if bag.Leg != box.Leg {
			continue
		}
		left := len(bag.Contents)
		for _, c := range bag.Contents {
			for _, sold := range tr.Food(c.Food).Packages {
				if shop := tr.Shop(sold.Shop); shop != nil && shop.Use && shop.Point == box.Point {
					want = append(want, resupply.Bought{Bag: bag.Key, Food: c.Food, Mass: c.Mass})
					mass -= c.Mass
					left--
					break
				}
			}
		}
		if left > 0 {
			mass += bag.Mass()
		} else {
			mass += bag.Food
		}
	}
	if !reflect.DeepEqual(box.BoughtThere, want) {
		rt.Fatalf("bought there %+v, want %+v", box.BoughtThere, want)
	}
	if mass != box.Mass {
		rt.Fatalf("the box weighs %v, want %v", box.Mass, mass)
	}
}

func allBought(r resupply.Result, bag *bags.Bag) bool {
	n := 0
	for _, box := range r.Boxes {
		for _, bought := range box.BoughtThere {
			if bought.Bag == bag.Key {
				n++
			}
		}
	}
	return n > 0 && n == len(bag.Contents)
}

// checkPackedAtHome: packing night and what is bought on the way are all there
// is, and nothing is in both.
func checkPackedAtHome(rt *rapid.T, b bags.Result, r resupply.Result) {
	var all, home, bought units.Mass
	for i := range b.Bags {
		all += b.Bags[i].Food
	}
	for _, bag := range r.PackedAtHome(b.Bags) {
		var sum units.Mass
		for _, c := range bag.Contents {
			sum += c.Mass
		}
		if sum != bag.Food || sum == 0 {
			rt.Fatalf("%+v holds %v", bag, sum)
		}
		home += sum
	}
	for _, box := range r.Boxes {
		for _, c := range box.BoughtThere {
			bought += c.Mass
		}
	}
	if all != home+bought {
		rt.Fatalf("%v of food: %v packed at home, %v bought on the way", all, home, bought)
	}
}

// Every choice is what a trip with just these points would cost, none is
// beaten, and the leader's own is among them.
func TestChoicesAreReckonedRight(t *testing.T) {
	several := 0
	rapid.Check(t, func(rt *rapid.T) {
		tr := triptest.Trip().Draw(rt, "trip").Canonical()
		b, r := plan(tr)
		if len(tr.Points) == 0 {
			if len(r.Choices) != 0 {
				rt.Fatal("choices without points")
			}
			return
		}
		current, recommended := 0, 0
		for i, c := range r.Choices {
			if c.Current {
				current++
			}
			if c.Recommended {
				recommended++
			}
			checkChoice(rt, tr, b, c)
			for j, d := range r.Choices {
				if i != j && !c.Beaten && !d.Beaten && d.Money <= c.Money && d.HeaviestFood <= c.HeaviestFood && d.CarriedKgDay <= c.CarriedKgDay && d.DetourHours <= c.DetourHours {
					rt.Fatalf("choice %+v is beaten by %+v", c, d)
				}
			}
		}
		if current != 1 || recommended != 1 {
			rt.Fatalf("%d current, %d recommended of %+v", current, recommended, r.Choices)
		}
		if len(r.Choices) > 1 {
			several++
		}
	})
	if several == 0 {
		t.Error("no trip had a choice")
	}
}

func checkChoice(rt *rapid.T, tr *trip.Trip, b bags.Result, c resupply.Choice) {
	boundary := []int{0}
	for _, id := range c.Points {
		boundary = append(boundary, tr.Point(id).AfterDay)
	}
	if !slices.IsSorted(boundary) {
		rt.Fatalf("points out of order: %+v", c)
	}
	eaten := make([]units.Mass, len(tr.Days)+1) // on each day, a bag itself with its first
	for _, bag := range b.Bags {
		eaten[bag.Day] += bag.Tare
		for _, use := range bag.Uses {
			eaten[use.Day] += use.Mass()
		}
	}
	loads := make([]int64, len(tr.Days)+1) // food held on each morning
	for day := 1; day < len(eaten); day++ {
		from := 0
		for _, point := range boundary {
			if point < day {
				from = point
			}
		}
		for d := from + 1; d <= day; d++ {
			loads[d] += eaten[day].CeilGrams()
		}
	}
	var most, sum int64
	for _, load := range loads {
		most = max(most, load)
		sum += load
	}
	if c.HeaviestFood != units.Mass(most)*units.Gram || math.Abs(c.CarriedKgDay-float64(sum)/1000) > 1e-6 {
		rt.Fatalf("choice %+v: heaviest %d g, carried %d g days", c, most, sum)
	}
}

func TestOrderOfThePointsChangesNothing(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		tr := triptest.Trip().Draw(rt, "trip")
		_, a := plan(tr.Canonical())
		slices.Reverse(tr.Points)
		slices.Reverse(tr.Crew)
		_, b := plan(tr.Canonical())
		if !reflect.DeepEqual(a, b) {
			rt.Fatal("boxes depend on the order of the lists")
		}
	})
}

// week is four people, one dinner of rice a day and a post office after day 3.
func week() *trip.Trip {
	t := &trip.Trip{Settings: trip.DefaultSettings(), Currency: "EUR", Start: 20000}
	t.Groups = []trip.CookGroup{{ID: 1}}
	rice := bagstest.Food(1, "Rice")
	rice.Density = optional.Of(0.8)
	t.Foods = []trip.Food{rice}
	t.Bags = []trip.BagType{{Name: "3 L", Nominal: 3 * units.Litre, Fill: 0.75, Tare: 10 * units.Gram}}
	t.Recipes = []trip.Recipe{{ID: 1, Meals: trip.Meals(), Ingredients: []trip.Ingredient{{Food: 1, Amount: 100 * units.Gram, Role: trip.ToTaste, Place: trip.InPot}}}}
	for id := trip.MemberID(1); id <= 4; id++ {
		t.Crew = append(t.Crew, trip.Member{ID: id, Group: 1, Age: 30, BodyMass: 70 * units.Kilogram, OwnKit: 8 * units.Kilogram})
	}
	for day := 1; day <= 6; day++ {
		t.Days = append(t.Days, trip.Day{Meals: []trip.Meal{trip.Dinner}})
		t.Menu = append(t.Menu, trip.Cell{Day: day, Meal: trip.Dinner, Group: 1, Dishes: []trip.Dish{{Recipe: 1}}})
	}
	t.Points = []trip.ResupplyPoint{{
		ID: 9, Name: "Mill", Kind: trip.PostOffice, AfterDay: 3, Use: true, TransitDays: 5, FastestDays: 2, BufferDays: 5,
		HoldDays: optional.Of(30), FeePerParcel: 600, VisitFee: 150, MaxParcel: optional.Of(1500 * units.Gram), DetourHours: 0.5,
	}}
	return t
}

func TestBoxOfAWeek(t *testing.T) {
	_, r := plan(week())
	if len(r.Boxes) != 1 {
		t.Fatalf("%d boxes", len(r.Boxes))
	}
	// Three dinners of 400 g and a bag of 10 g; a parcel takes 1500 g less 500.
	box := r.Boxes[0]
	if box.Mass != 1230*units.Gram || len(box.Parcels) != 2 || box.Fees != 1350 || !box.Posted || box.TurnBackBy != 1 {
		t.Errorf("%+v", box)
	}
	if box.PickUp != 20002 || box.PostBy != 19992 || box.PostFrom != 20002-30-2 {
		t.Errorf("picked up %d, posted %d to %d", box.PickUp, box.PostFrom, box.PostBy)
	}
	want := []resupply.Choice{
		{Points: []trip.PointID{}, HeaviestFood: 2460 * units.Gram, CarriedKgDay: 8.61},
		{Points: []trip.PointID{9}, Money: 1350, HeaviestFood: 1230 * units.Gram, CarriedKgDay: 4.92, DetourHours: 0.5, Current: true},
	}
	for i := range want {
		r.Choices[i].Recommended, r.Choices[i].Why = false, prose.Text{}
	}
	if !reflect.DeepEqual(r.Choices, want) {
		t.Errorf("choices %+v", r.Choices)
	}
}

// A reserve is carried whichever points are used: it is in no choice, and takes
// its room from the meals.
func TestAReserveIsInNoChoice(t *testing.T) {
	on := week()
	legs := on.Legs()
	packed := bags.Compute(on, bagstest.Batches(on), cooking.Result{}, legs)
	meals := resupply.Compute(on, packed, cooking.Result{}, legs).Choices
	reserve := func(mass units.Mass) bags.Bag {
		return bags.Bag{Key: "d6 reserve g1 m1 1", Kind: bags.ReserveBag, Member: 1, Day: 6, LastDay: 6, Food: mass, Reserve: true}
	}
	few := packed
	few.Bags = append(slices.Clone(packed.Bags), reserve(500*units.Gram))
	for i, choice := range resupply.Compute(on, few, cooking.Result{}, legs).Choices {
		if choice.HeaviestFood != meals[i].HeaviestFood || choice.CarriedKgDay != meals[i].CarriedKgDay {
			t.Errorf("%v with a reserve: %v and %v kg days, without %v and %v",
				choice.Points, choice.HeaviestFood, choice.CarriedKgDay, meals[i].HeaviestFood, meals[i].CarriedKgDay)
		}
	}
	much := packed
	much.Bags = append(slices.Clone(packed.Bags), reserve(500*units.Kilogram))
	if r := resupply.Compute(on, much, cooking.Result{}, legs); !slices.ContainsFunc(r.Findings, func(f findings.Finding) bool { return strings.Contains(f.What.String(), "the packs take") }) {
		t.Errorf("packs full of reserve have room for meals: %v", r.Findings)
	}
}

func TestTroublesOfPoints(t *testing.T) {
	for _, c := range []struct {
		name, code string
		severity   findings.Severity
		change     func(*trip.Trip)
		says       string
	}{
		{"too early", "point-off-route", findings.LookAt, func(t *trip.Trip) { t.Points[0].AfterDay = 0 }, "1 to 5"},
		{"past the end", "point-off-route", findings.LookAt, func(t *trip.Trip) { t.Points[0].AfterDay = 6 }, "trip ends with day 6"},
		{"two on one evening", "point-doubled", findings.LookAt, func(t *trip.Trip) {
			t.Points = append(t.Points, trip.ResupplyPoint{ID: 12, Name: "Barn", Kind: trip.Hut, AfterDay: 3, Use: true})
		}, "Barn"},
		{"tiny parcels", "bag-over-parcel", findings.MustFix, func(t *trip.Trip) { t.Points[0].MaxParcel = optional.Of(700 * units.Gram) }, "410 g"},
		{"nothing eaten", "empty-box", findings.Note, func(t *trip.Trip) { t.Menu, t.Settings.FillOpenSlots = t.Menu[:3], false }, "Mill"},
		{"lost box", "box-not-there", findings.Note, func(t *trip.Trip) {}, "empty after day 3"},
		{"weak crew", "resupply-gap", findings.LookAt, func(t *trip.Trip) {
			for i := range t.Crew {
				t.Crew[i].LoadLimit = optional.Of(8*units.Kilogram + 300*units.Gram)
			}
		}, "days 1 and 3"},
		{"no room at all", "resupply-gap", findings.LookAt, func(t *trip.Trip) {
			t.Gear = []trip.Gear{{ID: 1, Mass: 200 * units.Kilogram}}
		}, "Day 1 alone needs 410 g"},
	} {
		tr := week()
		c.change(tr)
		_, r := plan(tr.Canonical())
		found := false
		for _, f := range r.Findings {
			if f.Code == c.code {
				found = found || strings.Contains(f.What.String()+f.Remedy.String(), c.says)
				if f.Severity != c.severity || f.Why.IsZero() || f.Remedy.IsZero() {
					t.Errorf("%s: %+v", c.name, f)
				}
			}
		}
		if !found {
			t.Errorf("%s: no %s with %q in %+v", c.name, c.code, c.says, r.Findings)
		}
	}
}

func TestFuelOfABox(t *testing.T) {
	for _, c := range []struct {
		takes, sells bool
		kind         trip.PointKind
		code         string
	}{
		{true, false, trip.PostOffice, "fuel-by-post"},
		{true, false, trip.Cache, ""},
		{false, true, trip.PostOffice, ""},
	} {
		tr := week()
		tr.Points[0].TakesFuel, tr.Points[0].SellsFuel, tr.Points[0].Kind = c.takes, c.sells, c.kind
		fuel := cooking.Result{Fuel: []cooking.LegFuel{
			{Leg: 0, Containers: []cooking.Container{{Key: "first"}}},
			{Leg: 1, Containers: []cooking.Container{{Key: "second"}}},
		}}
		legs := tr.Legs()
		r := resupply.Compute(tr, bags.Compute(tr, bagstest.Batches(tr), fuel, legs), fuel, legs)
		if box := r.Boxes[0]; !slices.Equal(box.Fuel, []string{"second"}) || box.FuelBoughtThere != c.sells {
			t.Errorf("%+v", box)
		}
		var codes []string
		for _, f := range r.Findings {
			if strings.Contains(f.Code, "fuel") {
				codes = append(codes, f.Code)
			}
		}
		if got := strings.Join(codes, " "); got != c.code {
			t.Errorf("takes %v, sells %v, %s: %q, want %q", c.takes, c.sells, c.kind, got, c.code)
		}
	}
}

// 60 people, 21 days.
func BenchmarkCompute(b *testing.B) {
	t := triptest.Large(60, 21, 1).Canonical()
	legs := t.Legs()
	packed := bags.Compute(t, bagstest.Batches(t), cooking.Result{}, legs)
	for b.Loop() {
		resupply.Compute(t, packed, cooking.Result{}, legs)
	}
}

// A shop that stands at the point and is used: its food is not sent, fills no
// parcel and is no burden of the box.
func TestFoodOfAShopOnTheWayIsNotSent(t *testing.T) {
	tr := week()
	tr.Foods[0].Packages = []trip.Package{{Net: units.Kilogram, Shop: "kiosk"}}
	tr.Shops = []trip.Shop{{Name: "Kiosk", Use: true, Point: 9, Opening: trip.Opening{OpenDays: []string{"Mon"}}}}
	_, r := plan(tr.Canonical())
	box := r.Boxes[0]
	if len(box.Bags) != 0 || box.Mass != 0 || len(box.Parcels) != 0 || box.Fees != 150 || len(box.BoughtThere) != 3 || box.TurnBackBy != 1 {
		t.Errorf("%+v", box)
	}
	if r.Choices[1].Money != 150 {
		t.Errorf("the choice pays for parcels: %+v", r.Choices[1])
	}
	// Day 3 is a Sunday.
	for code, says := range map[string]string{"shop-closed": "Kiosk at Mill is closed on Sun", "bought-on-the-way": "1 food for the days after Mill is bought there", "box-not-there": "If there is nothing to buy at Mill"} {
		if !slices.ContainsFunc(r.Findings, func(f findings.Finding) bool { return f.Code == code && strings.Contains(f.What.String(), says) }) {
			t.Errorf("no %s with %q in %+v", code, says, r.Findings)
		}
	}
	tr.Shops[0].Use = false
	if _, r := plan(tr.Canonical()); len(r.Boxes[0].Bags) != 3 || len(r.Boxes[0].BoughtThere) != 0 {
		t.Errorf("of a shop that is not used: %+v", r.Boxes[0])
	}
}

// The fees of a choice are those of the boxes it makes, to the cent.
func TestFeesOfTheCurrentChoiceAreThoseOfItsBoxes(t *testing.T) {
	paid := 0
	rapid.Check(t, func(rt *rapid.T) {
		tr := triptest.Trip().Draw(rt, "trip").Canonical()
		_, r := plan(tr)
		var fees units.Money
		for _, box := range r.Boxes {
			fees += box.Fees
		}
		for _, c := range r.Choices {
			if c.Current && c.Money != fees {
				rt.Fatalf("the choice costs %d, its boxes %d", c.Money, fees)
			}
		}
		if fees > 0 {
			paid++
		}
	})
	if paid == 0 {
		t.Error("no trip had fees")
	}
}

func TestWhyComparesWithTheWholeLoad(t *testing.T) {
	_, r := plan(week())
	for _, c := range r.Choices {
		if c.Recommended && (!strings.Contains(c.Why.String(), "Against Mill: fees \u221213.50 EUR, heaviest morning +1230 g, detour \u22120.5 h")) {
			t.Errorf("%+v", c)
		}
	}
}

// An extra way of which nobody gave the time takes what it takes on the level,
// at 5 km/h (Langmuir 1984); a time that was given stands.
func TestTheExtraWayOfAPointTakesTime(t *testing.T) {
	for _, c := range []struct {
		way   units.Metres
		given units.Hours
		want  units.Hours
	}{{3000, 0, 0.6}, {3000, 1.5, 1.5}, {0, 0, 0}} {
		tr := week()
		tr.Points[0].Detour, tr.Points[0].DetourHours = c.way, c.given
		_, r := plan(tr)
		if got := r.Choices[len(r.Choices)-1].DetourHours; got != c.want {
			t.Errorf("%v, %v h given: %v h", c.way, c.given, got)
		}
	}
}
