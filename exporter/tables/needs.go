package tables

import (
	"fmt"
	"strings"

	"sumpter/domain/needs"
	"sumpter/domain/portions"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// fedDay is one member on one day: what they need and what they get.
type fedDay struct {
	day    int
	member trip.MemberID
	need   needs.Day
	eaten  portions.DayIntake
}

// share is what is eaten from the packs against what should be; ok is false
// where nothing is to be eaten from the packs.
func (d fedDay) share() (share float64, ok bool) {
	if d.need.TargetKcal <= 0 {
		return 0, false
	}
	return float64(d.eaten.Kcal / d.need.TargetKcal), true
}

// fedDays lists the days on which the member is there, in order.
func (x *index) fedDays(place int) []fedDay {
	member := &x.plan.Needs.Members[place]
	intake := x.intake(member.Member)
	var days []fedDay
	for i, need := range member.Days {
		if !need.Present {
			continue
		}
		day := fedDay{day: i + 1, member: member.Member, need: need}
		if i < len(intake) {
			day.eaten = intake[i]
		}
		days = append(days, day)
	}
	return days
}

func (x *index) intake(member trip.MemberID) []portions.DayIntake {
	for i := range x.plan.Portions.Intakes {
		if x.plan.Portions.Intakes[i].Member == member {
			return x.plan.Portions.Intakes[i].Days
		}
	}
	return nil
}

// fedMember is one member over all their days.
type fedMember struct {
	member  trip.MemberID
	resting units.Kcal
	days    []fedDay
}

// mean averages over the member's days.
func (m fedMember) mean(value func(fedDay) float64) Value {
	if len(m.days) == 0 {
		return words("not there")
	}
	sum := 0.0
	for _, day := range m.days {
		sum += value(day)
	}
	return figure(sum / float64(len(m.days)))
}

// leanest finds the day with the least food against the need.
func (m fedMember) leanest() (day fedDay, share float64, ok bool) {
	for _, d := range m.days {
		if s, has := d.share(); has && (!ok || s < share) {
			day, share, ok = d, s, true
		}
	}
	return day, share, ok
}

func needsTable(x *index) Table {
	rows := make([]fedMember, len(x.plan.Needs.Members))
	for i := range rows {
		member := &x.plan.Needs.Members[i]
		rows[i] = fedMember{member.Member, member.RestingKcal, x.fedDays(i)}
	}
	return fill(Table{
		Name: "needs", Title: "Needs and food, by member",
		About: "Means over each member's days. Target is the part of the need that is to be eaten from the packs.",
		Empty: "There is nobody in the crew yet.",
	}, []field[fedMember]{
		{Column{Key: "member", Heading: "Member", Width: 18}, func(m fedMember) Value { return words(x.member(m.member)) }},
		{Column{Key: "days", Heading: "Days", Width: 7}, func(m fedMember) Value { return count(len(m.days)) }},
		{Column{Key: "resting", Heading: "At rest (kcal/day)", Width: 11}, func(m fedMember) Value { return figure(float64(m.resting)) }},
		{Column{Key: "need", Heading: "Need (kcal/day)", Width: 11}, func(m fedMember) Value {
			return m.mean(func(d fedDay) float64 { return float64(d.need.Kcal) })
		}},
		{Column{Key: "target", Heading: "Target from packs (kcal/day)", Width: 13}, func(m fedMember) Value {
			return m.mean(func(d fedDay) float64 { return float64(d.need.TargetKcal) })
		}},
		{Column{Key: "planned", Heading: "Planned food (kcal/day)", Width: 13}, func(m fedMember) Value {
			return m.mean(func(d fedDay) float64 { return float64(d.eaten.Kcal) })
		}},
		{Column{Key: "lowest", Heading: "Leanest day, planned of target", Role: Percent, Width: 13}, func(m fedMember) Value {
			if _, share, ok := m.leanest(); ok {
				return figure(share)
			}
			return words("no packed food")
		}},
		{Column{Key: "lowest_day", Heading: "Leanest day", Width: 9}, func(m fedMember) Value {
			if day, _, ok := m.leanest(); ok {
				return count(day.day)
			}
			return words("none")
		}},
		{Column{Key: "mass", Heading: "Food (" + x.foodUnit() + "/day)", Decimals: x.foodDecimals(), Width: 10}, func(m fedMember) Value {
			return m.mean(func(d fedDay) float64 { return x.food(d.eaten.Food).Number })
		}},
		{Column{Key: "protein_target", Heading: "Protein target (g/day)", Width: 11}, func(m fedMember) Value {
			return m.mean(func(d fedDay) float64 { return d.need.ProteinGrams })
		}},
		{Column{Key: "protein", Heading: "Protein planned (g/day)", Width: 11}, func(m fedMember) Value {
			return m.mean(func(d fedDay) float64 { return d.eaten.ProteinGrams })
		}},
		{Column{Key: "unknown", Heading: "Not known", Width: 26, Wrap: true}, func(m fedMember) Value { return words(unknownNutrients(m.days)) }},
	}, rows)
}

func needsByDayTable(x *index) Table {
	var rows []fedDay
	for i := range x.plan.Needs.Members {
		rows = append(rows, x.fedDays(i)...)
	}
	return groupBy(fill(Table{
		Name: "needs_by_day", Title: "Needs and food, by member and day",
		About: "Lowest and highest are the bracket of the published equations. Sums with figures that are not known are at least what is shown.",
		Empty: "There is nobody to feed yet.",
	}, []field[fedDay]{
		{Column{Key: "member", Heading: "Member", Width: 17}, func(d fedDay) Value { return words(x.member(d.member)) }},
		{Column{Key: "day", Heading: "Day", Width: 5}, func(d fedDay) Value { return count(d.day) }},
		{Column{Key: "date", Heading: "Date", Width: 15}, func(d fedDay) Value { return x.date(d.day) }},
		{Column{Key: "low", Heading: "Lowest (kcal)", Width: 9}, func(d fedDay) Value { return figure(float64(d.need.Low)) }},
		{Column{Key: "need", Heading: "Need (kcal)", Width: 9}, func(d fedDay) Value { return figure(float64(d.need.Kcal)) }},
		{Column{Key: "high", Heading: "Highest (kcal)", Width: 9}, func(d fedDay) Value { return figure(float64(d.need.High)) }},
		{Column{Key: "target", Heading: "Target from packs (kcal)", Width: 11}, func(d fedDay) Value { return figure(float64(d.need.TargetKcal)) }},
		{Column{Key: "planned", Heading: "Planned (kcal)", Width: 9}, func(d fedDay) Value { return figure(float64(d.eaten.Kcal)) }},
		{Column{Key: "share", Heading: "Planned of target", Role: Percent, Width: 9}, func(d fedDay) Value {
			if share, ok := d.share(); ok {
				return figure(share)
			}
			return words("no packed food")
		}},
		{Column{Key: "mass", Heading: "Food (" + x.foodUnit() + ")", Decimals: x.foodDecimals(), Width: 8}, func(d fedDay) Value { return x.food(d.eaten.Food) }},
		{Column{Key: "protein_target", Heading: "Protein target (g)", Width: 8}, func(d fedDay) Value { return figure(d.need.ProteinGrams) }},
		{Column{Key: "protein", Heading: "Protein (g)", Width: 8}, func(d fedDay) Value { return figure(d.eaten.ProteinGrams) }},
		{Column{Key: "fat", Heading: "Fat (g)", Width: 7}, func(d fedDay) Value { return figure(d.eaten.FatGrams) }},
		{Column{Key: "carb", Heading: "Carbohydrate without fibre (g)", Width: 13}, func(d fedDay) Value { return figure(d.eaten.CarbGrams) }},
		{Column{Key: "fibre", Heading: "Fibre (g)", Width: 7}, func(d fedDay) Value { return figure(d.eaten.FibreGrams) }},
		{Column{Key: "sodium", Heading: "Sodium (mg)", Width: 8}, func(d fedDay) Value { return figure(d.eaten.SodiumMilligrams) }},
		{Column{Key: "unknown", Heading: "Not known", Width: 24, Wrap: true}, func(d fedDay) Value { return words(unknownNutrients([]fedDay{d})) }},
	}, rows), rows, func(d fedDay) trip.MemberID { return d.member })
}

// unknownNutrients says of how many foods a figure is missing, the most on any
// of the days.
func unknownNutrients(days []fedDay) string {
	var texts []string
	for _, nutrient := range []struct {
		name string
		of   func(portions.DayIntake) int
	}{
		{"protein", func(i portions.DayIntake) int { return i.UnknownProtein }},
		{"fat", func(i portions.DayIntake) int { return i.UnknownFat }},
		{"carbohydrate", func(i portions.DayIntake) int { return i.UnknownCarb }},
		{"fibre", func(i portions.DayIntake) int { return i.UnknownFibre }},
		{"sodium", func(i portions.DayIntake) int { return i.UnknownSodium }},
	} {
		most := 0
		for _, day := range days {
			most = max(most, nutrient.of(day.eaten))
		}
		if most > 0 {
			texts = append(texts, fmt.Sprintf("%s of %d %s", nutrient.name, most, plural(most, "food", "foods")))
		}
	}
	return orNone(strings.Join(texts, ", "), "all known")
}

func plural(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}
