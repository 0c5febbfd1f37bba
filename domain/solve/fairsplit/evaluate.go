package fairsplit

import "fmt"

// Evaluate measures a given split: its objective, the bounds that no split can be
// below, and the limits it breaks. It searches nothing. The split names a place in
// the crew for each item; an item whose carrier may not carry it is an error, so that
// a split from before a change is kept only while it still has a meaning.
func Evaluate(p Problem, carrier []int) (Result, error) {
	if err := p.Validate(); err != nil {
		return Result{}, err
	}
	if len(carrier) != len(p.Items) {
		return Result{}, fmt.Errorf("fairsplit: %d carriers for %d items: give one per item", len(carrier), len(p.Items))
	}
	in := newInstance(p)
	place := make([]int32, len(p.Crew))
	for i := range place {
		place[i] = nobody
	}
	for i, crew := range in.member {
		place[crew] = int32(i)
	}
	inner := make([]int32, len(carrier))
	for j, crew := range carrier {
		if crew < 0 || crew >= len(place) || place[crew] == nobody || !in.canCarry(int32(j), int(place[crew])) {
			return Result{}, fmt.Errorf("fairsplit: item %d may not be carried by member %d", j, crew)
		}
		inner[j] = place[crew]
	}
	b := newBounds(in)
	r := in.result(p, inner, b)
	reached := in.splitOf(inner).score()
	r.Proven = r.Feasible && reached.first <= nearly(b.day[0]) && reached.sum <= nearly(b.sum)
	return r, nil
}
