package onward

import (
	"slices"
	"strconv"

	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
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
	list = append(list, w.tellShort(rest)...)
	list = append(list, w.tellBack(rest)...)
	list = append(list, w.tellUnsafe()...)
	list = append(list, w.tellFuel(rest)...)
	list = append(list, w.tellBags(rest)...)
	list = append(list, w.tellNew(rest)...)
	return list
}

func (w *work) tellShort(rest *Rest) []findings.Finding {
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
	return list
}

// remedy names what can be done for a lean day: proposed meals first, then the
// place where food can be bought.
func (w *work) remedy(rest *Rest, day int) prose.Text {
	switch {
	case len(rest.Moves) > 0:
		return prose.Say("Take over the proposed meals, which spread what is left; then eat a little less on each day, or buy food on the way.")
	case len(rest.Gifts) > 0:
		return prose.Say("Give the bags that are free to who is short, as proposed; then eat a little less on each day, or buy food on the way.")
	}
	for _, buy := range rest.Buy {
		if point := w.trip.Point(buy.Point); point != nil && buy.Day <= day && day <= buy.Until {
			return prose.Say("Buy %.0f kcal at %s for days %d to %d.", float64(buy.Kcal), point.Name, buy.Day, buy.Until).Then(w.foodsToBuy(buy))
		}
	}
	return prose.Say("No place to buy food comes before: ask at houses and huts on the way, share out evenly, or shorten the way.")
}

// mostNamed foods are named in a sentence.
const mostNamed = 4

func (w *work) foodsToBuy(buy Purchase) prose.Text {
	var words []prose.Text
	for _, f := range buy.Foods[:min(mostNamed, len(buy.Foods))] {
		if food := w.foods[f.Food]; food != nil {
			words = append(words, prose.Say("%s of %s", f.Mass, food.Name))
		}
	}
	if len(words) == 0 {
		return prose.Text{}
	}
	return prose.Say("Missing are above all: %s.", prose.List(", ", words))
}

// tellBack says until when to turn back where the way on cannot be fed.
func (w *work) tellBack(rest *Rest) []findings.Finding {
	if !rest.Back.Needed {
		return nil
	}
	var lasts []prose.Text
	for _, l := range rest.Lasts {
		if group := w.trip.Group(l.Group); group != nil && l.Some < float64(l.UntilFood) {
			lasts = append(lasts, prose.Say("%s: %.1f days of all they need, %.1f days at 80 %%", group.Name, l.Full, l.Some))
		}
	}
	f := findings.Finding{
		Severity: findings.MustFix, Stage: findings.Resupply, Code: "rest-turn-back", Place: findings.Place{Day: w.from},
		What: prose.Plural(rest.Lasts[0].UntilFood,
			prose.Say("The food in the packs does not reach the next food, a day on. %s.", prose.List("; ", lasts)),
			prose.Say("The food in the packs does not reach the next food, %d days on. %s.", rest.Lasts[0].UntilFood, prose.List("; ", lasts))),
		Why: prose.Say("What is left of each cook group against the need of those who are there. The way back is reckoned in as many days as the way there."),
	}
	where := prose.Say("where the trip began")
	if point := w.trip.Point(rest.Back.To); point != nil {
		where = prose.Verbatim(point.Name)
	}
	days := prose.Plural(rest.Back.Days, prose.Say("the day"), prose.Say("the %d days", rest.Back.Days))
	switch {
	case rest.Back.By > 0 && rest.Back.By >= w.from:
		f.Remedy = prose.Say("Buy food on the way, or turn back on the evening of day %d at the latest: until then what is left feeds %s back to %s at 80 %% of the need.", rest.Back.By, days, where)
	case rest.Back.By > 0:
		f.Remedy = prose.Say("Turn back this morning, or find food on the way: what is left feeds %s back to %s at 80 %% of the need today, and not if you turn back later.", days, where)
	default:
		f.Remedy = prose.Say("What is left does not feed %s back to %s either: find food near, take the shortest safe way out, and call for help while you still have some.", days, where)
	}
	return []findings.Finding{f}
}

// tellUnsafe names dishes kept too long, bags given to who may not eat them,
// and who gets nothing because nothing is known to be safe for them.
func (w *work) tellUnsafe() []findings.Finding {
	var list []findings.Finding
	for i := range w.lots {
		l := &w.lots[i]
		if recipe := w.recipes[l.recipe]; recipe != nil && len(l.bags) > 0 && l.now.day > l.latest {
			list = append(list, findings.Finding{
				Severity: findings.MustFix, Stage: findings.Spoilage, Code: "rest-past",
				Place:  findings.Place{Day: l.now.day, Meal: l.now.meal, Group: l.now.group, Recipe: l.recipe},
				What:   prose.Say("%s is to be eaten on day %d; it is known to be good until day %d only.", recipe.Name, l.now.day, l.latest),
				Why:    prose.Say("It was packed for day %d. What is not known to keep counts as not keeping.", l.home.day),
				Remedy: prose.Say("Eat it earlier, or throw it away."),
			})
		}
	}
	for _, g := range w.unsafe {
		if bag, member := w.planned(g.bag), w.trip.Member(g.to); bag != nil && member != nil {
			list = append(list, findings.Finding{
				Severity: findings.MustFix, Stage: findings.Bags, Code: "rest-given", Place: findings.Place{Day: g.day, Member: g.to, Bag: g.bag},
				What:   prose.Say("Bag %s was given to %s, who may not eat all that is in it.", bag.Code, member.Name),
				Why:    prose.Say("Something in it is not plainly free of what %s must not eat.", member.Name),
				Remedy: prose.Say("Give it to somebody the list names for it, or to nobody."),
			})
		}
	}
	return append(list, w.tellRefused()...)
}

func (w *work) tellRefused() []findings.Finding {
	meals := map[trip.MemberID]int{}
	for i := range w.lots {
		for _, id := range w.lots[i].refused {
			meals[id]++
		}
	}
	var list []findings.Finding
	for i := range w.trip.Crew {
		m := &w.trip.Crew[i]
		if n := meals[m.ID]; n > 0 {
			list = append(list, findings.Finding{
				Severity: findings.MustFix, Stage: findings.Menu, Code: "rest-nothing-safe", Place: findings.Place{Day: w.from, Member: m.ID},
				What:   prose.Plural(n, prose.Say("%s gets nothing of %d dish.", m.Name, n), prose.Say("%s gets nothing of %d dishes.", m.Name, n)),
				Why:    prose.Say("Something in them is not plainly free of what %s must not eat. Unknown is not safe.", m.Name),
				Remedy: prose.Say("Have %s bring food of their own for these meals, or buy some.", m.Name),
			})
		}
	}
	return list
}

func (w *work) tellFuel(rest *Rest) []findings.Finding {
	var list []findings.Finding
	for _, f := range rest.Fuel {
		group := w.trip.Group(f.Group)
		if group == nil {
			continue
		}
		list = append(list, findings.Finding{
			Severity: findings.MustFix, Stage: findings.Cooking, Code: "rest-fuel", Place: findings.Place{Day: f.From, Group: f.Group},
			What:   prose.Say("%s needs %s of %s from day %d to %d and has %s.", group.Name, f.Need, f.Kind, f.From, rest.Plan.Legs[f.Leg].LastDay, f.Have),
			Why:    prose.Say("What was found in the containers or was left by plan, against the dishes as they are now cooked, without any reserve for wind."),
			Remedy: w.fuelRemedy(&f),
		})
	}
	return list
}

func (w *work) fuelRemedy(f *Fuel) prose.Text {
	var ways []prose.Text
	for _, spare := range f.Spare {
		if group := w.trip.Group(spare.Group); group != nil {
			ways = append(ways, prose.Say("Take up to %s from %s.", spare.Mass, group.Name))
		}
	}
	var cold []prose.Text
	saved := units.Mass(0)
	for _, dish := range f.Cold {
		saved += dish.Saves
		if recipe := w.recipes[dish.Recipe]; recipe != nil {
			cold = append(cold, prose.Say("%s (day %d, %s)", recipe.Name, dish.Day, dish.Meal))
		}
	}
	if len(cold) > 0 {
		ways = append(ways, prose.Say("Make cold: %s. That saves %s.", prose.List(", ", cold), saved))
	}
	if point := w.trip.Point(f.Sold); point != nil {
		ways = append(ways, prose.Say("Buy fuel at %s after day %d.", point.Name, point.AfterDay))
	}
	if len(ways) == 0 {
		return prose.Say("Nothing of it can be made cold and no point sells fuel: cook for two groups on one stove, leave out hot drinks, keep the lid on, or eat what needs no cooking first.")
	}
	return prose.List(" ", ways)
}

func (w *work) tellBags(rest *Rest) []findings.Finding {
	var list []findings.Finding
	if n := len(rest.Spare); n > 0 {
		list = append(list, findings.Finding{
			Severity: findings.Note, Stage: findings.Bags, Code: "rest-spare", Place: findings.Place{Day: w.from},
			What:   prose.Plural(n, prose.Say("%d bag was packed for a member who is not there any more.", n), prose.Say("%d bags were packed for members who are not there any more.", n)),
			Why:    prose.Say("They hold one eater's own part, fit for that eater's allergies and diet."),
			Remedy: prose.Say("Let them take the bags along, or give each to somebody the list names for it; nobody else."),
		})
	}
	if n := len(rest.Unticked); n > 0 {
		list = append(list, findings.Finding{
			Severity: findings.LookAt, Stage: findings.Packing, Code: "rest-unticked", Place: findings.Place{Day: w.from, Bag: rest.Unticked[0]},
			What:   prose.Plural(n, prose.Say("%d bag was not ticked on packing night.", n), prose.Say("%d bags were not ticked on packing night.", n)),
			Why:    prose.Say("They are reckoned as there. Nobody noted that they were filled."),
			Remedy: prose.Say("Look whether they are there, and tick them or say that they were not packed."),
		})
	}
	return list
}

// tellNew repeats what cooking and loads find in the rest and did not find in
// the plan: water for a dish that moved to a dry camp, a pot too small, a load
// past its limit.
func (w *work) tellNew(rest *Rest) []findings.Finding {
	known := map[string]bool{}
	for _, f := range slices.Concat(w.plan.Cooking.Findings, w.plan.Carry.Findings) {
		known[told(f)] = true
	}
	since := w.from
	for _, stage := range rest.Plan.Carry.Stages {
		if stage.FirstDay <= w.from && w.from <= stage.LastDay {
			since = stage.FirstDay // what is said of a stage is said on its first day
		}
	}
	var list []findings.Finding
	for _, f := range slices.Concat(rest.Plan.Cooking.Findings, rest.Plan.Carry.Findings) {
		if late := f.Place.Day == 0 || f.Place.Day >= since; late && rest.Changed && f.Severity != findings.Note && !known[told(f)] {
			known[told(f)] = true
			list = append(list, f)
		}
	}
	return list
}

// told is what makes two findings the same to who reads them.
func told(f findings.Finding) string {
	return string(f.Stage) + " " + f.Code + " " + strconv.FormatInt(int64(f.Place.Member), 10) + " " + f.What.String()
}
