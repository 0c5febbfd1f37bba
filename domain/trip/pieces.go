package trip

import (
	"strconv"

	"sumpter/domain/prose"
	"sumpter/domain/units"
)

// PieceStep is what a counted food comes in: whole bars, tins and wraps, or
// halves of them where they may be halved. 0: any amount can be weighed.
func (f *Food) PieceStep() units.Mass {
	if f.PieceHalves {
		return f.PieceMass / 2
	}
	return f.PieceMass
}

// Amount says how much of the food somebody takes: in pieces with the mass
// beside them where it is counted and comes out even, else the mass alone. The
// mass is given as the reader weighs it.
func (f *Food) Amount(mass units.Mass, weighed string) prose.Text {
	step := f.PieceStep()
	if step <= 0 || mass <= 0 || mass%step != 0 {
		return prose.Say("%s", weighed)
	}
	whole, count := int(mass/f.PieceMass), ""
	if whole > 0 {
		count = strconv.Itoa(whole)
	}
	if mass%f.PieceMass != 0 {
		count, whole = count+"½", whole+1
	}
	return prose.Plural(whole, prose.Say("%s piece (%s)", count, weighed), prose.Say("%s pieces (%s)", count, weighed))
}
