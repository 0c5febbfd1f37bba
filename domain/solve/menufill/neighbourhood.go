package menufill

import (
	"cmp"
	"slices"
)

// neighbourhood re-solves a few free days of an assembly over their pools, the other days staying as they are.
type neighbourhood struct {
	a     *assembly
	pools []pool
	extra [][]dayMenu
	p     *prices
	steps *budget
	mark  int64

	days    []int
	options [][]option // of each free day, least first
	rest    []int64    // least cost of this free day and all later ones, the energy still missing paid for
	best    score      // what the free days add at best
	answer  []dayMenu  // empty until something better is found
	chosen  []*dayMenu
}

// option is a menu with the least it can add: its marginal to the fixed days, its kcal paid at the price of the trip's energy.
type option struct {
	menu  *dayMenu
	least int64
}

// improve replaces the menus of the days by better ones if it can within so many steps. Now is the score of the plan.
func (n *neighbourhood) improve(days []int, now score, steps int64) (score, bool) {
	n.days, n.answer, n.mark = days, n.answer[:0], n.steps.used+steps
	old := make([]dayMenu, len(days))
	for i, d := range days {
		old[i] = n.a.menus[d]
	}
	for _, d := range days {
		n.a.free(d)
	}
	base := n.a.links()
	n.best = score{now.broken - base.broken, now.cost - base.cost}
	n.list()
	n.chosen = append(n.chosen[:0], make([]*dayMenu, len(days))...)
	if n.listed() {
		n.descend(0, score{}, 0)
	}
	for i, d := range days {
		if len(n.answer) > 0 {
			n.a.put(d, n.answer[i])
		} else {
			n.a.put(d, old[i])
		}
	}
	return n.best.plus(base), len(n.answer) > 0
}

// listed tells that every free day has a menu to choose.
func (n *neighbourhood) listed() bool {
	for i := range n.days {
		if len(n.options[i]) == 0 {
			return false
		}
	}
	return true
}

func (n *neighbourhood) list() {
	for len(n.options) < len(n.days) {
		n.options = append(n.options, nil)
	}
	n.rest = append(n.rest[:0], make([]int64, len(n.days)+1)...)
	n.rest[len(n.days)] = n.energyMissing()
	for i := len(n.days) - 1; i >= 0; i-- {
		d, list := n.days[i], n.options[i][:0]
		for _, menus := range [][]dayMenu{n.pools[d].menus, n.extra[d]} {
			for k := range menus {
				list = append(list, option{&menus[k], n.a.marginal(d, &menus[k]).cost - n.energyPaid(&menus[k])})
			}
			n.steps.spend(int64(4 * len(menus)))
		}
		slices.SortStableFunc(list, func(a, b option) int { return cmp.Compare(a.least, b.least) })
		n.options[i] = list
		if len(list) > 0 {
			n.rest[i] = n.rest[i+1] + list[0].least
		}
	}
}

// energyMissing is what the energy that the fixed days leave missing pays: since missing energy costs at least as much, no choice for
// the free days can cost less than its least options and this.
func (n *neighbourhood) energyMissing() int64 {
	sum := int64(0)
	for g, price := range n.p.total {
		sum += price * (int64(n.a.m.p.Classes[g].EnergyTotal) - n.a.kcal[g])
	}
	return sum
}

func (n *neighbourhood) energyPaid(menu *dayMenu) int64 {
	paid := int64(0)
	for g, kcal := range menu.kcal {
		paid += n.p.total[g] * int64(kcal)
	}
	return paid
}

// descend chooses for the free days from i on. Done is the score they add so far; paid is what their energy pays.
func (n *neighbourhood) descend(i int, done score, paid int64) {
	if i == len(n.days) {
		if done = done.plus(n.a.short()); done.cost < n.best.cost {
			n.best = done
			n.answer = n.answer[:0]
			for _, menu := range n.chosen {
				n.answer = append(n.answer, *menu)
			}
		}
		return
	}
	d := n.days[i]
	for _, o := range n.options[i] {
		if n.steps.past(n.mark) || done.cost-paid+o.least+n.rest[i+1] >= n.best.cost {
			return
		}
		n.steps.spend(4)
		next, nextPaid := done.plus(n.a.marginal(d, o.menu)), paid+n.energyPaid(o.menu)
		if next.cost-nextPaid+n.rest[i+1] >= n.best.cost {
			continue
		}
		n.chosen[i] = o.menu
		n.a.put(d, *o.menu)
		n.descend(i+1, next, nextPaid)
		n.a.free(d)
	}
}
