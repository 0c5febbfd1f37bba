package fairsplit

// toll is how much more each item costs with each member than with the cheapest, by the
// prices of a relaxation. A search that pays it keeps dense pieces with those whose packs
// are short of room, and the like, without having to run into the limits first
// (multipliers beside penalties, Hestenes 1969).
type toll []int64 // per item and member

// tollUnit turns what the relaxation's objective gains or loses, as a part of it, into
// the cost of a search.
const tollUnit = 3e9

// toll takes the best prices found.
func (m *market) toll() toll {
	in := m.in
	n := in.members
	m.setPrices(m.bestPrice)
	t := make(toll, (in.items+1)*n)
	cost := make([]float64, n)
	for _, j := range in.movable {
		least := 0.0
		for r, i := range in.allowed[j] {
			cost[i] = m.priceOf(j, int(i))
			if r == 0 || cost[i] < least {
				least = cost[i]
			}
		}
		for _, i := range in.allowed[j] {
			t[int(j)*n+int(i)] = int64(float64((cost[i] - least) * tollUnit))
		}
	}
	return t
}

// priceOf is what an item costs with a member by the prices last set.
func (m *market) priceOf(j int32, i int) float64 {
	in := m.in
	n := in.members
	last := min(int(in.last[j]), m.days-1)
	sum := float64(float64(in.bulk[j]) * m.perBulk[i])
	if in.falls[j] {
		for d := range m.days {
			sum += float64(float64(in.drop(j, d, m.days)) * m.perGram[d*n+i])
		}
	} else {
		sum += float64(float64(in.mass[j])*m.perGram[last*n+i]) + float64(float64(in.residual[j])*m.perLeft[last*n+i])
	}
	if c := int(in.class[j]); c >= 0 {
		sum += float64(float64(in.energy[j]) * m.perEnergy[c*n+i])
	}
	return sum
}

// rise is how much more an exchange makes all items cost.
func (t toll) rise(x *exchange, members int) int64 {
	if t == nil {
		return 0
	}
	sum := int64(0)
	for side := range x.gives {
		give, take := int(x.gives[side])*members, int(x.takes[side])*members
		sum += t[give+x.to] - t[give+x.from] + t[take+x.from] - t[take+x.to]
	}
	return sum
}
