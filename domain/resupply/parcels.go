package resupply

import (
	"cmp"
	"math"
	"slices"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// What a carton takes from the limits of a parcel. Common practice, no source.
const (
	cartonMass  = 500 * units.Gram
	cartonShare = 0.80 // of a carton's volume that bags fill
)

// limit is what one parcel holds, its carton taken off.
type limit struct {
	mass   units.Mass
	volume units.Volume
}

// piece is a bag on its way into a parcel.
type piece struct {
	mass   units.Mass
	volume units.Volume
}

// limitOf turns a point's limits into room for bags. Length plus girth s
// allows a cube of side s/5 (girth = twice the two shorter sides): less than
// the largest carton allowed (s^3/108), but one that shops have.
func limitOf(p *trip.ResupplyPoint) limit {
	l := limit{mass: math.MaxInt64, volume: math.MaxInt64}
	if mass, known := p.MaxParcel.Get(); known {
		l.mass = max(0, mass-cartonMass)
	}
	if s, known := p.MaxGirth.Get(); known && s < 100 {
		side := max(0, float64(s)/5)
		l.volume = units.FromLitres(side * side * side * 1000 * cartonShare)
	}
	return l
}

func (l limit) fits(p piece) bool { return p.mass <= l.mass && p.volume <= l.volume }

// carton reckons what carton takes the bags of a parcel: a cube, the fifth
// part of it air.
func (p *Parcel) carton() {
	p.Carton = p.Volume.Scale(1 / cartonShare)
	side := math.Cbrt(p.Carton.Litres() / 1000)
	p.Girth = lengthAndGirth(units.Metres(side), units.Metres(side), units.Metres(side))
}

// lengthAndGirth measures a carton as posts do: its longest side and twice the
// two others.
//
// Source: US Postal Service (testdata/check_values.csv, topic resupply).
func lengthAndGirth(a, b, c units.Metres) units.Metres {
	longest := max(a, b, c)
	return longest + 2*(a+b+c-longest)
}

// share is how much of a parcel a piece takes, by whatever binds.
func (l limit) share(p piece) float64 {
	return max(float64(p.mass)/float64(max(1, l.mass)), float64(p.volume)/float64(max(1, l.volume)))
}

// packFew puts pieces into as few parcels as it can, each a list of places in
// the order given. What fits no parcel gets one of its own.
//
// First-fit decreasing by mass, by volume and by what binds (Johnson 1973, from
// memory: at most 11/9 of the least for one limit); where none of them reaches
// the lower bound, a bounded exact search looks for one parcel less.
func packFew(pieces []piece, l limit) [][]int {
	var groups [][]int
	var rest []int
	for i, p := range pieces {
		if l.fits(p) {
			rest = append(rest, i)
		} else {
			groups = append(groups, []int{i})
		}
	}
	packed := firstFits(pieces, rest, l)
	for least := leastParcels(pieces, rest, l); len(packed) > least; {
		better := searchFewer(pieces, rest, l, len(packed)-1)
		if better == nil {
			break
		}
		packed = better
	}
	if even := level(pieces, rest, l, len(packed)); even != nil {
		packed = even
	}
	for _, g := range packed {
		slices.Sort(g)
	}
	groups = append(groups, packed...)
	slices.SortFunc(groups, func(a, b []int) int { return cmp.Compare(a[0], b[0]) })
	return groups
}

// level puts pieces into so many parcels of about equal mass, as somebody has
// to carry each: heaviest first into the lightest that still takes it (Graham
// 1969, from memory); nil if the limits do not allow that.
func level(pieces []piece, rest []int, l limit, n int) [][]int {
	order := slices.Clone(rest)
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(pieces[b].mass, pieces[a].mass) })
	groups, filled := make([][]int, n), make([]piece, n)
	for _, i := range order {
		at := -1
		for g := range filled {
			if l.fits(filled[g].plus(pieces[i])) && (at < 0 || filled[g].mass < filled[at].mass) {
				at = g
			}
		}
		if at < 0 {
			return nil
		}
		groups[at] = append(groups[at], i)
		filled[at] = filled[at].plus(pieces[i])
	}
	return slices.DeleteFunc(groups, func(g []int) bool { return len(g) == 0 })
}

// leastParcels is a lower bound: sums over limits, and pieces over half.
func leastParcels(pieces []piece, rest []int, l limit) int {
	var mass, volume float64
	for _, i := range rest {
		mass += float64(pieces[i].mass) / float64(max(1, l.mass))
		volume += float64(pieces[i].volume) / float64(max(1, l.volume))
	}
	// Pieces over half by different limits may share, so only one kind may count.
	byMass, byVolume := 0, 0
	for _, i := range rest {
		if pieces[i].mass > l.mass/2 {
			byMass++
		}
		if pieces[i].volume > l.volume/2 {
			byVolume++
		}
	}
	const hair = 1e-9 // a sum that is whole up to rounding
	return max(int(math.Ceil(mass-hair)), int(math.Ceil(volume-hair)), byMass, byVolume, min(1, len(rest)))
}

// firstFits is the best of three orders of first fit.
func firstFits(pieces []piece, rest []int, l limit) [][]int {
	var best [][]int
	for _, size := range []func(piece) float64{
		func(p piece) float64 { return float64(p.mass) },
		func(p piece) float64 { return float64(p.volume) },
		l.share,
	} {
		order := slices.Clone(rest)
		slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(size(pieces[b]), size(pieces[a])) })
		if g := firstFit(pieces, order, l); best == nil || len(g) < len(best) {
			best = g
		}
	}
	return best
}

func firstFit(pieces []piece, order []int, l limit) [][]int {
	var groups [][]int
	var filled []piece
	for _, i := range order {
		at := slices.IndexFunc(filled, func(f piece) bool { return l.fits(f.plus(pieces[i])) })
		if at < 0 {
			at = len(groups)
			groups, filled = append(groups, nil), append(filled, piece{})
		}
		groups[at] = append(groups[at], i)
		filled[at] = filled[at].plus(pieces[i])
	}
	return groups
}

func (p piece) plus(q piece) piece { return piece{p.mass + q.mass, p.volume + q.volume} }

// searchSteps bounds the exact search: a millisecond or so.
const searchSteps = 50_000

// searchFewer looks for a packing into n parcels, largest piece first, equal
// parcels tried once; nil if there is none or the steps run out.
func searchFewer(pieces []piece, rest []int, l limit, n int) [][]int {
	order := slices.Clone(rest)
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(l.share(pieces[b]), l.share(pieces[a])) })
	groups, filled := make([][]int, n), make([]piece, n)
	steps := 0
	var place func(k int) bool
	place = func(k int) bool {
		if k == len(order) {
			return true
		}
		for g := range groups {
			if steps++; steps > searchSteps {
				return false
			}
			sum := filled[g].plus(pieces[order[k]])
			if !l.fits(sum) || slices.Contains(filled[:g], filled[g]) {
				continue
			}
			before := filled[g]
			filled[g], groups[g] = sum, append(groups[g], order[k])
			if place(k + 1) {
				return true
			}
			filled[g], groups[g] = before, groups[g][:len(groups[g])-1]
		}
		return false
	}
	if !place(0) {
		return nil
	}
	return slices.DeleteFunc(groups, func(g []int) bool { return len(g) == 0 })
}
