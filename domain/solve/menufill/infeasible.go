package menufill

import (
	"fmt"
)

// Rule names a rule of the problem that cannot be kept.
type Rule string

// The rules in the order in which they are looked at.
const (
	RuleSlot        Rule = "recipe for the slot"
	RulePots        Rule = "pots of the slot"
	RuleEnergyMin   Rule = "energy minimum of the day"
	RuleEnergyMax   Rule = "energy maximum of the day"
	RuleProtein     Rule = "protein of the day"
	RuleCook        Rule = "cooking minutes of the day"
	RuleRepeats     Rule = "repeats"
	RuleEnergyTotal Rule = "energy of the trip"
	RuleFixed       Rule = "fixed slots"
	RuleGap         Rule = "gap days"
	// RuleNone means that no single rule stands in the way, or that the search was too short to find a plan.
	RuleNone Rule = "no plan found"
)

// Infeasible says that the problem has no plan and why: the first rule in the order of the constants that cannot be kept.
type Infeasible struct {
	Rule Rule
	Day  int // from 1; 0 when the rule is about the trip
	Slot int // index; -1 when the rule is not about one slot
	// Class is the index of the class, -1 when the rule is not about one.
	Class int
	// Reachable and Asked are the figures that do not meet, in the unit of the rule.
	Reachable, Asked int
	// Proven tells that there is no plan; without it only the search failed.
	Proven bool
	text   string
}

func (e *Infeasible) Error() string { return e.text }

// cannot returns the first rule that a simple count proves cannot be kept, or nil.
func (m *model) cannot() *Infeasible {
	for _, test := range []func() *Infeasible{m.cannotServe, m.cannotReachEnergy, m.cannotReachProtein, m.cannotCook, m.cannotRepeat, m.cannotReachTotal} {
		if e := test(); e != nil {
			e.Proven = true
			return e
		}
	}
	return nil
}

func (m *model) cannotServe() *Infeasible {
	for i := range m.slots {
		s := &m.slots[i]
		for _, g := range s.classes {
			if !s.anyServed(g) {
				return &Infeasible{Rule: RuleSlot, Day: s.day + 1, Slot: i, Class: g, Asked: 1, text: fmt.Sprintf(
					"slot %d on day %d: no %srecipe of the right kind that is still fresh is served to class %s; add one or allow one",
					i, s.day+1, fixedWord(s), m.p.Classes[g].Name)}
			}
		}
		for _, r := range m.p.Slots[i].Fixed {
			if last := m.p.Recipes[r].LastDay; last > 0 && s.day+1 > last {
				return &Infeasible{Rule: RuleFixed, Day: s.day + 1, Slot: i, Class: -1, Reachable: last, Asked: s.day + 1, text: fmt.Sprintf(
					"slot %d on day %d: fixed recipe %s is fresh until day %d only; fix another", i, s.day+1, m.p.Recipes[r].Name, last)}
			}
		}
		if need := m.fewestPots(s); need > s.pots && !s.fixed {
			return &Infeasible{Rule: RulePots, Day: s.day + 1, Slot: i, Class: -1, Reachable: s.pots, Asked: need, text: fmt.Sprintf(
				"slot %d on day %d: %d pots for classes that need at least %d recipes; allow more pots or add a recipe that more can eat",
				i, s.day+1, s.pots, need)}
		}
	}
	return nil
}

func fixedWord(s *slot) string {
	if s.fixed {
		return "fixed "
	}
	return ""
}

func (s *slot) anyServed(g int) bool {
	for _, r := range s.candidates {
		if s.serving(r, g).Served {
			return true
		}
	}
	return false
}

// fewestPots is the least number of recipes that serves every class of the slot, or one more than its pots.
func (m *model) fewestPots(s *slot) int {
	if len(s.classes) == 0 {
		return 0
	}
	zero, use := newPrices(m), make([]int64, len(m.p.Recipes))
	for pots := 1; pots <= s.pots; pots++ {
		c := *s
		c.pots = pots
		pick := slotPick{}
		if pick.solve(&c, zero, use); len(pick.cooked) > 0 {
			return pots
		}
	}
	return s.pots + 1
}

// extreme is the most (sign 1) or least (sign -1) a class can get on a day of what figure counts.
func (m *model) extreme(g, d, sign int, figure func(*Serving) int) int {
	sum := 0
	for _, i := range m.byDay[d] {
		s := &m.slots[i]
		if s.eaters[g] == 0 {
			continue
		}
		best, first := 0, true
		for _, r := range s.candidates {
			if v := s.serving(r, g); v.Served && (first || sign*figure(v) > sign*best) {
				best, first = figure(v), false
			}
		}
		sum += best
	}
	return sum
}

func kcalOf(v *Serving) int    { return v.Kcal }
func proteinOf(v *Serving) int { return v.ProteinDg }

func (m *model) cannotReachEnergy() *Infeasible {
	for d := range m.p.Days {
		for g := range m.p.Classes {
			if !m.eats[g][d] {
				continue
			}
			class := &m.p.Classes[g]
			if most := m.extreme(g, d, 1, kcalOf); most < class.EnergyMin[d] {
				return &Infeasible{Rule: RuleEnergyMin, Day: d + 1, Slot: -1, Class: g, Reachable: most, Asked: class.EnergyMin[d], text: fmt.Sprintf(
					"day %d, class %s: at most %d of %d kcal; add a richer recipe, or ask %d kcal less",
					d+1, class.Name, most, class.EnergyMin[d], class.EnergyMin[d]-most)}
			}
			if least := m.extreme(g, d, -1, kcalOf); least > class.EnergyMax[d] {
				return &Infeasible{Rule: RuleEnergyMax, Day: d + 1, Slot: -1, Class: g, Reachable: least, Asked: class.EnergyMax[d], text: fmt.Sprintf(
					"day %d, class %s: at least %d kcal where %d are the most; allow %d kcal more",
					d+1, class.Name, least, class.EnergyMax[d], least-class.EnergyMax[d])}
			}
		}
	}
	return nil
}

func (m *model) cannotReachProtein() *Infeasible {
	for d := range m.p.Days {
		for g := range m.p.Classes {
			class := &m.p.Classes[g]
			if most := m.extreme(g, d, 1, proteinOf); m.eats[g][d] && most < class.ProteinMin[d] {
				return &Infeasible{Rule: RuleProtein, Day: d + 1, Slot: -1, Class: g, Reachable: most, Asked: class.ProteinMin[d], text: fmt.Sprintf(
					"day %d, class %s: at most %s of %s g protein; add a recipe with more",
					d+1, class.Name, tenths(most), tenths(class.ProteinMin[d]))}
			}
		}
	}
	return nil
}

func tenths(n int) string { return fmt.Sprintf("%d.%d", n/10, n%10) }

// cannotCook finds a day whose quickest recipes take too long.
func (m *model) cannotCook() *Infeasible {
	for d := range m.p.Days {
		least := 0
		for _, i := range m.byDay[d] {
			least += m.quickest(&m.slots[i])
		}
		if least > m.p.CookMinutes[d] {
			return &Infeasible{Rule: RuleCook, Day: d + 1, Slot: -1, Class: -1, Reachable: least, Asked: m.p.CookMinutes[d], text: fmt.Sprintf(
				"day %d: cooking takes at least %d minutes of %d; add a quicker recipe or allow %d minutes more",
				d+1, least, m.p.CookMinutes[d], least-m.p.CookMinutes[d])}
		}
	}
	return nil
}

// quickest is the fewest cook minutes that serve every class of the slot: the cheapest pick when only minutes cost.
func (m *model) quickest(s *slot) int {
	if len(s.candidates) == 0 || len(s.classes) == 0 && !s.fixed {
		return 0
	}
	bare := *s
	bare.eaters, bare.offers = make([]int, len(s.eaters)), s.offers.free() // servings cost nothing
	minutes := newPrices(m)
	minutes.cook[s.day] = 1
	pick := slotPick{}
	pick.solve(&bare, minutes, make([]int64, len(m.p.Recipes)))
	return int(pick.best)
}

// cannotRepeat finds a kind of slot whose recipes run out.
func (m *model) cannotRepeat() *Infeasible {
	seen := map[int]bool{}
	for i := range m.slots {
		kind := m.p.Slots[i].Kind
		if seen[kind] {
			continue
		}
		seen[kind] = true
		for g := range m.p.Classes {
			if slots, uses := m.usesOfKind(kind, g); uses < slots {
				return &Infeasible{Rule: RuleRepeats, Slot: -1, Class: g, Reachable: uses, Asked: slots, text: fmt.Sprintf(
					"kind %d, class %s: its recipes may be cooked %d times for %d slots; add recipes or allow more repeats",
					kind, m.p.Classes[g].Name, uses, slots)}
			}
		}
	}
	return m.cannotFix()
}

// usesOfKind counts the open slots of a kind that class g eats in, and how often the recipes served to it may be cooked there, freshness and gap
// days included.
func (m *model) usesOfKind(kind, g int) (slots, uses int) {
	days := make([][]bool, len(m.p.Recipes))
	for i, s := range m.slots {
		if m.p.Slots[i].Kind != kind || s.fixed || s.eaters[g] == 0 {
			continue
		}
		slots++
		for _, r := range s.candidates {
			if !s.serving(r, g).Served {
				continue
			}
			if days[r] == nil {
				days[r] = make([]bool, m.p.Days)
			}
			days[r][s.day] = true
		}
	}
	for r, on := range days {
		count, next := 0, 0
		for d, is := range on {
			if is && d >= next {
				count, next = count+1, d+m.p.Recipes[r].GapDays+1
			}
		}
		uses += min(count, m.maxRepeats[r])
	}
	return slots, uses
}

// cannotFix finds fixed slots that break repeats or gap days among themselves.
func (m *model) cannotFix() *Infeasible {
	days := make([][]int, len(m.p.Recipes))
	for i := range m.slots {
		s := &m.slots[i]
		for _, r := range m.p.Slots[i].Fixed {
			for _, d := range days[r] {
				if gap := m.p.Recipes[r].GapDays; max(d-s.day, s.day-d) <= gap {
					return &Infeasible{Rule: RuleFixed, Day: s.day + 1, Slot: i, Class: -1, Reachable: max(d-s.day, s.day-d), Asked: gap + 1, text: fmt.Sprintf(
						"slot %d on day %d: %s is fixed on day %d too, and %d days must lie between; fix another", i, s.day+1, m.p.Recipes[r].Name, d+1, gap)}
				}
			}
			if days[r] = append(days[r], s.day); len(days[r]) > m.maxRepeats[r] {
				return &Infeasible{Rule: RuleFixed, Slot: i, Day: s.day + 1, Class: -1, Reachable: m.maxRepeats[r], Asked: len(days[r]), text: fmt.Sprintf(
					"slot %d on day %d: %s is fixed %d times and may be cooked %d times; fix another", i, s.day+1, m.p.Recipes[r].Name, len(days[r]), m.maxRepeats[r])}
			}
		}
	}
	return nil
}

func (m *model) cannotReachTotal() *Infeasible {
	for g := range m.p.Classes {
		class, most := &m.p.Classes[g], 0
		for d := range m.p.Days {
			if m.eats[g][d] {
				most += min(m.extreme(g, d, 1, kcalOf), class.EnergyMax[d])
			}
		}
		if most < class.EnergyTotal {
			return &Infeasible{Rule: RuleEnergyTotal, Slot: -1, Class: g, Reachable: most, Asked: class.EnergyTotal, text: fmt.Sprintf(
				"class %s: at most %d of %d kcal over the trip; allow more on each day or ask %d kcal less",
				class.Name, most, class.EnergyTotal, class.EnergyTotal-most)}
		}
	}
	return nil
}
