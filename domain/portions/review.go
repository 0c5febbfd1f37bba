package portions

import (
	"fmt"
	"math"

	"sumpter/domain/findings"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// A main trail meal brings at least this much (common practice, no source).
const (
	mainMealKcal    = 500
	mainMealProtein = 20
)

// review says where somebody's day is short or over, and where a dinner is
// small.
func (s *sizing) review() {
	for i := range s.result.Intakes {
		for d := range s.trip.Days {
			s.reviewDay(i, d)
		}
	}
	s.reviewDinners()
}

func (s *sizing) reviewDay(who, d int) {
	if who >= len(s.needs.Members) {
		return
	}
	need, eaten := s.needs.Members[who].Days[d], s.result.Intakes[who].Days[d]
	if !need.Present || need.TargetKcal <= 0 {
		return
	}
	member := &s.trip.Crew[who]
	place := findings.Place{Day: d + 1, Member: member.ID}
	target, kcal := float64(need.TargetKcal), float64(eaten.Kcal)
	settings := &s.trip.Settings
	switch {
	case kcal < target*settings.DayLow-0.5:
		severity := findings.LookAt
		if kcal < target*0.8 {
			severity = findings.MustFix
		}
		s.find(severity, "day-short", place, fmt.Sprintf("Day %d is %.0f kcal short for %s.", d+1, target-kcal, member.Name),
			fmt.Sprintf("The day brings %.0f of %.0f kcal, %.0f %%; portions are as large as the recipes allow.", kcal, target, 100*kcal/target), s.booster(member, target-kcal))
	case kcal > target*settings.DayHigh+0.5:
		s.find(findings.Note, "day-over", place, fmt.Sprintf("Day %d brings %s %.0f kcal more than they need.", d+1, member.Name, kcal-target),
			fmt.Sprintf("The day brings %.0f of %.0f kcal, %.0f %%; portions are as small as the recipes allow, or protein asks for them.", kcal, target, 100*kcal/target),
			"Leave out a dish, or lower the smallest portion of a recipe.")
	}
	if short := need.ProteinGrams - eaten.ProteinGrams; short > math.Max(1, 0.02*need.ProteinGrams) {
		why := fmt.Sprintf("The day brings %.0f of %.0f g (target set by the trip or the member).", eaten.ProteinGrams, need.ProteinGrams)
		if eaten.UnknownProtein > 0 {
			why += fmt.Sprintf(" The protein of %d foods is not known and counts as none.", eaten.UnknownProtein)
		}
		s.find(findings.LookAt, "protein-short", place, fmt.Sprintf("Day %d is %.0f g of protein short for %s.", d+1, short, member.Name), why,
			"Add milk powder, pulses, cheese, nuts, fish or meat that they can eat, or choose a recipe richer in protein.")
	}
}

// booster proposes the densest food of the trip that is safe for the member,
// keeps without cooling, and brings the missing energy.
func (s *sizing) booster(member *trip.Member, kcal float64) string {
	var best *trip.Food
	for i := range s.trip.Foods {
		food := &s.trip.Foods[i]
		if food.Storage.TCS != trip.TCSNo || food.RefuseShare > 0.3 || len(member.Objections(food)) > 0 || !eatenPlain(food) {
			continue
		}
		if best == nil || food.Per100g.Kcal > best.Per100g.Kcal {
			best = food
		}
	}
	if best == nil || best.Per100g.Kcal <= 0 {
		return "Add a dense food that they can eat, or a second helping."
	}
	grams := math.Ceil(kcal/float64(best.Per100g.Kcal)*100/(1-best.RefuseShare)/5) * 5
	return fmt.Sprintf("Add %s of %s, or a second helping; or raise the largest portion of a recipe.", units.FromGrams(grams).Format(s.trip.Units), best.Name)
}

// eatenPlain keeps pure fats and seasonings out of advice: what people can
// eat by the handful has protein and is not a powder.
func eatenPlain(food *trip.Food) bool {
	return food.Per100g.ProteinGrams.Or(0) >= 3 && food.Form != trip.Powder && food.Form != trip.Liquid && food.Per100g.Kcal >= 350
}

type dinnerKey struct {
	day    int
	member trip.MemberID
}

func (s *sizing) reviewDinners() {
	type sum struct{ kcal, protein float64 }
	sums := map[dinnerKey]sum{}
	for b := range s.result.Batches {
		batch := &s.result.Batches[b]
		if batch.Meal != trip.Dinner {
			continue
		}
		for _, portion := range batch.Portions {
			key := dinnerKey{batch.Day, portion.Member}
			total := sums[key]
			total.kcal += float64(portion.Kcal)
			for _, amount := range portion.Amounts {
				food := s.foods[amount.Food]
				total.protein += food.Per100g.ProteinGrams.Or(0) * food.EatenGrams(amount.Mass) / 100
			}
			sums[key] = total
		}
	}
	for day := 1; day <= len(s.trip.Days); day++ {
		for i := range s.trip.Crew {
			member := &s.trip.Crew[i]
			total, ate := sums[dinnerKey{day, member.ID}]
			if !ate || total.kcal >= mainMealKcal-0.5 && total.protein >= mainMealProtein-0.5 {
				continue
			}
			s.find(findings.Note, "small-dinner", findings.Place{Day: day, Meal: trip.Dinner, Member: member.ID},
				fmt.Sprintf("Dinner on day %d brings %s %.0f kcal and %.0f g of protein.", day, member.Name, total.kcal, total.protein),
				fmt.Sprintf("A main meal on the trail brings at least %d kcal and %d g of protein (common practice, no source).", mainMealKcal, mainMealProtein),
				"Choose a recipe with more, or raise this meal's part of the day.")
		}
	}
}

func (s *sizing) find(severity findings.Severity, code string, place findings.Place, what, why, remedy string) {
	s.result.Findings = append(s.result.Findings, findings.Finding{
		Severity: severity, Stage: findings.Portions, Code: code, Place: place, What: what, Why: why, Remedy: remedy,
	})
}
