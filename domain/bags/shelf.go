package bags

import (
	"cmp"
	"slices"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// asBoughtType is the type of a bag that is no bag: food in its own package.
const asBoughtType = "as bought"

// noType stands where the trip has no bag to pack into.
const noType = "no bag type"

// powderShare of a bag's mass from which it sifts out of a pinhole and is
// double-bagged. Common practice, no source.
const powderShare = 0.1

// shelf is the bag types there are, by what they hold.
type shelf struct {
	bags, bottles []trip.BagType
}

// newShelf sorts types by usable volume, then tare, then name.
func newShelf(types []trip.BagType) shelf {
	var s shelf
	for _, b := range types {
		if holds(b) <= 0 {
			continue
		}
		if b.Liquids {
			s.bottles = append(s.bottles, b)
		} else {
			s.bags = append(s.bags, b)
		}
	}
	for _, list := range [][]trip.BagType{s.bags, s.bottles} {
		slices.SortStableFunc(list, func(a, b trip.BagType) int {
			return cmp.Or(cmp.Compare(holds(a), holds(b)), cmp.Compare(a.Tare, b.Tare), cmp.Compare(a.Name, b.Name))
		})
	}
	return s
}

// holds is the volume that may be used and still leaves room to seal.
func holds(b trip.BagType) units.Volume { return b.Nominal.Scale(b.Fill) }

func (s shelf) bottle(name string) bool {
	return slices.ContainsFunc(s.bottles, func(b trip.BagType) bool { return b.Name == name })
}

// fit is how a lot is packed.
type fit struct {
	name      string
	tare      units.Mass // of one bag, the second around it included
	double    bool
	outer     units.Volume // of a rigid bottle; 0: the volume of what is in it
	parts     [][]amount
	untyped   bool // no type of bag to be had
	unbottled bool // a liquid without a bottle
	tight     bool // a part is still too large for the largest bag
}

// fit chooses the smallest type that holds a lot; where none does, the lot is
// cut into equal parts, as few as possible, and these get the smallest type.
func (s shelf) fit(l lot, step units.Mass) fit {
	if l.kind == asBought {
		return fit{name: asBoughtType, parts: [][]amount{l.amounts}}
	}
	f := fit{double: l.kind == melting && !l.own || l.powdery()}
	types := s.bags
	if l.kind == wet && len(s.bottles) > 0 {
		types = s.bottles
	} else if l.kind == wet {
		f.double, f.unbottled = true, true
	}
	if len(types) == 0 {
		f.name, f.untyped, f.parts = noType, true, [][]amount{l.amounts}
		return f
	}
	largest := holds(types[len(types)-1])
	// Rounding to the scale may overfill a part; a few more parts help, or none do.
	pieces := int((volume(l.amounts)-1)/largest) + 1
	for more := range 4 {
		f.parts = cut(l.amounts, pieces+more, step)
		if fullest(f.parts) <= largest {
			break
		}
	}
	need := fullest(f.parts)
	at := slices.IndexFunc(types, func(b trip.BagType) bool { return holds(b) >= need })
	if at < 0 {
		f.tight, at = true, len(types)-1
	}
	f.name, f.tare = types[at].Name, types[at].Tare
	if types[at].Liquids {
		f.outer = types[at].Nominal
	}
	if f.double {
		f.tare *= 2
	}
	return f
}

func (l lot) powdery() bool {
	var powder units.Mass
	for _, a := range l.amounts {
		if a.ware.food.Form == trip.Powder {
			powder += a.mass
		}
	}
	return float64(powder) >= powderShare*float64(total(l.amounts)) && powder > 0
}

func volume(list []amount) units.Volume {
	var sum units.Volume
	for _, a := range list {
		sum += a.ware.volume(a.mass)
	}
	return sum
}

func fullest(parts [][]amount) units.Volume {
	var most units.Volume
	for _, part := range parts {
		most = max(most, volume(part))
	}
	return most
}

// cut divides every food of a lot over n parts as evenly as the scale can
// weigh. Nothing is lost: what the step does not divide goes into the last
// part. A part that would get nothing is left out.
func cut(list []amount, n int, step units.Mass) [][]amount {
	if n <= 1 {
		return [][]amount{list}
	}
	if step <= 0 {
		step = units.Gram
	}
	parts := make([][]amount, n)
	for _, a := range list {
		steps, before := a.mass/step, units.Mass(0)
		for i := range parts {
			upTo := steps * units.Mass(i+1) / units.Mass(n) * step
			if i == n-1 {
				upTo = a.mass
			}
			if upTo > before {
				parts[i] = append(parts[i], amount{a.ware, upTo - before})
			}
			before = upTo
		}
	}
	return slices.DeleteFunc(parts, func(p []amount) bool { return len(p) == 0 })
}
