package trip_test

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// begun is the plain trip after shopping, packing and the first day.
func begun() *trip.Trip {
	t := plain()
	t.Progress = trip.Progress{
		Purchases: []trip.Purchase{
			{Food: t.Foods[0].ID, Net: 500 * units.Gram, Shop: "village shop", Count: 2, Paid: optional.Of(units.Money(398)), By: t.Crew[0].ID},
			{Fuel: t.Fuels[0].Name, Count: 3},
			{Other: "car fuel", Count: 1, Paid: optional.Of(units.Money(5400)), By: t.Crew[1].ID},
		},
		Packed: []trip.PackedBag{
			{Bag: "d1 dinner g1 r1 b1 pot 1", Done: true},
			{Bag: "d2 dinner g1 r1 b1 pot 1", Weighed: []trip.Weighing{{Food: t.Foods[0].ID, Mass: 412 * units.Gram}}},
		},
		Ends:         []trip.BagEnd{{Bag: "d1 dinner g1 r1 b1 pot 1", End: trip.Eaten, Day: 1}},
		PartsGone:    []trip.PartGone{{Bag: "d2 dinner g1 r1 b1 pot 1", Day: 1, End: trip.ThrownAway, Mass: 80 * units.Gram}},
		FuelNotes:    []trip.FuelNote{{Container: "leg1 group1 gas mix 1", Day: 2, Left: 90 * units.Gram}},
		MissingBoxes: []trip.PointID{t.Points[0].ID},
		CrewChanges:  []trip.CrewChange{{Member: t.Crew[0].ID, Day: 2}},
		Replans: []trip.Replan{{
			Day:       2,
			Moves:     []trip.DishMove{{Dish: "d2 dinner g1 r1 b1", Day: 1, Meal: trip.Lunch, Group: t.Groups[0].ID}, {Dish: "d2 lunch g1 r1 b1"}},
			HandOvers: []trip.HandOver{{Bag: "d2 dinner g1 r1 b1 pot 1", From: t.Crew[0].ID, To: t.Crew[1].ID}, {Fuel: "leg1 group1 gas mix 1", To: t.Crew[1].ID}},
			Given:     []trip.GivenBag{{Bag: "d2 snack g1 m1 1", To: t.Crew[1].ID}},
		}},
	}
	return t
}

func TestProgressFaults(t *testing.T) {
	if problems := trip.Validate(begun()); len(problems) > 0 {
		t.Fatalf("the begun trip is not valid: %v", problems)
	}
	progress := func(spoil func(*trip.Progress)) func(*trip.Trip) {
		return func(t *trip.Trip) { *t = *begun(); spoil(&t.Progress) }
	}
	bought := func(spoil func(*trip.Purchase)) func(*trip.Trip) {
		return progress(func(p *trip.Progress) { spoil(&p.Purchases[0]) })
	}
	moved := func(spoil func(*trip.DishMove)) func(*trip.Trip) {
		return progress(func(p *trip.Progress) { spoil(&p.Replans[0].Moves[0]) })
	}
	handed := func(spoil func(*trip.HandOver)) func(*trip.Trip) {
		return progress(func(p *trip.Progress) { spoil(&p.Replans[0].HandOvers[0]) })
	}
	checkFaults(t, []fault{
		{"nothing bought", progress(func(p *trip.Progress) { p.Purchases[2].Other = "" }), "progress.purchases 3 ", "not exactly one"},
		{"two things bought", bought(func(p *trip.Purchase) { p.Other = "rope" }), "progress.purchases 1 ", "not exactly one"},
		{"bought a ghost", bought(func(p *trip.Purchase) { p.Food = 4711 }), "progress.purchases 1 food", "4711"},
		{"package of nothing", bought(func(p *trip.Purchase) { p.Net = 0 }), "progress.purchases 1 net_g", "0 kg"},
		{"net of car fuel", progress(func(p *trip.Progress) { p.Purchases[2].Net = units.Kilogram }), "progress.purchases 3 net_g", "1 kg"},
		{"none bought", bought(func(p *trip.Purchase) { p.Count = 0 }), "progress.purchases 1 count", "0"},
		{"paid less than nothing", bought(func(p *trip.Purchase) { p.Paid = optional.Of(units.Money(-1)) }), "progress.purchases 1 paid", "-"},
		{"paid by a ghost", bought(func(p *trip.Purchase) { p.By = 4711 }), "progress.purchases 1 paid_by", "4711"},
		{"shop of two lines", bought(func(p *trip.Purchase) { p.Shop = "a\nb" }), "progress.purchases 1 shop", "U+000A"},
		{"too many purchases", progress(func(p *trip.Progress) {
			p.Purchases = slices.Repeat(p.Purchases[:1], trip.MaxPurchases+1)
		}), "progress.purchases 0 ", "10001"},
		{"packed twice", progress(func(p *trip.Progress) { p.Packed[1] = p.Packed[0] }), "progress.packed 0 ", "twice"},
		{"packed no bag", progress(func(p *trip.Progress) { p.Packed[0].Bag = " " }), "progress.packed 1 bag", "no bag"},
		{"weighed a ghost", progress(func(p *trip.Progress) { p.Packed[1].Weighed[0].Food = 4711 }), "progress.packed 2 weighed[1].food", "4711"},
		{"weighed twice", progress(func(p *trip.Progress) {
			p.Packed[1].Weighed = slices.Repeat(p.Packed[1].Weighed, 2)
		}), "progress.packed 2 weighed", "twice"},
		{"weighs less than nothing", progress(func(p *trip.Progress) { p.Packed[1].Weighed[0].Mass = -1 }), "progress.packed 2 weighed[1].mass_g", "-"},
		{"gone twice", progress(func(p *trip.Progress) { p.Ends = append(p.Ends, p.Ends[0]) }), "progress.ends 0 ", "twice"},
		{"unknown end", progress(func(p *trip.Progress) { p.Ends[0].End = "sold" }), "progress.ends 1 end", `"sold"`},
		{"gone after the trip", progress(func(p *trip.Progress) { p.Ends[0].Day = 7 }), "progress.ends 1 day", "7"},
		{"box missing nowhere", progress(func(p *trip.Progress) { p.MissingBoxes[0] = 4711 }), "progress.missing_boxes 1 ", "4711"},
		{"box missing twice", progress(func(p *trip.Progress) {
			p.MissingBoxes = append(p.MissingBoxes, p.MissingBoxes[0])
		}), "progress.missing_boxes 0 ", "twice"},
		{"a ghost left", progress(func(p *trip.Progress) { p.CrewChanges[0].Member = 4711 }), "progress.crew_changes 1 member", "4711"},
		{"left after the trip", progress(func(p *trip.Progress) { p.CrewChanges[0].Day = 7 }), "progress.crew_changes 1 day", "7"},
		{"left and joined at once", progress(func(p *trip.Progress) {
			p.CrewChanges = append(p.CrewChanges, trip.CrewChange{Member: p.CrewChanges[0].Member, Day: 2, There: true})
		}), "progress.crew_changes 0 ", "twice"},
		{"decided after the trip", progress(func(p *trip.Progress) { p.Replans[0].Day = 9 }), "progress.replans 1 day", "9"},
		{"decided twice", progress(func(p *trip.Progress) { p.Replans = append(p.Replans, p.Replans[0]) }), "progress.replans 0 ", "twice"},
		{"moved nothing", moved(func(m *trip.DishMove) { m.Dish = "" }), "progress.replans 1 moves[1].dish", "no dish"},
		{"moved twice", moved(func(m *trip.DishMove) { m.Dish = "d2 lunch g1 r1 b1" }), "progress.replans 1 moves", "twice"},
		{"moved behind the end", moved(func(m *trip.DishMove) { m.Day = 9 }), "progress.replans 1 moves[1].day", "9"},
		{"moved to no meal", moved(func(m *trip.DishMove) { m.Meal = "tea" }), "progress.replans 1 moves[1].meal", "tea"},
		{"moved to no group", moved(func(m *trip.DishMove) { m.Group = 4711 }), "progress.replans 1 moves[1].group", "4711"},
		{"given to a ghost", progress(func(p *trip.Progress) { p.Replans[0].Given[0].To = 4711 }), "progress.replans 1 given[1].to", "4711"},
		{"given no bag", progress(func(p *trip.Progress) { p.Replans[0].Given[0].Bag = "" }), "progress.replans 1 given[1].bag", "no bag"},
		{"given twice", progress(func(p *trip.Progress) {
			p.Replans[0].Given = slices.Repeat(p.Replans[0].Given, 2)
		}), "progress.replans 1 given", "twice"},
		{"nothing of it gone", progress(func(p *trip.Progress) { p.PartsGone[0].Mass = 0 }), "progress.parts_gone 1 mass_g", "0 kg"},
		{"gone in an unknown way", progress(func(p *trip.Progress) { p.PartsGone[0].End = "sold" }), "progress.parts_gone 1 end", `"sold"`},
		{"part gone after the trip", progress(func(p *trip.Progress) { p.PartsGone[0].Day = 7 }), "progress.parts_gone 1 day", "7"},
		{"part gone twice on a day", progress(func(p *trip.Progress) {
			p.PartsGone = slices.Repeat(p.PartsGone, 2)
		}), "progress.parts_gone 0 ", "twice"},
		{"less than no fuel", progress(func(p *trip.Progress) { p.FuelNotes[0].Left = -1 }), "progress.fuel_notes 1 left_g", "-"},
		{"fuel of no container", progress(func(p *trip.Progress) { p.FuelNotes[0].Container = " " }), "progress.fuel_notes 1 fuel_container", "no container"},
		{"fuel seen twice", progress(func(p *trip.Progress) {
			p.FuelNotes = slices.Repeat(p.FuelNotes, 2)
		}), "progress.fuel_notes 0 ", "twice"},
		{"kept for a meal", moved(func(m *trip.DishMove) { m.Day = 0 }), "progress.replans 1 moves[1].day", "without a day"},
		{"handed over nothing", handed(func(h *trip.HandOver) { h.Bag = "" }), "progress.replans 1 hand_overs[1]", "not exactly one"},
		{"handed over two things", handed(func(h *trip.HandOver) { h.Fuel = "can" }), "progress.replans 1 hand_overs[1]", "not exactly one"},
		{"handed over lost gear", handed(func(h *trip.HandOver) { h.Bag, h.Gear = "", 4711 }), "progress.replans 1 hand_overs[1].gear", "4711"},
		{"handed over to nobody", handed(func(h *trip.HandOver) { h.To = 0 }), "progress.replans 1 hand_overs[1].to", "0"},
		{"handed over by a ghost", handed(func(h *trip.HandOver) { h.From = 4711 }), "progress.replans 1 hand_overs[1].from", "4711"},
		{"handed over twice", handed(func(h *trip.HandOver) { h.Bag, h.Fuel = "", "leg1 group1 gas mix 1" }), "progress.replans 1 hand_overs", "twice"},
	})
}

func TestFindingWhatWasDone(t *testing.T) {
	p := &begun().Progress
	first, second := p.Packed[0].Bag, p.Packed[1].Bag
	if bag := p.PackedBag(first); bag == nil || !bag.Done {
		t.Errorf("the first bag is %+v", bag)
	}
	if mass, noted := p.PackedBag(second).WeighedMass(p.Purchases[0].Food); !noted || mass != 412*units.Gram {
		t.Errorf("weighed %v, %v", mass, noted)
	}
	if _, noted := p.PackedBag(first).WeighedMass(p.Purchases[0].Food); noted {
		t.Error("a bag that was not weighed has a weight")
	}
	if end := p.BagEnd(first); end == nil || end.End != trip.Eaten {
		t.Errorf("the first bag ended %+v", end)
	}
	if p.PackedBag("d9") != nil || p.BagEnd(second) != nil {
		t.Error("something was done to a bag that nobody touched")
	}
}

// The last change that holds tells whether a member is there.
func TestWhoIsThereOnTheWay(t *testing.T) {
	on := begun()
	on.Days = slices.Repeat(on.Days[:1], 6)
	m := &on.Crew[0]
	m.FirstDay, m.LastDay = 1, 5
	on.Progress.CrewChanges = []trip.CrewChange{{Member: m.ID, Day: 4, There: true}, {Member: m.ID, Day: 2}, {Member: on.Crew[1].ID, Day: 1}}
	var there []bool
	for day := 1; day <= 6; day++ {
		there = append(there, on.There(m, day))
	}
	if want := []bool{true, false, false, true, true, true}; !slices.Equal(there, want) {
		t.Errorf("there on %v, want %v", there, want)
	}
	m.Standby, on.Progress.CrewChanges = true, nil
	if on.There(m, 2) || m.Present(2) {
		t.Error("who stands by is there")
	}
	on.Progress.CrewChanges = []trip.CrewChange{{Member: m.ID, Day: 3, There: true}}
	if on.There(m, 2) || !on.There(m, 3) {
		t.Error("who stood by does not join on day 3")
	}
}

// What is taken out of a trip leaves no reference behind, and no money is lost.
func TestTidyKeepsTheMoney(t *testing.T) {
	before := begun()
	after := begun()
	name, gone := after.Foods[0].Name, after.Foods[0].ID
	after.Foods, after.Crew, after.Points = nil, after.Crew[1:], nil
	after.Recipes, after.Menu, after.Pins, after.Days = nil, nil, nil, after.Days[:1]
	for i := range after.Crew {
		after.Crew[i].Dislikes = nil
	}
	after.Tidy(before)
	for _, problem := range trip.Validate(after) {
		if strings.HasPrefix(problem.Where.List, "progress") {
			t.Error(problem)
		}
	}
	p := after.Progress
	if first := p.Purchases[0]; first.Other != name || first.Food == gone || first.By != 0 || first.Paid != before.Progress.Purchases[0].Paid {
		t.Errorf("the purchase became %+v", first)
	}
	if !reflect.DeepEqual(p.Purchases[1:], before.Progress.Purchases[1:]) || p.Packed[1].Weighed != nil || p.MissingBoxes != nil {
		t.Errorf("progress is %+v", p)
	}
}

// A member who is gone sends and fetches nothing; a shop whose point is gone
// is not taken for one near home.
func TestTidyOfBoxesAndShops(t *testing.T) {
	before := begun()
	before.Points[0].Sending = trip.Sending{Collector: before.Crew[0].ID, Sender: before.Crew[1].ID, Addressee: "Ann"}
	before.Shops = []trip.Shop{{Name: "Mill", Use: true, Point: before.Points[0].ID}, {Name: "Market", Use: true}}
	after := before.Clone()
	after.Crew = after.Crew[1:]
	after.Tidy(before)
	if s := after.Points[0].Sending; s.Collector != 0 || s.Sender != before.Crew[1].ID || s.Addressee != "Ann" {
		t.Errorf("%+v", s)
	}
	after.Points = after.Points[1:]
	after.Tidy(before)
	if mill, market := after.Shops[0], after.Shops[1]; mill.Point != 0 || mill.Use || !market.Use {
		t.Errorf("%+v", after.Shops)
	}
}

func TestTidyLeavesAGoodTripAlone(t *testing.T) {
	tidy := begun()
	tidy.Tidy(begun())
	if !trip.Equal(tidy, begun()) {
		t.Errorf("progress became %+v", tidy.Progress)
	}
}
