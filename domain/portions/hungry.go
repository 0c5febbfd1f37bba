package portions

import (
	"slices"

	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/science/foodenergy"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// badlyShort is the part of a day's need below which a finding must be fixed (design choice).
const badlyShort = 0.8

// hungry is a member's day with too little energy, in kcal.
type hungry struct {
	member, day  int // place in the crew; 1-based
	eats, target float64
}

func (h *hungry) severity() findings.Severity {
	if h.eats < h.target*badlyShort {
		return findings.MustFix
	}
	return findings.LookAt
}

func (h *hungry) share() float64 { return 100 * h.eats / h.target }

// hungryDays tells once of each day and severity who gets too little: it is one
// menu that must be mended.
func (s *sizer) hungryDays(all []hungry) []findings.Finding {
	slices.SortStableFunc(all, func(a, b hungry) int { return a.day - b.day })
	var list []findings.Finding
	for _, group := range alike(all, func(a, b hungry) bool { return a.day == b.day && a.severity() == b.severity() }) {
		list = append(list, s.hungryDay(group))
	}
	return list
}

// hungryDay tells who gets too little on one day.
func (s *sizer) hungryDay(group []hungry) findings.Finding {
	low, first := s.trip.Settings.DayLow, &group[0]
	var places []findings.Place
	var who, more []prose.Text
	for i := range group {
		h := &group[i]
		member := &s.trip.Crew[h.member]
		places = append(places, findings.Place{Day: h.day, Member: member.ID})
		who = append(who, prose.Say("%s %.0f of %.0f kcal (%.0f %%)", member.Name, h.eats, h.target, h.share()))
		more = append(more, s.moreEnergy(member, h.target*low-h.eats))
	}
	one := &s.trip.Crew[first.member]
	what := prose.Say("%s gets %.0f of %.0f kcal on day %d, %.0f %%.", one.Name, first.eats, first.target, first.day, first.share())
	remedy := s.energyRemedy(one, first.target*low-first.eats)
	if len(group) > 1 {
		what = prose.Say("%d members get too little on day %d: %s.", len(group), first.day, prose.List(", ", who))
		remedy = prose.Say("Add %s; or add a dish, or let portions be larger.", prose.List(", ", more))
	}
	f := finding(first.severity(), "day-short", places[0], what,
		prose.Say("The settings ask for at least %.0f %% of the need; no portion may be larger than its recipe allows.", 100*low), remedy)
	f.Also = places[1:]
	return f
}

// moreEnergy names what brings a member the energy, as a part of a sentence.
func (s *sizer) moreEnergy(who *trip.Member, kcal float64) prose.Text {
	food, mass := s.lightest(who, kcal)
	if food == nil {
		return prose.Say("%.0f kcal for %s", kcal, who.Name)
	}
	return prose.Say("%s of %s for %s", mass, food.Name, who.Name)
}

// lightest is the food of the trip that the member may eat with most energy by
// weight, and how much of it brings the energy; nil if there is none.
func (s *sizer) lightest(who *trip.Member, kcal float64) (*trip.Food, units.Mass) {
	food := s.booster(who, func(f *trip.Food) float64 { return float64(f.Per100g.Kcal) * (1 - f.RefuseShare) })
	if food == nil {
		return nil, 0
	}
	return food, units.FromGrams(roundedUp(foodenergy.GramsFor(kcal, float64(food.Kcal(100*units.Gram))/100)))
}

// fasting is the days on which a member is served nothing.
type fasting struct {
	member int // place in the crew
	days   []int
}

// nothingToEat tells once of all members who are served nothing on the same
// days: it is one cause, and energy and protein are short with it.
func (s *sizer) nothingToEat(all []fasting) []findings.Finding {
	var list []findings.Finding
	for _, group := range alike(all, func(a, b fasting) bool { return slices.Equal(a.days, b.days) }) {
		list = append(list, s.nothingOn(group))
	}
	return list
}

// alike puts together what is the same, in the order of the first of each.
func alike[T any](all []T, same func(a, b T) bool) [][]T {
	var groups [][]T
	for _, one := range all {
		n := slices.IndexFunc(groups, func(group []T) bool { return same(group[0], one) })
		if n < 0 {
			n, groups = len(groups), append(groups, nil)
		}
		groups[n] = append(groups[n], one)
	}
	return groups
}

func (s *sizer) nothingOn(group []fasting) findings.Finding {
	days := group[0].days
	var places []findings.Place
	for _, day := range days {
		for i := range group {
			places = append(places, findings.Place{Day: day, Member: s.trip.Crew[group[i].member].ID})
		}
	}
	var who []prose.Text
	for i := range group {
		who = append(who, prose.Say("%s (%.0f kcal)", s.trip.Crew[group[i].member].Name, s.meanNeed(&group[i])))
	}
	name, need := s.trip.Crew[group[0].member].Name, s.meanNeed(&group[0])
	what := prose.Plural(len(days), prose.Say("%s gets nothing to eat on day %d, where %.0f kcal are needed.", name, days[0], need),
		prose.Say("%s gets nothing to eat on days %s, where %.0f kcal a day are needed.", name, prose.Runs(days), need))
	if len(group) > 1 {
		what = prose.Plural(len(days), prose.Say("%d members get nothing to eat on day %d; needed are: %s.", len(group), days[0], prose.List(", ", who)),
			prose.Say("%d members get nothing to eat on days %s; needed a day are: %s.", len(group), prose.Runs(days), prose.List(", ", who)))
	}
	f := finding(findings.MustFix, "day-short", places[0], what,
		prose.Say("No dish on the menu of these days is served to them."),
		prose.Say("Choose dishes for them on the menu."))
	f.Also = places[1:]
	return f
}

// meanNeed is what the member needs on such a day, in kcal.
func (s *sizer) meanNeed(f *fasting) float64 {
	need := 0.0
	for _, day := range f.days {
		need += float64(s.needOf(f.member, day-1).TargetKcal)
	}
	return need / float64(len(f.days))
}
