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
	key := tailorKey(d, banned)
	if s.tailored[key] {
		return
	}
	s.tailored[key] = true
	e := newDayEnumerator(s.m, s.p, d, banned, s.steps)
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

func tailorKey(d int, banned []bool) string {
	key := make([]byte, 1, 1+len(banned)/8+1)
	key[0] = byte(d)
	for r, is := range banned {
		if r%8 == 0 {
			key = append(key, 0)
		}
		if is {
			key[len(key)-1] |= 1 << (r % 8)
		}
	}
	return string(key)
}
