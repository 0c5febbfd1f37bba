package fairsplit

// split is an assignment under construction: who carries what, and the sums that
// follow from it. Its cost measures how far loads are above a soft target per
// member and day and above the hard limits; a search lowers it.
type split struct {
	in      *instance
	carrier []int32
	load    []int32 // grams per member and day, own kit included
	bulk    []int64 // millilitres per member
	inClass []int64 // energy per member and class

	// The cost looks at days lo to hi-1 only and at these limits.
	lo, hi   int
	target   []int32 // grams per member and day
	most     []int32 // grams per member on any day
	room     []int64 // millilitres per member
	classCap []int64 // energy per member and class
	weight   []int64 // of each day
	bulkUnit int64   // millilitres that count like a gram
	unitOf   []int64 // energy per class that counts like a gram

	hard  int64 // weight of the hard limits
	nudge int64 // grams that make the last gram above one count
	steps int64 // work done, in member-days looked at
}

func newSplit(in *instance) *split {
	s := &split{
		in:       in,
		carrier:  make([]int32, in.items),
		load:     make([]int32, in.members*in.days),
		bulk:     make([]int64, in.members),
		inClass:  make([]int64, in.members*in.classes),
		hi:       in.days,
		target:   make([]int32, in.members*in.days),
		most:     append([]int32(nil), in.maxGrams...),
		room:     append([]int64(nil), in.room...),
		classCap: make([]int64, in.members*in.classes),
		weight:   make([]int64, in.days),
		hard:     8,
		nudge:    32,
	}
	for i := range in.members {
		for d := range in.days {
			s.load[i*in.days+d] = in.base[i]
		}
		copy(s.classCap[i*in.classes:], in.classCap)
	}
	for j := range s.carrier {
		s.carrier[j] = nobody
	}
	for d := range s.weight {
		s.weight[d] = (8*in.hours[d]*int64(in.days) + in.hoursTotal - 1) / in.hoursTotal
	}
	s.weight[0] = max(s.weight[0], 8) * 4
	s.setUnits()
	return s
}

// setUnits makes an average millilitre and an average class item weigh as much in
// the cost as the grams that go with them.
func (s *split) setUnits() {
	in := s.in
	grams, volume := int64(1), int64(1)
	count := make([]int64, in.classes)
	classGrams := make([]int64, in.classes)
	for j := range in.items {
		grams += int64(in.mass[j])
		volume += in.bulk[j]
		if c := in.class[j]; c >= 0 {
			count[c]++
			classGrams[c] += int64(in.mass[j])
		}
	}
	s.bulkUnit = max(1, volume/grams)
	for c := range in.classes {
		s.unitOf = append(s.unitOf, max(1, in.classTotal[c]/max(1, classGrams[c])))
	}
}

// put gives item j, which nobody carries, to member i.
func (s *split) put(j int32, i int) {
	s.carrier[j] = int32(i)
	s.add(j, i, 1)
}

// take removes item j from its carrier.
func (s *split) take(j int32) {
	s.add(j, int(s.carrier[j]), -1)
	s.carrier[j] = nobody
}

// move hands item j over to member i.
func (s *split) move(j int32, i int) {
	s.take(j)
	s.put(j, i)
}

func (s *split) add(j int32, i int, sign int32) {
	in := s.in
	profile := in.profile[int(j)*in.days : (int(j)+1)*in.days]
	load := s.load[i*in.days : (i+1)*in.days]
	for d, m := range profile {
		load[d] += sign * m
	}
	s.bulk[i] += int64(sign) * in.bulk[j]
	if c := in.class[j]; c >= 0 {
		s.inClass[i*in.classes+int(c)] += int64(sign) * in.energy[j]
	}
}

// cost is what member i adds to the cost of the split.
func (s *split) cost(i int) int64 { return s.costWith(i, s.in.none, s.in.none) }

// costWith is the cost of member i after giving up item out and taking item in.
func (s *split) costWith(i int, out, in int32) int64 {
	n := s.in.days
	lo, hi := s.lo, s.hi
	s.steps += int64(hi - lo)
	load := s.load[i*n+lo : i*n+hi]
	target := s.target[i*n+lo : i*n+hi][:len(load)]
	less := s.in.profile[int(out)*n+lo : int(out)*n+hi][:len(load)]
	more := s.in.profile[int(in)*n+lo : int(in)*n+hi][:len(load)]
	weight := s.weight[lo:hi][:len(load)]
	sum := int64(0)
	for d, grams := range load {
		over := int64(grams - less[d] + more[d] - target[d])
		if over > 0 {
			sum += over * over * weight[d]
		}
	}
	if over := int64(load[0] - less[0] + more[0] - s.most[i]); over > 0 {
		sum += s.penalty(over)
	}
	if over := s.bulk[i] - s.in.bulk[out] + s.in.bulk[in] - s.room[i]; over > 0 {
		sum += s.penalty((over + s.bulkUnit - 1) / s.bulkUnit)
	}
	if s.in.classes > 0 {
		sum += s.classCost(i, out, in)
	}
	return sum
}

// penalty is the cost of being above a hard limit by what counts like so many grams.
func (s *split) penalty(over int64) int64 { return (over + s.nudge) * (over + s.nudge) * s.hard }

func (s *split) classCost(i int, out, in int32) int64 {
	sum := int64(0)
	n := s.in.classes
	for c := range n {
		over := s.inClass[i*n+c] - s.classCap[i*n+c]
		if s.in.class[out] == int32(c) {
			over -= s.in.energy[out]
		}
		if s.in.class[in] == int32(c) {
			over += s.in.energy[in]
		}
		if over > 0 {
			sum += s.penalty((over + s.unitOf[c] - 1) / s.unitOf[c])
		}
	}
	return sum
}

// score is the value of a whole split in the objective's own terms.
type score struct {
	overrun int64 // above hard limits, in grams and what counts like them
	first   int64 // R1
	sum     int64 // S times all hours
}

func (s *split) score() score {
	in := s.in
	var v score
	for d := range in.days {
		top := int64(0)
		for i := range in.members {
			top = max(top, in.burden(i, s.load[i*in.days+d]))
		}
		if d == 0 {
			v.first = top
		}
		v.sum += in.hours[d] * top
	}
	v.overrun = s.overrun()
	return v
}

// overrun adds up what is above hard limits.
func (s *split) overrun() int64 {
	in := s.in
	sum := int64(0)
	for i := range in.members {
		sum += max(0, int64(s.load[i*in.days]-in.maxGrams[i]))
		if over := s.bulk[i] - in.room[i]; over > 0 {
			sum += (over + s.bulkUnit - 1) / s.bulkUnit
		}
		for c, most := range in.classCap {
			if over := s.inClass[i*in.classes+c] - most; over > 0 {
				sum += (over + s.unitOf[c] - 1) / s.unitOf[c]
			}
		}
	}
	return sum
}
