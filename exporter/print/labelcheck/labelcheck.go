// Package labelcheck prints what the leader holds beside every package in the
// shop and again on packing night: each food with what was entered of its
// allergens, the ones that harm somebody of the crew first, and a box to tick
// once the label in the hand says the same.
package labelcheck

import (
	"cmp"
	"slices"

	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/exporter/print/page"
	"sumpter/exporter/print/press"
)

// Draw draws the check-list. Whom an allergen harms is not on it: it lies
// about in shops.
func Draw(p *press.Press) []page.Page {
	flow := p.Flow(press.Layout{
		Title: p.Tell(prose.Say("Labels to read")),
		Note:  p.Tell(prose.Say("Recipes of products change: read the label of every package when you buy it and once more when you open it. Tick a box only when the label says what is entered here. Where it says more, or nothing is entered, nobody whom it harms may eat of it until the leader has asked the maker. \"May contain\" need not be printed: that it is missing proves nothing.")),
	})
	harmful := harmful(p.Trip)
	list := served(p)
	if len(list) == 0 {
		flow.Add(p.Text(press.Style{Size: 10, Ink: p.Inks.Ink}, flow.Width(), p.Tell(prose.Say("No food is on the menu yet."))))
		return flow.Finish()
	}
	width := flow.Width()
	table := p.Table(width, 3,
		press.Column{Head: p.Tell(prose.Say("Bought")), Width: 40}, press.Column{Head: p.Tell(prose.Say("Opened")), Width: 42},
		press.Column{Head: p.Tell(prose.Say("Food")), Width: 150},
		press.Column{Head: p.Tell(prose.Say("Harms somebody of the crew"))}, press.Column{Head: p.Tell(prose.Say("Others entered")), Width: 130})
	rows := make([]press.Block, len(list))
	for i, food := range list {
		rows[i] = table.Row(p.TickCell(10), p.TickCell(10),
			p.Cell(press.Style{Size: 10, Bold: true, Ink: p.Inks.Ink}, food.Name),
			p.Cell(press.Style{Size: 9, Bold: doubtful(food, harmful), Ink: p.Inks.Ink}, states(p, food, harmful)),
			p.Cell(press.Style{Size: 8.5, Ink: p.Inks.Ink}, others(p, food, harmful)))
	}
	flow.Gap(10)
	flow.Section(func(bool) press.Block { return table.Head() }, rows)
	return flow.Finish()
}

// harmful lists the allergens that harm somebody of the crew, in the order of
// the law, words of the leader's own after them.
func harmful(t *trip.Trip) []trip.Allergen {
	var list []trip.Allergen
	for i := range t.Crew {
		for _, allergy := range t.Crew[i].Allergies {
			if !slices.Contains(list, allergy.Allergen) {
				list = append(list, allergy.Allergen)
			}
		}
	}
	known := trip.KnownAllergens()
	place := func(a trip.Allergen) int {
		if at := slices.Index(known, a); at >= 0 {
			return at
		}
		return len(known)
	}
	slices.SortFunc(list, func(a, b trip.Allergen) int { return cmp.Or(cmp.Compare(place(a), place(b)), cmp.Compare(a, b)) })
	return list
}

// served lists the foods that the plan serves, those first whose label nobody
// has read for an allergen that harms.
func served(p *press.Press) []*trip.Food {
	harm := harmful(p.Trip)
	seen := map[trip.FoodID]bool{}
	var list []*trip.Food
	for i := range p.Plan.Portions.Batches {
		for _, amount := range p.Plan.Portions.Batches[i].Totals {
			if food := p.Food(amount.Food); food != nil && !seen[food.ID] {
				seen[food.ID] = true
				list = append(list, food)
			}
		}
	}
	rank := func(f *trip.Food) int {
		if unread(f, harm) {
			return 0
		}
		return 1
	}
	slices.SortFunc(list, func(a, b *trip.Food) int {
		return cmp.Or(cmp.Compare(rank(a), rank(b)), cmp.Compare(a.Name, b.Name), cmp.Compare(a.ID, b.ID))
	})
	return list
}

func unread(food *trip.Food, harm []trip.Allergen) bool {
	return slices.ContainsFunc(harm, func(a trip.Allergen) bool { return food.Presence(a) == trip.NotKnown })
}

// doubtful tells whether any of the allergens is not plainly absent.
func doubtful(food *trip.Food, harm []trip.Allergen) bool {
	return slices.ContainsFunc(harm, func(a trip.Allergen) bool { return food.Presence(a) != trip.Free })
}

// states writes each harmful allergen with what was entered of it.
func states(p *press.Press, food *trip.Food, harm []trip.Allergen) string {
	if len(harm) == 0 {
		return p.Tell(prose.Say("nobody has an allergy entered"))
	}
	parts := make([]prose.Text, len(harm))
	for i, allergen := range harm {
		parts[i] = prose.Say("%s: %s", allergen, stateWord(food.Presence(allergen)))
	}
	return p.Tell(prose.List("; ", parts))
}

// stateWord says a state so that what is not known cannot be read as free.
func stateWord(state trip.Presence) prose.Text {
	switch state {
	case trip.Contains:
		return prose.Say("CONTAINS")
	case trip.MayContain:
		return prose.Say("MAY CONTAIN")
	case trip.Free:
		return prose.Say("free, it was entered")
	default:
		return prose.Say("NOT KNOWN, read it")
	}
}

// others names what else was entered, and what nobody has read.
func others(p *press.Press, food *trip.Food, harm []trip.Allergen) string {
	var declared press.Declared
	for _, allergen := range trip.DeclaredAllergens() {
		if slices.Contains(harm, allergen) {
			continue
		}
		switch food.Presence(allergen) {
		case trip.Contains:
			declared.Contains = append(declared.Contains, allergen)
		case trip.MayContain:
			declared.MayContain = append(declared.MayContain, allergen)
		case trip.Free:
		default:
			declared.NotKnown = append(declared.NotKnown, allergen)
		}
	}
	return p.InShort(declared)
}
