package tables

import (
	"strings"

	"sumpter/domain/trip"
)

func crewTable(x *index) Table {
	members := make([]*trip.Member, len(x.trip.Crew))
	for i := range x.trip.Crew {
		members[i] = &x.trip.Crew[i]
	}
	return fill(Table{
		Name: "crew", Title: "Crew",
		About: "Who comes, what they must not eat, and where their emergency medicine is.",
		Empty: "There is nobody in the crew yet.",
	}, []field[*trip.Member]{
		{Column{Key: "member", Heading: "Member", Width: 18}, func(m *trip.Member) Value { return words(m.Name) }},
		{Column{Key: "group", Heading: "Cook group", Width: 14}, func(m *trip.Member) Value { return words(x.group(m.Group)) }},
		{Column{Key: "days", Heading: "With us", Width: 13}, func(m *trip.Member) Value { return words(x.stay(m)) }},
		{Column{Key: "allergies", Heading: "Allergies", Role: Danger, Width: 28, Wrap: true}, func(m *trip.Member) Value { return words(allergies(m)) }},
		{Column{Key: "diets", Heading: "Diets", Width: 18, Wrap: true}, func(m *trip.Member) Value { return words(diets(m)) }},
		{Column{Key: "medicine", Heading: "Emergency medicine", Width: 30, Wrap: true}, func(m *trip.Member) Value { return words(orNone(m.Medicine, "none named")) }},
		{Column{Key: "own_kit", Heading: "Own kit (" + x.loadUnit() + ")", Decimals: 1, Width: 10}, func(m *trip.Member) Value { return x.load(m.OwnKit) }},
		{Column{Key: "limit", Heading: "Hard limit (" + x.loadUnit() + ")", Decimals: 1, Width: 12}, func(m *trip.Member) Value {
			if limit, known := m.LoadLimit.Get(); known {
				return x.load(limit)
			}
			return words("none given")
		}},
	}, members)
}

func (x *index) stay(m *trip.Member) string {
	first, last := max(m.FirstDay, 1), m.LastDay
	if last == 0 || last > len(x.trip.Days) {
		last = len(x.trip.Days)
	}
	if first == 1 && last == len(x.trip.Days) {
		return "all days"
	}
	return dayRange(first, last)
}

func allergies(m *trip.Member) string {
	var texts []string
	for _, allergy := range m.Allergies {
		text := string(allergy.Allergen)
		if allergy.Severe {
			text += " (SEVERE, traces harm)"
		}
		texts = append(texts, text)
	}
	return orNone(strings.Join(texts, ", "), "none named")
}

func diets(m *trip.Member) string {
	var texts []string
	for _, diet := range m.Diets {
		texts = append(texts, string(diet))
	}
	return orNone(strings.Join(texts, ", "), "none named")
}

func orNone(text, none string) string {
	if strings.TrimSpace(text) == "" {
		return none
	}
	return text
}
