package spoilage

import (
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// group gathers the slots of one food that share a reason.
type group struct {
	first  *Fate
	reason reason
	slots  int
	last   int // day
	latest int // last day it could be eaten, least of the slots
}

// findings tells of each food once for each reason, at its first slot.
func (j *judge) findings() []findings.Finding {
	type key struct {
		food   trip.FoodID
		reason reason
	}
	at := map[key]int{}
	var groups []group
	melts, doubted := map[trip.FoodID]bool{}, map[trip.FoodID]bool{}
	var list []findings.Finding
	for i := range j.result.Fates {
		fate, why := &j.result.Fates[i], j.reasons[i]
		if fate.Melts && !melts[fate.Food] {
			melts[fate.Food] = true
			list = append(list, j.melting(fate))
		}
		if food := j.wares[fate.Food].food; food.Storage.Doubted() && !doubted[fate.Food] {
			doubted[fate.Food] = true
			list = append(list, doubt(food, fate))
		}
		if why == keeps || why == keptColdAllTheWay {
			continue
		}
		k := key{fate.Food, why}
		place, seen := at[k]
		if !seen {
			place = len(groups)
			at[k] = place
			groups = append(groups, group{first: fate, reason: why, latest: fate.LatestDay})
		}
		g := &groups[place]
		g.slots++
		g.last, g.latest = fate.Day, max(g.latest, fate.LatestDay)
	}
	for i := range groups {
		list = append(list, j.finding(&groups[i]))
	}
	findings.Sort(list)
	return list
}

func (j *judge) finding(g *group) findings.Finding {
	food := j.wares[g.first.Food].food
	f := findings.Finding{
		Stage: findings.Spoilage, Why: g.reason.source(), Remedy: j.remedy(g),
		Place: findings.Place{Day: g.first.Day, Meal: g.first.Meal, Group: g.first.Group, Food: food.ID},
	}
	when := prose.Say("for %s on day %d", g.first.Meal, g.first.Day)
	if g.slots > 1 {
		when = prose.Say("at %d meals on day %d", g.slots, g.first.Day)
	}
	if g.last > g.first.Day {
		when = prose.Say("at %d meals from day %d to %d", g.slots, g.first.Day, g.last)
	}
	switch {
	case g.reason.verdict() == NotSafe:
		f.Severity, f.Code = findings.MustFix, "food-not-safe"
		f.What = prose.Say("%s is not safe %s. %s", food.Name, when, g.reason.words())
		if g.first.Dose > 0 {
			f.What = f.What.Then(prose.Say("It uses %.1f times the time allowed.", g.first.Dose))
		}
	case g.reason == warmButFresh:
		f.Severity, f.Code = findings.Note, "food-warm"
		f.What = prose.Say("%s gets warm %s: %.0f %% of its shelf life is used. %s", food.Name, when, 100*g.first.QualityUsed, g.reason.words())
	default:
		f.Severity, f.Code = findings.LookAt, "food-not-known"
		f.What = prose.Say("Whether %s is good %s is not known. %s", food.Name, when, g.reason.words())
		if g.reason == pastShelf {
			f.What = f.What.Then(prose.Say("%.1f times its shelf life is used.", g.first.QualityUsed))
		}
	}
	return f
}

// remedy says what to do, first of all when to eat it instead.
func (j *judge) remedy(g *group) prose.Text {
	legFirst := j.legs[trip.LegOf(j.legs, g.first.Day)].FirstDay
	switch g.reason {
	case openTooLong:
		return prose.Say("Eat an opened package up at the same meal: set the portions to whole packages, or buy smaller ones.")
	case soakedTooLong:
		return prose.Say("Soak it for less than an hour, or use hot water.")
	case placeUnknown:
		return prose.Say("Ask how warm it gets where the box waits, and enter it.")
	case shelfUnknown:
		return prose.Say("Read the label and enter the days it keeps at 20 °C.")
	case warmButFresh:
		return prose.Say("Carry it in the middle of the pack, out of the sun, and eat it early.")
	case coldTooLong:
		return prose.Say("Buy it later, at most 7 days before it is eaten.")
	}
	earlier := g.latest >= legFirst && g.latest > 0
	switch {
	case g.reason == controlUnknown && earlier:
		return prose.Say("Serve it by day %d, or find out whether it must be kept cold and enter it, or choose something that keeps.", g.latest)
	case g.reason == controlUnknown:
		return prose.Say("Find out whether it must be kept cold and enter it, or choose something that keeps.")
	case g.reason == warmTooLong && earlier:
		return prose.Say("Serve it by day %d, or choose something that keeps without cooling, or keep it at 4 °C or below all the way (a cool box: enter its temperature as the car's).", g.latest)
	case g.reason == warmTooLong:
		return prose.Say("Choose something that keeps without cooling, or keep it at 4 °C or below all the way (a cool box: enter its temperature as the car's).")
	case earlier:
		return prose.Say("Serve it by day %d, or choose something that keeps longer, or a cooler way for it.", g.latest)
	default:
		return prose.Say("Choose something that keeps longer, or a cooler way for it.")
	}
}

func (j *judge) melting(fate *Fate) findings.Finding {
	food := j.wares[fate.Food].food
	softens, _ := food.Storage.SoftensAt.Get()
	return findings.Finding{
		Severity: findings.Note, Stage: findings.Spoilage, Code: "food-melts",
		Place:  findings.Place{Day: fate.Day, Meal: fate.Meal, Group: fate.Group, Food: food.ID},
		What:   prose.Say("%s melts before day %d: it softens at %s.", food.Name, fate.Day, softens),
		Why:    prose.Say("The highest temperature on its way, in a pack that stands in the sun."),
		Remedy: prose.Say("Pack it in a jar or a double bag, keep it in the middle of the pack, or take it on cooler days."),
	}
}

// doubt tells that the figures of a food speak against what was entered.
func doubt(food *trip.Food, fate *Fate) findings.Finding {
	activity, _ := food.Storage.WaterActivity.Get()
	acidity := prose.Say("its pH is not known")
	if ph, known := food.Storage.PH.Get(); known {
		acidity = prose.Say("its pH is %.1f", ph)
	}
	return findings.Finding{
		Severity: findings.LookAt, Stage: findings.Spoilage, Code: "cooling-doubted",
		Place:  findings.Place{Day: fate.Day, Meal: fate.Meal, Group: fate.Group, Food: food.ID},
		What:   prose.Say("%s is entered as keeping without cooling, but its water activity is %.2f and %s.", food.Name, activity, acidity),
		Why:    prose.Say("FDA Food Code 1-201.10, tables A and B: such figures need an assessment by the maker."),
		Remedy: prose.Say("Ask the maker whether it must be kept cold once bought, or enter that it must."),
	}
}
