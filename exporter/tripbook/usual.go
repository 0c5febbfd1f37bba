package tripbook

import (
	"slices"
	"strconv"
	"strings"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// usual is what people's own tables of a list look like, where they differ
// from the sheet of the workbook.
type usual struct {
	heads   map[string]string        // their heading → ours, with its unit where theirs tells it
	assumed func(*trip.Trip) []given // for needed columns that such tables seldom have
}

// given is a column that holds the same in every row.
type given struct{ heading, text string }

func usualCrew() usual {
	return usual{
		heads: map[string]string{
			"Member": "Name", "Person": "Name", "First name": "Name", "Full name": "Name", "Group": "Cook group", "Gender": "Sex",
			"Weight": "Body mass", "Body weight": "Body mass", "Mass": "Body mass", "Body": "Body mass",
			"Diet": "Diets", "Allergy": "Allergies", "Allergens": "Allergies", "Room": "Room in the pack", "Limit": "Load limit",
		},
		assumed: func(t *trip.Trip) []given {
			if len(t.Groups) == 0 {
				return nil
			}
			fresh := trip.NewMember(1, "", t.Groups[0].ID)
			return []given{
				{"Cook group", t.Groups[0].Name}, {"Own kit (kg)", strconv.FormatFloat(fresh.OwnKit.Kilograms(), 'f', -1, 64)}, {"Room in the pack (L)", strconv.FormatFloat(fresh.PackRoom.Litres(), 'f', -1, 64)},
			}
		},
	}
}

func usualFoods() usual {
	heads := map[string]string{
		"Food": "Name", "Product": "Name", "Item": "Name", "Energy": "Energy per 100 g", "kcal": "Energy per 100 g (kcal)", "Calories": "Energy per 100 g (kcal)",
		"kJ": "Energy per 100 g (kJ)", "Salt": "Sodium per 100 g (g of salt)", "Salt per 100 g": "Sodium per 100 g (g of salt)", "Bulk": "Density",
		"Must be cold": "Must stay cold",
	}
	for ours, theirs := range map[string][]string{
		"Protein per 100 g": {"Protein", "Proteins"}, "Fat per 100 g": {"Fat", "Fats", "Total fat"},
		"Carbohydrate per 100 g": {"Carbohydrate", "Carbohydrates", "Carbs", "Carb", "Carb."},
		"Fibre per 100 g":        {"Fibre", "Fiber", "Dietary fibre", "Dietary fiber", "Fiber per 100 g"},
		"Sugar per 100 g":        {"Sugar", "Sugars", "Total sugars", "of which sugars"},
		"Sodium per 100 g":       {"Sodium"},
	} {
		for _, head := range theirs {
			heads[head] = ours
		}
	}
	return usual{heads: heads, assumed: func(t *trip.Trip) []given {
		means := trip.AvailableCarbohydrate // as labels of the leader's country do
		if t.Units == units.US {
			means = trip.TotalCarbohydrate
		}
		return []given{{"Carbohydrate is", string(means)}}
	}}
}

func usualGear() usual {
	return usual{
		heads: map[string]string{"Item": "Name", "Gear": "Name", "Piece": "Name", "Weight": "Mass", "Room": "Volume", "Holds": "Capacity", "Burns": "Fuel", "Type": "Kind", "Whose": "Cook group"},
		assumed: func(*trip.Trip) []given {
			return []given{{"Kind", string(trip.OtherGear)}}
		},
	}
}

// retitled gives the table with our headings in place of usual ones, and the
// place of its row of headings, -1 if it has none.
func (u usual) retitled(heads []*head, raw []gridRow) ([]gridRow, int) {
	ours := map[string]string{}
	for theirs, title := range u.heads {
		ours[wordKey(theirs)] = title
	}
	for _, h := range heads {
		ours[wordKey(h.title)] = h.title
	}
	best := headingRow(raw, func(text string) bool { key, _ := usualParts(text); return ours[key] != "" })
	if best < 0 {
		return raw, best
	}
	cells := slices.Clone(raw[best].cells)
	for i, text := range cells {
		key, symbol := usualParts(text)
		title := ours[key]
		switch {
		case title == "":
		case symbol == "" || strings.HasSuffix(title, ")"):
			cells[i] = title
		default:
			cells[i] = title + " (" + symbol + ")"
		}
	}
	raw = slices.Clone(raw)
	raw[best].cells = cells
	return raw, best
}

// usualParts takes a heading apart; that its figures are for 100 g needs not
// be said.
func usualParts(text string) (key, symbol string) {
	key, symbol = headingParts(text)
	for _, hundred := range []string{"per 100 g", "per 100g", "/100 g", "/100g", "/ 100 g"} {
		symbol = strings.TrimSpace(strings.TrimSuffix(symbol, hundred))
	}
	return key, symbol
}

// assume adds the columns the table lacks, and names those it added.
func (u usual) assume(t *trip.Trip, raw []gridRow, at int) (whole []gridRow, added []string) {
	if u.assumed == nil {
		return raw, nil
	}
	whole = slices.Clone(raw)
	has := map[string]bool{}
	width := 0
	for i, row := range raw {
		width = max(width, len(row.cells))
		if i == at {
			for _, text := range row.cells {
				key, _ := headingParts(text)
				has[key] = true
			}
		}
	}
	for _, g := range u.assumed(t) {
		key, _ := headingParts(g.heading)
		if has[key] {
			continue
		}
		for i := range whole {
			text := g.text
			if i < at || lastFilled(whole[i].cells) < 0 {
				continue
			}
			if i == at {
				text = g.heading
			}
			cells := make([]string, width+1)
			copy(cells, whole[i].cells)
			cells[width] = text
			whole[i].cells = cells
		}
		width++
		added = append(added, g.heading+": "+g.text)
	}
	return whole, added
}
