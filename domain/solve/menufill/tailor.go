package menufill

import "math/bits"

// Tailored menus are listed for a day knowing what the days that stay cook: the pools hold what is good in general, and much of that
// is alike.
const (
	tailorWanted = 40      // menus after which the slack is not widened
	tailorMost   = 80      // menus kept of one listing
	tailorSteps  = 200_000 // work allowed for a day
	tailorKept   = 600     // menus of each day the search remembers, the newest first to stay
)

// tailor lists menus for each of the days from recipes that all other days leave free.
func (s *search) tailor(days ...int) {
	for _, d := range days {
		s.tailorDay(d, days)
	}
}

func (s *search) tailorDay(d int, free []int) {
	banned := s.taken(d, free)
	key := tailorKey(d, banned, s.kinTaken(d, free))
	if s.tailored[key] {
		return
	}
	s.tailored[key] = true
	e := newTailoredEnumerator(s.m, s.p, d, s.kinPrices(d, free), banned, s.steps)
	if e == nil {
		return
	}
	mark := s.steps.used + tailorSteps
	for slack := max(1, s.dayValue()/2000) << scale; ; slack *= 2 {
		found := e.list(slack, mark, tailorMost)
		if len(found.menus) < tailorWanted && found.complete != never && !s.steps.past(mark) {
			continue
		}
		s.extra[d] = append(s.extra[d], found.menus[:min(len(found.menus), tailorMost)]...)
		if over := len(s.extra[d]) - tailorKept; over > 0 {
			s.extra[d] = append([]dayMenu(nil), s.extra[d][over:]...)
		}
		return
	}
}

// taken lists the recipes that the days other than the free ones keep day d from cooking.
func (s *search) taken(d int, free []int) []bool {
	var gone uint64
	for _, f := range free {
		gone |= 1 << f
	}
	banned := make([]bool, len(s.m.p.Recipes))
	for r, days := range s.a.cooked {
		days &^= gone
		banned[r] = days&s.a.near[r][d] != 0 || bits.OnesCount64(days) >= s.m.maxRepeats[r]
	}
	return banned
}

// kinTaken tells of each family whether days near to day d use it, the free ones apart.
func (s *search) kinTaken(d int, free []int) []bool {
	var gone uint64
	for _, f := range free {
		gone |= 1 << f
	}
	taken := make([]bool, len(s.m.families))
	for f, days := range s.a.kin.days {
		taken[f] = days&^gone&s.m.families[f].near[d] != 0
	}
	return taken
}

// kinPrices is the price of each recipe on day d where families charge what they really do beside the days that stay.
func (s *search) kinPrices(d int, free []int) []int64 {
	use := make([]int64, len(s.m.p.Recipes))
	for r := range use {
		use[r] = s.p.hardUse(r, d)
	}
	for _, f := range free {
		s.a.kin.put(f, s.a.menus[f].kin, -1)
	}
	for r, families := range s.m.linked {
		for _, f := range families {
			use[r] += s.a.kin.charge(f, d, 1) << scale
		}
	}
	for _, f := range free {
		s.a.kin.put(f, s.a.menus[f].kin, 1)
	}
	return use
}

// tailorKey is the day and what the other days take from it.
func tailorKey(d int, lists ...[]bool) string {
	key := []byte{byte(d)}
	for _, list := range lists {
		for i, is := range list {
			if i%8 == 0 {
				key = append(key, 0)
			}
			if is {
				key[len(key)-1] |= 1 << (i % 8)
			}
		}
	}
	return string(key)
}
