package fairsplit

import (
	"math"
	"slices"
)

// odds tell who is likely to carry which bag, if one of all splits within limits is
// drawn: of all ways to draw carriers apart from each other that keep the limits on
// average, the one of most entropy (Jaynes 1957). They say which gear leaves most splits,
// and what a bag's carrier does to how many are left. Nothing is proven by them.
//
// A row is a limit: of a member's load on a day, first morning's mass, room, or energy in a
// class, of the first morning's burden, or of the sum. By its price a unit of it makes
// splits fewer by a factor of e.
type odds struct {
	l       *layers
	rows    []oddsRow
	price   []float64
	start   []float64
	settled bool             // the prices fit the limits of before
	part    []float64        // grams of each member in a unit of a day's burden
	mean    float64          // burden of such a unit
	piece   [layerCaps]int64 // energy of which all bags of a class are multiples

	limit, slope []float64
	step, next   []float64
	curve        [][]float64
	uses         [][]float64 // per day, by member and figure: of the bags of this and later days
	spread       [][]float64 // the same, of pairs
	value        float64     // least by the prices
	count        float64     // about the logarithm of the number of splits
}

// oddsRow is a limit.
type oddsRow struct {
	kind   oddsKind
	i      int // member
	from   int // day of the first bags that count
	figure int // of a bag: grams, millilitres, then energy of each class
}

type oddsKind int

const (
	loadRow oddsKind = iota
	bagRow           // mass, room, or class
	firstRow
	sumRow
)

const (
	oddsRounds  = 40
	oddsFigures = 2 + layerCaps
	startLoad   = 0.02              // price of a gram to begin with
	logRoot     = 0.918938533204673 // logarithm of the root of 2 pi
)

// newOdds starts from prices that fit no limits yet.
func newOdds(l *layers) *odds {
	in := l.in
	o := &odds{l: l}
	add := func(price float64, r oddsRow) {
		o.rows, o.price = append(o.rows, r), append(o.price, price)
	}
	grams, bulk, hours := int64(0), int64(0), 1e9
	for j := range in.items {
		grams, bulk = grams+int64(in.mass[j]), bulk+in.bulk[j]
	}
	for d := range l.days {
		for _, h := range l.days[d].halves {
			for _, j := range h.items {
				for n, c := range l.caps {
					if int(in.class[j]) == c {
						o.piece[n] = gcd(o.piece[n], in.energy[j])
					}
				}
			}
		}
	}
	for i, scale := range in.scale {
		o.mean += float64(scale) / float64(in.members)
		for d, h := range in.hours {
			if h > 0 {
				add(startLoad, oddsRow{loadRow, i, d, 0})
				hours = min(hours, float64(h))
			}
		}
		if int64(in.maxGrams[i]-in.base[i]) < grams {
			add(0.001, oddsRow{bagRow, i, 0, 0})
		}
		if in.room[i] < bulk {
			add(0.0005, oddsRow{bagRow, i, 0, 1})
		}
		for n, piece := range o.piece {
			if piece > 0 {
				add(0.0001, oddsRow{bagRow, i, 0, 2 + n})
			}
		}
	}
	parts := 0.0
	for _, scale := range in.scale {
		part := o.mean / float64(scale)
		o.part, parts = append(o.part, part), parts+part
	}
	add(0.01, oddsRow{kind: firstRow})
	// The search for prices begins where each burden costs more than it saves, however unlike the strengths are.
	add(max(0.04*float64(in.members), 1.5*startLoad*parts)/hours, oddsRow{kind: sumRow})
	o.start = slices.Clone(o.price)
	n, slots := len(o.rows), in.members*oddsFigures
	o.limit, o.slope, o.step, o.next = make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
	for range n {
		o.curve = append(o.curve, make([]float64, n))
	}
	for range in.days {
		o.uses, o.spread = append(o.uses, make([]float64, slots)), append(o.spread, make([]float64, slots*slots))
	}
	return o
}

// setLimits takes up those that the layers have left after their gear.
func (o *odds) setLimits(ceiling int64) {
	in := o.l.in
	for k, r := range o.rows {
		switch {
		case r.kind == loadRow:
			level := o.l.level[r.from]/in.scale[r.i] - int64(o.l.base[r.i*in.days+r.from])
			o.limit[k] = float64(min(level, int64(o.l.days[r.from].high[r.i])))
		case r.kind == firstRow:
			o.limit[k] = float64(ceiling-o.l.level[0]) / o.mean
		case r.kind == sumRow:
			o.limit[k] = float64(o.l.excess) / o.mean
		case r.figure == 0:
			o.limit[k] = float64(in.maxGrams[r.i] - o.l.base[r.i*in.days])
		case r.figure == 1:
			o.limit[k] = float64(o.l.room[r.i])
		default:
			o.limit[k] = float64(o.l.share[r.figure-2][r.i]) + float64(float64(o.piece[r.figure-2])/2)
		}
	}
}

// settle finds the prices that fit the limits by Newton's method, and tells whether there
// are such.
func (o *odds) settle() bool {
	if !o.settled {
		copy(o.price, o.start)
	}
	o.settled = false
	o.look(o.price)
	for range oddsRounds {
		if !o.solve() {
			return false
		}
		gain := o.dot(o.slope, o.step)
		if gain > -1e-2 {
			o.settled = true
			o.count = o.value
			for k := range o.curve {
				o.count -= logarithm(o.curve[k][k]) + logRoot
			}
			// A split counts once, however far its burdens could be raised.
			for d, hours := range o.l.in.hours {
				if hours > 0 {
					o.count += logarithm(o.worth(o.price, d))
				}
			}
			return true
		}
		part := o.room()
		for range 20 {
			for k, v := range o.price {
				o.next[k] = v + float64(part*o.step[k])
			}
			o.look(o.next)
			if o.dot(o.slope, o.step) <= -gain/2 {
				break
			}
			part /= 2
		}
		copy(o.price, o.next)
	}
	return false
}

// room is how much of a step keeps all prices above zero.
func (o *odds) room() float64 {
	part := 1.0
	for k, v := range o.price {
		if o.step[k] < 0 {
			part = min(part, -0.9*v/o.step[k])
		}
	}
	for d := range o.l.days {
		now, then := o.worth(o.price, d), o.worth(o.step, d)
		if then < 0 {
			part = min(part, -0.9*now/then)
		}
	}
	return part
}

// worth is what a unit of a day's burden costs less what it saves, to be above zero.
func (o *odds) worth(price []float64, d int) float64 {
	sum := 0.0
	for k, r := range o.rows {
		sum += float64(o.weight(r, d) * price[k])
	}
	return sum
}

func (o *odds) weight(r oddsRow, d int) float64 {
	switch {
	case r.kind == sumRow:
		return float64(o.l.in.hours[d])
	case r.kind == firstRow && d == 0:
		return 1
	case r.kind == loadRow && r.from == d:
		return -o.part[r.i]
	}
	return 0
}

func (o *odds) dot(a, b []float64) float64 {
	sum := 0.0
	for k, v := range a {
		sum += float64(v * b[k])
	}
	return sum
}

// look works out the value at prices, its slope and its curve.
func (o *odds) look(price []float64) {
	in := o.l.in
	o.add(price)
	for k, r := range o.rows {
		o.value += float64(price[k]*o.limit[k]) - logarithm(price[k])
		o.slope[k] = o.limit[k] - 1/price[k]
		clear(o.curve[k])
		if r.kind > bagRow {
			continue
		}
		at := r.i*oddsFigures + r.figure
		o.slope[k] -= o.uses[r.from][at]
		for m, q := range o.rows[:k+1] {
			if q.kind <= bagRow {
				o.curve[k][m] = o.spread[max(r.from, q.from)][at*in.members*oddsFigures+q.i*oddsFigures+q.figure]
			}
		}
	}
	for k, v := range price {
		o.curve[k][k] += 1 / float64(v*v)
	}
	for d, h := range in.hours {
		if h == 0 {
			continue
		}
		worth := o.worth(price, d)
		o.value -= logarithm(worth)
		for k, r := range o.rows {
			w := o.weight(r, d) / worth
			o.slope[k] -= w
			if w == 0 {
				continue
			}
			for m, q := range o.rows[:k+1] {
				o.curve[k][m] += float64(w * (o.weight(q, d) / worth))
			}
		}
	}
	o.l.steps += int64(len(o.rows)*len(o.rows)*2 + 500)
}

// add sums up what the bags use on average, and how that spreads.
func (o *odds) add(price []float64) {
	in, l := o.l.in, o.l
	slots := in.members * oddsFigures
	var per [matchMembers][oddsFigures]float64
	var rows [matchMembers][]int
	for k, r := range o.rows {
		if r.kind == bagRow {
			per[r.i][r.figure] += price[k]
		} else if r.kind == loadRow {
			rows[r.i] = append(rows[r.i], k)
		}
	}
	for d := range l.days {
		clear(o.uses[d])
		clear(o.spread[d])
	}
	o.value = 0
	for d := range l.days {
		for i := range in.members {
			for _, k := range rows[i] {
				if o.rows[k].from == d {
					per[i][0] += price[k]
				}
			}
		}
		for h := range l.days[d].halves {
			for _, j := range l.days[d].halves[h].items {
				o.addBag(d, j, &per, slots)
			}
		}
	}
	for d := len(l.days) - 2; d >= 0; d-- {
		for n, v := range o.uses[d+1] {
			o.uses[d][n] += v
		}
		for n, v := range o.spread[d+1] {
			o.spread[d][n] += v
		}
	}
}

// figures are what a bag uses of limits.
func (l *layers) figures(j int32) [oddsFigures]float64 {
	f := [oddsFigures]float64{float64(l.in.mass[j]), float64(l.in.bulk[j])}
	for n, c := range l.caps {
		if int(l.in.class[j]) == c {
			f[2+n] = float64(l.in.energy[j])
		}
	}
	return f
}

func (o *odds) addBag(d int, j int32, per *[matchMembers][oddsFigures]float64, slots int) {
	f := o.l.figures(j)
	var chance [matchMembers]float64
	allowed := o.l.in.allowed[j]
	least, all := math.Inf(1), 0.0
	for _, i := range allowed {
		for n, v := range f {
			chance[i] += float64(v * per[i][n])
		}
		least = min(least, chance[i])
	}
	for _, i := range allowed {
		chance[i] = exponential(least - chance[i])
		all += chance[i]
	}
	o.value += logarithm(all) - least
	for _, i := range allowed {
		chance[i] /= all
	}
	uses, spread := o.uses[d], o.spread[d]
	for _, i := range allowed {
		for n, v := range f {
			if v == 0 {
				continue
			}
			use := float64(v * chance[i])
			at := int(i)*oddsFigures + n
			uses[at] += use
			row := spread[at*slots : (at+1)*slots]
			for m, w := range f {
				row[int(i)*oddsFigures+m] += float64(use * w)
			}
			for _, k := range allowed {
				for m, w := range f {
					row[int(k)*oddsFigures+m] -= float64(use * float64(w*chance[k]))
				}
			}
		}
	}
	o.l.steps += 60
}

// solve finds the step that would be right if the curve were the same everywhere
// (Cholesky). It is false where figures are too large to go on.
func (o *odds) solve() bool {
	n := len(o.rows)
	for k := range n {
		for m := range k + 1 {
			sum := o.curve[k][m]
			for x := range m {
				sum -= float64(o.curve[k][x] * o.curve[m][x])
			}
			if m < k {
				o.curve[k][m] = sum / o.curve[m][m]
				continue
			}
			if !(sum > 0) || math.IsInf(sum, 1) {
				return false
			}
			o.curve[k][k] = math.Sqrt(sum)
		}
	}
	for k := range n {
		sum := -o.slope[k]
		for x := range k {
			sum -= float64(o.curve[k][x] * o.step[x])
		}
		o.step[k] = sum / o.curve[k][k]
	}
	for k := n - 1; k >= 0; k-- {
		sum := o.step[k]
		for x := k + 1; x < n; x++ {
			sum -= float64(o.curve[x][k] * o.step[x])
		}
		o.step[k] = sum / o.curve[k][k]
	}
	o.l.steps += int64(n * n * n / 20)
	return true
}

// exponential is e to a power of at most 0, the same on every machine.
func exponential(x float64) float64 {
	if x < -60 {
		return 0
	}
	x /= 256
	v := 1 + float64(x*(1+float64(x/2*(1+float64(x/3*(1+float64(x/4*(1+float64(x/5*(1+x/6))))))))))
	for range 8 {
		v = float64(v * v)
	}
	return v
}

// logarithm is that of a number above 0, likewise.
func logarithm(v float64) float64 {
	part, power := math.Frexp(v)
	z := (part - 1) / (part + 1)
	square, sum, term := float64(z*z), 0.0, z
	for n := 1.0; n < 24; n += 2 {
		sum += term / n
		term = float64(term * square)
	}
	return float64(2*sum) + float64(float64(power)*math.Ln2)
}
