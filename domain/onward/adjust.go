package onward

import (
	"context"
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/cooking"
	"sumpter/domain/findings"
	"sumpter/domain/needs"
	"sumpter/domain/plan"
	"sumpter/domain/portions"
	"sumpter/domain/resupply"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// changed tells whether anything is other than planned.
func (w *work) changed() bool {
	return w.differ || w.endedElsewhen() || len(w.done.CrewChanges)+len(w.done.Replans)+len(w.done.FuelNotes)+len(w.done.MissingBoxes)+len(w.gone) > 0
}

// endedElsewhen tells whether a bag that the plan carries from now on is no
// longer there, or one that it does not carry still is.
func (w *work) endedElsewhen() bool {
	for _, end := range w.done.Ends {
		bag := w.planned(end.Bag)
		if bag != nil && (bag.LastDay >= w.from && end.Day < bag.LastDay || end.End == trip.Eaten && end.Day >= w.from && end.Day > bag.LastDay) {
			return true
		}
	}
	return false
}

func (w *work) missing() Amount {
	var sum Amount
	seen := map[string]bool{}
	for _, bag := range w.gone {
		if !seen[bag.Key] {
			sum.Bags++
		}
		seen[bag.Key] = true
		sum.Food += bag.Food
		sum.Kcal += bag.Kcal
	}
	return sum
}

// adjusted is the plan as it now stands: who is there, which boxes come, where
// bags are eaten. Figures that follow are set later.
func (w *work) adjusted() *plan.Plan {
	now := *w.plan
	t := w.trip.Clone()
	for i := range t.Crew {
		w.setDays(&t.Crew[i])
	}
	for i := range t.Points {
		if slices.Contains(w.done.MissingBoxes, t.Points[i].ID) {
			t.Points[i].Use = false
		}
	}
	now.Trip, now.Legs = t, t.Legs()
	w.needs = w.needsNow(t)
	now.Needs = w.needs
	now.Portions.Batches = w.batchesNow()
	now.Bags = bags.Result{Bags: w.bagsNow(now.Legs)}
	now.Menu = w.menuNow(now.Portions.Batches)
	now.Cooking = w.cookingNow(&now)
	now.Resupply.Boxes = w.boxesNow()
	return &now
}

// setDays makes the first and last day a member is there their planned ones.
// Who is gone between is told by the needs, which every stage asks.
func (w *work) setDays(m *trip.Member) {
	first, last := 0, 0
	for day := 1; day <= len(w.trip.Days); day++ {
		if w.present(m.ID, day) {
			last = day
			if first == 0 {
				first = day
			}
		}
	}
	m.Standby = first == 0
	if first > 0 {
		m.FirstDay, m.LastDay = first, last
	}
}

// legNow gives the place of a leg once legs whose box did not come are part
// of the one before; false for those.
func (w *work) legNow(leg int) (int, bool) {
	place := leg
	for i := range leg + 1 {
		if w.unfed[i] {
			place--
		}
	}
	return place, !w.unfed[leg]
}

// cookingNow cooks the dishes where they are now eaten, with the fuel there is:
// that was bought or sent for the plan of packing night. Fuel sold at a point
// is there whether the box comes or not.
func (w *work) cookingNow(now *plan.Plan) cooking.Result {
	cooked := cooking.Compute(now.Trip, now.Needs, now.Portions, now.Legs)
	cooked.Fuel = nil
	cooked.Findings = slices.DeleteFunc(cooked.Findings, func(f findings.Finding) bool {
		return f.Code == "no-fuel-container" || f.Code == "fuel-carried-ahead" // the fuel is bought
	})
	for _, fuel := range w.plan.Cooking.Fuel {
		if leg, comes := w.legNow(fuel.Leg); comes {
			fuel.Leg = leg
			cooked.Fuel = append(cooked.Fuel, fuel)
		}
	}
	return cooked
}

// needsNow is the planned needs of those who are there; of who joined on the
// way it is reckoned anew, with the load the others have.
func (w *work) needsNow(t *trip.Trip) needs.Result {
	now := w.plan.Needs
	now.Members = slices.Clone(now.Members)
	var joined needs.Result
	for i := range now.Members {
		m := &now.Members[i]
		m.Days = slices.Clone(m.Days)
		for d := range m.Days {
			there := w.present(m.Member, d+1)
			if there && !m.Days[d].Present {
				if joined.Members == nil {
					joined = needs.Figures(t, w.usualLoads())
				}
				m.Days[d] = joined.Members[i].Days[d]
			}
			if !there {
				m.Days[d] = needs.Day{}
			}
		}
	}
	return now
}

// usualLoads gives who was not planned to be there the shared load of those
// who were.
func (w *work) usualLoads() needs.Loads {
	loads := w.plan.Carry.Loads()
	for d := range w.trip.Days {
		shared, carriers := units.Mass(0), units.Mass(0)
		for i := range w.plan.Carry.Members {
			if day := w.plan.Carry.Members[i].Days[d]; day.Present {
				shared, carriers = shared+day.Load-day.OwnKit, carriers+1
			}
		}
		for i := range w.plan.Carry.Members {
			if !w.plan.Carry.Members[i].Days[d].Present && carriers > 0 {
				loads[i][d] = w.trip.Crew[i].OwnKit + shared/carriers
			}
		}
	}
	return loads
}

func (w *work) boxesNow() []resupply.Box {
	var list []resupply.Box
	for _, box := range w.plan.Resupply.Boxes {
		if leg, comes := w.legNow(box.Leg); comes {
			box.Leg = leg
			list = append(list, box)
		}
	}
	return list
}

// resplit gives what is left to those who are there, with as few things
// changing hands as equal fairness allows. Up to the first day on which
// something differs everything is where the plan had it.
func (w *work) resplit(ctx context.Context, now *plan.Plan) error {
	split, err := carry.Compute(ctx, carry.Work{
		Trip: now.Trip, Legs: now.Legs, Needs: now.Needs, Bags: now.Bags, Cooking: now.Cooking,
		Decided: w.decided(now.Legs), Gone: w.goneAfter(), Ahead: w.from, Choices: true,
	}, w.pickUps())
	now.Carry = split
	return err
}

// differsFrom is the first day on which something is other than planned that
// may change hands.
func (w *work) differsFrom() int {
	first := len(w.trip.Days) + 1
	for _, change := range w.done.CrewChanges {
		first = min(first, change.Day)
	}
	for _, replan := range w.done.Replans {
		first = min(first, replan.Day)
	}
	for i, leg := range w.plan.Legs {
		if w.unfed[i] {
			first = min(first, leg.FirstDay)
		}
	}
	return first
}

// decided says who has what on mornings before anything differed, and on those
// on which the leader decided it. The rest begins a stage of its own, so that
// what is said of it is said of this morning and what follows.
func (w *work) decided(legs []trip.Leg) []carry.Decided {
	differs := w.differsFrom()
	var list []carry.Decided
	for _, stage := range w.plan.Carry.Stages {
		if stage.FirstDay >= differs {
			continue
		}
		planned := carry.Decided{Day: stage.FirstDay, Carriers: map[carry.Thing]trip.MemberID{}}
		for _, item := range stage.Items {
			planned.Carriers[carry.Thing{Kind: item.Kind, Key: item.Key}] = item.Carrier
		}
		list = append(list, planned)
	}
	if w.proposed != nil {
		list = append(list, *w.proposed)
	}
	for _, replan := range w.done.Replans {
		one := carry.Decided{Day: replan.Day, Carriers: map[carry.Thing]trip.MemberID{}}
		for _, over := range replan.HandOvers {
			one.Carriers[carry.ThingOf(over)] = over.To
		}
		list = append(list, one)
	}
	if !w.open(legs) && !slices.ContainsFunc(list, func(d carry.Decided) bool { return d.Day == w.from }) {
		list = append(list, carry.Decided{Day: w.from})
	}
	return list
}

// open tells whether things may change hands on the morning of from without
// anybody asking for it: food is taken on, or somebody came or went.
func (w *work) open(legs []trip.Leg) bool {
	if w.from == 1 || slices.ContainsFunc(legs, func(l trip.Leg) bool { return l.FirstDay == w.from }) {
		return true
	}
	return slices.ContainsFunc(w.trip.Crew, func(m trip.Member) bool { return w.present(m.ID, w.from) != w.present(m.ID, w.from-1) })
}

// pickUps is the planned split as far as it says who takes what out of boxes:
// the labels say so too. What is in the packs already stays where it is.
func (w *work) pickUps() *carry.Result {
	kept := &carry.Result{}
	for _, stage := range w.plan.Carry.Stages {
		stage.Items = slices.DeleteFunc(slices.Clone(stage.Items), func(item carry.Item) bool {
			return item.Kind == carry.GearItem || item.Kind == carry.WasteItem
		})
		kept.Stages = append(kept.Stages, stage)
	}
	return kept
}

// servings lists who eats what out of which bag, meal by meal.
func (w *work) servings() []trail.Serving {
	var list []trail.Serving
	for i := range w.lots {
		list = append(list, w.lots[i].servings...)
	}
	slices.SortStableFunc(list, func(a, b trail.Serving) int {
		return slot{a.Day, a.Meal, a.Group}.compare(slot{b.Day, b.Meal, b.Group})
	})
	return list
}

// days adds up what those who are there get on each day that is left.
func (w *work) days() []Day {
	var list []Day
	for number := w.from; number <= len(w.trip.Days); number++ {
		day := Day{Number: number}
		for i := range w.trip.Crew {
			id := w.trip.Crew[i].ID
			if !w.present(id, number) {
				continue
			}
			eaten := Eaten{Member: id}
			if need := w.needs.Members[i].Days[number-1]; need.Present {
				eaten.Target, eaten.ProteinTarget = need.TargetKcal, need.ProteinGrams
			}
			for l := range w.lots {
				lot := &w.lots[l]
				if lot.home.day == number {
					eaten.Planned += lot.planned[id].kcal
				}
				if lot.now.day == number && len(lot.bags) > 0 {
					eaten.Kcal += lot.eaters[id].kcal
					eaten.ProteinGrams += lot.eaters[id].protein
				}
			}
			day.Planned += eaten.Planned
			day.Kcal += eaten.Kcal
			day.Members = append(day.Members, eaten)
		}
		list = append(list, day)
	}
	return list
}

// setIntakes puts what is eaten now in the place of what was planned.
func (w *work) setIntakes(now *plan.Plan, days []Day) {
	intakes := make([]portions.Intake, len(w.plan.Portions.Intakes))
	for i, intake := range w.plan.Portions.Intakes {
		intake.Days = slices.Clone(intake.Days)
		for _, day := range days {
			if day.Number > len(intake.Days) {
				continue
			}
			at := &intake.Days[day.Number-1]
			place := slices.IndexFunc(day.Members, func(e Eaten) bool { return e.Member == intake.Member })
			if place < 0 {
				*at = portions.DayIntake{}
				continue
			}
			at.Kcal, at.ProteinGrams = day.Members[place].Kcal, day.Members[place].ProteinGrams
		}
		intakes[i] = intake
	}
	now.Portions.Intakes = intakes
}
