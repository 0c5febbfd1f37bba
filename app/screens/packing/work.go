package packing

import (
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/packing"
	"sumpter/domain/plan"
	"sumpter/domain/resupply"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// work is the evening as it stands: what the plan asks for beside what is
// done. It is made anew whenever either changes, and changes nothing.
type work struct {
	trip    *trip.Trip // as it is now, progress included
	plan    *plan.Plan
	bags    map[string]*bags.Bag
	foods   map[trip.FoodID]*trip.Food
	packed  map[string]*trip.PackedBag
	round   map[string]int // place of a bag's round
	rounds  []round
	box     map[string]*resupply.Box // a bag waits in
	carrier map[string]trip.MemberID // who takes a bag first
	stows   []stow                   // packs and boxes, for the final check
	strays  []*trip.PackedBag        // packed, but in the plan no longer
	minutes units.Minutes            // left, roughly
	done    int
}

// round is the bags of one round of the plan in its order, and how far it is.
type round struct {
	bags    []*bags.Bag
	done    int
	begun   bool
	minutes units.Minutes // left, roughly
}

func newWork(t *trip.Trip, p *plan.Plan) *work {
	w := &work{
		trip: t, plan: p,
		bags: make(map[string]*bags.Bag, len(p.Bags.Bags)), foods: map[trip.FoodID]*trip.Food{}, packed: map[string]*trip.PackedBag{},
		round: make(map[string]int, len(p.Bags.Bags)), box: map[string]*resupply.Box{}, carrier: make(map[string]trip.MemberID, len(p.Bags.Bags)),
	}
	for i := range t.Foods {
		w.foods[t.Foods[i].ID] = &t.Foods[i]
	}
	for i := range p.Bags.Bags {
		w.bags[p.Bags.Bags[i].Key] = &p.Bags.Bags[i]
	}
	for i := range t.Progress.Packed {
		bag := &t.Progress.Packed[i]
		w.packed[bag.Bag] = bag
		if w.bags[bag.Bag] == nil {
			w.strays = append(w.strays, bag)
		}
	}
	for i := range p.Packing.Rounds {
		w.addRound(i, &p.Packing.Rounds[i])
	}
	w.findPlaces()
	w.findStows()
	return w
}

func (w *work) addRound(place int, r *packing.Round) {
	made := round{}
	share := 0.0
	for _, step := range r.Steps {
		bag := w.bags[step.Bag]
		if step.Station != packing.Label || bag == nil {
			continue
		}
		made.bags = append(made.bags, bag)
		w.round[bag.Key] = place
		part := w.share(bag)
		share += part
		made.begun = made.begun || part > 0
		if w.isDone(bag) {
			made.done++
		}
	}
	if n := len(made.bags); n > 0 {
		made.minutes = r.Minutes * units.Minutes(1-share/float64(n))
	}
	w.minutes += made.minutes
	w.done += made.done
	w.rounds = append(w.rounds, made)
}

// share is how much of the work on a bag is done: each food weighed in is a
// step, closing and labelling the last.
func (w *work) share(bag *bags.Bag) float64 {
	noted := w.packed[bag.Key]
	switch {
	case noted == nil:
		return 0
	case noted.Done:
		return 1
	default:
		return float64(min(len(noted.Weighed), len(bag.Contents))) / float64(len(bag.Contents)+1)
	}
}

func (w *work) isDone(bag *bags.Bag) bool {
	noted := w.packed[bag.Key]
	return noted != nil && noted.Done
}

// weighed gives what the scale showed of a food in a bag.
func (w *work) weighed(bag string, food trip.FoodID) (units.Mass, bool) {
	if noted := w.packed[bag]; noted != nil {
		return noted.WeighedMass(food)
	}
	return 0, false
}

// outdated tells that other foods are in a packed bag than the plan now asks
// for.
func (w *work) outdated(bag *bags.Bag) bool {
	noted := w.packed[bag.Key]
	if noted == nil || len(noted.Weighed) == 0 {
		return false
	}
	for _, weighing := range noted.Weighed {
		if !slices.ContainsFunc(bag.Contents, func(c bags.Content) bool { return c.Food == weighing.Food }) {
			return true
		}
	}
	return noted.Done && len(noted.Weighed) != len(bag.Contents)
}

// kcal is the food energy of a bag as planned and as it is packed so far, the
// rest taken as planned.
func (w *work) kcal(bag *bags.Bag) (planned, packed units.Kcal) {
	for _, c := range bag.Contents {
		food := w.foods[c.Food]
		if food == nil {
			continue
		}
		planned += food.Kcal(c.Mass)
		mass, noted := w.weighed(bag.Key, c.Food)
		if !noted {
			mass = c.Mass
		}
		packed += food.Kcal(mass)
	}
	return planned, packed
}

// difference is how much more than planned is in the bag.
func (w *work) difference(bag *bags.Bag) units.Mass {
	var more units.Mass
	for _, c := range bag.Contents {
		if mass, noted := w.weighed(bag.Key, c.Food); noted {
			more += w.beyondScale(c.Mass, mass)
		}
	}
	return more
}

// differs tells whether a food of a bag was weighed in otherwise than planned.
func (w *work) differs(bag *bags.Bag) bool {
	return slices.ContainsFunc(bag.Contents, func(c bags.Content) bool {
		mass, noted := w.weighed(bag.Key, c.Food)
		return noted && w.beyondScale(c.Mass, mass) != 0
	})
}

// beyondScale is by how much more was weighed in than planned; nothing if the
// scale cannot show the planned amount any nearer.
func (w *work) beyondScale(planned, shown units.Mass) units.Mass {
	more := shown - planned
	if max(more, -more) <= w.trip.Settings.ScaleStep/2 {
		return 0
	}
	return more
}

// onScale is what the scale shows at best for an amount.
func (w *work) onScale(planned units.Mass) units.Mass {
	step := w.trip.Settings.ScaleStep
	if step <= 0 || planned < step {
		return planned
	}
	return (planned + step/2) / step * step
}

// cleanNow gives the first round that is not finished, if the table must be
// cleaned before it and it has not begun.
func (w *work) cleanNow() (int, bool) {
	for i := range w.rounds {
		if w.rounds[i].done < len(w.rounds[i].bags) {
			return i, w.plan.Packing.Rounds[i].CleanFirst && !w.rounds[i].begun
		}
	}
	return 0, false
}

// findPlaces notes for each bag where it goes when it is closed.
func (w *work) findPlaces() {
	for i := range w.plan.Resupply.Boxes {
		box := &w.plan.Resupply.Boxes[i]
		for _, key := range box.Bags {
			w.box[key] = box
		}
	}
	for i := range w.plan.Carry.Stages {
		for _, item := range w.plan.Carry.Stages[i].Items {
			if _, taken := w.carrier[item.Key]; item.Kind == carry.BagItem && !taken {
				w.carrier[item.Key] = item.Carrier
			}
		}
	}
}

// into says which box or pack a bag goes into.
func (w *work) into(key string) string {
	if box := w.box[key]; box != nil {
		return boxWords(w.trip, box)
	}
	return packWords(w.trip, w.carrier[key])
}
