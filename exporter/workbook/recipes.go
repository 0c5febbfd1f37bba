package workbook

import (
	"fmt"
	"slices"

	"sumpter/domain/plan"
	"sumpter/domain/trip"
	"sumpter/exporter/tables"
)

// potsAcross is how many pots stand side by side on a card.
const potsAcross = 5

// recipeCards has a card for each recipe that is served, scaled to each pot;
// no card is cut by a page unless it is longer than one.
func recipeCards(p *plan.Plan) *sheet {
	s := &sheet{name: "Recipe cards", widths: []float64{32, 14, 14, 14, 14, 14}}
	s.addWide("Recipe cards", titleLook)
	s.addWide("Each recipe scaled to the people who eat it, a column for each pot. The grams are what the bags hold.", aboutLook)
	cards := tables.Cards(p)
	if len(cards) == 0 {
		s.gap()
		s.addWide("No recipe is served yet.", emptyLook)
		return s
	}
	for i := range cards {
		s.gap()
		s.blocks = append(s.blocks, len(s.rows)+1)
		s.addCard(&cards[i])
	}
	return s
}

func (s *sheet) addCard(card *tables.Card) {
	s.addWide(card.Recipe, sectionLook)
	s.addWide("Allergens: "+card.Allergens, allergenLook(card.Allergens))
	s.addWide(card.Cooking, plainLook)
	if len(card.Method) == 0 {
		s.addWide("No method was written down.", plainLook)
	}
	for i, step := range card.Method {
		s.addWide(fmt.Sprintf("%d. %s", i+1, step), plainLook)
	}
	if card.Notes != "" {
		s.addWide("Note: "+card.Notes, plainLook)
	}
	for first := 0; first < len(card.Pots); first += potsAcross {
		s.addPots(card, first, min(first+potsAcross, len(card.Pots)))
	}
}

func allergenLook(text string) look {
	if len(text) >= 4 && text[:4] == "none" {
		return plainLook
	}
	return look{bold: true, colour: plum, wrap: true, frame: double, align: "left", indent: true}
}

func (s *sheet) addPots(card *tables.Card, first, last int) {
	pots := card.Pots[first:last]
	line := func(l look, head string, of func(tables.Pot) string) {
		cells := []cell{{value: head, look: l}}
		for _, pot := range pots {
			right := l
			right.align = "right"
			cells = append(cells, cell{value: of(pot), look: right})
		}
		s.add(cells...)
	}
	under := look{colour: ink, wrap: true, frame: underline, align: "left", indent: true}
	line(headLook, "", func(p tables.Pot) string { return p.Heading })
	line(under, "Eaters", func(p tables.Pot) string { return fmt.Sprint(p.Eaters) })
	line(look{bold: true, colour: ink, wrap: true, frame: underline, indent: true}, "Bags", func(p tables.Pot) string { return p.Bags })
	for i := range card.Ingredients {
		ingredient := &card.Ingredients[i]
		name := ingredient.Food
		if ingredient.Place == trip.AtBowl {
			name += ", onto the bowls"
		}
		cells := []cell{{value: name, look: under}}
		for _, amount := range ingredient.Pots[first:last] {
			cells = append(cells, cell{value: amountWords(amount), look: look{colour: ink, align: "right", wrap: true, frame: underline}})
		}
		s.add(cells...)
	}
	line(under, "Water to add", func(p tables.Pot) string { return p.Water })
	if slices.ContainsFunc(pots, func(p tables.Pot) bool { return p.PourOff != "none" }) {
		line(under, "Boiled as well, poured off", func(p tables.Pot) string { return p.PourOff })
	}
	line(under, "Flame after the boil, at that height", func(p tables.Pot) string { return p.Minutes })
}

func amountWords(amount string) string {
	if amount == "" {
		return "not in it"
	}
	return amount
}
