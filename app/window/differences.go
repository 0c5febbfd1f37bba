package window

import (
	"encoding/json"
	"strings"
	"unicode/utf8"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/written"
	"sumpter/domain/compare"
	"sumpter/domain/units"
)

// differenceText says in one line what differs.
func differenceText(d compare.Difference, system units.System) string {
	where := listWord(d.List)
	switch {
	case d.List == "" || d.List == "settings":
		return where + " · " + fieldText(d.Fields[0], system)
	case d.List == "days":
		where += " " + d.Key
	default:
		where += " · " + d.Name
	}
	switch d.Kind {
	case compare.OnlyMine:
		return where + ": " + lang.L("only here; taking it removes it here")
	case compare.OnlyTheirs:
		return where + ": " + lang.L("only there; taking it adds it here")
	}
	var said []string
	for _, field := range d.Fields {
		said = append(said, fieldText(field, system))
	}
	return where + ": " + strings.Join(said, "; ")
}

// listWord is what the leader calls a list of the trip.
func listWord(list string) string {
	switch list {
	case "":
		return lang.L("Trip")
	case "settings":
		return lang.L("Settings")
	case "groups":
		return lang.L("Cook group")
	case "crew":
		return lang.L("Crew")
	case "days":
		return lang.L("Day")
	case "foods":
		return lang.L("Food")
	case "recipes":
		return lang.L("Recipe")
	case "menu":
		return lang.L("Menu")
	case "gear":
		return lang.L("Gear")
	case "fuels":
		return lang.L("Fuel")
	case "bag_types":
		return lang.L("Bag type")
	case "points":
		return lang.L("Resupply")
	case "pins":
		return lang.L("Pin")
	case "kept_packs":
		return lang.L("Kept packs")
	case "progress.purchases":
		return lang.L("Bought")
	case "progress.packed":
		return lang.L("Packed")
	case "progress.ends", "progress.missing_boxes":
		return lang.L("On trail")
	}
	return lang.X("other-list", "Other")
}

// fieldText says how a field differs: "body mass: 60 kg, there 62 kg".
func fieldText(field compare.Field, system units.System) string {
	name := lang.L(fieldWord(field.Name))
	mine, plain := valueText(field.Name, field.Mine, system)
	theirs, alsoPlain := valueText(field.Name, field.Theirs, system)
	if !plain || !alsoPlain || mine == theirs {
		return name
	}
	return lang.X("differs-from", "{{.Field}} {{.Mine}}, there {{.Theirs}}", map[string]any{"Field": name, "Mine": mine, "Theirs": theirs})
}

// suffixes of JSON names tell the unit.
var suffixes = map[string]func(value float64, system units.System) string{
	"_g":       func(v float64, s units.System) string { return written.Quantity(units.FromGrams(v), s) },
	"_ml":      func(v float64, s units.System) string { return written.Quantity(units.FromMillilitres(v), s) },
	"_c":       func(v float64, s units.System) string { return written.Quantity(units.Celsius(v), s) },
	"_kcal":    func(v float64, _ units.System) string { return short(v) + " kcal" },
	"_m":       func(v float64, _ units.System) string { return short(v) + " m" },
	"_hours":   func(v float64, _ units.System) string { return short(v) + " h" },
	"_minutes": func(v float64, _ units.System) string { return short(v) + " min" },
}

// unitNames are the fields whose name says more of the unit than of the thing.
var unitNames = map[string]string{
	"age_years": "age", "dislikes": "disliked foods", "bulk_g_per_ml": "bulk density", "heat_capacity_kj_per_kg_k": "heat capacity", "pack_sun_heat_k": "heat of a pack in the sun",
	"per_100g": "nutrients", "power_w": "power", "protein_g_per_kg": "protein per kilogram of body",
}

// fieldWord makes words of a JSON name: "body_mass_g" is "body mass".
func fieldWord(name string) string {
	if word, ok := unitNames[name]; ok {
		return word
	}
	for suffix := range suffixes {
		if bare, cut := strings.CutSuffix(name, suffix); cut && suffix != "_minutes" && suffix != "_hours" {
			name = bare
			break
		}
	}
	return strings.ReplaceAll(name, "_", " ")
}

// valueText writes a value of one piece; false for lists and the like.
func valueText(name, value string, system units.System) (text string, plain bool) {
	const longest = 40
	var read any
	if value == "" {
		return lang.L("not given"), true
	}
	if json.Unmarshal([]byte(value), &read) != nil {
		return "", false
	}
	switch v := read.(type) {
	case string:
		if v == "" {
			return lang.L("not given"), true
		}
		return v, utf8.RuneCountInString(v) <= longest
	case float64:
		for suffix, format := range suffixes {
			if strings.HasSuffix(name, suffix) && unitNames[name] == "" {
				return format(v, system), true
			}
		}
		return short(v), true
	case bool:
		if v {
			return lang.L("yes"), true
		}
		return lang.L("no"), true
	}
	return "", false
}

func short(value float64) string { return written.Short(value) }
