package loads

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/written"
	"sumpter/domain/carry"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// waterKind is water to a dry camp in the list of a pack. It is no item of the
// split: it is poured on top of it, day by day.
const waterKind carry.ItemKind = "water"

// water is what a member carries to the dry camp of a day.
func (v *view) water(member trip.MemberID, day int) (thing, bool) {
	d, _ := v.load(member, day)
	if d.Water == 0 {
		return thing{}, false
	}
	return thing{
		kind: waterKind, key: strconv.FormatInt(int64(member), 10), carrier: member, mass: d.Water,
		name: lang.L("dry-camp water"), about: v.waterParts(&d),
	}, true
}

// waterOf reads whose water an id names.
func waterOf(id string) (trip.MemberID, bool) {
	key, ok := strings.CutPrefix(id, string(waterKind)+" ")
	member, err := strconv.ParseInt(key, 10, 64)
	return trip.MemberID(member), ok && err == nil
}

// waterParts tells drink and cooking water apart.
func (v *view) waterParts(d *carry.Day) string {
	system := v.plan.Trip.Units
	if d.ToCook == 0 {
		return lang.X("water-drink", "{{.Drink}} to drink", data{"Drink": written.Quantity(d.CarryIn(), system)})
	}
	return lang.X("water-parts", "{{.Drink}} to drink, {{.Cook}} to cook with", data{
		"Drink": written.Quantity(d.CarryIn()-d.ToCookWith(), system), "Cook": written.Quantity(d.ToCookWith(), system),
	})
}

// whyWater answers why a member carries so much of the water, beside the others
// of the cook group.
func (v *view) whyWater(id trip.MemberID, day int) []string {
	d, capability := v.load(id, day)
	m := v.plan.Trip.Member(id)
	if m == nil {
		return nil
	}
	system := v.plan.Trip.Units
	group := v.groupWater(m.Group, day)
	parts := []string{lang.X("why-water-drink", "{{.Drink}} is what {{.Name}} drinks at the camp and until there is water again; it stays with who drinks it.", data{
		"Drink": written.Quantity(d.CarryIn()-d.ToCookWith(), system), "Name": m.Name,
	})}
	if group.cooking > 0 {
		parts = append(parts, lang.X("why-water-cook", "{{.Cook}} of the {{.All}} that {{.Group}} cooks with: poured in steps of a tenth of a litre, each to whom it leaves least loaded by strength that day.", data{
			"Cook": written.Quantity(d.ToCookWith(), system), "All": written.Quantity(group.cooking, system), "Group": v.groupName(m.Group),
		}))
	}
	if capability > 0 {
		parts = append(parts, lang.X("why-water-share", "With the water {{.Name}} carries {{.Load}}, {{.Share}}; in the cook group it is {{.Least}} to {{.Most}}.", data{
			"Name": m.Name, "Load": v.kilograms(d.Load + d.Water), "Share": percent(withWater(d, capability)), "Least": percent(group.least), "Most": percent(group.most),
		}))
	}
	if limit, limited := m.LoadLimit.Get(); limited && d.Load+d.Water+100*units.Gram > limit {
		parts = append(parts, lang.X("why-water-limit", "More would pass the limit of {{.Limit}}.", data{"Limit": v.kilograms(limit)}))
	}
	return parts
}

// groupWater is the water of a cook group on a day, and the shares of its
// members with it.
type groupWater struct {
	cooking     units.Volume
	least, most float64
}

func (v *view) groupWater(id trip.GroupID, day int) groupWater {
	var g groupWater
	first := true
	for i := range v.plan.Trip.Crew {
		m := &v.plan.Trip.Crew[i]
		d, capability := v.load(m.ID, day)
		if m.Group != id || !d.Present {
			continue
		}
		g.cooking += d.ToCookWith()
		if capability == 0 {
			continue
		}
		share := withWater(d, capability)
		if first || share < g.least {
			g.least = share
		}
		first, g.most = false, max(g.most, share)
	}
	return g
}

// withWater is a load by strength with the water on top.
func withWater(d carry.Day, capability units.Mass) float64 {
	if capability == 0 {
		return 0
	}
	return float64(d.Load+d.Water) / float64(capability)
}

// worstWithWater is the heaviest share of a day with the water to a dry camp, 0
// on a day without.
func (v *view) worstWithWater(day int) float64 {
	worst, dry := 0.0, false
	for i := range v.plan.Carry.Members {
		m := &v.plan.Carry.Members[i]
		worst = max(worst, withWater(m.Days[day-1], m.Capability))
		dry = dry || m.Days[day-1].Water > 0
	}
	if !dry {
		return 0
	}
	return worst
}
