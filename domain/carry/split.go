package carry

import (
	"cmp"
	"context"
	"math"
	"math/big"
	"slices"
	"strconv"

	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/solve/fairsplit"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// decigram is the step in which the solver sees masses, rounded up so that no
// limit is passed by rounding.
const decigram = units.Gram / 10

// searchSteps bounds the search for the split of one stage: some tens of
// milliseconds. More brought no fairer split on the measured trips, see the
// contributor guide.
const searchSteps = 400_000

// ruled lists the pieces of a stage with those who may carry each.
func (c *calculation) ruled(r run) []piece {
	pieces := c.pieces(r)
	for i := range pieces {
		c.passOver(&pieces[i], r)
		c.tellOwnHarm(&pieces[i], r)
		c.applyPins(&pieces[i], r)
		c.openToAll(&pieces[i], r)
	}
	return pieces
}

// split finds the carriers of one stage.
func (c *calculation) split(ctx context.Context, r run) error {
	pieces := c.ruled(r)
	c.dropped, c.opened = nil, false
	free := slices.Clone(pieces)
	for i := range pieces {
		c.follow(&pieces[i], r)
	}
	stage := Stage{Leg: r.leg, FirstDay: r.first, LastDay: r.last}
	if len(r.present) == 0 {
		c.nobodyThere(r, pieces)
		c.result.Stages = append(c.result.Stages, stage)
		return nil
	}
	c.reckonFair(&stage, r, free)
	problem := c.problem(r, pieces)
	solved, ok := c.stillGood(r, pieces, problem)
	c.renewed = !ok
	if ok {
		c.measureAgain(r, pieces, problem, &solved)
		c.take(&stage, r, pieces, solved)
		return nil
	}
	options := fairsplit.Options{Previous: c.previousCarriers(r, pieces), Known: c.known(r, pieces), Workers: 2, Steps: searchSteps}
	near := c.nearTo(r, pieces)
	if near != nil {
		options.Previous = near.was
	}
	solved, err := c.solve(ctx, r, problem, options)
	if err == nil && !solved.Feasible {
		solved, err = c.loosen(ctx, r, pieces, &problem, options, solved)
	}
	withoutWater, watered := solved, false
	if err == nil {
		watered, err = c.leaveRoomForWater(ctx, r, pieces, &problem, options, &solved)
	}
	if err == nil && near != nil {
		solved, err = c.stayNear(ctx, r, pieces, problem, near, solved)
	}
	if err != nil {
		return c.refused(ctx, r, err)
	}
	if err := ctx.Err(); err != nil {
		return err
	}
	if decidedOn(c.Decided, r.first) != nil {
		err = c.boundFreely(ctx, r, free, &solved)
	} else if near == nil {
		solved = c.gather(r, pieces, problem, options.Previous, solved)
	}
	if err != nil {
		return err
	}
	if watered {
		boundWithoutWater(&solved, withoutWater)
	}
	c.take(&stage, r, pieces, solved)
	return nil
}

// solve splits a stage: among those who do not hold more than a fair load in any
// case where that is as good for the heaviest pack.
func (c *calculation) solve(ctx context.Context, r run, problem fairsplit.Problem, options fairsplit.Options) (fairsplit.Result, error) {
	if a := c.standAside(r, problem); a != nil {
		if solved, ok, err := a.solve(ctx, options); ok || err != nil {
			return solved, err
		}
	}
	return fairsplit.Solve(ctx, problem, options)
}

// follow holds a piece to what was decided for the morning of a stage.
func (c *calculation) follow(p *piece, r run) {
	decided := decidedOn(c.Decided, r.first)
	if decided == nil {
		return
	}
	member, named := decided.Carriers[Thing{p.kind, p.key}]
	why := prose.Say("decided on the way")
	if decided.Proposed {
		why = prose.Say("proposed for this morning: few hand-overs for nearly the fairest load")
	}
	if !named {
		member, named = c.previous[itemKey(p)]
		why = prose.Say("stays with who had it")
	}
	if place, known := c.place[member]; named && known && slices.Contains(p.allowed, place) {
		p.allowed, p.why = []int{place}, why
	}
}

// boundFreely holds a decided split against the best there could be if nothing
// were decided: that is how far from it the leader went.
func (c *calculation) boundFreely(ctx context.Context, r run, free []piece, solved *fairsplit.Result) error {
	solved.R1Bound, solved.SBound, solved.Proven = nil, nil, false
	if c.Ahead == 0 || r.last < c.Ahead {
		return nil
	}
	best, err := fairsplit.Solve(ctx, c.problem(r, free), fairsplit.Options{Workers: 2, Steps: searchSteps})
	if err != nil {
		return err
	}
	solved.R1Bound, solved.SBound = best.R1Bound, best.SBound
	return nil
}

// stillGood measures the split to keep on the masses there are now. A gram
// here and there asks for no new search as long as every limit holds and
// nobody's share is more than a sliver further from the bound than it was, and
// nothing was searched for again that would now change hands.
func (c *calculation) stillGood(r run, pieces []piece, problem fairsplit.Problem) (fairsplit.Result, bool) {
	if c.renewed && !r.firstOfLeg {
		return fairsplit.Result{}, false
	}
	carriers := make([]int, len(pieces))
	for i := range pieces {
		member, ok := c.kept[stageKey{r.first, itemKey(&pieces[i])}]
		if !ok {
			return fairsplit.Result{}, false
		}
		carriers[i] = slices.Index(r.present, c.place[member])
	}
	solved, err := fairsplit.Evaluate(problem, carriers)
	if err != nil || !solved.Feasible {
		return fairsplit.Result{}, false
	}
	if over, _ := c.overWithWater(r, pieces, carriers); total(over) > 0 && !c.keptOver[r.first] {
		return fairsplit.Result{}, false
	}
	gap := c.keptGap[r.first]
	return solved, solved.GapR1() <= gap.worst+sliver && solved.GapS() <= gap.mean+sliver
}

// sliver is how much fairness a round may lose before the split is searched
// for again.
const sliver = 0.002

// take makes a solved split the stage's.
func (c *calculation) take(stage *Stage, r run, pieces []piece, solved fairsplit.Result) {
	c.fillStage(stage, r, pieces, solved)
	c.passed[r.first] = !solved.Feasible
	c.sayReasons(r, pieces, solved)
	c.sayClassesDropped(r, pieces, solved.Carrier)
	if c.opened {
		c.sayOwnSharesMoved(r, pieces, solved)
	}
	c.handOn(r, pieces, *stage)
	c.result.Stages = append(c.result.Stages, *stage)
}

// refused turns a problem the solver finds meaningless into a finding; it is
// the program's fault, and the plan still comes.
func (c *calculation) refused(ctx context.Context, r run, err error) error {
	if ctx.Err() != nil {
		return ctx.Err()
	}
	c.find(findings.MustFix, "no-split", findings.Place{Day: r.first}, prose.Say("The load of these days could not be split."), prose.Verbatim(err.Error()+"."), prose.Say("Look for masses, limits or strengths that cannot be right."))
	return nil
}

// passOver leaves out who carries nothing by their strength, as long as
// somebody there carries anything.
func (c *calculation) passOver(p *piece, r run) {
	idle := func(place int) bool { return c.capability[place] == 0 }
	if !slices.ContainsFunc(r.present, idle) || !slices.ContainsFunc(r.present, func(place int) bool { return !idle(place) }) {
		return
	}
	able := slices.DeleteFunc(slices.Clone(p.allowed), idle)
	if len(able) < len(p.allowed) && p.why.IsZero() {
		p.why = prose.Say("kept from those who carry nothing")
	}
	p.allowed, p.byHand = able, slices.DeleteFunc(slices.Clone(p.byHand), idle)
	if len(p.allowed) == 0 {
		p.allowed, p.byHand = p.byHand, nil
	}
}

// tellOwnHarm says that somebody carries what may harm them, which only the
// leader's acceptance for their own dish allows.
func (c *calculation) tellOwnHarm(p *piece, r run) {
	if p.bag == nil || p.bag.Member == 0 || len(p.allowed) != 1 {
		return
	}
	eater := &c.Trip.Crew[p.allowed[0]]
	if eater.ID != p.bag.Member || c.mayCarry(eater, p.bag) {
		return
	}
	c.find(findings.LookAt, "own-share-harmful", c.placeOf(p, r), prose.Say("%s carries %s, their own share, which may hold what harms them.", eater.Name, c.nameOf(p)),
		prose.Say("It was accepted by hand for their dish."),
		prose.Say("Read the label once more with them, seal it well, and know where their medicine is, or choose another dish."))
}

// openToAll keeps the plan whole where nobody may carry a piece: everybody
// may then, and a finding says who must not.
func (c *calculation) openToAll(p *piece, r run) {
	if len(p.allowed) > 0 || len(r.present) == 0 {
		return
	}
	p.allowed = r.present
	c.find(findings.MustFix, "no-carrier", c.placeOf(p, r), prose.Say("%s may be carried by nobody who is there.", c.nameOf(p)),
		prose.Say("Everybody present is allergic to something in it, carries nothing, or it is kept from them by hand."),
		prose.Say("Leave that food out, read the labels of the foods whose allergens are unknown, or seal the bag twice and agree with the member who carries it."))
}

// problem writes a stage in the solver's terms.
func (c *calculation) problem(r run, pieces []piece) fairsplit.Problem {
	p := fairsplit.Problem{Days: r.last - r.first + 1}
	for day := r.first; day <= r.last; day++ {
		p.HoursTenths = append(p.HoursTenths, c.hoursTenths(day))
	}
	seat := map[int]int{}
	for i, place := range r.present {
		seat[place] = i
		p.Crew = append(p.Crew, c.carrier(place))
	}
	for _, piece := range pieces {
		item := fairsplit.Item{
			MassGrams: steps(piece.mass), ResidualGrams: min(steps(piece.left), steps(piece.mass)),
			VolumeMl: ceilMillilitres(piece.volume), GoneAfter: piece.until - r.first + 1,
			Energy: piece.energy, Class: piece.class,
		}
		for _, mass := range piece.falling {
			item.Mornings = append(item.Mornings, steps(mass))
		}
		for _, place := range piece.allowed {
			item.Allowed = append(item.Allowed, seat[place])
		}
		p.Items = append(p.Items, item)
	}
	c.addClasses(&p)
	return p
}

func (c *calculation) carrier(place int) fairsplit.Member {
	member := &c.Trip.Crew[place]
	limit := fairsplit.Unlimited
	if mass, limited := member.LoadLimit.Get(); limited {
		limit = int64(mass / decigram)
	}
	return fairsplit.Member{
		Strength: c.capability[place], BaseGrams: steps(member.OwnKit), MaxGrams: limit,
		VolumeMl: int64(member.PackRoom / units.Millilitre),
	}
}

// hoursTenths weighs a day by the time its load is on the back.
func (c *calculation) hoursTenths(day int) int64 {
	if day > len(c.Needs.Walks) {
		return 0
	}
	return int64(math.Round(float64(c.Needs.Walks[day-1].Hours) * 10))
}

func steps(mass units.Mass) int64 { return int64((mass + decigram - 1) / decigram) }

func ceilMillilitres(volume units.Volume) int64 {
	return int64((volume + units.Millilitre - 1) / units.Millilitre)
}

// previousCarriers gives who should go on carrying each piece, nil if nobody
// should. On the way that is who had it on the stage before. Where food comes in
// it is who had it in the split to keep, else who carried it before, else who is
// foreseen to have it on the next stage.
func (c *calculation) previousCarriers(r run, pieces []piece) []int {
	return c.seats(r, pieces, func(key string) trip.MemberID {
		kept, before := c.kept[stageKey{r.first, key}], c.previous[key]
		if !r.firstOfLeg {
			return before
		}
		return cmp.Or(kept, before, c.ahead[stageKey{r.last + 1, key}])
	})
}

// known is a split to look at beside those that are searched for: the one to keep,
// or what was foreseen.
func (c *calculation) known(r run, pieces []piece) []int {
	if r.firstOfLeg {
		return nil
	}
	return c.seats(r, pieces, func(key string) trip.MemberID {
		return cmp.Or(c.kept[stageKey{r.first, key}], c.ahead[stageKey{r.first, key}])
	})
}

// foreseen gives who is foreseen to have each piece on the stage that begins on a
// day.
func (c *calculation) foreseen(r run, pieces []piece, first int) []int {
	return c.seats(r, pieces, func(key string) trip.MemberID { return c.ahead[stageKey{first, key}] })
}

// seats gives the place among those present of each piece's carrier, nil if no
// piece has one.
func (c *calculation) seats(r run, pieces []piece, carrier func(key string) trip.MemberID) []int {
	seats := make([]int, len(pieces))
	known := false
	for i := range pieces {
		seats[i] = c.seatOf(r, carrier(itemKey(&pieces[i])))
		known = known || seats[i] >= 0
	}
	if !known {
		return nil
	}
	return seats
}

func itemKey(p *piece) string { return string(p.kind) + " " + p.key }

// fillStage reads the solver's answer.
func (c *calculation) fillStage(stage *Stage, r run, pieces []piece, solved fairsplit.Result) {
	dishes := c.dishesOf(r, pieces, solved.Carrier)
	for i := range pieces {
		seat := solved.Carrier[i]
		if seat == fairsplit.Nobody {
			seat = 0
		}
		member := c.Trip.Crew[r.present[seat]].ID
		why := pieces[i].why
		if len(pieces[i].allowed) > 1 || why.IsZero() {
			whys := []prose.Text{why, prose.Say("put here by the fair split")}
			if beside := gathered(&pieces[i], member, dishes); !beside.IsZero() {
				whys = append(whys, beside)
			}
			why = prose.List("; ", whys)
		}
		stage.Items = append(stage.Items, Item{Kind: pieces[i].kind, Key: pieces[i].key, Mass: pieces[i].mass, Carrier: member, From: c.previous[itemKey(&pieces[i])], Why: why})
	}
	stage.DishPacks = meanPacks(dishes)
	stage.Worst, stage.WorstBound = share(solved.R1), share(solved.R1Bound)
	stage.Mean, stage.MeanBound = share(solved.S), share(solved.SBound)
	stage.Proven, stage.HandOvers = solved.Proven, len(stage.HandedOver())
	if c.Work.Choices || len(c.Kept) > 0 {
		stage.Choices, stage.Aside = c.choices(r, pieces, solved)
	}
}

// share turns decigrams per hectogram into load by capability.
func share(burden *big.Rat) float64 {
	if burden == nil {
		return 0
	}
	value, _ := burden.Float64()
	return value * float64(decigram) / float64(perHectogram)
}

// handOn remembers the carriers, and gathers what the eaten food leaves.
func (c *calculation) handOn(r run, pieces []piece, stage Stage) {
	clear(c.previous)
	heaps := make([]wasteHeap, len(c.Trip.Crew))
	for i, item := range stage.Items {
		p := &pieces[i]
		c.previous[itemKey(p)] = item.Carrier
		c.addLoads(c.place[item.Carrier], p, r)
		if spent(p, r) {
			heap := &heaps[c.place[item.Carrier]]
			heap.mass += p.left
			heap.room += p.empty
		}
	}
	c.waste = nil
	if r.wasteLeftBehind {
		return
	}
	for place, heap := range heaps {
		if heap.mass > 0 {
			heap.holder = c.Trip.Crew[place].ID
			heap.key = "waste of day " + strconv.Itoa(r.last) + " member " + strconv.FormatInt(int64(heap.holder), 10)
			c.waste = append(c.waste, heap)
			c.previous[string(WasteItem)+" "+heap.key] = heap.holder
		}
	}
}

// spent tells whether only wrappings of a piece are left after the stage.
func spent(p *piece, r run) bool {
	switch p.kind {
	case BagItem:
		return p.bag.LastDay <= r.last
	case FuelItem:
		return r.lastOfLeg
	case WasteItem:
		return true
	default:
		return false
	}
}

// nobodyThere records that a stage has nobody to carry anything.
func (c *calculation) nobodyThere(r run, pieces []piece) {
	if len(pieces) == 0 {
		return
	}
	c.find(findings.MustFix, "nobody-there", findings.Place{Day: r.first}, prose.Say("Nobody is there on these days to carry food and gear."),
		prose.Say("No member's days include them."), prose.Say("Correct the members' first and last days."))
}
