package packing

import (
	"slices"
	"strings"

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
			prose.Say("Packing in rounds keeps %s apart: rounds %d, cleanings %d.", n.allNames(), len(rounds), cleanings(rounds)),
			prose.Say("Traces pass on by hands, scoops, scales and dust; heat and rinsing do not remove an allergen (common practice, no source)."),
			prose.Say("Wash hands, tools and table with soap before each round that asks for it, use fresh cloths, and ask the allergic member or their doctor what they need."))
	}
	for i := range rounds {
		list = append(list, n.apartFindings(rounds, r, i)...)
	}
	if count := n.fineWeighings(r.Bulk); count > 0 {
		add(findings.Note, "fine-weighing", 0,
			prose.Say("Weighings under %s, on a scale that shows %s: %d.", fineSteps*n.trip.Settings.ScaleStep, n.trip.Settings.ScaleStep, count),
			prose.Say("A scale is wrong by up to a step."), prose.Say("Use a finer scale for salt and spices, or mix them for several bags and divide."))
	}
	if r.Minutes > longNight {
		add(findings.LookAt, "long-night", 0,
			nightLength(r.Minutes, n.trip.Settings.Helpers),
			prose.Say("Rough figures for each weighing, label and cleaning; tired helpers mix up bags (common practice, no source)."),
			prose.Say("Find more helpers, or pack on two evenings, a round or two on each."))
	}
	return list
}

func nightLength(m units.Minutes, helpers int) prose.Text {
	hours := float64(m) / 60
	if helpers <= 1 {
		return prose.Say("Packing takes one person alone about %.1f hours.", hours)
	}
	return prose.Say("Packing takes about %.1f hours with %d helpers.", hours, helpers)
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

// apartFindings tells what must be done before the first bag is packed, to
// keep a round clean.
func (n *night) apartFindings(rounds []round, r *Result, at int) []findings.Finding {
	var list []findings.Finding
	here := &r.Rounds[at]
	severity := findings.Note
	if strings.Contains(string(rounds[at].guards), "1") {
		severity = findings.LookAt
	}
	if here.Table > 1 && rounds[at].clean && (at == 0 || r.Rounds[at-1].Table != here.Table) {
		list = append(list, findings.Finding{
			Severity: severity, Stage: findings.Packing, Code: "own-table",
			What:   prose.Say("Bags %s are packed at table %d: no order on one table keeps them from what harms who eats them.", here.Name, here.Table),
			Why:    prose.Say("Nothing for somebody harmed by traces is packed where their allergen was, even after cleaning (common practice, no source)."),
			Remedy: prose.Say("Set up another table with its own scale, scoops and cloths, or pack these bags on another evening; no helper changes tables without washing."),
		})
	}
	if len(here.SetAside) > 0 {
		var amounts []prose.Text
		for _, a := range here.SetAside {
			amounts = append(amounts, prose.Say("%s %s", a.Mass, n.foods[a.Food].Name))
		}
		first := slices.MinFunc(here.SetAside, func(a, b Aside) int { return a.Before - b.Before })
		list = append(list, findings.Finding{
			Severity: severity, Stage: findings.Packing, Code: "set-aside",
			What:   prose.Say("Round %d, %s, needs foods that an earlier round opens beside an allergen.", at+1, here.Name),
			Why:    prose.Say("What was open on a table with an allergen is no longer free of it."),
			Remedy: prose.Say("Before round %d begins, set aside in closed boxes: %s.", first.Before+1, prose.List(", ", amounts)),
		})
	}
	return list
}

// setAside finds, for each food of a round, the first round before it that
// soils it: on the same table with all that was there since it was cleaned, or
// on another.
func (n *night) setAside(rounds []round, bulk []Bulk, at int) []Aside {
	soil := make([]touched, at) // what has been on the table since it was cleaned
	for i := range soil {
		soil[i] = rounds[i].touches
		if !rounds[i].clean {
			soil[i] = soil[i].or(soil[i-1])
		}
	}
	var list []Aside
	for _, later := range bulk {
		if later.Round != at {
			continue
		}
		for _, first := range bulk {
			if first.Food == later.Food && first.Round < at && !soil[first.Round].within(rounds[at].touches) {
				list = append(list, Aside{later.Food, later.Total, first.Round})
				break
			}
		}
	}
	return list
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
