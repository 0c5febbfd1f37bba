// Package earth measures tracks: distances on the mean sphere, and ascent
// that is not inflated by the noise of height readings.
package earth

import "math"

// meanRadiusM is the mean radius of the Earth in metres.
//
// Source: IUGG mean radius R1 of GRS 80.
const meanRadiusM = 6371008.8

// Distance returns metres between two points given in degrees, by the
// haversine formula; the way across 180 degrees is the short one.
//
// Source: Sinnott RW, Sky and Telescope 1984;68:159; from memory.
func Distance(latitude1, longitude1, latitude2, longitude2 float64) float64 {
	phi1, phi2 := radians(latitude1), radians(latitude2)
	a := haversine(phi2-phi1) + math.Cos(phi1)*math.Cos(phi2)*haversine(radians(longitude2-longitude1))
	return 2 * meanRadiusM * math.Asin(math.Sqrt(min(1, a)))
}

func radians(degrees float64) float64 { return degrees * math.Pi / 180 }

func haversine(radians float64) float64 {
	half := math.Sin(radians / 2)
	return half * half
}

// AscentThreshold is the change in metres below which a turn of the height
// readings counts as noise (design choice).
const AscentThreshold = 5.0

// Climb returns the metres up and down along height readings. A rise or fall
// counts once it is at least the threshold; smaller wiggles inside it are left
// out. Readings that are NaN (a track point without height) are passed over.
// With a threshold of 0 every rise and fall counts.
//
// Source: hysteresis, design choice.
func Climb(heights []float64, thresholdM float64) (up, down float64) {
	ups, downs := Climbs(heights, thresholdM)
	if len(ups) == 0 {
		return 0, 0
	}
	return ups[len(ups)-1], downs[len(downs)-1]
}

// Climbs returns for each reading the metres up and down until there, counted
// as Climb does.
//
// Source: as Climb.
func Climbs(heights []float64, thresholdM float64) (up, down []float64) {
	up, down = make([]float64, len(heights)), make([]float64, len(heights))
	at, started := 0.0, false
	climbed, fallen := 0.0, 0.0
	for i, height := range heights {
		switch {
		case math.IsNaN(height):
		case !started:
			at, started = height, true
		case height-at >= thresholdM:
			climbed, at = climbed+height-at, height
		case at-height >= thresholdM:
			fallen, at = fallen+at-height, height
		}
		up[i], down[i] = climbed, fallen
	}
	return up, down
}
