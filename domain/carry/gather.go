package carry

import (
	"math/big"
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/prose"
	"sumpter/domain/solve/fairsplit"
	"sumpter/domain/trip"
)

// gather moves and swaps pieces so that the bags of a dish lie in few packs,
// one eater's dishes in the eater's own, and food not beside liquid fuel. It is
// a tie-break of small weight: no pack becomes heavier than the heaviest is on
// that day, nor more than NearlyFair of what the fair split gave it; no limit is
// broken, and nothing more changes hands.
func (c *calculation) gather(r run, pieces []piece, problem fairsplit.Problem, was []int, solved fairsplit.Result) fairsplit.Result {
	if !solved.Feasible || slices.Contains(solved.Carrier, fairsplit.Nobody) {
		return solved
	}
	g := newGathering(c, r, pieces, problem, was, solved)
	for range gatherPasses {
		if !g.pass() {
			break
		}
	}
	if !g.moved {
		return solved
	}
	measured, err := fairsplit.Evaluate(problem, g.seat)
	if err != nil || !measured.Feasible {
		return solved
	}
	solved.Carrier, solved.R1, solved.S, solved.Days = g.seat, measured.R1, measured.S, measured.Days
	return solved
}

const gatherPasses = 3

// gathering is a split while it is tidied.
type gathering struct {
	problem fairsplit.Problem
	pieces  []piece
	allowed [][]int // seats, by piece
	was     []int   // seats before, Nobody for what is new; nil: all is new
	seat    []int   // by piece
	moved   bool

	load, most [][]int64 // by seat and day
	bulk       []int64   // by seat
	inClass    []map[string]int64
	classMost  map[string]int64

	dish   []int         // place of the dish a bag is for, -1 for none
	eater  []int         // seat of the only eater, Nobody for none
	parts  []map[int]int // bags of a dish, by seat
	liquid []int         // containers of liquid fuel, by seat
	food   []int         // bags of shared food, by seat
}

func newGathering(c *calculation, r run, pieces []piece, problem fairsplit.Problem, was []int, solved fairsplit.Result) *gathering {
	n := len(problem.Crew)
	g := &gathering{problem: problem, pieces: pieces, was: was, seat: slices.Clone(solved.Carrier), classMost: map[string]int64{},
		bulk: make([]int64, n), liquid: make([]int, n), food: make([]int, n), inClass: make([]map[string]int64, n)}
	for i, member := range problem.Crew {
		g.inClass[i] = map[string]int64{}
		load, most := make([]int64, problem.Days), make([]int64, problem.Days)
		for d := range load {
			load[d] = member.BaseGrams
			most[d] = min(floorTimes(solved.Days[d].Largest, member.Strength), int64(float64(solved.Days[d].Grams[i])*NearlyFair))
		}
		most[0] = min(most[0], member.MaxGrams)
		g.load, g.most = append(g.load, load), append(g.most, most)
	}
	dishes := map[string]int{}
	for j := range pieces {
		allowed := problem.Items[j].Allowed
		dish, eater := -1, fairsplit.Nobody
		if bag := pieces[j].bag; bag != nil {
			if bag.Kind == bags.MealBag && len(bag.Uses) == 1 {
				key := bag.Uses[0].Dish(bag.Group)
				if _, known := dishes[key]; !known {
					dishes[key] = len(g.parts)
					g.parts = append(g.parts, map[int]int{})
				}
				dish = dishes[key]
			}
			if seat := c.seatOf(r, bag.OnlyEater()); slices.Contains(allowed, seat) {
				eater = seat
			}
		}
		g.dish, g.eater, g.allowed = append(g.dish, dish), append(g.eater, eater), append(g.allowed, allowed)
		g.put(j, g.seat[j], 1)
	}
	for _, class := range problem.Classes {
		total := int64(0)
		for j := range problem.Items {
			if problem.Items[j].Class == class.Name {
				total += problem.Items[j].Energy
			}
		}
		g.classMost[class.Name] = total * class.Share.Num / class.Share.Den
	}
	return g
}

func floorTimes(burden *big.Rat, strength int64) int64 {
	product := new(big.Rat).Mul(burden, big.NewRat(strength, 1))
	return new(big.Int).Quo(product.Num(), product.Denom()).Int64()
}

// put lays a piece into a pack, or takes it out with sign -1.
func (g *gathering) put(j, seat int, sign int64) {
	item := &g.problem.Items[j]
	for d := range g.load[seat] {
		g.load[seat][d] += sign * stepsOn(item, d)
	}
	g.bulk[seat] += sign * item.VolumeMl
	if item.Class != "" {
		g.inClass[seat][item.Class] += sign * item.Energy
	}
	if g.dish[j] >= 0 {
		g.parts[g.dish[j]][seat] += int(sign)
	}
	if g.pieces[j].liquid {
		g.liquid[seat] += int(sign)
	}
	if g.isSharedFood(j) {
		g.food[seat] += int(sign)
	}
}

func (g *gathering) isSharedFood(j int) bool {
	return g.pieces[j].bag != nil && g.pieces[j].bag.Member == 0
}

// stepsOn is what an item weighs on a day from 0.
func stepsOn(item *fairsplit.Item, d int) int64 {
	switch {
	case d >= item.GoneAfter:
		return item.ResidualGrams
	case item.Mornings != nil:
		return item.Mornings[d]
	default:
		return item.MassGrams
	}
}

// fits tells whether a pack is within everything it must be.
func (g *gathering) fits(seat int) bool {
	for d, load := range g.load[seat] {
		if load > g.most[seat][d] {
			return false
		}
	}
	if g.bulk[seat] > g.problem.Crew[seat].VolumeMl {
		return false
	}
	for class, energy := range g.inClass[seat] {
		if most, limited := g.classMost[class]; limited && energy > most {
			return false
		}
	}
	return true
}

// shift moves a piece and tells by how much that makes the packs tidier.
func (g *gathering) shift(j, to int) int {
	from := g.seat[j]
	before := g.mess(j, from) + g.mess(j, to)
	g.put(j, from, -1)
	g.put(j, to, 1)
	g.seat[j] = to
	return before - g.mess(j, from) - g.mess(j, to)
}

// mess counts what a piece bears on in one pack: that its dish is begun there,
// that one eater's dish is not with the eater, food bags beside liquid fuel.
func (g *gathering) mess(j, seat int) int {
	mess := 0
	if dish := g.dish[j]; dish >= 0 && g.parts[dish][seat] > 0 {
		mess++
	}
	if g.eater[j] >= 0 && g.seat[j] == seat && g.eater[j] != seat {
		mess++
	}
	if (g.pieces[j].liquid || g.isSharedFood(j)) && g.liquid[seat] > 0 {
		mess += g.food[seat]
	}
	return mess
}

// mayGo tells whether a piece may go into a pack without one more change of
// hands.
func (g *gathering) mayGo(j, to int) bool {
	return slices.Contains(g.allowed[j], to) && (g.was == nil || g.was[j] < 0 || g.was[j] == to)
}

// pass tries each piece that is not where it is best; it tells whether one
// moved.
func (g *gathering) pass() bool {
	packs := make([][]int, len(g.load))
	for j, seat := range g.seat {
		packs[seat] = append(packs[seat], j)
	}
	moved := false
	for j := range g.pieces {
		for _, to := range g.better(j) {
			if g.try(j, to, packs) {
				moved, g.moved = true, true
				break
			}
		}
	}
	return moved
}

// better lists the packs in which a piece would lie better, by seat.
func (g *gathering) better(j int) []int {
	from := g.seat[j]
	var list []int
	for _, to := range g.allowed[j] {
		if to == from || !g.mayGo(j, to) {
			continue
		}
		home := g.eater[j] == to
		dish := g.dish[j] >= 0 && g.parts[g.dish[j]][to] > 0
		apart := g.isSharedFood(j) && g.liquid[from] > 0 && g.liquid[to] == 0
		if home || dish || apart {
			list = append(list, to)
		}
	}
	return list
}

// try moves a piece, alone or against one of the other pack, if that is tidier
// and fits.
func (g *gathering) try(j, to int, packs [][]int) bool {
	from := g.seat[j]
	gain := g.shift(j, to)
	if gain > 0 && g.fits(to) {
		return true
	}
	for _, other := range packs[to] {
		if g.seat[other] != to || other == j || !g.mayGo(other, from) {
			continue
		}
		back := g.shift(other, from)
		if gain+back > 0 && g.fits(to) && g.fits(from) {
			return true
		}
		g.shift(other, to)
	}
	g.shift(j, from)
	return false
}

// dishesOf counts the bags of each dish by their carriers.
func (c *calculation) dishesOf(r run, pieces []piece, carriers []int) map[string]map[trip.MemberID]int {
	dishes := map[string]map[trip.MemberID]int{}
	for j := range pieces {
		bag := pieces[j].bag
		if bag == nil || bag.Kind != bags.MealBag || len(bag.Uses) != 1 || carriers[j] == fairsplit.Nobody {
			continue
		}
		key := bag.Uses[0].Dish(bag.Group)
		if dishes[key] == nil {
			dishes[key] = map[trip.MemberID]int{}
		}
		dishes[key][c.Trip.Crew[r.present[carriers[j]]].ID]++
	}
	return dishes
}

// meanPacks is in how many packs the bags of a dish lie in the mean, of dishes
// in several bags; 0 where there is none.
func meanPacks(dishes map[string]map[trip.MemberID]int) float64 {
	several, packs := 0, 0
	for _, carriers := range dishes {
		count := 0
		for _, n := range carriers {
			count += n
		}
		if count > 1 {
			several, packs = several+1, packs+len(carriers)
		}
	}
	if several == 0 {
		return 0
	}
	return float64(packs) / float64(several)
}

// gathered says why a piece is where the tie-break put it.
func gathered(p *piece, member trip.MemberID, dishes map[string]map[trip.MemberID]int) prose.Text {
	if p.bag == nil || len(p.allowed) < 2 {
		return prose.Text{}
	}
	if p.bag.OnlyEater() == member {
		return prose.Say("eaten by who carries it")
	}
	if p.bag.Kind == bags.MealBag && len(p.bag.Uses) == 1 && dishes[p.bag.Uses[0].Dish(p.bag.Group)][member] > 1 {
		return prose.Say("with other bags of its dish, so that few packs are opened for a meal")
	}
	return prose.Text{}
}
