package onward

import (
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// Parts of a day's planned food below which it is said (common practice, no
// source): a few lean days tire, more do harm.
const (
	lean   = 0.9
	hungry = 0.7
)

// tell lists what the leader must know of the rest.
func (w *work) tell(rest *Rest) []findings.Finding {
	var list []findings.Finding
	for _, day := range rest.Days {
		share := day.Share()
		f := findings.Finding{
			Stage: findings.Portions, Code: "rest-short", Place: findings.Place{Day: day.Number},
			What:   prose.Say("Day %d brings %.0f %% of the food planned for those who are there.", day.Number, 100*share),
			Why:    prose.Say("Below 90 %% people tire and cool sooner; below 70 %% for days on end walking is no longer safe (common practice, no source)."),
			Remedy: w.remedy(rest, day.Number),
		}
		switch {
		case day.Planned <= 0 || share >= lean:
			continue
		case share >= hungry:
			f.Severity = findings.LookAt
		default:
			f.Severity = findings.MustFix
		}
		list = append(list, f)
	}
	if len(rest.Spare) > 0 {
		list = append(list, findings.Finding{
			Severity: findings.Note, Stage: findings.Bags, Code: "rest-spare", Place: findings.Place{Day: w.from},
			What:   prose.Say("%d bags were packed for members who are not there any more.", len(rest.Spare)),
			Why:    prose.Say("They hold one eater's own part, fit for that eater's allergies and diet."),
			Remedy: prose.Say("Let them take the bags along, or give each to somebody the list names for it; nobody else."),
		})
	}
	findings.Sort(list)
	return list
}

// remedy names the next place where food is taken on, if there is one.
func (w *work) remedy(rest *Rest, day int) prose.Text {
	if len(rest.Moves) > 0 {
		return prose.Say("Take over the proposed meals, which spread what is left; then eat a little less on each day, or buy food on the way.")
	}
	for _, leg := range rest.Plan.Legs {
		if leg.FirstDay > w.from && leg.FirstDay <= day {
			if point := rest.Plan.Trip.Point(leg.From); point != nil {
				return prose.Say("Buy the missing food at %s, or shorten the way.", point.Name)
			}
		}
	}
	if short := trip.LegOf(rest.Plan.Legs, w.from); short >= 0 {
		return prose.Say("Food in the packs reaches for %.1f days: buy on the way, shorten it, or turn back while it still reaches.", rest.Lasts.Full)
	}
	return prose.Say("Buy on the way, or shorten it.")
}
