package fairsplit

import (
	"context"
	"os"
	"strconv"
	"testing"
)

// seed0 is the first seed, SEED0 of the environment, for crews never tried before.
var seed0 = func() uint64 { n, _ := strconv.Atoi(os.Getenv("SEED0")); return uint64(n) }()

// BenchmarkGap measures the distance from the water level, and from the bounds that the
// result itself gives, over invented crews: the mean and the worst over the seeds, in
// percent.
func BenchmarkGap(b *testing.B) {
	sizes := []struct{ members, days int }{{4, 3}, {12, 7}, {24, 14}, {60, 21}}
	for _, size := range sizes {
		for _, tight := range []binding{loose, tightMass, tightRoom, tightClass, tightAll} {
			b.Run(crewName(size.members, size.days, tight), func(b *testing.B) {
				var r1, s, boundR1, boundS worst
				proven, infeasible, runs, steps := 0, 0, 0, int64(0)
				for b.Loop() {
					p := inventCrew(seed0+uint64(runs), size.members, size.days, tight)
					r, err := Solve(context.Background(), p, Options{Workers: 2})
					if err != nil {
						b.Fatal(err)
					}
					runs++
					steps += r.Steps
					if !r.Feasible {
						infeasible++
						continue
					}
					g1, gs := levelGaps(p, r)
					r1.add(g1)
					s.add(gs)
					boundR1.add(r.GapR1())
					boundS.add(r.GapS())
					if r.Proven {
						proven++
					}
				}
				b.ReportMetric(float64(proven)/float64(runs), "proven")
				b.ReportMetric(float64(infeasible), "unfit")
				b.ReportMetric(float64(steps)/float64(runs)/1e6, "Msteps")
				b.ReportMetric(100*r1.mean(), "R1%")
				b.ReportMetric(100*r1.most, "R1%max")
				b.ReportMetric(100*s.mean(), "S%")
				b.ReportMetric(100*s.most, "S%max")
				b.ReportMetric(100*boundR1.mean(), "R1%bound")
				b.ReportMetric(100*boundR1.most, "R1%boundmax")
				b.ReportMetric(100*boundS.mean(), "S%bound")
				b.ReportMetric(100*boundS.most, "S%boundmax")
			})
		}
	}
}

type worst struct {
	sum, most float64
	n         int
}

func (w *worst) add(v float64) { w.sum, w.most, w.n = w.sum+v, max(w.most, v), w.n+1 }

func (w *worst) mean() float64 { return w.sum / float64(max(1, w.n)) }

// levelGaps is the distance of R1 and S from the plain water level.
func levelGaps(p Problem, r Result) (r1, s float64) {
	level, hours := 0.0, 0.0
	for d, day := range r.Days {
		f, _ := day.Level.Float64()
		level += f * float64(p.HoursTenths[d])
		hours += float64(p.HoursTenths[d])
	}
	sum, _ := r.S.Float64()
	return gap(r.R1, r.Days[0].Level), sum*hours/level - 1
}
