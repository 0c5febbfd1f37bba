package library

import (
	"fmt"
	"slices"
	"strings"

	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// How much faster quality goes per 10 K: common practice within the published
// range of 1.5 to 4 (Labuza 1982; Taoukis, Labuza and Saguy 1997, from memory).
const (
	usualQ10   = 2
	fatRichQ10 = 3
	fatRich    = 30 // g per 100 g
)

// Food gives a food as the trip keeps it, without an ID and without packages,
// or false where the library has no such number.
func Food(id string) (trip.Food, bool) {
	entry, ok := Lookup(id)
	if !ok {
		return trip.Food{}, false
	}
	return entry.Food(), true
}

// Food gives the entry as the trip keeps it, without an ID and without
// packages. What is not judged stays unknown: whether it must be kept cold,
// what a label would tell, whom it suits.
func (e *Entry) Food() trip.Food {
	food := trip.Food{
		Name: shortened(capital(e.Name)), Source: "USDA SR28 " + e.ID, Per100g: e.Per100g,
		Density: e.Density, Form: e.form(), Aisle: e.Group, RefuseShare: e.refuseShare(),
		Storage: trip.Storage{TCS: trip.TCSUnknown, Q10: e.q10(), Basis: "not judged: ask the maker or keep it cold"},
		Diets:   animalDiets(e.Group, e.Description),
		Notes:   e.basis(),
	}
	if e.Trail == nil {
		return food
	}
	food.Aisle = e.Trail.Group
	food.PackedAsBought = e.Trail.AsBought
	food.Storage = e.storage()
	food.Allergens = e.Trail.allergens()
	food.Diets = map[trip.Diet]trip.Suitability{}
	for diet, suits := range e.Trail.Diets {
		food.Diets[diet] = suits
	}
	return food
}

func (e *Entry) storage() trip.Storage {
	t := e.Trail
	storage := trip.Storage{
		TCS: trip.TCSNo, TCSWhenOpen: t.OpenTCS, Q10: e.q10(), MaxHeat: optional.Of(t.MaxHeat),
		ShelfDays: optional.Of(t.ShelfDays), SoftensAt: t.Softens, Crushable: t.is(Crushable),
		Basis: "judgement: " + t.Basis,
	}
	if t.is(Perishable) {
		// Its clock is one of safety, not of quality.
		storage.TCS, storage.ShelfDays = trip.TCSYes, optional.Unknown[float64]()
	}
	return storage
}

// q10 is higher for what is rich in fat and for milk and egg powders, which
// brown.
func (e *Entry) q10() float64 {
	if e.Per100g.FatGrams.Or(0) >= fatRich || e.Trail != nil && e.Trail.Group == "powdered milk and egg" {
		return fatRichQ10
	}
	return usualQ10
}

// refuseShare of a trail food is of the food as carried. Elsewhere it is the
// dataset's, but for nuts, where that figure means the shell of unshelled nuts
// while the food is sold shelled.
func (e *Entry) refuseShare() float64 {
	switch {
	case e.Trail != nil:
		return e.Trail.RefuseShare
	case e.Group == "Nut and Seed Products":
		return 0
	default:
		return e.RefusePct.Or(0) / 100
	}
}

// form of a trail food was judged; elsewhere it is told from the words of the
// description and the water in the food.
func (e *Entry) form() trip.Form {
	if e.Trail != nil {
		return e.Trail.Form
	}
	name, water := strings.ToLower(e.Description), e.Further.WaterGrams.Or(0)
	switch {
	case strings.HasPrefix(name, "oil,"), water > 50 && (e.Group == "Beverages" || e.Group == "Soups, Sauces, and Gravies" || strings.HasPrefix(name, "milk,")):
		return trip.Liquid
	case strings.Contains(name, "powder"), strings.Contains(name, "flour"):
		return trip.Powder
	case strings.Contains(name, " butter"), strings.Contains(name, " paste"):
		return trip.Spread
	case water > 40:
		return trip.Piece
	default:
		return trip.Dry
	}
}

// basis says in plain words what the figures rest on.
func (e *Entry) basis() string {
	parts := []string{"Nutrients: USDA National Nutrient Database for Standard Reference 28, " + e.Description + "."}
	if density, known := e.Density.Get(); known {
		parts = append(parts, fmt.Sprintf("Bulk density %.2f g/mL: dataset, weight of a %s.", density, e.DensityOf))
	}
	t := e.Trail
	if t == nil {
		return strings.Join(append(parts, "Storage, allergens, diets and cooking: unknown; read the label."), " ")
	}
	parts = append(parts, "Storage: "+t.Basis+" (judgement).")
	if t.Plain {
		parts = append(parts, "Allergens and diets: one plain ingredient, from memory; the label rules.")
	} else {
		parts = append(parts, "Allergens and diets: typical recipe, from memory; read the label"+t.labelHint()+".")
	}
	if t.Prep != "ready" {
		parts = append(parts, fmt.Sprintf("Cooking: %s, %s water per 100 g, %g min at sea level (%s).",
			t.Prep, t.WaterPer100.Format(units.Metric), float64(t.Minutes), t.PrepBasis))
	}
	if t.Note != "" {
		parts = append(parts, capital(t.Note)+".")
	}
	return strings.Join(parts, " ")
}

func (t *Trail) labelHint() string {
	if len(t.CheckLabel) == 0 {
		return ""
	}
	var words []string
	for _, allergen := range t.CheckLabel {
		if word := string(allergen); !slices.Contains(words, word) {
			words = append(words, word)
		}
	}
	return ", above all for " + strings.Join(words, ", ")
}

// shortened keeps a name within what a trip takes; the notes carry it whole.
func shortened(name string) string {
	runes := []rune(name)
	if len(runes) <= trip.MaxNameRunes {
		return name
	}
	return string(runes[:trip.MaxNameRunes-1]) + "…"
}

func capital(text string) string {
	if text == "" {
		return text
	}
	return strings.ToUpper(text[:1]) + text[1:]
}
