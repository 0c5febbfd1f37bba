package packing_test

import (
	"fmt"
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

// Walk through the evening, table by table: what has been on it since it was
// last cleaned is on the label of every bag packed there, as far as the crew's
// allergies go; nothing severe comes before what is free of all; and nobody
// harmed by traces eats from a bag packed where their allergen ever was.
func TestNoBagMeetsAnAllergenThatIsNotOnItsLabel(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		tr := triptest.Trip().Draw(rt, "trip").Canonical()
		b, p := plan(tr)
		w := newWalk(tr, b)
		for i := range p.Rounds {
			if fault := w.round(&p.Rounds[i]); fault != "" {
				rt.Fatalf("round %s at table %d: %s", p.Rounds[i].Name, p.Rounds[i].Table, fault)
			}
		}
	})
}

type set map[trip.Allergen]bool

// walk is what the tables have seen.
type walk struct {
	trip        *trip.Trip
	bags        map[string]*bags.Bag
	all, severe set
	table       int
	soil, ever  set // since the last cleaning, and since the evening began
	severeSeen  bool
}

func newWalk(tr *trip.Trip, b bags.Result) *walk {
	w := &walk{trip: tr, bags: map[string]*bags.Bag{}, all: set{}, severe: set{}}
	for i := range b.Bags {
		w.bags[b.Bags[i].Key] = &b.Bags[i]
	}
	for i := range tr.Crew {
		for _, a := range tr.Crew[i].Allergies {
			w.all[a.Allergen] = true
			w.severe[a.Allergen] = w.severe[a.Allergen] || a.Severe
		}
	}
	return w
}

func (w *walk) round(r *packing.Round) string {
	if r.Table != w.table {
		if r.Table != w.table+1 || !r.CleanFirst {
			return "a new table does not begin clean"
		}
		w.table, w.soil, w.ever, w.severeSeen = r.Table, set{}, set{}, false
	}
	if r.CleanFirst {
		w.soil = set{}
	}
	severeHere := false
	for _, s := range r.Steps {
		bag := w.bags[s.Bag]
		touches := set{}
		for _, a := range bag.Allergens {
			touches[a.Allergen] = a.Presence != trip.Free
		}
		for a := range w.all {
			if touches[a] {
				w.soil[a] = true
				severeHere = severeHere || w.severe[a]
			}
			if touches[a] == slices.Contains(r.FreeOf, a) {
				return fmt.Sprintf("free of %v, but bag %s has %v", r.FreeOf, s.Bag, bag.Allergens)
			}
		}
		for a := range w.soil {
			if !touches[a] {
				return fmt.Sprintf("bag %s meets %s", s.Bag, a)
			}
		}
		if fault := w.eaters(bag, touches); fault != "" {
			return fault
		}
	}
	for a := range w.soil {
		w.ever[a] = true
	}
	if w.severeSeen && !severeHere {
		return "it comes after a severe allergen"
	}
	w.severeSeen = severeHere
	return ""
}

// eaters: whom traces harm, and who is not served the allergen in the bag
// itself, by the leader's hand.
func (w *walk) eaters(bag *bags.Bag, touches set) string {
	for _, use := range bag.Uses {
		eaters := slices.Clone(use.PotFor)
		for _, s := range use.Shares {
			eaters = append(eaters, s.Member)
		}
		for _, id := range eaters {
			for _, a := range w.trip.Member(id).Allergies {
				if a.Severe && w.ever[a.Allergen] && !touches[a.Allergen] {
					return fmt.Sprintf("member %d eats from bag %s, packed where %s was", id, bag.Key, a.Allergen)
				}
			}
		}
	}
	return ""
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
	find(t, p, "cross-contact", findings.Note, "keeps nuts apart: rounds 2, cleanings 1")
	find(t, p, "fine-weighing", findings.Note, "Weighings under 3 g, on a scale that shows ")
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
	find(t, p, "set-aside", findings.Note, "Before round 2 begins, set aside in closed boxes: 2 g Rice")
	want := []packing.Aside{{Food: 1, Mass: bagstest.Grams(2), Before: 1}}
	if got := p.Rounds[2].SetAside; !slices.Equal(got, want) || p.Rounds[1].SetAside != nil {
		t.Errorf("%+v, want %+v", got, want)
	}
	tr.Crew[0].Allergies[0].Severe = true
	b.Bags[1].Uses = []bags.Use{{Shares: []bags.Share{{Member: 1, Mass: 1}}}}
	p = packing.Compute(tr, b, resupply.Result{})
	for _, r := range p.Rounds {
		if r.SetAside != nil && !slices.Contains(r.FreeOf, trip.Milk) {
			t.Errorf("with gluten last nothing is soiled by it: %+v", r)
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
	find(t, p, "long-night", findings.LookAt, "one person alone")
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
