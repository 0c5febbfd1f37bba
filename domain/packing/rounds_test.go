package packing

import (
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"sumpter/domain/bags"
	"sumpter/domain/trip"
)

// cheapest tries every order that keeps what must come before, and gives the
// fewest cleanings after the first; -1 if there is no order.
func cheapest(n *night, groups []round) int {
	best := -1
	var walk func(order []int, cost int)
	walk = func(order []int, cost int) {
		if len(order) == len(groups) {
			if best < 0 || cost < best {
				best = cost
			}
			return
		}
		for next := range groups {
			if slices.Contains(order, next) {
				continue
			}
			early := false
			for other := range groups {
				early = early || other != next && !slices.Contains(order, other) && n.before(&groups[other], &groups[next])
			}
			if early {
				continue
			}
			more := 0
			if len(order) > 0 {
				more = cleaning(groups, order[len(order)-1], next)
			}
			walk(append(slices.Clone(order), next), cost+more)
		}
	}
	walk(nil, 0)
	return best
}

// drawn is rounds of four allergies, of which two are severe, with somebody
// harmed by traces for some.
func drawn(r *rand.Rand) (*night, []round) {
	n := &night{allergies: []allergy{{"a", true}, {"b", true}, {"c", false}, {"d", false}}}
	seen := map[touched]bool{}
	var groups []round
	for range r.IntN(8) {
		signs, guards := []byte("0000"), []byte("0000")
		for i := range signs {
			signs[i] = '0' + byte(r.IntN(2))
			if i < 2 && signs[i] == '0' && r.IntN(2) == 0 {
				guards[i] = '1'
			}
		}
		if s := touched(signs); !seen[s] {
			seen[s] = true
			groups = append(groups, round{touches: s, guards: touched(guards), bags: make([]*bags.Bag, 1+r.IntN(9))})
		}
	}
	return n, groups
}

func TestOrderHasTheFewestCleanings(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 2))
	for c := range 600 {
		n, groups := drawn(r)
		here, elsewhere := n.oneTable(groups)
		if len(here)+len(elsewhere) != len(groups) {
			t.Fatalf("case %d: %d rounds and %d of %d", c, len(here), len(elsewhere), len(groups))
		}
		if len(elsewhere) > 0 && cheapest(n, groups) >= 0 {
			t.Fatalf("case %d: one table would do for %+v", c, groups)
		}
		for name, order := range map[string][]int{"exact": n.inOrder(here), "step by step": stepByStep(here, n.earlier(here))} {
			cost := 0
			for i, at := range order {
				if slices.Index(order, at) != i {
					t.Fatalf("case %d: %s order %v", c, name, order)
				}
				for _, later := range order[i+1:] {
					if n.before(&here[later], &here[at]) {
						t.Fatalf("case %d: %s order %v puts %v before %v", c, name, order, here[at].touches, here[later].touches)
					}
				}
				if i > 0 {
					cost += cleaning(here, order[i-1], at)
				}
			}
			if len(order) != len(here) || name == "exact" && len(here) > 0 && cost != cheapest(n, here) {
				t.Fatalf("case %d: %s order %v costs %d cleanings, want %d", c, name, order, cost, cheapest(n, here))
			}
		}
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
	n := &night{trip: crew(), allergies: allergiesOf(crew()), severeOf: map[trip.MemberID][]int{}}
	n.findSevere()
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

// Two whom traces harm, each eating what harms the other: no order on one
// table keeps both safe.
func TestWhatOneTableCannotKeepApartGoesToAnother(t *testing.T) {
	tr := &trip.Trip{Settings: trip.DefaultSettings()}
	tr.Crew = []trip.Member{
		{ID: 1, Allergies: []trip.Allergy{{Allergen: trip.Gluten, Severe: true}}},
		{ID: 2, Allergies: []trip.Allergy{{Allergen: trip.Peanuts, Severe: true}}},
	}
	n := &night{trip: tr, allergies: allergiesOf(tr), severeOf: map[trip.MemberID][]int{}}
	n.findSevere()
	bread := bagWith("bread", bags.Allergen{Allergen: trip.Gluten, Presence: trip.Contains})
	nuts := bagWith("nuts", bags.Allergen{Allergen: trip.Peanuts, Presence: trip.Contains})
	more := bagWith("more bread", bags.Allergen{Allergen: trip.Gluten, Presence: trip.Contains})
	rice := bagWith("rice")
	list := []*bags.Bag{&bread, &nuts, &more, &rice}
	tables := func() []int {
		var got []int
		for _, r := range n.rounds(list) {
			got = append(got, r.table)
		}
		return got
	}
	bread.Uses = []bags.Use{{Shares: []bags.Share{{Member: 2, Mass: 1}}}}
	if got := tables(); !slices.Equal(got, []int{0, 0, 0}) {
		t.Errorf("nobody harmed by gluten eats the nuts, yet tables are %v", got)
	}
	nuts.Uses = []bags.Use{{PotFor: []trip.MemberID{1}}}
	if got := tables(); !slices.Equal(got, []int{0, 0, 1}) {
		t.Errorf("tables %v", got)
	}
	last := n.rounds(list)[2]
	if !last.clean || len(last.bags) != 1 || last.bags[0].Key != "nuts" {
		t.Errorf("the fewest bags go elsewhere: %+v", last)
	}
}
