package press

import (
	"strings"

	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Figures and dates, as the reader writes them.

// Day names a day of the trip with its date where there is one.
func (p *Press) Day(day int) string {
	if date := p.ShortDate(p.Trip.DateOf(day)); date != "" {
		return p.Tell(prose.Say("Day %d, %s", day, date))
	}
	return p.Tell(prose.Say("Day %d", day))
}

// Date writes a date with its year, or that it is not set.
func (p *Press) Date(date units.Date) string {
	if !date.IsSet() {
		return p.Tell(prose.Say("date not set"))
	}
	return p.Tell(prose.Say("%s", date))
}

// ShortDate writes a date of the trip, whose year everybody knows. A date that
// is not set has no words.
func (p *Press) ShortDate(date units.Date) string {
	if !date.IsSet() {
		return ""
	}
	_, month, day := date.Civil()
	return p.Tell(prose.Say("%s %d %s", prose.Word(date.Weekday().Short()), day, prose.Word(units.MonthName(month))))
}

// Weigh writes a mass as a kitchen scale shows it: ounces with grams beside
// them, since a tenth of an ounce is coarser than the scale.
func (p *Press) Weigh(mass units.Mass) string {
	grams := p.quantity(mass, units.Metric)
	if p.Reader.Units != units.US {
		return grams
	}
	decimals := 1
	if mass.Ounces() < 1 {
		decimals = 2
	}
	return p.Reader.Number(mass.Ounces(), decimals) + "\u00a0oz (" + grams + ")"
}

// Amount writes how much of a food somebody takes: counted pieces, and what a kitchen scale shows.
func (p *Press) Amount(food trip.FoodID, mass units.Mass) string {
	weighed := p.Weigh(mass)
	if f := p.Trip.Food(food); f != nil {
		if counted := p.Tell(f.Amount(mass, weighed)); counted != weighed {
			return strings.Replace(counted, " ", "\u00a0", 1) // the count stays with its word
		}
	}
	return weighed
}

// Net writes the mass of a package as the package states it.
func (p *Press) Net(mass units.Mass) string { return p.quantity(prose.Net(mass), p.Reader.Units) }

// Mass writes a mass for a reader.
func (p *Press) Mass(mass units.Mass) string { return p.quantity(mass, p.Reader.Units) }

// Volume writes a volume for a reader.
func (p *Press) Volume(volume units.Volume) string { return p.quantity(volume, p.Reader.Units) }

// Load writes what somebody carries, to a tenth of a kilogram or a pound.
func (p *Press) Load(mass units.Mass) string {
	if p.Reader.Units == units.US {
		return p.Reader.Number(mass.Pounds(), 1) + "\u00a0lb"
	}
	return p.Reader.Number(mass.Kilograms(), 1) + "\u00a0kg"
}

// Money writes an amount without its currency.
func (p *Press) Money(amount units.Money) string {
	text := amount.Decimal(p.Trip.Currency)
	if p.Reader.DecimalSign != "" {
		text = strings.Replace(text, ".", p.Reader.DecimalSign, 1)
	}
	return text
}

// quantity keeps a figure and its unit on one line.
func (p *Press) quantity(quantity prose.Quantity, system units.System) string {
	reader := p.Reader
	reader.Units = system
	return strings.ReplaceAll(reader.Quantity(quantity), " ", "\u00a0")
}

// Days names a stretch of days.
func (p *Press) Days(first, last int) string {
	if first >= last {
		return p.Tell(prose.Say("day %d", first))
	}
	return p.Tell(prose.Say("days %d to %d", first, last))
}
