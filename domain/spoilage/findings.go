package spoilage

import (
	"fmt"

	"sumpter/domain/findings"
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
	melts := map[trip.FoodID]bool{}
	var list []findings.Finding
	for i := range j.result.Fates {
		fate, why := &j.result.Fates[i], j.reasons[i]
		if fate.Melts && !melts[fate.Food] {
			melts[fate.Food] = true
			list = append(list, j.melting(fate))
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
	when := fmt.Sprintf("for %s on day %d", g.first.Meal, g.first.Day)
	if g.slots > 1 {
		when = fmt.Sprintf("at %d meals on day %d", g.slots, g.first.Day)
	}
	if g.last > g.first.Day {
		when = fmt.Sprintf("at %d meals from day %d to %d", g.slots, g.first.Day, g.last)
	}
	switch {
	case g.reason.verdict() == NotSafe:
		f.Severity, f.Code = findings.MustFix, "food-not-safe"
		f.What = fmt.Sprintf("%s is not safe %s. %s", food.Name, when, g.reason.words())
		if g.first.Dose > 0 {
			f.What += fmt.Sprintf(" It uses %.1f times the time allowed.", g.first.Dose)
		}
	case g.reason == warmButFresh:
		f.Severity, f.Code = findings.Note, "food-warm"
		f.What = fmt.Sprintf("%s gets warm %s: %.0f %% of its shelf life is used. %s", food.Name, when, 100*g.first.QualityUsed, g.reason.words())
	default:
		f.Severity, f.Code = findings.LookAt, "food-not-known"
		f.What = fmt.Sprintf("Whether %s is good %s is not known. %s", food.Name, when, g.reason.words())
		if g.reason == pastShelf {
			f.What += fmt.Sprintf(" %.1f times its shelf life is used.", g.first.QualityUsed)
		}
	}
	return f
}

// remedy says what to do, first of all when to eat it instead.
func (j *judge) remedy(g *group) string {
	legFirst := j.legs[trip.LegOf(j.legs, g.first.Day)].FirstDay
	switch g.reason {
	case openTooLong:
		return "Eat an opened package up at the same meal: set the portions to whole packages, or buy smaller ones."
	case soakedTooLong:
		return "Soak it for less than an hour, or use hot water."
	case placeUnknown:
		return "Ask how warm it gets where the box waits, and enter it."
	case shelfUnknown:
		return "Read the label and enter the days it keeps at 20 °C."
	case warmButFresh:
		return "Carry it in the middle of the pack, out of the sun, and eat it early."
	case coldTooLong:
		return "Buy it later, at most 7 days before it is eaten."
	}
	earlier := ""
	if g.latest >= legFirst && g.latest > 0 {
		earlier = fmt.Sprintf("Serve it by day %d, or ", g.latest)
	}
	switch g.reason {
	case controlUnknown:
		return earlier + upper(earlier, "find out whether it must be kept cold and enter it, or choose something that keeps.")
	case warmTooLong:
		return earlier + upper(earlier, "choose something that keeps without cooling, or keep it at 4 °C or below all the way (a cool box: enter its temperature as the car's).")
	default:
		return earlier + upper(earlier, "choose something that keeps longer, or a cooler way for it.")
	}
}

// upper begins a sentence with a capital letter where nothing stands before it.
func upper(before, sentence string) string {
	if before == "" {
		return string(sentence[0]-'a'+'A') + sentence[1:]
	}
	return sentence
}

func (j *judge) melting(fate *Fate) findings.Finding {
	food := j.wares[fate.Food].food
	softens, _ := food.Storage.SoftensAt.Get()
	return findings.Finding{
		Severity: findings.Note, Stage: findings.Spoilage, Code: "food-melts",
		Place:  findings.Place{Day: fate.Day, Meal: fate.Meal, Group: fate.Group, Food: food.ID},
		What:   fmt.Sprintf("%s melts before day %d: it softens at %s.", food.Name, fate.Day, softens.Format(j.trip.Units)),
		Why:    "The highest temperature on its way, in a pack that stands in the sun.",
		Remedy: "Pack it in a jar or a double bag, keep it in the middle of the pack, or take it on cooler days.",
	}
}
