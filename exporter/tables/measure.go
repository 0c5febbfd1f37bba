package tables

import (
	"math"
	"strconv"

	"sumpter/domain/prose"
	"sumpter/domain/units"
)

// measure shows quantities in the reader's system: figures in a column whose
// heading has the unit, and amounts in running text.
type measure struct {
	system   units.System
	currency string
}

func (m measure) us() bool { return m.system == units.US }

// pick gives the unit for a heading.
func (m measure) pick(metric, us string) string {
	if m.us() {
		return us
	}
	return metric
}

func (m measure) foodUnit() string   { return m.pick("g", "oz") }
func (m measure) loadUnit() string   { return m.pick("kg", "lb") }
func (m measure) waterUnit() string  { return m.pick("mL", "cups") }
func (m measure) drinkUnit() string  { return m.pick("L", "qt") }
func (m measure) heightUnit() string { return m.pick("m", "ft") }
func (m measure) heatUnit() string   { return m.pick("°C", "°F") }

func (m measure) food(mass units.Mass) Value {
	if m.us() {
		return figure(mass.Ounces())
	}
	return figure(mass.Grams())
}

func (m measure) foodDecimals() int {
	if m.us() {
		return 2
	}
	return 0
}

func (m measure) load(mass units.Mass) Value {
	if m.us() {
		return figure(mass.Pounds())
	}
	return figure(mass.Kilograms())
}

// US cups and quarts, exact by NIST Handbook 44 (Appendix C).
const (
	millilitresPerCup = 236.5882365
	litresPerQuart    = 0.946352946
)

func (m measure) water(volume units.Volume) Value {
	if m.us() {
		return figure(volume.Millilitres() / millilitresPerCup)
	}
	return figure(volume.Millilitres())
}

func (m measure) drink(volume units.Volume) Value {
	if m.us() {
		return figure(volume.Litres() / litresPerQuart)
	}
	return figure(volume.Litres())
}

func (m measure) height(height units.Metres) Value {
	if m.us() {
		return figure(height.Feet())
	}
	return figure(float64(height))
}

func (m measure) heat(heat units.Celsius) Value {
	if m.us() {
		return figure(heat.Fahrenheit())
	}
	return figure(float64(heat))
}

// money gives the amount in whole coins of the currency as a decimal figure.
func (m measure) money(amount units.Money) Value {
	return figure(float64(amount) / math.Pow10(units.CurrencyDigits(m.currency)))
}

// weighed writes a mass that somebody puts on a kitchen scale: ounces with
// grams beside them, since a tenth of an ounce is coarser than the scale.
func (m measure) weighed(mass units.Mass) string {
	if !m.us() {
		return mass.Format(units.Metric)
	}
	ounces, decimals := mass.Ounces(), 1
	if ounces < 1 {
		decimals = 2
	}
	return strconv.FormatFloat(ounces, 'f', decimals, 64) + " oz (" + mass.Format(units.Metric) + ")"
}

func (m measure) moneyDecimals() int { return units.CurrencyDigits(m.currency) }

// text writes a text of the plan in the units of the trip.
func (m measure) text(t prose.Text) string { return t.In(prose.Reader{Units: m.system}) }
