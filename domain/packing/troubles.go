package packing

import (
	"slices"

	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// longNight in minutes, from which work gets careless. Common practice, no source.
const longNight = 240

// fineSteps of the scale under which a weighing is more guess than measure.
const fineSteps = 3

func (n *night) findings(rounds []round, r *Result) []findings.Finding {
	var list []findings.Finding
	add := func(severity findings.Severity, code string, food trip.FoodID, what, why, remedy prose.Text) {
		list = append(list, findings.Finding{
			Severity: severity, Stage: findings.Packing, Code: code, Place: findings.Place{Food: food},
			What: what, Why: why, Remedy: remedy,
		})
	}
	if len(n.allergies) > 0 && len(rounds) > 0 {
		add(findings.Note, "cross-contact", 0,
			prose.Say("%d rounds with %d cleanings keep %s apart.", len(rounds), cleanings(rounds), n.allNames()),
			prose.Say("Traces pass on by hands, scoops, scales and dust; heat and rinsing do not remove an allergen (common practice, no source)."),
			prose.Say("Wash hands, tools and table with soap before each round that asks for it, use fresh cloths, and ask the allergic member or their doctor what they need."))
	}
	for _, s := range n.shared(rounds, r.Bulk) {
		severity := findings.LookAt
		if s.severe {
			severity = findings.MustFix
		}
		add(severity, "set-aside", s.food,
			prose.Say("%s is used in a round with %s and again in the later round %s.", n.foods[s.food].Name, s.allergen, n.name(rounds[s.later].touches)),
			prose.Say("What was open on a table with an allergen is no longer free of it."),
			prose.Say("Set %s of it aside, closed, before round %d begins.", s.mass, s.dirty+1))
	}
	if count := n.fineWeighings(r.Bulk); count > 0 {
		add(findings.Note, "fine-weighing", 0,
			prose.Say("%d weighings are under %s, on a scale that shows %s.", count, fineSteps*n.trip.Settings.ScaleStep, n.trip.Settings.ScaleStep),
			prose.Say("A scale is wrong by up to a step."), prose.Say("Use a finer scale for salt and spices, or mix them for several bags and divide."))
	}
	if r.Minutes > longNight {
		add(findings.LookAt, "long-night", 0,
			prose.Say("Packing takes about %.1f hours with %d helpers.", float64(r.Minutes)/60, max(1, n.trip.Settings.Helpers)),
			prose.Say("Rough figures for each weighing, label and cleaning; tired helpers mix up bags (common practice, no source)."),
			prose.Say("Find more helpers, or pack on two evenings, a round or two on each."))
	}
	return list
}

func cleanings(rounds []round) int {
	count := 0
	for _, r := range rounds {
		if r.clean {
			count++
		}
	}
	return count
}

func (n *night) allNames() prose.Text {
	var names []trip.Allergen
	for _, a := range n.allergies {
		names = append(names, a.allergen)
	}
	return prose.List(", ", names)
}

// sharing is a food that has been open beside an allergen and is used again in
// a round that must be free of it.
type sharing struct {
	food         trip.FoodID
	allergen     trip.Allergen
	severe       bool
	dirty, later int // rounds
	mass         units.Mass
}

// shared finds, for each food, the first round that soils it for a later one.
func (n *night) shared(rounds []round, bulk []Bulk) []sharing {
	soil := make([][]byte, len(rounds)) // what has been on the table since it was cleaned
	for i, r := range rounds {
		soil[i] = []byte(r.touches)
		if !r.clean {
			for a := range soil[i] {
				soil[i][a] = max(soil[i][a], soil[i-1][a])
			}
		}
	}
	var list []sharing
	for _, first := range bulk {
		if slices.ContainsFunc(list, func(s sharing) bool { return s.food == first.Food }) {
			continue
		}
		found := sharing{food: first.Food, dirty: first.Round}
		for _, later := range bulk {
			if later.Food == first.Food && later.Round > first.Round {
				n.soiled(&found, soil[first.Round], rounds[later.Round].touches, later)
			}
		}
		if found.mass > 0 {
			list = append(list, found)
		}
	}
	return list
}

// soiled adds a later use of a food if the soil of its first would spoil it.
func (n *night) soiled(s *sharing, soil []byte, touches touched, later Bulk) {
	spoilt := false
	for i, a := range n.allergies {
		if soil[i] == '0' || touches[i] == '1' {
			continue
		}
		spoilt = true
		if s.allergen == "" || a.severe && !s.severe {
			s.allergen, s.severe, s.later = a.allergen, a.severe, later.Round
		}
	}
	if spoilt {
		s.mass += later.Total
	}
}

func (n *night) fineWeighings(bulk []Bulk) int {
	count := 0
	for _, b := range bulk {
		for _, w := range b.Into {
			if w.Mass < fineSteps*n.trip.Settings.ScaleStep {
				count++
			}
		}
	}
	return count
}
