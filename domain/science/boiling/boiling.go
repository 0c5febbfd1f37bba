// Package boiling tells at what temperature water boils at a height and how
// much longer food cooks there.
package boiling

import "math"

// Pressure returns air pressure in pascals at a height in metres, in the
// standard atmosphere; good to 11 km. Weather moves the boiling point by
// about 0.8 K to either side.
//
// Source: ISO 2533, International Standard Atmosphere; from memory.
func Pressure(heightM float64) float64 {
	return 101325 * math.Pow(1-2.25577e-5*heightM, 5.25588)
}

// Point returns the boiling point of water in degrees Celsius at a height in
// metres (-500 to 9,000) in the standard atmosphere, by the IAPWS saturation
// curve.
//
// Source: see Pressure and Saturation.
func Point(heightM float64) float64 { return boilsAt(Saturation, heightM) }

// PointBuck is Point by Buck's curve, PointAntoine by Antoine's: cross-checks.
func PointBuck(heightM float64) float64 { return boilsAt(SaturationBuck, heightM) }

// PointAntoine is Point by Antoine's curve, a cross-check.
func PointAntoine(heightM float64) float64 { return boilsAt(SaturationAntoine, heightM) }

// boilsAt finds where a saturation curve meets the pressure of a height, by
// bisection: 50 halvings of 150 K leave 1e-13 K.
func boilsAt(saturation func(celsius float64) float64, heightM float64) float64 {
	pressure := Pressure(heightM)
	low, high := 0.0, 150.0
	for range 50 {
		if middle := (low + high) / 2; saturation(middle) < pressure {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}

// Factors of cooking time per 10 K below 100 C (design choice). Mountaineers'
// rule "twice the time every 1,500 m" equals 4 and is the upper bound (common
// practice, no source).
const (
	GrainQ10  = 2.0 // pasta, rice, grains
	LegumeQ10 = 3.5 // dry legumes
)

// TimeFactor returns how many times longer food takes at a height than at 100
// C, by a factor per 10 K.
func TimeFactor(heightM, q10 float64) float64 {
	return math.Pow(q10, (100-Point(heightM))/10)
}
