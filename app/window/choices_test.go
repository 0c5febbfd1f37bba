package window

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"maps"
	"path/filepath"
	"reflect"
	"slices"
	"strings"

	"sumpter/domain/carry"
	"sumpter/domain/findings"
	"sumpter/domain/spoilage"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// spoken says, for each text that is only known when the program runs, which
// texts it can be: the source is read as "package: expression".
func spoken() map[string][]string {
	allergens, diets, presences := words(trip.KnownAllergens()), words(trip.KnownDiets()), words(trip.Presences())
	fuels, meals, severities := words(trip.FuelKinds()), words(trip.Meals()), words(severities())
	gear, points, sexes := words(trip.GearKinds()), words(trip.PointKinds()), words(trip.Sexes())
	forms, suitabilities, verdicts := words(trip.Forms()), words(trip.Suitabilities()), words([]spoilage.Verdict{spoilage.Safe, spoilage.NotSafe, spoilage.NotKnown})
	days := trip.OpenDayNames()
	return map[string][]string{
		"window: string(severity)":      severities,
		"window: string(place.Meal)":    meals,
		"window: fieldWord(field.Name)": fieldWords(),

		"bench: allergen.Named(system)": append(allergens, usNames()...),
		"bench: string(diet)":           diets,

		"crew: string(sex)":              sexes,
		"crew: string(m.Sex)":            sexes,
		"crew: string(trip.Female)":      sexes,
		"crew: string(trip.Male)":        sexes,
		"crew: string(trip.SexNotGiven)": sexes,

		"foods: string(value)":                   slices.Concat(forms, words(trip.TCSStates())),
		"foods: string(*of(f))":                  forms,
		"foods: string(verdict)":                 verdicts,
		"foods: string(u.uses[at].fate.Verdict)": verdicts,
		"foods: string(fate.Meal)":               meals,
		"foods: stretch.Where":                   restated("../../domain/spoilage", "home", "car", "post", "box", "pack"),

		"menu: string(k.meal)":             meals,
		"menu: string(meal.Fuel)":          fuels,
		"menu: string(finding.Severity)":   severities,
		"menu: string(f.Severity)":         severities,
		"menu: string(objection.Presence)": presences,
		"menu: string(objection.Suits)":    suitabilities,
		"menu: string(s.b.hears.how())":    restated("../screens/menu", "swap", "move", "copy"),

		"bench: string(bag.Meal)":   meals,
		"bench: string(trip.Snack)": meals,

		"trail: string(move.Meal)":   meals,
		"trail: string(move.ToMeal)": meals,

		"resupply: string(kind)":             points,
		"resupply: string(p.Kind)":           points,
		"resupply: string(point.Kind)":       points,
		"resupply: string(finding.Severity)": severities,
		"bench: day":                         days,
		"bench: name":                        days,
		"bench: names[from]":                 days,
		"bench: names[to-1]":                 days,

		"recipes: string(meal)":    meals,
		"recipes: string(i.Role)":  words(trip.Roles()),
		"recipes: string(i.Place)": words(trip.Places()),
		"recipes: string(value)":   slices.Concat(words(trip.Roles()), words(trip.Places())),

		"route: string(meal)":             meals,
		"route: string(d.Terrain)":        words(trip.Terrains()),
		"route: string(terrain)":          words(trip.Terrains()),
		"route: string(finding.Severity)": severities,

		"trail: string(b.MealOn(s.number))":   meals,
		"trail: string(bag.MealOn(s.number))": meals,
		"trail: string(allergen.Presence)":    presences,
		"trail: string(end)":                  words(trip.Ends()),
		"trail: string(part.End)":             words(trip.Ends()),
		"trail: string(trip.NotPacked)":       {string(trip.NotPacked)},
		"trail: string(finding.Severity)":     severities,
		"trail: string(fuel.Kind)":            fuels,

		"bench: weekday": days,
		"bench: month":   months(),

		"loads: string(kind)":             gear,
		"loads: string(one)":              slices.Concat(gear, fuels),
		"loads: string(x.Fuel)":           fuels,
		"loads: string(c.Fuel)":           fuels,
		"loads: string(finding.Severity)": severities,
	}
}

// proseWords are the words of the plan's texts that are not literals of a
// prose.Word: values of a type of their own.
func proseWords() []string {
	list := slices.Concat(
		refusedWords(), words(trip.KnownAllergens()), usNames(), words(trip.KnownDiets()), words(trip.Presences()), words(trip.FuelKinds()), words(trip.Meals()),
		words(trip.WalkingEquations()), words([]spoilage.Verdict{spoilage.Safe, spoilage.NotSafe, spoilage.NotKnown}),
		words([]carry.ItemKind{carry.BagItem, carry.GearItem, carry.FuelItem, carry.WasteItem}), trip.OpenDayNames(), months(),
		restated("../../domain/science/foodenergy", "energy", "protein"),
	)
	return slices.DeleteFunc(list, func(word string) bool { return word == "" })
}

// usNames are the allergens that labels of the United States name otherwise.
func usNames() []string {
	var list []string
	for _, allergen := range trip.KnownAllergens() {
		if name := allergen.Named(units.US); name != string(allergen) {
			list = append(list, name)
		}
	}
	return list
}

func months() []string {
	return restated("../../domain/units", "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
}

// spokenKeys is the same for texts with a key: key and English text, both of
// which must stand in the source of the package.
func spokenKeys() map[string]map[string]string {
	return map[string]map[string]string{
		"menu: how.key": {"menu-serve": "serve {{.Dish}} at {{.Slot}}", "menu-add": "add {{.Dish}} to {{.Slot}}"},
		"menu: key": {
			"menu-accept":      "serve {{.Who}} {{.Food}} at {{.Slot}} by hand",
			"menu-accept-back": "no longer serve {{.Who}} {{.Food}} at {{.Slot}}",
		},
	}
}

func words[T ~string](list []T) []string {
	texts := make([]string, len(list))
	for i, one := range list {
		texts[i] = string(one)
	}
	return texts
}

// restated keeps those texts that stand in the source of a package, so that a
// list above cannot outlive what it lists.
func restated(folder string, texts ...string) []string {
	said := literalsOf(folder)
	return slices.DeleteFunc(texts, func(text string) bool { return !said[text] })
}

func severities() []findings.Severity {
	return []findings.Severity{findings.MustFix, findings.LookAt, findings.Note}
}

// addChoices adds what the texts known only at run time can be.
func (x *texts) addChoices() {
	choices, keys := spoken(), spokenKeys()
	for _, word := range append(proseWords(), "cups") {
		x.add("prose", word, word)
	}
	for _, said := range slices.Sorted(maps.Keys(x.dynamic)) {
		at := x.dynamic[said]
		list, known := choices[said]
		for _, text := range list {
			x.add(at, text, text)
		}
		for key, english := range keys[said] {
			known = true
			if said := literalsOf(filepath.Dir(strings.SplitN(at, ":", 2)[0])); !said[key] || !said[english] {
				x.wrong = append(x.wrong, fmt.Sprintf("spokenKeys has %q, which the source does not say", key))
			}
			x.add(at, key, english)
		}
		if !known {
			x.wrong = append(x.wrong, fmt.Sprintf("%s: say in spoken which texts %q can be", at, said))
		}
	}
	for _, said := range slices.Concat(slices.Collect(maps.Keys(choices)), slices.Collect(maps.Keys(keys))) {
		if x.dynamic[said] == "" {
			x.wrong = append(x.wrong, fmt.Sprintf("spoken has %q, which the source does not say", said))
		}
	}
}

// literalsOf lists the literals of a package's own files.
func literalsOf(folder string) map[string]bool {
	said := map[string]bool{}
	paths, _ := filepath.Glob(filepath.Join(folder, "*.go"))
	for _, path := range paths {
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
		if err != nil || strings.HasSuffix(path, "_test.go") {
			continue
		}
		ast.Inspect(file, func(node ast.Node) bool {
			if e, ok := node.(ast.Expr); ok {
				if text, ok := literal(e); ok {
					said[text] = true
				}
			}
			return true
		})
	}
	return said
}

// fieldWords are the words for every field that two trips can differ in.
func fieldWords() []string {
	var found []string
	var add func(fields reflect.Type)
	add = func(fields reflect.Type) {
		for i := range fields.NumField() {
			field := fields.Field(i)
			if name, _, _ := strings.Cut(field.Tag.Get("json"), ","); field.Anonymous {
				add(field.Type)
			} else if name != "id" {
				found = append(found, fieldWord(name))
			}
		}
	}
	for _, kind := range []any{
		trip.Trip{}, trip.Settings{}, trip.Progress{}, trip.CookGroup{}, trip.Member{}, trip.Day{}, trip.Food{}, trip.Recipe{}, trip.Cell{}, trip.Gear{},
		trip.FuelContainer{}, trip.BagType{}, trip.ResupplyPoint{}, trip.Posting{}, trip.Shop{}, trip.PackedBag{}, trip.BagEnd{},
	} {
		add(reflect.TypeOf(kind))
	}
	slices.Sort(found)
	return slices.Compact(found)
}
