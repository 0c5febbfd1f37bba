package bags

import (
	"slices"

	"sumpter/domain/units"
)

// cut divides a lot over n parts as evenly as the scale can weigh; nothing is
// lost. What is eaten at one meal gets the same mixture in every part, the
// first part for the first eaters; what is eaten at several is used up part by
// part. A part that would get nothing is left out.
func (l *lot) cut(n int, step units.Mass) [][]line {
	if n <= 1 {
		return [][]line{l.lines}
	}
	if step <= 0 {
		step = units.Gram
	}
	parts := make([][]line, n)
	if len(l.uses) <= 1 {
		l.cutMixture(parts, step)
	} else {
		l.cutInTurn(parts, step)
	}
	return slices.DeleteFunc(parts, func(p []line) bool { return len(p) == 0 })
}

// cutMixture divides each food of a lot by itself.
func (l *lot) cutMixture(parts [][]line, step units.Mass) {
	n := units.Mass(len(parts))
	for i, first := range l.lines {
		if slices.ContainsFunc(l.lines[:i], func(a line) bool { return a.ware == first.ware }) {
			continue
		}
		var total units.Mass
		for _, a := range l.lines[i:] {
			if a.ware == first.ware {
				total += a.mass
			}
		}
		at, sofar := 0, units.Mass(0)
		end := func() units.Mass { // of the part at
			if at == len(parts)-1 {
				return total
			}
			return total / step * units.Mass(at+1) / n * step
		}
		for _, a := range l.lines[i:] {
			if a.ware != first.ware {
				continue
			}
			for left := a.mass; left > 0; {
				for sofar == end() && at < len(parts)-1 {
					at++
				}
				taken := min(left, end()-sofar)
				parts[at] = append(parts[at], line{a.use, a.member, a.ware, taken})
				sofar, left = sofar+taken, left-taken
			}
		}
	}
	for _, part := range parts {
		slices.SortStableFunc(part, func(a, b line) int { return a.use - b.use })
	}
}

// cutInTurn fills one part after the other in the order of eating.
func (l *lot) cutInTurn(parts [][]line, step units.Mass) {
	room := volume(l.lines)/units.Volume(len(parts)) + 1
	at, filled := 0, units.Volume(0)
	for _, a := range l.lines {
		for a.mass > 0 {
			taken := a.mass
			if at < len(parts)-1 && filled+a.ware.volume(taken) > room {
				fits := units.FromGrams((room - filled).Millilitres() * a.ware.density)
				taken = min(taken, max(0, fits/step*step))
			}
			if taken > 0 {
				parts[at] = append(parts[at], line{a.use, a.member, a.ware, taken})
				filled += a.ware.volume(taken)
				a.mass -= taken
			}
			if a.mass > 0 {
				at, filled = at+1, 0
			}
		}
	}
}
