package fairsplit

import "slices"

// build makes a split from nothing, from the last day back to the first. What is
// carried longest is settled first, largest first, each item to whoever is then
// least burdened (longest processing time first, Graham 1969), and each day's batch
// is improved before the next: earlier days only add to it.
func (t *descent) build(b bounds, budget int64) {
	in := t.in
	t.setTargets(b.day)
	for j, allowed := range in.allowed {
		if len(allowed) == 1 {
			t.put(int32(j), int(allowed[0]))
		}
	}
	batches, lasting := in.batches()
	pace := newPace(t, batches, lasting)
	pace.setLimits(in.days - 1)
	t.sortBatch(lasting, 0)
	for _, j := range lasting {
		t.put(j, t.lightest(j, int(in.last[j])))
	}
	for d := in.days - 1; d >= 0; d-- {
		batch := batches[d]
		if len(batch) == 0 {
			continue
		}
		pace.setLimits(d)
		t.sortBatch(batch, d)
		for _, j := range batch {
			t.put(j, t.lightest(j, d))
		}
		t.lo, t.hi = d, d+1
		t.free(batch)
		t.improve(budget/int64(in.days), 60+2*len(batch))
	}
	t.lo, t.hi = 0, in.days
	t.setHardLimits()
}

// batches sorts the movable items by the last day on which they weigh. Items that
// get lighter before the end but leave something to carry are apart: they weigh on
// all days, in two amounts, and are spread first so that no pack gets lighter much
// sooner than others.
func (in *instance) batches() (batches [][]int32, lasting []int32) {
	batches = make([][]int32, in.days)
	for _, j := range in.movable {
		if in.residual[j] > 0 && int(in.last[j]) < in.days-1 {
			lasting = append(lasting, j)
			continue
		}
		batches[in.last[j]] = append(batches[in.last[j]], j)
	}
	return batches, lasting
}

// sortBatch puts heavy items first, a little shuffled.
func (t *descent) sortBatch(batch []int32, d int) {
	key := make(map[int32]int64, len(batch))
	for _, j := range batch {
		key[j] = int64(t.in.grams(j, d)) * int64(1000+t.below(60))
	}
	slices.SortFunc(batch, func(a, b int32) int {
		if key[a] != key[b] {
			return int(min(1, max(-1, key[b]-key[a])))
		}
		return int(a - b)
	})
}

// lightest is the member who is least burdened on day d with item j on top, of
// those within all limits if there are any.
func (t *descent) lightest(j int32, d int) int {
	in := t.in
	found, foundFits, foundBurden := 0, false, never
	for _, k := range in.allowed[j] {
		i := int(k)
		burden := in.burden(i, t.load[i*in.days+d]+in.grams(j, d))
		fits := t.fits(j, i)
		if fits && !foundFits || fits == foundFits && burden < foundBurden {
			found, foundFits, foundBurden = i, fits, burden
		}
	}
	return found
}

func (t *descent) fits(j int32, i int) bool {
	in := t.in
	if t.load[i*in.days]+in.mass[j] > t.most[i] || t.bulk[i]+in.bulk[j] > t.room[i] {
		return false
	}
	c := int(in.class[j])
	return c < 0 || t.inClass[i*in.classes+c]+in.energy[j] <= t.classCap[i*in.classes+c]
}

// setTargets turns a burden per day into grams per member.
func (s *split) setTargets(burden []int64) {
	in := s.in
	for i := range in.members {
		for d, f := range burden {
			grams := min(f/in.scale[i], int64(in.maxGrams[i]))
			s.target[i*in.days+d] = int32(max(grams, int64(in.pinned[i*in.days+d])))
		}
	}
}

func (s *split) setHardLimits() {
	copy(s.most, s.in.maxGrams)
	copy(s.room, s.in.room)
	for i := range s.in.members {
		copy(s.classCap[i*s.in.classes:], s.in.classCap)
	}
}

// keepRoom leaves a part of the room that the crew has to spare free in each pack, in
// sixteenths of an even part: what follows then has room to put loads right to the gram.
func (s *split) keepRoom(sixteenths int) {
	in := s.in
	spare := int64(0)
	for i := range in.members {
		spare += in.room[i]
	}
	for _, bulk := range in.bulk {
		spare -= bulk
	}
	for i := range in.members {
		s.room[i] = max(in.pinnedBulk[i], in.room[i]-max(0, spare)/int64(in.members)*int64(sixteenths)/16)
	}
}

// pace spreads the room in a pack and the share in a class over the batches, so
// that the last ones do not find every pack full.
type pace struct {
	t           *descent
	spare       int32     // grams to keep free in every pack until the end
	grams, bulk []int64   // of the batches of day 0 to d
	energy      [][]int64 // per class, likewise
}

func newPace(t *descent, batches [][]int32, lasting []int32) pace {
	in := t.in
	p := pace{t: t, grams: make([]int64, in.days), bulk: make([]int64, in.days), energy: make([][]int64, in.classes)}
	for c := range p.energy {
		p.energy[c] = make([]int64, in.days)
	}
	p.spare = in.spare()
	for d, batch := range batches {
		if d == in.days-1 {
			batch = append(slices.Clone(batch), lasting...)
		}
		if d > 0 {
			p.grams[d], p.bulk[d] = p.grams[d-1], p.bulk[d-1]
			for c := range p.energy {
				p.energy[c][d] = p.energy[c][d-1]
			}
		}
		for _, j := range batch {
			p.grams[d] += int64(in.mass[j])
			p.bulk[d] += in.bulk[j]
			if c := in.class[j]; c >= 0 {
				p.energy[c][d] += in.energy[j]
			}
		}
	}
	return p
}

// setLimits keeps back what the batches of the days before d will need.
func (p pace) setLimits(d int) {
	p.t.setHardLimits()
	if d == 0 {
		return
	}
	in := p.t.in
	all := in.days - 1
	for i := range in.members {
		p.t.most[i] = max(p.t.most[i]-p.spare, in.pinned[i*in.days])
		first, now := int64(p.t.target[i*in.days]), int64(p.t.target[i*in.days+d])
		if p.grams[d-1] > 0 && first > now {
			keep := (first - now) * p.bulk[d-1] / p.grams[d-1]
			need := (first - int64(in.pinned[i*in.days])) * p.bulk[all] / p.grams[all]
			free := max(0, in.room[i]-in.pinnedBulk[i])
			if need > free {
				keep = keep * free / need
			}
			p.t.room[i] -= keep
		}
		for c := range in.classes {
			if total := p.energy[c][all]; total > 0 {
				spare := max(0, in.classCap[c]-in.pinnedClass[i*in.classes+c])
				p.t.classCap[i*in.classes+c] -= spare * p.energy[c][d-1] / total
			}
		}
	}
}

// spare is the part of the room in every pack, at most a small item's mass, that can
// be kept free until the last batch.
func (in *instance) spare() int32 {
	room, count := int64(0), int64(1)
	for i := range in.members {
		room += max(0, int64(in.maxGrams[i]-in.pinned[i*in.days]))
		count++
	}
	for _, j := range in.movable {
		room -= int64(in.mass[j])
	}
	return int32(min(100, max(0, room/count/4)))
}
