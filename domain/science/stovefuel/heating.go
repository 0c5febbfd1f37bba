package stovefuel

// Substance is a pure fuel, or one that stands for a trade fuel.
type Substance string

// The fuels of camping stoves. Heptane stands for white gas, dodecane for
// kerosene. Methanol is poisonous. Alcohol as sold holds 5 to 8 % water and
// gives about 25 MJ/kg.
const (
	Propane   Substance = "propane"
	Isobutane Substance = "isobutane"
	Butane    Substance = "n-butane"
	Heptane   Substance = "n-heptane"
	Dodecane  Substance = "n-dodecane"
	Ethanol   Substance = "ethanol"
	Methanol  Substance = "methanol"
	Propanol  Substance = "2-propanol"
	Hexamine  Substance = "hexamine"
)

// formula is the atoms of a molecule and its standard enthalpy of formation
// in kJ/mol, in the state it is burnt from (gas, liquid or solid).
type formula struct{ carbon, hydrogen, nitrogen, oxygen, formationKJ float64 }

// Source: NIST Chemistry WebBook; from memory.
var formulas = map[Substance]formula{
	Propane:   {3, 8, 0, 0, -103.8},
	Isobutane: {4, 10, 0, 0, -134.2},
	Butane:    {4, 10, 0, 0, -125.6},
	Heptane:   {7, 16, 0, 0, -224.4},
	Dodecane:  {12, 26, 0, 0, -350.9},
	Ethanol:   {2, 6, 0, 1, -277.6},
	Methanol:  {1, 4, 0, 1, -238.6},
	Propanol:  {3, 8, 0, 1, -318.1},
	Hexamine:  {6, 12, 4, 0, 124.1},
}

// Enthalpies of formation of what leaves the flame, kJ/mol.
const (
	carbonDioxideKJ = -393.51
	waterVapourKJ   = -241.83
)

// Atomic masses, g/mol.
const (
	carbonMass   = 12.011
	hydrogenMass = 1.008
	nitrogenMass = 14.007
	oxygenMass   = 15.999
)

// LowerHeating returns the lower heating value in MJ/kg: the heat of burning
// with the water leaving as vapour, as it does from a stove, by Hess's law
// from enthalpies of formation. It is 0 for a substance not listed.
//
// Source: see formulas; the sum is checkable.
func LowerHeating(fuel Substance) float64 {
	f, ok := formulas[fuel]
	if !ok {
		return 0
	}
	heatKJPerMol := f.formationKJ - f.carbon*carbonDioxideKJ - f.hydrogen/2*waterVapourKJ
	gramsPerMol := f.carbon*carbonMass + f.hydrogen*hydrogenMass + f.nitrogen*nitrogenMass + f.oxygen*oxygenMass
	return heatKJPerMol / gramsPerMol
}

// GasMix returns the lower heating value in MJ/kg of canister gas with a
// share of propane by mass, the rest isobutane. The usual mix has 0.2.
func GasMix(propaneShare float64) float64 {
	rest := LowerHeating(Isobutane)
	return rest + propaneShare*(LowerHeating(Propane)-rest)
}
