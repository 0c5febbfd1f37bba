package packing

import (
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"sumpter/domain/bags"
	"sumpter/domain/trip"
)

// fewestRuns tries every order of the sets.
func fewestRuns(sets []touched) int {
	best := len(sets)
	var walk func(done []touched, left []touched, runs int)
	walk = func(done, left []touched, runs int) {
		if runs >= best {
			return
		}
		if len(left) == 0 {
			best = runs
			return
		}
		for i, s := range left {
			rest := slices.Delete(slices.Clone(left), i, i+1)
			more := 1
			if len(done) > 0 && done[len(done)-1].within(s) {
				more = 0
			}
			walk(append(done, s), rest, runs+more)
		}
	}
	walk(nil, sets, 0)
	return best
}

func TestChainsAreTheFewest(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 2))
	for n := range 400 {
		seen := map[touched]bool{}
		var sets []touched
		for range r.IntN(7) {
			signs := make([]byte, 4)
			for i := range signs {
				signs[i] = '0' + byte(r.IntN(2))
			}
			if s := touched(signs); !seen[s] {
				seen[s] = true
				sets = append(sets, s)
			}
		}
		list := chains(slices.Clone(sets))
		var all []touched
		for _, chain := range list {
			all = append(all, chain...)
			for i := 1; i < len(chain); i++ {
				if !chain[i-1].within(chain[i]) {
					t.Fatalf("case %d: chain %v", n, chain)
				}
			}
		}
		slices.Sort(all)
		slices.Sort(sets)
		if !slices.Equal(all, sets) {
			t.Fatalf("case %d: %v of %v", n, all, sets)
		}
		if len(sets) > 0 && len(list) != fewestRuns(sets) {
			t.Fatalf("case %d: %d chains of %v, want %d", n, len(list), sets, fewestRuns(sets))
		}
	}
}

func TestSevereChainsFollowWithoutCleaningWhereTheyCan(t *testing.T) {
	got := join([][]touched{{"000", "100"}, {"010"}}, [][]touched{{"101"}, {"011", "111"}})
	want := [][]touched{{"000", "100"}, {"010"}, {"011", "111"}, {"101"}}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	if got := join(nil, [][]touched{{"001"}}); len(got) != 1 {
		t.Errorf("%v", got)
	}
}

func bagWith(key string, states ...bags.Allergen) bags.Bag {
	return bags.Bag{Key: key, Allergens: states}
}

// crew has severe peanuts, mild gluten and a word of its own.
func crew() *trip.Trip {
	t := &trip.Trip{Settings: trip.DefaultSettings()}
	t.Crew = []trip.Member{
		{ID: 1, Allergies: []trip.Allergy{{Allergen: "kiwi"}, {Allergen: trip.Gluten}}},
		{ID: 2, Allergies: []trip.Allergy{{Allergen: trip.Peanuts, Severe: true}, {Allergen: trip.Gluten}}},
	}
	return t
}

func TestRoundsOfACrew(t *testing.T) {
	n := &night{trip: crew(), allergies: allergiesOf(crew())}
	list := []bags.Bag{
		bagWith("nut", bags.Allergen{Allergen: trip.Peanuts, Presence: trip.Contains}),
		bagWith("rice"),
		bagWith("pasta", bags.Allergen{Allergen: trip.Gluten, Presence: trip.Contains}),
		bagWith("maybe", bags.Allergen{Allergen: "kiwi", Presence: trip.NotKnown}, bags.Allergen{Allergen: trip.Milk, Presence: trip.Contains}),
		bagWith("both", bags.Allergen{Allergen: trip.Gluten, Presence: trip.MayContain}, bags.Allergen{Allergen: trip.Peanuts, Presence: trip.MayContain}),
	}
	var order []string
	var bagsIn []*bags.Bag
	for i := range list {
		bagsIn = append(bagsIn, &list[i])
	}
	for _, r := range n.rounds(bagsIn) {
		line := n.name(r.touches).String()
		if r.clean {
			line += ", clean first"
		}
		for _, b := range r.bags {
			line += "; " + b.Key
		}
		order = append(order, line)
	}
	want := []string{
		"without gluten, peanuts, kiwi, clean first; rice",
		"without peanuts, kiwi; pasta",
		"without gluten, peanuts, clean first; maybe",
		"without gluten, kiwi, clean first; nut",
		"without kiwi; both",
	}
	if !reflect.DeepEqual(order, want) {
		t.Errorf("rounds\n%q\nwant\n%q", order, want)
	}
}
