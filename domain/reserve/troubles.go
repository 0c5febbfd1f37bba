package reserve

import (
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/spoilage"
	"sumpter/domain/trip"
)

// Findings tells what the leader must know about the choice.
func (p *Planner) Findings() []findings.Finding { return p.seen }

func (p *Planner) note(severity findings.Severity, code string, place findings.Place, what, why, remedy prose.Text) {
	p.seen = append(p.seen, findings.Finding{Severity: severity, Stage: findings.Portions, Code: code, Place: place, What: what, Why: why, Remedy: remedy})
}

// lookAtWanted judges the recipe of the settings.
func (p *Planner) lookAtWanted(recipe *trip.Recipe, given map[trip.MemberID]serving) {
	place := findings.Place{Recipe: recipe.ID}
	if recipe.NeedsFlame() {
		p.note(findings.LookAt, "reserve-needs-flame", place,
			prose.Say("The emergency reserve is made of %s, which needs a flame.", recipe.Name),
			prose.Say("A reserve is for when stove, fuel or time are gone (common practice, no source)."),
			prose.Say("Choose a recipe that is eaten as it is, or none: then the program chooses."))
	}
	told := map[trip.FoodID]bool{}
	for i := range p.trip.Crew {
		member := &p.trip.Crew[i]
		one, served := given[member.ID]
		if !served {
			continue
		}
		food, verdict := p.worst(member, one)
		if food == nil || told[food.ID] {
			continue
		}
		told[food.ID] = true
		_, last := days(p.trip, member)
		severity, what := findings.LookAt, prose.Say("%s in the emergency reserve melts or is past its shelf life by day %d.", food.Name, last)
		switch verdict {
		case spoilage.NotSafe:
			severity, what = findings.MustFix, prose.Say("%s in the emergency reserve is not safe to eat by day %d.", food.Name, last)
		case spoilage.NotKnown:
			what = prose.Say("Whether %s in the emergency reserve is safe to eat on day %d is not known.", food.Name, last)
		}
		p.note(severity, "reserve-does-not-keep", findings.Place{Recipe: recipe.ID, Food: food.ID}, what,
			prose.Say("The reserve lies in a warm pack from the first to the last day."),
			prose.Say("Choose a recipe of dry foods, or let the program choose."))
	}
}

// lookAtNone names who has no reserve, together those who leave on one day.
func (p *Planner) lookAtNone(left []trip.MemberID) {
	for len(left) > 0 {
		last := lastOf(p.trip, p.trip.Member(left[0]))
		var names []string
		var places []findings.Place
		var rest []trip.MemberID
		for _, id := range left {
			if member := p.trip.Member(id); lastOf(p.trip, member) == last {
				names, places = append(names, member.Name), append(places, findings.Place{Member: id})
			} else {
				rest = append(rest, id)
			}
		}
		who := prose.List(", ", names)
		p.note(findings.LookAt, "reserve-none", places[0],
			prose.Say("There is no emergency reserve for %s.", who),
			prose.Say("No recipe for lunch or snacks can be eaten without flame and water, keeps to day %d and suits %s.", last, who),
			prose.Say("Add such a recipe: nuts, dried fruit, bars."))
		p.seen[len(p.seen)-1].Also = places[1:]
		left = rest
	}
}

func lastOf(t *trip.Trip, member *trip.Member) int {
	_, last := days(t, member)
	return last
}
