package packing

import (
	"cmp"
	"slices"
	"strings"

	"sumpter/domain/bags"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// allergy is one that somebody of the crew has.
type allergy struct {
	allergen trip.Allergen
	severe   bool // for at least one member
}

// allergiesOf lists the allergies of the crew in the order of a label.
func allergiesOf(t *trip.Trip) []allergy {
	var list []allergy
	for i := range t.Crew {
		for _, a := range t.Crew[i].Allergies {
			at := slices.IndexFunc(list, func(x allergy) bool { return x.allergen == a.Allergen })
			if at < 0 {
				at = len(list)
				list = append(list, allergy{allergen: a.Allergen})
			}
			list[at].severe = list[at].severe || a.Severe
		}
	}
	declared := trip.DeclaredAllergens()
	place := func(a trip.Allergen) int {
		if i := slices.Index(declared, a); i >= 0 {
			return i
		}
		return len(declared)
	}
	slices.SortFunc(list, func(a, b allergy) int {
		return cmp.Or(cmp.Compare(place(a.allergen), place(b.allergen)), cmp.Compare(a.allergen, b.allergen))
	})
	return list
}

// touched is a set of the crew's allergies as one sign for each, '1' for those
// that a bag contains, may contain, or of which that is not known.
type touched string

func (n *night) touches(bag *bags.Bag) touched {
	signs := make([]byte, len(n.allergies))
	for i, a := range n.allergies {
		signs[i] = '0'
		if slices.ContainsFunc(bag.Allergens, func(x bags.Allergen) bool { return x.Allergen == a.allergen && x.Presence != trip.Free }) {
			signs[i] = '1'
		}
	}
	return touched(signs)
}

// within tells whether every allergy of the set is in the other.
func (s touched) within(other touched) bool {
	for i := range len(s) {
		if s[i] == '1' && other[i] == '0' {
			return false
		}
	}
	return true
}

func (s touched) size() int { return strings.Count(string(s), "1") }

func (n *night) severe(s touched) bool {
	for i, a := range n.allergies {
		if a.severe && s[i] == '1' {
			return true
		}
	}
	return false
}

// round is bags that touch the same.
type round struct {
	touches touched
	clean   bool
	bags    []*bags.Bag
}

// rounds groups the bags and puts the groups in order, severe allergies last.
// Among the mild and among the severe no order needs fewer cleanings.
func (n *night) rounds(list []*bags.Bag) []round {
	groups := map[touched][]*bags.Bag{}
	var mild, severe []touched
	for _, bag := range list {
		s := n.touches(bag)
		if groups[s] == nil {
			if n.severe(s) {
				severe = append(severe, s)
			} else {
				mild = append(mild, s)
			}
		}
		groups[s] = append(groups[s], bag)
	}
	var rounds []round
	for _, chain := range join(chains(mild), chains(severe)) {
		for _, s := range chain {
			clean := len(rounds) == 0 || !rounds[len(rounds)-1].touches.within(s)
			rounds = append(rounds, round{s, clean, groups[s]})
		}
	}
	return rounds
}

// chains splits sets into the fewest runs in which each set is within the
// next: a least path cover of an order, by bipartite matching (Dilworth 1950;
// Fulkerson 1956, from memory). Smaller sets come first, ties by the label.
func chains(sets []touched) [][]touched {
	slices.SortFunc(sets, func(a, b touched) int {
		return cmp.Or(cmp.Compare(a.size(), b.size()), cmp.Compare(b, a))
	})
	next, before := make([]int, len(sets)), make([]int, len(sets))
	for i := range sets {
		next[i], before[i] = -1, -1
	}
	var augment func(i int, seen []bool) bool
	augment = func(i int, seen []bool) bool {
		for j := i + 1; j < len(sets); j++ {
			if seen[j] || !sets[i].within(sets[j]) {
				continue
			}
			seen[j] = true
			if before[j] < 0 || augment(before[j], seen) {
				next[i], before[j] = j, i
				return true
			}
		}
		return false
	}
	for i := range sets {
		augment(i, make([]bool, len(sets)))
	}
	var list [][]touched
	for i := range sets {
		if before[i] >= 0 {
			continue
		}
		var chain []touched
		for at := i; at >= 0; at = next[at] {
			chain = append(chain, sets[at])
		}
		list = append(list, chain)
	}
	return list
}

// join puts the severe chains behind the mild ones; where it can, so that the
// first of them goes on from the last without cleaning. The first mild chain
// stays first.
func join(mild, severe [][]touched) [][]touched {
	for i := len(mild) - 1; i >= 0; i-- {
		if i == 0 && len(mild) > 1 {
			break
		}
		for j := range severe {
			if last := mild[i][len(mild[i])-1]; last.within(severe[j][0]) {
				return append(toEnd(mild, i), toFront(severe, j)...)
			}
		}
	}
	return append(mild, severe...)
}

func toEnd(list [][]touched, i int) [][]touched {
	moved := list[i]
	return append(slices.Delete(slices.Clone(list), i, i+1), moved)
}

func toFront(list [][]touched, i int) [][]touched {
	moved := list[i]
	return append([][]touched{moved}, slices.Delete(slices.Clone(list), i, i+1)...)
}

// freeOf lists the allergies a set does not touch.
func (n *night) freeOf(s touched) []trip.Allergen {
	var free []trip.Allergen
	for i, a := range n.allergies {
		if s[i] == '0' {
			free = append(free, a.allergen)
		}
	}
	return free
}

// name says what a round is free of, or touches if it is free of nothing.
func (n *night) name(s touched) prose.Text {
	if len(n.allergies) == 0 {
		return prose.Say("all bags")
	}
	if free := n.freeOf(s); len(free) > 0 {
		return prose.Say("without %s", prose.List(", ", free))
	}
	return prose.Say("with %s", n.allNames())
}
