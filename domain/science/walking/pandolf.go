package walking

// Pandolf returns the gross power in watts of standing or walking up to about
// 2.2 m/s with 0 to 70 kg on grades of 0 or more. Downhill it falls far too
// low, even below zero: use PandolfSantee there. It reads low for real load
// carriage and at slow speed.
//
// Source: Pandolf KB, Givoni B, Goldman RF, J Appl Physiol 1977;43:577-581.
func Pandolf(bodyKg, loadKg, speedMPerS, gradePercent, terrain float64) float64 {
	total, ratio := bodyKg+loadKg, loadKg/bodyKg
	return 1.5*bodyKg + 2.0*total*ratio*ratio +
		terrain*total*(1.5*speedMPerS*speedMPerS+0.35*speedMPerS*gradePercent)
}

// SanteeCorrection returns what is taken off Pandolf's power on a descent, in
// watts: with the signed (negative) grade it is mostly negative, so taking it
// off adds power. A public source file has 25 V^2 where this has 25 - V^2,
// 7 W apart at 4 km/h: the weaker cross-check.
//
// Sources: Santee WR et al., USARIEM TN03-3, 2003; Yokota M et al. 2004;
// from memory.
func SanteeCorrection(bodyKg, loadKg, speedMPerS, gradePercent, terrain float64) float64 {
	total, over := bodyKg+loadKg, gradePercent+6
	return terrain * (gradePercent*total*speedMPerS/3.5 - total*over*over/bodyKg +
		(25 - speedMPerS*speedMPerS))
}

// santeeFrom is the grade in percent from which downward the correction
// counts in full. Between it and the level the two equations, which do not
// meet, are blended linearly (design choice).
const santeeFrom = -2.0

// PandolfSantee returns Pandolf's power on the level and uphill, and with
// Santee's correction downhill.
//
// Sources: as Pandolf and SanteeCorrection.
func PandolfSantee(bodyKg, loadKg, speedMPerS, gradePercent, terrain float64) float64 {
	power := Pandolf(bodyKg, loadKg, speedMPerS, gradePercent, terrain)
	if gradePercent >= 0 {
		return power
	}
	part := min(1, gradePercent/santeeFrom)
	return power - part*SanteeCorrection(bodyKg, loadKg, speedMPerS, gradePercent, terrain)
}
