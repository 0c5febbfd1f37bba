package foods

import (
	"errors"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/look"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/optional"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// field is one thing known of a food. The table and the side panel show the
// same fields.
type field struct {
	title, unit string
	also        string            // other heads of a pasted table, parted by commas
	alsoIn      map[string]string // heads of figures told in another way, with its word for set
	needed      bool              // a food cannot do without it
	width       float32
	number      func(f *trip.Food) float64 // what it sorts by; nil: its text
	text        func(f *trip.Food) string
	set         func(f *trip.Food, text string) error // nil: set elsewhere
	choices     []string
	tone        func(f *trip.Food) fyne.ThemeColorName
}

// notKnown is shown for a figure nobody knows; it is never a nought.
const notKnown = "?"

// figure is a number that may be unknown: nothing typed makes it so.
func figure(title, unit string, width float32, decimals int, of func(f *trip.Food) *optional.Value[float64]) field {
	return field{
		title: title, unit: unit, width: width,
		number: func(f *trip.Food) float64 { return of(f).Or(-1) },
		text: func(f *trip.Food) string {
			if value, known := of(f).Get(); known {
				return written.Number(value, decimals)
			}
			return notKnown
		},
		set: func(f *trip.Food, text string) error {
			if isBlank(text) {
				*of(f) = optional.Unknown[float64]()
				return nil
			}
			value, err := typed.Number(strings.TrimSuffix(strings.TrimSpace(text), unit))
			if err == nil {
				*of(f) = optional.Of(value)
			}
			return err
		},
	}
}

// degrees is a temperature that may be unknown.
func degrees(title string, width float32, u units.System, of func(f *trip.Food) *optional.Value[units.Celsius]) field {
	return field{
		title: title, unit: typed.TemperatureUnit(u), width: width,
		number: func(f *trip.Food) float64 { return float64(of(f).Or(1000)) },
		text: func(f *trip.Food) string {
			if value, known := of(f).Get(); known {
				return typed.TemperatureText(value, u)
			}
			if f.Storage.TCS == trip.TCSUnknown {
				return notKnown // nobody judged the food
			}
			return "–"
		},
		set: func(f *trip.Food, text string) error {
			if isBlank(text) {
				*of(f) = optional.Unknown[units.Celsius]()
				return nil
			}
			value, err := typed.Temperature(text, u)
			if err == nil {
				*of(f) = optional.Of(value)
			}
			return err
		},
	}
}

// yesNo is a plain yes or no.
func yesNo(title string, of func(f *trip.Food) *bool) field {
	words := []string{lang.L("yes"), lang.L("no")}
	return field{
		title: title, choices: words,
		text: func(f *trip.Food) string {
			if *of(f) {
				return words[0]
			}
			return words[1]
		},
		set: func(f *trip.Food, text string) (err error) {
			*of(f), err = typed.Yes(text)
			return err
		},
	}
}

// word is one of a few words, shown in the reader's language.
func word[T ~string](title string, width float32, values []T, of func(f *trip.Food) *T) field {
	words := make([]string, len(values))
	for i, value := range values {
		words[i] = lang.L(string(value))
	}
	return field{
		title: title, width: width, choices: words,
		text: func(f *trip.Food) string { return lang.L(string(*of(f))) },
		set: func(f *trip.Food, text string) error {
			for i, value := range values {
				if strings.EqualFold(text, words[i]) || strings.EqualFold(text, string(value)) {
					*of(f) = value
					return nil
				}
			}
			return prose.Errorf("%s: %s", lang.L("One of"), strings.Join(words, ", "))
		},
	}
}

// line is a text of one line.
func line(title string, width float32, of func(f *trip.Food) *string) field {
	return field{
		title: title, width: width, text: func(f *trip.Food) string { return *of(f) },
		set: func(f *trip.Food, text string) error { *of(f) = strings.TrimSpace(text); return nil },
	}
}

// isBlank tells what stands for "not known".
func isBlank(text string) bool {
	text = strings.TrimSpace(text)
	return text == "" || text == notKnown || text == "–" || text == "-"
}

func energyField() field {
	return field{
		title: lang.L("Energy"), unit: "kcal/100 g", width: 88, needed: true,
		also: lang.X("heads-energy", "Calories, Energy value, Calorific value"), alsoIn: map[string]string{"kcal": "kcal", "kJ": "kJ"},
		number: func(f *trip.Food) float64 { return float64(f.Per100g.Kcal) },
		text:   func(f *trip.Food) string { return strconv.FormatFloat(float64(f.Per100g.Kcal), 'f', 0, 64) },
		set: func(f *trip.Food, text string) (err error) {
			f.Per100g.Kcal, err = energy(text)
			return err
		},
		tone: func(f *trip.Food) fyne.ThemeColorName {
			if check := checkEnergy(&f.Per100g); check.known && !check.fits && !fromLibrary(f) {
				return look.Ochre
			}
			return look.Ink
		},
	}
}

// energy reads what a label says: kilocalories, or kilojoules with their unit.
func energy(text string) (units.Kcal, error) {
	plain := strings.ToLower(strings.TrimSpace(text))
	for part := range strings.SplitSeq(plain, "/") { // as labels print it: 1550 kJ / 370 kcal
		if part = strings.TrimSpace(part); strings.HasSuffix(part, "kcal") {
			plain = part
		}
	}
	factor := 1.0
	if rest, ok := strings.CutSuffix(plain, "kj"); ok {
		plain, factor = rest, 1/units.KilojoulesPerKcal
	} else {
		plain = strings.TrimSuffix(plain, "kcal")
	}
	value, err := typed.Number(plain)
	if err != nil || value < 0 {
		return 0, errors.New(lang.L("Energy is a number of kcal, or of kJ with its unit, such as 1550 kJ."))
	}
	return units.Kcal(value * factor), nil
}
