package foods

import (
	"cmp"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// tableFields lists the columns of the table.
func tableFields(b *bench.Bench) []field {
	u := b.Units()
	return []field{
		nameField(),
		energyField(),
		headed(figure(lang.L("Protein"), "g", 80, 1, func(f *trip.Food) *optional.Value[float64] { return &f.Per100g.ProteinGrams }), lang.X("heads-protein", "Proteins")),
		headed(figure(lang.L("Fat"), "g", 60, 1, func(f *trip.Food) *optional.Value[float64] { return &f.Per100g.FatGrams }), lang.X("heads-fat", "Fats, Total fat")),
		carbohydrateField(),
		labelField(),
		allergenField(u),
		keepsField(u),
		coolingField(),
		degrees(lang.L("Softens at"), 104, u, func(f *trip.Food) *optional.Value[units.Celsius] { return &f.Storage.SoftensAt }),
		packagesField(b),
		densityField(u),
		headed(figure(lang.L("Fibre"), "g", 70, 1, func(f *trip.Food) *optional.Value[float64] { return &f.Per100g.FibreGrams }), lang.X("heads-fibre", "Fiber, Dietary fibre, Dietary fiber")),
		headed(figure(lang.L("Sugar"), "g", 74, 1, func(f *trip.Food) *optional.Value[float64] { return &f.Per100g.SugarGrams }), lang.X("heads-sugar", "Sugars, Total sugars, of which sugar, of which sugars")),
		sodiumField(),
		word(lang.L("Form"), 76, trip.Forms(), func(f *trip.Food) *trip.Form { return &f.Form }),
		line(lang.L("Basis"), 260, func(f *trip.Food) *string { return &f.Storage.Basis }),
	}
}

// columns turns the fields into columns of the table.
func (s *Screen) columns() []grid.Column[trip.FoodID] {
	columns := make([]grid.Column[trip.FoodID], len(s.fields))
	for i, f := range s.fields {
		columns[i] = grid.Column[trip.FoodID]{
			Title: f.title, Also: typed.List(f.also), AlsoIn: f.alsoIn, Needed: f.needed, Unit: f.unit, Width: f.width, Right: f.number != nil,
			Text: func(id trip.FoodID) string { return ofFood(s, id, f.text) },
			EditText: func(id trip.FoodID) string {
				if text := ofFood(s, id, f.text); !isBlank(text) {
					return text
				}
				return ""
			},
			Tone: toneOf(s, f),
		}
		if f.number != nil {
			columns[i].Compare = func(a, b trip.FoodID) int { return cmp.Compare(ofFood(s, a, f.number), ofFood(s, b, f.number)) }
		}
		if f.set != nil {
			columns[i].Set = func(id trip.FoodID, text string) error {
				return s.change(id, f.title, func(food *trip.Food) error { return f.set(food, text) })
			}
		}
		if f.choices != nil {
			columns[i].Choices = func(trip.FoodID) []string { return f.choices }
		}
	}
	return columns
}

func toneOf(s *Screen, f field) func(trip.FoodID) fyne.ThemeColorName {
	return func(id trip.FoodID) fyne.ThemeColorName {
		if f.tone != nil {
			return ofFood(s, id, f.tone)
		}
		if ofFood(s, id, f.text) == notKnown {
			return look.Ochre
		}
		return look.Ink
	}
}

// ofFood asks something of a food that may be gone.
func ofFood[T any](s *Screen, id trip.FoodID, ask func(f *trip.Food) T) T {
	if food := s.bench.Trip().Food(id); food != nil {
		return ask(food)
	}
	var nothing T
	return nothing
}

func keepsField(u units.System) field {
	f := figure(lang.L("Keeps"), lang.X("days-at", "days at {{.Warmth}}", map[string]any{"Warmth": written.Quantity(units.Celsius(20), u)}), 138, 0, func(f *trip.Food) *optional.Value[float64] { return &f.Storage.ShelfDays })
	plain := f.text
	f.text = func(food *trip.Food) string {
		if food.Storage.TCS == trip.TCSYes && !food.Storage.ShelfDays.Known() {
			return "–" // its clock is one of safety
		}
		return plain(food)
	}
	return f
}

// coolingField says in words whether the food must be kept cold to be safe.
func coolingField() field {
	f := word(lang.L("Must be cold"), 106, trip.TCSStates(), func(f *trip.Food) *trip.TCS { return &f.Storage.TCS })
	f.tone = func(f *trip.Food) fyne.ThemeColorName {
		switch f.Storage.TCS {
		case trip.TCSYes:
			return look.Brick
		case trip.TCSNo:
			return look.Ink
		default:
			return look.Ochre
		}
	}
	return f
}

// labelField tells what of the label is still to be read.
func labelField() field {
	return field{
		title: lang.L("Label"), width: 102,
		number: nil,
		text: func(f *trip.Food) string {
			switch unread := len(unreadOf(f)); unread {
			case 0:
				return lang.L("read")
			case len(trip.DeclaredAllergens()):
				return lang.L("not read")
			default:
				return lang.X("label-open", "{{.Count}} not known", map[string]any{"Count": strconv.Itoa(unread)})
			}
		},
		tone: func(f *trip.Food) fyne.ThemeColorName {
			if len(unreadOf(f)) > 0 {
				return look.Ochre
			}
			return look.Quiet
		},
	}
}

func allergenField(u units.System) field {
	return field{
		title: lang.L("Allergens"), also: lang.X("heads-allergens", "Allergen, Allergy information"), width: 190,
		set:  func(f *trip.Food, text string) error { return setDeclared(f, text, u) },
		text: func(f *trip.Food) string { return allergensInShort(f, u) },
		tone: func(f *trip.Food) fyne.ThemeColorName {
			if len(withPresence(f, trip.Contains))+len(withPresence(f, trip.MayContain)) > 0 {
				return look.Plum
			}
			return look.Quiet
		},
	}
}
