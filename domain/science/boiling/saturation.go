package boiling

import "math"

// Critical point of water and the coefficients of the saturation curve.
const (
	criticalK  = 647.096
	criticalPa = 22.064e6
)

// Saturation returns the saturation pressure of water in pascals at a
// temperature in degrees Celsius from 0.01 to 374: the IAPWS-95 auxiliary
// equation.
//
// Source: Wagner W, Pruss A, J Phys Chem Ref Data 2002;31:387-535, eq. 2.5;
// from memory.
func Saturation(celsius float64) float64 {
	kelvin := celsius + 273.15
	u := 1 - kelvin/criticalK
	root := math.Sqrt(u)
	u3 := u * u * u
	sum := -7.85951783*u + 1.84408259*u*root - 11.7866497*u3 +
		22.6807411*u3*root - 15.9618719*u3*u + 1.80122502*u3*u3*u*root
	return criticalPa * math.Exp(criticalK/kelvin*sum)
}

// SaturationBuck is made for 0 to 50 C and still good near 100.
//
// Source: Buck Research CR-1A manual, 1996.
func SaturationBuck(celsius float64) float64 {
	return 611.21 * math.Exp((18.678-celsius/234.5)*celsius/(257.14+celsius))
}

const pascalPerMmHg = 133.322387415

// SaturationAntoine holds from 1 to 100 C.
//
// Source: Antoine coefficients of common handbooks; from memory.
func SaturationAntoine(celsius float64) float64 {
	return pascalPerMmHg * math.Pow(10, 8.07131-1730.63/(233.426+celsius))
}
