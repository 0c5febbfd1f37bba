package fill

import (
	"math"
	"slices"

	"sumpter/domain/cooking"
	"sumpter/domain/science/foodenergy"
	"sumpter/domain/solve/menufill"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// helping is what one member gets in a slot, sized as its share of the day asks.
type helping struct {
	content
	scale       float64
	least, most float64 // kcal
	burden      float64 // grams
}

// help sizes a plate for a member. At the side it keeps its own size.
func (b *board) help(k slotKey, member trip.MemberID, p *plate, side bool) helping {
	h := helping{scale: p.clamp(1)}
	target := b.mealKcal(member, k.day, k.meal)
	if !side {
		h.scale = p.sized(wished([]*plate{p}, target))
	}
	h.measure(p)
	if side {
		h.grams = max(0, h.grams-h.kcal/otherKcalPerGram)
		h.cost = max(0, h.cost-h.kcal*usualCost)
		return h
	}
	h.burden += b.smallMeal(k, member, h.kcal, h.protein)
	h.makeUp(target - h.kcal)
	return h
}

func (h *helping) measure(p *plate) {
	h.content = p.at(h.scale)
	least, most := p.at(p.least), p.at(p.most)
	h.least, h.most = least.kcal, most.kcal
}

// makeUp counts the other food that makes up for energy that is missing; what is too much spares some.
func (h *helping) makeUp(kcal float64) {
	h.grams = max(0, h.grams+kcal/otherKcalPerGram)
	h.cost = max(0, h.cost+kcal*usualCost)
}

// smallMeal is what speaks against a dinner without what a main meal should hold.
func (b *board) smallMeal(k slotKey, member trip.MemberID, kcal, protein float64) float64 {
	if k.meal != trip.Dinner {
		return 0
	}
	asked := min(foodenergy.MainMealKcal, float64(b.need(member, k.day).TargetKcal))
	return smallMeal * (max(0, 1-protein/foodenergy.MainMealProteinG) + max(0, 1-kcal/max(1, asked)))
}

// nothing is a serving for a class that gets none.
func (b *board) nothing() menufill.Serving {
	return menufill.Serving{Amounts: make([]int, len(wants))}
}

// serving is the mean of what the members of a class get, the scarcest of them where it must be enough for all.
func (b *board) serving(k slotKey, members []trip.MemberID, of func(trip.MemberID) (helping, bool)) (menufill.Serving, int) {
	out, n := b.nothing(), 0
	var sum content
	burden, reach, floor, protein := 0.0, math.Inf(1), 0.0, math.Inf(1)
	var part [4]float64 // fibre, sodium, fat, fat
	for _, member := range members {
		h, ok := of(member)
		if !ok {
			continue
		}
		n++
		sum.add(&h.content, 1)
		burden += h.burden
		need := b.need(member, k.day)
		reach = min(reach, thousandths(h.most, float64(need.TargetKcal)))
		floor = max(floor, thousandths(h.least, float64(need.TargetKcal)))
		protein = min(protein, thousandths(h.protein, need.ProteinGrams))
		part[0] += thousandths(h.fibre, need.FibreGrams)
		part[1] += thousandths(h.sodium, need.SodiumLowMilligrams)
		part[2] += thousandths(h.fat, need.FatLowGrams)
		part[3] -= thousandths(h.fat, need.FatHighGrams)
	}
	if n == 0 {
		return out, 0
	}
	mean := 1 / float64(n)
	out.Served = true
	out.Kcal, out.ProteinDg = whole(sum.kcal*mean), whole(10*sum.protein*mean)
	out.MassDg, out.CostCents = whole(10*sum.grams*mean), whole(sum.cost*mean)
	out.Burden = min(mostFigure, grams(burden*mean))
	out.Amounts = []int{whole(reach), whole(-floor), whole(protein)}
	for _, sum := range part {
		out.Amounts = append(out.Amounts, whole(sum*mean))
	}
	return out, n
}

// mostFigure is what the solver takes.
const mostFigure = 100_000

func whole(x float64) int { return int(math.Round(min(mostFigure, max(-mostFigure, x)))) }

// thousandths of a target; no target is always met.
func thousandths(value, target float64) float64 {
	if target <= 0 {
		return 1000
	}
	return 1000 * value / target
}

// offer is an entry as it would be in an open slot.
func (b *board) offer(k slotKey, e *entry, p *party) (menufill.Offer, bool) {
	o := menufill.Offer{}
	if e.recipe == nil {
		for range b.classes {
			v := b.nothing()
			v.Served = true
			o.Servings = append(o.Servings, v)
		}
		return o, true
	}
	if b.trip.Days[k.day-1].NoFlame && e.recipe.NeedsFlame() {
		return o, false
	}
	if s := b.serve(p, e.recipe); len(s.plates) == 0 || !b.safeFor(k, e.recipe, p) {
		return o, false
	}
	return b.offerOf(k, e, p), true
}

// safeFor tells whether a recipe is safe in a slot for the party and for each class of it alone: a swap that one member takes for the
// whole pot is not made where the dish turns out to be for others.
func (b *board) safeFor(k slotKey, recipe *trip.Recipe, p *party) bool {
	if len(b.unsafe(k, b.serve(p, recipe))) > 0 {
		return false
	}
	if !recipe.SwapsForAll() {
		return true
	}
	for _, members := range b.classes {
		var there []trip.MemberID
		for _, member := range members {
			if slices.Contains(p.members, member) {
				there = append(there, member)
			}
		}
		if len(there) > 0 && len(b.unsafe(k, b.serve(b.partyOf(there), recipe))) > 0 {
			return false
		}
	}
	return true
}

// safeAs tells whether a dish is safe for those it turned out to be for.
func (b *board) safeAs(k slotKey, dish *trip.Dish) bool {
	members := dish.MeantFor(b.partyOn(k.day).members)
	return len(b.unsafe(k, b.serve(b.partyOf(members), b.recipes[dish.Recipe]))) == 0
}

// offerOf is a recipe as it would be in an open slot, safe or not.
func (b *board) offerOf(k slotKey, e *entry, p *party) menufill.Offer {
	o, s := menufill.Offer{}, b.serve(p, e.recipe)
	keeping, all := b.keeping(k, s), true
	for _, members := range b.classes {
		v, n := b.serving(k, members, func(m trip.MemberID) (helping, bool) {
			plate := s.plates[m]
			if plate == nil {
				return helping{}, false
			}
			h := b.help(k, m, plate, e.side)
			h.burden += keeping
			if s.dislikes[m] {
				h.burden += disliked
			}
			if e.side {
				h.burden += oneMoreDish
			}
			return h, true
		})
		all = all && n == b.presentOf(members, k.day)
		o.Servings = append(o.Servings, v)
	}
	o.Burden, o.CookMinutes = b.effort(k, s, all)
	return o
}

// presentOf counts the members who are there on a day.
func (b *board) presentOf(members []trip.MemberID, day int) int {
	n := 0
	for _, m := range members {
		if b.trip.Crew[b.crew[m]].Present(day) {
			n++
		}
	}
	return n
}

// unsafe lists the foods of a dish that would not be safe in the slot, or are not known to be.
func (b *board) unsafe(k slotKey, s *served) []trip.FoodID {
	var list []trip.FoodID
	for _, food := range s.foods {
		if !b.fateOf(k.day, k.meal, food, s.soak()).safe {
			list = append(list, food)
		}
	}
	return list
}

// keeping is what speaks against the foods of a dish on their way to the slot, in grams for each eater.
func (b *board) keeping(k slotKey, s *served) float64 {
	burden, aged := 0.0, 0.0
	for _, food := range s.foods {
		fate := b.fateOf(k.day, k.meal, food, s.soak())
		if fate.melts {
			burden = melting
		}
		aged = max(aged, fate.used)
	}
	return burden + aging*min(1, aged)
}

// effort is what cooking a dish asks of the group besides its food: pots beyond one, fuel, minutes on a burner, water carried to a dry camp.
func (b *board) effort(k slotKey, s *served, all bool) (burden, minutes int) {
	var pots []cooking.Pot
	for i := range s.dish.Batches {
		batch := &s.dish.Batches[i]
		pot := cooking.Pot{}
		for _, serving := range batch.Servings {
			p := s.plates[serving.Member]
			pot.Scale += p.clamp(wished([]*plate{p}, b.mealKcal(serving.Member, k.day, k.meal)))
		}
		pot.Dry = dry(s.recipe, batch).Scale(pot.Scale)
		pots = append(pots, pot)
	}
	asked := b.kitchen.Effort(k.day, k.meal, s.recipe, pots)
	more, each := len(pots), coldPot
	if all {
		more--
	}
	if asked.Minutes > 0 {
		each = hotPot
	}
	weight := float64(more)*each + secondRound*float64(max(0, asked.Rounds-len(pots))) + asked.Fuel.Grams() + burnerSpare*float64(asked.Minutes)
	if b.atDryCamp(k) {
		for _, pot := range pots {
			weight += litreCarry * (s.recipe.Water + s.recipe.PourOff).Litres() * pot.Scale
		}
	}
	return grams(weight), int(math.Ceil(float64(asked.Minutes)))
}

// atDryCamp tells whether the water of a meal is carried to the camp.
func (b *board) atDryCamp(k slotKey) bool {
	dry := func(day int) bool { return b.trip.Days[day-1].DryCamp && !b.trip.Days[day-1].SnowWater }
	return k.meal == trip.Dinner && dry(k.day) || k.meal == trip.Breakfast && k.day > 1 && dry(k.day-1)
}

// soak is how long the foods lie in cold water before they are eaten.
func (s *served) soak() units.Minutes {
	if s.recipe.ColdOK && s.recipe.Water > 0 {
		return s.recipe.Soak
	}
	return 0
}

// decided is what a decided cell brings each class, all its dishes together.
func (b *board) decided(k slotKey, cell *trip.Cell, p *party) []menufill.Serving {
	plates := map[trip.MemberID][]*plate{}
	for i := range cell.Dishes {
		dish := &cell.Dishes[i]
		s := b.larder.serve(b.recipes[dish.Recipe], dish.MeantFor(p.members), dish.Accepted)
		for member, plate := range s.plates {
			plates[member] = append(plates[member], plate)
		}
	}
	var list []menufill.Serving
	for _, members := range b.classes {
		v, _ := b.serving(k, members, func(m trip.MemberID) (helping, bool) {
			if len(plates[m]) == 0 {
				return helping{}, false
			}
			return b.together(k, m, plates[m]), true
		})
		list = append(list, v)
	}
	return list
}

// together sizes the dishes of a meal as one.
func (b *board) together(k slotKey, member trip.MemberID, plates []*plate) helping {
	var sum helping
	scale := wished(plates, b.mealKcal(member, k.day, k.meal))
	for _, p := range plates {
		one := helping{scale: p.sized(scale)}
		one.measure(p)
		sum.content.add(&one.content, 1)
		sum.least, sum.most = sum.least+one.least, sum.most+one.most
	}
	return sum
}
