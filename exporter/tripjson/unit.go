package tripjson

import (
	"reflect"
	"strings"
	"unicode"
	"unicode/utf8"

	"sumpter/domain/units"
)

// unitsByType says the unit of the types that carry one.
var unitsByType = map[reflect.Type]string{
	reflect.TypeFor[units.Mass]():    "grams, at most three decimals",
	reflect.TypeFor[units.Volume]():  "millilitres, at most three decimals",
	reflect.TypeFor[units.Money]():   "the smallest coin of the trip's currency, whole",
	reflect.TypeFor[units.Kcal]():    "kilocalories",
	reflect.TypeFor[units.Celsius](): "degrees Celsius",
	reflect.TypeFor[units.Hours]():   "hours",
	reflect.TypeFor[units.Minutes](): "minutes",
	reflect.TypeFor[units.Metres]():  "metres",
	reflect.TypeFor[units.Date]():    "YYYY-MM-DD, empty for none",
}

// unitsByName says the unit of plain numbers from the end of their JSON name;
// the longer ending comes first.
var unitsByName = []struct{ end, unit string }{
	{"_kj_per_kg_k", "kilojoules per kilogram and kelvin"},
	{"_g_per_kg", "grams per kilogram of body mass"},
	{"_g_per_ml", "grams per millilitre"},
	{"_mg", "milligrams"},
	{"_g", "grams"},
	{"_w", "watts"},
	{"_k", "kelvins"},
	{"_years", "years"},
	{"_days_20c", "days at 20 °C"},
	{"_days", "days"},
	{"_share", "a share: 0.15 is 15 %"},
	{"share", "a share: 0.15 is 15 %"},
}

// unitOf gives the unit of a field in words, or nothing.
func unitOf(field reflect.StructField) string {
	kind := field.Type
	for kind.Kind() == reflect.Slice {
		kind = kind.Elem()
	}
	inner, mayBeUnknown := optionalOf(kind)
	if mayBeUnknown {
		kind = inner
	}
	unit := unitsByType[kind]
	if unit == "" && (kind.Kind() == reflect.Float64 || kind.Kind() == reflect.Int) {
		unit = unitByName(jsonName(field))
	}
	switch {
	case !mayBeUnknown:
		return unit
	case unit == "":
		return "left out or null where unknown"
	default:
		return unit + "; left out or null where unknown"
	}
}

func unitByName(name string) string {
	for _, known := range unitsByName {
		if strings.HasSuffix(name, known.end) {
			return known.unit
		}
	}
	return ""
}

// described joins a unit and a comment to sentences.
func described(unit, comment string) string {
	return strings.TrimSpace(sentence(unit) + " " + sentence(comment))
}

func sentence(text string) string {
	if text == "" {
		return ""
	}
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + strings.TrimSuffix(text[size:], ".") + "."
}
