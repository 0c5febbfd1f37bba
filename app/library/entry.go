package library

import (
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Entry is one food of the library.
type Entry struct {
	ID          string // five digits, may begin with 0
	Name        string // what a cook calls it; the description where nobody gave a name
	Description string // as the dataset writes it
	Group       string // the dataset's food group
	Per100g     trip.Nutrients
	Further     Further
	RefusePct   optional.Value[float64] // of the food as bought, the dataset's figure
	RefuseWhat  string                  // shell, stone, peel, bone
	Measures    []Measure
	Density     optional.Value[float64] // bulk, g/mL, of the preferred household measure
	DensityOf   string                  // "cup, chopped"
	Trail       *Trail                  // nil: not one of the trail foods
}

// Further are figures per 100 g of the edible part that no plan uses yet but
// a cook may ask for.
type Further struct {
	PotassiumMilligrams optional.Value[float64]
	CalciumMilligrams   optional.Value[float64]
	IronMilligrams      optional.Value[float64]
	MagnesiumMilligrams optional.Value[float64]
	VitaminCMilligrams  optional.Value[float64]
	SaturatedFatGrams   optional.Value[float64]
	WaterGrams          optional.Value[float64]
}

// Measure is a household measure of the edible part.
type Measure struct {
	Amount float64 // how many of Name
	Name   string  // "cup, sliced"
	Mass   units.Mass
}

// Trail is what is judged of a food for a trip on foot. None of it is the
// label of the food that is bought: the label rules.
type Trail struct {
	Group     string // "pulses", "dried fruit"
	Storage   []StorageClass
	MaxHeat   units.Celsius // highest steady temperature at which the days hold
	ShelfDays float64       // at 20 °C, airtight and dark; 0: the same day, kept cold
	Basis     string        // what the storage figures rest on

	Contains   []trip.Allergen // by the typical recipe, from memory
	CheckLabel []trip.Allergen // often in it: unknown until the label is read
	Plain      bool            // one unprocessed ingredient: what it does not contain, it is free of
	Diets      map[trip.Diet]trip.Suitability

	Prep        string        // ready, rehydrate, boil, simmer, fry
	WaterPer100 units.Volume  // taken up in cooking, at sea level
	Minutes     units.Minutes // at sea level
	PrepBasis   string        // what water and minutes rest on
	RefuseShare float64       // of the food as carried: no shells, but peel and stones
	Softens     optional.Value[units.Celsius]
	OpenTCS     bool // sealed and sterile until opened, then it must be kept cold or eaten
	AsBought    bool // stays in its package
	Form        trip.Form
	Note        string

	also string // other names, for the search only
}

// StorageClass is how a trail food bears warmth and rough handling.
type StorageClass string

// The classes; a food may be in two.
const (
	AmbientStable StorageClass = "ambient-stable"
	KeepCool      StorageClass = "cool"
	Perishable    StorageClass = "TCS-perishable"
	MeltsClass    StorageClass = "melts"
	Crushable     StorageClass = "crushable"
)

func (t *Trail) is(class StorageClass) bool {
	for _, own := range t.Storage {
		if own == class {
			return true
		}
	}
	return false
}
