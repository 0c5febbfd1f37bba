package fairsplit

import "slices"

// crumbs is the split with items that may be cut up: the linear relaxation, with
// items alike in last day, class, carriers and density taken together as cells. Its
// value cannot be beaten by whole items up to what the joining of items hides, its
// prices give an exact bound (priceBound), and its shares show a search where limits
// of mass, volume and class together let things go.
//
// All figures are relative: a load to the fair level, a sum to its limit. Rows are
// the members' loads of each day, then mass, volume and classes.
type crumbs struct {
	in       *instance
	days     int // looked at, from the first
	cells    []cell
	weight   []float64 // of each day in the objective; they add up to 1
	ceiling  []float64 // largest burden of each day to allow, relative to the level
	unit     []float64 // what counts as 1, per row
	pinned   []float64 // what cannot move less what may be there, per row
	rows     int
	rowStep  []float64
	cellStep []float64
}

// cell is a heap of items that differ little but in size.
type cell struct {
	items                    []int32
	allowed                  []int32
	last, class, density     int // density is the place among the cells of a heap
	mass, left, bulk, energy float64
	drops                    []float64 // what is lost with each day, of items that fall day by day; else nil
}

// newCrumbs states the relaxation for the first days, which weigh as given. Heaps of
// like items are cut into so many cells by litres per kilogram.
func newCrumbs(in *instance, b bounds, hours []int64, densities int) *crumbs {
	k := &crumbs{in: in, days: len(hours), cells: in.cells(len(hours), densities), rows: in.members * (len(hours) + 2 + in.classes)}
	k.setWeights(b, hours)
	k.setRows(b)
	k.setSteps()
	return k
}

func (in *instance) cells(days, densities int) []cell {
	type kind struct {
		last, class int
		leaves      bool
		falls       bool
	}
	var list []cell
	for _, group := range in.carrierGroups() {
		heaps, kinds := map[kind][]int32{}, []kind(nil)
		for _, j := range group.items {
			k := kind{min(int(in.last[j]), days-1), int(in.class[j]), in.residual[j] > 0 && int(in.last[j]) < days-1, in.falls[j]}
			if k.falls {
				k.leaves = false // among what is lost with the last day
			}
			if heaps[k] == nil {
				kinds = append(kinds, k)
			}
			heaps[k] = append(heaps[k], j)
		}
		for _, k := range kinds {
			for n, items := range in.byDensity(heaps[k], densities) {
				c := cell{items: items, allowed: group.allowed, last: k.last, class: k.class, density: n}
				if k.falls {
					c.drops = make([]float64, days)
				}
				for _, j := range items {
					for d := range c.drops {
						c.drops[d] += float64(in.drop(j, d, days))
					}
					c.mass += float64(in.mass[j])
					c.bulk += float64(in.bulk[j])
					c.energy += float64(in.energy[j])
					if k.leaves {
						c.left += float64(in.residual[j])
					}
				}
				list = append(list, c)
			}
		}
	}
	return list
}

// byDensity cuts a heap into parts of about the same mass.
func (in *instance) byDensity(items []int32, densities int) [][]int32 {
	slices.SortFunc(items, func(a, b int32) int {
		x, y := in.bulk[a]*int64(in.mass[b]), in.bulk[b]*int64(in.mass[a])
		switch {
		case x != y:
			return int(min(1, max(-1, x-y)))
		default:
			return int(a - b)
		}
	})
	total, sum := int64(0), int64(0)
	for _, j := range items {
		total += int64(in.mass[j])
	}
	parts, from := [][]int32(nil), 0
	for n, j := range items {
		sum += int64(in.mass[j])
		if n+1 == len(items) || sum*int64(densities) >= total*int64(len(parts)+1) {
			parts = append(parts, items[from:n+1:n+1])
			from = n + 1
		}
	}
	return parts
}

func (k *crumbs) setWeights(b bounds, hours []int64) {
	sum := 0.0
	k.weight, k.ceiling = make([]float64, len(hours)), make([]float64, len(hours))
	for d, h := range hours {
		k.weight[d], k.ceiling[d] = float64(h)*float64(b.day[d]), 1e9
		sum += k.weight[d]
	}
	for d := range k.weight {
		k.weight[d] /= sum
	}
}

func (k *crumbs) setRows(b bounds) {
	in := k.in
	k.unit, k.pinned = make([]float64, k.rows), make([]float64, k.rows)
	set := func(row int, unit, pinned, limit float64) {
		k.unit[row] = max(1, unit)
		k.pinned[row] = (pinned - limit) / k.unit[row]
	}
	for i := range in.members {
		for d := range k.days {
			set(i*k.days+d, float64(b.day[d])/float64(in.scale[i]), float64(in.pinned[i*in.days+d]), 0)
		}
		most, room := float64(in.maxGrams[i]), float64(in.room[i]-in.pinnedBulk[i])
		set(k.massRow(i), most, float64(in.pinned[i*in.days]), most)
		set(k.bulkRow(i), room, 0, room)
		for c := range in.classes {
			share := float64(in.classCap[c] - in.pinnedClass[i*in.classes+c])
			set(k.classRow(i, c), share, 0, share)
		}
	}
}

func (k *crumbs) massRow(i int) int { return k.in.members*k.days + i }

func (k *crumbs) bulkRow(i int) int { return k.in.members*(k.days+1) + i }

func (k *crumbs) classRow(i, c int) int {
	return k.in.members*(k.days+2) + i*k.in.classes + c
}

// each calls f for the rows that a cell counts for with a member, with the part of
// their units that it takes.
func (k *crumbs) each(c *cell, i int, f func(row int, part float64)) {
	add := func(row int, amount float64) {
		if amount != 0 {
			f(row, amount/k.unit[row])
		}
	}
	carried := c.mass
	for d := range k.days {
		switch {
		case c.drops != nil:
			add(i*k.days+d, carried)
			carried -= c.drops[d]
		case d <= c.last:
			add(i*k.days+d, c.mass)
		default:
			add(i*k.days+d, c.left)
		}
	}
	add(k.massRow(i), c.mass)
	add(k.bulkRow(i), c.bulk)
	if c.class >= 0 {
		add(k.classRow(i, c.class), c.energy)
	}
}

// setSteps gives each row and each cell the step that suits its size (diagonal
// preconditioning, Pock and Chambolle 2011).
func (k *crumbs) setSteps() {
	in := k.in
	k.rowStep, k.cellStep = make([]float64, k.rows), make([]float64, len(k.cells))
	for g := range k.cells {
		c := &k.cells[g]
		most := 0.0
		for _, i := range c.allowed {
			sum := 0.0
			k.each(c, int(i), func(row int, part float64) {
				k.rowStep[row] += part
				sum += part
			})
			most = max(most, sum)
		}
		k.cellStep[g] = 1 / max(1e-9, most)
	}
	for row := range k.rowStep {
		if row < in.members*k.days {
			k.rowStep[row]++ // the day's largest burden
		}
		k.rowStep[row] = 1 / max(1e-9, k.rowStep[row])
	}
}
