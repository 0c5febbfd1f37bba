package menu

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"

	"sumpter/app/look"
	"sumpter/app/written"
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/spoilage"
)

// cooking tells the water, the time on the flame and the fuel of the meal.
func (d *side) cooking() []fyne.CanvasObject {
	o := d.s.seen
	meal := o.cooked[d.k]
	if meal == nil {
		return nil
	}
	u := o.trip.Units
	var lines []string
	tell := func(words string) { lines = append(lines, words) }
	if meal.FoodWater > 0 || meal.OtherWater > 0 {
		tell(lang.X("menu-water", "Water: {{.Food}} into the food, {{.Other}} for drinks and washing up.",
			map[string]any{"Food": written.Quantity(meal.FoodWater, u), "Other": written.Quantity(meal.OtherWater, u)}))
	}
	uncooked := o.uncooked(d.k)
	switch {
	case len(uncooked) > 0:
		tell(lang.X("menu-uncooked", "There is no flame to cook on here: {{.Dishes}}.", map[string]any{"Dishes": strings.Join(uncooked, ", ")}))
	case meal.Cold:
		tell(lang.L("Made without flame."))
	default:
		tell(lang.X("menu-flame", "Flame: {{.Boils}} × to the boil, {{.Simmer}} min simmering; the last one eats after {{.Minutes}} min.",
			map[string]any{"Boils": meal.Boils, "Simmer": numberRange(float64(meal.SimmerMinutes), float64(meal.SimmerMinutes)), "Minutes": numberRange(float64(meal.Minutes), float64(meal.Minutes))}))
		tell(lang.X("menu-fuel", "Fuel: {{.Fuel}} of {{.Kind}} ({{.Range}} by wind and lid), no reserve.",
			map[string]any{"Fuel": written.Quantity(meal.FuelMass, u), "Kind": lang.L(string(meal.Fuel)), "Range": massRange(meal.FuelLow, meal.FuelHigh, u)}))
		tell(lang.X("menu-height", "At {{.Height}} water boils at {{.Temperature}}.", map[string]any{"Height": written.Quantity(prose.Height(meal.Height), u), "Temperature": written.Quantity(meal.BoilsAt, u)}))
	}
	return []fyne.CanvasObject{heading(lang.L("Cooking")), note(strings.Join(lines, "\n"))}
}

// keeping tells which foods are not plainly safe here, and which goes first.
func (d *side) keeping() []fyne.CanvasObject {
	o := d.s.seen
	fates := o.fates[d.k]
	if len(fates) == 0 {
		return nil
	}
	list := []fyne.CanvasObject{heading(lang.L("Keeping"))}
	plain := 0
	var first *spoilage.Fate
	for _, fate := range fates {
		severity, text := o.verdict(fate)
		if severity == "" {
			if plain++; first == nil || fate.LatestDay < first.LatestDay {
				first = fate
			}
			continue
		}
		list = append(list, signed(severity, text))
	}
	if first != nil {
		text := lang.X("menu-keeps", "Safe here: {{.N}} of {{.All}} foods.", map[string]any{"N": plain, "All": len(fates)})
		if food := o.foods[first.Food]; food != nil && first.LatestDay > 0 && first.LatestDay < len(o.trip.Days) {
			text += " " + lang.X("menu-goes-first", "First to go is {{.Food}}: until day {{.Day}}.", map[string]any{"Food": food.Name, "Day": first.LatestDay})
		}
		list = append(list, note(text))
	}
	return list
}

// verdict words a fate that is not plainly good; no severity means it is.
func (o *overview) verdict(fate *spoilage.Fate) (findings.Severity, string) {
	name, why := "", written.Text(fate.Why, o.trip.Units)
	if food := o.foods[fate.Food]; food != nil {
		name = food.Name
	}
	switch {
	case fate.Verdict == spoilage.NotSafe:
		return findings.MustFix, fmt.Sprintf("%s: %s. %s", name, lang.L("not safe"), why)
	case fate.Verdict != spoilage.Safe:
		return findings.MustFix, fmt.Sprintf("%s: %s. %s", name, lang.L("not known to be safe"), why)
	case fate.QualityKnown && fate.QualityUsed > 1:
		return findings.LookAt, fmt.Sprintf("%s: %s. %s", name, lang.L("past its best"), why)
	case fate.Melts:
		return findings.Note, fmt.Sprintf("%s: %s.", name, lang.L("melts on the way"))
	default:
		return "", ""
	}
}

// signed is a paragraph after the sign of a severity.
func signed(severity findings.Severity, text string) fyne.CanvasObject {
	return container.NewBorder(nil, nil, besideText(severity), nil, note(text))
}

// besideText is a sign at the height of the first line of a paragraph.
func besideText(severity findings.Severity) fyne.CanvasObject {
	return container.New(layout.NewCustomPaddedLayout(4, 0, 0, 0), container.NewVBox(look.NewSign(severity)))
}

// findings lists what the plan says of the slot, each with its remedy.
func (d *side) findings() []fyne.CanvasObject {
	o := d.s.seen
	list := o.troubles[d.k]
	if len(list) == 0 || !o.fresh(d.k) {
		return nil
	}
	objects := []fyne.CanvasObject{heading(lang.L("What to know"))}
	times, boxes := map[string]int{}, map[string]*fyne.Container{}
	for _, finding := range list {
		times[finding.What.String()]++
	}
	for _, finding := range list {
		said := finding.What.String()
		box := boxes[said] // what is said of many is said once
		told := box != nil
		if !told {
			word := look.NewText(lang.L(string(finding.Severity)), look.Caption, look.ToneOf(finding.Severity))
			remedy := note(written.Text(finding.Remedy, o.trip.Units))
			remedy.Tone = look.Quiet
			box = container.NewVBox(word, words(written.Text(finding.What, o.trip.Units)), remedy)
			boxes[said] = box
		}
		if finding.Code == "cannot-be-served" && finding.Place.Food != 0 {
			if times[said] > 1 {
				box.Add(note(d.withoutWhat(finding.Place)))
			}
			box.Add(d.offerToAccept(finding))
		}
		if told {
			continue
		}
		objects = append(objects, container.NewBorder(nil, nil, container.NewVBox(look.NewSign(finding.Severity)), nil, box))
	}
	return objects
}

// withoutWhat names who gets nothing of which dish, and the food in it.
func (d *side) withoutWhat(at findings.Place) string {
	o := d.s.seen
	text := d.s.recipeName(at.Recipe)
	if who := o.trip.Member(at.Member); who != nil {
		text = who.Name + ": " + text
	}
	if food := o.foods[at.Food]; food != nil {
		text += " (" + food.Name + ")"
	}
	return text
}
