// Package summary picks out of a plan the few figures a leader asks for first,
// as words, for the first page of the workbook and for the command line.
package summary

import (
	"fmt"
	"strings"

	"sumpter/domain/plan"
	"sumpter/domain/resupply"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Line is one figure: what it is, its value, and what stands behind it.
type Line struct {
	What  string `json:"what"`
	Value string `json:"value"`
	More  string `json:"more,omitempty"`
}

// When says from when to when the trip goes.
func When(p *plan.Plan) string {
	t := tripOf(p)
	if len(t.Days) == 0 {
		return "There are no days yet."
	}
	if !t.Start.IsSet() {
		return counted(len(t.Days), "day", "days") + "; the start is not set."
	}
	return fmt.Sprintf("%s to %s, %s.", t.Start.Spoken(), t.DateOf(len(t.Days)).Spoken(), counted(len(t.Days), "day", "days"))
}

// Lines gives the figures in the units of the trip.
func Lines(p *plan.Plan) []Line {
	t, sum := tripOf(p), p.Summary()
	lines := []Line{
		crew(t, sum), need(p, t, sum), food(p, t, sum), leanest(t, sum), share(p, t, sum),
		fuel(p, t), water(p, t), cost(p, t, sum),
	}
	lines = append(lines, reserve(p, t, sum)...)
	for i := range p.Resupply.Boxes {
		lines = append(lines, box(&p.Resupply.Boxes[i], t))
	}
	if len(p.Resupply.Boxes) == 0 {
		lines = append(lines, Line{"Boxes", "none sent ahead", "Everything is carried from the start."})
	}
	return append(lines, found(sum), rounds(p))
}

func tripOf(p *plan.Plan) *trip.Trip {
	if p.Trip == nil {
		return &trip.Trip{Units: units.Metric}
	}
	return p.Trip
}

func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

func crew(t *trip.Trip, sum plan.Summary) Line {
	return Line{"Crew", counted(len(t.Crew), "person", "people") + ", " + counted(sum.PersonDays, "person-day", "person-days"),
		counted(len(t.Groups), "cook group", "cook groups")}
}

func need(p *plan.Plan, t *trip.Trip, sum plan.Summary) Line {
	if sum.PersonDays == 0 {
		return Line{"Energy needed", "nobody to feed", ""}
	}
	var needed, target, planned units.Kcal
	var low, high extreme
	for _, member := range p.Needs.Members {
		for i, day := range member.Days {
			if day.Present {
				needed, target = needed+day.Kcal, target+day.TargetKcal
				low.least(float64(day.Kcal), member.Member, i+1)
				high.most(float64(day.Kcal), member.Member, i+1)
			}
		}
	}
	for _, intake := range p.Portions.Intakes {
		for _, day := range intake.Days {
			planned += day.Kcal
		}
	}
	mean := func(all units.Kcal) string { return whole(float64(all) / float64(sum.PersonDays)) }
	return Line{"Energy needed", mean(needed) + " kcal a person-day",
		fmt.Sprintf("from %s (%s) to %s (%s); to eat from the packs %s, planned %s",
			whole(low.value), who(t, low.member, low.day), whole(high.value), who(t, high.member, high.day), mean(target), mean(planned))}
}

func food(p *plan.Plan, t *trip.Trip, sum plan.Summary) Line {
	if sum.PersonDays == 0 || sum.Food == 0 {
		return Line{"Food", "none planned", "Nothing on the menu has been portioned."}
	}
	return Line{"Food", sum.FoodPerPersonDay.Format(t.Units) + " a person-day",
		fmt.Sprintf("%s in all, %s", sum.Food.Format(t.Units), counted(len(p.Bags.Bags), "bag", "bags"))}
}

func leanest(t *trip.Trip, sum plan.Summary) Line {
	if sum.LeastFed == 0 {
		return Line{"Least-fed day", "no day has food from the packs", ""}
	}
	return Line{"Least-fed day", percent(sum.LeastFedShare) + " of the target", who(t, sum.LeastFed, sum.LeastFedDay)}
}

func share(p *plan.Plan, t *trip.Trip, sum plan.Summary) Line {
	if sum.Heaviest == 0 {
		return Line{"Heaviest share", "nobody carries anything yet", ""}
	}
	bound := 0.0
	for _, stage := range p.Carry.Stages {
		bound = max(bound, stage.WorstBound)
	}
	more := fmt.Sprintf("%s with %s", who(t, sum.Heaviest, sum.HeaviestDay), kilograms(sum.HeaviestLoad, t.Units))
	if bound > 0 {
		more += "; nobody could split it below " + tenths(bound)
	}
	return Line{"Heaviest share", tenths(sum.HeaviestShare) + " of capability", more}
}

// tenths writes a share with one decimal: the fairness of loads lies in tenths.
func tenths(share float64) string { return fmt.Sprintf("%.1f %%", 100*share) }

func fuel(p *plan.Plan, t *trip.Trip) Line {
	var needed units.Mass
	names, counts := []string{}, map[string]int{}
	for _, leg := range p.Cooking.Fuel {
		needed += leg.Needed
		for _, container := range leg.Containers {
			if container.Brought { // counted in the leg it was bought for
				continue
			}
			if counts[container.Name] == 0 {
				names = append(names, container.Name)
			}
			counts[container.Name]++
		}
	}
	if needed == 0 {
		return Line{"Fuel", "none needed", ""}
	}
	var containers []string
	for _, name := range names {
		containers = append(containers, fmt.Sprintf("%d × %s", counts[name], name))
	}
	return Line{"Fuel", needed.Format(t.Units) + " with reserve", strings.Join(containers, ", ")}
}

// reserve tells the emergency reserve; nothing where the trip asks for none.
func reserve(p *plan.Plan, t *trip.Trip, sum plan.Summary) []Line {
	if t.Settings.ReserveDays <= 0 {
		return nil
	}
	said := "the snacks of the last days of each stage"
	if sum.Reserve > 0 {
		said = sum.Reserve.Format(t.Units) + " on top of all meals"
	}
	return []Line{{"Emergency reserve", fmt.Sprintf("%.1f days each", t.Settings.ReserveDays), fmt.Sprintf("%s, in the packs of %d", said, len(p.Portions.Reserve))}}
}

func water(p *plan.Plan, t *trip.Trip) Line {
	byDay := map[int]units.Volume{}
	var high, carried extreme
	for _, w := range p.Cooking.Water {
		byDay[w.Day] += w.Drinking
		high.most(float64(w.Drinking), w.Member, w.Day)
	}
	for i := range p.Carry.Members {
		m := &p.Carry.Members[i]
		for d := range m.Days {
			if in := m.Days[d].CarryIn(); in > 0 {
				carried.most(float64(in), m.Member, d+1)
			}
		}
	}
	if !high.set {
		return Line{"Water", "nobody to give water", ""}
	}
	most := 0
	for day := range len(t.Days) + 1 {
		if byDay[day] > byDay[most] {
			most = day
		}
	}
	more := fmt.Sprintf("all together at most %s (day %d)", byDay[most].Format(t.Units), most)
	if carried.set {
		more += fmt.Sprintf("; to dry camps at most %s each (day %d)", units.Volume(carried.value).Format(t.Units), carried.day)
	}
	return Line{"Water to drink", "at most " + units.Volume(high.value).Format(t.Units) + " a person and day", more}
}

func cost(p *plan.Plan, t *trip.Trip, sum plan.Summary) Line {
	more := p.Shopping.PerPersonDay.Format(t.Currency) + " a person-day"
	if p.Shopping.Unpriced > 0 {
		more += fmt.Sprintf("; %s unknown, so the true cost is higher", counted(p.Shopping.Unpriced, "price is", "prices are"))
	}
	return Line{"Cost", sum.Cost.Format(t.Currency), more}
}

func box(b *resupply.Box, t *trip.Trip) Line {
	name := "a point that is not in the trip"
	if point := t.Point(b.Point); point != nil {
		name = point.Name
	}
	value := kilograms(b.Mass, t.Units) + ", " + counted(len(b.Bags), "bag", "bags")
	if !b.Posted {
		return Line{"Box for " + name, value, "brought by somebody, leaves home " + orNotSet(b.SendOn) + ", picked up " + orNotSet(b.PickUp)}
	}
	window := "post by " + orNotSet(b.PostBy)
	switch {
	case b.SendChosen:
		window = "post on " + b.SendOn.Spoken() + ", latest " + orNotSet(b.PostBy)
	case b.PostFrom.IsSet():
		window = "post from " + b.PostFrom.Spoken() + " to " + orNotSet(b.PostBy)
	}
	return Line{"Box for " + name, value, fmt.Sprintf("%s: %s, picked up %s", counted(len(b.Parcels), "parcel", "parcels"), window, orNotSet(b.PickUp))}
}

func orNotSet(date units.Date) string {
	if !date.IsSet() {
		return "(date not set)"
	}
	return date.Spoken()
}

func found(sum plan.Summary) Line {
	return Line{"Findings", fmt.Sprintf("%d must fix, %d look at, %s", sum.MustFix, sum.LookAt, counted(sum.Notes, "note", "notes")), ""}
}

func rounds(p *plan.Plan) Line {
	if p.Refused() {
		return Line{"Plan", "not made", "The findings say what stands against it."}
	}
	if p.Settled {
		return Line{"Plan", "settled", fmt.Sprintf("in %s; the last changed no load by %s or more", counted(p.Rounds, "round", "rounds"), "1 %")}
	}
	return Line{"Plan", "not settled", fmt.Sprintf("after %s a load still changed by %.1f %%", counted(p.Rounds, "round", "rounds"), p.Change*100)}
}
