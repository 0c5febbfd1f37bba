package fairsplit

import "slices"

// margins lower the limits of packs while a search cools: more and more where a limit is
// passed, less again where there is room, until loads come to rest at the limits
// themselves (the method of multipliers, Hestenes 1969). Limits that are made as hard as
// this takes would hold the loads fast long before they have found their places.
type margins struct {
	in                *instance
	most, room, class []int64 // the limits: grams and millilitres per member, energy per member and class
	lower             struct{ most, room, class []int64 }
}

const (
	marginHard  = 256  // weight of the limits, all the time
	marginLimit = 1600 // grams, and what counts like them, by which a limit is lowered at most
	marginSpare = 2    // grams to stay below the limits at last, as loads still move a little
)

// newMargins begins with the limits that a search has.
func newMargins(t *descent) *margins {
	t.hard, t.nudge = marginHard, 0
	m := &margins{in: t.in, most: make([]int64, t.in.members), room: slices.Clone(t.room), class: slices.Clone(t.classCap)}
	for i, grams := range t.most {
		m.most[i] = int64(grams)
	}
	m.lower.most, m.lower.room, m.lower.class = make([]int64, len(m.most)), make([]int64, len(m.room)), make([]int64, len(m.class))
	return m
}

// adapt moves each margin by half of what its limit is passed by or has room, and lets
// the search know.
func (m *margins) adapt(t *descent, last bool) {
	spare := int64(0)
	if last {
		spare = marginSpare
	}
	adapted := func(lower *int64, passed, unit int64) int64 {
		*lower = min(marginLimit*unit, max(0, *lower+(passed+spare*unit)/2))
		return *lower
	}
	n := m.in.classes
	for i := range m.most {
		t.most[i] = int32(m.most[i] - adapted(&m.lower.most[i], int64(t.load[i*m.in.days])-m.most[i], 1))
		t.room[i] = m.room[i] - adapted(&m.lower.room[i], t.bulk[i]-m.room[i], t.bulkUnit)
		for c, unit := range t.unitOf {
			at := i*n + c
			t.classCap[at] = m.class[at] - adapted(&m.lower.class[at], t.inClass[at]-m.class[at], unit)
		}
	}
	t.recost()
}
