package metabolism

// MinorTotal returns the whole day's energy of a normally active child or
// teenager of 1 to 18 years, growth left out. A hiking teenager's need is
// never set below it (design choice).
//
// The published quadratics turn down above 120 kg (boys) and 72 kg (girls),
// outside the data; from there the highest value is kept (design choice), so
// that more body never means less food.
//
// Source: Torun 2001, in FAO/WHO/UNU, Human energy requirements (2004),
// chapter 4; coefficients from memory.
func MinorTotal(sex Sex, massKg float64) float64 {
	return sex.pick(
		risingPart(263.4, 65.3, -0.454, massKg),
		risingPart(310.2, 63.3, -0.263, massKg))
}

// risingPart is constant + slope m + curve m^2 with curve < 0, held at its top.
func risingPart(constant, slope, curve, massKg float64) float64 {
	m := min(massKg, -slope/(2*curve))
	return constant + slope*m + curve*m*m
}
