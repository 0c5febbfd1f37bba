package tables

import (
	"sumpter/domain/spoilage"
)

func keepingTable(x *index) Table {
	rows := make([]*spoilage.Fate, len(x.plan.Spoilage.Fates))
	for i := range rows {
		rows[i] = &x.plan.Spoilage.Fates[i]
	}
	return groupBy(fill(Table{
		Name: "keeping", Title: "How the food keeps",
		About: "Each food on its way from shop to pot. Only safe is safe: what is not known is to be treated as not safe. When in doubt, throw it out.",
		Empty: "There is no food to follow yet.",
	}, []field[*spoilage.Fate]{
		{Column{Key: "day", Heading: "Day", Width: 5}, func(f *spoilage.Fate) Value { return count(f.Day) }},
		{Column{Key: "meal", Heading: "Meal", Width: 10}, func(f *spoilage.Fate) Value { return words(mealName(f.Meal)) }},
		{Column{Key: "group", Heading: "Cook group", Width: 14}, func(f *spoilage.Fate) Value { return words(x.group(f.Group)) }},
		{Column{Key: "food", Heading: "Food", Width: 30, Wrap: true}, func(f *spoilage.Fate) Value { return words(x.foodName(f.Food)) }},
		{Column{Key: "verdict", Heading: "Verdict", Role: Severity, Width: 12}, func(f *spoilage.Fate) Value { return words(verdictWords(f.Verdict)) }},
		{Column{Key: "why", Heading: "Why", Width: 50, Wrap: true}, func(f *spoilage.Fate) Value { return words(orNone(x.text(f.Why), "no reason given")) }},
		{Column{Key: "used", Heading: "Shelf life used", Role: Percent, Width: 9}, func(f *spoilage.Fate) Value {
			if f.QualityKnown {
				return figure(f.QualityUsed)
			}
			return words(Unknown)
		}},
		{Column{Key: "left", Heading: "Days left then", Decimals: 1, Width: 9}, func(f *spoilage.Fate) Value {
			if f.QualityKnown {
				return figure(f.DaysLeft)
			}
			return words(Unknown)
		}},
		{Column{Key: "latest", Heading: "Last day to eat it", Width: 10}, func(f *spoilage.Fate) Value {
			if f.LatestDay > 0 {
				return count(f.LatestDay)
			}
			return words("none")
		}},
		{Column{Key: "melts", Heading: "Melts", Width: 7}, func(f *spoilage.Fate) Value { return yesNo(f.Melts) }},
	}, rows), rows, func(f *spoilage.Fate) int { return f.Day })
}

func verdictWords(verdict spoilage.Verdict) string {
	switch verdict {
	case spoilage.Safe:
		return "safe"
	case spoilage.NotSafe:
		return "NOT SAFE"
	default:
		return "NOT KNOWN"
	}
}
