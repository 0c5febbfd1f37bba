package tripjson

import (
	"fmt"
	"reflect"
	"strings"
	"unicode/utf8"

	"sumpter/domain/units"
)

// Problem is one fault in a JSON trip: where it is, what stands there, what is
// wrong with it and what may stand there.
type Problem struct {
	Path    string // "crew[2].body_mass_g"; "" is the whole
	Found   string // as written, cut where long
	Wrong   string
	Allowed string
}

// String is the one line a reader sees.
func (p Problem) String() string {
	line := p.Path + ": "
	if p.Path == "" {
		line = "the trip: "
	}
	if p.Found != "" {
		line += p.Found + " "
	}
	line += p.Wrong
	if p.Allowed != "" {
		line += "; allowed: " + p.Allowed
	}
	return line
}

// shown cuts what was found to what fits a line.
func shown(raw []byte) string {
	const most = 60
	text := strings.Join(strings.Fields(string(raw)), " ")
	if utf8.RuneCountInString(text) > most {
		text = string([]rune(text)[:most]) + "…"
	}
	return text
}

// allowed says in words what a value of the type may be.
func allowed(kind reflect.Type) string {
	if list, ok := choices[kind]; ok {
		return strings.Join(list, ", ")
	}
	switch kind {
	case reflect.TypeFor[units.Mass]():
		return "a number of grams with at most three decimals"
	case reflect.TypeFor[units.Volume]():
		return "a number of millilitres with at most three decimals"
	case reflect.TypeFor[units.Date]():
		return `a date as "2026-07-20", or "" for none`
	case reflect.TypeFor[units.Money]():
		return "a whole number of the currency's smallest coin"
	}
	if inner, ok := optionalOf(kind); ok {
		return allowed(inner) + ", or null where it is unknown"
	}
	switch kind.Kind() {
	case reflect.Struct, reflect.Map:
		return "an object"
	case reflect.Slice:
		return "a list"
	case reflect.String:
		return "text"
	case reflect.Bool:
		return "true or false"
	case reflect.Float64:
		return "a number"
	default:
		return fmt.Sprintf("a whole number of at most %d bits", kind.Bits())
	}
}
