package settings

import (
	"errors"
	"slices"
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// setting is one thing the leader chooses for the whole trip.
type setting struct {
	name    string // of its JSON form, from the trip on: "settings.day_low"
	title   string
	about   string // what it does, for the leader
	unit    func(t *trip.Trip) string
	text    func(t *trip.Trip) string
	set     func(t *trip.Trip, text string) error // nil: it follows from others, or is written elsewhere
	choices func(t *trip.Trip) []string           // nil: anything
	allowed func(t *trip.Trip) string             // in words, empty where the choices say it
	usual   func(t *trip.Trip)                    // takes the usual value; nil: there is none, it hangs on the trip
}

// part is settings that belong together, under a heading.
type part struct {
	title    string
	settings []setting
}

func noUnit(*trip.Trip) string { return "" }

// usually takes the usual value of something within the settings.
func usually[T any](of func(s *trip.Settings) *T) func(t *trip.Trip) {
	return func(t *trip.Trip) {
		fresh := trip.DefaultSettings()
		*of(&t.Settings) = *of(&fresh)
	}
}

// number is a setting with a range.
func number[T any](name, title, about string, m measure[T], of func(s *trip.Settings) *T) setting {
	bound, _ := trip.SettingBound(name)
	allowed := m.range_(bound)
	return setting{
		name: "settings." + name, title: title, about: about,
		unit:    func(*trip.Trip) string { return m.unit },
		text:    func(t *trip.Trip) string { return m.text(*of(&t.Settings)) },
		allowed: func(*trip.Trip) string { return allowed },
		usual:   usually(of),
		set: func(t *trip.Trip, text string) error {
			value, err := m.read(strings.TrimSpace(strings.TrimSuffix(text, m.unit)))
			if err != nil {
				return err
			}
			if plain := m.plain(value); plain < bound.Low || plain > bound.High || bound.AboveLow && plain == bound.Low {
				return prose.Errorf("%s: %s", lang.L("Allowed is"), strings.TrimSpace(allowed+" "+m.unit))
			}
			*of(&t.Settings) = value
			return nil
		},
	}
}

// yesNo is a setting that is on or off.
func yesNo(name, title, about string, of func(s *trip.Settings) *bool) setting {
	words := func() []string { return []string{lang.L("yes"), lang.L("no")} }
	return setting{
		name: "settings." + name, title: title, about: about, unit: noUnit, usual: usually(of),
		choices: func(*trip.Trip) []string { return words() },
		text: func(t *trip.Trip) string {
			if *of(&t.Settings) {
				return words()[0]
			}
			return words()[1]
		},
		set: func(t *trip.Trip, text string) error {
			at := slices.IndexFunc(words(), func(word string) bool { return strings.EqualFold(word, text) })
			if at < 0 {
				return oneOf(words())
			}
			*of(&t.Settings) = at == 0
			return nil
		},
	}
}

// date is a day before the trip.
func date(name, title, about string, of func(s *trip.Settings) *units.Date) setting {
	return setting{
		name: "settings." + name, title: title, about: about, unit: noUnit,
		allowed: func(t *trip.Trip) string {
			return lang.X("allowed-before", "up to {{.Start}}, or empty", map[string]any{"Start": t.Start.String()})
		},
		text: func(t *trip.Trip) string { return dateText(*of(&t.Settings)) },
		set: func(t *trip.Trip, text string) (err error) {
			*of(&t.Settings), err = readDate(text, t.Units)
			return err
		},
	}
}

func oneOf(words []string) error {
	return errors.New(lang.L("One of") + ": " + strings.Join(words, ", "))
}
