package trip

import (
	"sumpter/domain/optional"
	"sumpter/domain/units"
)

// CarbConvention says what a food's carbohydrate figure includes; mixing the
// two counts fibre twice.
type CarbConvention string

// Total includes fibre (the US habit, "by difference"); Available does not
// (Regulation (EU) 1169/2011, Annex I).
const (
	TotalCarbohydrate     CarbConvention = "total"
	AvailableCarbohydrate CarbConvention = "available"
)

// Nutrients are per 100 g of what is eaten (peel and shell taken off).
type Nutrients struct {
	Kcal             units.Kcal              `json:"kcal"`
	ProteinGrams     optional.Value[float64] `json:"protein_g,omitzero"`
	FatGrams         optional.Value[float64] `json:"fat_g,omitzero"`
	CarbGrams        optional.Value[float64] `json:"carb_g,omitzero"`
	FibreGrams       optional.Value[float64] `json:"fibre_g,omitzero"`
	SugarGrams       optional.Value[float64] `json:"sugar_g,omitzero"`
	SodiumMilligrams optional.Value[float64] `json:"sodium_mg,omitzero"`
	CarbConvention   CarbConvention          `json:"carb_convention"`
}

// Storage is how a food bears the way from shop to pot.
type Storage struct {
	// TCS: time/temperature control for safety (FDA Food Code 1-201.10).
	TCS         TCS  `json:"tcs"`
	TCSWhenOpen bool `json:"tcs_when_open"` // becomes TCS once its package is opened or wetted
	// WaterActivity, PH and HeatTreated are the maker's figures from which the
	// Food Code's tables A and B tell whether a food needs control that is
	// neither known to need it nor known to do without.
	WaterActivity optional.Value[float64]       `json:"water_activity,omitzero"` // 0 to 1
	PH            optional.Value[float64]       `json:"ph,omitzero"`             // 0 to 14
	HeatTreated   bool                          `json:"heat_treated"`            // sealed in its package when heated, or after (table A)
	ShelfDays     optional.Value[float64]       `json:"shelf_days_20c,omitzero"` // quality life at a steady 20 °C, sealed
	Q10           float64                       `json:"q10"`                     // how much faster quality goes per 10 K; 2 usual, 3 fat-rich
	MaxHeat       optional.Value[units.Celsius] `json:"max_heat_c,omitzero"`     // above it the stated days do not hold
	SoftensAt     optional.Value[units.Celsius] `json:"softens_c,omitzero"`      // melts from here
	Crushable     bool                          `json:"crushable"`
	Basis         string                        `json:"basis,omitempty"` // where the storage facts come from
}

// TCS is whether a food needs time/temperature control for safety. Unknown is
// treated as yes.
type TCS string

// States of time/temperature control.
const (
	TCSYes     TCS = "yes"
	TCSNo      TCS = "no"
	TCSUnknown TCS = "unknown"
)

// Form is how a food behaves in a bag.
type Form string

// Forms of food in a bag.
const (
	Dry    Form = "dry"    // pieces and grains
	Powder Form = "powder" // sifts out of a pinhole: double-bagged
	Liquid Form = "liquid" // oil, honey: a bottle or double bag
	Spread Form = "spread" // nut butter, soft cheese
	Piece  Form = "piece"  // counted, not poured: bars, tins, wraps
)

// Package is one way a food is sold.
type Package struct {
	Net       units.Mass                  `json:"net_g"`
	Price     optional.Value[units.Money] `json:"price,omitzero"`
	Shop      string                      `json:"shop,omitempty"`
	InStock   optional.Value[int]         `json:"in_stock,omitzero"`   // packages to be had; unknown: no limit
	ManyFrom  int                         `json:"many_from,omitempty"` // from so many bought at once each costs ManyPrice; 0: no discount
	ManyPrice optional.Value[units.Money] `json:"many_price,omitzero"`
	Wrapping  units.Mass                  `json:"wrapping_g"` // what goes along if it is packed as bought
}

// Food is something bought. Amounts of it are as carried, with peel or shell;
// RefuseShare is the part of that which is not eaten.
type Food struct {
	ID             FoodID                  `json:"id"`
	Name           string                  `json:"name"`
	Source         string                  `json:"source,omitempty"` // dataset and number, or "label"
	Per100g        Nutrients               `json:"per_100g"`
	RefuseShare    float64                 `json:"refuse_share"`           // 0 to below 1
	Density        optional.Value[float64] `json:"bulk_g_per_ml,omitzero"` // bulk density, air between pieces included
	Form           Form                    `json:"form"`
	Packages       []Package               `json:"packages"`
	AtHome         units.Mass              `json:"at_home_g"` // already in the cupboard
	Aisle          string                  `json:"aisle,omitempty"`
	Storage        Storage                 `json:"storage"`
	Allergens      map[Allergen]Presence   `json:"allergens,omitempty"` // a missing allergen is unknown
	Diets          map[Diet]Suitability    `json:"diets,omitempty"`     // a missing diet is unknown
	PackedAsBought bool                    `json:"packed_as_bought"`    // stays in its package: tins, bars
	PieceMass      units.Mass              `json:"piece_g"`             // of one bar, tin or wrap, which is not weighed out; 0: any amount
	PieceHalves    bool                    `json:"piece_halves"`        // a piece may be halved
	Notes          string                  `json:"notes,omitempty"`
}

// GramPrice gives the least price of a gram among the packages whose price is
// known, in the smallest coin.
func (f *Food) GramPrice() (price float64, known bool) {
	for _, sold := range f.Packages {
		if coins, ok := sold.Price.Get(); ok && sold.Net > 0 {
			if one := float64(coins) / sold.Net.Grams(); !known || one < price {
				price, known = one, true
			}
		}
	}
	return price, known
}

// EatenGrams gives the edible part of a carried mass, in grams.
func (f *Food) EatenGrams(carried units.Mass) float64 {
	return carried.Grams() * (1 - f.RefuseShare)
}

// Kcal gives the food energy in a carried mass.
func (f *Food) Kcal(carried units.Mass) units.Kcal {
	return units.Kcal(float64(f.Per100g.Kcal) * f.EatenGrams(carried) / 100)
}
