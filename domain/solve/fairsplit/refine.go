package fairsplit

import "context"

// refine settles the days one after another, from the last back to the first, each by
// exchanging only what leaves the packs after that day. Later days stay as they
// are, earlier days are mended when their turn comes, so that only as many burdens
// have to fall into place at once as there are members.
func (t *descent) refine(ctx context.Context, days [][]int32, budget int64) {
	for d := len(days) - 1; d >= 0; d-- {
		if len(days[d]) == 0 {
			continue
		}
		t.lo, t.hi = d, d+1
		t.free(days[d])
		if t.total == 0 {
			continue
		}
		a := newAnnealer(t, days[d], func(a, b score) bool { return a.sum < b.sum })
		a.value = func() score { return score{sum: t.total} }
		const hot, cold = 20 * 20 * 8, 4
		a.run(hot, cold, budget/int64(len(days)), func(v score) bool { return v.sum == 0 || ctx.Err() != nil })
		for _, j := range days[d] {
			if i := int(a.kept.carrier[j]); i != int(t.carrier[j]) {
				t.hand(j, i)
			}
		}
	}
	t.lo, t.hi = 0, t.in.days
}
