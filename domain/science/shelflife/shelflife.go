// Package shelflife computes how fast shelf-stable food loses quality at the
// temperatures it really meets, as days of its stated shelf life used up per
// day: by a Q10 factor, or by an activation energy (Arrhenius).
//
// This is quality arithmetic. It never makes food safe that needs time or
// temperature control.
package shelflife

import (
	"math"

	"sumpter/domain/science/daytemp"
)

// DefaultQ10 is the factor per 10 K taken where none is known; fat-rich or
// browning-prone food has about 3 (design choices inside published ranges).
//
// Sources for the ranges, from memory: Labuza TP 1982; Taoukis PS, Labuza TP,
// Saguy IS 1997: fat oxidation 1.5 to 2.5, browning 2 to 4, vitamins 1.5 to
// 2.5, canned goods 1.1 to 4, dry goods 1.5 to 10.
const DefaultQ10 = 2.0

// Q10Rate returns days of life used per day at a steady temperature, for a
// life stated at a reference temperature.
func Q10Rate(q10, celsius, referenceC float64) float64 {
	return math.Pow(q10, (celsius-referenceC)/10)
}

// Q10Day returns days of life used in one whole day of a sine course, in
// closed form. Taking the rate at the mean temperature instead reads low.
func Q10Day(q10 float64, day daytemp.Day, referenceC float64) float64 {
	return Q10Rate(q10, day.Mean(), referenceC) * besselI0(day.Amplitude()*math.Log(q10)/10)
}

// Q10Between returns days of life used from one hour to a later one of a sine
// course; the hours may lie outside 0 to 24.
func Q10Between(q10 float64, day daytemp.Day, referenceC, from, to float64) float64 {
	whole := math.Floor((to - from) / 24)
	used := whole * Q10Day(q10, day, referenceC)
	rest := integrate(from+24*whole, to, func(hour float64) float64 { return Q10Rate(q10, day.At(hour), referenceC) })
	return used + rest/24
}

// gasConstant in J/mol/K (CODATA 2018).
const gasConstant = 8.314462618

const zeroCelsius = 273.15

// ArrheniusRate returns days of life used per day at a steady temperature, by
// an activation energy in kJ/mol.
func ArrheniusRate(activationKJPerMol, celsius, referenceC float64) float64 {
	inverse := 1/(celsius+zeroCelsius) - 1/(referenceC+zeroCelsius)
	return math.Exp(-activationKJPerMol * 1000 / gasConstant * inverse)
}

// ArrheniusDay returns days of life used in one whole day of a sine course.
func ArrheniusDay(activationKJPerMol float64, day daytemp.Day, referenceC float64) float64 {
	return integrate(0, 24, func(hour float64) float64 {
		return ArrheniusRate(activationKJPerMol, day.At(hour), referenceC)
	}) / 24
}

// EquivalentQ10 returns the factor by which an activation energy raises the
// rate over the 10 K above a temperature.
func EquivalentQ10(activationKJPerMol, celsius float64) float64 {
	return ArrheniusRate(activationKJPerMol, celsius+10, celsius)
}

// MeanRate returns the mean of a rate over a measured series of temperatures
// taken at even intervals; NaN for an empty series.
func MeanRate(celsius []float64, rate func(celsius float64) float64) float64 {
	total := 0.0
	for _, at := range celsius {
		total += rate(at)
	}
	return total / float64(len(celsius))
}

// besselI0 is the modified Bessel function of order 0 by its series, which
// ends quickly for the arguments of a day (below 5).
func besselI0(x float64) float64 {
	sum, term := 1.0, 1.0
	for k := 1.0; term > 1e-17*sum; k++ {
		term *= x * x / (4 * k * k)
		sum += term
	}
	return sum
}

// integrate is Simpson's rule with steps of at most half an hour: for the
// courses of a day its error is far under 1e-6 of the result.
func integrate(from, to float64, f func(float64) float64) float64 {
	if to <= from {
		return 0
	}
	halves := max(1, math.Ceil(to-from)) // one pair of half-hour steps an hour
	step := (to - from) / (2 * halves)
	sum := f(from) + f(to)
	for i := 1.0; i < 2*halves; i++ {
		weight := 2 + 2*math.Mod(i, 2)
		sum += weight * f(from+i*step)
	}
	return sum * step / 3
}
