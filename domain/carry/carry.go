package carry

import (
	"context"

	"sumpter/domain/bags"
	"sumpter/domain/cooking"
	"sumpter/domain/needs"
	"sumpter/domain/solve/fairsplit"
	"sumpter/domain/trip"
)

// Work is what has to be carried, and for how long each day.
type Work struct {
	Trip    *trip.Trip // canonical
	Legs    []trip.Leg
	Needs   needs.Result
	Bags    bags.Result
	Cooking cooking.Result

	// Decided are mornings on which it is decided, not reckoned, who has what.
	// A stage begins on each.
	Decided []Decided
	// Kept are the packs to stay near to, by day: of splits nearly as fair as
	// the fairest the one with the fewest hand-overs is taken, or the one the
	// leader chose.
	Kept []trip.KeptPacks
	// Gone says of bags that do not come to their end by being eaten after which
	// day nothing is left of them, not even a wrapping.
	Gone map[string]int
	// Ahead is the first day that still matters: how far from the best possible
	// a decided split is, is asked only of stages that reach it. 0: of none.
	Ahead int
	// Choices asks for the choices of each stage, which costs memory; with Kept
	// they come in any case.
	Choices bool
}

// Decided says who has which things on a morning and as long as the same
// people are there. What is not named stays with who had it; what nobody who
// is there had goes where it is fairest.
type Decided struct {
	Day      int // 1-based
	Carriers map[Thing]trip.MemberID
	Proposed bool // reckoned and not yet the leader's decision
}

// Thing names one thing that is carried.
type Thing struct {
	Kind ItemKind
	Key  string
}

// Compute gives every bag, piece of gear and container of fuel a carrier on
// every day it is carried, and reckons the loads. Where limits cannot all be
// kept the split that breaks them least comes with a finding that names the
// limit and the amount. Of splits that are as good as equally fair, the one
// nearest to keep is taken; keep may be nil.
func Compute(ctx context.Context, w Work, keep *Result) (Result, error) {
	c := &calculation{Work: w, kept: map[stageKey]trip.MemberID{}, ahead: map[stageKey]trip.MemberID{}, keptGap: map[int]gaps{}, keptOver: map[int]bool{}, keptChoices: map[int][]Choice{}}
	c.indexCrew()
	c.remember(keep)
	runs := cutStages(w)
	if keep == nil && len(w.Kept) == 0 && len(w.Decided) == 0 {
		if err := c.foresee(ctx, runs); err != nil {
			return Result{}, err
		}
	}
	for _, run := range runs {
		if err := c.split(ctx, run); err != nil {
			return Result{}, err
		}
	}
	c.reckonLoads()
	c.reviewFair()
	c.reviewLoads()
	return c.result, nil
}

// calculation carries what is known from one stage to the next.
type calculation struct {
	Work
	result Result

	kept        map[stageKey]trip.MemberID // carriers of the split to stay near to
	ahead       map[stageKey]trip.MemberID // carriers that are foreseen, of stages on which people came or went
	keptGap     map[int]gaps               // how far from its bounds each of its stages was, by first day
	keptOver    map[int]bool               // first days of its stages on which a load passes a limit, water included
	keptChoices map[int][]Choice           // of each of its stages, by first day

	capability []int64               // hectograms, by place in the crew
	place      map[trip.MemberID]int // place in the crew
	food       map[trip.FoodID]*trip.Food
	previous   map[string]trip.MemberID // carrier of each item on the stage before
	renewed    bool                     // the stage before was searched for again
	waste      []wasteHeap              // what is left of earlier stages
	loads      [][]tally                // by place in the crew and day-1
	floors     [][]floor                // the same
	dropped    []fairsplit.Class        // of the stage in hand: rules about lost packs that gave way
	opened     bool                     // of the stage in hand: own shares may lie in other packs
	passed     map[int]bool             // first days of stages that pass a limit
	liquid     map[string]bool          // containers of liquid fuel
	own        map[string]bool          // bags of one eater
}

// stageKey names an item on the stage that begins on a day.
type stageKey struct {
	first int
	item  string
}

// gaps is how far above its bounds a stage is, as parts of them.
type gaps struct{ worst, mean float64 }

func over(value, bound float64) float64 {
	if bound <= 0 {
		return 0
	}
	return value/bound - 1
}

func (c *calculation) remember(keep *Result) {
	if keep == nil {
		return
	}
	for _, stage := range keep.Stages {
		c.keptGap[stage.FirstDay] = gaps{over(stage.Worst, stage.WorstBound), over(stage.Mean, stage.MeanBound)}
		c.keptChoices[stage.FirstDay] = stage.Choices
		c.keptOver[stage.FirstDay] = c.passesLimit(keep, &stage)
		for _, item := range stage.Items {
			c.kept[stageKey{stage.FirstDay, string(item.Kind) + " " + item.Key}] = item.Carrier
		}
	}
}

func (c *calculation) indexCrew() {
	c.place, c.food = map[trip.MemberID]int{}, map[trip.FoodID]*trip.Food{}
	c.previous, c.passed = map[string]trip.MemberID{}, map[int]bool{}
	c.liquid, c.own = map[string]bool{}, map[string]bool{}
	for i := range c.Bags.Bags {
		c.own[c.Bags.Bags[i].Key] = c.Bags.Bags[i].Member != 0
	}
	for _, fuel := range c.Cooking.Fuel {
		for i := range fuel.Containers {
			c.liquid[fuel.Containers[i].Key] = isLiquid(fuel.Fuel)
		}
	}
	for i := range c.Trip.Foods {
		c.food[c.Trip.Foods[i].ID] = &c.Trip.Foods[i]
	}
	for i := range c.Trip.Crew {
		member := &c.Trip.Crew[i]
		c.place[member.ID] = i
		c.capability = append(c.capability, hectograms(member))
		c.loads = append(c.loads, make([]tally, len(c.Trip.Days)))
		c.floors = append(c.floors, make([]floor, len(c.Trip.Days)))
		c.result.Members = append(c.result.Members, Member{
			Member: member.ID, Capability: capabilityMass(member), Days: make([]Day, len(c.Trip.Days)),
		})
	}
}
