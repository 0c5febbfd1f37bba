package menufill

import (
	"cmp"
	"slices"
)

// dayMenu is what all slots of one day serve, keeping every rule inside the day.
type dayMenu struct {
	cells   []int16 // [slot of the day][class], -1 without eaters
	cooked  []int16 // recipes of the day, ascending
	value   int64   // objective without repeats and without families between days
	kin     []familyUse
	reduced int64   // priced cost, in price units: compares menus of one day while prices stay
	kcal    []int32 // of each class whose trip total binds, else 0
}

// pool holds the menus of one day that the prices leave in the running.
type pool struct {
	menus []dayMenu // by reduced, then value, then recipes
	// bound is a proven least priced cost of any menu of the day.
	bound int64
	// complete is the priced cost below which every undominated menu is in the pool.
	complete int64
}

func byReduced(a, b dayMenu) int {
	if c := cmp.Compare(a.reduced, b.reduced); c != 0 {
		return c
	}
	if c := cmp.Compare(a.value, b.value); c != 0 {
		return c
	}
	return slices.Compare(a.cells, b.cells)
}

// merge adds menus that are not yet in the pool, keeping the best so many.
func (p *pool) merge(more []dayMenu, most int) {
	p.menus = append(p.menus, more...)
	slices.SortFunc(p.menus, byReduced)
	p.menus = slices.CompactFunc(p.menus, func(a, b dayMenu) bool { return slices.Equal(a.cells, b.cells) })
	if len(p.menus) > most {
		p.complete = min(p.complete, p.menus[most].reduced-1)
		p.menus = p.menus[:most]
	}
}

// take adds what an enumeration found and proved.
func (p *pool) take(e enumeration, most int) {
	p.bound, p.complete = max(p.bound, e.least), max(p.complete, e.complete)
	p.merge(e.menus, most)
}

// reprice sets the priced cost of every menu of day d and sorts again.
func (p *pool) reprice(q *prices, d int) {
	for i := range p.menus {
		p.menus[i].reduced = q.menu(&p.menus[i], d)
	}
	slices.SortFunc(p.menus, byReduced)
	p.forget()
}

// forget drops what is proven of the pool, as when prices change.
func (p *pool) forget() { p.bound, p.complete = -never, -never }

// menu is the priced cost of a day menu: rules between days are priced, rules inside the day are kept.
func (p *prices) menu(menu *dayMenu, d int) int64 {
	cost := menu.value << scale
	for _, r := range menu.cooked {
		cost += p.use(int(r), d)
	}
	for g, kcal := range menu.kcal {
		cost -= p.total[g] * int64(kcal)
	}
	return cost
}

// dayMenu makes the menu of day d from who eats what; it may break the rules of the day.
func (m *model) dayMenu(d int, cells []int16) dayMenu {
	classes := len(m.p.Classes)
	menu := dayMenu{cells: cells, kcal: make([]int32, classes)}
	amounts := make([][]int64, classes)
	for g := range amounts {
		amounts[g] = make([]int64, len(m.p.Wants))
	}
	for local, i := range m.byDay[d] {
		s := &m.slots[i]
		for _, r := range s.candidates {
			if s.fixed || slices.Contains(cells[local*classes:(local+1)*classes], int16(r)) {
				menu.cooked = append(menu.cooked, int16(r))
				menu.value += s.offers.burden[r]
			}
		}
		for _, g := range s.classes {
			r := int(cells[local*classes+g])
			v := s.serving(r, g)
			menu.value += s.cellValue(g, r)
			if m.totalBinds[g] {
				menu.kcal[g] += int32(v.Kcal)
			}
			for k, amount := range v.Amounts {
				amounts[g][k] += int64(amount)
			}
		}
	}
	for g := range classes {
		if m.eats[g][d] {
			menu.value += m.missed(g, d, amounts[g])
		}
	}
	slices.Sort(menu.cooked)
	menu.value += m.inDayBurden(menu.cooked)
	menu.kin = m.familyUses(menu.cooked)
	return menu
}
