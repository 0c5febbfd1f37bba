// Package dayenergy adds up the energy of a day by the factorial method:
// still hours as multiples of resting energy, moving hours as gross walking
// power. Rest is inside walking power, so it is never added to it.
//
// Source: FAO/WHO/UNU, Human energy requirements (2004).
package dayenergy

// Physical activity ratios: energy as a multiple of resting energy.
//
// Source: FAO/WHO/UNU 2004, pattern of Annex 5; values from memory.
const (
	Sleep    = 1.0
	Stops    = 1.3 // pauses on the way: between sitting and standing
	CampDay  = 1.7 // waking hours of a rest day
	CampWork = 1.8 // cooking, washing up, tents
)

// Still is a part of the day spent not walking.
type Still struct {
	ActivityRatio float64 // multiple of resting energy, 1 asleep
	Hours         float64
}

// Moving is a part of the day spent walking.
type Moving struct {
	PowerW float64 // gross, rest included
	Hours  float64
}

// KcalPerHourPerWatt converts power to energy: 3600 / 4184.
const KcalPerHourPerWatt = 3600.0 / 4184.0

// StillKcal returns the energy of one still part, in kcal.
func StillKcal(restingKcalPerDay float64, part Still) float64 {
	return restingKcalPerDay / 24 * part.ActivityRatio * part.Hours
}

// MovingKcal returns the energy of one moving part, in kcal.
func MovingKcal(part Moving) float64 {
	return part.PowerW * part.Hours * KcalPerHourPerWatt
}

// Total returns the energy of a day in kcal. The caller sees to it that the
// hours add up to 24.
func Total(restingKcalPerDay float64, still []Still, moving []Moving) float64 {
	total := 0.0
	for _, part := range still {
		total += StillKcal(restingKcalPerDay, part)
	}
	for _, part := range moving {
		total += MovingKcal(part)
	}
	return total
}

// Heights between which sleeping high raises the need, and by how much at the
// upper one: 0 up to 2,500 m, rising evenly to 15 % at 4,300 m, and no
// further. Resting energy was measured about 17 % up at 4,300 m.
//
// Source: Butterfield GE et al. 1992, from memory; the ramp is a design choice.
const (
	heightFromM  = 2500.0
	heightFullM  = 4300.0
	heightAtFull = 0.15
)

// HeightShare returns the share by which sleeping at a height raises the
// day's need.
//
// Source: see heightFromM.
func HeightShare(sleepingHeightM float64) float64 {
	part := (sleepingHeightM - heightFromM) / (heightFullM - heightFromM)
	return heightAtFull * min(1, max(0, part))
}
