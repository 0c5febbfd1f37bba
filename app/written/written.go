// Package written writes for the person at the window: texts of the plan in
// the language of the system, quantities in the units of the trip, and numbers
// with the decimal sign of the language. Whatever a screen shows of a number
// or of the plan goes through here.
package written

import (
	"math"
	"strconv"
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Of is the person at the window, reading in a system of units.
func Of(system units.System) prose.Reader {
	return prose.Reader{Words: word, Units: system, DecimalSign: sign()}
}

// word is the reader's for one of the plan.
func word(english string) string { return lang.L(english) }

// sign parts whole from fraction in the reader's language.
func sign() string { return lang.X("decimal-sign", ".") }

// Text writes a text of the plan.
func Text(text prose.Text, system units.System) string { return text.In(Of(system)) }

// Counted writes what is said of one, or of any other number.
func Counted(count int, one, many prose.Text) string {
	return Text(prose.Plural(count, one, many), units.Metric)
}

// Error writes what went wrong.
func Error(err error) string { return Of(units.Metric).Error(err) }

// Quantity writes a quantity with its unit.
func Quantity(quantity prose.Quantity, system units.System) string {
	return Of(system).Quantity(quantity)
}

// Amount writes how much of a food somebody takes: counted pieces with their
// mass, or the mass alone.
func Amount(food *trip.Food, mass units.Mass, system units.System) string {
	return Text(food.Amount(mass, Quantity(mass, system)), system)
}

// Number writes a number with as many decimals as given.
func Number(value float64, decimals int) string {
	text := strconv.FormatFloat(value, 'f', decimals, 64)
	if strings.Trim(text, "-0.") == "" { // no minus before nothing
		text = strings.TrimPrefix(text, "-")
	}
	return Bare(text)
}

// AtMost writes a number with as many decimals as given, and without noughts
// that say nothing.
func AtMost(value float64, decimals int) string {
	scale := math.Pow10(decimals)
	return Short(math.Round(value*scale) / scale)
}

// Short writes a number with the decimals it has.
func Short(value float64) string { return Number(value, -1) }

// Bare writes a number that was written with a decimal point.
func Bare(number string) string { return strings.Replace(number, ".", sign(), 1) }

// Money writes an amount without its currency.
func Money(amount units.Money, currency string) string { return Bare(amount.Decimal(currency)) }

// Price writes an amount with its currency.
func Price(amount units.Money, currency string) string { return Bare(amount.Format(currency)) }
