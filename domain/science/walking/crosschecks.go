package walking

// ACSMOxygen returns gross oxygen uptake in millilitres per kilogram and
// minute. Range: 0.8 to 1.7 m/s (3 to 6 km/h), grades of 0 or more, no load.
//
// Source: American College of Sports Medicine, Guidelines for Exercise
// Testing and Prescription, metabolic equations.
func ACSMOxygen(speedMPerS, gradePercent float64) float64 {
	speedMPerMin := 60 * speedMPerS
	return 3.5 + 0.1*speedMPerMin + 1.8*speedMPerMin*gradePercent/100
}

// wattsPerOxygen is 5 kcal per litre of oxygen, for mL per minute.
const wattsPerOxygen = 5 * 4184.0 / 60 / 1000

// ACSMTotalMass returns the gross power in watts with body and load taken as
// one mass (design choice). Not valid downhill.
//
// Source: as ACSMOxygen; 5 kcal per litre of oxygen.
func ACSMTotalMass(bodyKg, loadKg, speedMPerS, gradePercent float64) float64 {
	return ACSMOxygen(speedMPerS, gradePercent) * (bodyKg + loadKg) * wattsPerOxygen
}

// Minetti returns the net cost of walking in joules per kilogram and metre of
// path, at a slope of -0.45 to 0.45 (rise / run), without a load: a check of
// the shape on steep ground.
//
// Source: Minetti AE et al., J Appl Physiol 2002;93:1039-1046; from memory.
func Minetti(slope float64) float64 {
	return ((((280.5*slope-58.7)*slope-76.8)*slope+51.9)*slope+19.6)*slope + 2.5
}
