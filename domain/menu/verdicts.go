package menu

import "sumpter/domain/trip"

// verdict is whether a member may be served a food.
type verdict uint8

const (
	unjudged verdict = iota
	welcome
	disliked
	forbidden // by an allergy or a diet, unknown included
)

// table answers quickly what a trip says about its foods, recipes and members.
type table struct {
	trip     *trip.Trip
	foods    map[trip.FoodID]int
	members  map[trip.MemberID]int
	recipes  map[trip.RecipeID]*trip.Recipe
	verdicts [][]verdict // [member][food], filled as they are asked
}

func newTable(t *trip.Trip) *table {
	b := &table{trip: t, foods: map[trip.FoodID]int{}, members: map[trip.MemberID]int{}, recipes: map[trip.RecipeID]*trip.Recipe{}}
	for i := range t.Foods {
		b.foods[t.Foods[i].ID] = i
	}
	for i := range t.Recipes {
		b.recipes[t.Recipes[i].ID] = &t.Recipes[i]
	}
	for i := range t.Crew {
		b.members[t.Crew[i].ID] = i
		b.verdicts = append(b.verdicts, make([]verdict, len(t.Foods)))
	}
	return b
}

func (b *table) member(id trip.MemberID) *trip.Member { return &b.trip.Crew[b.members[id]] }

// food finds a food, nil if the trip does not have it.
func (b *table) food(id trip.FoodID) *trip.Food {
	if i, ok := b.foods[id]; ok {
		return &b.trip.Foods[i]
	}
	return nil
}

// judge decides whether the member may be served the food. No food at all is
// welcome: a swap may leave an ingredient out. A food the trip does not know
// is forbidden.
func (b *table) judge(member trip.MemberID, food trip.FoodID) verdict {
	if food == 0 {
		return welcome
	}
	f, ok := b.foods[food]
	if !ok {
		return forbidden
	}
	known := &b.verdicts[b.members[member]][f]
	if *known == unjudged {
		*known = welcome
		for _, objection := range b.member(member).Objections(&b.trip.Foods[f]) {
			if objection.Dangerous() {
				*known = forbidden
				break
			}
			*known = disliked
		}
	}
	return *known
}
