package trip

import (
	"sumpter/domain/optional"
	"sumpter/domain/units"
)

// GearKind is what a piece of gear is for.
type GearKind string

// Kinds of gear.
const (
	Stove       GearKind = "stove"
	Pot         GearKind = "pot"
	Shelter     GearKind = "shelter"
	FoodStorage GearKind = "food storage" // canister, sack: keeps food from animals
	OtherGear   GearKind = "other"
)

// FuelKind is what a stove burns.
type FuelKind string

// Kinds of fuel whose heating values are known.
const (
	GasMix     FuelKind = "gas mix" // isobutane with propane
	Propane    FuelKind = "propane"
	Butane     FuelKind = "butane"
	WhiteGas   FuelKind = "white gas"
	Kerosene   FuelKind = "kerosene"
	Ethanol    FuelKind = "ethanol"
	Methanol   FuelKind = "methanol"
	Propanol   FuelKind = "2-propanol"
	FuelTablet FuelKind = "hexamine tablets"
)

// FuelKinds lists every kind of fuel.
func FuelKinds() []FuelKind {
	return []FuelKind{GasMix, Propane, Butane, WhiteGas, Kerosene, Ethanol, Methanol, Propanol, FuelTablet}
}

// Gear is shared kit carried by someone.
type Gear struct {
	ID     GearID       `json:"id"`
	Name   string       `json:"name"`
	Kind   GearKind     `json:"kind"`
	Group  GroupID      `json:"group,omitempty"` // whose it is and who carries it; 0: anybody's
	Mass   units.Mass   `json:"mass_g"`
	Volume units.Volume `json:"volume_ml"` // in the pack

	Fuel         FuelKind     `json:"fuel,omitempty"`                      // stoves
	PowerWatts   float64      `json:"power_w,omitempty"`                   // stoves: heat at full flame
	Efficiency   float64      `json:"efficiency,omitempty"`                // stoves: heat into the water / heat of the fuel
	Capacity     units.Volume `json:"capacity_ml,omitempty"`               // pots: to the brim; food storage: inside
	HeatCapacity float64      `json:"heat_capacity_kj_per_kg_k,omitempty"` // pots: aluminium 0.897, steel 0.50, titanium 0.52
}

// FuelContainer is one size of canister or bottle in which fuel is sold or carried.
type FuelContainer struct {
	Fuel   FuelKind                    `json:"fuel"`
	Name   string                      `json:"name"`
	Net    units.Mass                  `json:"net_g"`
	Empty  units.Mass                  `json:"empty_g"` // carried out after the fuel is gone
	Volume units.Volume                `json:"volume_ml"`
	Price  optional.Value[units.Money] `json:"price,omitzero"`
}

// BagType is one kind of bag on packing night.
type BagType struct {
	Name    string       `json:"name"`
	Nominal units.Volume `json:"nominal_ml"`
	Fill    float64      `json:"fill"` // share of the nominal volume that may be used and still seal
	Tare    units.Mass   `json:"tare_g"`
	Liquids bool         `json:"liquids"` // a bottle or jar: holds liquids and spreads
}

// AsBought is the bag type of what stays in the package it was sold in; no
// bag type of the trip may be called so.
const AsBought = "as bought"
