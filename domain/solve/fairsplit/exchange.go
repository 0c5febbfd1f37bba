package fairsplit

// exchange is a change of hands between two members: up to two items each way.
type exchange struct {
	from, to    int
	gives       [2]int32 // from -> to; the empty item where there is none
	takes       [2]int32 // to -> from
	energy      []int64  // per class, what from is relieved of
	costs       [2]int64
	changeDelta int64
}

// weigh works out the costs of both members after an exchange, and tells whether the
// total cost rises by no more than a limit. It looks at the hard limits first and
// stops as soon as the limit is passed: most exchanges do at once.
func (t *descent) weigh(x *exchange, limit int64) bool {
	in := t.in
	give, give2, take, take2 := x.gives[0], x.gives[1], x.takes[0], x.takes[1]
	limit += t.costs[x.from] + t.costs[x.to]
	if t.old != nil {
		t.setChangeDelta(x)
		limit -= x.changeDelta
	}
	if limit < 0 {
		return false
	}
	t.steps += 6
	grams := int64(in.mass[give] + in.mass[give2] - in.mass[take] - in.mass[take2])
	bulk := in.bulk[give] + in.bulk[give2] - in.bulk[take] - in.bulk[take2]
	from, to := t.hardCost(x.from, -grams, -bulk), t.hardCost(x.to, grams, bulk)
	if from+to > limit {
		return false
	}
	if in.classes > 0 {
		f, k := t.classesAfter(x)
		if from, to = from+f, to+k; from+to > limit {
			return false
		}
	}
	n := in.days
	a, b := in.profile[int(give)*n:int(give+1)*n], in.profile[int(take)*n:int(take+1)*n]
	a2, b2 := in.profile[int(give2)*n:int(give2+1)*n], in.profile[int(take2)*n:int(take2+1)*n]
	mine, theirs := t.load[x.from*n:(x.from+1)*n], t.load[x.to*n:(x.to+1)*n]
	mineMost, theirMost := t.target[x.from*n:(x.from+1)*n], t.target[x.to*n:(x.to+1)*n]
	for d := t.lo; d < t.hi; d++ {
		moved := a[d] + a2[d] - b[d] - b2[d]
		if over := int64(mine[d] - moved - mineMost[d]); over > 0 {
			from += over * over * t.weight[d]
		}
		if over := int64(theirs[d] + moved - theirMost[d]); over > 0 {
			to += over * over * t.weight[d]
		}
		if from+to > limit {
			t.steps += 2 * int64(d-t.lo+1)
			return false
		}
	}
	t.steps += 2 * int64(t.hi-t.lo)
	x.costs = [2]int64{from, to}
	return true
}

// hardCost is what a member's load and volume above the hard limits cost with so
// much more of both.
func (t *descent) hardCost(i int, grams, bulk int64) int64 {
	sum := int64(0)
	if over := int64(t.load[i*t.in.days]-t.most[i]) + grams; over > 0 {
		sum += t.penalty(over)
	}
	if over := t.bulk[i] + bulk - t.room[i]; over > 0 {
		sum += t.penalty((over + t.bulkUnit - 1) / t.bulkUnit)
	}
	return sum
}

// classesAfter is what the classes cost both members after an exchange.
func (t *descent) classesAfter(x *exchange) (from, to int64) {
	in := t.in
	n := in.classes
	clear(x.energy)
	for side := range x.gives {
		if c := in.class[x.gives[side]]; c >= 0 {
			x.energy[c] += in.energy[x.gives[side]]
		}
		if c := in.class[x.takes[side]]; c >= 0 {
			x.energy[c] -= in.energy[x.takes[side]]
		}
	}
	for c, energy := range x.energy {
		if over := t.inClass[x.from*n+c] - energy - t.classCap[x.from*n+c]; over > 0 {
			from += t.penalty((over + t.unitOf[c] - 1) / t.unitOf[c])
		}
		if over := t.inClass[x.to*n+c] + energy - t.classCap[x.to*n+c]; over > 0 {
			to += t.penalty((over + t.unitOf[c] - 1) / t.unitOf[c])
		}
	}
	return from, to
}

func (t *descent) setChangeDelta(x *exchange) {
	x.changeDelta = 0
	from, to := int32(x.from), int32(x.to)
	for side := range x.gives {
		x.changeDelta += t.changeCost(x.gives[side], to) - t.changeCost(x.gives[side], from)
		x.changeDelta += t.changeCost(x.takes[side], from) - t.changeCost(x.takes[side], to)
	}
}

// exchangeNow carries an exchange out that was just weighed.
func (t *descent) exchangeNow(x *exchange) {
	for n := range x.gives {
		if x.gives[n] != t.in.none {
			t.hand(x.gives[n], x.to)
		}
		if x.takes[n] != t.in.none {
			t.hand(x.takes[n], x.from)
		}
	}
	t.total += x.costs[0] + x.costs[1] - t.costs[x.from] - t.costs[x.to]
	t.costs[x.from], t.costs[x.to] = x.costs[0], x.costs[1]
}
