package packing

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/bags"
	"sumpter/domain/packing"
	"sumpter/domain/prose"
	"sumpter/domain/resupply"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func foodKey(id trip.FoodID) string { return strconv.FormatInt(int64(id), 10) }
func roundKey(round int) string     { return " " + strconv.Itoa(round) }

type data = map[string]any

// mass writes what the scale shows.
func (w *work) mass(m units.Mass) string { return written.Quantity(prose.Weighed(m), w.trip.Units) }

// amount writes how much of a food goes in, counted where it comes in pieces.
func (w *work) amount(food trip.FoodID, m units.Mass) string {
	if f := w.trip.Food(food); f != nil {
		return written.Text(f.Amount(m, w.mass(m)), w.trip.Units)
	}
	return w.mass(m)
}

// signed writes a mass with its sign: "+12 g".
func (w *work) signed(m units.Mass) string {
	if m < 0 {
		return "−" + w.mass(-m)
	}
	return "+" + w.mass(m)
}

// signed writes a whole number with its sign.
func signed(value float64) string {
	return strings.Replace(fmt.Sprintf("%+.0f", value), "-", "−", 1)
}

func (w *work) foodName(id trip.FoodID) string {
	if food := w.foods[id]; food != nil {
		return food.Name
	}
	return "–"
}

// slotWords says which meals a bag is for: "Day 1, lunch, Larch".
func (w *work) slotWords(bag *bags.Bag) string {
	words := bench.BagDays(bag)
	if group := w.trip.Group(bag.Group); group != nil && len(w.trip.Groups) > 1 {
		words += ", " + group.Name
	}
	return words
}

// eaterWords says who eats it: "for Kim", "for 5".
func (w *work) eaterWords(bag *bags.Bag) string {
	if m := w.trip.Member(bag.OnlyEater()); m != nil {
		return lang.X("packing-for-one", "for {{.Name}} only", data{"Name": m.Name})
	}
	return lang.X("packing-for-many", "for {{.Count}}", data{"Count": bag.Eaters})
}

// dishName is what a bag is called: by its dish, its food or its eater.
func (w *work) dishName(bag *bags.Bag) string { return bench.BagName(w.trip, bag) }

// partWords says which of several bags it is, or nothing.
func partWords(bag *bags.Bag) string {
	if bag.Parts < 2 {
		return ""
	}
	return lang.X("packing-part", "bag {{.Part}} of {{.Parts}}", data{"Part": bag.Part, "Parts": bag.Parts})
}

// allergenWords writes every allergen in full with its state; nothing if all
// are known to be free.
func allergenWords(list []bags.Allergen, system units.System) string {
	byState := map[trip.Presence][]string{}
	for _, a := range list {
		byState[a.Presence] = append(byState[a.Presence], bench.AllergenWord(a.Allergen, system))
	}
	var parts []string
	for _, state := range []trip.Presence{trip.Contains, trip.MayContain, trip.NotKnown} {
		if names := byState[state]; len(names) > 0 {
			parts = append(parts, presenceWord(state)+" "+strings.Join(names, ", "))
		}
	}
	return strings.Join(parts, "; ")
}

func presenceWord(state trip.Presence) string {
	switch state {
	case trip.Contains:
		return lang.L("contains")
	case trip.MayContain:
		return lang.L("may contain")
	default:
		return lang.L("not known to be free of")
	}
}

// foodAllergens is what a food must be kept apart for: the declared allergens
// and those of the crew, unless it is known to be free of them.
func (w *work) foodAllergens(id trip.FoodID) []bags.Allergen {
	food := w.foods[id]
	if food == nil {
		return nil
	}
	told := trip.DeclaredAllergens()
	for i := range w.trip.Crew {
		for _, allergy := range w.trip.Crew[i].Allergies {
			if !slices.Contains(told, allergy.Allergen) {
				told = append(told, allergy.Allergen)
			}
		}
	}
	var list []bags.Allergen
	for _, allergen := range told {
		if state := food.Presence(allergen); state != trip.Free {
			list = append(list, bags.Allergen{Allergen: allergen, Presence: state})
		}
	}
	return list
}

func allergenNames(list []trip.Allergen, system units.System) string {
	names := make([]string, len(list))
	for i, allergen := range list {
		names[i] = bench.AllergenWord(allergen, system)
	}
	return strings.Join(names, ", ")
}

// stationsOf lists the stations a bag passes before it is closed.
func (w *work) stationsOf(bag *bags.Bag) string {
	var words []string
	for _, station := range []packing.Station{packing.WeighDry, packing.CountOut, packing.Wet} {
		for _, c := range bag.Contents {
			if packing.StationOf(w.foods[c.Food]) == station {
				words = append(words, written.Text(station.Name(), w.trip.Units))
				break
			}
		}
	}
	return strings.Join(words, " · ")
}

// roundWords names a round: "Round 1 of 3: free of nuts, milk".
func (w *work) roundWords(place int) string {
	planned := w.plan.Packing.Rounds[place]
	words := lang.X("packing-round", "Round {{.Number}} of {{.Count}}", data{"Number": place + 1, "Count": len(w.rounds)})
	switch {
	case len(planned.FreeOf) > 0:
		words += " · " + lang.X("packing-free-of", "free of {{.Allergens}}", data{"Allergens": allergenNames(planned.FreeOf, w.trip.Units)})
	case len(w.plan.Packing.Rounds) > 1:
		words += " · " + lang.L("with everything the crew is allergic to")
	}
	return words
}

// cleanWords is the step that keeps allergens apart.
func cleanWords() string {
	return lang.L("hands, tools and table with soap, fresh cloths")
}

// apartWords says what must not come near a round.
func (w *work) apartWords(place int) string {
	if free := w.plan.Packing.Rounds[place].FreeOf; len(free) > 0 {
		return lang.X("packing-keep-away", "Keep away: {{.Allergens}}", data{"Allergens": allergenNames(free, w.trip.Units)})
	}
	return ""
}

func (w *work) roundLeft(place int) string {
	r := w.rounds[place]
	if r.done == len(r.bags) {
		return lang.X("packing-round-done", "every bag packed: {{.Count}}", data{"Count": r.done})
	}
	return lang.X("packing-round-left", "bags left: {{.Left}} of {{.Count}}, about {{.Time}}",
		data{"Left": len(r.bags) - r.done, "Count": len(r.bags), "Time": timeWords(r.minutes)})
}

// timeWords says a duration as a person does, in steps of five minutes.
func timeWords(m units.Minutes) string {
	minutes := int(float64(m)/5+0.999) * 5
	if minutes < 60 {
		return lang.X("minutes", "{{.Minutes}} min", data{"Minutes": minutes})
	}
	return lang.X("hours-minutes", "{{.Hours}} h {{.Minutes}} min", data{"Hours": minutes / 60, "Minutes": fmt.Sprintf("%02d", minutes%60)})
}

// nightWords says how long it takes with the helpers there are.
func nightWords(m units.Minutes, helpers int) string {
	if helpers <= 1 {
		return lang.X("packing-time-alone", "about {{.Time}} for one alone", data{"Time": timeWords(m)})
	}
	return lang.X("packing-time", "about {{.Time}} with {{.Helpers}} helpers", data{"Time": timeWords(m), "Helpers": helpers})
}

// boxWords says which box a bag goes into and when it must be posted.
func boxWords(t *trip.Trip, box *resupply.Box) string {
	if box.Posted && box.PostBy.IsSet() {
		return lang.X("packing-box-post", "Box for {{.Place}}, to be posted by {{.Date}}", data{"Place": pointName(t, box), "Date": bench.DateWords(box.PostBy)})
	}
	return boxName(t, box)
}

func boxName(t *trip.Trip, box *resupply.Box) string {
	return lang.X("packing-box", "Box for {{.Place}}", data{"Place": pointName(t, box)})
}

func pointName(t *trip.Trip, box *resupply.Box) string {
	if point := t.Point(box.Point); point != nil {
		return point.Name
	}
	return "–"
}

func packWords(t *trip.Trip, carrier trip.MemberID) string {
	if m := t.Member(carrier); m != nil {
		return lang.X("packing-pack", "{{.Name}}'s pack", data{"Name": m.Name})
	}
	return lang.L("Nobody carries it yet")
}

// cookWords says what the cook reads on the label.
func (w *work) cookWords(bag *bags.Bag) string {
	if bag.Kind == bags.ReserveBag {
		return lang.L("Leave it sealed until there is need.")
	}
	var parts []string
	if bag.Place == trip.AtBowl {
		parts = append(parts, lang.L("Onto the bowls."))
	}
	if bag.Water > 0 {
		parts = append(parts, lang.X("packing-water", "Add {{.Water}} of water.", data{"Water": written.Quantity(bag.Water, w.trip.Units)}))
	}
	if bag.Minutes > 0 {
		parts = append(parts, lang.X("packing-flame", "{{.Minutes}} min on the flame.", data{"Minutes": fmt.Sprintf("%.0f", float64(bag.Minutes))}))
	}
	if bag.Soak > 0 {
		parts = append(parts, lang.X("packing-soak", "{{.Minutes}} min off the flame.", data{"Minutes": fmt.Sprintf("%.0f", float64(bag.Soak))}))
	}
	return strings.Join(parts, " ")
}
