package tripbook

import (
	"math/big"
	"strings"

	"sumpter/domain/units"
)

// unit is one way to write a quantity: what is inside = written × factor + offset.
type unit struct {
	symbol         string
	factor, offset *big.Rat
	format         string // of the cell: how many decimals are shown, never how many are kept
}

// quantity is what a column measures. The first unit is written for metric
// readers, the second for US readers; any of them is read.
type quantity struct{ units []unit }

// Exact by the international agreement of 1959 and NIST Handbook 44, App. C.
const (
	pound     = "453592.37"     // mg
	ounce     = "28349.523125"  // mg
	inch      = "0.0254"        // m
	foot      = "0.3048"        // m
	mile      = "1609.344"      // m
	fluidOz   = "29573.5295625" // µL
	quart     = "946352.946"    // µL
	cup       = "236588.2365"   // µL
	perDegree = "5/9"           // K a degree Fahrenheit
	atZero    = "-160/9"        // °C at 0 °F
)

var (
	bodyMass    = &quantity{[]unit{of("kg", "1000000", "0.0"), of("lb", pound, "0.0"), of("g", "1000", "0"), of("oz", ounce, "0.0")}}
	foodMass    = &quantity{[]unit{of("g", "1000", "General"), of("oz", ounce, "0.00"), of("kg", "1000000", "General"), of("lb", pound, "0.00")}}
	smallVolume = &quantity{[]unit{of("mL", "1000", "General"), of("fl oz", fluidOz, "0.0"), of("L", "1000000", "General"), of("qt", quart, "0.00"), of("cups", cup, "0.00")}}
	packVolume  = &quantity{[]unit{of("L", "1000000", "General"), of("qt", quart, "0.0"), of("mL", "1000", "0"), of("fl oz", fluidOz, "0.0")}}
	distance    = &quantity{[]unit{of("km", "1000", "General"), of("mi", mile, "0.0"), of("m", "1", "0"), of("ft", foot, "0")}}
	height      = &quantity{[]unit{of("m", "1", "General"), of("ft", foot, "0"), of("km", "1000", "General"), of("mi", mile, "0.0")}}
	stature     = &quantity{[]unit{of("cm", "1/100", "General"), of("in", inch, "0.0"), of("m", "1", "General"), of("ft", foot, "0.00")}}
	temperature = &quantity{[]unit{of("°C", "1", "General"), {"°F", rational(perDegree), rational(atZero), "0"}}}
	warming     = &quantity{[]unit{of("K", "1", "General"), of("°F more", perDegree, "0.0")}}
	energy      = &quantity{[]unit{of("kcal", "1", "General"), of("kcal", "1", "General"), of("kJ", "1000/4184", "0")}}
	// A gram of salt has 400 mg of sodium: Regulation (EU) 1169/2011, Annex I.
	sodium = &quantity{[]unit{of("mg", "1", "General"), of("mg", "1", "General"), of("g", "1000", "General"), of("g of salt", "400", "General"), of("mg of salt", "2/5", "General")}}
	share  = &quantity{[]unit{of("", "1", "0.0%"), of("", "1", "0.0%"), of("%", "1/100", "0.0")}}
)

func of(symbol, factor, format string) unit {
	return unit{symbol, rational(factor), new(big.Rat), format}
}

// same is a quantity written alike in both systems.
func same(symbol string) *quantity {
	return &quantity{[]unit{of(symbol, "1", "General"), of(symbol, "1", "General")}}
}

func rational(text string) *big.Rat {
	value, ok := new(big.Rat).SetString(text)
	if !ok {
		panic("tripbook: " + text + " in the table of units is no number")
	}
	return value
}

// in gives the unit a reader of the system expects.
func (q *quantity) in(system units.System) unit {
	if system == units.US {
		return q.units[1]
	}
	return q.units[0]
}

// named finds a unit by its symbol as people write it.
func (q *quantity) named(symbol string) (unit, bool) {
	wanted := unitKey(symbol)
	for _, u := range q.units {
		if unitKey(u.symbol) == wanted {
			return u, true
		}
	}
	return unit{}, false
}

// symbols lists the units that are read, for a message.
func (q *quantity) symbols() string {
	var list []string
	for _, u := range q.units {
		if u.symbol != "" && (len(list) == 0 || list[len(list)-1] != u.symbol) {
			list = append(list, u.symbol)
		}
	}
	return strings.Join(list, ", ")
}

// otherSpellings lists what people write for a symbol.
var otherSpellings = map[string]string{
	"lbs": "lb", "pound": "lb", "pounds": "lb", "ounce": "oz", "ounces": "oz", "gram": "g", "grams": "g", "gr": "g",
	"kilogram": "kg", "kilograms": "kg", "kilo": "kg", "kilos": "kg", "kgs": "kg", "floz": "fl oz",
	"litre": "l", "litres": "l", "liter": "l", "liters": "l", "ltr": "l", "millilitre": "ml", "millilitres": "ml", "milliliters": "ml", "quart": "qt", "quarts": "qt", "cup": "cups",
	"miles": "mi", "mile": "mi", "feet": "ft", "foot": "ft", "'": "ft", "inch": "in", "inches": "in", "\"": "in",
	"metre": "m", "metres": "m", "meter": "m", "meters": "m", "kilometre": "km", "kilometres": "km", "kilometers": "km", "kms": "km",
	"c": "°c", "degc": "°c", "celsius": "°c", "f": "°f", "degf": "°f", "fahrenheit": "°f", "percent": "%", "per cent": "%", "kcals": "kcal",
	"hours": "h", "hour": "h", "hrs": "h", "hr": "h", "minutes": "min", "minute": "min", "mins": "min",
}

func unitKey(symbol string) string {
	key := strings.ToLower(strings.Join(strings.Fields(strings.Trim(symbol, ". ")), " "))
	if spelled, ok := otherSpellings[strings.ReplaceAll(key, ".", "")]; ok {
		return spelled
	}
	return key
}
