package route

import (
	"fyne.io/fyne/v2/lang"

	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/cooking"
	"sumpter/domain/plan"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// accounts asks the plan for its reasons; false where the day is not in it.
func (p *dayPanel) accounts() (*cooking.Accounts, *plan.Plan, bool) {
	made := p.screen.bench.Plan()
	if made == nil || made.Trip == nil || p.number < 1 || p.number > len(made.Trip.Days) || made.Portions.Batches == nil && made.Cooking.Water == nil {
		return nil, made, false
	}
	return cooking.AccountsOf(made.Trip, made.Needs, made.Portions, made.Legs, made.Cooking), made, true
}

// waterEntries tell what each drinks and carries on the day.
func (p *dayPanel) waterEntries() []bench.Entry {
	accounts, made, ok := p.accounts()
	if !ok {
		return waiting()
	}
	system := p.screen.bench.Units()
	entries := entriesOf(accounts.Water(p.number, made.Carry.CookingWater(p.number)), system)
	for i := range made.Cooking.Meals {
		m := &made.Cooking.Meals[i]
		if m.Day == p.number && m.FoodWater+m.OtherWater > 0 {
			entries = append(entries, bench.Entry{
				What: mealWords(made.Trip, m.Meal, m.Group), Figure: written.Quantity(m.FoodWater+m.OtherWater, system),
				Basis: written.Text(prose.Say("%s into the food, %s for drinks and washing up", m.FoodWater, m.OtherWater), system),
			})
		}
	}
	return append(entries, bench.Entry{Basis: lang.L("Treat water from the land as local advice says. Where heat, illness, age or pregnancy make drinking a question, ask a doctor; thirst and dark urine come first.")})
}

// stoveEntries tell what each hot meal of the day takes, and what fuel the
// stretch does.
func (p *dayPanel) stoveEntries() []bench.Entry {
	accounts, made, ok := p.accounts()
	if !ok {
		return waiting()
	}
	system := p.screen.bench.Units()
	var entries []bench.Entry
	if made.Trip.Days[p.number-1].NoFlame {
		entries = append(entries, bench.Entry{What: lang.L("No flame is allowed on this day.")})
	}
	for i := range made.Cooking.Meals {
		m := &made.Cooking.Meals[i]
		if m.Day != p.number {
			continue
		}
		lines := accounts.Meal(m.Day, m.Meal, m.Group)
		if len(lines) == 0 {
			entries = append(entries, bench.Entry{What: mealWords(made.Trip, m.Meal, m.Group), Basis: lang.L("made without a flame")})
			continue
		}
		entries = append(entries, bench.Entry{What: mealWords(made.Trip, m.Meal, m.Group)})
		entries = append(entries, entriesOf(lines, system)...)
	}
	if leg := trip.LegOf(made.Legs, p.number); leg >= 0 {
		for i := range made.Trip.Groups {
			group := &made.Trip.Groups[i]
			if lines := accounts.Fuel(leg, group.ID); len(lines) > 0 {
				entries = append(entries, bench.Entry{What: lang.X("fuel-to-carry", "Fuel that {{.Group}} carries", map[string]any{"Group": group.Name})})
				entries = append(entries, entriesOf(lines, system)...)
			}
		}
	}
	if len(entries) == 0 {
		entries = append(entries, bench.Entry{What: lang.L("Nothing is cooked on this day.")})
	}
	return append(entries, bench.Entry{Basis: lang.L("Efficiency, power and simmering are common practice until you weigh your own fuel. Never burn a stove in a tent or hut room: carbon monoxide kills without smell. Local fire rules come first.")})
}

func waiting() []bench.Entry {
	return []bench.Entry{{What: lang.L("Water and fuel come with the plan.")}}
}

func entriesOf(lines []cooking.Line, system units.System) []bench.Entry {
	entries := make([]bench.Entry, len(lines))
	for i, line := range lines {
		entries[i] = bench.Entry{
			What: written.Text(line.What, system), Figure: written.Text(line.Figure, system), Basis: written.Text(line.Basis, system), Total: line.Total,
		}
	}
	return entries
}

// mealWords name a meal, and the cook group where there are several.
func mealWords(t *trip.Trip, meal trip.Meal, id trip.GroupID) string {
	words := lang.L(string(meal))
	if group := t.Group(id); group != nil && len(t.Groups) > 1 {
		words += ", " + group.Name
	}
	return words
}
