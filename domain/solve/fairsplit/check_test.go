package fairsplit

import (
	"math/big"
	"slices"
)

type testingT interface {
	Helper()
	Errorf(string, ...any)
}

// checkResult works everything a result says out again from the problem, by the
// plainest means, and compares.
func checkResult(t testingT, p Problem, r Result) {
	t.Helper()
	s := plainSums(p, r.Carrier)
	if len(r.Carrier) != len(p.Items) {
		t.Errorf("%d carriers for %d items", len(r.Carrier), len(p.Items))
	}
	homeless := false
	for j, i := range r.Carrier {
		possible := plainCarriers(p, j)
		if i == Nobody && len(possible) == 0 {
			homeless = true
			continue
		}
		if !slices.Contains(possible, i) {
			t.Errorf("item %d is with member %d, who may not carry it", j, i)
		}
	}
	if r.R1.Cmp(s.r1) != 0 || r.S.Cmp(s.s) != 0 {
		t.Errorf("R1 %v and S %v, plainly %v and %v", r.R1, r.S, s.r1, s.s)
	}
	if r.Feasible && (r.R1.Cmp(r.R1Bound) < 0 || r.S.Cmp(r.SBound) < 0) {
		t.Errorf("R1 %v or S %v is below its bound %v, %v", r.R1, r.S, r.R1Bound, r.SBound)
	}
	for d, day := range r.Days {
		if !slices.Equal(day.Grams, s.grams[d]) {
			t.Errorf("day %d: loads %v, plainly %v", d+1, day.Grams, s.grams[d])
		}
	}
	if !slices.Equal(r.Overruns, s.overruns) {
		t.Errorf("overruns %v, plainly %v", r.Overruns, s.overruns)
	}
	if r.Feasible != (len(s.overruns) == 0 && !homeless) {
		t.Errorf("feasible %v with overruns %v", r.Feasible, s.overruns)
	}
	if r.Feasible != (len(r.Reasons) == 0) {
		t.Errorf("feasible %v with reasons %v", r.Feasible, r.Reasons)
	}
}

type sums struct {
	grams    [][]int64 // per day and member
	r1, s    *big.Rat
	overruns []Overrun
}

func plainCarriers(p Problem, j int) []int {
	var list []int
	for i, m := range p.Crew {
		if m.Strength > 0 && (p.Items[j].Allowed == nil || slices.Contains(p.Items[j].Allowed, i)) {
			list = append(list, i)
		}
	}
	return list
}

func plainSums(p Problem, carrier []int) sums {
	var s sums
	hours := int64(0)
	s.r1, s.s = new(big.Rat), new(big.Rat)
	for d := range p.Days {
		grams := make([]int64, len(p.Crew))
		top := new(big.Rat)
		for i, m := range p.Crew {
			grams[i] = m.BaseGrams
			for j, it := range p.Items {
				if carrier[j] == i && d < it.GoneAfter {
					if it.Mornings != nil {
						grams[i] += it.Mornings[d]
						continue
					}
					grams[i] += it.MassGrams
				} else if carrier[j] == i {
					grams[i] += it.ResidualGrams
				}
			}
			if m.Strength > 0 {
				if b := big.NewRat(grams[i], m.Strength); b.Cmp(top) > 0 {
					top = b
				}
			}
		}
		s.grams = append(s.grams, grams)
		if d == 0 {
			s.r1 = top
		}
		h := p.HoursTenths[d]
		if slices.Max(p.HoursTenths) == 0 {
			h = 1
		}
		hours += h
		s.s.Add(s.s, new(big.Rat).Mul(big.NewRat(h, 1), top))
	}
	s.s.Quo(s.s, big.NewRat(hours, 1))
	for i, m := range p.Crew {
		if m.Strength > 0 {
			s.overruns = append(s.overruns, plainOverruns(p, carrier, i, m, s.grams[0][i])...)
		}
	}
	return s
}

func plainOverruns(p Problem, carrier []int, i int, m Member, grams int64) []Overrun {
	var list []Overrun
	if grams > m.MaxGrams {
		list = append(list, Overrun{Member: i, Limit: MassLimit, Over: grams - m.MaxGrams})
	}
	volume := int64(0)
	for j, it := range p.Items {
		if carrier[j] == i {
			volume += it.VolumeMl
		}
	}
	if volume > m.VolumeMl {
		list = append(list, Overrun{Member: i, Limit: VolumeLimit, Over: volume - m.VolumeMl})
	}
	for _, c := range p.Classes {
		mine, all := int64(0), int64(0)
		for j, it := range p.Items {
			if it.Class == c.Name {
				all += it.Energy
				if carrier[j] == i {
					mine += it.Energy
				}
			}
		}
		if most := all * c.Share.Num / c.Share.Den; mine > most && mine*c.Share.Den > all*c.Share.Num {
			list = append(list, Overrun{Member: i, Limit: ClassLimit, Class: c.Name, Over: mine - most})
		}
	}
	return list
}
