package stops

import (
	"cmp"
	"slices"
)

// Choice is one way through the trip.
type Choice struct {
	// Stops in order; the first is the start, with Point -1.
	Stops []Stop
	// Cost is Money plus what carrying and detours are worth.
	Cost Millicents
	// Money is what is paid: stops, parcels, premium.
	Money Millicents
	// PeakGrams is the heaviest load any stop is left with.
	PeakGrams int64
	// CarriedGramDays adds up the loads of all mornings.
	CarriedGramDays int64
	// Detour adds up the detours of the stops.
	Detour int64
}

// Stop is one taking on of supplies.
type Stop struct {
	// Point is the index in [Problem].Points, -1 for the start.
	Point int
	// Day after which it is reached, 0 for the start.
	Day int
	// FirstDay and LastDay of what is taken on. Where FirstDay is later than
	// Day+1 the days between are still carried from earlier stops.
	FirstDay, LastDay int
	// Grams taken on.
	Grams int64
	// Parcels they fill; 1 where parcels do not count.
	Parcels int64
	// LeavingGrams is the load on leaving.
	LeavingGrams int64
}

// Measure is something of which a choice should have little.
type Measure int

// The measures a choice can be judged by.
const (
	ByCost Measure = iota
	ByPeak
	ByCarried
	ByDetour
	ByMoney
	measures
)

// Front is a list of choices that nothing beats.
type Front struct {
	// Choices sorted by cost, then peak, then carried, detour, stops.
	Choices []Choice
	// Complete says that all measures asked for were used. If false they gave
	// more than [MostComparisons] of partial choices, and the front is by cost and peak.
	Complete bool
}

// MostComparisons bounds the work of [Unbeaten] where measures are given: some
// tens of milliseconds.
const MostComparisons = 5_000_000

// Unbeaten returns every choice that no other beats: none is as good by all
// the measures and better by one. Of choices equal by all of them one is
// returned, that with fewest stops and then the earliest points. Without
// measures it judges by cost and peak, which never grows out of hand. The error
// is an [*InfeasibleError], or names a value that has no meaning.
func Unbeaten(p Problem, by ...Measure) (Front, error) {
	if err := p.check(); err != nil {
		return Front{}, err
	}
	if heavy := p.heavyDays(); len(heavy) > 0 {
		return Front{}, &InfeasibleError{Heavy: heavy}
	}
	l := newLine(p)
	for _, m := range by {
		if m < 0 || m >= measures {
			by = nil
		}
	}
	complete := true
	ends, ok := []int32(nil), false
	if len(by) > 0 {
		ends, ok = l.run(0, by, MostComparisons)
		complete = ok
	}
	if !ok {
		ends, _ = l.run(0, []Measure{ByCost, ByPeak}, Boundless)
	}
	if len(ends) == 0 {
		return Front{}, &InfeasibleError{Gaps: l.gaps()}
	}
	f := Front{Complete: complete}
	for _, e := range ends {
		f.Choices = append(f.Choices, l.choice(e))
	}
	slices.SortStableFunc(f.Choices, func(a, b Choice) int {
		return cmp.Or(cmp.Compare(a.Cost, b.Cost), cmp.Compare(a.PeakGrams, b.PeakGrams),
			cmp.Compare(a.CarriedGramDays, b.CarriedGramDays), cmp.Compare(a.Detour, b.Detour),
			cmp.Compare(a.Money, b.Money), cmp.Compare(len(a.Stops), len(b.Stops)))
	})
	return f, nil
}

// choice follows a label back to the start.
func (l *line) choice(end int32) Choice {
	last := l.labels[end]
	c := Choice{
		Cost: last.sum[ByCost], Money: last.sum[ByMoney], PeakGrams: last.sum[ByPeak],
		CarriedGramDays: last.sum[ByCarried], Detour: last.sum[ByDetour],
	}
	for at := end; at >= 0; at = l.labels[at].prev {
		b := l.labels[at]
		n := l.nodes[b.node]
		if b.prev < 0 && b.through == l.fed[0] {
			break // nothing is eaten before the first real stop
		}
		held := l.fed[0]
		if b.prev >= 0 {
			held = l.labels[b.prev].through
		}
		g := l.eaten[b.through] - l.eaten[held]
		c.Stops = append(c.Stops, Stop{
			Point: n.point, Day: n.day, FirstDay: held + 1, LastDay: b.through,
			Grams: g, Parcels: n.parcels(held+1, b.through, g), LeavingGrams: l.eaten[b.through] - l.eaten[n.day],
		})
	}
	slices.Reverse(c.Stops)
	return c
}
