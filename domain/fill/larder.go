package fill

import (
	"cmp"
	"slices"

	"sumpter/domain/menu"
	"sumpter/domain/needs"
	"sumpter/domain/spoilage"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// larder answers quickly what foods and recipes bring, cost and bear.
type larder struct {
	trip    *trip.Trip
	needs   needs.Result
	taster  *menu.Taster
	outlook *spoilage.Outlook
	foods   map[trip.FoodID]*ware
	recipes map[trip.RecipeID]*trip.Recipe
	crew    map[trip.MemberID]int
	fates   map[fateKey]fate
}

// ware is a food with what a gram of it brings.
type ware struct {
	food *trip.Food
	per  content
}

// content is what some food brings. Costs are in a unit of which a usual kcal has usualCost, whatever the currency.
type content struct{ grams, kcal, protein, fat, fibre, sodium, cost float64 }

// add adds so many times another content.
func (c *content) add(other *content, times float64) {
	c.grams += other.grams * times
	c.kcal += other.kcal * times
	c.protein += other.protein * times
	c.fat += other.fat * times
	c.fibre += other.fibre * times
	c.sodium += other.sodium * times
	c.cost += other.cost * times
}

// usualCost is what the usual kcal costs, so that weights need not know the currency.
const usualCost = 0.25

func newLarder(t *trip.Trip, n needs.Result) *larder {
	l := &larder{
		trip: t, needs: n, taster: menu.NewTaster(t), outlook: spoilage.NewOutlook(t), foods: map[trip.FoodID]*ware{},
		recipes: map[trip.RecipeID]*trip.Recipe{}, crew: map[trip.MemberID]int{}, fates: map[fateKey]fate{},
	}
	for i := range t.Foods {
		l.foods[t.Foods[i].ID] = wareOf(&t.Foods[i])
	}
	for i := range t.Recipes {
		l.recipes[t.Recipes[i].ID] = &t.Recipes[i]
	}
	for i := range t.Crew {
		l.crew[t.Crew[i].ID] = i
	}
	l.price()
	l.useUp()
	return l
}

func wareOf(food *trip.Food) *ware {
	eaten := food.EatenGrams(units.Gram) / 100
	per := &food.Per100g
	return &ware{food, content{
		grams: 1, kcal: float64(food.Kcal(units.Gram)), protein: per.ProteinGrams.Or(0) * eaten, fat: per.FatGrams.Or(0) * eaten,
		fibre: per.FibreGrams.Or(0) * eaten, sodium: per.SodiumMilligrams.Or(0) * eaten,
	}}
}

// price sets what a gram of each food costs: its cheapest package by the gram, the part that is at home for nothing. A food without a price
// counts as much as the usual kcal.
func (l *larder) price() {
	bare := map[trip.FoodID]float64{}
	var perKcal []float64
	for i := range l.trip.Foods {
		food := &l.trip.Foods[i]
		if price, ok := food.GramPrice(); ok {
			bare[food.ID] = price
			if kcal := l.foods[food.ID].per.kcal; kcal > 0 {
				perKcal = append(perKcal, price/kcal)
			}
		}
	}
	unit := 1.0
	if slices.Sort(perKcal); len(perKcal) > 0 && perKcal[len(perKcal)/2] > 0 {
		unit = usualCost / perKcal[len(perKcal)/2]
	}
	for id, w := range l.foods {
		w.per.cost = usualCost * w.per.kcal
		if price, ok := bare[id]; ok {
			w.per.cost = price * unit
		}
	}
}

// useUp makes food that is at home free, as far as what the leader's cells leave of it lasts for another meal.
func (l *larder) useUp() {
	left, most := map[trip.FoodID]float64{}, map[trip.FoodID]float64{}
	for i := range l.trip.Foods {
		left[l.trip.Foods[i].ID] = l.trip.Foods[i].AtHome.Grams()
	}
	for i := range l.trip.Menu {
		cell := &l.trip.Menu[i]
		for _, dish := range cell.Dishes {
			for _, part := range l.recipes[dish.Recipe].Ingredients {
				left[part.Food] -= part.Amount.Grams() * float64(len(l.trip.Eaters(cell.Day, cell.Group)))
			}
		}
	}
	for i := range l.trip.Recipes {
		for _, part := range l.trip.Recipes[i].Ingredients {
			most[part.Food] = max(most[part.Food], part.Amount.Grams()*float64(len(l.trip.Crew)))
		}
	}
	for id, w := range l.foods {
		if left[id] > 0 && most[id] > 0 {
			w.per.cost *= max(0, 1-left[id]/most[id])
		}
	}
}

type fateKey struct {
	day  int
	meal trip.Meal
	food trip.FoodID
	soak units.Minutes
}

// fate is how a food bears the way to a slot.
type fate struct {
	safe, melts bool
	used        float64 // of its shelf life
}

func (l *larder) fateOf(day int, meal trip.Meal, food trip.FoodID, soak units.Minutes) fate {
	k := fateKey{day, meal, food, soak}
	known, ok := l.fates[k]
	if !ok {
		judged, there := l.outlook.At(day, meal, food, soak)
		known = fate{safe: there && judged.Verdict == spoilage.Safe, melts: judged.Melts}
		if judged.QualityKnown {
			known.used = judged.QualityUsed
		}
		l.fates[k] = known
	}
	return known
}

// need gives what a member needs on a day.
func (l *larder) need(member trip.MemberID, day int) needs.Day {
	i := l.crew[member]
	if i < len(l.needs.Members) && day <= len(l.needs.Members[i].Days) {
		return l.needs.Members[i].Days[day-1]
	}
	return needs.Day{}
}

// shareOf is the part of the day's energy from the packs that a meal should bring.
func (l *larder) shareOf(day int, meal trip.Meal) float64 {
	all := 0.0
	for _, m := range trip.Meals() {
		if l.trip.Days[day-1].Eats(m) {
			all += l.trip.Settings.MealShares.Of(m)
		}
	}
	if all <= 0 {
		return 0
	}
	return l.trip.Settings.MealShares.Of(meal) / all
}

// decidedCells finds the leader's cells.
func (l *larder) decidedCells() map[slotKey]*trip.Cell {
	cells := make(map[slotKey]*trip.Cell, len(l.trip.Menu))
	for i := range l.trip.Menu {
		cell := &l.trip.Menu[i]
		cells[slotKey{cell.Day, cell.Meal, cell.Group}] = cell
	}
	return cells
}

func (p *Proposal) sort() {
	slices.SortFunc(p.Cells, func(a, b trip.Cell) int {
		return cmp.Or(cmp.Compare(a.Day, b.Day), cmp.Compare(trip.MealOrder(a.Meal), trip.MealOrder(b.Meal)), cmp.Compare(a.Group, b.Group))
	})
	slices.SortFunc(p.Groups, func(a, b Outcome) int { return cmp.Compare(a.Group, b.Group) })
}
