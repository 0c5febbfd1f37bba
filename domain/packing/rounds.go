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

// findSevere notes which members are harmed by traces of what.
func (n *night) findSevere() {
	for i := range n.trip.Crew {
		m := &n.trip.Crew[i]
		for _, a := range m.Allergies {
			if at := slices.IndexFunc(n.allergies, func(x allergy) bool { return x.allergen == a.Allergen }); a.Severe {
				n.severeOf[m.ID] = append(n.severeOf[m.ID], at)
			}
		}
	}
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

// meets tells whether an allergy is in both sets.
func (s touched) meets(other touched) bool {
	for i := range len(s) {
		if s[i] == '1' && other[i] == '1' {
			return true
		}
	}
	return false
}

// or gives what is in either.
func (s touched) or(other touched) touched {
	signs := []byte(s)
	for i := range signs {
		signs[i] = max(signs[i], other[i])
	}
	return touched(signs)
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
	guards  touched // severe allergies of who eats from its bags, that these do not touch
	table   int     // from 0
	clean   bool
	bags    []*bags.Bag
}

// guards are the severe allergies of those who eat from a bag, but for those
// it touches: they are served it all the same, by the leader's hand.
func (n *night) guards(bag *bags.Bag, touches touched) touched {
	signs := []byte(strings.Repeat("0", len(n.allergies)))
	guard := func(id trip.MemberID) {
		for _, i := range n.severeOf[id] {
			if touches[i] == '0' {
				signs[i] = '1'
			}
		}
	}
	for i := range bag.Uses {
		for _, s := range bag.Uses[i].Shares {
			guard(s.Member)
		}
		for _, id := range bag.Uses[i].PotFor {
			guard(id)
		}
	}
	return touched(signs)
}

// rounds groups the bags by what they touch and puts the groups in order.
func (n *night) rounds(list []*bags.Bag) []round {
	at := map[touched]int{}
	var groups []round
	for _, bag := range list {
		touches := n.touches(bag)
		i, ok := at[touches]
		if !ok {
			i = len(groups)
			at[touches] = i
			groups = append(groups, round{touches: touches, guards: n.guards(bag, touches)})
		}
		groups[i].guards = groups[i].guards.or(n.guards(bag, touches))
		groups[i].bags = append(groups[i].bags, bag)
	}
	slices.SortFunc(groups, func(a, b round) int {
		return cmp.Or(cmp.Compare(a.touches.size(), b.touches.size()), cmp.Compare(b.touches, a.touches))
	})
	var rounds []round
	for table := 0; len(groups) > 0; table++ {
		var later []round
		groups, later = n.oneTable(groups)
		for i, at := range n.inOrder(groups) {
			r := groups[at]
			r.table = table
			r.clean = i == 0 || !rounds[len(rounds)-1].touches.within(r.touches)
			rounds = append(rounds, r)
		}
		groups = later
	}
	return rounds
}

// before tells whether a round must come before another on one table: nobody
// who is harmed by traces eats what was packed where their allergen was, even
// after cleaning; and all rounds free of every severe allergy come first.
func (n *night) before(a, b *round) bool {
	return a.guards.meets(b.touches) || n.severe(b.touches) && !n.severe(a.touches)
}

// oneTable takes out what has to go to a table of its own because no order
// keeps all severe allergies apart: of rounds that would each have to come
// before another, the ones with the fewest bags.
func (n *night) oneTable(groups []round) (here, elsewhere []round) {
	here = slices.Clone(groups)
	for {
		stuck := n.stuck(here)
		if len(stuck) == 0 {
			return here, elsewhere
		}
		least := stuck[0]
		for _, i := range stuck {
			if len(here[i].bags) < len(here[least].bags) {
				least = i
			}
		}
		elsewhere = append(elsewhere, here[least])
		here = slices.Delete(here, least, least+1)
	}
}

// stuck gives the rounds that lie on a circle of "before", or between two.
func (n *night) stuck(groups []round) []int {
	left := make([]int, len(groups))
	for i := range left {
		left[i] = i
	}
	for {
		kept := slices.DeleteFunc(slices.Clone(left), func(i int) bool {
			first := !slices.ContainsFunc(left, func(j int) bool { return j != i && n.before(&groups[j], &groups[i]) })
			last := !slices.ContainsFunc(left, func(j int) bool { return j != i && n.before(&groups[i], &groups[j]) })
			return first || last
		})
		if len(kept) == len(left) {
			return left
		}
		left = kept
	}
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
