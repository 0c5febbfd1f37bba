package fairsplit

import (
	"testing"

	"pgregory.net/rapid"
)

// TestPacksHoldEverySplit: every split of a small problem that keeps all limits is still possible
// when its own sum and R1 are the most allowed, each day leaves what it needs before, and one as
// good is found.
func TestPacksHoldEverySplit(t *testing.T) {
	looked := 0
	rapid.Check(t, func(t *rapid.T) {
		p := smallProblem(t)
		in := newInstance(p)
		if len(in.homeless) > 0 {
			return
		}
		gear := in.gearOrder()
		l := newLayers(in, gear)
		if l == nil {
			return
		}
		n := 0
		enumerate(p, func(crew []int) {
			if n++; n%5 != 0 {
				return
			}
			carrier := make([]int32, len(crew))
			for j, i := range crew {
				for place, member := range in.member {
					if member == i {
						carrier[j] = int32(place)
					}
				}
			}
			s := in.splitOf(carrier)
			v := s.score()
			if v.overrun > 0 {
				return
			}
			looked++
			held := make([]int32, len(gear))
			for k, j := range gear {
				held[k] = carrier[j]
			}
			if !l.mayHold(held, v.sum, v.first) {
				t.Fatalf("split %v of sum %d is said to be too much", crew, v.sum)
			}
			checkRoomBefore(t, l, s)
			found, _ := l.search(held, v.sum, v.first, l.steps+1_000_000)
			if found == nil {
				t.Fatalf("split %v of sum %d was not found", crew, v.sum)
			}
			if w := in.splitOf(found).score(); w.overrun > 0 || w.first > v.first || w.sum > v.sum {
				t.Fatalf("found %+v, wanted no more than %+v", w, v)
			}
		})
	})
	if looked == 0 {
		t.Error("no split kept the limits: the draw must give some")
	}
}

// checkRoomBefore goes through a split's days from the last to the first.
func checkRoomBefore(t *rapid.T, l *layers, s *split) {
	in := l.in
	room, load, excess := l.room, [matchMembers]int32{}, l.excess
	for d := in.days - 1; d >= 0; d-- {
		for _, h := range l.days[d].halves {
			for _, j := range h.items {
				load[s.carrier[j]] += in.mass[j]
				room[s.carrier[j]] -= in.bulk[j]
			}
		}
		burden := l.level[d]
		for i := range in.members {
			burden = max(burden, in.burden(i, load[i]+l.base[i*in.days+d]))
		}
		excess -= in.hours[d] * (burden - l.level[d])
		for i := range in.members {
			if load[i] > l.days[d].high[i] {
				t.Fatalf("day %d: member %d has %d g, at most %d are said to be possible", d, i, load[i], l.days[d].high[i])
			}
			if !l.leavesRoom(d, i, load[i], room[i], excess) {
				t.Fatalf("day %d: member %d with %d g is said to have too little room for the days before", d, i, load[i])
			}
		}
	}
}
