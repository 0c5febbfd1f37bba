package foods

import (
	"errors"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
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

// keepsTab is how the food bears the way, with what that rests on.
type keepsTab struct {
	side    *sidePanel
	fields  []field
	table   *grid.Grid[int] // places of the fields
	basis   *look.Paragraph
	content fyne.CanvasObject
}

func newKeepsTab(side *sidePanel) *keepsTab {
	k := &keepsTab{side: side, fields: keepsFields(side.screen.bench), basis: bench.SmallPrint("")}
	k.table = grid.New([]grid.Column[int]{
		{Title: lang.L("Fact"), Width: 230, Text: func(at int) string {
			if f := k.fields[at]; f.unit != "" {
				return f.title + ", " + f.unit
			}
			return k.fields[at].title
		}, Tone: func(int) fyne.ThemeColorName { return look.Quiet }},
		{Title: lang.L("Value"), Width: 190, Text: k.text, EditText: func(at int) string {
			if text := k.text(at); !isBlank(text) {
				return text
			}
			return ""
		}, Tone: func(at int) fyne.ThemeColorName {
			if k.text(at) == notKnown {
				return look.Ochre
			}
			return look.Ink
		}, Set: k.set, Choices: func(at int) []string { return k.fields[at].choices }},
	}, grid.Options[int]{Key: strconv.Itoa, OnProblem: side.screen.bench.Say, Clipboard: side.screen.bench.Clipboard})
	rows := make([]int, len(k.fields))
	for i := range rows {
		rows[i] = i
	}
	k.table.SetRows(rows)
	k.table.MoveCursor(0, 1)
	k.content = container.NewBorder(nil, bench.Tall(150, bench.NewScroll(k.basis)), nil, nil, k.table)
	return k
}

// keepsFields lists the facts of storage and of the bag.
func keepsFields(b *bench.Bench) []field {
	u := b.Units()
	return []field{
		coolingField(),
		yesNo(lang.L("Must be cold once open or wet"), func(f *trip.Food) *bool { return &f.Storage.TCSWhenOpen }),
		figure(lang.L("Water activity, from the maker"), "", 0, -1, func(f *trip.Food) *optional.Value[float64] { return &f.Storage.WaterActivity }),
		figure(lang.L("pH, from the maker"), "", 0, -1, func(f *trip.Food) *optional.Value[float64] { return &f.Storage.PH }),
		yesNo(lang.L("Heated in its sealed package"), func(f *trip.Food) *bool { return &f.Storage.HeatTreated }),
		verdictField(),
		keepsField(u),
		degrees(lang.L("Bears a steady warmth of"), 0, u, func(f *trip.Food) *optional.Value[units.Celsius] { return &f.Storage.MaxHeat }),
		degrees(lang.L("Softens at"), 0, u, func(f *trip.Food) *optional.Value[units.Celsius] { return &f.Storage.SoftensAt }),
		q10Field(),
		yesNo(lang.L("Gets crushed"), func(f *trip.Food) *bool { return &f.Storage.Crushable }),
		yesNo(lang.L("Stays in its package"), func(f *trip.Food) *bool { return &f.PackedAsBought }),
		word(lang.L("Form"), 0, trip.Forms(), func(f *trip.Food) *trip.Form { return &f.Form }),
		densityField(u),
		refuseField(),
		line(lang.L("Aisle"), 0, func(f *trip.Food) *string { return &f.Aisle }),
		line(lang.L("Basis of these"), 0, func(f *trip.Food) *string { return &f.Storage.Basis }),
		line(lang.L("Source of nutrients"), 0, func(f *trip.Food) *string { return &f.Source }),
	}
}

// verdictField says what comes of what was entered and of the figures.
func verdictField() field {
	return field{
		title: lang.L("So it is reckoned as"),
		text: func(f *trip.Food) string {
			switch {
			case f.Storage.Doubted():
				return lang.L("keeping warm, but doubted by its figures")
			case f.Storage.Control() == trip.TCSYes:
				return lang.L("needing cooling")
			case f.Storage.TCS == trip.TCSNo:
				return lang.L("keeping warm")
			case f.Storage.Control() == trip.TCSNo:
				return lang.L("keeping warm, by its figures")
			default:
				return notKnown
			}
		},
		set: func(*trip.Food, string) error {
			return errors.New(lang.L("This follows from the lines above."))
		},
	}
}

func q10Field() field {
	return field{
		title: lang.L("Ages faster for each 10 °C"), unit: lang.L("times"),
		text: func(f *trip.Food) string { return written.Short(f.Storage.Q10) },
		set: func(f *trip.Food, text string) (err error) {
			f.Storage.Q10, err = typed.Number(text)
			return err
		},
	}
}

func refuseField() field {
	return field{
		title: lang.L("Peel, shell or stone"), unit: "%",
		text: func(f *trip.Food) string { return typed.PercentText(f.RefuseShare) },
		set: func(f *trip.Food, text string) (err error) {
			f.RefuseShare, err = typed.Percent(text)
			return err
		},
	}
}

func (k *keepsTab) text(at int) string {
	if food := k.side.current(); food != nil {
		return k.fields[at].text(food)
	}
	return ""
}

func (k *keepsTab) set(at int, text string) error {
	return k.side.screen.change(k.side.food, k.fields[at].title, func(f *trip.Food) error { return k.fields[at].set(f, text) })
}

func (k *keepsTab) show(food *trip.Food) {
	k.table.SetRows(k.table.Rows())
	text := lang.L("What these rest on:") + " " + food.Storage.Basis
	if food.Notes != "" {
		text += "\n" + food.Notes
	}
	k.basis.SetContent(text + "\n" + lang.L("Not known is never taken as safe. Smell and look decide nothing about safety; local food-safety advice comes first."))
}
