package packing_test

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/bags"
	"sumpter/domain/bags/bagstest"
	"sumpter/domain/cooking"
	"sumpter/domain/findings"
	"sumpter/domain/packing"
	"sumpter/domain/resupply"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

func plan(t *trip.Trip) (bags.Result, packing.Result) {
	legs := t.Legs()
	b := bags.Compute(t, bagstest.Batches(t), cooking.Result{}, legs)
	r := resupply.Compute(t, b, cooking.Result{}, legs)
	p := packing.Compute(t, b, r)
	b.Bags = r.PackedAtHome(b.Bags) // what is bought on the way is filled there
	return b, p
}

type put struct {
	bag  string
	food trip.FoodID
	mass units.Mass
}

func TestEachContentIsWeighedOnceInTheRoundOfItsBag(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		tr := triptest.Trip().Draw(rt, "trip").Canonical()
		b, p := plan(tr)
		want, got := map[put]int{}, map[put]int{}
		for _, bag := range b.Bags {
			for _, c := range bag.Contents {
				want[put{bag.Key, c.Food, c.Mass}]++
			}
		}
		round := map[string]int{}
		for i, r := range p.Rounds {
			labelled, checked := 0, 0
			for _, s := range r.Steps {
				switch s.Station {
				case packing.Label:
					labelled++
					if other, ok := round[s.Bag]; ok {
						rt.Fatalf("bag %s is in rounds %d and %d", s.Bag, other, i)
					}
					round[s.Bag] = i
				case packing.Check:
					checked++
				}
			}
			if labelled == 0 || labelled != checked {
				rt.Fatalf("round %s labels %d bags and checks %d", r.Name, labelled, checked)
			}
		}
		if len(round) != len(b.Bags) {
			rt.Fatalf("%d of %d bags are packed", len(round), len(b.Bags))
		}
		last := -1
		for _, bulk := range p.Bulk {
			var sum units.Mass
			for _, w := range bulk.Into {
				sum += w.Mass
				got[put{w.Bag, bulk.Food, w.Mass}]++
				if round[w.Bag] != bulk.Round {
					rt.Fatalf("bag %s of round %d is filled in round %d", w.Bag, round[w.Bag], bulk.Round)
				}
			}
			if sum != bulk.Total || bulk.Round < last {
				rt.Fatalf("bulk %+v does not add up or is out of order", bulk)
			}
			last = bulk.Round
		}
		if !reflect.DeepEqual(want, got) {
			rt.Fatalf("bags hold %v, weighed is %v", want, got)
		}
	})
}

// Walk through the evening: what has been on the table since it was last
// cleaned is on the label of every bag packed there, as far as the crew's
// allergies go; and nothing severe comes before what is free of it.
func TestNoBagMeetsAnAllergenThatIsNotOnItsLabel(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		tr := triptest.Trip().Draw(rt, "trip").Canonical()
		b, p := plan(tr)
		byKey := map[string]*bags.Bag{}
		for i := range b.Bags {
			byKey[b.Bags[i].Key] = &b.Bags[i]
		}
		severe := map[trip.Allergen]bool{}
		all := map[trip.Allergen]bool{}
		for i := range tr.Crew {
			for _, a := range tr.Crew[i].Allergies {
				all[a.Allergen] = true
				severe[a.Allergen] = severe[a.Allergen] || a.Severe
			}
		}
		soil := map[trip.Allergen]bool{}
		severeSeen := false
		for i, r := range p.Rounds {
			if i == 0 && !r.CleanFirst {
				rt.Fatal("the evening does not begin clean")
			}
			if r.CleanFirst {
				soil = map[trip.Allergen]bool{}
			}
			severeHere := false
			for _, s := range r.Steps {
				touches := map[trip.Allergen]bool{}
				for _, a := range byKey[s.Bag].Allergens {
					touches[a.Allergen] = a.Presence != trip.Free
				}
				for a := range all {
					if touches[a] {
						soil[a] = true
						severeHere = severeHere || severe[a]
					}
					if touches[a] == slices.Contains(r.FreeOf, a) {
						rt.Fatalf("round %s, free of %v, has bag %s with %v", r.Name, r.FreeOf, s.Bag, byKey[s.Bag].Allergens)
					}
				}
				for a := range soil {
					if !touches[a] {
						rt.Fatalf("bag %s meets %s in round %s", s.Bag, a, r.Name)
					}
				}
			}
			if severeSeen && !severeHere {
				rt.Fatalf("round %s comes after a severe allergen", r.Name)
			}
			severeSeen = severeHere
		}
	})
}

func TestOrderOfTheListsChangesNothing(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		tr := triptest.Trip().Draw(rt, "trip")
		_, a := plan(tr.Canonical())
		slices.Reverse(tr.Foods)
		slices.Reverse(tr.Crew)
		_, b := plan(tr.Canonical())
		if !reflect.DeepEqual(a, b) {
			rt.Fatal("packing depends on the order of the lists")
		}
	})
}

// More helpers never take longer, and there is always something to do.
func TestHelpers(t *testing.T) {
	tr := triptest.Large(12, 9, 3).Canonical()
	before := units.Minutes(1e9)
	for helpers := range 9 {
		tr.Settings.Helpers = helpers
		_, p := plan(tr)
		if p.Minutes > before || p.Minutes < 10 {
			t.Errorf("%d helpers take %.1f minutes, one less %.1f", helpers, float64(p.Minutes), float64(before))
		}
		before = p.Minutes
	}
}

// kitchen is two foods, rice and nuts, and three bags of two rounds.
func kitchen() (*trip.Trip, bags.Result) {
	t := &trip.Trip{Settings: trip.DefaultSettings()}
	t.Settings.Helpers = 1
	t.Crew = []trip.Member{{ID: 1, Allergies: []trip.Allergy{{Allergen: trip.Nuts, Severe: true}}}}
	rice, oil, bar := bagstest.Food(1, "Rice"), bagstest.Food(2, "Oil"), bagstest.Food(3, "Bar")
	oil.Form, bar.Form = trip.Liquid, trip.Piece
	t.Foods = []trip.Food{rice, oil, bar}
	nutty := []bags.Allergen{{Allergen: trip.Nuts, Presence: trip.MayContain}}
	return t, bags.Result{Bags: []bags.Bag{
		{Key: "a", Leg: 0, Contents: []bags.Content{{Food: 1, Mass: bagstest.Grams(100)}, {Food: 2, Mass: bagstest.Grams(10)}}},
		{Key: "b", Leg: 0, Contents: []bags.Content{{Food: 1, Mass: bagstest.Grams(2)}, {Food: 3, Mass: bagstest.Grams(50)}}, Allergens: nutty},
		{Key: "c", Leg: 1, Contents: []bags.Content{{Food: 1, Mass: bagstest.Grams(80)}}},
	}}
}

func TestAnEvening(t *testing.T) {
	tr, b := kitchen()
	r := resupply.Result{Boxes: []resupply.Box{{Leg: 1, Posted: true, SendOn: 19000}}}
	p := packing.Compute(tr, b, r)
	var lines []string
	for _, round := range p.Rounds {
		line := round.Name.String()
		for _, s := range round.Steps {
			line += "; " + string(s.Station) + " " + s.Bag
		}
		lines = append(lines, line)
	}
	want := []string{
		"without nuts; weigh dry c; weigh dry a; wet a; label c; label a; final check c; final check a",
		"with nuts; weigh dry b; count b; label b; final check b",
	}
	if !reflect.DeepEqual(lines, want) {
		t.Errorf("%q", lines)
	}
	wantBulk := []packing.Bulk{
		{Round: 0, Food: 1, Total: bagstest.Grams(180), Into: []packing.Weighing{{Bag: "c", Mass: bagstest.Grams(80)}, {Bag: "a", Mass: bagstest.Grams(100)}}},
		{Round: 0, Food: 2, Total: bagstest.Grams(10), Into: []packing.Weighing{{Bag: "a", Mass: bagstest.Grams(10)}}},
		{Round: 1, Food: 1, Total: bagstest.Grams(2), Into: []packing.Weighing{{Bag: "b", Mass: bagstest.Grams(2)}}},
		{Round: 1, Food: 3, Total: bagstest.Grams(50), Into: []packing.Weighing{{Bag: "b", Mass: bagstest.Grams(50)}}},
	}
	if !reflect.DeepEqual(p.Bulk, wantBulk) {
		t.Errorf("%+v", p.Bulk)
	}
	// One helper: 600 to clean; rice 60+2*25, oil 60+45, two bags of 35;
	// then rice 60+25, bar 60+15, one bag of 35.
	if want := units.Minutes(float64(600+110+105+70+85+75+35) / 60); p.Minutes != want {
		t.Errorf("%v minutes, want %v", p.Minutes, want)
	}
	if p.Rounds[0].Minutes+p.Rounds[1].Minutes != p.Minutes || p.Rounds[1].Minutes != units.Minutes(float64(85+75+35)/60) {
		t.Errorf("the rounds take %v and %v of %v minutes", p.Rounds[0].Minutes, p.Rounds[1].Minutes, p.Minutes)
	}
	find(t, p, "cross-contact", findings.Note, "2 rounds with 1 cleanings keep nuts apart")
	find(t, p, "fine-weighing", findings.Note, "1 weighings are under 3 g")
}

func find(t *testing.T, p packing.Result, code string, severity findings.Severity, says string) {
	t.Helper()
	for _, f := range p.Findings {
		if f.Code == code {
			if f.Severity != severity || !strings.Contains(f.What.String()+f.Remedy.String(), says) {
				t.Errorf("%+v does not say %q", f, says)
			}
			return
		}
	}
	t.Errorf("no finding %s in %+v", code, p.Findings)
}

// Rice opened beside gluten must not go into a later round free of it.
func TestFoodForACleanRoundIsSetAside(t *testing.T) {
	tr, b := kitchen()
	tr.Crew[0].Allergies = []trip.Allergy{{Allergen: trip.Gluten}, {Allergen: trip.Milk}}
	b.Bags[0].Allergens = []bags.Allergen{{Allergen: trip.Gluten, Presence: trip.Contains}}
	b.Bags[1].Allergens = []bags.Allergen{{Allergen: trip.Milk, Presence: trip.Contains}}
	p := packing.Compute(tr, b, resupply.Result{})
	find(t, p, "set-aside", findings.LookAt, "Set 2 g of it aside, closed, before round 2 begins")
	tr.Crew[0].Allergies[0].Severe = true
	p = packing.Compute(tr, b, resupply.Result{})
	for _, f := range p.Findings {
		if f.Code == "set-aside" && strings.Contains(f.What.String(), "with gluten") {
			t.Errorf("with gluten last nothing is soiled by it: %+v", f)
		}
	}
}

func TestNothingToPack(t *testing.T) {
	tr, _ := kitchen()
	if p := packing.Compute(tr, bags.Result{}, resupply.Result{}); p.Minutes != 0 || p.Rounds != nil || len(p.Findings) != 0 {
		t.Errorf("%+v", p)
	}
}

func TestALongNightIsTold(t *testing.T) {
	tr := triptest.Large(40, 14, 2).Canonical()
	tr.Settings.Helpers = 1
	_, p := plan(tr)
	find(t, p, "long-night", findings.LookAt, "with 1 helpers")
}

// 60 people, 21 days.
func BenchmarkCompute(b *testing.B) {
	t := triptest.Large(60, 21, 1).Canonical()
	legs := t.Legs()
	packed := bags.Compute(t, bagstest.Batches(t), cooking.Result{}, legs)
	boxes := resupply.Compute(t, packed, cooking.Result{}, legs)
	for b.Loop() {
		packing.Compute(t, packed, boxes)
	}
}
