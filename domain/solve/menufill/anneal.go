package menufill

import (
	"math/bits"
)

// annealer cools a plan (Kirkpatrick, Gelatt and Vecchi 1983): it changes a slot or two at a time, takes what costs more with a chance that
// falls with the temperature, and charges broken rules ever more. It passes through plans that no exchange of whole days reaches.
type annealer struct {
	t     *table
	rates rates
	steps *budget
	rand  random
	heat  int64 // temperature, in objective
	work  int64

	changes [2]change
	before  []int
	kinds   [][]int // slots that may trade with each slot
	mates   [][]int // cells of each class
	best    []int   // the best plan that keeps every rule; empty if none was met
	value   int64
}

// The schedule, tuned on generated trips of 7 and 21 days: the temperature falls from a share of what a day costs to about a tenth of that,
// and what broken rules cost rises tenfold.
const (
	stages     = 100
	hottest    = 0.007
	cooling    = 0.978 // of each stage
	firstRules = 2.0   // times the food that would keep the rule
	hardening  = 1.0233
	round      = 64 // moves between two looks at the budget; each at least one step
)

func newAnnealer(m *model, steps *budget, seed uint64) *annealer {
	a := &annealer{t: newTable(m), steps: steps, rand: random{seed}}
	a.mates = make([][]int, len(m.p.Classes))
	for k, c := range a.t.cells {
		a.mates[c.class] = append(a.mates[c.class], k)
	}
	a.kinds = make([][]int, len(m.slots))
	for i := range m.slots {
		for j := range m.slots {
			if len(m.slots[i].classes) > 0 && len(m.slots[j].classes) > 0 && !m.slots[i].fixed && !m.slots[j].fixed && m.p.Slots[i].Kind == m.p.Slots[j].Kind && m.slots[i].day != m.slots[j].day {
				a.kinds[i] = append(a.kinds[i], j)
			}
		}
	}
	return a
}

// run cools from the plan until the work mark.
func (a *annealer) run(menus []dayMenu, mark int64) {
	if len(a.t.cells) == 0 {
		return
	}
	a.t.load(menus)
	a.rates = newRates(a.t.m)
	heat, rules := hottest*float64(a.t.value)/float64(a.t.m.p.Days), firstRules
	for stage := range int64(stages) {
		a.heat = int64(heat)
		a.t.charge(a.rates.times(rules))
		heat, rules = heat*cooling, rules*hardening
		for end := a.steps.used + (mark-a.steps.used)/(stages-stage); !a.steps.past(end); {
			a.work = round
			for range round {
				a.move()
			}
			a.steps.spend(a.work)
		}
		a.rates.harden(a.t)
	}
}

// threshold is the most that a change may cost now: the temperature times an exponential number, drawn by whole numbers so that it is
// the same on every machine.
func (a *annealer) threshold() int64 {
	u := a.rand.next()
	zeros := bits.LeadingZeros64(u | 1)
	mantissa := int64(u << (zeros + 1) >> 48)               // 16 bits
	return a.heat * (int64(zeros+1)<<16 - mantissa) / 94548 // 2^16 / ln 2
}

// note keeps the plan if it is the best that keeps every rule.
func (a *annealer) note() {
	if a.t.charged == 0 && (len(a.best) == 0 || a.t.value < a.value) {
		a.best, a.value = append(a.best[:0], a.t.current...), a.t.value
	}
}
