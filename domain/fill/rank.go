package fill

import (
	"cmp"
	"slices"

	"sumpter/domain/needs"
	"sumpter/domain/solve/menufill"
	"sumpter/domain/trip"
)

// Ranked is a recipe as Menu would weigh it for one slot.
type Ranked struct {
	Recipe trip.RecipeID `json:"recipe"`
	// Penalty is what speaks against it, in grams of food for one eater: what would be carried, and what a leader would carry more to avoid
	// the rest.
	Penalty float64 `json:"penalty_g"`
	// Without lists the eaters who could not be served it.
	Without []trip.MemberID `json:"without,omitempty"`
	// Unsafe lists foods of it that would not be safe there, or are not known to be: Menu never chooses it.
	Unsafe []trip.FoodID `json:"unsafe,omitempty"`
}

// goesWithout is what speaks against a dish that somebody cannot be served, in grams for each of them (design choice).
const goesWithout = 2000.0

// Rank weighs the recipes that may be served in a slot as Menu does, best first, whatever stands in the slot now and with the other slots
// as they are; those with something unsafe come last. Recipes for other meals are left out, and those that need a flame where none is
// allowed, or that nobody there may eat. The trip is canonical, the day one of its days.
func Rank(t *trip.Trip, n needs.Result, day int, meal trip.Meal, group trip.GroupID) []Ranked {
	k := slotKey{day, meal, group}
	l := newLarder(t, n)
	cells := l.decidedCells()
	delete(cells, k)
	b := newBoard(l, group, 1, len(t.Days), cells, weightsFor(t.Settings.MenuAim, 1))
	p := b.partyOn(day)
	if p == nil {
		return nil
	}
	b.listMeal(meal, false)
	b.listDecided()
	b.sortClasses()
	r := ranking{board: b, party: p, eaten: b.eatenBeside(k, p), kin: b.kinOf(day)}
	r.spare, r.limited = b.minutesBeside(k, p)
	var list []Ranked
	for i := range b.entries {
		if e := &b.entries[i]; e.open {
			if one, ok := r.weigh(k, i); ok {
				list = append(list, one)
			}
		}
	}
	slices.SortStableFunc(list, func(a, b Ranked) int {
		return cmp.Or(cmp.Compare(min(1, len(a.Unsafe)), min(1, len(b.Unsafe))), cmp.Compare(a.Penalty, b.Penalty), cmp.Compare(a.Recipe, b.Recipe))
	})
	return list
}

// ranking is what the other slots have settled for one slot.
type ranking struct {
	*board
	party   *party
	eaten   [][]int // [class][want] at the other meals of the day
	kin     []int   // [entry] what its families charge on the day
	spare   int     // minutes that the other meals leave
	limited bool
}

func (r *ranking) weigh(k slotKey, entry int) (Ranked, bool) {
	e := &r.entries[entry]
	served := r.serve(r.party, e.recipe)
	if r.trip.Days[k.day-1].NoFlame && e.recipe.NeedsFlame() || len(served.plates) == 0 {
		return Ranked{}, false
	}
	o := r.offerOf(k, e, r.party)
	value := o.Burden + r.kin[entry]
	for g, members := range r.classes {
		n := r.presentOf(members, k.day)
		v := o.Servings[g]
		if n == 0 {
			continue
		}
		value += n * (r.weights.mass*v.MassDg + r.weights.cost*v.CostCents + v.Burden)
		for w, want := range r.problem.Wants {
			value += n * want.Burden * max(0, wants[w].least-r.eaten[g][w]-v.Amounts[w])
		}
	}
	if r.limited {
		value += grams(burnerOver * float64(max(0, o.CookMinutes-r.spare)))
	}
	ranked := Ranked{Recipe: e.recipe.ID, Unsafe: r.unsafe(k, served)}
	for _, member := range r.party.members {
		if served.plates[member] == nil {
			ranked.Without = append(ranked.Without, member)
		}
	}
	ranked.Penalty = (float64(value)/perGram + goesWithout*float64(len(ranked.Without))) / float64(len(r.party.members))
	return ranked, true
}

// eatenBeside sums what the decided cells of the day bring each class besides the slot.
func (b *board) eatenBeside(k slotKey, p *party) [][]int {
	sums := make([][]int, len(b.classes))
	for g := range sums {
		sums[g] = make([]int, len(wants))
	}
	for _, meal := range trip.Meals() {
		other := slotKey{k.day, meal, k.group}
		cell := b.cells[other]
		if other == k || cell == nil || len(cell.Dishes) == 0 || !b.trip.Days[k.day-1].Eats(meal) {
			continue
		}
		for g, v := range b.decided(other, cell, p) {
			for w, amount := range v.Amounts {
				sums[g][w] += amount
			}
		}
	}
	return sums
}

// minutesBeside is the time on a burner that the decided cells of the day leave for a slot; false where there is no limit.
func (b *board) minutesBeside(k slotKey, p *party) (spare int, limited bool) {
	if spare = b.minutesOn(k.day); spare == 0 {
		return 0, false
	}
	for _, meal := range trip.Meals() {
		other := slotKey{k.day, meal, k.group}
		cell := b.cells[other]
		if other == k || cell == nil || !b.trip.Days[k.day-1].Eats(meal) {
			continue
		}
		for i := range cell.Dishes {
			spare -= b.minutesOf(other, &cell.Dishes[i], p)
		}
	}
	return max(0, spare), true
}

// kinOf is what serving each entry on a day adds to the charges of its families.
func (b *board) kinOf(day int) []int {
	uses := make([][]int, len(b.entries))
	for i := range uses {
		uses[i] = make([]int, b.days)
	}
	b.eachSlot(func(k slotKey, _ *party) {
		if cell := b.cells[k]; cell != nil {
			for _, dish := range cell.Dishes {
				uses[b.at[entryKey{dish.Recipe, k.meal}]][k.day-1]++
			}
		}
	})
	charges := make([]int, len(b.entries))
	for _, family := range b.families() {
		charge := chargeOf(&family, uses, day-1)
		for _, entry := range family.Recipes {
			charges[entry] += charge
		}
	}
	return charges
}

// chargeOf is what one more use of a family on a day (from 0) costs.
func chargeOf(f *menufill.Family, uses [][]int, day int) int {
	runs := 0
	for first := max(0, day-f.Days+1); first <= day; first++ {
		inside := 0
		for _, entry := range f.Recipes {
			if first+f.Days > len(uses[entry]) {
				return runs * f.Burden
			}
			for _, n := range uses[entry][first : first+f.Days] {
				inside += n
			}
		}
		if inside > 0 {
			runs++
		}
	}
	return runs * f.Burden
}
