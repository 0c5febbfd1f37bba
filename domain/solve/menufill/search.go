package menufill

import (
	"math/bits"
	"slices"
)

// search assembles the trip from the pools of its days and keeps the best plan it has seen.
type search struct {
	m        *model
	steps    *budget
	pools    []pool
	p        *prices
	a        *assembly
	now      score
	best     []dayMenu
	found    score // of best
	rand     random
	near     neighbourhood
	moved    []int // when each day last changed
	tried    [][]int
	clock    int
	extra    [][]dayMenu     // of each day, tailored
	tailored map[string]bool // days and what the others left them, seen at these prices
	factor   int64           // of the penalties: grows while plans break rules
}

func newSearch(m *model, pools []pool, seed uint64, steps *budget) *search {
	s := &search{m: m, steps: steps, pools: pools, a: newAssembly(m), rand: random{seed},
		factor: 1, extra: make([][]dayMenu, m.p.Days), moved: make([]int, m.p.Days)}
	s.near = neighbourhood{a: s.a, pools: pools, extra: s.extra, steps: steps}
	for range m.p.Days {
		s.tried = append(s.tried, make([]int, m.p.Days))
	}
	return s
}

// begin makes a first plan, or takes the best, and settles it, with pools priced by p.
func (s *search) begin(p *prices, mark int64) {
	s.p, s.near.p = p, p
	s.tailored = map[string]bool{}
	s.a.setPenalties(p, s.dayValue(), s.factor)
	if s.best == nil {
		s.start()
	} else {
		s.restore()
	}
	s.touch(s.allDays()...)
	s.settle(mark)
}

// run improves the plan until the work mark, or until enough once a plan keeps every rule.
func (s *search) run(mark, enough int64) {
	for !s.steps.past(mark) && s.m.p.Days > 1 && !(s.found.broken == 0 && s.steps.past(enough)) {
		if s.some(mark) {
			s.settle(mark)
			continue
		}
		s.kick()
		s.settle(mark)
	}
	s.restore()
	if s.found.broken > 0 {
		s.factor *= 4
	}
}

// dayValue is the usual objective of a day.
func (s *search) dayValue() int64 {
	sum := int64(0)
	for d := range s.pools {
		sum += s.pools[d].menus[0].value
	}
	return sum / int64(len(s.pools))
}

func (s *search) allDays() []int {
	days := make([]int, s.m.p.Days)
	for d := range days {
		days[d] = d
	}
	return days
}

// start fills each day with the menu that adds least to the days before.
func (s *search) start() {
	for d := range s.m.p.Days {
		s.tailor(d)
		pick, least := -1, int64(0)
		menus := slices.Concat(s.pools[d].menus, s.extra[d])
		for k := range menus {
			menu := &menus[k]
			if add := s.a.marginal(d, menu).cost - s.near.energyPaid(menu); pick < 0 || add < least {
				pick, least = k, add
			}
		}
		s.steps.spend(int64(len(menus)))
		s.a.put(d, menus[pick])
	}
	s.note(s.a.score())
}

// note takes the score of the current plan and keeps the plan if it is the best.
func (s *search) note(now score) {
	s.now = now
	if s.best == nil || now.beats(s.found) {
		s.found, s.best = now, slices.Clone(s.a.menus)
	}
}

// restore goes back to the best plan.
func (s *search) restore() {
	for d := range s.best {
		s.a.free(d)
		s.a.put(d, s.best[d])
	}
	s.now = s.a.score()
	s.found = s.now
}

// adopt takes a plan found elsewhere: its menus, and all of it if it is the best.
func (s *search) adopt(menus []dayMenu) {
	for d := range menus {
		menus[d].reduced = s.p.menu(&menus[d], d)
		s.extra[d] = append(s.extra[d], menus[d])
		s.a.free(d)
		s.a.put(d, menus[d])
	}
	s.note(s.a.score())
	s.restore()
}

func (s *search) touch(days ...int) {
	s.clock++
	for _, d := range days {
		s.moved[d] = s.clock
	}
}

// try re-solves the days and tells whether the plan got better.
func (s *search) try(days ...int) bool {
	now, better := s.near.improve(days, s.now, neighbourhoodSteps)
	if better {
		s.touch(days...)
		s.note(now)
	}
	return better
}

// neighbourhoodSteps is the work allowed for a few days, enough to finish two days nearly always.
const neighbourhoodSteps = 60_000

// settle re-solves every two days until no two can do better.
func (s *search) settle(mark int64) {
	for again := true; again; {
		again = false
		for a := range s.m.p.Days {
			for b := a; b < s.m.p.Days; b++ {
				if s.steps.past(mark) {
					return
				}
				if last := s.tried[a][b]; last >= s.moved[a] && last >= s.moved[b] {
					continue
				}
				days := []int{a, b}
				if a == b {
					days = days[:1]
				}
				again = s.try(days...) || again
				s.tried[a][b] = s.clock
			}
		}
	}
}

// some lists menus for a few random days against the others and re-solves them; it tells whether that made the plan better. Days
// that break a rule are taken first, then neighbours, whose dinners stand in each other's way.
func (s *search) some(mark int64) bool {
	better := false
	for range s.m.p.Days {
		if s.steps.past(mark) {
			return better
		}
		days := s.rand.distinct(min(2+s.rand.below(2), s.m.p.Days), s.m.p.Days)
		if s.rand.below(2) == 0 {
			days = s.run3(s.rand.below(s.m.p.Days))
		}
		if d := s.troubled(); d >= 0 && !slices.Contains(days, d) {
			days[0] = d
			slices.Sort(days)
		}
		s.tailor(days...)
		better = s.try(days...) || better
	}
	return better
}

// run3 gives up to three days in a row that hold the day.
func (s *search) run3(d int) []int {
	first := max(0, min(d-1, s.m.p.Days-3))
	var days []int
	for e := first; e < min(first+3, s.m.p.Days); e++ {
		days = append(days, e)
	}
	return days
}

// troubled gives a random day whose menu breaks a rule, -1 if none does.
func (s *search) troubled() int {
	if s.now.broken == 0 {
		return -1
	}
	var list []int
	for d := range s.m.p.Days {
		for _, r := range s.a.menus[d].cooked {
			days := s.a.cooked[r]
			if days&s.a.near[r][d]&^(1<<d) != 0 || bits.OnesCount64(days) > s.m.maxRepeats[r] {
				list = append(list, d)
				break
			}
		}
	}
	if len(list) == 0 {
		return -1
	}
	return list[s.rand.below(len(list))]
}

// kickDepth is how far down the pool a kick looks, after the menus have been ordered by what they add.
const kickDepth = 24

// kick goes back to the best plan when the search has strayed, and changes two days at random.
func (s *search) kick() {
	if s.found.beats(s.now) && s.rand.below(3) == 0 {
		s.restore()
		s.touch(s.allDays()...)
	}
	days := s.rand.distinct(min(2, s.m.p.Days), s.m.p.Days)
	for _, d := range days {
		s.a.free(d)
		menus := s.pools[d].menus
		s.a.put(d, menus[s.rand.below(min(kickDepth, len(menus)))])
	}
	s.touch(days...)
	s.now = s.a.score()
}

// random is a small generator of its own, so that a seed gives the same plan for ever (splitmix64, Steele, Lea and Flood 2014).
type random struct{ state uint64 }

func (r *random) next() uint64 {
	r.state += 0x9e3779b97f4a7c15
	z := r.state
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// below returns a number from 0 to n-1.
func (r *random) below(n int) int {
	high, _ := bits.Mul64(r.next(), uint64(n))
	return int(high)
}

// distinct returns k different numbers below n, ascending.
func (r *random) distinct(k, n int) []int {
	var chosen []int
	for len(chosen) < k {
		if d := r.below(n); !slices.Contains(chosen, d) {
			chosen = append(chosen, d)
		}
	}
	slices.Sort(chosen)
	return chosen
}
