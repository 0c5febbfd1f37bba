package fill

import (
	"math"
	"slices"

	"sumpter/domain/solve/menufill"
	"sumpter/domain/trip"
)

// build lays the slots out as a problem.
func (b *board) build() {
	b.listEntries()
	b.sortClasses()
	b.describe()
	b.eachSlot(func(k slotKey, p *party) {
		if b.isOpen(k) {
			b.addOpen(k, p, false)
			b.addOpen(k, p, true)
			return
		}
		if cell := b.cells[k]; len(cell.Dishes) > 0 {
			b.addDecided(k, cell, p)
		}
	})
	b.addMinutes()
	b.problem.Families = b.families()
}

// kindOf numbers the kinds of slot: each meal, and what comes at its side.
func kindOf(meal trip.Meal, side bool) int {
	kind := 2 * trip.MealOrder(meal)
	if side {
		kind++
	}
	return kind
}

// describe tells the solver of entries and classes. What a recipe brings stands in the offers of the slots.
func (b *board) describe() {
	unserved := make([]menufill.Serving, len(b.classes))
	for g := range unserved {
		unserved[g] = b.nothing()
	}
	for i := range b.entries {
		e := &b.entries[i]
		r := menufill.Recipe{Name: "nothing", Repeats: b.days, Servings: unserved}
		if e.recipe != nil {
			r.Name = e.recipe.Name
		}
		if e.open {
			r.Kinds = []int{kindOf(e.meal, e.side)}
		}
		b.problem.Recipes = append(b.problem.Recipes, r)
	}
	for range b.classes {
		c := menufill.Class{EnergyMin: make([]int, b.days), EnergyMax: slices.Repeat([]int{mostFigure}, b.days), ProteinMin: make([]int, b.days)}
		for i, want := range wants {
			c.Wants = append(c.Wants, slices.Repeat([]int{want.least}, b.days))
			for d := range b.days {
				c.Wants[i][d] += b.asked(i, b.first+d)
			}
		}
		b.problem.Classes = append(b.problem.Classes, c)
	}
}

// asked is what a day is asked beyond a want.
func (b *board) asked(want, day int) int {
	more := b.more[groupDay{b.group, day}]
	switch want {
	case wantEnergy:
		return more.energy
	case wantProtein:
		return more.protein
	default:
		return 0
	}
}

// offersOf are the base offers, nobody served.
func (b *board) offersOf() []menufill.Offer {
	list := make([]menufill.Offer, len(b.entries))
	for i := range list {
		list[i].Servings = b.problem.Recipes[i].Servings
	}
	return list
}

func (b *board) addOpen(k slotKey, p *party, side bool) {
	offers, some := b.offersOf(), false
	for i := range b.entries {
		e := &b.entries[i]
		if !e.open || e.meal != k.meal || e.side != side {
			continue
		}
		if o, ok := b.offer(k, e, p); ok {
			offers[i], some = o, true
		}
	}
	if !some {
		return
	}
	s := menufill.Slot{Day: k.day - b.first + 1, Kind: kindOf(k.meal, side), Offers: offers}
	for g, members := range b.classes {
		n := b.presentOf(members, k.day)
		if !slices.ContainsFunc(offers, func(o menufill.Offer) bool { return o.Servings[g].Served }) {
			n = 0 // they go without
		}
		s.Eaters = append(s.Eaters, n)
	}
	if s.Pots = fewestPots(&s); servingAll(&s) < enoughForAll {
		s.Pots++
	}
	b.problem.Slots = append(b.problem.Slots, s)
	b.slots = append(b.slots, place{k, side, true})
}

// enoughForAll is how many recipes that serve everybody are choice enough for one pot (design choice).
const enoughForAll = 4

// servingAll counts the recipes that serve everybody in a slot.
func servingAll(s *menufill.Slot) int {
	count := 0
	for _, o := range s.Offers {
		if servesAll(&o, s.Eaters) {
			count++
		}
	}
	return count
}

func servesAll(o *menufill.Offer, eaters []int) bool {
	for g, n := range eaters {
		if n > 0 && !o.Servings[g].Served {
			return false
		}
	}
	return true
}

// fewestPots is the least number of recipes that serves everybody in a slot, as far as three do.
func fewestPots(s *menufill.Slot) int {
	all, sets := uint64(0), map[uint64]bool{}
	for g, n := range s.Eaters {
		if n > 0 {
			all |= 1 << g
		}
	}
	for _, o := range s.Offers {
		set := uint64(0)
		for g := range s.Eaters {
			if o.Servings[g].Served {
				set |= 1 << g & all
			}
		}
		sets[set] = true
	}
	reached := map[uint64]bool{0: true}
	for pots := 1; pots <= 3; pots++ {
		next := map[uint64]bool{}
		for a := range reached {
			for b := range sets {
				next[a|b] = true
			}
		}
		if next[all] {
			return pots
		}
		reached = next
	}
	return len(s.Eaters)
}

// addDecided puts a decided cell in: its first dish stands for what all of them bring.
func (b *board) addDecided(k slotKey, cell *trip.Cell, p *party) {
	servings := b.decided(k, cell, p)
	for i := range cell.Dishes {
		at := b.at[entryKey{cell.Dishes[i].Recipe, k.meal}]
		s := menufill.Slot{Day: k.day - b.first + 1, Kind: kindOf(k.meal, false), Pots: 1, Fixed: []int{at}, Offers: b.offersOf(), Eaters: make([]int, len(b.classes))}
		s.Offers[at].CookMinutes = b.minutesOf(k, &cell.Dishes[i], p)
		if i == 0 {
			s.Offers[at].Servings = servings
			for g, members := range b.classes {
				if servings[g].Served {
					s.Eaters[g] = b.presentOf(members, k.day)
				}
			}
		}
		b.problem.Slots = append(b.problem.Slots, s)
		b.slots = append(b.slots, place{k, false, false})
	}
}

// addMinutes limits the time on a burner, but never below what it takes at least.
func (b *board) addMinutes() {
	for d := range b.days {
		limit := mostFigure
		if most := b.minutesOn(b.first + d); most > 0 {
			limit = max(most, b.quickest(d+1))
		}
		b.problem.CookMinutes = append(b.problem.CookMinutes, limit)
	}
}

// minutesOn is the time on a burner that a day has: what the settings allow, less the longer the day's walk is, half of it on the longest; 0:
// no limit.
func (b *board) minutesOn(day int) int {
	shortest, longest := 0.0, 0.0
	for i, w := range b.needs.Walks {
		hours := float64(w.Hours)
		if i == 0 || hours < shortest {
			shortest = hours
		}
		longest = max(longest, hours)
	}
	most := float64(b.trip.Settings.CookMinutes)
	if day <= len(b.needs.Walks) && longest > shortest {
		most *= 1 - (float64(b.needs.Walks[day-1].Hours)-shortest)/(longest-shortest)/2
	}
	return int(math.Ceil(most))
}

// minutesOf is the time on a burner that a decided dish takes.
func (b *board) minutesOf(k slotKey, dish *trip.Dish, p *party) int {
	_, minutes := b.effort(k, b.larder.serve(b.recipes[dish.Recipe], dish.MeantFor(p.members), dish.Accepted), true)
	return minutes
}

// quickest is time enough for what is decided and something in every open slot of a day, so that minutes never leave one empty.
func (b *board) quickest(day int) int {
	sum := 0
	for i := range b.problem.Slots {
		s := &b.problem.Slots[i]
		switch {
		case s.Day != day:
		case len(s.Fixed) > 0:
			sum += s.Offers[s.Fixed[0]].CookMinutes
		default:
			sum += quickestIn(s)
		}
	}
	return sum
}

// quickestIn is the quickest recipe that serves all, or else the quickest for each class.
func quickestIn(s *menufill.Slot) int {
	forAll, apart := mostFigure, 0
	for g, n := range s.Eaters {
		least := mostFigure
		for _, o := range s.Offers {
			if o.Servings[g].Served {
				least = min(least, o.CookMinutes)
			}
		}
		if n > 0 {
			apart += least
		}
	}
	for _, o := range s.Offers {
		if servesAll(&o, s.Eaters) {
			forAll = min(forAll, o.CookMinutes)
		}
	}
	return min(forAll, apart)
}

// families lists what should not come again too soon.
func (b *board) families() []menufill.Family {
	var list []menufill.Family
	eaters := 0
	for _, members := range b.classes {
		eaters += len(members)
	}
	add := func(days int, weight float64, entries []int) {
		open := slices.ContainsFunc(entries, func(i int) bool { return b.entries[i].open })
		if days = min(days, b.days); open && !(days == 1 && len(entries) == 1) {
			list = append(list, menufill.Family{Recipes: entries, Days: days, Burden: grams(weight * float64(eaters))})
		}
	}
	variety := b.weights.variety
	byRecipe, byStaple, byTexture, ofDay := groups{}, groups{}, groups{}, groups{}
	for i := range b.entries {
		e := &b.entries[i]
		if e.recipe == nil {
			continue
		}
		byRecipe.add(e.recipe.Name, i)
		switch {
		case e.side:
			add(b.days, eachRepeat*variety/2, []int{i})
			continue
		case e.meal == trip.Dinner && b.trip.Settings.RepeatGap > 0:
			add(b.trip.Settings.RepeatGap+1, soonAgain, []int{i})
		default:
			add(2, dayAfterDay*variety, []int{i})
		}
		add(b.days, eachRepeat*variety, []int{i})
		if e.recipe.Staple != "" {
			byStaple.add(string(e.meal)+" "+e.recipe.Staple, i)
			ofDay.add(e.recipe.Staple, i)
		}
		if e.recipe.Texture != "" {
			byTexture.add(string(e.meal)+" "+e.recipe.Texture, i)
		}
	}
	byRecipe.each(func(entries []int) { add(1, sameDayAgain, entries) })
	byStaple.each(func(entries []int) { add(2, sameStaple*variety, entries) })
	byTexture.each(func(entries []int) { add(2, sameTexture*variety, entries) })
	ofDay.each(func(entries []int) { add(1, stapleOfDay*variety, entries) })
	return list
}

// groups gathers entries by a word, in the order of first sight.
type groups struct {
	words []string
	lists map[string][]int
}

func (g *groups) add(word string, entry int) {
	if g.lists == nil {
		g.lists = map[string][]int{}
	}
	if g.lists[word] == nil {
		g.words = append(g.words, word)
	}
	g.lists[word] = append(g.lists[word], entry)
}

func (g *groups) each(f func(entries []int)) {
	for _, word := range g.words {
		f(g.lists[word])
	}
}
