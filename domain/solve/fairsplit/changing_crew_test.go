package fairsplit

import (
	"cmp"
	"math/big"
	"slices"
)

// changingCrew is a leg on which members join and leave. It is cut into stages
// where the people change, each a problem of its own, as the program cuts it.
type changingCrew struct {
	Problem         // everybody, and everything with its last day of the leg
	presence []days // of each member
	comes    []int  // the day on which each item comes in, from 1
}

// days is a stretch of days, from 1.
type days struct{ first, last int }

func (d days) has(day int) bool { return d.first <= day && day <= d.last }

// stages cuts the leg where somebody joins or leaves.
func (c *changingCrew) stages() []days {
	list := []days{{1, 1}}
	for day := 2; day <= c.Days; day++ {
		same := func(d days) bool { return d.has(day) == d.has(day-1) }
		if last := &list[len(list)-1]; !slices.ContainsFunc(c.presence, func(d days) bool { return !same(d) }) {
			last.last = day
		} else {
			list = append(list, days{day, day})
		}
	}
	return list
}

// there lists the members who are there on a day, by place.
func (c *changingCrew) there(day int) []int {
	var places []int
	for i, d := range c.presence {
		if d.has(day) {
			places = append(places, i)
		}
	}
	return places
}

// on gives the items still carried in a stage: those that have come in and are
// not eaten, and what weighs on to the end.
func (c *changingCrew) on(stage days) []int {
	var items []int
	for j, it := range c.Items {
		if c.comes[j] <= stage.first && (it.GoneAfter >= stage.first || it.Class == "fuel") {
			items = append(items, j)
		}
	}
	return items
}

// way is who has what while the stages are gone through one by one.
type way struct {
	crew  *changingCrew
	had   map[int]int // member by item, of the stage before
	heaps []leavings
}

// leavings are wrappings that a member has at the end of a stage.
type leavings struct {
	holder int
	grams  int64
}

// leg is one stage as a problem.
type leg struct {
	Problem
	days     days
	seats    []int // member by place in Problem.Crew
	items    []int // item of the whole by place in Problem.Items; those after are leavings
	previous []int // seat by place in Problem.Items, Nobody for what is new
	gone     int   // items whose carrier has left
}

// next makes the problem of a stage in the way domain/carry does: what is eaten
// later weighs to the stage's end, an empty cartridge what is left of it, who
// left is no carrier, and the part of a class in one pack is of what is left of it.
func (w *way) next(stage days) leg {
	c := w.crew
	l := leg{days: stage, seats: c.there(stage.first), items: c.on(stage)}
	l.Days = stage.last - stage.first + 1
	l.HoursTenths = c.HoursTenths[stage.first-1 : stage.last]
	for _, i := range l.seats {
		l.Crew = append(l.Crew, c.Crew[i])
	}
	for _, j := range l.items {
		l.add(c.Items[j], w.seatOf(&l, j))
	}
	for _, heap := range w.heaps {
		seat := slices.Index(l.seats, heap.holder)
		if seat < 0 {
			l.gone++
		}
		l.Items = append(l.Items, Item{MassGrams: heap.grams, ResidualGrams: heap.grams, GoneAfter: l.Days})
		l.previous = append(l.previous, seat)
	}
	for _, class := range c.Classes {
		l.addClass(class)
	}
	return l
}

// seatOf gives the seat of who had an item, and counts it if they have left.
func (w *way) seatOf(l *leg, j int) int {
	member, known := w.had[j]
	if !known {
		return Nobody
	}
	seat := slices.Index(l.seats, member)
	if seat < 0 {
		l.gone++
	}
	return seat
}

func (l *leg) add(it Item, previous int) {
	last := it.GoneAfter
	it.GoneAfter = min(last, l.days.last) - l.days.first + 1
	if last < l.days.first {
		it.MassGrams, it.GoneAfter = it.ResidualGrams, l.Days
	}
	if it.Allowed != nil {
		var allowed []int
		for seat, member := range l.seats {
			if slices.Contains(it.Allowed, member) {
				allowed = append(allowed, seat)
			}
		}
		it.Allowed = allowed // nil, so all, if nobody is left
	}
	l.Items = append(l.Items, it)
	l.previous = append(l.previous, previous)
}

// addClass raises a class's share where one item, or an equal part, already is more.
func (l *leg) addClass(class Class) {
	total, largest := int64(0), int64(0)
	for _, it := range l.Items {
		if it.Class == class.Name {
			total, largest = total+it.Energy, max(largest, it.Energy)
		}
	}
	n := int64(len(l.Crew))
	most := max(total*class.Share.Num/class.Share.Den, largest, (total+n-1)/n)
	l.Classes = append(l.Classes, Class{Name: class.Name, Share: Ratio{most, max(1, total)}})
}

// foresee goes through the stages from the last one back, each near to the one after
// it, as domain/carry does: who should have what, by stage.
func (w *way) foresee(solve func(leg, Options) Result) []map[int]int {
	stages := w.crew.stages()
	list := make([]map[int]int, len(stages)+1)
	for n := len(stages) - 1; n > 0; n-- {
		l := w.next(stages[n])
		r := solve(l, Options{Previous: l.seatsOf(list[n+1])})
		list[n] = map[int]int{}
		for k, j := range l.items {
			list[n][j] = l.seats[max(0, r.Carrier[k])]
		}
	}
	return list
}

// goThrough solves stage by stage, the first near to what is foreseen, the others to
// who had what. Visit gives the carriers that are handed on.
func (c *changingCrew) goThrough(solve func(leg, Options) Result, visit func(leg, Result) []int) {
	w := way{crew: c}
	ahead := w.foresee(solve)
	for n, stage := range c.stages() {
		l := w.next(stage)
		o := Options{Previous: l.previous, Known: l.seatsOf(ahead[n])}
		if n == 0 {
			o = Options{Previous: l.seatsOf(ahead[1])}
		}
		r := solve(l, o)
		w.handOn(l, visit(l, r))
	}
}

// nearlyFair is the choice that domain/carry takes: the fewest hand-overs with which the
// heaviest packs are at most 2 % heavier than in the fairest split. It is false where
// nothing was in a pack before.
func nearlyFair(r Result) (Resplit, bool) {
	near := func(a, b *big.Rat) bool { return a.Cmp(new(big.Rat).Mul(b, big.NewRat(102, 100))) <= 0 }
	for _, c := range r.Choices {
		if last := r.Choices[len(r.Choices)-1]; near(c.R1, last.R1) && near(c.S, last.S) && c.Over*100 <= last.Over*102 {
			return c, true
		}
	}
	return Resplit{}, false
}

// seatsOf gives the seats of items' carriers, nil for none at all.
func (l *leg) seatsOf(carriers map[int]int) []int {
	if carriers == nil {
		return nil
	}
	list := make([]int, len(l.Items))
	for n := range list {
		list[n] = Nobody
		if n < len(l.items) {
			if member, known := carriers[l.items[n]]; known {
				list[n] = slices.Index(l.seats, member)
			}
		}
	}
	return list
}

// handOn remembers who has what, and gathers what the eaten food leaves.
func (w *way) handOn(l leg, carrier []int) {
	w.had = map[int]int{}
	grams := map[int]int64{}
	for n, seat := range carrier {
		member := l.seats[max(0, seat)]
		switch {
		case n >= len(l.items):
			grams[member] += l.Items[n].MassGrams
		case w.crew.Items[l.items[n]].GoneAfter <= l.days.last && w.crew.Items[l.items[n]].Class != "fuel":
			grams[member] += l.Items[n].ResidualGrams
		default:
			w.had[l.items[n]] = member
		}
	}
	w.heaps = nil
	for i := range w.crew.Crew {
		if grams[i] > 0 {
			w.heaps = append(w.heaps, leavings{i, grams[i]})
		}
	}
}

// inventChanges makes a crew like inventCrew's of which about a sixth joins later and
// a sixth leaves early, on a few mornings. Everybody's food is there for their days
// only. Of those who join, about half bring their food; of the others it is carried
// from the first day. Limits bind on the stage where packs are fullest.
// The same arguments give the same crew.
func inventChanges(seed uint64, members, length int, tight binding) changingCrew {
	whole := inventCrew(seed, members, length, loose)
	c := changingCrew{Problem: whole}
	g := inventor{random: random{state: seed*104729 + uint64(members)*37 + uint64(length)}, Problem: whole}
	mornings := make([]int, 1+min(3, length/5))
	for n := range mornings {
		mornings[n] = 2 + g.below(length-1)
	}
	brings := make([]bool, members)
	for range members {
		c.presence = append(c.presence, days{1, length})
	}
	for n := range max(2, members/3) {
		i := g.below(members)
		if morning := mornings[g.below(len(mornings))]; n%2 == 0 && morning <= c.presence[i].last {
			c.presence[i].first = morning
			brings[i] = g.below(2) == 0
		} else if n%2 == 1 && morning > c.presence[i].first {
			c.presence[i].last = morning - 1
		}
	}
	c.comes = make([]int, len(c.Items))
	meals := 4 * length * members // the food comes first, by meal and eater
	keep := 0
	for j, it := range whole.Items {
		comes := 1
		if j < meals {
			eater := j % members
			if !c.presence[eater].has(it.GoneAfter) {
				continue
			}
			if brings[eater] {
				comes = c.presence[eater].first
			}
			it.ResidualGrams = 6 // its bag
		}
		c.Items[keep], c.comes[keep] = it, comes
		keep++
	}
	c.Items, c.comes = c.Items[:keep], c.comes[:keep]
	c.bind(&g, tight)
	return c
}

// bind draws limits from how fair splits by strength would look on the first morning of
// each stage: each member's fullest morning counts, and of the crew the fullest one has
// a few percent to spare.
func (c *changingCrew) bind(g *inventor, tight binding) {
	type amounts struct{ grams, volume, strength, kit int64 }
	stages := c.stages()
	sums := make([]amounts, len(stages))
	fewest := len(c.Crew)
	for s, stage := range stages {
		a := &sums[s]
		l := (&way{crew: c}).next(stage)
		for _, it := range l.Items {
			a.grams, a.volume = a.grams+it.MassGrams, a.volume+it.VolumeMl
		}
		for _, m := range l.Crew {
			a.strength, a.kit = a.strength+m.Strength, a.kit+m.BaseGrams
		}
		fewest = min(fewest, len(l.Crew))
	}
	limit := func(percent int64, amount func(amounts) int64, fair func(i int, a amounts) int64, set func(i int, part int64)) {
		part := make([]int64, len(c.Crew))
		for i, presence := range c.presence {
			p := int64(g.between(100, 120))
			if g.below(4) == 0 {
				p = int64(g.between(70, 95))
			}
			most := int64(0)
			for s, stage := range stages {
				if presence.has(stage.first) {
					most = max(most, fair(i, sums[s]))
				}
			}
			part[i] = most*p/100 + 50
		}
		num, den := int64(0), int64(1) // of the stage with the least room to spare
		for s, stage := range stages {
			sum := int64(0)
			for _, i := range c.there(stage.first) {
				sum += part[i]
			}
			if need := amount(sums[s]) * percent / 100; need*den > num*sum {
				num, den = need, sum
			}
		}
		for i := range part {
			set(i, part[i]*num/den+1)
		}
	}
	grams := func(i int, a amounts) int64 {
		return max((a.kit+a.grams)*c.Crew[i].Strength/a.strength-c.Crew[i].BaseGrams, 0)
	}
	if tight.mass {
		limit(103, func(a amounts) int64 { return a.grams }, grams, func(i int, part int64) { c.Crew[i].MaxGrams = c.Crew[i].BaseGrams + part })
	}
	if tight.volume {
		limit(104, func(a amounts) int64 { return a.volume }, func(i int, a amounts) int64 { return grams(i, a) * a.volume / a.grams },
			func(i int, part int64) { c.Crew[i].VolumeMl = part })
	}
	if tight.class {
		c.Classes[0].Share = Ratio{int64(1350 + 100*(6/fewest)), int64(1000 * fewest)}
		c.Classes[1].Share = Ratio{2000, int64(1000 * fewest)}
	}
}

// leastHandOvers is how many items have to change hands in a stage at least: those of
// who has left or may no longer carry them, and of everybody else the heaviest until
// their packs are within their limits and no heavier than top times their strength.
func (l *leg) leastHandOvers(top func(strength int64) int64) int {
	count := l.gone
	mine := make([][]int, len(l.Crew))
	for n, seat := range l.previous {
		switch {
		case seat < 0:
		case l.Items[n].Allowed != nil && !slices.Contains(l.Items[n].Allowed, seat):
			count++
		default:
			mine[seat] = append(mine[seat], n)
		}
	}
	for seat, items := range mine {
		m := l.Crew[seat]
		least := l.toGive(items, min(m.MaxGrams, top(m.Strength))-m.BaseGrams, func(it *Item) int64 { return it.MassGrams })
		least = max(least, l.toGive(items, m.VolumeMl, func(it *Item) int64 { return it.VolumeMl }))
		for _, class := range l.Classes {
			least = max(least, l.toGive(items, class.Share.Num, func(it *Item) int64 {
				if it.Class != class.Name {
					return 0
				}
				return it.Energy
			}))
		}
		count += least
	}
	return count
}

// toGive is how many of some items have to go, at least, so that the others are within most.
func (l *leg) toGive(items []int, most int64, of func(*Item) int64) int {
	sizes := make([]int64, len(items))
	sum := int64(0)
	for n, item := range items {
		sizes[n] = of(&l.Items[item])
		sum += sizes[n]
	}
	slices.SortFunc(sizes, func(a, b int64) int { return cmp.Compare(b, a) })
	count := 0
	for ; sum > most && count < len(sizes) && sizes[count] > 0; count++ {
		sum -= sizes[count]
	}
	return count
}
