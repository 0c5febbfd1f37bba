package bags

import (
	"cmp"
	"slices"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

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
	name      string     // empty: no type to be had
	tare      units.Mass // of one bag, the second around it included
	double    bool
	outer     units.Volume // of a rigid bottle; 0: the volume of what is in it
	parts     [][]line
	untyped   bool // no type of bag to be had
	unbottled bool // a liquid without a bottle
	tight     bool // a part is still too large for the largest bag
}

// fit chooses the smallest type that holds a lot; where none does, the lot is
// cut into equal parts, as few as possible, and these get the smallest type.
func (s shelf) fit(l *lot, step units.Mass) fit {
	if l.bought() {
		return fit{name: trip.AsBought, parts: [][]line{l.lines}}
	}
	f := fit{double: l.key.handling == melting && l.key.member == 0 || l.powdery()}
	types := s.bags
	if l.key.handling == wet && len(s.bottles) > 0 {
		types = s.bottles
	} else if l.key.handling == wet {
		f.double, f.unbottled = true, true
	}
	if len(types) == 0 {
		f.untyped, f.parts = true, [][]line{l.lines}
		return f
	}
	largest := holds(types[len(types)-1])
	// Rounding to the scale may overfill a part; a few more parts help, or none do.
	pieces := int((volume(l.lines)-1)/largest) + 1
	for more := range 4 {
		f.parts = l.cut(pieces+more, step)
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

// bought tells whether all of a lot stays in its packages.
func (l *lot) bought() bool {
	return !slices.ContainsFunc(l.lines, func(a line) bool { return !a.ware.food.PackedAsBought })
}

func (l *lot) powdery() bool {
	var powder, all units.Mass
	for _, a := range l.lines {
		all += a.mass
		if a.ware.food.Form == trip.Powder {
			powder += a.mass
		}
	}
	return float64(powder) >= powderShare*float64(all) && powder > 0
}

// volume adds up foods, so that it is the volume of the bag to the last drop.
func volume(lines []line) units.Volume {
	var sum units.Volume
	for i, a := range lines {
		if slices.ContainsFunc(lines[:i], func(b line) bool { return b.ware == a.ware }) {
			continue
		}
		mass := a.mass
		for _, b := range lines[i+1:] {
			if b.ware == a.ware {
				mass += b.mass
			}
		}
		sum += a.ware.volume(mass)
	}
	return sum
}

func fullest(parts [][]line) units.Volume {
	var most units.Volume
	for _, part := range parts {
		most = max(most, volume(part))
	}
	return most
}
