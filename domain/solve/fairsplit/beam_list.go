package fairsplit

import (
	"math"
	"slices"
)

// enlist lists splits of a day within the window, up to a number.
func (b *beam) enlist(d int) {
	in := b.in
	y := &b.days[d]
	for n := range y.halves {
		b.sort(d, n)
	}
	first, second := &y.halves[0], &y.halves[1]
	b.index.setWidths(in.members, b.low, b.high)
	b.index.clear(len(second.load))
	for n := len(b.order[1]) - 1; n >= 0; n-- {
		b.index.add(&second.load[b.order[1][n]]) // the last is found first
	}
	b.steps += int64(len(second.load))
	b.list = b.list[:0]
	dearest := float32(math.Inf(1))
	if d == 0 {
		dearest = b.dearest()
	}
	least := slices.Min(b.rank[1])
	cell := (slices.Max(b.rank[1]) - least) / rankCells // as fine as they are in order
	for _, x := range b.order[0] {
		if b.steps++; b.rank[0][x]+least > dearest {
			continue
		}
		var from, to [matchMembers]int32
		tight := int32(0)
		for i := range in.members {
			from[i], to[i] = b.low[i]-first.load[x][i], b.high[i]-first.load[x][i]
			tight = min(tight, to[i])
		}
		if tight < 0 {
			continue
		}
		b.steps += b.index.nearest(&from, &to, func(at int32) verdict {
			z := b.order[1][len(b.order[1])-1-int(at)]
			b.steps++
			if b.rank[0][x]+b.rank[1][z] > dearest+cell {
				return nextCell
			}
			load := &second.load[z]
			for i := range in.members {
				if load[i] < from[i] || load[i] > to[i] {
					return goOn
				}
			}
			if !b.hasRoom(y, int(x), int(z), &b.room) || d == in.days-1 && !b.lastLeavesRoom(y, int(x), int(z)) {
				return goOn
			}
			s := layerSplit{at: [2]int32{x, z}}
			for i := range load {
				s.load[i] = first.load[x][i] + load[i]
			}
			b.list = append(b.list, s)
			return goOn
		})
		if len(b.list) > beamList || b.steps > b.end {
			break
		}
	}
}

// dearest is what the rank of a split of the first day may be at most.
func (b *beam) dearest() float32 {
	most := 0.0
	for n := range b.kept[1] {
		s := &b.kept[1][n]
		if s.turn == 0 || s.turn > beamTurns {
			continue
		}
		sum := 0.0
		for i := range b.in.members {
			sum += float64(b.perMl[i] * float64(s.room[i]))
			for m := range b.caps {
				sum += float64(b.perEnergy[m][i] * float64(s.share[m][i]))
			}
		}
		most = max(most, sum)
	}
	all := b.figuresOf(0)
	for i := range b.in.members {
		per := float64(b.perMl[i] * all[1])
		for m := range b.caps {
			per += float64(b.perEnergy[m][i] * all[2+m])
		}
		most -= float64(per*float64(b.low[i])) / max(1, all[0])
	}
	return float32(most + 1e-3)
}

// figuresOf adds up those of a day's bags.
func (b *beam) figuresOf(d int) [oddsFigures]float64 {
	var all [oddsFigures]float64
	for _, h := range b.days[d].halves {
		for _, j := range h.items {
			for f, v := range b.figures(j) {
				all[f] += v
			}
		}
	}
	return all
}

// sort ranks the splits of a half by what they take of scarce limits for their mass.
func (b *beam) sort(d, n int) {
	y := &b.days[d]
	h := &y.halves[n]
	all := b.figuresOf(d)
	rank := append(b.rank[n][:0], 0)
	for _, j := range h.items {
		f := b.figures(j)
		for m := 1; m < len(f); m++ {
			f[m] -= float64(f[0] * all[m] / max(1, all[0]))
		}
		allowed := b.in.allowed[j]
		count := len(rank)
		rank = append(rank, make([]float32, count*(len(allowed)-1))...)
		for k := len(allowed) - 1; k >= 0; k-- {
			i := allowed[k]
			sum := float64(b.perMl[i] * f[1])
			for m := range b.caps {
				sum += float64(b.perEnergy[m][i] * f[2+m])
			}
			for x := range count {
				rank[k*count+x] = rank[x] + float32(sum)
			}
		}
	}
	b.rank[n] = rank
	b.order[n] = byRank(b.order[n], rank)
	b.steps += int64(len(rank))
}

// byRank gives the places of a list's figures, the least first, about.
func byRank(order []int32, rank []float32) []int32 {
	const cells = rankCells
	low, high := slices.Min(rank), slices.Max(rank)
	order = slices.Grow(order[:0], len(rank))[:len(rank)]
	var from [cells + 1]int32
	cell := func(v float32) int {
		if high <= low {
			return 0
		}
		return min(cells-1, int((v-low)/(high-low)*cells))
	}
	for _, v := range rank {
		from[cell(v)+1]++
	}
	for c := range cells {
		from[c+1] += from[c]
	}
	for x, v := range rank {
		c := cell(v)
		order[from[c]] = int32(x)
		from[c]++
	}
	return order
}
