package settings

import (
	"math"
	"strconv"
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/screens/bench"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// measure is how a kind of number is read and written in the reader's units.
// Plain and from lead to the number of the JSON form and back, in which ranges
// are told.
type measure[T any] struct {
	unit  string
	text  func(T) string
	read  func(text string) (T, error)
	plain func(T) float64
	from  func(float64) T
}

// range_ says a range in the reader's units.
func (m measure[T]) range_(bound trip.Bound) string {
	data := map[string]any{"Low": m.text(m.from(bound.Low)), "High": m.text(m.from(bound.High))}
	if bound.AboveLow {
		return lang.X("allowed-above", "more than {{.Low}}, up to {{.High}}", data)
	}
	return lang.X("allowed-range", "{{.Low}} to {{.High}}", data)
}

// numerals writes a number with two decimals, or the first three figures of a
// smaller one, without idle noughts.
func numerals(value float64) string {
	decimals := 2
	if size := math.Abs(value); size > 0 && size < 1 {
		decimals = min(6, 2-int(math.Floor(math.Log10(size))))
	}
	return written.AtMost(value, decimals)
}

func same(value float64) float64 { return value }

// share is a part of a whole, in per cent.
func share() measure[float64] {
	return measure[float64]{"%", func(v float64) string { return numerals(v * 100) }, typed.Percent, same, same}
}

// counted is a plain number with the unit it counts in.
func counted(unit string) measure[float64] {
	return measure[float64]{unit, numerals, typed.Number, same, same}
}

func whole(unit string) measure[int] {
	return measure[int]{
		unit: unit, text: strconv.Itoa,
		read:  func(text string) (int, error) { return typed.Whole(text, -1<<31, 1<<31-1) },
		plain: func(v int) float64 { return float64(v) },
		from:  func(v float64) int { return int(v) },
	}
}

func hours() measure[units.Hours] {
	return measure[units.Hours]{
		unit: "h", text: func(v units.Hours) string { return numerals(float64(v)) }, read: typed.Hours,
		plain: func(v units.Hours) float64 { return float64(v) },
		from:  func(v float64) units.Hours { return units.Hours(v) },
	}
}

func minutes() measure[units.Minutes] {
	return measure[units.Minutes]{
		unit: "min", text: func(v units.Minutes) string { return numerals(float64(v)) },
		read:  func(text string) (units.Minutes, error) { v, err := typed.Number(text); return units.Minutes(v), err },
		plain: func(v units.Minutes) float64 { return float64(v) },
		from:  func(v float64) units.Minutes { return units.Minutes(v) },
	}
}

func temperature(u units.System) measure[units.Celsius] {
	return measure[units.Celsius]{
		unit: typed.TemperatureUnit(u),
		text: func(v units.Celsius) string {
			if u == units.US {
				return numerals(v.Fahrenheit())
			}
			return numerals(float64(v))
		},
		read:  func(text string) (units.Celsius, error) { return typed.Temperature(text, u) },
		plain: func(v units.Celsius) float64 { return float64(v) },
		from:  func(v float64) units.Celsius { return units.Celsius(v) },
	}
}

// warming is degrees between two temperatures; a degree Fahrenheit is 5/9 of a
// kelvin.
func warming(u units.System) measure[float64] {
	perKelvin := 1.0
	if u == units.US {
		perKelvin = 9.0 / 5
	}
	return measure[float64]{
		unit: typed.TemperatureUnit(u), text: func(v float64) string { return numerals(v * perKelvin) },
		read:  func(text string) (float64, error) { v, err := typed.Number(text); return v / perKelvin, err },
		plain: same, from: same,
	}
}

func smallMass(u units.System) measure[units.Mass] {
	return measure[units.Mass]{
		unit: typed.MassUnit(u, false),
		text: func(v units.Mass) string {
			if u == units.US {
				return numerals(v.Ounces())
			}
			return numerals(v.Grams())
		},
		read:  func(text string) (units.Mass, error) { return typed.Mass(text, u, false) },
		plain: func(v units.Mass) float64 { return v.Grams() }, from: units.FromGrams,
	}
}

func smallVolume(u units.System) measure[units.Volume] {
	return measure[units.Volume]{
		unit: typed.VolumeUnit(u, false), text: func(v units.Volume) string { return written.Bare(typed.VolumeText(v, u, false)) },
		read:  func(text string) (units.Volume, error) { return typed.Volume(text, u, false) },
		plain: func(v units.Volume) float64 { return v.Millilitres() }, from: units.FromMillilitres,
	}
}

// dateText writes a date the way it is typed, with its weekday beside it.
func dateText(day units.Date) string {
	if !day.IsSet() {
		return ""
	}
	return day.String() + " " + bench.WeekdayWord(day)
}

// readDate reads what dateText writes, and a date as people write it.
func readDate(text string, system units.System) (units.Date, error) {
	first, _, _ := strings.Cut(strings.TrimSpace(text), " ")
	if date, err := units.ParseDate(first); err == nil {
		return date, nil
	}
	return typed.Date(text, system)
}
