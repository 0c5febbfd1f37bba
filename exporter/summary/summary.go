// Package summary picks out of a plan the few figures a leader asks for first,
// as words, for the first page of the workbook and for the command line.
package summary

import (
	"fmt"
	"strings"

	"sumpter/domain/findings"
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
		return fmt.Sprintf("%d days; the start is not set.", len(t.Days))
	}
	return fmt.Sprintf("%s to %s, %s.", t.Start.Spoken(), t.DateOf(len(t.Days)).Spoken(), counted(len(t.Days), "day", "days"))
}

// Lines gives the figures in the units of the trip.
func Lines(p *plan.Plan) []Line {
	t := tripOf(p)
	lines := []Line{crew(p, t), need(p, t), food(p, t), leanest(p, t), share(p, t), fuel(p, t), water(p, t), cost(p, t)}
	for i := range p.Resupply.Boxes {
		lines = append(lines, box(&p.Resupply.Boxes[i], t))
	}
	if len(p.Resupply.Boxes) == 0 {
		lines = append(lines, Line{"Boxes", "none sent ahead", "Everything is carried from the start."})
	}
	return append(lines, found(p), rounds(p))
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

func crew(p *plan.Plan, t *trip.Trip) Line {
	return Line{"Crew", counted(len(t.Crew), "person", "people") + ", " + counted(PersonDays(p), "person-day", "person-days"),
		counted(len(t.Groups), "cook group", "cook groups")}
}

// PersonDays counts members times the days they are there.
func PersonDays(p *plan.Plan) int {
	days := 0
	for _, member := range p.Needs.Members {
		for _, day := range member.Days {
			if day.Present {
				days++
			}
		}
	}
	return days
}

func need(p *plan.Plan, t *trip.Trip) Line {
	days := PersonDays(p)
	if days == 0 {
		return Line{"Energy needed", "nobody to feed", ""}
	}
	var sum, target, planned units.Kcal
	var low, high extreme
	for _, member := range p.Needs.Members {
		for i, day := range member.Days {
			if day.Present {
				sum, target = sum+day.Kcal, target+day.TargetKcal
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
	mean := func(all units.Kcal) string { return thousands(float64(all) / float64(days)) }
	return Line{"Energy needed", mean(sum) + " kcal a person-day",
		fmt.Sprintf("from %s (%s) to %s (%s); to eat from the packs %s, planned %s",
			thousands(low.value), low.who(t), thousands(high.value), high.who(t), mean(target), mean(planned))}
}

func food(p *plan.Plan, t *trip.Trip) Line {
	var sum units.Mass
	for _, intake := range p.Portions.Intakes {
		for _, day := range intake.Days {
			sum += day.Food
		}
	}
	days := PersonDays(p)
	if days == 0 || sum == 0 {
		return Line{"Food", "none planned", "Nothing on the menu has been portioned."}
	}
	return Line{"Food", (sum / units.Mass(days)).Format(t.Units) + " a person-day",
		fmt.Sprintf("%s in all, %s", sum.Format(t.Units), counted(len(p.Bags.Bags), "bag", "bags"))}
}

func leanest(p *plan.Plan, t *trip.Trip) Line {
	var low extreme
	for i, member := range p.Needs.Members {
		if i >= len(p.Portions.Intakes) {
			break
		}
		for j, day := range member.Days {
			if day.Present && day.TargetKcal > 0 && j < len(p.Portions.Intakes[i].Days) {
				low.least(float64(p.Portions.Intakes[i].Days[j].Kcal/day.TargetKcal), member.Member, j+1)
			}
		}
	}
	if !low.set {
		return Line{"Least-fed day", "no packed food is due", ""}
	}
	return Line{"Least-fed day", percent(low.value) + " of the target", low.who(t)}
}

func share(p *plan.Plan, t *trip.Trip) Line {
	var high extreme
	var load units.Mass
	for _, member := range p.Carry.Members {
		for i, day := range member.Days {
			if day.Present && (!high.set || day.Share > high.value) {
				high.most(day.Share, member.Member, i+1)
				load = day.Load
			}
		}
	}
	if !high.set {
		return Line{"Heaviest share", "nobody carries anything yet", ""}
	}
	bound := 0.0
	for _, stage := range p.Carry.Stages {
		bound = max(bound, stage.WorstBound)
	}
	return Line{"Heaviest share", percent(high.value) + " of capability",
		fmt.Sprintf("%s with %s; no split whatever can be below %s", high.who(t), kilograms(load, t.Units), percent(bound))}
}

func fuel(p *plan.Plan, t *trip.Trip) Line {
	var needed units.Mass
	names, counts := []string{}, map[string]int{}
	for _, leg := range p.Cooking.Fuel {
		needed += leg.Needed
		for _, container := range leg.Containers {
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

func water(p *plan.Plan, t *trip.Trip) Line {
	byDay := map[int]units.Volume{}
	var high, carried extreme
	for _, w := range p.Cooking.Water {
		byDay[w.Day] += w.Drinking
		high.most(float64(w.Drinking), w.Member, w.Day)
		if w.CarryIn > 0 {
			carried.most(float64(w.CarryIn), w.Member, w.Day)
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

func cost(p *plan.Plan, t *trip.Trip) Line {
	total := p.Shopping.Cost + p.Shopping.Fees
	more := p.Shopping.PerPersonDay.Format(t.Currency) + " a person-day"
	if p.Shopping.Unpriced > 0 {
		more += fmt.Sprintf("; %s unknown, so the true cost is higher", counted(p.Shopping.Unpriced, "price is", "prices are"))
	}
	return Line{"Cost", total.Format(t.Currency), more}
}

func box(b *resupply.Box, t *trip.Trip) Line {
	name := "a point that is not in the trip"
	if point := t.Point(b.Point); point != nil {
		name = point.Name
	}
	value := kilograms(b.Mass, t.Units) + ", " + counted(len(b.Bags), "bag", "bags")
	if !b.Posted {
		return Line{"Box for " + name, value, "brought by somebody, picked up " + orNotSet(b.PickUp)}
	}
	window := "post by " + orNotSet(b.PostBy)
	if b.PostFrom.IsSet() {
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

func found(p *plan.Plan) Line {
	return Line{"Findings", fmt.Sprintf("%d must fix, %d look at, %d notes",
		findings.Count(p.Findings, findings.MustFix), findings.Count(p.Findings, findings.LookAt), findings.Count(p.Findings, findings.Note)), ""}
}

func rounds(p *plan.Plan) Line {
	if p.Settled {
		return Line{"Plan", "settled", fmt.Sprintf("in %s; the last changed no load by %s or more", counted(p.Rounds, "round", "rounds"), "1 %")}
	}
	return Line{"Plan", "not settled", fmt.Sprintf("after %s a load still changed by %.1f %%", counted(p.Rounds, "round", "rounds"), p.Change*100)}
}
