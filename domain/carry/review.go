package carry

import (
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// reviewFuel says how fuel is packed where it cannot be kept in packs without
// shared food.
func (c *calculation) reviewFuel() {
	var names []prose.Text
	for i := range c.Trip.Crew {
		if id := c.Trip.Crew[i].ID; c.carriesBoth(id) {
			names = append(names, prose.Verbatim(c.Trip.Crew[i].Name))
		}
	}
	if len(names) == 0 {
		return
	}
	c.find(findings.Note, "fuel-beside-food", findings.Place{},
		prose.Say("Liquid fuel and food of the group are in one pack with %s.", joinNames(names)),
		prose.Say("The fair split keeps them apart only as far as no pack gets heavier than the heaviest. Fuel that leaks spoils food and can poison."),
		prose.Say("Carry the bottle outside, upright, in a bag of its own and below the food; tighten and check it each morning (common practice, no source)."))
}

// carriesBoth tells whether a member has liquid fuel and shared food in one
// stage.
func (c *calculation) carriesBoth(member trip.MemberID) bool {
	for i := range c.result.Stages {
		fuel, food := false, false
		for _, item := range c.result.Stages[i].Items {
			if item.Carrier == member {
				fuel = fuel || item.Kind == FuelItem && c.liquid[item.Key]
				food = food || item.Kind == BagItem && !c.own[item.Key]
			}
		}
		if fuel && food {
			return true
		}
	}
	return false
}
