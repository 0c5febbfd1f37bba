package stops

import (
	"fmt"
	"strings"
)

// InfeasibleError says why no choice exists: all causes, first to last.
type InfeasibleError struct {
	// Heavy days eat more than the packs take that morning. If there are any,
	// gaps were not looked for.
	Heavy []HeavyDay
	// Gaps are stretches that cannot be supplied.
	Gaps []Gap
}

// HeavyDay eats more than can be carried on its own morning.
type HeavyDay struct {
	Day                  int
	NeedGrams, RoomGrams int64
}

// Gap is a stretch of days between two places that cannot be supplied from the
// first.
type Gap struct {
	// FirstDay and LastDay of the stretch.
	FirstDay, LastDay int
	// NeedGrams of its days, and TakeGrams that could be had or carried.
	NeedGrams, TakeGrams int64
	// Parcels is set where the parcels at the stop before limit, not the packs.
	Parcels bool
	// Shut are the points inside the gap, with the reason.
	Shut []ShutPoint
}

// ShutPoint is a point that cannot be used.
type ShutPoint struct {
	Point, Day int
	Reason     string
}

func (e *InfeasibleError) Error() string {
	var parts []string
	for _, h := range e.Heavy {
		parts = append(parts, fmt.Sprintf("day %d alone needs %d g, packs take %d g", h.Day, h.NeedGrams, h.RoomGrams))
	}
	for _, g := range e.Gaps {
		what := "packs take"
		if g.Parcels {
			what = "with the parcels allowed there are"
		}
		part := fmt.Sprintf("days %d to %d need %d g, %s %d g", g.FirstDay, g.LastDay, g.NeedGrams, what, g.TakeGrams)
		for _, s := range g.Shut {
			part += fmt.Sprintf("; the point after day %d cannot be used: %s", s.Day, s.Reason)
		}
		parts = append(parts, part)
	}
	return "resupply: " + strings.Join(parts, "; ")
}

func (p Problem) heavyDays() []HeavyDay {
	var heavy []HeavyDay
	for i, g := range p.FoodGrams {
		if g > p.RoomGrams[i] {
			heavy = append(heavy, HeavyDay{Day: i + 1, NeedGrams: g, RoomGrams: p.RoomGrams[i]})
		}
	}
	return heavy
}

// gaps finds the first stretch that cannot be crossed, then starts again behind
// it as if supplies were to be had there.
func (l *line) gaps() []Gap {
	var gaps []Gap
	for from := 0; ; {
		if ends, _ := l.run(from, nil, Boundless); len(ends) > 0 {
			return gaps
		}
		last, held := l.farthest(from)
		next := last + 1
		for next < len(l.nodes) && l.nodes[next].day == l.nodes[last].day {
			next++
		}
		to := l.days
		if next < len(l.nodes) {
			to = l.nodes[next].day
		}
		gaps = append(gaps, l.gap(last, to, held))
		if next == len(l.nodes) {
			return gaps
		}
		from = next
	}
}

// farthest is the last node that a run got to, and the last day supplied there
// on arrival.
func (l *line) farthest(from int) (last, held int) {
	last, held = from, l.fed[l.nodes[from].day]
	for _, b := range l.labels {
		for m := int(b.node) + 1; m < len(l.nodes) && l.nodes[m].day <= b.through; m++ {
			if l.nodes[m].day == l.nodes[b.node].day || m < last || !l.mayArrive(m, b.through) {
				continue
			}
			if l.nodes[m].day > l.nodes[last].day {
				held = b.through
			}
			last, held = m, max(held, b.through)
		}
	}
	return last, held
}

// gap explains why the days after the last node up to day to cannot be
// supplied, where held is the last day that supplies reach on arriving there.
func (l *line) gap(last, to, held int) Gap {
	t := l.nodes[last].day
	g := Gap{FirstDay: t + 1, LastDay: to, NeedGrams: l.eaten[to] - l.eaten[t]}
	if to > l.reach[t] {
		// Name the first morning whose room is too small.
		for d := t; d < to; d++ {
			if need := l.eaten[to] - l.eaten[d]; need > l.problem.RoomGrams[d] {
				g.FirstDay, g.NeedGrams, g.TakeGrams = d+1, need, l.problem.RoomGrams[d]
				break
			}
		}
	} else {
		g.Parcels = true
		for m := last; m >= 0 && l.nodes[m].day == t; m-- {
			// Parcels limit every point here, so their product is under the need.
			if pt := l.nodes[m]; pt.Parcels < Boundless && pt.ParcelGrams < Boundless {
				g.TakeGrams = max(g.TakeGrams, l.eaten[held]-l.eaten[t]+pt.Parcels*pt.ParcelGrams)
			}
		}
	}
	for i, pt := range l.problem.Points {
		if pt.Day <= t || pt.Day >= to {
			continue
		}
		reason := pt.Shut
		if reason == "" {
			reason = "no parcel may wait there"
		}
		g.Shut = append(g.Shut, ShutPoint{Point: i, Day: pt.Day, Reason: reason})
	}
	return g
}
