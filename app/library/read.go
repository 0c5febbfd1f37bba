package library

import (
	"fmt"
	"slices"
	"strings"

	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func readEntries() ([]Entry, error) {
	var entries []Entry
	err := eachRow("foods_sr.csv.gz", func(r row) { entries = append(entries, readEntry(r)) })
	if err != nil {
		return nil, err
	}
	slices.SortFunc(entries, func(a, b Entry) int { return strings.Compare(a.ID, b.ID) })
	byID := make(map[string]*Entry, len(entries))
	for i := range entries {
		byID[entries[i].ID] = &entries[i]
	}
	// Lines of the other tables belong to a food by its number.
	add := func(table string, use func(*Entry, row)) {
		if err != nil {
			return
		}
		err = eachRow(table, func(r row) {
			id := r.text("sr_id")
			if entry := byID[id]; entry != nil {
				use(entry, r)
			} else {
				r.fail(fmt.Errorf("%s, line %d: there is no food %q", r.table, r.line, id))
			}
		})
	}
	add("measures_sr.csv.gz", readMeasure)
	add("refuse_sr.csv.gz", func(e *Entry, r row) { e.RefuseWhat = r.text("refuse_what") })
	add("density_sr.csv.gz", readDensity)
	add("trail_foods.csv.gz", readTrail)
	add("trail_handling.csv", readHandling)
	return entries, err
}

func readEntry(r row) Entry {
	description := r.text("description")
	return Entry{
		ID: r.text("sr_id"), Name: description, Description: description, Group: r.text("food_group"),
		RefusePct: r.number("refuse_pct"),
		Per100g: trip.Nutrients{
			Kcal:         units.Kcal(r.stated("kcal")),
			ProteinGrams: r.number("protein_g"), FatGrams: r.number("fat_g"), CarbGrams: r.number("carb_g"),
			FibreGrams: r.number("fibre_g"), SugarGrams: r.number("sugar_g"), SodiumMilligrams: r.number("sodium_mg"),
			CarbConvention: trip.TotalCarbohydrate,
		},
		Further: Further{
			PotassiumMilligrams: r.number("potassium_mg"), CalciumMilligrams: r.number("calcium_mg"),
			IronMilligrams: r.number("iron_mg"), MagnesiumMilligrams: r.number("magnesium_mg"),
			VitaminCMilligrams: r.number("vit_c_mg"), SaturatedFatGrams: r.number("sat_fat_g"),
			WaterGrams: r.number("water_g"),
		},
	}
}

func readMeasure(e *Entry, r row) {
	e.Measures = append(e.Measures, Measure{
		Amount: r.stated("amount"), Name: r.text("measure"), Mass: units.FromGrams(r.stated("grams")),
	})
}

func readDensity(e *Entry, r row) {
	density := r.stated("g_per_ml")
	if r.text("preferred") != "1" || density > coarse*airless(e) {
		return
	}
	e.Density = optional.Of(density)
	e.DensityOf = r.text("measure")
	if form := r.text("form"); form != "" {
		e.DensityOf += ", " + form
	}
}

// coarse is how far above its airless density a measured spoonful may come
// before the measure is taken for a mistake.
const coarse = 1.15

// airless gives what the food would weigh in g/mL without any air, by the
// densities of its parts (fat 0.92, water 1.0, protein 1.35, carbohydrate 1.6,
// salts 2.2 g/mL: from memory of food-engineering tables).
func airless(e *Entry) float64 {
	protein, fat, carb := e.Per100g.ProteinGrams.Or(0), e.Per100g.FatGrams.Or(0), e.Per100g.CarbGrams.Or(0)
	water := e.Further.WaterGrams.Or(0)
	salts := max(0, 100-protein-fat-carb-water)
	return 100 / (protein/1.35 + fat/0.92 + carb/1.6 + water/1.0 + salts/2.2)
}
