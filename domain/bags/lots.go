package bags

import (
	"cmp"
	"slices"

	"sumpter/domain/portions"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// spoonful is the difference between portions that a spoon evens out at the
// table; above it each eater gets a bag. Design choice.
const spoonful = 20 * units.Gram

// amount is a mass of one food.
type amount struct {
	ware *ware
	mass units.Mass
}

// destination is where food of a batch ends: a pot, some bowls, one eater.
type destination struct {
	place   trip.Place
	member  trip.MemberID // one eater's own
	first   trip.MemberID // shared by some who eat differently: the first of them
	eaters  int
	amounts []amount // by food
}

// destinations splits a batch.
func (k *packer) destinations(b *portions.Batch) []destination {
	if b.Meal == trip.Snack {
		return k.snacks(b)
	}
	list := []destination{{place: trip.InPot, eaters: len(b.Portions), amounts: k.amounts(b.Totals, trip.InPot)}}
	return append(list, k.bowls(b)...)
}

// snacks are one destination for each eater, but what runs is shared from one
// bottle by those who get it: a bottle each would weigh more than what is in it.
func (k *packer) snacks(b *portions.Batch) []destination {
	var list []destination
	var shared []destination // one for each food that runs
	for i := range b.Portions {
		own := destination{place: trip.AtBowl, member: b.Portions[i].Member, eaters: 1}
		for _, a := range k.amounts(b.Portions[i].Amounts, "") {
			if a.ware.kind(false) != wet {
				own.amounts = append(own.amounts, a)
				continue
			}
			at := slices.IndexFunc(shared, func(d destination) bool { return d.amounts[0].ware == a.ware })
			if at < 0 {
				at = len(shared)
				shared = append(shared, destination{place: trip.AtBowl, amounts: []amount{{ware: a.ware}}})
			}
			shared[at].eaters++
			shared[at].amounts[0].mass += a.mass
		}
		if len(own.amounts) > 0 {
			list = append(list, own)
		}
	}
	return append(list, shared...)
}

// amounts adds up the foods of one place, or of both.
func (k *packer) amounts(list []portions.Amount, place trip.Place) []amount {
	var sum []amount
	for _, a := range list {
		w := k.foods[a.Food]
		if w == nil || a.Mass <= 0 || place != "" && a.Place != place {
			continue
		}
		if i := slices.IndexFunc(sum, func(s amount) bool { return s.ware == w }); i >= 0 {
			sum[i].mass += a.Mass
		} else {
			sum = append(sum, amount{w, a.Mass})
		}
	}
	slices.SortFunc(sum, func(a, b amount) int { return cmp.Compare(a.ware.food.ID, b.ware.food.ID) })
	return sum
}

// bowls gathers eaters whose bowls get the same foods, largest gathering first.
func (k *packer) bowls(b *portions.Batch) []destination {
	var list []destination
	var least, most []units.Mass
	var members [][]destination
	for i := range b.Portions {
		p := &b.Portions[i]
		own := destination{place: trip.AtBowl, member: p.Member, eaters: 1, amounts: k.amounts(p.Amounts, trip.AtBowl)}
		if len(own.amounts) == 0 {
			continue
		}
		at := slices.IndexFunc(list, func(d destination) bool { return sameFoods(d.amounts, own.amounts) })
		mass := total(own.amounts)
		if at < 0 {
			shared := own
			shared.member, shared.first, shared.amounts = 0, p.Member, slices.Clone(own.amounts)
			list, least, most = append(list, shared), append(least, mass), append(most, mass)
			members = append(members, []destination{own})
			continue
		}
		list[at].eaters++
		for j := range own.amounts {
			list[at].amounts[j].mass += own.amounts[j].mass
		}
		least[at], most[at] = min(least[at], mass), max(most[at], mass)
		members[at] = append(members[at], own)
	}
	var out []destination
	largest := largestOf(list)
	for i, shared := range list {
		if most[i]-least[i] > spoonful {
			out = append(out, members[i]...)
			continue
		}
		if i == largest {
			shared.first = 0
		}
		out = append(out, shared)
	}
	return out
}

func largestOf(list []destination) int {
	largest := 0
	for i := range list {
		if list[i].eaters > list[largest].eaters {
			largest = i
		}
	}
	return largest
}

func sameFoods(a, b []amount) bool {
	return slices.EqualFunc(a, b, func(x, y amount) bool { return x.ware == y.ware })
}

func total(list []amount) units.Mass {
	var sum units.Mass
	for _, a := range list {
		sum += a.mass
	}
	return sum
}

// kind is what must not be packed with other foods, and why.
type kind int

const (
	together kind = iota // dry foods and whole pieces
	crushing             // breaks under the rest
	melting              // turns soft and runs
	fresh                // needs cold, or nobody knows: damp
	wet                  // runs
	asBought             // stays in its package
)

// word is the kind in a bag key.
func (k kind) word() string {
	return [...]string{"", "crush", "melt", "fresh", "wet", "bought"}[k]
}

// alone tells whether each food of the kind has a bag of its own.
func (k kind) alone() bool { return k >= melting }

// lot is what goes into one bag, if it is large enough.
type lot struct {
	kind    kind
	own     bool // one eater's
	amounts []amount
}

// lots cuts a destination's food up. What one eater gets in a package may lie
// in the bag with the rest.
func (k *packer) lots(d destination, day int) []lot {
	var list []lot
	for _, a := range d.amounts {
		kind := a.ware.kind(k.melts(a.ware, day))
		if kind == asBought && d.member != 0 && len(d.amounts) > 1 {
			kind = together
		}
		at := slices.IndexFunc(list, func(l lot) bool { return l.kind == kind && !kind.alone() })
		if at < 0 {
			list = append(list, lot{kind: kind, own: d.member != 0})
			at = len(list) - 1
		}
		list[at].amounts = append(list[at].amounts, a)
	}
	slices.SortStableFunc(list, func(a, b lot) int { return cmp.Compare(a.kind, b.kind) })
	return list
}

// kind of a food, by what would spoil the bag most.
func (w *ware) kind(melts bool) kind {
	f := w.food
	switch {
	case f.PackedAsBought:
		return asBought
	case f.Form == trip.Liquid || f.Form == trip.Spread:
		return wet
	case melts:
		return melting
	case f.Storage.Control() != trip.TCSNo:
		return fresh
	case f.Storage.Crushable:
		return crushing
	default:
		return together
	}
}
