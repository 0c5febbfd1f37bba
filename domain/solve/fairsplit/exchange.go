package fairsplit

// exchange is a change of hands between two members: up to two items each way.
type exchange struct {
	from, to    int
	gives       [2]int32 // from -> to; the empty item where there is none
	takes       [2]int32 // to -> from
	grams       []int32  // what from is relieved of, per day
	bulk        int64
	energy      []int64 // per class
	costs       [2]int64
	changeDelta int64
}

// weigh works out the sums of an exchange and the costs of both members after it,
// and gives the change of the total cost.
func (t *descent) weigh(x *exchange) int64 {
	in := t.in
	n := in.days
	a := in.profile[int(x.gives[0])*n : int(x.gives[0]+1)*n][t.lo:t.hi]
	b := in.profile[int(x.takes[0])*n : int(x.takes[0]+1)*n][t.lo:t.hi]
	grams := x.grams[:len(a)]
	for d := range grams {
		grams[d] = a[d] - b[d]
	}
	if x.gives[1] != in.none || x.takes[1] != in.none {
		a = in.profile[int(x.gives[1])*n : int(x.gives[1]+1)*n][t.lo:t.hi]
		b = in.profile[int(x.takes[1])*n : int(x.takes[1]+1)*n][t.lo:t.hi]
		for d := range grams {
			grams[d] += a[d] - b[d]
		}
	}
	x.bulk, x.changeDelta = 0, 0
	clear(x.energy)
	for side, items := range [2]*[2]int32{&x.gives, &x.takes} {
		sign, now, later := int64(1), int32(x.from), int32(x.to)
		if side == 1 {
			sign, now, later = -1, later, now
		}
		for _, j := range items {
			x.bulk += sign * in.bulk[j]
			if c := in.class[j]; c >= 0 {
				x.energy[c] += sign * in.energy[j]
			}
			if t.old != nil {
				x.changeDelta += t.changeCost(j, later) - t.changeCost(j, now)
			}
		}
	}
	t.steps += 2*int64(len(a)) + 16 // the days, and what is done once
	x.costs[0] = t.costAfter(x, x.from, -1)
	x.costs[1] = t.costAfter(x, x.to, 1)
	return x.costs[0] + x.costs[1] - t.costs[x.from] - t.costs[x.to] + x.changeDelta
}

// costAfter is the cost of a member with the sums of an exchange added sign times.
func (t *descent) costAfter(x *exchange, i int, sign int32) int64 {
	in := t.in
	n := in.days
	load := t.load[i*n+t.lo : i*n+t.hi]
	target := t.target[i*n+t.lo : i*n+t.hi][:len(load)]
	weight := t.weight[t.lo:t.hi][:len(load)]
	grams := x.grams[:len(load)]
	sum := int64(0)
	for d, now := range load {
		over := int64(now + sign*grams[d] - target[d])
		if over > 0 {
			sum += over * over * weight[d]
		}
	}
	if over := int64(load[0] + sign*grams[0] - t.most[i]); over > 0 {
		sum += t.penalty(over)
	}
	if over := t.bulk[i] + int64(sign)*x.bulk - t.room[i]; over > 0 {
		sum += t.penalty(over / t.bulkUnit)
	}
	for c, energy := range x.energy {
		if over := t.inClass[i*in.classes+c] + int64(sign)*energy - t.classCap[i*in.classes+c]; over > 0 {
			sum += t.penalty(over / t.unitOf[c])
		}
	}
	return sum
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
