package fairsplit

import "math"

// simplex solves the relaxation of crumbs to the end by the dual simplex method (Lemke
// 1954), for crews so small that a table of it is small too. A table stays good when
// carriers are closed to items, so that a search by branching goes on from its parent's.
// Its prices count only through [crumbs.priceBoundOf], which is exact: rounding can make
// a bound weaker, not wrong. Products are rounded before they are added, so that
// every machine finds the same prices.
type simplex struct {
	k      *crumbs
	from   []int32 // first column of each cell, one for each who may carry it
	rowOf  []int32 // of the crumbs, for each slack
	burden int32   // column of the first day's burden
	slack  int32   // first column of the rows' slacks
	width  int     // columns and the value

	table  []float64
	cost   []float64 // what a unit of each column would add to the objective
	basic  []int32   // column of each row
	closed []bool    // columns that have to be 0
	used   []int32   // columns of the row being pivoted on that are not 0
	steps  int64
}

const (
	simplexZero  = 1e-9
	simplexPivot = 1e-7 // least entry to pivot on
	// A little cost of every share keeps ties from going round in circles.
	simplexNudge = 1e-8
)

// newSimplex starts from a whole split: its shares and no burden at all, which
// costs nothing and breaks every row that it breaks.
func newSimplex(k *crumbs, carrier []int32, draw *random) *simplex {
	t := &simplex{k: k}
	columns := int32(0)
	for g := range k.cells {
		t.from = append(t.from, columns)
		columns += int32(len(k.cells[g].allowed))
	}
	t.burden = columns
	t.slack = columns + int32(k.days)
	rows := t.chooseRows()
	t.width = int(t.slack) + len(rows) + 1
	t.rowOf = rows
	height := len(k.cells) + len(rows)
	t.table = make([]float64, height*t.width)
	t.cost = make([]float64, t.width)
	t.basic, t.closed = make([]int32, height), make([]bool, t.width)
	slackOf := make([]int, k.rows+1)
	for n, row := range rows {
		at := len(k.cells) + n
		slackOf[row] = at
		r := t.row(at)
		t.basic[at] = t.slack + int32(n)
		r[t.basic[at]] = 1
		switch {
		case int(row) == k.rows:
			r[t.burden], r[t.width-1] = 1, k.ceiling[0]
		case int(row) < k.in.members*k.days:
			r[int(t.burden)+int(row)%k.days] = -1
			fallthrough
		default:
			r[t.width-1] = -k.pinned[row]
		}
	}
	for g := range k.cells {
		c := &k.cells[g]
		key := t.from[g]
		for n, i := range c.allowed {
			column := t.from[g] + int32(n)
			t.row(g)[column] = 1
			t.cost[column] = float64(simplexNudge * float64(1+draw.below(1000)) / 1000)
			if i == carrier[c.items[0]] {
				key = column
			}
			k.each(c, int(i), func(row int, part float64) {
				if at := slackOf[row]; at > 0 {
					t.row(at)[column] += part
				}
			})
		}
		t.row(g)[t.width-1] = 1
		t.cost[key] = 0
		t.pivot(g, key)
	}
	for d, weight := range k.weight {
		t.cost[int(t.burden)+d] = weight
	}
	return t
}

func (t *simplex) row(r int) []float64 { return t.table[r*t.width : (r+1)*t.width] }

// chooseRows leaves out the limits that nobody could pass. The row after all of the crumbs'
// is the ceiling of the first day.
func (t *simplex) chooseRows() []int32 {
	k := t.k
	all := make([]float64, k.rows)
	for g := range k.cells {
		for _, i := range k.cells[g].allowed {
			k.each(&k.cells[g], int(i), func(row int, part float64) { all[row] += part })
		}
	}
	var rows []int32
	for row := range all {
		if ofDay := row < k.in.members*k.days; ofDay || all[row]+k.pinned[row] > 0 {
			rows = append(rows, int32(row))
		}
	}
	if k.ceiling[0] < 1e6 {
		rows = append(rows, int32(k.rows))
	}
	return rows
}

func (t *simplex) copyTo(u *simplex) {
	table, cost, basic, closed := u.table, u.cost, u.basic, u.closed
	*u = *t
	u.table = append(table[:0], t.table...)
	u.cost = append(cost[:0], t.cost...)
	u.basic = append(basic[:0], t.basic...)
	u.closed = append(closed[:0], t.closed...)
	u.used = nil
}

// give closes a cell to all but one of its carriers.
func (t *simplex) give(g int, i int32) {
	for n, k := range t.k.cells[g].allowed {
		if k != i {
			t.closed[t.from[g]+int32(n)] = true
		}
	}
}

// objective is what no shares can cost less than, about.
func (t *simplex) objective() float64 { return -t.cost[t.width-1] }

// run goes on until the shares keep every row, or their cost passes a limit, or nothing
// keeps every row. ray then is the row that shows it, else -1.
func (t *simplex) run(limit float64) (ray int) {
	for range 20 * len(t.basic) {
		if t.objective() > limit {
			return -1
		}
		r, sign := t.leaving()
		if r < 0 {
			return -1
		}
		c := t.entering(r, sign)
		if c < 0 {
			return r
		}
		t.pivot(r, c)
	}
	return -1
}

// leaving is the row that is broken most; sign is 1 if its column has to rise.
func (t *simplex) leaving() (row int, sign float64) {
	row, most := -1, simplexZero
	for r, c := range t.basic {
		v := t.table[(r+1)*t.width-1]
		if -v > most {
			row, most, sign = r, -v, 1
		} else if v > most && t.closed[c] {
			row, most, sign = r, v, -1
		}
	}
	return row, sign
}

// entering is the column that costs least for what it mends, of near ties the one with
// the largest entry.
func (t *simplex) entering(r int, sign float64) int32 {
	row := t.row(r)[:t.width-1]
	least := math.Inf(1)
	for c, v := range row {
		if a := -sign * v; a > simplexPivot && !t.closed[c] {
			least = min(least, (max(0, t.cost[c])+1e-12)/a)
		}
	}
	found, most := int32(-1), 0.0
	for c, v := range row {
		if a := -sign * v; a > max(simplexPivot, most) && !t.closed[c] && max(0, t.cost[c]) <= least*a {
			found, most = int32(c), a
		}
	}
	t.steps += int64(t.width / 4)
	return found
}

func (t *simplex) pivot(r int, c int32) {
	row := t.row(r)
	factor := 1 / row[c]
	t.used = t.used[:0]
	for n, v := range row {
		if v != 0 {
			row[n] = float64(v * factor)
			t.used = append(t.used, int32(n))
		}
	}
	row[c] = 1
	touched := int64(1)
	lessen := func(other []float64) {
		v := other[c]
		if v == 0 {
			return
		}
		touched++
		for _, n := range t.used {
			w := other[n] - float64(v*row[n])
			if w < 1e-13 && w > -1e-13 {
				w = 0
			}
			other[n] = w
		}
		other[c] = 0
	}
	for k := range t.basic {
		if k != r {
			lessen(t.row(k))
		}
	}
	lessen(t.cost)
	t.basic[r] = c
	t.steps += (touched*int64(len(t.used)) + int64(t.width)) / 4
}

// prices are those of the crumbs' rows. Where a row shows that nothing keeps every row,
// they are mostly its proof.
func (t *simplex) prices(ray int, price []float64) {
	clear(price)
	scale := 1.0
	var proof []float64
	sign := 1.0
	if ray >= 0 {
		proof = t.row(ray)
		if proof[t.width-1] > 0 {
			sign = -1
		}
		most := 0.0
		for n := range t.rowOf {
			most = max(most, sign*proof[int(t.slack)+n])
		}
		if most == 0 {
			proof = nil
		} else {
			sign /= most
			scale = 0.01
		}
	}
	for n, row := range t.rowOf {
		if int(row) == t.k.rows {
			continue // the ceiling pays for what the first day's rows are above its weight
		}
		at := int(t.slack) + n
		v := float64(scale * t.cost[at])
		if proof != nil {
			v += float64(sign * proof[at])
		}
		price[row] = max(0, v)
	}
}
