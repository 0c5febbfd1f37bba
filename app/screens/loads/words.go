package loads

import (
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/cooking"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// data is the values of a sentence.
type data = map[string]any

func kindWord(kind trip.GearKind) string { return lang.L(string(kind)) }

func wasteWord() string { return lang.L("wrappings and empties") }

func fuelWords(c *cooking.Container, day int) string {
	if c.EmptyFrom > 0 && day >= c.EmptyFrom {
		return lang.L("fuel, empty")
	}
	return lang.L("fuel")
}

func (v *view) aboutBag(b *bags.Bag) string {
	words := []string{bench.BagDays(b)}
	if m := v.plan.Trip.Member(b.Member); m != nil {
		words = append(words, lang.X("for-member", "for {{.Name}}", data{"Name": m.Name}))
	}
	words = append(words, bench.BagName(v.plan.Trip, b))
	return strings.Join(words, ", ")
}

func (v *view) memberName(id trip.MemberID) string {
	if m := v.plan.Trip.Member(id); m != nil {
		return m.Name
	}
	return "–"
}

func (v *view) groupName(id trip.GroupID) string {
	if g := v.plan.Trip.Group(id); g != nil {
		return g.Name
	}
	return ""
}

// title is how people call a thing: "bag 3-05K", "First-aid kit".
func (t *thing) title() string {
	if t.kind == carry.BagItem {
		return lang.X("bag-title", "bag {{.Code}}", data{"Code": t.name})
	}
	return t.name
}

// percent writes a share with one decimal: the fairness lies in tenths.
func percent(share float64) string { return written.Number(100*share, 1) + " %" }

// kilograms writes a load in the reader's large unit with one decimal.
func (v *view) kilograms(m units.Mass) string {
	if v.plan.Trip.Units == units.US {
		return written.Number(m.Pounds(), 1) + " lb"
	}
	return written.Number(m.Kilograms(), 1) + " kg"
}

// inUnit gives a mass as a number of the reader's large unit.
func (v *view) inUnit(m units.Mass) float64 {
	if v.plan.Trip.Units == units.US {
		return m.Pounds()
	}
	return m.Kilograms()
}

// obstacle says why a thing may not go to a member, "" where it may.
func (v *view) obstacle(t *thing, to trip.MemberID, day int) string {
	m := v.plan.Trip.Member(to)
	if m == nil {
		return lang.L("Nobody is there.")
	}
	o := carry.Obstacle{}
	here := *m
	here.FirstDay, here.LastDay, here.Standby = 0, 0, false // they may have joined on the way
	switch {
	case !v.there(to, day):
		o.Kind = carry.NotThere
	case t.kind == carry.BagItem:
		o = carry.BagObstacle(v.plan.Trip, t.bag, &here, day)
	case (t.kind == carry.GearItem || t.kind == carry.FuelItem) && v.anyThere(t.group, day):
		o = carry.GearObstacle(v.plan.Trip, t.group, &here, day)
	}
	switch o.Kind {
	case carry.NotThere:
		return lang.X("obstacle-not-there", "{{.Name}} is not there on day {{.Day}}.", data{"Name": m.Name, "Day": day})
	case carry.OtherGroup:
		return lang.X("obstacle-group", "It belongs to {{.Group}} and stays with that cook group; whose a piece is can be changed under “Gear and fuel”.", data{"Group": v.groupName(o.Group)})
	case carry.Harmful:
		return v.harmWords(m, o)
	default:
		return ""
	}
}

func (v *view) harmWords(m *trip.Member, o carry.Obstacle) string {
	food := lang.L("A food in it")
	if f := v.plan.Trip.Food(o.Food); f != nil {
		food = f.Name
	}
	values := data{"Food": food, "Allergen": bench.AllergenWord(o.Allergen, v.plan.Trip.Units), "Name": m.Name}
	switch o.State {
	case trip.Contains:
		return lang.X("obstacle-contains", "{{.Food}} contains {{.Allergen}}, and {{.Name}} is allergic to it.", values)
	case trip.MayContain:
		return lang.X("obstacle-may", "{{.Food}} may contain {{.Allergen}}, and traces harm {{.Name}}.", values)
	default:
		return lang.X("obstacle-unknown", "Nobody knows whether {{.Food}} is free of {{.Allergen}}, and traces harm {{.Name}}. Read the label.", values)
	}
}

// fixed says why a thing cannot be moved at all, "" where it can.
func (t *thing) fixed() string {
	switch t.kind {
	case carry.WasteItem:
		return lang.L("Wrappings and empties stay light and go where the fair split puts them; move a bag, a piece of gear or fuel instead.")
	case waterKind:
		return lang.L("The water is poured anew whenever the loads change: move a bag, a piece of gear or fuel, or lower a strength, and it follows.")
	default:
		return ""
	}
}

// tenths writes a number with one decimal.
func tenths(value float64) string { return written.Number(value, 1) }
