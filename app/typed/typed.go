// Package typed reads what people type into a field: numbers with a decimal
// point or comma, with or without a unit, in the system they read; and writes
// what the field starts from. Each error says what is allowed.
package typed

import (
	"errors"
	"math"
	"strconv"
	"strings"

	"sumpter/domain/prose"
	"sumpter/domain/units"
)

// largest is far above any figure of a trip on foot, and far below overflow.
const largest = 1e9

// Number reads a number: "12", "12.5", "12,5". Thousands are not parted.
func Number(text string) (float64, error) {
	plain := strings.TrimSpace(strings.ReplaceAll(text, "\u00a0", ""))
	if strings.Contains(plain, ",") && !strings.Contains(plain, ".") {
		plain = strings.Replace(plain, ",", ".", 1)
	}
	if strings.ContainsAny(plain, "xXpP_iInN") {
		return 0, prose.Errorf("%q is not a number, such as 12.5", text)
	}
	value, err := strconv.ParseFloat(plain, 64)
	if err != nil || math.Abs(value) > largest {
		return 0, prose.Errorf("%q is not a number, such as 12.5", text)
	}
	return value, nil
}

// Whole reads a whole number between two bounds.
func Whole(text string, least, most int) (int, error) {
	value, err := strconv.Atoi(strings.TrimSpace(text))
	if err != nil || value < least || value > most {
		return 0, prose.Errorf("%q is not a whole number from %d to %d", text, least, most)
	}
	return value, nil
}

// unit is a name people write behind a number, and how much of the inner
// quantity it is.
type unit struct {
	name   string
	factor float64
}

var (
	massUnits     = []unit{{"kg", 1000}, {"g", 1}, {"lb", 453.59237}, {"lbs", 453.59237}, {"oz", 28.349523125}}
	lengthUnits   = []unit{{"km", 1000}, {"cm", 0.01}, {"m", 1}, {"mi", 1609.344}, {"ft", 0.3048}, {"in", 0.0254}}
	volumeUnits   = []unit{{"ml", 1}, {"l", 1000}, {"qt", 946.352946}, {"cups", 236.5882365}, {"cup", 236.5882365}, {"gal", 3785.411784}, {"fl oz", 29.5735295625}}
	durationUnits = []unit{{"h", 1}, {"min", 1.0 / 60}}
)

// fluidOunce is the one unit of two words.
const fluidOunce = "fl oz"

// IsVolume tells whether a text says a volume by its unit.
func IsVolume(text string) bool {
	_, err := with(text, volumeUnits, "none")
	return err == nil
}

// with reads a number and its unit; without one, the usual unit counts.
func with(text string, known []unit, usual string) (float64, error) {
	plain := strings.TrimSuffix(strings.ToLower(strings.TrimSpace(text)), ".") // of an abbreviation
	cut := len(plain)
	for cut > 0 && (plain[cut-1] >= 'a' && plain[cut-1] <= 'z') {
		cut--
	}
	name := plain[cut:]
	if rest, ok := strings.CutSuffix(strings.TrimRight(plain[:cut], " ."), "fl"); ok && name == "oz" { // "16.9 fl. oz"
		cut, name = len(rest), fluidOunce
	}
	if name == "floz" {
		name = fluidOunce
	}
	if name == "" {
		name = strings.ToLower(usual)
	}
	for _, u := range known {
		if u.name == name {
			value, err := Number(plain[:cut])
			return value * u.factor, err
		}
	}
	names := make([]string, len(known))
	for i, u := range known {
		names[i] = u.name
	}
	return 0, prose.Errorf("%q has an unknown unit; known are %s", text, prose.List(", ", names))
}

// Mass reads a mass; a bare number is in kilograms or pounds where large is
// true, else in grams or ounces.
func Mass(text string, system units.System, large bool) (units.Mass, error) {
	grams, err := with(text, massUnits, massUnit(system, large))
	if err != nil {
		return 0, err
	}
	if grams < 0 {
		return 0, prose.Errorf("a mass is not below zero")
	}
	return units.FromGrams(grams), nil
}

func massUnit(system units.System, large bool) string {
	switch {
	case system == units.US && large:
		return "lb"
	case system == units.US:
		return "oz"
	case large:
		return "kg"
	default:
		return "g"
	}
}

// MassUnit is the unit a bare number of Mass counts in.
func MassUnit(system units.System, large bool) string { return massUnit(system, large) }

// MassText writes a mass as a bare number in the unit of Mass.
func MassText(mass units.Mass, system units.System, large bool) string {
	switch massUnit(system, large) {
	case "lb":
		return trim(mass.Pounds(), 2)
	case "oz":
		return trim(mass.Ounces(), 2)
	case "kg":
		return trim(mass.Kilograms(), 2)
	default:
		return trim(mass.Grams(), 1)
	}
}

// Distance reads a way; a bare number is in kilometres or miles.
func Distance(text string, system units.System) (units.Metres, error) {
	metres, err := with(text, lengthUnits, DistanceUnit(system))
	return units.Metres(metres), err
}

// DistanceUnit is the unit a bare number of Distance counts in.
func DistanceUnit(system units.System) string {
	if system == units.US {
		return "mi"
	}
	return "km"
}

// DistanceText writes a way as a bare number.
func DistanceText(metres units.Metres, system units.System) string {
	if system == units.US {
		return trim(metres.Miles(), 1)
	}
	return trim(metres.Kilometres(), 1)
}

// Height reads a height above the sea or a climb; a bare number is in metres
// or feet.
func Height(text string, system units.System) (units.Metres, error) {
	metres, err := with(text, lengthUnits, HeightUnit(system))
	return units.Metres(metres), err
}

// HeightUnit is the unit a bare number of Height counts in.
func HeightUnit(system units.System) string {
	if system == units.US {
		return "ft"
	}
	return "m"
}

// HeightText writes a height as a bare number.
func HeightText(metres units.Metres, system units.System) string {
	if system == units.US {
		return trim(metres.Feet(), 0)
	}
	return trim(float64(metres), 0)
}

// Stature reads how tall somebody is: a bare number is in centimetres or
// inches, and 5'10" is read too.
func Stature(text string, system units.System) (units.Metres, error) {
	if feet, inches, ok := strings.Cut(strings.TrimSpace(text), "'"); ok {
		f, errFeet := Number(feet)
		i, errInches := 0.0, error(nil)
		if rest := strings.Trim(inches, "\"' "); rest != "" {
			i, errInches = Number(rest)
		}
		return units.FromFeet(f + i/12), errors.Join(errFeet, errInches)
	}
	metres, err := with(text, lengthUnits, StatureUnit(system))
	return units.Metres(metres), err
}

// StatureUnit is the unit a bare number of Stature counts in.
func StatureUnit(system units.System) string {
	if system == units.US {
		return "in"
	}
	return "cm"
}

// StatureText writes how tall somebody is as a bare number.
func StatureText(metres units.Metres, system units.System) string {
	if system == units.US {
		return trim(metres.Feet()*12, 1)
	}
	return trim(float64(metres)*100, 0)
}

// Volume reads a volume; a bare number is in litres or quarts where large is
// true, else in millilitres or cups.
func Volume(text string, system units.System, large bool) (units.Volume, error) {
	millilitres, err := with(text, volumeUnits, VolumeUnit(system, large))
	if err != nil {
		return 0, err
	}
	if millilitres < 0 {
		return 0, prose.Errorf("a volume is not below zero")
	}
	return units.FromMillilitres(millilitres), nil
}

// VolumeUnit is the unit a bare number of Volume counts in.
func VolumeUnit(system units.System, large bool) string {
	switch {
	case system == units.US && large:
		return "qt"
	case system == units.US:
		return "cups"
	case large:
		return "L"
	default:
		return "ml"
	}
}

// VolumeText writes a volume as a bare number.
func VolumeText(volume units.Volume, system units.System, large bool) string {
	switch VolumeUnit(system, large) {
	case "qt":
		return trim(volume.Quarts(), 2)
	case "cups":
		return trim(volume.Cups(), 2)
	case "L":
		return trim(volume.Litres(), 2)
	default:
		return trim(volume.Millilitres(), 0)
	}
}

// Temperature reads degrees of the system; "30 C" and "86 F" say their own.
func Temperature(text string, system units.System) (units.Celsius, error) {
	plain := strings.ToUpper(strings.TrimSpace(strings.ReplaceAll(text, "°", "")))
	fahrenheit := system == units.US
	if rest, ok := strings.CutSuffix(plain, "C"); ok {
		plain, fahrenheit = rest, false
	} else if rest, ok := strings.CutSuffix(plain, "F"); ok {
		plain, fahrenheit = rest, true
	}
	value, err := Number(plain)
	if err != nil {
		return 0, prose.Errorf("%q is not a temperature", text)
	}
	if fahrenheit {
		return units.FromFahrenheit(value), nil
	}
	return units.Celsius(value), nil
}

// TemperatureUnit is the unit a bare number of Temperature counts in.
func TemperatureUnit(system units.System) string {
	if system == units.US {
		return "°F"
	}
	return "°C"
}

// TemperatureText writes degrees as a bare number.
func TemperatureText(celsius units.Celsius, system units.System) string {
	if system == units.US {
		return trim(celsius.Fahrenheit(), 0)
	}
	return trim(float64(celsius), 0)
}

// Hours reads a duration; a bare number is in hours.
func Hours(text string) (units.Hours, error) {
	if hours, minutes, ok := strings.Cut(strings.TrimSpace(text), ":"); ok {
		h, errHours := Whole(hours, 0, 240)
		m, errMinutes := Whole(minutes, 0, 59)
		return units.Hours(float64(h) + float64(m)/60), errors.Join(errHours, errMinutes)
	}
	hours, err := with(text, durationUnits, "h")
	return units.Hours(hours), err
}

// Percent reads a share: "95" and "95 %" are 0.95.
func Percent(text string) (float64, error) {
	value, err := Number(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(text), "%")))
	return value / 100, err
}

// PercentText writes a share as whole per cents.
func PercentText(share float64) string { return trim(share*100, 0) }

// Money reads an amount in a currency, with a decimal point or comma.
func Money(text, currency string) (units.Money, error) {
	plain := strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(text), currency))
	plain = strings.Replace(plain, ",", ".", 1)
	amount, err := units.ParseMoney(plain, currency)
	if err == nil {
		return amount, nil
	}
	digits := units.CurrencyDigits(currency)
	if _, fraction, _ := strings.Cut(plain, "."); len(fraction) > digits && strings.Trim(plain, "-.0123456789") == "" {
		return 0, prose.Errorf("%q has more than %d decimals, and %s has no smaller coin", text, digits, currency)
	}
	return 0, prose.Errorf("%q is not an amount of money", text)
}

// Begins tells whether a text is the beginning of a word, or all of it.
func Begins(word, text string) bool {
	text = strings.ToLower(strings.TrimSpace(text))
	return text != "" && strings.HasPrefix(strings.ToLower(word), text)
}

// Yes reads a yes or a no.
func Yes(text string) (bool, error) {
	switch strings.ToLower(strings.TrimSpace(text)) {
	case "yes", "y", "x", "1", "true", "ja", "j":
		return true, nil
	case "no", "n", "", "0", "false", "nein", "–", "-":
		return false, nil
	default:
		return false, prose.Errorf("%q is neither yes nor no", text)
	}
}

// List reads words parted by commas or semicolons.
func List(text string) []string {
	var words []string
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return r == ',' || r == ';' }) {
		if word = strings.TrimSpace(word); word != "" {
			words = append(words, word)
		}
	}
	return words
}

func trim(value float64, decimals int) string {
	text := strconv.FormatFloat(value, 'f', decimals, 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		return "0"
	}
	return text
}
