package library

import (
	"fmt"
	"strings"

	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func readTrail(e *Entry, r row) {
	trail := &Trail{
		Group: r.text("trail_group"), Basis: r.text("storage_basis"), Note: r.text("note"),
		MaxHeat: units.Celsius(r.stated("max_ok_temp_c")), ShelfDays: r.stated("shelf_days_at_20c"),
		Prep: r.text("prep"), PrepBasis: r.text("prep_basis"),
		WaterPer100: units.FromMillilitres(r.stated("water_ml_per_100g")), Minutes: units.Minutes(r.stated("cook_min")),
		RefuseShare: r.number("refuse_pct_as_carried").Or(0) / 100,
	}
	for _, class := range listed(r.text("storage_class")) {
		trail.Storage = append(trail.Storage, StorageClass(class))
	}
	trail.Contains = readContains(e, r)
	for _, word := range listed(r.text("allergens_check_label")) {
		allergens, known := labelWords[word]
		if !known {
			r.fail(fmt.Errorf("%s, line %d: unknown allergen word %q", r.table, r.line, word))
		}
		trail.CheckLabel = append(trail.CheckLabel, allergens...)
	}
	trail.Diets = readDiets(e, r)
	e.Trail = trail
}

func readHandling(e *Entry, r row) {
	trail := e.Trail
	if trail == nil {
		r.fail(fmt.Errorf("%s, line %d: %s is not a trail food", r.table, r.line, e.ID))
		return
	}
	e.Name = r.text("name")
	trail.also = r.text("also")
	trail.Form = trip.Form(r.text("form"))
	if softens, known := r.number("softens_c").Get(); known {
		trail.Softens = optional.Of(units.Celsius(softens))
	}
	trail.OpenTCS = r.text("open_needs_cold") == "1"
	trail.AsBought = r.text("as_bought") == "1"
	trail.Plain = r.text("plain") == "1"
}

func listed(text string) []string {
	if text == "" {
		return nil
	}
	return strings.Split(text, ";")
}
