package menufill

import "slices"

// model is a Problem laid out for the search: days from 0, candidate recipes listed for each slot.
type model struct {
	p        *Problem
	slots    []slot
	byDay    [][]int // slots of each day
	windows  []window
	byRecipe [][]int  // windows of each recipe
	singles  [][]int  // windows that are just that day
	eats     [][]bool // [class][day] has a slot
	// totalBinds tells for each class whether the trip's energy asks more than the days do.
	totalBinds []bool
	maxRepeats []int // repeats of each recipe, never more than the days of the trip
	families   []windowed
	inDay      [][]int // families of each recipe that look inside a day
	linked     [][]int // and those that tie days together
	present    [][]int // [class][day] most eaters of a slot
}

type slot struct {
	day        int
	pots       int
	eaters     []int
	classes    []int // classes with eaters
	candidates []int // recipes that may be cooked here, ascending
	fixed      bool  // all candidates are cooked
	twin       int   // earlier slot of the day that is exactly alike, -1 if none
	offers     *offers
}

// window says that its recipes are cooked at most once on the days first to last (from 0).
type window struct {
	first, last int
	most        int64 // what each use after the first costs, in price units; 0: there must be none
}

// single tells that the window is one day, so that it ties no days together.
func (w window) single() bool { return w.first == w.last }

func newModel(p *Problem) *model {
	m := &model{p: p, byDay: make([][]int, p.Days)}
	for _, r := range p.Recipes {
		m.maxRepeats = append(m.maxRepeats, min(r.Repeats, p.Days))
	}
	base := baseOffers(p)
	for i := range p.Slots {
		m.addSlot(i, base)
	}
	m.addWindows()
	m.findEaters()
	m.findBindingTotals()
	return m
}

func (m *model) addSlot(i int, base *offers) {
	p := &m.p.Slots[i]
	s := slot{day: p.Day - 1, pots: p.Pots, eaters: p.Eaters, fixed: len(p.Fixed) > 0, twin: -1, offers: base}
	if len(p.Offers) > 0 {
		s.offers = slotOffers(m.p, p.Offers)
	}
	for g, n := range p.Eaters {
		if n > 0 {
			s.classes = append(s.classes, g)
		}
	}
	for r := range m.p.Recipes {
		if m.candidate(p, &s, r) {
			s.candidates = append(s.candidates, r)
		}
	}
	if s.fixed {
		s.pots = len(s.candidates)
	}
	s.pots = min(s.pots, len(s.candidates))
	if !s.fixed {
		s.pots = min(s.pots, max(1, len(s.classes)))
	}
	for _, j := range m.byDay[s.day] {
		t := &m.slots[j]
		if !s.fixed && !t.fixed && len(s.candidates) > 0 && s.offers == t.offers && s.pots == t.pots && slices.Equal(s.eaters, t.eaters) && slices.Equal(s.candidates, t.candidates) {
			s.twin = j
		}
	}
	m.slots = append(m.slots, s)
	m.byDay[s.day] = append(m.byDay[s.day], i)
}

// candidate tells whether recipe r may be cooked in the slot: somebody there can eat it, it suits and is fresh. A fixed recipe is
// asked nothing, since the leader's wish decides; infeasible reports it when nobody can eat it or it is no longer fresh.
func (m *model) candidate(s *Slot, at *slot, r int) bool {
	if len(s.Fixed) > 0 {
		return slices.Contains(s.Fixed, r)
	}
	recipe := &m.p.Recipes[r]
	if recipe.Repeats == 0 || recipe.LastDay > 0 && s.Day > recipe.LastDay {
		return false
	}
	if !slices.Contains(recipe.Kinds, s.Kind) || slices.Contains(s.Excluded, r) {
		return false
	}
	for g, n := range s.Eaters {
		if n > 0 && at.serving(r, g).Served {
			return true
		}
	}
	return false
}

// addWindows turns the gap days of each recipe, the rule of once a day, and families into windows of days.
func (m *model) addWindows() {
	m.byRecipe = make([][]int, len(m.p.Recipes))
	m.singles = make([][]int, m.p.Days)
	slotsOn := make([][]int, len(m.p.Recipes))
	for r := range slotsOn {
		slotsOn[r] = make([]int, m.p.Days)
	}
	for _, s := range m.slots {
		for _, r := range s.candidates {
			slotsOn[r][s.day]++
		}
	}
	for r := range m.p.Recipes {
		length := min(m.p.Recipes[r].GapDays+1, m.p.Days)
		for first := 0; first+length <= m.p.Days; first++ {
			m.addWindow(window{first: first, last: first + length - 1}, []int{r}, slotsOn)
		}
	}
	m.addFamilies(slotsOn)
}

func (m *model) findBindingTotals() {
	m.totalBinds = make([]bool, len(m.p.Classes))
	for g := range m.p.Classes {
		sum := 0
		for d := range m.byDay {
			if m.eats[g][d] {
				sum += m.p.Classes[g].EnergyMin[d]
			}
		}
		m.totalBinds[g] = m.p.Classes[g].EnergyTotal > sum
	}
}

// findEaters notes on which days each class has a slot.
func (m *model) findEaters() {
	for range m.p.Classes {
		m.eats, m.present = append(m.eats, make([]bool, m.p.Days)), append(m.present, make([]int, m.p.Days))
	}
	for _, s := range m.slots {
		for _, g := range s.classes {
			m.eats[g][s.day] = true
			m.present[g][s.day] = max(m.present[g][s.day], s.eaters[g])
		}
	}
}

// dearest is more than the objective of any plan.
func (m *model) dearest() int64 {
	sum := int64(1)
	for i := range m.slots {
		s := &m.slots[i]
		sum += int64(s.pots) * int64(m.p.Weights.Repeat)
		for _, r := range s.candidates {
			sum += s.offers.burden[r] + m.dearestKin(r)
		}
		for _, g := range s.classes {
			most := int64(0)
			for _, r := range s.candidates {
				if s.serving(r, g).Served {
					most = max(most, s.cellValue(g, r))
				}
			}
			sum += most
		}
	}
	return sum + m.dearestWants()
}

// dearestKin is the most that a use of a recipe can cost through its families.
func (m *model) dearestKin(r int) int64 {
	sum := int64(0)
	for _, w := range m.byRecipe[r] {
		sum += m.windows[w].most >> scale
	}
	return sum
}
