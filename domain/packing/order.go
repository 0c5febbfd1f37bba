package packing

import (
	"math/bits"
	"slices"
)

// mostExact is for how many rounds every order is weighed; an evening with
// more gets an order found step by step.
const mostExact = 12

// inOrder gives an order of the rounds of one table, as places in the list,
// with the fewest cleanings: after a round without cleaning comes one that
// touches all that it touches. Of equal orders the first counts, in the order
// of the list. Rounds that must come before others do.
//
// It is the shortest path through all subsets (Held and Karp 1962, from
// memory).
func (n *night) inOrder(groups []round) []int {
	if len(groups) > mostExact {
		return stepByStep(groups, n.earlier(groups))
	}
	return fewestCleanings(groups, n.earlier(groups))
}

// earlier gives for each round those that must come before it, as bits.
func (n *night) earlier(groups []round) []uint64 {
	before := make([]uint64, len(groups))
	for i := range groups {
		for j := range groups {
			if i != j && n.before(&groups[j], &groups[i]) {
				before[i] |= 1 << j
			}
		}
	}
	return before
}

func fewestCleanings(groups []round, before []uint64) []int {
	count := len(groups)
	if count == 0 {
		return nil
	}
	// least[done][last] is the fewest cleanings of the rounds after those done.
	const never = 1 << 20
	full := 1<<count - 1
	least := make([][]int, full+1)
	for done := full; done > 0; done-- {
		least[done] = make([]int, count)
		for last := range count {
			if done&(1<<last) == 0 {
				continue
			}
			if done == full {
				continue
			}
			best := never
			for next := range count {
				if done&(1<<next) == 0 && before[next]&^uint64(done) == 0 {
					best = min(best, least[done|1<<next][next]+cleaning(groups, last, next))
				}
			}
			least[done][last] = best
		}
	}
	var order []int
	done := 0
	for bits.OnesCount(uint(done)) < count {
		best, cost := -1, never+count+1
		for next := range count {
			if done&(1<<next) != 0 || before[next]&^uint64(done) != 0 {
				continue
			}
			here := least[done|1<<next][next]
			if len(order) > 0 {
				here += cleaning(groups, order[len(order)-1], next)
			}
			if here < cost {
				best, cost = next, here
			}
		}
		order = append(order, best)
		done |= 1 << best
	}
	return order
}

func cleaning(groups []round, last, next int) int {
	if groups[last].touches.within(groups[next].touches) {
		return 0
	}
	return 1
}

// stepByStep takes the first round that may come next without cleaning, else
// the first that may come next.
func stepByStep(groups []round, before []uint64) []int {
	var order []int
	var done uint64
	for len(order) < len(groups) {
		best := -1
		for next := range groups {
			if done&(1<<next) != 0 || before[next]&^done != 0 {
				continue
			}
			if len(order) > 0 && cleaning(groups, order[len(order)-1], next) == 0 {
				best = next
				break
			}
			if best < 0 {
				best = next
			}
		}
		order = append(order, best)
		done |= 1 << best
	}
	return slices.Clip(order)
}
