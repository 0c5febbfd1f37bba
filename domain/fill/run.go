package fill

import (
	"context"
	"errors"
	"math"
	"slices"

	"sumpter/domain/solve/menufill"
	"sumpter/domain/trip"
)

// filling is one run of Menu.
type filling struct {
	*larder
	options  Options
	proposal Proposal
	cells    map[slotKey]*trip.Cell // decided, and chosen so far
	dearer   float64                // how many times more cost counts, so that the budget is kept
	more     map[groupDay]askedMore
	try      int
	again    map[trip.GroupID]bool // the groups to fill again; nil: all
}

// mostDays is what the solver takes at once; longer trips are filled in parts, each beside the last days of the one before.
const mostDays = 62

// run fills, and fills again where the sized portions fall short or cost too much.
func (f *filling) run(ctx context.Context) error {
	f.more = map[groupDay]askedMore{}
	for {
		if err := f.fillAll(ctx); err != nil {
			return err
		}
		if f.try++; f.try == f.mostTries() || f.proposal.Stopped() {
			return nil
		}
		p := f.sized()
		f.again = f.askForMore(p)
		if f.overBudget(p) {
			f.dearer *= f.dearerBy()
			f.again = nil // all of them
		} else if len(f.again) == 0 {
			return nil
		}
	}
}

// fillAll fills the open slots of all groups; where it is ended early, what was there before stays.
func (f *filling) fillAll(ctx context.Context) error {
	before := f.proposal
	f.proposal, f.cells = Proposal{}, f.decidedCells()
	f.keepOthers(&before)
	err := f.fillGroups(ctx)
	if before.Groups != nil && (err != nil || f.proposal.Stopped()) {
		f.proposal, err = before, nil
		f.proposal.Groups = slices.Clone(before.Groups)
		f.proposal.Groups[0].Stopped = true
	}
	return err
}

// keepOthers takes over what is good enough of the try before.
func (f *filling) keepOthers(before *Proposal) {
	if f.again == nil {
		return
	}
	for _, out := range before.Groups {
		if !f.again[out.Group] {
			f.proposal.Groups = append(f.proposal.Groups, out)
		}
	}
	for _, cell := range before.Cells {
		if !f.again[cell.Group] {
			f.proposal.Cells = append(f.proposal.Cells, cell)
		}
	}
}

func (f *filling) fillGroups(ctx context.Context) error {
	var todo []trip.GroupID
	for i := range f.trip.Groups {
		if id := f.trip.Groups[i].ID; (f.again == nil || f.again[id]) && f.hasOpen(id) {
			todo = append(todo, id)
		}
	}
	for i, group := range todo {
		said := func(p menufill.Progress) {
			if f.options.Progress != nil {
				f.options.Progress(Progress{Share: f.share((float64(i) + share(p)) / float64(len(todo))), Group: group, Found: p.Found, Gap: gapOf(p.Value, p.Bound)})
			}
		}
		err := ctx.Err()
		if err == nil {
			err = f.fillGroup(ctx, group, said)
		}
		if err != nil {
			return f.endEarly(group, err)
		}
	}
	return nil
}

// endEarly keeps what the groups before have, if there is anything.
func (f *filling) endEarly(group trip.GroupID, err error) error {
	if len(f.proposal.Cells) == 0 {
		return err
	}
	f.proposal.Groups = append(f.proposal.Groups, Outcome{Group: group, Stopped: true})
	return nil
}

// share is how much of the work is done: a first try is most of it, as long as nothing falls short.
func (f *filling) share(ofTry float64) float64 {
	done := 0.0
	for try := range f.mostTries() {
		part := (1 - done) * firstTry
		if try == f.try {
			return done + part*ofTry
		}
		done += part
	}
	return 1
}

// mostTries is how often a menu is filled: a sketch gets one correction.
func (f *filling) mostTries() int {
	switch {
	case f.options.Tries > 0:
		return f.options.Tries
	case f.options.Steps <= Sketch:
		return sketchTries
	default:
		return mostTries
	}
}

// dearerBy is how many times more cost counts in the next try: a sketch has no other.
func (f *filling) dearerBy() float64 {
	if f.options.Steps <= Sketch {
		return dearerBy * dearerBy
	}
	return dearerBy
}

// steps is the work for a group: less from the second try on.
func (f *filling) steps() int64 {
	if f.try > 0 {
		return f.options.Steps / 2
	}
	return f.options.Steps
}

// firstTry is the part of the work that the first try is told to be, and the next of what is left.
const firstTry = 0.8

func share(p menufill.Progress) float64 { return min(1, float64(p.Steps)/float64(max(1, p.Limit))) }

func gapOf(value, bound int64) float64 {
	if bound <= 0 || value <= bound {
		return 0
	}
	return float64(value-bound) / float64(bound)
}

func (f *filling) hasOpen(group trip.GroupID) bool {
	b := newBoard(f.larder, group, 1, len(f.trip.Days), f.cells, weights{})
	open := false
	b.eachSlot(func(k slotKey, _ *party) { open = open || b.isOpen(k) })
	return open
}

func (f *filling) fillGroup(ctx context.Context, group trip.GroupID, said func(menufill.Progress)) error {
	days, overlap := len(f.trip.Days), f.trip.Settings.RepeatGap+1
	parts := 1
	if days > mostDays {
		parts = int(math.Ceil(float64(days-overlap) / float64(max(1, mostDays-overlap))))
	}
	out := Outcome{Group: group, Proven: true}
	for part := range parts { // in the order of the days: each sees what the one before chose
		first, last := 1+days*part/parts, days*(part+1)/parts
		b := newBoard(f.larder, group, max(1, first-overlap), last, f.cells, weightsFor(f.trip.Settings.MenuAim, f.dearer))
		b.more = f.more
		if err := f.fillDays(ctx, b, &out, said); err != nil {
			return err
		}
	}
	f.proposal.Groups = append(f.proposal.Groups, out)
	return nil
}

func (f *filling) fillDays(ctx context.Context, b *board, out *Outcome, said func(menufill.Progress)) error {
	b.build()
	plan, err := menufill.Solve(ctx, b.problem, menufill.Options{Steps: f.steps(), Progress: said})
	var none *menufill.Infeasible
	if errors.As(err, &none) {
		return nil // the slots stay open, and the plan's findings say so
	}
	if err != nil {
		return err
	}
	cells := b.read(&plan)
	for i := range cells {
		f.cells[slotKey{cells[i].Day, cells[i].Meal, cells[i].Group}] = &cells[i]
	}
	f.proposal.Cells = append(f.proposal.Cells, cells...)
	out.Slots += len(cells)
	out.Gap = max(out.Gap, plan.Gap())
	out.Proven, out.Stopped = out.Proven && plan.Proven, out.Stopped || plan.Stopped
	return nil
}

// read turns a plan into cells.
func (b *board) read(plan *menufill.Plan) []trip.Cell {
	var cells []trip.Cell
	for i, place := range b.slots {
		if !place.open {
			continue
		}
		dishes := b.dishesOf(i, plan)
		if slices.ContainsFunc(dishes, func(dish trip.Dish) bool { return !b.safeAs(place.slotKey, &dish) }) {
			continue // rather left open
		}
		if n := len(cells); n > 0 && place.side && cells[n-1].Day == place.day && cells[n-1].Meal == place.meal {
			cells[n-1].Dishes = append(cells[n-1].Dishes, dishes...)
		} else if len(dishes) > 0 {
			cells = append(cells, trip.Cell{Day: place.day, Meal: place.meal, Group: place.group, Dishes: dishes})
		}
	}
	return cells
}

// dishesOf lists what a slot serves, and to whom.
func (b *board) dishesOf(slot int, plan *menufill.Plan) []trip.Dish {
	var dishes []trip.Dish
	p := b.partyOn(b.slots[slot].day)
	for _, r := range plan.Cooked[slot] {
		e := &b.entries[r]
		if e.recipe == nil {
			continue
		}
		dish := trip.Dish{Recipe: e.recipe.ID}
		for _, member := range p.members {
			if plan.Cells[slot][b.classOf(member)] == r {
				dish.For = append(dish.For, member)
			}
		}
		if len(dish.For) == len(p.members) {
			dish.For = nil
		}
		dishes = append(dishes, dish)
	}
	return dishes
}
