// Package walktime estimates moving time on foot from distance and height:
// Naismith's rule with Langmuir's corrections for descent as default, and
// Tobler's speeds as the second opinion.
//
// The rules describe fit walkers on a good path with a light load and without
// stops. Common practice, no source: 10 minutes of stops per hour, and a
// factor of 1.1 to 1.4 for a large or loaded party.
package walktime

import "math"

const (
	kmPerMile    = 1.609344
	metrePerFoot = 0.3048
)

// NaismithOriginal returns hours by the rule as first printed: an hour for
// every three miles, and half an hour for every thousand feet of ascent.
//
// Source: Naismith WW, Scottish Mountaineering Club Journal 1892;2:136.
func NaismithOriginal(distanceKm, ascentM float64) float64 {
	return distanceKm/kmPerMile/3 + ascentM/metrePerFoot/1000/2
}

// Naismith returns hours by the metric form: 5 km/h, and an hour for every
// 600 m of ascent.
//
// Source: Langmuir E, Mountaincraft and Leadership, 1984.
func Naismith(distanceKm, ascentM float64) float64 {
	return distanceKm/5 + ascentM/600
}

// Limits in degrees between which a descent is gentle enough to save time;
// steeper costs time, flatter changes nothing. Source: Langmuir 1984.
const (
	gentleFromDegrees = 5.0
	steepFromDegrees  = 12.0
)

// langmuirHoursPerM is 10 minutes for every 300 m of descent.
const langmuirHoursPerM = 1.0 / 6 / 300

// Langmuir returns hours by Naismith's rule with the corrections for descent:
// 10 minutes off for every 300 m down on slopes of 5 to 12 degrees, 10 minutes
// on for every 300 m down on steeper ones. It is never below 0, whatever the
// figures.
//
// Source: Langmuir E, Mountaincraft and Leadership, 1984.
func Langmuir(distanceKm, ascentM, gentleDescentM, steepDescentM float64) float64 {
	return max(0, Naismith(distanceKm, ascentM)+(steepDescentM-gentleDescentM)*langmuirHoursPerM)
}

// DescentKinds sorts a descent into what Langmuir calls gentle and steep, by
// its drop over its horizontal length; a flatter one is neither.
//
// Source: as Langmuir.
func DescentKinds(lengthKm, descentM float64) (gentleM, steepM float64) {
	degrees := math.Atan2(descentM, 1000*lengthKm) * 180 / math.Pi
	switch {
	case degrees > steepFromDegrees:
		return 0, descentM
	case degrees >= gentleFromDegrees:
		return descentM, 0
	default:
		return 0, 0
	}
}

// toblerOffPath slows Tobler's speeds down away from paths.
const toblerOffPath = 0.6

// ToblerSpeed returns km/h along the horizontal, on a path of a slope (rise /
// run, up positive); the fastest is 6 km/h at -0.05.
//
// Source: Tobler W, NCGIA Technical Report 93-1, 1993.
func ToblerSpeed(slope float64) float64 {
	return 6 * math.Exp(-3.5*math.Abs(slope+0.05))
}

// ToblerSpeedOffPath returns ToblerSpeed away from paths.
//
// Source: as ToblerSpeed.
func ToblerSpeedOffPath(slope float64) float64 {
	return toblerOffPath * ToblerSpeed(slope)
}

// Tobler returns hours for a leg of even slope: its horizontal length and its
// rise, negative for a descent. A leg without length takes no time.
//
// Source: as ToblerSpeed.
func Tobler(lengthKm, riseM float64) float64 {
	if lengthKm <= 0 {
		return 0
	}
	return lengthKm / ToblerSpeed(riseM/(1000*lengthKm))
}
