package settings

import (
	"errors"
	"slices"
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// The settings here are like no other: names, words, references, money.

func head() []setting {
	return []setting{
		{
			name: "title", title: lang.L("Name of the trip"), about: lang.L("It stands on the window, the papers and the calendar."), unit: noUnit,
			text: func(t *trip.Trip) string { return t.Title },
			set:  func(t *trip.Trip, text string) error { t.Title = text; return nil },
		},
		{
			name: "start", title: lang.L("First day"), unit: noUnit,
			about:   lang.L("The date of day 1. Packing night and shopping day move along; opening days of resupply points stay and are checked anew."),
			allowed: func(*trip.Trip) string { return lang.L("a date") },
			text:    func(t *trip.Trip) string { return dateText(t.Start) },
			set: func(t *trip.Trip, text string) error {
				start, err := readDate(text, t.Units)
				if err == nil && !start.IsSet() {
					err = errors.New(lang.L("Enter a date, such as 2026-07-20 or 20 Jul 2026."))
				}
				if err == nil {
					t.StartOn(start)
				}
				return err
			},
		},
		unitSystem(),
		{
			name: "notes", title: lang.L("Notes"), about: lang.L("Anything about the trip. It is written at the side, on as many lines as you like."), unit: noUnit,
			text: func(t *trip.Trip) string { return strings.Join(strings.Fields(t.Notes), " ") },
		},
	}
}

// systemWords are the systems of units as a reader knows them, in the order of
// systems.
func systemWords() []string {
	return []string{lang.L("kilograms and kilometres"), lang.L("pounds and miles")}
}

var systems = []units.System{units.Metric, units.US}

func unitSystem() setting {
	return setting{
		name: "units", title: lang.L("Units"), about: lang.L("What every screen and paper shows and what a bare number you type counts in. It changes no figure of the plan."), unit: noUnit,
		choices: func(*trip.Trip) []string { return systemWords() },
		text: func(t *trip.Trip) string {
			if at := slices.Index(systems, t.Units); at >= 0 {
				return systemWords()[at]
			}
			return string(t.Units)
		},
		set: func(t *trip.Trip, text string) error {
			at := slices.Index(systemWords(), text)
			if at < 0 {
				return oneOf(systemWords())
			}
			t.Units = systems[at]
			return nil
		},
	}
}

func equation() setting {
	var names []string
	for _, one := range trip.WalkingEquations() {
		names = append(names, string(one))
	}
	return word("walking_equation", lang.L("Equation of walking"),
		lang.L("Which published equation plans the energy of walking with a load. The others stay beside it as the bracket around each need."),
		trip.WalkingEquations(), names, func(s *trip.Settings) *trip.WalkingEquation { return &s.Walking })
}

// mealShare is the part of a day's energy that a meal brings. Snacks take what
// the others leave, so that each can be changed by itself.
func mealShare(meal trip.Meal, title string, of func(s *trip.MealShares) *float64) setting {
	made := number("meal_shares."+string(meal), title, lang.L("Part of the day's energy. Snacks bring what the other meals leave of 100 %."),
		share(), func(s *trip.Settings) *float64 { return of(&s.MealShares) })
	store := made.set
	made.set = func(t *trip.Trip, text string) error {
		if err := store(t, text); err != nil {
			return err
		}
		return leaveToSnacks(&t.Settings.MealShares)
	}
	made.usual = usually(func(s *trip.Settings) *trip.MealShares { return &s.MealShares })
	return made
}

func leaveToSnacks(shares *trip.MealShares) error {
	left := 1 - shares.Breakfast - shares.Lunch - shares.Dinner
	if left < -1e-9 {
		return errors.New(lang.L("The meals bring more than 100 % together: lower another one first."))
	}
	shares.Snack = max(0, left)
	return nil
}

func snackShare() setting {
	return setting{
		name: "settings.meal_shares.snack", title: lang.L("Energy from snacks"), unit: func(*trip.Trip) string { return "%" },
		about:   lang.L("What each carries and eats for themself between the meals: what breakfast, lunch and dinner leave of 100 %."),
		text:    func(t *trip.Trip) string { return share().text(t.Settings.MealShares.Snack) },
		allowed: func(*trip.Trip) string { return lang.L("follows from the meals") },
		usual:   usually(func(s *trip.Settings) *trip.MealShares { return &s.MealShares }),
	}
}

// reserveRecipe offers every recipe; the plan says where one does not do.
func reserveRecipe() setting {
	none := func() string { return lang.L("the plan chooses") }
	return setting{
		name: "settings.reserve_recipe", title: lang.L("Reserve is made of"), unit: noUnit,
		about: lang.L("The recipe of the reserve. One that needs no flame and keeps long can still be eaten when the stove or the way is lost."),
		choices: func(t *trip.Trip) []string {
			names := []string{none()}
			for i := range t.Recipes {
				names = append(names, t.Recipes[i].Name)
			}
			return names
		},
		text: func(t *trip.Trip) string {
			if recipe := t.Recipe(t.Settings.ReserveRecipe); recipe != nil {
				return recipe.Name
			}
			return none()
		},
		set: func(t *trip.Trip, text string) error {
			if text == "" || text == none() {
				t.Settings.ReserveRecipe = 0
				return nil
			}
			at := slices.IndexFunc(t.Recipes, func(r trip.Recipe) bool { return strings.EqualFold(r.Name, text) })
			if at < 0 {
				return errors.New(lang.L("There is no such recipe in the trip."))
			}
			t.Settings.ReserveRecipe = t.Recipes[at].ID
			return nil
		},
	}
}

// word is a setting that is one of a few words; the program's own words are
// shown in the reader's language.
func word[T ~string](name, title, about string, values []T, words []string, of func(s *trip.Settings) *T) setting {
	return setting{
		name: "settings." + name, title: title, about: about, unit: noUnit, usual: usually(of),
		choices: func(*trip.Trip) []string { return words },
		text: func(t *trip.Trip) string {
			if at := slices.Index(values, *of(&t.Settings)); at >= 0 {
				return words[at]
			}
			return string(*of(&t.Settings))
		},
		set: func(t *trip.Trip, text string) error {
			at := slices.Index(words, text)
			if at < 0 {
				return oneOf(words)
			}
			*of(&t.Settings) = values[at]
			return nil
		},
	}
}

func reserveEnd() setting {
	return word("reserve_end", lang.L("Reserve at the end"), lang.L("What becomes of a reserve that was not needed: it comes home on top of all meals; or the snacks of the last days of each stage are kept for it and eaten at last, and only what they lack is packed on top."),
		[]trip.ReserveEnd{trip.ReserveTakenHome, trip.ReserveEatenLast}, []string{lang.L("taken home"), lang.L("eaten at last")},
		func(s *trip.Settings) *trip.ReserveEnd { return &s.ReserveEnd })
}

func currency() setting {
	return setting{
		name: "currency", title: lang.L("Currency"), unit: noUnit,
		about:   lang.L("The code of every price. Another code exchanges nothing: the figures stay as they are."),
		allowed: func(*trip.Trip) string { return lang.L("three letters (ISO 4217), such as EUR or USD") },
		text:    func(t *trip.Trip) string { return t.Currency },
		set: func(t *trip.Trip, text string) error {
			code := strings.ToUpper(strings.TrimSpace(text))
			if len(code) != 3 || strings.Trim(code, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") != "" {
				return errors.New(lang.L("A currency has a code of three letters, such as EUR."))
			}
			t.UseCurrency(code)
			return nil
		},
	}
}

func budget() setting {
	return setting{
		name: "settings.budget", title: lang.L("Budget"), unit: func(t *trip.Trip) string { return t.Currency },
		about:   lang.L("For food, fuel and fees together. Shopping tells what is left of it; above it there is a finding. Empty is no limit."),
		allowed: func(*trip.Trip) string { return lang.L("an amount, or empty") },
		text: func(t *trip.Trip) string {
			if amount, known := t.Settings.Budget.Get(); known {
				return written.Money(amount, t.Currency)
			}
			return ""
		},
		set: func(t *trip.Trip, text string) error {
			if text == "" {
				t.Settings.Budget = optional.Unknown[units.Money]()
				return nil
			}
			amount, err := typed.Money(text, t.Currency)
			if err == nil && amount < 0 {
				err = errors.New(lang.L("A budget is not below zero."))
			}
			if err == nil {
				t.Settings.Budget = optional.Of(amount)
			}
			return err
		},
	}
}
