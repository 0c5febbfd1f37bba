package menufill

import "math"

// never is a cost no plan pays.
const never = math.MaxInt64 / 8

// slotPick finds the cheapest recipes of one slot, at most its pots, and who eats which: class by class, depth first, cutting
// what cannot beat the best with every later class at its cheapest.
type slotPick struct {
	best   int64
	cooked []int // recipes
	eaten  []int // recipe of each of the slot's classes
	work   int64

	use     []int64   // of each candidate
	cost    [][]int64 // [class][candidate]
	rest    []int64   // cheapest cells of this class and all later ones
	current []int     // candidate of each class so far
	answer  []int     // the best so far
	open    []int     // classes eating each candidate
}

// solve needs the price of using each recipe that day; minutes and burdens come on top.
func (k *slotPick) solve(s *slot, p *prices, use []int64) {
	k.prepare(s, p, use)
	k.best, k.work = never, int64(len(s.candidates)*(len(s.classes)+1))
	k.cooked, k.eaten = k.cooked[:0], k.eaten[:0]
	switch {
	case len(s.candidates) == 0 || len(s.classes) == 0 && !s.fixed:
		k.best = 0
		return
	case s.fixed:
		k.takeAll(s)
	default:
		k.descend(0, 0, s.pots)
	}
	if k.best == never {
		k.best = 0 // no menu serves all classes: infeasible says so before the search
		return
	}
	for _, c := range k.answer {
		k.eaten = append(k.eaten, s.candidates[c])
	}
	clear(k.open)
	for _, c := range k.answer {
		k.open[c]++
	}
	for c, r := range s.candidates {
		if s.fixed || k.open[c] > 0 {
			k.cooked = append(k.cooked, r)
		}
	}
}

func (k *slotPick) prepare(s *slot, p *prices, use []int64) {
	k.use = k.use[:0]
	for _, r := range s.candidates {
		k.use = append(k.use, use[r]+p.cooking(s, r))
	}
	for len(k.cost) < len(s.classes) {
		k.cost = append(k.cost, nil)
	}
	k.rest = append(k.rest[:0], make([]int64, len(s.classes)+1)...)
	for i := len(s.classes) - 1; i >= 0; i-- {
		g, least := s.classes[i], int64(never)
		k.cost[i] = k.cost[i][:0]
		for _, r := range s.candidates {
			cost := int64(never)
			if s.serving(r, g).Served {
				cost = p.cell(s, g, r)
			}
			k.cost[i] = append(k.cost[i], cost)
			least = min(least, cost)
		}
		k.rest[i] = min(never, k.rest[i+1]+least)
	}
	k.current = append(k.current[:0], make([]int, len(s.classes))...)
	k.answer = append(k.answer[:0], k.current...)
	k.open = append(k.open[:0], make([]int, len(s.candidates))...)
}

// takeAll charges every candidate and lets each class eat its cheapest.
func (k *slotPick) takeAll(s *slot) {
	sum := int64(0)
	for _, u := range k.use {
		sum += u
	}
	for i := range s.classes {
		for c, cost := range k.cost[i] {
			if cost < k.cost[i][k.answer[i]] {
				k.answer[i] = c
			}
		}
	}
	if k.rest[0] < never {
		k.best = sum + k.rest[0]
	}
}

func (k *slotPick) descend(i int, sum int64, pots int) {
	if i == len(k.current) {
		k.best = sum
		copy(k.answer, k.current)
		return
	}
	k.work += int64(len(k.use))
	for c, cost := range k.cost[i] {
		if cost == never {
			continue
		}
		total := sum + cost
		if k.open[c] == 0 {
			if pots == 0 {
				continue
			}
			total += k.use[c]
		}
		if total+k.rest[i+1] >= k.best {
			continue
		}
		k.current[i] = c
		left := pots
		if k.open[c] == 0 {
			left--
		}
		k.open[c]++
		k.descend(i+1, total, left)
		k.open[c]--
	}
}
