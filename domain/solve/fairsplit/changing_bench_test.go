package fairsplit

import (
	"context"
	"testing"
)

// BenchmarkChanges measures crews of which some join and leave, stage by stage: the
// distance of every stage from its bounds in percent, and how many things change hands,
// how many do as their carrier has left, and how many have to at least. A leg has the
// steps of its goal, shared out over the stages by what is carried on each.
func BenchmarkChanges(b *testing.B) {
	for _, g := range goals[1:] {
		for _, tight := range []binding{loose, tightAll} {
			b.Run(crewName(g.members, g.days, tight), func(b *testing.B) {
				steps := g.mostSteps * 1e6
				if tight == loose {
					steps = g.looseMsteps * 1e6
				}
				var m changesMeasured
				for b.Loop() {
					c := inventChanges(seed0+uint64(m.crews), g.members, g.days, tight)
					m.goThrough(b, &c, steps)
				}
				m.report(b)
			})
		}
	}
}

type changesMeasured struct {
	r1, s               worst
	crews, stages       int
	unfit, ruledOut     int // stages without a split, and those of them that are proven to have none
	handOvers, asFair   int // with packs 2 % heavier than need be, and 0.5 %
	gone, least, things int
}

func (m *changesMeasured) goThrough(b *testing.B, c *changingCrew, steps int64) {
	m.crews++
	all := 0
	for _, stage := range c.stages() {
		all += len(c.on(stage))
	}
	solve := func(l leg, o Options) Result {
		o.Workers, o.Steps = 2, steps*int64(len(l.items))/int64(all)
		r, err := Solve(context.Background(), l.Problem, o)
		if err != nil {
			b.Fatal(err)
		}
		return r
	}
	c.goThrough(solve, func(l leg, r Result) []int {
		m.stages++
		taken, choice := r.Carrier, Resplit{Changes: r.Changes, R1: r.R1, S: r.S}
		if few, ok := nearlyFair(r); ok && l.days.first > 1 {
			taken, choice = few.Carrier, few
		}
		if r.Feasible {
			m.r1.add(gap(choice.R1, r.R1Bound))
			m.s.add(gap(choice.S, r.SBound))
		} else {
			m.unfit++
			if r.Reasons[0].Rule != NotFound {
				m.ruledOut++
			}
		}
		if l.days.first > 1 {
			m.handOvers += choice.Changes + r.Forced + l.gone
			m.asFair += r.Changes + r.Forced + l.gone
			m.gone += l.gone
			m.least += l.leastHandOvers(nearlyFirst(r, 20))
			m.things += len(l.Items)
		}
		return taken
	})
}

func (m *changesMeasured) report(b *testing.B) {
	for name, n := range map[string]int{"stages": m.stages, "unfit": m.unfit, "ruledout": m.ruledOut, "handovers": m.handOvers, "asfair": m.asFair, "gone": m.gone, "least": m.least, "things": m.things} {
		b.ReportMetric(float64(n), name)
	}
	for name, w := range map[string]worst{"R1%bound": m.r1, "S%bound": m.s} {
		b.ReportMetric(100*w.mean(), name)
		b.ReportMetric(100*w.most, name+"max")
	}
}
