// Package menufill chooses what is cooked in every slot of a trip: the lightest, cheapest or most varied menu that gives
// each diet class its energy and protein every day. It knows no food: recipes are rows of integers.
//
// With x(s,r) = recipe r is cooked in slot s and y(s,g,r) = class g eats r there, all of them 0 or 1:
//
//	sum_r y(s,g,r) = 1     y <= x     1 <= sum_r x(s,r) <= pots of s      only recipes of the slot's kind, fresh, served to g
//	energy minimum <= sum over the day of kcal y <= energy maximum        each class and day
//	sum over the day of protein y >= protein minimum                      each class and day
//	sum over the trip of kcal y >= energy of the trip                     each class
//	sum over the day of cook minutes x <= cook minutes of the day
//	sum over the trip of x(s,r) <= repeats of r;  gap days lie between two days with r;  r is cooked at most once in a day
//	minimise sum of eaters * (mass weight * mass + cost weight * cost + burden) y + sum of burden x
//	         + repeat weight * (uses of r after its first)
//	         + burden of a want * eaters * what they miss of it in a day
//	         + burden of a family * (uses of its recipes after the first, in every run of its days)
//
// Wants and families are rules that give way: each has the price of breaking it.
//
// Start with Solve. It prices the rules that tie slots together (Lagrangean relaxation), enumerates for each day the menus that
// the prices leave in the running, assembles the trip from them by large-neighbourhood search, cools it slot by slot (simulated
// annealing) through plans that break rules at a charge, and reports a lower bound that was computed apart from the search, so the gap
// is always known. Same problem, same options: same plan.
//
// Literature, from memory: Stigler 1945 and Dantzig (diet problem), Balintfy 1964 (menus with variety), Held and Karp 1971
// (Lagrangean bounds by subgradient), Shaw 1998 (large-neighbourhood search), Kirkpatrick, Gelatt and Vecchi 1983 (annealing).
package menufill

// Problem is one cook group's trip. Days are numbered from 1.
type Problem struct {
	Days    int // 1 to 62
	Slots   []Slot
	Classes []Class
	Recipes []Recipe
	// CookMinutes holds for each day (index day-1) the minutes that all recipes cooked that day may take together.
	CookMinutes []int
	Weights     Weights
	Wants       []Want
	Families    []Family
}

// Want is an amount that every eater should get each day, as far as it is worth its burden. Amounts may be negative, so that a want can also
// keep something low.
type Want struct {
	Name   string
	Burden int // objective for each unit that an eater misses
}

// Family is recipes that are alike, so that they should not follow each other closely.
type Family struct {
	Recipes []int
	Days    int // length of the runs of days that are looked at, at least 1
	Burden  int // objective for each use after the first, in every run of so many days
}

// Slot is one meal of one day.
type Slot struct {
	Day  int // 1 to Days
	Kind int // only recipes of this kind may fill the slot
	Pots int // most recipes cooked at once, at least 1
	// Eaters holds the people of each class who eat here; a class with 0 gets nothing.
	Eaters []int
	// Fixed, when not empty, names exactly the recipes cooked here: the leader's wish. Pots and the kind are then not
	// asked; diet, freshness and all sums still are.
	Fixed []int
	// Excluded names recipes that must not be cooked in this slot.
	Excluded []int
	// Offers, when not empty, holds for each recipe what it is in this very slot, in place of its own figures.
	Offers []Offer
}

// Offer is a recipe as it would be in one slot.
type Offer struct {
	CookMinutes int
	Burden      int // objective for cooking it here, whoever eats
	Servings    []Serving
}

// Class is a set of people who may eat the same recipes and need about the same.
type Class struct {
	Name string
	// EnergyMin and EnergyMax bound the kcal an eater gets on each day (index day-1). Days without a slot are not asked.
	EnergyMin, EnergyMax []int
	// EnergyTotal is the least kcal an eater gets over all slots of the trip; 0 asks nothing.
	EnergyTotal int
	// ProteinMin is the least protein of each day (index day-1), in tenths of grams.
	ProteinMin []int
	// Wants holds for each want what an eater should get at least on each day (index day-1).
	Wants [][]int
}

// Recipe is one dish as it would be served to each class.
type Recipe struct {
	Name        string
	Kinds       []int // kinds of slot it may fill
	CookMinutes int
	LastDay     int // last day it is still fresh; 0 keeps for the whole trip
	Repeats     int // most slots of the trip that may have it
	GapDays     int // days that must lie between two days with it; 0 allows day after day
	// Servings holds one serving for each class.
	Servings []Serving
}

// Serving is what one eater of a class gets. Not Served means the class cannot eat the recipe at all.
type Serving struct {
	Served    bool
	Kcal      int
	ProteinDg int // tenths of grams
	MassDg    int // tenths of grams
	CostCents int
	Burden    int   // objective for each eater, besides mass and cost
	Amounts   []int // of each want
}

// Weights join the aims into one integer objective. All are 0 or more, and at least one of Mass and Cost is not 0.
type Weights struct {
	Mass   int // for each tenth of a gram of food
	Cost   int // for each cent
	Repeat int // for each slot that has a recipe again after its first
}

// Options limit the work of Solve. The zero value is the usual.
type Options struct {
	// Steps is the work limit, a count that does not depend on the machine (some 55 million a second in 2026);
	// 0 means DefaultSteps.
	Steps int64
	// Seed starts the random choices of the search.
	Seed uint64
	// Progress, if set, hears now and then how far the work is.
	Progress func(Progress)
}

// Progress tells how far a run is.
type Progress struct {
	Steps, Limit int64
	Found        bool  // there is a plan that keeps every rule
	Value, Bound int64 // of the best plan so far, and what no plan can be under
}

// DefaultSteps is enough for a trip of a week.
const DefaultSteps = 50_000_000

// Plan is a menu that keeps every rule.
type Plan struct {
	// Cells holds for each slot and class the recipe eaten, -1 where the class has no eaters.
	Cells [][]int
	// Cooked holds for each slot the recipes cooked, ascending.
	Cooked [][]int
	// MassDg and CostCents are of all eaters over the trip.
	MassDg, CostCents int64
	// Value is the objective of the plan; no plan can have less than Bound.
	Value, Bound int64
	// Proven tells that Value is the least possible.
	Proven bool
	// Steps is the work done; Stopped tells that the context ended it early.
	Steps   int64
	Stopped bool
}

// Gap is how far above the best possible the plan may be, as a share: 0.003 is 0.3 %.
func (p Plan) Gap() float64 {
	if p.Value <= p.Bound || p.Bound <= 0 {
		return 0
	}
	return float64(p.Value-p.Bound) / float64(p.Bound)
}
