// Package prose holds what the program says to people as its parts: a format
// in English and the names, numbers and quantities that belong into it. The
// stages say what they found once; whoever shows it writes it in the reader's
// language, units and decimal sign.
//
// Make texts with Say; write them with Text.In, or Text.String for plain
// English in metric units.
package prose

import (
	"fmt"

	"sumpter/domain/units"
)

// Text is something said to people. The zero Text says nothing. It must not be
// changed and may be copied.
type Text struct {
	kind kind
	form string // the format, what stands between the parts, or the text itself
	args []any
}

type kind uint8

const (
	said     kind = iota // form is a format of package fmt in English
	listed               // form stands between the args
	verbatim             // form is the text
)

// Say makes a text of a format of package fmt and its arguments. The format is
// the key under which a translation is found, so it is a constant.
//
// Arguments keep their type until the text is written: strings are names and
// stay as they are; values of a named string type (trip.Meal) are words of the
// program and are translated, but for those whose OwnWord method says that
// they are the leader's, by the name that their Named method gives, if they
// have one, to who thinks in other units; quantities (units.Mass, Height, Price …), dates and Texts
// are written for the reader and take the verb %s; numbers are written by
// their verb, with the reader's decimal sign.
func Say(format string, args ...any) Text {
	if false {
		_ = fmt.Sprintf(format, args...) // lets go vet check formats and arguments
	}
	return Text{kind: said, form: format, args: args}
}

// Verbatim makes a text that reads the same in every language: what the leader
// wrote, or an answer of another program.
func Verbatim(text string) Text {
	if text == "" {
		return Text{}
	}
	return Text{kind: verbatim, form: text}
}

// Plural chooses between what is said of one and of any other number.
func Plural(count int, one, many Text) Text {
	if count == 1 {
		return one
	}
	return many
}

// List makes a text of parts, which may be anything that Say takes, with a
// separator between them. Texts that say nothing are left out.
func List[T any](separator string, parts []T) Text {
	list := Text{kind: listed, form: separator}
	for _, part := range parts {
		if text, ok := any(part).(Text); ok && text.IsZero() {
			continue
		}
		list.args = append(list.args, part)
	}
	if len(list.args) == 0 {
		return Text{}
	}
	return list
}

// Then adds a sentence.
func (t Text) Then(next Text) Text { return List(" ", []Text{t, next}) }

// IsZero tells whether nothing is said.
func (t Text) IsZero() bool { return t.form == "" && len(t.args) == 0 }

// String writes the text in English and metric units.
func (t Text) String() string { return t.In(Reader{}) }

// MarshalText writes the text as String does.
func (t Text) MarshalText() ([]byte, error) { return []byte(t.String()), nil }

// UnmarshalText reads a written text; its parts are not known any more.
func (t *Text) UnmarshalText(text []byte) error {
	*t = Verbatim(string(text))
	return nil
}

// Word is a word of the program that has no type of its own.
type Word string

// Height is a length in metres that is written as one: metres or feet.
type Height units.Metres

// String writes metres.
func (h Height) String() string { return h.Format(units.Metric) }

// Format writes metres or feet.
func (h Height) Format(system units.System) string { return units.Metres(h).FormatHeight(system) }

// Distance is a length in metres that is written as a way: kilometres or miles.
type Distance units.Metres

// String writes kilometres.
func (d Distance) String() string { return d.Format(units.Metric) }

// Format writes kilometres or miles.
func (d Distance) Format(system units.System) string {
	return units.Metres(d).FormatDistance(system)
}

// Weighed is a mass that is written as a kitchen scale shows it.
type Weighed units.Mass

// String writes grams.
func (w Weighed) String() string { return w.Format(units.Metric) }

// Format writes grams or ounces.
func (w Weighed) Format(system units.System) string { return units.Mass(w).FormatWeighed(system) }

// Net is the mass of a package, written as the package states it.
type Net units.Mass

// String writes grams.
func (n Net) String() string { return n.Format(units.Metric) }

// Format writes grams, ounces or whole pounds.
func (n Net) Format(system units.System) string { return units.Mass(n).FormatNet(system) }

// Price is an amount of money in a currency (ISO 4217).
type Price struct {
	Amount   units.Money
	Currency string
}

// String writes the amount with the code of its currency.
func (p Price) String() string { return p.Amount.Format(p.Currency) }

// Format writes the amount with the code of its currency; the units do not
// matter.
func (p Price) Format(units.System) string { return p.String() }
