// Package reserve works out the emergency reserve: food beyond the plan, or
// kept to the last, for a day lost to weather, an injury or the wrong valley.
// Each member carries their own, so that nobody is without it when the party
// is parted (common practice, no source).
//
// A reserve is rotated so that it is never old: what comes home on top of all
// meals must keep beyond the last day, and what is eaten at last is the snacks
// of the last days of each leg, which the next box makes good.
//
// Start with New; it wants a canonical trip.
package reserve

import (
	"cmp"
	"math"
	"slices"

	"sumpter/domain/findings"
	"sumpter/domain/menu"
	"sumpter/domain/needs"
	"sumpter/domain/portions"
	"sumpter/domain/spoilage"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Planner chooses what each member's reserve is made of, once for a trip, and
// sizes it for any needs.
type Planner struct {
	trip    *trip.Trip
	foods   map[trip.FoodID]*trip.Food
	outlook *spoilage.Outlook
	choice  map[trip.MemberID]serving
	seen    []findings.Finding
}

// serving is a standard portion of a recipe as one member is served it.
type serving struct {
	recipe *trip.Recipe
	parts  []menu.Part
	kcal   float64
	grams  float64
}

// New chooses the recipes of a trip's reserve: the one of the settings for
// those who may eat it, for all others the densest that needs neither flame
// nor water, keeps to the end and suits most of them. A trip that asks for no
// reserve has none.
func New(t *trip.Trip) *Planner {
	p := &Planner{trip: t, foods: map[trip.FoodID]*trip.Food{}, choice: map[trip.MemberID]serving{}}
	if t.Settings.ReserveDays <= 0 {
		return p
	}
	p.outlook = spoilage.NewOutlook(t)
	for i := range t.Foods {
		p.foods[t.Foods[i].ID] = &t.Foods[i]
	}
	p.choose(menu.NewTaster(t))
	return p
}

// choose gives each member a recipe, as long as one is left that somebody may eat.
func (p *Planner) choose(taster *menu.Taster) {
	left := p.members()
	if wanted := p.trip.Recipe(p.trip.Settings.ReserveRecipe); wanted != nil {
		given := p.served(taster, wanted, left)
		p.lookAtWanted(wanted, given)
		left = p.give(left, given)
	}
	for len(left) > 0 {
		var best map[trip.MemberID]serving
		var least float64 // grams for a kcal
		for i := range p.trip.Recipes {
			recipe := &p.trip.Recipes[i]
			if !p.suits(recipe) {
				continue
			}
			given := p.served(taster, recipe, left)
			p.dropPerishing(given)
			if density := weight(given); len(given) > len(best) || len(given) == len(best) && len(given) > 0 && density < least {
				best, least = given, density
			}
		}
		if len(best) == 0 {
			break
		}
		left = p.give(left, best)
	}
	p.lookAtNone(left)
}

func (p *Planner) members() []trip.MemberID {
	var list []trip.MemberID
	for i := range p.trip.Crew {
		if !p.trip.Crew[i].Standby {
			list = append(list, p.trip.Crew[i].ID)
		}
	}
	return list
}

// give takes a choice and tells who is still without one.
func (p *Planner) give(left []trip.MemberID, given map[trip.MemberID]serving) []trip.MemberID {
	var rest []trip.MemberID
	for _, member := range left {
		if one, ok := given[member]; ok {
			p.choice[member] = one
		} else {
			rest = append(rest, member)
		}
	}
	return rest
}

// suits tells whether a recipe can be eaten from the hand where nothing works any more.
func (p *Planner) suits(recipe *trip.Recipe) bool {
	dry := !recipe.NeedsFlame() && recipe.Water == 0 && recipe.PourOff == 0
	return dry && (slices.Contains(recipe.Meals, trip.Snack) || slices.Contains(recipe.Meals, trip.Lunch))
}

// served lists how those turn out who may eat a recipe.
func (p *Planner) served(taster *menu.Taster, recipe *trip.Recipe, members []trip.MemberID) map[trip.MemberID]serving {
	dish, _, _ := taster.Serve(recipe, members, nil)
	given := map[trip.MemberID]serving{}
	for _, batch := range dish.Batches {
		for _, one := range batch.Servings {
			s := serving{recipe: recipe, parts: one.Parts}
			for _, part := range one.Parts {
				mass := menu.AmountOf(recipe, part)
				s.kcal += float64(p.foods[part.Food].Kcal(mass))
				s.grams += mass.Grams()
			}
			if s.kcal > 0 {
				given[one.Member] = s
			}
		}
	}
	return given
}

// dropPerishing takes those out whose serving would not keep to their last day.
func (p *Planner) dropPerishing(given map[trip.MemberID]serving) {
	for member, one := range given {
		if food, _ := p.worst(p.trip.Member(member), one); food != nil {
			delete(given, member)
		}
	}
}

// worst finds the first food of a serving that is not safe on a member's last
// day, or past its shelf life by then; nil if all keep.
func (p *Planner) worst(member *trip.Member, one serving) (*trip.Food, spoilage.Verdict) {
	_, last := days(p.trip, member)
	for _, part := range one.parts {
		fate, known := p.outlook.At(last, trip.Snack, part.Food, 0)
		switch {
		case !known:
			return p.foods[part.Food], spoilage.NotKnown
		case fate.Verdict != spoilage.Safe:
			return p.foods[part.Food], fate.Verdict
		case fate.QualityKnown && fate.QualityUsed > 1 || fate.Melts:
			return p.foods[part.Food], spoilage.Safe
		}
	}
	return nil, spoilage.Safe
}

// weight is the mean of grams for a kcal; independent of the order of the map, since whole portions are added up first.
func weight(given map[trip.MemberID]serving) float64 {
	members := make([]trip.MemberID, 0, len(given))
	for member := range given {
		members = append(members, member)
	}
	slices.Sort(members)
	var grams, kcal float64
	for _, member := range members {
		grams, kcal = grams+given[member].grams, kcal+given[member].kcal
	}
	return grams / max(1, kcal)
}

// days gives the first and the last day a member is there.
func days(t *trip.Trip, member *trip.Member) (first, last int) {
	first, last = max(1, member.FirstDay), member.LastDay
	if last == 0 {
		last = len(t.Days)
	}
	return first, last
}

// Size gives each member's reserve for the needs: so many days of what they
// need on the mean of their days. Portions tell which snacks may be kept back.
func (p *Planner) Size(n needs.Result, sized portions.Result, legs []trip.Leg) []portions.Reserve {
	if p.trip.Settings.ReserveDays <= 0 {
		return nil
	}
	k := keeping{}
	if p.trip.Settings.ReserveEnd == trip.ReserveEatenLast {
		k = p.snacks(sized)
	}
	var list []portions.Reserve
	for i := range p.trip.Crew {
		asked := p.trip.Settings.ReserveDays * meanNeed(n, i)
		if asked <= 0 {
			continue
		}
		r := portions.Reserve{Member: p.trip.Crew[i].ID, Kcal: units.Kcal(asked)}
		r.FirstDay, r.LastDay = days(p.trip, &p.trip.Crew[i])
		covered := 0.0
		if p.trip.Settings.ReserveEnd == trip.ReserveEatenLast {
			r.Kept, covered = k.keep(&r, legs)
		}
		if one, ok := p.choice[r.Member]; ok {
			p.pack(&r, one, asked-covered)
		}
		list = append(list, r)
	}
	return list
}

// meanNeed is what a member needs on the mean of the days they are there.
func meanNeed(n needs.Result, member int) float64 {
	sum, count := 0.0, 0
	for _, day := range n.Members[member].Days {
		if day.Present {
			sum += float64(day.Kcal)
			count++
		}
	}
	return sum / float64(max(1, count))
}

// littleKcal is too little to pack for.
const littleKcal = 50

// pack adds what brings the energy, rounded up to what can be weighed or to whole pieces.
func (p *Planner) pack(r *portions.Reserve, one serving, kcal float64) {
	if kcal < littleKcal {
		return
	}
	r.Recipe = one.recipe.ID
	for _, part := range one.parts {
		food := p.foods[part.Food]
		step := max(units.Milligram, p.trip.Settings.ScaleStep, food.PieceStep())
		mass := menu.AmountOf(one.recipe, part).Scale(kcal / one.kcal)
		mass = units.Mass(math.Ceil(float64(mass)/float64(step))) * step
		r.Packed = addTo(r.Packed, portions.Amount{Food: part.Food, Place: trip.AtBowl, Mass: mass})
		r.PackedKcal += food.Kcal(mass)
	}
}

func addTo(list []portions.Amount, more portions.Amount) []portions.Amount {
	if i := slices.IndexFunc(list, func(a portions.Amount) bool { return a.Food == more.Food }); i >= 0 {
		list[i].Mass += more.Mass
		return list
	}
	return append(list, more)
}

// keeping is the energy of the snacks that keep, by member and day.
type keeping map[trip.MemberID]map[int]float64

// snacks adds up the snacks of the plan whose foods all keep without cooling.
func (p *Planner) snacks(sized portions.Result) keeping {
	k := keeping{}
	for i := range sized.Batches {
		b := &sized.Batches[i]
		if b.Meal != trip.Snack || slices.ContainsFunc(b.Totals, func(a portions.Amount) bool { return p.foods[a.Food].Storage.Control() != trip.TCSNo }) {
			continue
		}
		for _, portion := range b.Portions {
			if k[portion.Member] == nil {
				k[portion.Member] = map[int]float64{}
			}
			k[portion.Member][b.Day] += float64(portion.Kcal)
		}
	}
	return k
}

// keep holds the snacks of the last days of each leg back, as many as the
// reserve asks for, but never of more than half the days with snacks: the rest
// is packed on top. What every leg has counts as covered.
func (k keeping) keep(r *portions.Reserve, legs []trip.Leg) (kept []portions.KeptSnacks, covered float64) {
	covered = float64(r.Kcal)
	for n, leg := range legs {
		first, last := max(leg.FirstDay, r.FirstDay), min(leg.LastDay, r.LastDay)
		if first > last {
			continue
		}
		var with []int // days with snacks, the last first
		for day := last; day >= first; day-- {
			if k[r.Member][day] > 0 {
				with = append(with, day)
			}
		}
		one := portions.KeptSnacks{Leg: n, LastDay: last}
		for _, day := range with[:(len(with)+1)/2] {
			if one.Kcal >= r.Kcal {
				break
			}
			one.FromDay, one.Kcal = day, one.Kcal+units.Kcal(k[r.Member][day])
		}
		if one.FromDay > 0 {
			kept = append(kept, one)
		}
		covered = min(covered, float64(one.Kcal))
	}
	slices.SortFunc(kept, func(a, b portions.KeptSnacks) int { return cmp.Compare(a.Leg, b.Leg) })
	return kept, covered
}
